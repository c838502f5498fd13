// What depends on a cell at fault waits and keeps its last good value; totals say what they leave out.
import { describe, expect, it } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { cellNamed, done } from './cells.ts';

const TEXT = `# Kestrel Court

## Landing

- Slab volume: 16 cubic feet
- Bag yield: 0.45 cubic feet per bag
- Bags to buy: slab volume divided by bag yield, rounded up
- Bag price: $6.48 per bag
- Concrete: bags to buy at bag price
  - cost: material
- Forms: $40
  - cost: material
- Sum: total cost of this part
`;

interface Seen {
  /** The value, or what it waits for, or the headline. */
  readonly now: string;
  readonly last: string | null;
}

function seen(estimate: Estimate, name: string): Seen {
  const { id } = cellNamed(estimate.notebook, name);
  const { outcome } = estimate.state(id);
  const last = estimate.lastShown(id)?.text ?? null;
  switch (outcome.kind) {
    case 'value':
      return { now: estimate.shown(id)?.text ?? '', last };
    case 'fault':
      return { now: outcome.report.code, last };
    case 'waiting':
    case 'unknown': {
      const names = outcome.for.map((each) => estimate.state(each).input.name);
      return { now: `${outcome.kind} for ${names.join(', ')}`, last };
    }
  }
}

const set = (estimate: Estimate, name: string, formula: string): void => {
  done(estimate.setFormula(cellNamed(estimate.notebook, name).id, formula));
};

const broken = (): Estimate => {
  const estimate = new Estimate(TEXT);
  set(estimate, 'Bag yield', '0.45 cubic feet per bgas');
  return estimate;
};

describe('what a cell at fault leaves behind', () => {
  it('keeps its own last value, and so does all that waits, each for the nearest cell that it names', () => {
    const estimate = broken();
    expect(seen(estimate, 'Bag yield')).toEqual({
      now: 'unknown-name',
      last: '0.45 cubic feet per bag',
    });
    expect(seen(estimate, 'Bags to buy')).toEqual({
      now: 'waiting for Bag yield',
      last: '36 bags',
    });
    expect(seen(estimate, 'Concrete')).toEqual({ now: 'waiting for Bags to buy', last: '$233.28' });
  });

  it('is left out of totals, which say so', () => {
    const estimate = broken();
    expect(seen(estimate, 'Sum').now).toBe('$40.00 so far; 1 line without a value');
    const { total } = estimate.costs();
    expect([total.direct, total.incomplete.length]).toEqual(['40.00', 1]);
  });

  it('is written over by nothing: the text stays as it was typed', () => {
    expect(broken().notebook.text).toContain('- Bag yield: 0.45 cubic feet per bgas\n');
  });

  it('is only the cell itself: what waits has no message of its own', () => {
    const told = broken()
      .findings()
      .filter(({ code }) => code !== 'given-without-source');
    expect(told.map(({ code }) => code)).toEqual(['unknown-name']);
  });
});

describe('last values stay', () => {
  it('while another cell is changed, undone and done again', () => {
    const estimate = broken();
    set(estimate, 'Bag price', '$7.00 per bag');
    estimate.undo();
    estimate.redo();
    expect(seen(estimate, 'Concrete').last).toBe('$233.28');
    estimate.undo();
    estimate.undo();
    expect(seen(estimate, 'Concrete').now).toBe('$233.28');
  });

  it('while the fault is written otherwise and is still one', () => {
    const estimate = broken();
    set(estimate, 'Bag yield', 'per what');
    expect(seen(estimate, 'Bag yield').last).toBe('0.45 cubic feet per bag');
  });

  it('when a cell that waits is removed and brought back', () => {
    const estimate = broken();
    done(estimate.removeCell(cellNamed(estimate.notebook, 'Bags to buy').id));
    estimate.undo();
    expect(seen(estimate, 'Bags to buy')).toEqual({
      now: 'waiting for Bag yield',
      last: '36 bags',
    });
  });

  it('when the settings change and everything is worked anew', () => {
    const estimate = broken();
    const at = estimate.notebook.titleSpot?.to ?? 0;
    const insert = '\n\n- Counted things: gudgeon';
    done(estimate.replaceText({ say: 'Gudgeons', splices: [{ from: at, to: at, insert }] }));
    expect(seen(estimate, 'Concrete')).toEqual({ now: 'waiting for Bags to buy', last: '$233.28' });
  });

  it('until the fault is mended', () => {
    const estimate = broken();
    set(estimate, 'Bag yield', '0.5 cubic feet per bag');
    expect(seen(estimate, 'Concrete')).toEqual({ now: '$207.36', last: '$207.36' });
  });

  it('in a circle, for all that are in it and all that wait for it', () => {
    const estimate = new Estimate(TEXT);
    set(estimate, 'Slab volume', 'bags to buy times bag yield');
    expect(seen(estimate, 'Slab volume')).toEqual({ now: 'circle', last: '16 cubic feet' });
    expect(seen(estimate, 'Bags to buy')).toEqual({ now: 'circle', last: '36 bags' });
    expect(seen(estimate, 'Concrete')).toEqual({ now: 'waiting for Bags to buy', last: '$233.28' });
  });

  // A value is worked from the text, and the text has none: what was once right is not kept beside it.
  it('not when the notebook is opened anew: there is no last value then', () => {
    const again = new Estimate(broken().notebook.text);
    expect(seen(again, 'Bag yield')).toEqual({ now: 'unknown-name', last: null });
    expect(seen(again, 'Concrete')).toEqual({ now: 'waiting for Bags to buy', last: null });
  });

  it('not for what was never right', () => {
    const estimate = new Estimate(TEXT);
    const { id, part } = cellNamed(estimate.notebook, 'Sum');
    done(estimate.addCell(part, id, 'Gravel', 'gravel depth by 3 ft'));
    expect(seen(estimate, 'Gravel')).toEqual({ now: 'unknown-name', last: null });
  });
});
