// What matters: swings by hand, in their order, with jumps where whole packs, boards and branches make them.
import { describe, expect, it } from 'vitest';
import { type Matter, whatMatters } from '../../src/moves-it/matters.ts';
import { type Opened, opened } from './opened.ts';

function matters(open: Opened, result: string): readonly (Matter & { readonly name: string })[] {
  const found = whatMatters(open.estimate, open.cell(result));
  if (!found) throw new Error(`${result} is no number`);
  return found.givens.map((each) => ({
    ...each,
    name: open.estimate.state(each.given).input.name,
  }));
}

describe('what matters', () => {
  const job = [
    'Hours: 40 hours, 30 at best, 60 at worst',
    'Rate: $50 per hour',
    'Trips: 2 trips',
    'Fuel: $20 per trip',
    'Labour: hours at rate',
    '  - cost: labour',
    'Driving: trips at fuel',
    '  - cost: fee',
    'Beside: 5 ft',
    'All: labour plus driving',
  ];

  it('goes by ranges where given and by ten per cent where not, the greatest swing first', () => {
    const found = matters(opened(...job), 'All');
    expect(found.map(({ name, by, swing }) => [name, by, swing])).toEqual([
      ['Hours', 'range', 1500],
      ['Rate', 'tenth', 400],
      ['Trips', 'whole', 40],
      ['Fuel', 'tenth', 8],
    ]);
    const [hours, rate, trips] = found;
    expect([hours.from, hours.to]).toEqual([
      { at: 30, result: 1540 },
      { at: 60, result: 3040 },
    ]);
    expect([rate.from, rate.to, rate.unit]).toEqual([
      { at: 45, result: 1840 },
      { at: 55, result: 2240 },
      '$ per hour',
    ]);
    expect(trips.points).toEqual([
      { at: 1, result: 2020 },
      { at: 2, result: 2040 },
      { at: 3, result: 2060 },
    ]);
  });

  it('tells a slope without jumps, be it to the cent', () => {
    for (const { jumps, more } of matters(opened(...job), 'All')) {
      expect([jumps, more]).toEqual([[], false]);
    }
  });

  it('says how many whole packs there are at either end, of a chain of them the last', () => {
    const open = opened(
      'Slab length: 12 ft',
      'Bags needed: slab length by 4 ft by 4 in, in bags of 0.45 cubic feet per bag',
      'Pallets: bags needed in pallets of 12 bags',
      'Concrete: pallets at $70 per pallet',
      'Paint: slab length at $2 per ft',
      'All: concrete plus paint',
    );
    const [length] = matters(open, 'All');
    expect(length.packs).toEqual([
      { cell: open.cell('Pallets'), from: '3 pallets', to: '4 pallets' },
    ]);
    expect(length.jumps).toHaveLength(1);
    // Where nothing jumps nothing is counted.
    expect(matters(opened(...job), 'All').flatMap(({ packs }) => packs)).toEqual([]);
  });

  it('tells jumps by whole packs where they are', () => {
    const open = opened(
      'Length: 10 ft',
      'Boards: length divided by 3 in, rounded up, as boards',
      'Lumber: boards at $8 per board',
      '  - cost: material',
    );
    const [length] = matters(open, 'Lumber');
    // 9 to 11 ft are 36 to 44 boards: a further one is begun right after each quarter foot.
    expect([length.swing, length.jumps.length]).toEqual([64, 8]);
    length.jumps.forEach(({ at, before, after }, i) => {
      expect(at).toBeCloseTo(9 + i / 4, 8);
      expect([before, after]).toEqual([(36 + i) * 8, (37 + i) * 8]);
    });
  });

  it('tells a jump on top of a slope, up and down', () => {
    const open = opened(
      'Length: 10 ft',
      'Cost of it: length at $10 per ft plus ($7 where length is more than 10 1/2 ft, otherwise $0) minus ($3 where length is at least 9 1/2 ft, otherwise $0)',
    );
    const [length] = matters(open, 'Cost of it');
    expect(length.jumps).toHaveLength(2);
    const [down, up] = length.jumps;
    expect([down.at, down.before, down.after]).toEqual([9.5, 95, 92]);
    expect([up.at, up.before, up.after]).toEqual([10.5, 102, 109]);
  });

  it('tells no jump on a curve', () => {
    const open = opened(
      'Side: 10 ft',
      'Room: side by side by side',
      'Root: square root of room times 1 ft',
    );
    expect(matters(open, 'Room')[0].jumps).toEqual([]);
  });

  it('takes steps for a slope that are too small a part of the swing to be seen', () => {
    const open = opened('Length: 1000 ft', 'Pieces: length divided by 2 in, rounded up');
    const [length] = matters(open, 'Pieces');
    // 900 to 1,100 ft are 1,200 pieces.
    expect([length.swing, length.jumps, length.more]).toEqual([1200, [], false]);
  });

  it('tells some of hundreds of jumps, and that there are more', () => {
    const open = opened('Length: 250 ft', 'Pieces: length divided by 2 in, rounded up');
    const [length] = matters(open, 'Pieces');
    expect(length.swing).toBe(300);
    expect(length.jumps.length).toBeGreaterThanOrEqual(200);
    for (const { before, after } of length.jumps) expect(after - before).toBe(1);
    expect(length.more || length.jumps.length === 300).toBe(true);
  });

  it('leaves out what stands in tables of the trade', () => {
    const open = opened(
      'Hole: 3 cubic yards',
      'Weight: hole times (read loose off soil volumes for ground "clay")',
    );
    const found = whatMatters(open.estimate, open.cell('Weight'));
    expect(found?.givens.map(({ given }) => given)).toEqual([open.cell('Hole')]);
  });

  it('reaches givens in rows', () => {
    const open = opened(
      'Bays:',
      '',
      '  | bay | length | area: length by 4 ft |',
      '  |---|---|---|',
      '  | A | 12 ft | |',
      '  | B | 5 ft | |',
      '',
      'Paving: total of area in bays',
    );
    expect(matters(open, 'Paving').map(({ name, swing }) => [name, swing])).toEqual([
      ['Bays: A: length', 9.6],
      ['Bays: B: length', 4],
    ]);
  });

  it('keeps a given that does not move the result, as the last', () => {
    const open = opened(
      'Waste: 10%',
      'Bags: 30 bags plus waste, rounded up',
      'Price: bags at $6 per bag',
    );
    open.estimate.setByHand(open.cell('Bags'), '40 bags', 'counted');
    const found = matters(open, 'Price');
    expect(found.map(({ name, swing }) => [name, swing])).toEqual([['Waste', 0]]);
  });

  it('is asked of numbers alone', () => {
    const open = opened('Width: 5 ft', 'Wide: width is more than 4 ft');
    expect(whatMatters(open.estimate, open.cell('Wide'))).toBe(null);
  });
});
