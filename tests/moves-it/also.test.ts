// What else an amount would change: checks either way, limits that are passed, cells left without a value.
import { describe, expect, it } from 'vitest';
import { alsoChanged } from '../../src/moves-it/also.ts';
import { Dec } from '../../src/quantity/decimal.ts';
import { opened } from './opened.ts';

const STAIR = [
  'Total rise: 28 in',
  '  - sensible: 12 in up to 60 in',
  'Risers: 4 risers',
  'Unit rise: total rise divided by risers',
  '  - sensible: 4 in per riser up to 8 in per riser',
  'Riser check: unit rise is at most 7 3/4 in per riser',
  '  - caution: Too steep; ask the local building department.',
  'Low check: total rise is at least 30 in',
  'Gap: 10 ft divided by (36 in minus total rise, rounded up to the next 1 in)',
];

const also = (inches: number) => {
  const open = opened(...STAIR);
  return alsoChanged(open.estimate, open.cell('Total rise'), new Dec(inches)).map(
    ({ cell, ...each }) => ({ ...each, name: open.estimate.state(cell).input.name }),
  );
};

describe('another amount', () => {
  it('changes nothing where every check says what it says now', () => {
    expect(also(29)).toEqual([]);
  });

  it('makes a check say no, with its caution, and another hold', () => {
    expect(also(31.5)).toEqual([
      {
        kind: 'says-no',
        name: 'Riser check',
        caution: 'Too steep; ask the local building department.',
      },
      { kind: 'holds-then', name: 'Low check' },
    ]);
  });

  it('passes what is sensible, its own limits first', () => {
    expect(also(10)).toEqual([
      {
        kind: 'not-sensible',
        name: 'Total rise',
        side: 'below',
        shown: '10 in',
        limits: '12 in up to 60 in',
      },
      expect.objectContaining({ kind: 'not-sensible', name: 'Unit rise', side: 'below' }),
    ]);
  });

  it('leaves a cell without a value', () => {
    expect(also(36)).toContainEqual({ kind: 'without-value', name: 'Gap' });
  });

  it('leaves the notebook as it is', () => {
    const open = opened(...STAIR);
    const before = open.estimate.notebook.text;
    alsoChanged(open.estimate, open.cell('Total rise'), new Dec(60));
    expect([open.estimate.notebook.text, open.estimate.canUndo()]).toEqual([before, null]);
  });
});
