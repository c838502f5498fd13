// Bags, trucks, boards, blocks and pallets: what was ordered, and what the job needed.
import { describe, expect, test } from 'vitest';
import { opened } from '../published/opened.ts';

const part = (...lines: string[]) =>
  opened(`# Order\n## Site\n${lines.map((line) => `- ${line}`).join('\n')}\n`);

describe('PC-05: bags for post holes', () => {
  const notebook = part(
    'Holes: 26 holes',
    'Hole diameter: 8 in',
    'Hole depth: 24 in',
    'Post width: 5 1/2 in',
    'Bag yield: 0.5 cubic feet per bag',
    'Hole volume: circle area for hole diameter by hole depth, in cubic feet',
    'Post volume: post width squared by hole depth, in cubic feet',
    'Taken by the post: what share post volume is of hole volume',
    'Each hole: hole volume minus post volume',
    'Bags: holes times each hole, in bags of bag yield',
    'Without the post: holes times hole volume, in bags of bag yield',
    'Used: 52 bags minus 34 bags',
  );

  test('the post is taken out of the hole before the bags are counted', () => {
    expect(notebook.figure('Hole volume')[1]).toBeCloseTo(0.698132, 5);
    expect(notebook.figure('Taken by the post')[1]).toBeCloseTo(60.180463, 4);
    expect(notebook.figure('Each hole')[1]).toBeCloseTo(0.277993, 5);
    expect(notebook.figure('Bags')).toEqual(['bag', 15]);
  });

  test('forgetting it more than doubles the order', () => {
    expect(notebook.figure('Without the post')).toEqual(['bag', 37]);
    expect(notebook.figure('Used')).toEqual(['bag', 18]);
  });
});

test('PC-07: waste is a cell beside the order, and rounding up is no waste', () => {
  const notebook = part(
    'Slab volume: 8.8 cubic yards',
    'Waste: 10%',
    'Needed: 9 cubic yards plus 0.5 cubic yards',
    'Overrun: what share (needed minus slab volume) is of slab volume',
    'Order: slab volume plus waste, rounded up to the next 1/4 cubic yard',
    'Missing half: $430 divided by 0.5 cubic yards, in $ per cubic yard',
    'A yard too many: 1 cubic yard at ($1,000 divided by 9 cubic yards)',
  );
  expect(notebook.figure('Needed')).toEqual(['cubic yd', 9.5]);
  expect(notebook.figure('Overrun')[1]).toBeCloseTo(7.954545, 5);
  expect(notebook.figure('Order')).toEqual(['cubic yd', 9.75]);
  expect(notebook.figure('Missing half')).toEqual(['$ per cubic yd', 860]);
  expect(notebook.shown('A yard too many')).toBe('$111.11');
  notebook.estimate.setFormula(notebook.cell('Waste').id, '0%');
  expect(notebook.figure('Order')).toEqual(['cubic yd', 9]);
});

test('PC-13: no board is bought for a rounding error', () => {
  const notebook = part(
    'Fifty: 50 boards plus 10%, rounded up',
    'Hundred: 100 boards plus 10%, rounded up',
    'Nickels: $10.10 minus $10, rounded down to the next 5 cents',
  );
  expect(notebook.figure('Fifty')).toEqual(['board', 55]);
  expect(notebook.figure('Hundred')).toEqual(['board', 110]);
  expect(notebook.shown('Nickels')).toBe('$0.10');
});

describe('PC-35: an area that its sides can not have', () => {
  test('three sides that close are worked and three that do not are refused in words', () => {
    const notebook = part(
      'Good: triangle area for sides 3 ft, 4 ft and 5 ft',
      'Bad: triangle area for sides 3 ft, 4 ft and 9 ft',
      'After: good plus bad',
    );
    expect(notebook.shown('Good')).toBe('6 sq ft');
    expect(notebook.state('Bad').outcome.kind).toBe('fault');
    expect(notebook.shown('After')).toBe('waits for Bad');
  });

  test('the angles of a five-sided patio can be checked before anything is ordered', () => {
    const notebook = part(
      'Angles: total of 60, 65, 70, 75 and 90',
      'Five corners: 180 times (5 minus 2)',
      'Closes: angles is five corners',
    );
    expect(notebook.figure('Angles')).toEqual(['', 360]);
    expect(notebook.figure('Five corners')).toEqual(['', 540]);
    expect(notebook.holds('Closes')).toBe(false);
  });
});

test('PC-41: blocks laid alternately need the mean of their two faces', () => {
  const notebook = part(
    'Wall length: 76 ft',
    'Wall height: 12 in',
    'Face: 12 in',
    'Courses: wall height in courses of 4 in',
    'Each course: wall length in blocks of face',
    'Blocks: courses times (each course divided by 1 course)',
    'Weight: (230 blocks plus 104 blocks) at 40 lb per block, in tons',
  );
  expect(notebook.figure('Courses')).toEqual(['course', 3]);
  expect(notebook.figure('Blocks')).toEqual(['block', 228]);
  expect(notebook.figure('Weight')).toEqual(['ton', 6.68]);
  notebook.estimate.setFormula(notebook.cell('Face').id, 'average of 12 in and 10 in');
  expect(notebook.figure('Blocks')).toEqual(['block', 249]);
});

test('PC-43: another supplier, other pallets, another count', () => {
  const notebook = part(
    'Lawn: 1,350 sq ft',
    'Counted pallet: 169 pieces times (16 in by 24 in), in square feet',
    'Pallet holds: 450 sq ft per pallet',
    'Pallets: lawn plus 10% waste, in pallets of pallet holds',
    'Left over: pallets times pallet holds minus (lawn plus 10% waste)',
  );
  expect(notebook.figure('Counted pallet')[1]).toBeCloseTo(450.666667, 5);
  expect(notebook.figure('Pallets')).toEqual(['pallet', 4]);
  expect(notebook.figure('Left over')).toEqual(['sq ft', 315]);
  notebook.estimate.setFormula(notebook.cell('Pallet holds').id, '504 sq ft per pallet');
  expect(notebook.figure('Pallets')).toEqual(['pallet', 3]);
  expect(notebook.figure('Left over')).toEqual(['sq ft', 27]);
});
