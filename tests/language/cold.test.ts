// Formulas written cold, by people who had not seen the language guide, each with the value meant before it was tried.
// Five imagined builders a set: a carpenter, a concrete man, a landscaper, an estimator, an apprentice.
// `answer` was compared by hand with what was meant; null: refused, with or without a mend.
import fs from 'node:fs';
import { describe, expect, it } from 'vitest';
import { worked } from './worked.ts';

interface Cold {
  readonly who: number;
  readonly formula: string;
  readonly meant: string;
  readonly answer: string | null;
}

const at = (name: string): URL => new URL(`./cold/${name}`, import.meta.url);
const givens = JSON.parse(fs.readFileSync(at('givens.json'), 'utf8')) as string[];

describe.each(['set-1.json', 'set-2.json'])('%s', (name) => {
  const set = JSON.parse(fs.readFileSync(at(name), 'utf8')) as Cold[];

  it('reads what it read, and nothing else in its place', () => {
    for (const { formula, answer } of set) {
      const got = worked(formula, givens);
      expect(got.shown, formula).toBe(answer);
      if (answer === null) expect(got.code, formula).not.toBeNull();
    }
  });

  it('reads at least half and refuses the rest with a reason', () => {
    const read = set.filter((cold) => cold.answer !== null).length;
    expect(read).toBeGreaterThanOrEqual(50);
    expect(set).toHaveLength(100);
  });
});
