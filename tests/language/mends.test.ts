// Whatever is wrong with a formula, what is offered mends it, and one step back has it as it was.
import { describe, expect, it } from 'vitest';
import { expectMended, found } from '../notebook/mending.ts';
import { FORMULA_MENDS } from './mends.ts';

describe.each(
  FORMULA_MENDS.map(
    (each) => [each.code, /Answer: (.*)/.exec(each.text)?.[1]?.slice(0, 70), each] as const,
  ),
)('%s in "%s"', (_code, _formula, each) => {
  it('goes with each mend that is offered, or nobody could offer one', () => {
    const mends = expectMended(each);
    expect(mends.length > 0).toBe(each.none === undefined);
    const labels = mends.map(({ say }) => say);
    expect(new Set(labels).size).toBe(labels.length);
  });

  it('is said calmly, with its words marked', () => {
    const { estimate, finding } = found(each);
    const { outcome, input } = estimate.state(finding.cell ?? -1);
    if (outcome.kind !== 'fault') throw new Error('no fault');
    const { headline, explanation, spots, fixes } = outcome.report;
    expect(headline.length).toBeLessThan(60);
    expect(explanation).toMatch(/[.?]$/);
    const words = [headline, explanation, ...fixes.map(({ say }) => say)].join(' ');
    expect(words).not.toMatch(
      /undefined|\bnull\b|NaN|token|operand|dimension|expected|invalid|illegal|oops|failed|!/i,
    );
    expect(spots.every(({ from, to }) => from >= 0 && to <= input.formula.length)).toBe(true);
  });
});
