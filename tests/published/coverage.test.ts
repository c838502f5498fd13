// Every published figure that was gathered is either worked here or on the one list of what is left, with why.
import { expect, test } from 'vitest';
import bags from './bag-yields.json' with { type: 'json' };
import { FACTS } from './facts.ts';
import left from './left-for-later.json' with { type: 'json' };
import sizes from './lumber-sizes.json' with { type: 'json' };

const worked = [...Object.values(FACTS).flat(), ...sizes, ...bags].map((fact) => fact.id);
const leftOut = left.left.flatMap((group) => group.ids);
const gathered = [
  ...left.series.flatMap(({ begins, to }) =>
    Array.from({ length: to }, (_, n) => `${begins}-${String(n + 1).padStart(2, '0')}`),
  ),
  ...left.workedExamples,
];

test('every gathered figure is worked once or left out once', () => {
  expect([...worked, ...leftOut].toSorted()).toEqual(gathered.toSorted());
});

test('everything left out says why', () => {
  expect(left.left.filter((group) => group.why.length < 10)).toEqual([]);
  expect(left.partly.filter((one) => !worked.includes(one.id) || one.why.length < 10)).toEqual([]);
});

test('every figure that is worked names its source and where it stands in it', () => {
  const facts = [...Object.values(FACTS).flat(), ...sizes, ...bags];
  expect(facts.filter((fact) => fact.source.length < 3 || fact.where === '')).toEqual([]);
});
