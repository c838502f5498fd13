// What is pointed out in a notebook can be mended where it stands, and one step back has it as it was.
import { describe, expect, it } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { cellNamed, done, shownIn } from './cells.ts';
import { expectMended, found } from './mending.ts';
import { NOTEBOOK_MENDS } from './mends.ts';

describe.each(NOTEBOOK_MENDS.map((each, i) => [i, each.code, each] as const))(
  'case %i: %s',
  (_i, _code, each) => {
    it('goes with each mend that is offered, or nobody could offer one', () => {
      const mends = expectMended(each);
      expect(mends.length > 0).toBe(each.none === undefined);
      const labels = mends.map(({ say }) => say);
      expect(new Set(labels).size).toBe(labels.length);
    });

    it('is said calmly', () => {
      const { message } = found(each).finding;
      expect(message).toMatch(/[.?]$/);
      expect(message.replaceAll(/"[^"]*"/g, '')).not.toMatch(
        /undefined|\bnull\b|NaN|token|operand|dimension|expected|invalid|illegal|oops|failed|!/i,
      );
    });
  },
);

describe('what a mend does', () => {
  const said = (text: string, cell: string): readonly string[] => {
    const estimate = new Estimate(text);
    return estimate.mendsOf(cellNamed(estimate.notebook, cell).id).map(({ say }) => say);
  };

  it('a price that is to be a cost is offered at what it is the price of, of the own part first', () => {
    const text =
      '## Deck\n\n- Bags: 7 bags\n\n## Landing\n\n- Bag price: $6.48 per bag\n- Bags to buy: 40 bags\n- Concrete: bag price\n  - cost: material\n';
    expect(said(text, 'Concrete')).toEqual([
      'bags to buy at bag price',
      'bags at bag price',
      'Leave "cost" out: it is no cost line',
    ]);
    const estimate = new Estimate(text);
    const cell = cellNamed(estimate.notebook, 'Concrete').id;
    const [first] = estimate.mendsOf(cell);
    if (!first) throw new Error('nothing is offered');
    done(estimate.mend(first));
    expect(shownIn(estimate, 'Concrete')).toBe('$259.20');
  });

  it('out of a circle leads the amount that the cell had before', () => {
    const estimate = new Estimate('## A\n\n- One: 3 ft\n- Two: one plus 1 ft\n');
    const { id } = cellNamed(estimate.notebook, 'One');
    done(estimate.setFormula(id, 'two minus 1 ft'));
    const two = cellNamed(estimate.notebook, 'Two').id;
    expect(estimate.mendsOf(two).map(({ say }) => say)).toEqual([
      'Make Two 4 ft, as it last was',
      'Make Two an amount still to come',
    ]);
  });

  it('a name that nobody knows becomes a given above the cell that asks for it', () => {
    const estimate = new Estimate('## A\n\n- First: 1 ft\n- Sum: gravel depth plus first\n');
    const mend = estimate.mendsOf(cellNamed(estimate.notebook, 'Sum').id).at(-1);
    expect(mend?.say).toBe('Add "Gravel depth", still to come');
    if (mend) done(estimate.mend(mend));
    expect(estimate.notebook.text).toBe(
      '## A\n\n- First: 1 ft\n- Gravel depth: ?\n- Sum: gravel depth plus first\n',
    );
  });

  it('a thing that is not counted yet is added to those that are', () => {
    for (const [front, made] of [
      ['# Job\n\n', '# Job\n\n- Counted things: gudgeon\n\n'],
      ['# Job\n\n- Counted things: bay\n\n', '# Job\n\n- Counted things: bay, gudgeon\n\n'],
      [
        '# Job\n\n- Currency: euros\n\n',
        '# Job\n\n- Counted things: gudgeon\n- Currency: euros\n\n',
      ],
    ] as const) {
      const estimate = new Estimate(`${front}## A\n\n- Hinges: 5 gudgeons\n`);
      const mend = estimate
        .mendsOf(cellNamed(estimate.notebook, 'Hinges').id)
        .find(({ say }) => say === 'Count gudgeons in this notebook');
      if (!mend) throw new Error('it is not offered');
      done(estimate.mend(mend));
      expect(estimate.notebook.text).toBe(`${made}## A\n\n- Hinges: 5 gudgeons\n`);
      expect(shownIn(estimate, 'Hinges')).toBe('5 gudgeons');
    }
  });

  it('a cell without a fault has nothing to mend', () => {
    expect(said('## A\n\n- One: 3 ft\n- Two: one plus 1 ft\n- Open: ?\n', 'Two')).toEqual([]);
  });
});
