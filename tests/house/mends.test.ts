// Whatever can be pointed out has its line in the tables of mends: a code that nobody tried to mend is found here.
import { expect, test } from 'vitest';
import { FORMULA_MENDS } from '../language/mends.ts';
import { AS_TOO_DEEP, NOTEBOOK_MENDS, REFUSALS } from '../notebook/mends.ts';
import { committedFiles, contentOf } from './committed.ts';

/** Codes are written out where something is pointed out: after `code:`, or as the first thing that is said. */
const WRITTEN = [
  /\bcode: '([a-z0-9-]+)'/g,
  /\bcode: [^,;{}\n]*\? '([a-z0-9-]+)' : '([a-z0-9-]+)'/g,
  /(?:\brefused|\bpoint|#point|\.say)\(\s*'([a-z0-9-]+)'/g,
];

const codes = new Set(
  committedFiles()
    .filter((file) => /^src\/(?:language|engine|notebook)\/.*\.ts$/.test(file))
    .flatMap((file) => {
      const text = contentOf(file).toString();
      return WRITTEN.flatMap((pattern) => [...text.matchAll(pattern)].flatMap(([, ...all]) => all));
    })
    .filter((code) => code !== undefined),
);

test('every code that can be pointed out is in a table of mends', () => {
  // Read from the sources; should a new way to write codes escape the patterns above, this number falls behind.
  expect(codes.size).toBeGreaterThan(95);
  const tried = new Set([...FORMULA_MENDS, ...NOTEBOOK_MENDS].map(({ code }) => code));
  const known = new Set([...tried, ...REFUSALS, AS_TOO_DEEP, ...WORKED]);
  expect([...codes].filter((code) => !known.has(code)).toSorted()).toEqual([]);
  expect([...tried, ...REFUSALS].filter((code) => !codes.has(code) && !WORKED.has(code))).toEqual(
    [],
  );
});

/** Faults that the engine tells by the code that flows through the arithmetic. */
const WORKED = new Set(['division-by-zero', 'root-of-negative', 'too-large']);
