// The Kestrel Court estimate against a reckoning of its own: boards laid one by one, bags emptied one by one,
// in plain whole numbers and without any of the notebook's formulas. And what its checks do when a size changes.
import { describe, expect, test } from 'vitest';
import { cellsOf, opened } from '../published/opened.ts';
import { remarkOf, toCents } from './remarks.ts';
import { INDEX, templateText } from './texts.ts';
import { warnsWhere } from './warns.ts';

const text = templateText(INDEX.demo);

/** How many whole ones it takes: both are whole numbers. */
const upBy = (whole: number, step: number) => Math.floor((whole + step - 1) / step);
/** A whole number of cents, half a cent up. */
const cents = (of: number, by = 1) => {
  const [n, d] = [BigInt(of), BigInt(by)];
  return (n * 2n + d) / (d * 2n);
};
/** Cents of a share in hundredths of a percent, half a cent up. */
const share = (of: bigint, hundredths: bigint) => (of * hundredths * 2n + 10_000n) / 20_000n;

/** Cubic inches in a cubic yard. */
const YARD = 46_656;
/** Half tons of stone, in cents of a price for the ton: loose by so many percent, 1.4 tons to the yard. */
const stone = (cubicInches: number, percent: number, price: number) =>
  (upBy(cubicInches * (100 + percent) * 14, YARD * 500) * price) / 2;

const HOUR = 4500;
/** Minutes at the hour rate. */
const minutes = (count: number, each: number) => cents(count * each * HOUR, 60);
/** So much at so much in an hour; tenths of a foot and the like are brought to whole numbers by the caller. */
const hours = (amount: number, pace: number) => cents(amount * HOUR, pace);

// The landing: two bays and the thickened edge under the stringers, in inches.
const LANDING = 72 * 48 + 60 * 42;
const EDGE = 48 * 12 * 8;
const SLAB = LANDING * 4 + EDGE;
/** A bag makes 0.45 cubic feet; a tenth is lost. */
const BAG = 45 * 1728;
const bags = emptied(SLAB * 110, BAG);

function emptied(volume: number, bag: number): number {
  let count = 0;
  for (let poured = 0; poured < volume; poured += bag) count++;
  return count;
}

/** Balusters set one more at a time until no gap lets the ball through; eighths of an inch. */
function balusters(opening: number, ball: number): number {
  let count = 0;
  while ((opening - count * 12) / (count + 1) >= ball) count++;
  return count;
}

const SIDE = 3 * balusters(52.5 * 8, 32);
const FRONT = 2 * balusters(68.5 * 8, 32);
const STAIR = 2 * balusters(29.5 * 8, 35);
const slope = Math.hypot(30, 33);
const guard = 2 * 168 + 144 + 2 * slope;

/** Units of 16 in laid course by course, each second one from a half. */
function unitsLaid(): number {
  let count = 0;
  for (let course = 0; course < 4; course++) {
    for (let at = course % 2 === 0 ? 0 : -8; at < 240; at += 16) count++;
  }
  return count;
}

const DUG = { landing: LANDING * 6.5 + EDGE, wall: 240 * 28 * 21, path: 288 * 48 * 6 };

/** Every cost line, in cents. */
const LINES: Readonly<Record<string, Readonly<Record<string, bigint>>>> = {
  'Deck frame': {
    'Sister joists': cents(3 * 3360),
    'Joist hangers': cents(13 * 340),
    'Ledger fixing': cents((upBy(192 - 4, 13) + 1) * 310 + 2 * 3100),
    'Flashing and tape': cents(upBy(16, 10) * 1860 + upBy(13 * 14, 65) * 1940),
    'Mend the frame': hours(13, 1),
  },
  'Deck surface': {
    Decking: cents(upBy(30 * 105, 100) * 2840),
    'Deck screws': cents(upBy(13 * 30 * 2 * 105, 35_000) * 3850),
    'Lay the boards': hours(224, 22),
    Oiling: cents(224 * 115),
  },
  Landing: {
    'Landing stone': cents(stone(LANDING * 4, 20, 4600)),
    Forms: cents(upBy(402, 144) * 1360 + (upBy(402, 36) + 1) * 160),
    Concrete: cents(bags * 648),
    'Mix and place': minutes(bags, 8),
    'Dig and stone': hours(LANDING, 14 * 144),
    'Set the forms': hours(402, 12 * 12),
    'Finish and cure': hours(LANDING, 20 * 144),
    'Boards on sleepers': 0n,
  },
  Steps: {
    'Stringer lumber': cents(upBy(4, 120 / 60) * 3120),
    'Tread lumber': cents(upBy(3 * 2, 2) * 1180),
    'Step fixing': cents(4 * 1160),
    Handrail: cents(Math.round(((slope + 24) * 1450) / 12)),
    'Build the steps': hours(4 * 7, 4),
  },
  Railing: {
    'Post timbers': cents(upBy(12, 2) * 1560),
    'Post fixing': cents(12 * 2860),
    Rails: cents((upBy(6, 2) + upBy(4, 2) + upBy(6, 2) + upBy(4, 3)) * 1060),
    'Cap boards': cents(Math.ceil((guard * 1.1) / 192) * 2840),
    'Baluster stock': cents(96 * 215),
    'Rail screws': cents(upBy((2 * SIDE + FRONT + STAIR) * 4 * 115, 35_000) * 3850),
    'Set the posts': minutes(12, 55),
    'Fit rails and cap': cents(Math.round(((guard / 12) * HOUR) / 7)),
    'Fit the balusters': minutes(2 * SIDE + FRONT + STAIR, 3),
  },
  'Low wall': {
    'Wall units': cents(upBy(unitsLaid() * 103, 100) * 690),
    'Wall caps': cents((upBy(240, 16) + 1) * 740 + 2 * 720),
    'Wall stone': cents(stone(252 * 22 * 6, 20, 4600) + stone(240 * 12 * 18, 5, 5200)),
    'Drain pipe': cents(upBy(26, 10) * 1150 + 3400),
    'Dig the trench': hours(DUG.wall * 3, YARD * 2),
    'Lay the wall base': hours(20, 6),
    'Set the units': hours(unitsLaid(), 12),
    'Set the caps': hours(16, 10),
  },
  'Path and planting': {
    'Path stone': cents(stone(288 * 48 * 4, 20, 4600)),
    'Path gravel': cents(stone(288 * 48 * 2, 10, 5800)),
    'Path edging': cents(upBy(48, 8) * 2020 + 3400),
    'Dig the path': hours(DUG.path * 3, YARD * 2),
    'Build the path': hours(96, 30),
    'Bed plants': cents(upBy(240, 60) * 3800 + upBy(240, 18) * 1150 + upBy(240, 12) * 420),
    'Bark mulch': cents(upBy(240 * 36 * 3, 2 * 1728) * 540),
    'Plant and mulch': minutes(upBy(240, 60) + upBy(240, 18) + upBy(240, 12), 9),
    Lawn: cents(64_000),
  },
  General: {
    'Take down': hours(4 * 2, 1),
    Dumpster: cents(upBy(4 + 2, 10) * 42_000),
    'Soil away': cents((DUG.landing + DUG.wall + DUG.path) * 5 * 3800, YARD * 4),
    Permit: cents(18_600),
    Inspections: hours(2 * 3, 2),
    Delivery: cents(2 * 8500 + 11_000 + 4500),
    'Tool hire': cents(2 * 5200 + 4 * 8500 + 2 * 3600),
    'Track boards': cents(upBy(40, 8) * 3100),
    Travel: cents(7 * 1680),
    'Clean-up': minutes(7 * 20 + 240, 1),
  },
  'Often forgotten': { 'Named work cost': cents(18_500) },
};

describe('sizes and counts', () => {
  const notebook = opened(text);

  test('rows of boards laid one by one cover the deck, the last one ripped', () => {
    const width = 14 * 12 * 8;
    let [rows, left] = [0, 0];
    for (let laid = 0; laid < width; laid += 45, rows++) left = width - laid;
    expect(notebook.figure('Rows')).toEqual(['row', rows]);
    expect(notebook.figure('Last row')).toEqual(['in', left / 8]);
    expect(notebook.figure('Joists')).toEqual(['joist', 1 + 192 / 16]);
    expect(notebook.figure('Screws')).toEqual(['screw', 13 * rows * 2]);
  });

  test('the frame is read against the published spans', () => {
    // Hem-fir 2x10 at 16 in, and lag screws under joists of up to 14 ft, deck guide DCA 6, Tables 2 and 6.
    expect(notebook.figure('Joist limit')).toEqual(['ft', 13 + 7 / 12]);
    expect(notebook.figure('Ledger spacing')).toEqual(['in', 13]);
    expect(notebook.figure('Ledger screws')).toEqual(['fastener', 16]);
  });

  test('the fewest risers that are low enough are all alike, and so are their marks with the treads on', () => {
    const rise = (30.5 + 1 - 1.5) * 4;
    let risers = 1;
    while (rise > risers * 31) risers++;
    expect(notebook.figure('Riser count')).toEqual(['riser', risers]);
    expect(notebook.figure('Unit rise')).toEqual(['in per riser', rise / risers / 4]);
    const { id } = notebook.cell('Risers');
    const shown = notebook.estimate.rows(id)?.map((row) => row.map((cell) => notebook.estimate.shown(cell)?.text));
    expect(shown).toEqual([
      ['1 riser', '6 in', '7 1/2 in', '7 1/2 in'],
      ['2 risers', '13 1/2 in', '15 in', '7 1/2 in'],
      ['3 risers', '21 in', '22 1/2 in', '7 1/2 in'],
      ['4 risers', '29 in', '30 in', '7 1/2 in'],
    ]);
  });

  test('bags are emptied until the slab with its waste is full', () => {
    expect(notebook.figure('Slab volume')).toEqual(['cubic ft', SLAB / 1728]);
    expect(notebook.figure('Bags to buy')).toEqual(['bag', bags]);
  });

  test('balusters stand as close as the ball asks, posts one more than spaces', () => {
    expect(notebook.figure('Balusters')).toEqual(['baluster', 2 * SIDE + FRONT + STAIR]);
    expect(notebook.figure('Posts')).toEqual(['post', 4 + (3 - 1) + 4 + 2]);
    expect(notebook.figure('Units laid')).toEqual(['unit', unitsLaid()]);
  });
});

describe('the money, in cents', () => {
  const notebook = opened(text);
  const line = (name: string) => toCents(notebook.figure(name)[1].toFixed(2));
  const kinds = { material: 0n, labour: 0n, equipment: 0n, subcontract: 0n, fee: 0n };
  for (const [part, lines] of Object.entries(LINES)) {
    for (const [name, amount] of Object.entries(lines)) {
      const { money } = notebook.cell(`${part}: ${name}`);
      if (money?.line === 'cost') kinds[money.kind] += amount;
    }
  }
  const direct = Object.values(kinds).reduce((sum, kind) => sum + kind, 0n);

  test('an hour costs what a year of pay costs, over the hours that are billed', () => {
    const year = 2080 * 27 * 1.2965;
    const billed = (2080 - 168) * 0.85;
    expect(notebook.figure('Hour cost')[1]).toBeCloseTo(year / billed, 10);
    expect(notebook.figure('Charge rate')).toEqual(['$ per hour', Math.ceil(year / billed)]);
    expect(HOUR).toBe(Math.ceil(year / billed) * 100);
  });

  test.each(Object.entries(LINES))('every cost line of %s is what its hours and prices come to', (part, lines) => {
    const own = cellsOf(notebook.estimate).filter((c) => c.part === part && c.cell.money?.line === 'cost');
    expect(own.map(({ cell }) => cell.name)).toEqual(Object.keys(lines));
    expect(own.map(({ cell }) => [cell.name, line(`${part}: ${cell.name}`)])).toEqual(Object.entries(lines));
  });

  test('two people are there for as many days as the labour of all parts fills, and one', () => {
    const parts = ['Deck frame', 'Deck surface', 'Landing', 'Steps', 'Railing', 'Low wall', 'Path and planting'];
    const row = (part: string) => notebook.estimate.costs().parts.find((one) => one.part === part);
    const worked = parts.reduce((sum, part) => sum + toCents(row(part)?.labour ?? ''), 0n);
    expect(notebook.figure('Site days')).toEqual(['day', Math.ceil(Number(worked) / HOUR / 16) + 1]);
  });

  test('material, labour, equipment, subcontracts and fees are the sums of their lines', () => {
    const { total } = notebook.estimate.costs();
    for (const kind of ['material', 'labour', 'equipment', 'subcontract', 'fee'] as const) {
      expect([kind, toCents(total[kind])]).toEqual([kind, kinds[kind]]);
    }
    expect(toCents(total.direct)).toBe(direct);
    expect(line('Direct cost')).toBe(direct);
  });

  test('direct cost, contingency, overhead, tax and profit add up to the price, and the payments to it', () => {
    const contingency = share(direct, 500n);
    const overhead = share(direct + contingency, 1200n);
    const tax = share(kinds.material, 600n);
    const loaded = direct + contingency + overhead + tax;
    // A margin of 15% of the price: cost is 85% of it.
    const profit = (loaded * 30n + 85n) / 170n;
    expect([line('Contingency'), line('Overhead'), line('Sales tax'), line('Profit')]).toEqual([
      contingency,
      overhead,
      tax,
      profit,
    ]);
    expect(line('Price')).toBe(loaded + profit);
    expect(toCents(notebook.estimate.costs().total.price)).toBe(loaded + profit);
    expect([direct, loaded + profit]).toEqual([1_246_601n, 1_757_412n]);
    const paid = ['Deposit', 'Payment at start', 'Payment halfway', 'Last payment'].map(line);
    expect(paid.slice(0, 3)).toEqual([500n, 3500n, 3000n].map((part) => share(loaded + profit, part)));
    expect(paid.reduce((sum, one) => sum + one, 0n)).toBe(loaded + profit);
  });
});

describe('a builder who looks at it', () => {
  const notebook = opened(text);

  // Common practice, no source: direct cost of treated wood, bagged concrete and dry-laid units on small jobs.
  test.each([
    ['Deck foot cost', '$ per sq ft', 8, 25],
    ['Landing foot cost', '$ per sq ft', 12, 35],
    ['Riser cost', '$ per riser', 80, 250],
    ['Rail foot cost', '$ per ft', 25, 80],
    ['Wall foot cost', '$ per sq ft', 25, 60],
    ['Path foot cost', '$ per sq ft', 4, 14],
    ['Charge rate', '$ per hour', 30, 80],
  ])('finds the %s between what is common', (name, unit, low, high) => {
    const [said, number] = notebook.figure(name);
    expect([said, number > low, number < high]).toEqual([unit, true, true]);
  });

  test('finds the labour a third to a half of the cost, and the hours of every task those of a person', () => {
    const { total } = notebook.estimate.costs();
    const part = Number(total.labour) / Number(total.direct);
    expect([part > 0.33, part < 0.5]).toEqual([true, true]);
    const rate = notebook.figure('Charge rate')[1];
    const tasks = cellsOf(notebook.estimate).filter(({ cell }) => cell.money?.kind === 'labour');
    expect(tasks.length).toBeGreaterThan(15);
    for (const { part: of, cell } of tasks) {
      const worked = notebook.figure(`${of}: ${cell.name}`)[1] / rate;
      expect([cell.name, worked >= 1, worked <= 16]).toEqual([cell.name, true, true]);
    }
  });

  test('is told of every given how it came to be known, and when it was measured or quoted', () => {
    const givens = cellsOf(notebook.estimate).filter(
      ({ cell }) => !cell.table && notebook.estimate.state(cell.id).kind === 'given',
    );
    expect(givens.length).toBeGreaterThan(60);
    for (const { cell } of givens) {
      const from = remarkOf(cell, 'from') ?? '';
      expect([cell.name, from]).toEqual([
        cell.name,
        expect.stringMatching(/^(measured|quoted|looked up|assumed|chosen|rule of thumb|own hours|named by|drawing)/),
      ]);
      if (/^(measured|quoted)/.test(from)) expect([cell.name, from]).toEqual([cell.name, expect.stringMatching(/2026-03-\d\d/)]);
    }
    const priced = cellsOf(notebook.estimate).flatMap(({ cell }) => cell.remarks.map((remark) => remark.text));
    expect(priced.join(' ').match(/20\d\d-\d\d-\d\d/g)?.filter((day) => !/^2026-0[345]/.test(day))).toEqual([]);
  });

  test('sees how far four of them could go', () => {
    const ranged = cellsOf(notebook.estimate).filter(({ cell }) => notebook.estimate.state(cell.id).range);
    expect(ranged.map(({ cell }) => cell.name)).toEqual(['Soft joists', 'Mending hours', 'Bank height', 'Old boards']);
  });

  test('is pointed to what is set by hand and to what the client has still to say, and to nothing else', () => {
    expect(notebook.estimate.findings().map(({ code, message }) => [code, message.slice(0, 24)])).toEqual([
      ['set-by-hand', '"Baluster order" is set '],
      ['not-yet-known', '"Arbor" is not yet known'],
    ]);
  });

  test('finds a picture where he would look for one, each of them drawn', () => {
    const drawn = cellsOf(notebook.estimate).flatMap(({ cell }) => {
      const asked = remarkOf(cell, 'picture');
      return asked === null ? [] : [asked.split(' for ')[0]];
    });
    expect(drawn).toEqual([
      'framing plan',
      'board plan',
      'slab plan',
      'slab section',
      'stair section',
      'railing elevation',
      'wall section',
    ]);
  });
});

describe('a size that changes', () => {
  test('a thicker landing takes more bags, more hours and a higher price, and nothing on the deck', () => {
    const notebook = opened(text);
    const [, before] = notebook.figure('Price');
    const { ran } = notebook.estimate.setFormula(notebook.cell('Thickness').id, '5 in') as {
      ran: readonly number[];
    };
    const thicker = emptied((LANDING * 5 + EDGE) * 110, BAG);
    expect(notebook.figure('Bags to buy')).toEqual(['bag', thicker]);
    expect(toCents(notebook.figure('Mix and place')[1].toFixed(2))).toBe(minutes(thicker, 8));
    expect(notebook.figure('Price')[1]).toBeGreaterThan(before);
    const names = ran.map((id) => notebook.estimate.state(id).input.name);
    expect(names).toContain('Price');
    expect(names).not.toContain('Decking');
    notebook.estimate.undo();
    expect(notebook.figure('Price')).toEqual(['$', before]);
  });

  test('a deck board that is thicker moves the total rise and every riser with it', () => {
    const notebook = opened(text);
    notebook.estimate.setFormula(notebook.cell('Board thickness').id, '1 1/4 in');
    expect(notebook.figure('Total rise')).toEqual(['in', 30.25]);
    expect(notebook.figure('Unit rise')).toEqual(['in per riser', 7.5625]);
    expect(notebook.holds('Even check')).toBe(true);
  });

  test('boards on the landing take from every riser alike, and are priced', () => {
    const notebook = opened(text);
    notebook.estimate.setFormula(notebook.cell('Landing surface').id, 'boards on sleepers');
    expect(notebook.figure('Unit rise')).toEqual(['in per riser', 27.5 / 4]);
    expect(notebook.holds('Even check')).toBe(true);
    expect(notebook.figure('Boards on sleepers')).toEqual(['$', 41.5 * 16]);
  });

  test('a dearer hour is dearer in every part that works', () => {
    const notebook = opened(text);
    const labour = () => notebook.estimate.costs().parts.map((row) => Number(row.labour));
    const before = labour();
    notebook.estimate.setFormula(notebook.cell('Wage').id, '$34 per hour');
    labour().forEach((now, at) => expect(now > (before[at] ?? 0)).toBe((before[at] ?? 0) > 0));
    expect(before.filter((worked) => worked > 0)).toHaveLength(8);
  });

  test('a wider stair takes its width out of the railing in front', () => {
    const notebook = opened(text);
    const [, before] = notebook.figure('Guard length');
    notebook.estimate.setFormula(notebook.cell('Stair width').id, '6 ft');
    expect(notebook.figure('Guard length')[1]).toBeCloseTo(before - 2, 9);
  });
});

warnsWhere(INDEX.demo, {
  'Joist check': { 'Joist span': '14 ft' },
  'Landing check': { 'Stair width': '6 ft 6 in' },
  'Joint check': { 'Bays: length': '9 ft' },
  // The count goes by the limit, so a riser over it is set by hand.
  'Riser check': { 'Riser count': '3 risers' },
  'Rows check': { 'how many Risers': '3' },
  'Even check': { 'Tread thickness': '1 in', 'Risers: mark': '7 in' },
  'Tread check': { 'Tread depth': '9 3/4 in' },
  'Open riser check': { 'Frame height': '32 in' },
  'Handrail check': { 'Handrail count': '0 handrails' },
  'Height check': { 'Rail height': '34 in' },
  'Gap check': { 'Front balusters': '8 balusters' },
  'Wall check': { 'Seen courses': '6 courses' },
  'Marking check': { 'Marking lead': '1 day' },
  'Deposit check': { Price: '$40,000' },
});
