// A wrong answer names the mistakes that give it; a right one is right in any unit that fits.
import { describe, expect, it, test } from 'vitest';
import { type Diagnosis, diagnose, stepOfCell } from '../../src/mistakes/diagnose.ts';
import type { Mistake } from '../../src/mistakes/mistake.ts';
import { type Opened, opened } from '../moves-it/opened.ts';

const open = opened(
  'Slab length: 12 ft',
  'Slab width: 4 ft 6 in',
  'Thickness: 4 in',
  'Waste: 10%',
  'Yield: 0.5 cubic feet per bag',
  'Bag price: $6.48 per bag',
  'Area: slab length by slab width',
  'Volume: slab length by slab width by thickness',
  'In yards: volume in cubic yards',
  'With waste: volume plus waste',
  'Bags: with waste in bags of yield',
  'Concrete: bags at bag price',
  '  - cost: material',
  'Margin: 20%',
  'Price: concrete for a margin profit',
  'Marked up: concrete marked up margin',
  'Posts: a post every 4 ft along slab length',
  'Board width: 5 1/2 in',
  'Rows: 11 ft divided by board width, rounded up, as boards',
  'Pace: 22 sq ft per hour',
  'Hours: area divided by pace',
  'Task: 1 h 30 min',
  'Tasks: task times 4',
  'Mixing: bags at 8 min per bag, at $45 per hour',
  'Laying: area at pace, at $45 per hour',
  'Stone: volume at $54 per cubic yard',
  'Form: slab length by slab width by (thickness plus 2 in)',
  'Fall: 11 in at 1/8 in per ft',
  'Spare: volume minus 20 cubic feet, not less than 0 cubic feet',
  'Tip: 15% of concrete',
  'Both: $7,500 for 10% overhead and 15% profit',
  'Debt: -$50 plus $80',
);

function ask(name: string, answer: string, on: Opened = open): Diagnosis {
  const step = stepOfCell(on.estimate, on.cell(name));
  if (!step)
    throw new Error(
      `${name} is not read: ${JSON.stringify(on.estimate.state(on.cell(name)).outcome)}`,
    );
  return diagnose(on.estimate, step, answer);
}

function named(diagnosis: Diagnosis): readonly Mistake[] {
  if (diagnosis.kind !== 'wrong') throw new Error(`it is ${diagnosis.kind}`);
  return diagnosis.mistakes.map(({ mistake }) => mistake);
}

describe('a right answer', () => {
  test.for([
    ['Volume', '18'],
    ['Volume', '18 cubic feet'],
    ['Volume', '18.04'],
    ['Volume', '0.67 cubic yards'],
    ['Volume', '31104 cubic inches'],
    ['Volume', '0.51 m³'],
    ['Area', '54'],
    ['Area', '6 sq yards'],
    ['Bags', '40'],
    ['Bags', '40 bags'],
    ['Concrete', '259.20'],
    ['Concrete', '$259.20'],
    ['Hours', '2.45'],
    ['Hours', '2.45 hours'],
    ['Hours', '147 minutes'],
    ['Tasks', '6 hours'],
    ['Tasks', '6'],
    ['Posts', '4'],
  ] as const)('to %s may be %s', ([name, answer]) => {
    expect(ask(name, answer)).toEqual({ kind: 'right' });
  });
});

describe('a wrong answer', () => {
  test.for([
    // 4 in taken for 4 ft.
    ['Volume', '216', 'inches-for-feet'],
    ['Volume', '18 sq ft', 'square-for-cubic'],
    ['Volume', '54', 'factor-missing'],
    ['Volume', '54 sq ft', 'factor-missing'],
    ['Volume', '18 cubic yards', 'cubic-feet-for-yards'],
    ['In yards', '18', 'cubic-feet-for-yards'],
    ['In yards', '2', 'square-for-cubic'],
    // 4 ft 6 in taken for 4.6 ft.
    ['Area', '55.2', 'tenths-for-inches'],
    ['With waste', '18', 'share-forgotten'],
    ['With waste', '21.78', 'share-twice'],
    ['Bags', '39', 'rounded-down'],
    ['Price', '311.04', 'markup-for-margin'],
    ['Marked up', '324', 'markup-for-margin'],
    ['Posts', '3', 'fence-post'],
    // 132 in of boards that are called 6 in wide.
    ['Rows', '22', 'nominal-for-actual'],
    ['Hours', '1188', 'rate-upside-down'],
    ['Hours', '0.41', 'rate-upside-down'],
    ['Concrete', '6.17', 'rate-upside-down'],
    ['Tasks', '5.2', 'minutes-as-decimals'],
    ['Concrete', '$295.20', 'digits-swapped'],
    ['Area', '45', 'digits-swapped'],
    ['Tasks', '360', 'minutes-for-hours'],
    // 320 minutes priced as hours; 5,400 cents of the mistake are 60 times too many.
    ['Mixing', '$14,400', 'minutes-for-hours'],
    // 54 sq ft times 22 an hour, and on from there.
    ['Laying', '$53,460', 'rate-upside-down'],
    // 18 cubic feet at the price of a yard.
    ['Stone', '$972', 'cubic-feet-for-yards'],
    // The whole of a product left out but for its length.
    ['Form', '54', 'factor-missing'],
    ['Bags', '39.6', 'rounded-down'],
    ['Fall', '1 3/8 in', 'inches-for-feet'],
    ['Fall', '0.114583333 ft', 'inches-for-feet'],
    ['Volume', '31104', 'inches-for-feet'],
    ['Volume', '18.00 sq ft', 'square-for-cubic'],
    ['Area', '7776', 'inches-for-feet'],
    ['Tip', '259.20', 'factor-missing'],
    ['Both', '$7,500', 'share-forgotten'],
    ['Both', '$13,333.33', 'share-twice'],
    ['Both', '$9,375', 'markup-for-margin'],
    ['Debt', '$75', 'digits-swapped'],
    ['Stone', '$63', 'digits-swapped'],
  ] as const)('to %s of %s is %s', ([name, answer, mistake]) => {
    expect(named(ask(name, answer))).toContain(mistake);
  });

  it('names both of two mistakes that give the same number', () => {
    const both = opened(
      'Length: 12 ft',
      'Rail: length minus 1 in',
      'Waste: 10%',
      'Boards: 10 boards plus waste, rounded up',
    );
    // 11 boards: without the waste, or one less.
    expect(named(ask('Boards', '10', both))).toEqual(
      expect.arrayContaining(['share-forgotten', 'fence-post']),
    );
  });

  it('tells whose amount was mistaken, and hints without the answer', () => {
    const told = ask('Volume', '216');
    if (told.kind !== 'wrong') throw new Error('it is right');
    const [first] = told.mistakes;
    expect(first).toEqual({
      mistake: 'inches-for-feet',
      of: [open.cell('Thickness')],
      hint: expect.stringContaining('12 inches in a foot') as string,
    });
  });

  it.each([
    // 1% for 10%, or the waste twice over but for its tenth.
    ['With waste', '18.18', ['digits-swapped']],
    // 4 in taken for 4 ft is 12 times too much, and so are inches that were divided by 144.
    ['Volume', '216', ['inches-for-feet', 'square-for-cubic']],
  ] as const)('%s of %s is all of what gives that number', (name, answer, mistakes) => {
    expect(named(ask(name, answer))).toEqual(expect.arrayContaining([...mistakes]));
  });

  it('can be wrong without a reason that is known', () => {
    expect(ask('Volume', '1234567')).toEqual({ kind: 'wrong', mistakes: [] });
  });
});

it('an answer that is no number is not marked at all', () => {
  expect(ask('Volume', 'no idea').kind).toBe('unread');
  expect(ask('Volume', '').kind).toBe('unread');
});
