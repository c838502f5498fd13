// Formulas written cold, by people who had not seen the language guide, each with the value meant before it was tried.
// Five imagined builders a set: a carpenter, a concrete man, a landscaper, an estimator, an apprentice.
// `answer` was compared by hand with what was meant; null: refused. `mend` is the one of what is offered that gives what
// was meant, and `mended` what it comes to; a line without either is refused and the person has to say more.
import fs from 'node:fs';
import { describe, expect, it } from 'vitest';
import { worked } from './worked.ts';

interface Cold {
  readonly who: number;
  readonly formula: string;
  readonly meant: string;
  readonly answer: string | null;
  readonly mend?: string;
  readonly mended?: string;
}

const at = (name: string): URL => new URL(`./cold/${name}`, import.meta.url);
const givensOf = (name: string): readonly string[] =>
  JSON.parse(fs.readFileSync(at(name), 'utf8')) as string[];
/** What the writers saw: thirty cells; those of the last two sets saw worked ones beside them. */
const plain = givensOf('givens.json');
const withWorked = givensOf('givens-with-worked.json');

describe.each([
  ['set-1.json', 88, 2],
  ['set-2.json', 83, 0],
  ['set-3.json', 50, 19],
  ['set-4.json', 82, 0],
  ['set-5.json', 68, 3],
  ['set-6.json', 43, 24],
] as const)('%s', (name, read, asked) => {
  const givens = Number(name.replaceAll(/\D/g, '')) > 4 ? withWorked : plain;
  const set = JSON.parse(fs.readFileSync(at(name), 'utf8')) as Cold[];

  it('reads what it read, and nothing else in its place', () => {
    for (const { formula, answer } of set) {
      const got = worked(formula, givens);
      expect(got.shown, formula).toBe(answer);
      if (answer === null) expect(got.code, formula).not.toBeNull();
    }
  });

  it('offers what was meant where it asks', () => {
    const mends = set.filter((cold) => cold.mend !== undefined);
    for (const { formula, mend, mended } of mends) {
      expect(worked(formula, givens).fixes, formula).toContain(mend);
      expect(worked(mend ?? '', givens).shown, formula).toBe(mended);
    }
    expect(mends.length).toBe(set.length - read - asked);
  });

  it('says every formula it reads in a sentence that comes to the same', () => {
    for (const { formula, answer } of set) {
      if (answer === null) continue;
      const { readAs } = worked(formula, givens);
      expect(worked(readAs, givens).shown, `${formula}: ${readAs}`).toBe(answer);
    }
  });

  it('reads most and refuses the rest with a reason', () => {
    expect(set.filter((cold) => cold.answer !== null).length).toBe(read);
    expect(set).toHaveLength(100);
  });
});
