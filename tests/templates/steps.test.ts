// Wood steps riser by riser: stringers and boxes, random heights and boards, and each of their checks made to say no.
import { describe, expect, test } from 'vitest';
import { keepsItsPromises } from './random-givens.ts';
import { type Written, openedWith, warnsWhere } from './warns.ts';

const FILE = 'steps.md';

keepsItsPromises({
  file: FILE,
  enough: [
    'tread boards times 12 ft is at least tread planks times stair width',
    'riser boards times 12 ft is at least riser pieces times stair width',
    'stringer boards times stock length is at least stringers times blank length',
    'stock length is at least blank length',
    'box boards times 12 ft is at least box wood',
    'actual width of riser board is at least riser opening',
    'unit rise is at most step limit',
    'least finished in risers is at least 0 in',
    'total of finished in risers is total rise',
    'boards each times (board width plus board gap) is at least tread cover',
  ],
  mayBeNegative: ['Taken off the foot', 'Risers: off'],
  grows: [
    {
      given: 'Frame height',
      never: ['Riser count', 'Treads', 'Total run', 'Blank length', 'Stock length', 'Tread boards', 'Rail length', 'Screw count'],
    },
    { given: 'Deck boards', never: ['Total rise', 'Riser count', 'Treads'] },
    {
      given: 'Stair width',
      never: ['Stringers', 'Tread boards', 'Riser boards', 'Stringer boards', 'Foot load', 'Hangers', 'Kicker fixing'],
    },
    { given: 'Tread depth', never: ['Total run', 'Boards each', 'Blank length', 'Notch', 'Tread lumber'] },
  ],
});

warnsWhere(FILE, {
  'Low check': { 'Frame height': '8 in', 'Deck boards': '0 in', 'Riser limit': '7 in per riser' },
  'Flight check': { 'Frame height': '108 in' },
  'Size check': { 'Tread thickness': '2 in' },
  'Box check': { 'Built of': 'boxes', 'Box height': '7 1/2 in' },
  'Riser check': { 'Built of': 'boxes' },
  'Even check': { 'Built of': 'boxes' },
  'Tread check': { 'Tread depth': '9 3/4 in' },
  'Comfort check': { 'Tread depth': '14 in' },
  'Nosing check': { Nosing: '1/2 in' },
  'Rip check': { 'Tread depth': '11 1/2 in' },
  'Width check': { 'Stair width': '35 in' },
  'Spacing check': { 'Tread board': '5/4x6', 'Stringer spacing': '18 in' },
  'Wood check': { Stringer: '2x10' },
  'Span check': { 'Frame height': '60 in' },
  'Opening check': { 'Open risers': 'yes', 'Frame height': '36 in' },
  'Foot check': { 'Foot on': 'soil' },
  'Handrail check': { 'Handrail count': '0 rails' },
  'Rail height check': { 'Handrail height': '39 in' },
  'Guard check': { 'Frame height': '30 in' },
});

/** What the table says of the first risers. */
function risersOf(written: Written, column: number): readonly (string | undefined)[] {
  const steps = openedWith(FILE, written);
  const [, count] = steps.figure('Riser count');
  const rows = steps.estimate.rows(steps.cell('Risers').id) ?? [];
  return rows.slice(0, count).map((row) => steps.estimate.shown(row[column] ?? 0)?.text);
}

const MARK = 1;
const FINISHED = 4;
const DROP_OF_15 = {
  'Frame height': '14 in',
  'Deck boards': '1 in',
  'Finish below': '0 in',
  'Tread board': '5/4x6',
  'Tread thickness': '1 in',
};

describe('riser by riser', () => {
  test('every riser of a cut flight is the same when boards and finishes lie', () => {
    expect(risersOf({}, FINISHED)).toEqual(Array.from({ length: 4 }, () => '7 5/16 in'));
    // 29 1/4 in by 4; the foot is buried by 3/4 in and the first tread is 1 1/2 in: 3/4 in off every notch.
    expect(risersOf({}, MARK)).toEqual(['6 9/16 in', '13 7/8 in', '21 3/16 in', '29 in']);
  });

  test('marks are rounded each on its own and never drift', () => {
    // 30 3/8 in by 4 risers is 7 19/32 in.
    const written = { 'Frame height': '29 3/8 in', 'Finish below': '0 in' };
    expect(risersOf(written, MARK)).toEqual(['6 1/8 in', '13 11/16 in', '21 5/16 in', '29 3/8 in']);
    expect(risersOf(written, FINISHED)).toEqual(['7 5/8 in', '7 9/16 in', '7 5/8 in', '7 9/16 in']);
  });

  test('cuts made for a board as it is called put the first and last riser off', () => {
    const written = { 'Tread thickness': '2 in' };
    expect(risersOf(written, FINISHED)).toEqual(['6 13/16 in', '7 5/16 in', '7 5/16 in', '7 13/16 in']);
    const steps = openedWith(FILE, written);
    expect([steps.holds('Size check'), steps.holds('Even check')]).toEqual([false, false]);
  });

  test('a floor chosen after the cuts moves the first riser by its thickness', () => {
    const before = risersOf({ 'Finish below': '0 in' }, MARK);
    const after = risersOf({ 'Finish below': '3/4 in' }, MARK);
    expect([before[0], after[0]]).toEqual(['6 in', '6 9/16 in']);
  });

  test('a drop of 15 in is two steps of 7 1/2 in where it is cut', () => {
    expect(risersOf(DROP_OF_15, FINISHED)).toEqual(['7 1/2 in', '7 1/2 in']);
  });

  test('one box of a 2x8 with a 1 in board makes 8 1/4 and 6 3/4 of it, and is refused', () => {
    const boxed = { ...DROP_OF_15, 'Built of': 'boxes' };
    expect(risersOf(boxed, FINISHED)).toEqual(['8 1/4 in', '6 3/4 in']);
    const steps = openedWith(FILE, boxed);
    expect(steps.figure('Riser spread')).toEqual(['in', 1.5]);
    expect([steps.holds('Riser check'), steps.holds('Even check')]).toEqual([false, false]);
  });

  test('a box of the right height would do', () => {
    const boxed = { ...DROP_OF_15, 'Built of': 'boxes', 'Box frame': '2x6', 'Box height': '5 1/2 in', 'Frame height': '12 in' };
    expect(risersOf(boxed, FINISHED)).toEqual(['6 1/2 in', '6 1/2 in']);
    const steps = openedWith(FILE, boxed);
    expect([steps.holds('Riser check'), steps.holds('Even check')]).toEqual([true, true]);
    // Two of 4 ft and four braces of a tread between them, 11 1/2 ft and a tenth more; no stringer and no kicker.
    expect(steps.figure('Box boards')).toEqual(['board', 2]);
    expect(steps.figure('Stringers')).toEqual(['stringer', 0]);
    expect(steps.figure('Kicker fixing')).toEqual(['$', 0]);
  });

  test('where nothing is to climb there are no steps, nothing is at fault, and the check says so', () => {
    const steps = openedWith(FILE, { 'Frame height': '0 in', 'Deck boards': '0 in', 'Finish below': '0 in' });
    expect(steps.estimate.costs().total.incomplete).toEqual([]);
    expect(steps.figure('Treads')).toEqual(['tread', 0]);
    expect(steps.shown('Low check')).toBe('no');
  });

  test('a drop of one riser has no steps', () => {
    const steps = openedWith(FILE, { 'Frame height': '6 1/2 in', 'Finish below': '0 in' });
    expect(steps.figure('Riser count')).toEqual(['riser', 1]);
    for (const name of ['Tread lumber', 'Stringer lumber', 'Riser lumber', 'Hangers', 'Step screws']) {
      expect(steps.figure(name)).toEqual(['$', 0]);
    }
  });
});
