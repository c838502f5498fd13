// How far a result moved since some moment: in its own words, signed, whatever it is written in by then.
import { describe, expect, it } from 'vitest';
import {
  type Result,
  compareStood,
  movedSince,
  signed,
  stoodOf,
} from '../../src/moves-it/stood.ts';
import { opened } from './opened.ts';

/** What each edit of the cell moves the watched one by. */
function told(lines: readonly string[], watched: string, ...edits: readonly string[]) {
  const open = opened(...lines);
  const [given] = open.cells();
  const result: Result = { of: 'cell', cell: open.cell(watched) };
  const before = stoodOf(open.estimate, result);
  return edits.map((formula) => {
    open.estimate.setFormula(given, formula);
    const moved = movedSince(open.estimate, result, before);
    return signed(moved) ?? moved.moves;
  });
}

describe('how far a result moved', () => {
  it('is said as the result is', () => {
    const bags = ['Wide: 12 ft', 'Bags: wide in bags of 5 ft', 'Bid: wide at $3.10 per ft'];
    expect(told(bags, 'Bags', '16 ft', '4 ft', '12 ft')).toEqual(['+1 bag', '−2 bags', 'not']);
    expect(told(bags, 'Bid', '16 ft', '4 ft')).toEqual(['+$12.40', '−$24.80']);
    expect(told(['Wide: 12 ft'], 'Wide', '12 ft 1/2 in', '11 ft')).toEqual(['+1/2 in', '−1 ft']);
    expect(told(['Waste: 10%'], 'Waste', '15%', '2.5%')).toEqual(['+5%', '−7.5%']);
    expect(told(['Rate: $50 per hour'], 'Rate', '$62 per hour')).toEqual(['+$12.00 per hour']);
  });

  it('is told between unlike units of a kind, and of a length written otherwise it is none', () => {
    expect(told(['Wide: 1 ft'], 'Wide', '304.8 mm', '254 mm')).toEqual(['not', '−50.8 mm']);
    expect(told(['Pay: $60 per hour'], 'Pay', '$1 per minute')).toEqual(['not']);
  });

  it('is no number where it measures something else, has no value, or says yes or no', () => {
    expect(told(['Wide: 12 ft'], 'Wide', '12 lb', '?', '$4')).toEqual([
      'otherwise',
      'otherwise',
      'otherwise',
    ]);
    const check = ['Wide: 12 ft', 'Fits: wide is at most 12 ft'];
    expect(told(check, 'Fits', '13 ft', '11 ft')).toEqual(['otherwise', 'not']);
  });

  it('is found of the job and of a part, where all of it is cents', () => {
    const open = opened(
      'Hours: 4 hours',
      'Labour: hours at $50.33 per hour',
      '  - cost: labour',
      'Overhead: 10% of labour',
      '  - price: overhead',
    );
    const [part] = open.estimate.notebook.parts.filter(({ key }) => key !== '');
    const results: readonly Result[] = [
      { of: 'price' },
      { of: 'direct' },
      { of: 'part', part: part.key },
    ];
    const before = results.map((result) => stoodOf(open.estimate, result));
    expect(before.map(({ text }) => text)).toEqual(['$221.45', '$201.32', '$201.32']);
    open.estimate.setFormula(open.cell('Hours'), '3 hours');
    expect(results.map((r, i) => signed(movedSince(open.estimate, r, before[i])))).toEqual([
      '−$55.36',
      '−$50.33',
      '−$50.33',
    ]);
  });

  it('orders what is of one kind and nothing else', () => {
    const open = opened('A: 12 ft', 'B: 4 m', 'C: 3 lb', 'D: ?');
    const [a, b, c, d] = ['A', 'B', 'C', 'D'].map((name) =>
      stoodOf(open.estimate, { of: 'cell', cell: open.cell(name) }),
    );
    expect([compareStood(a, b), compareStood(b, a), compareStood(a, a)]).toEqual([-1, 1, 0]);
    expect([compareStood(a, c), compareStood(a, d), compareStood(d, d)]).toEqual([
      null,
      null,
      null,
    ]);
  });
});
