// The Kestrel Court estimate against a reckoning of its own: boards laid one by one, bags emptied one by one,
// in plain whole numbers and without any of the notebook's formulas. And what its checks do when a size changes.
import { describe, expect, test } from 'vitest';
import { opened } from '../published/opened.ts';
import { toCents } from './remarks.ts';
import { INDEX, templateText } from './texts.ts';

const text = templateText(INDEX.demo);

/** Rounded up to a whole number: both are whole numbers. */
const upBy = (whole: number, step: number) => Math.floor((whole + step - 1) / step);
/** Cents of a share in hundredths of a percent, half a cent up. */
const share = (cents: bigint, hundredths: bigint) => (cents * hundredths * 2n + 10_000n) / 20_000n;

describe('the deck surface, in eighths of an inch', () => {
  const notebook = opened(text);
  const width = 14 * 12 * 8;
  const [board, gap] = [44, 1];

  test('rows laid one by one cover it, the last one ripped', () => {
    let rows = 0;
    let laid = 0;
    let left = width;
    while (laid < width) {
      left = width - laid;
      laid += board + gap;
      rows++;
    }
    expect(notebook.figure('Rows')).toEqual(['row', rows]);
    expect(notebook.figure('Last row')).toEqual(['in', left / 8]);
    expect(notebook.figure('Deck surface: Boards to buy')).toEqual(['board', upBy(rows * 105, 100)]);
  });

  test('screws at every crossing fill whole boxes', () => {
    let joists = 1;
    for (let mark = 0; mark < 16 * 12; mark += 16) joists++;
    const screws = joists * 30 * 2;
    expect(notebook.figure('Joists')).toEqual(['joist', joists]);
    expect(notebook.figure('Screws')).toEqual(['screw', screws]);
    expect(notebook.figure('Screw boxes')).toEqual(['box', upBy(screws * 105, 35_000)]);
  });
});

describe('the steps, in sixteenths of an inch', () => {
  const notebook = opened(text);
  const rise = (26 + 1) * 16 - 24;
  let risers = 1;
  while (rise > risers * 124) risers++;

  test('the fewest risers that are low enough are all alike with the boards on', () => {
    expect(notebook.figure('Riser count')).toEqual(['riser', risers]);
    expect(notebook.figure('Unit rise')).toEqual(['in per riser', rise / risers / 16]);
    expect(notebook.figure('Bottom cut')).toEqual(['in', (rise / risers - 24) / 16]);
    expect(notebook.figure('Bottom riser')).toEqual(['in', rise / risers / 16]);
    expect(notebook.figure('Total run')).toEqual(['in', (risers - 1) * 11]);
  });

  test('stringers and treads come off whole boards', () => {
    const blank = upBy(Math.ceil(Math.hypot(rise / 16, (risers - 1) * 11)) + 11, 6) * 6;
    expect(notebook.figure('Blank length')).toEqual(['in', blank]);
    const stringers = 1 + 48 / 16;
    const boards = upBy(stringers, Math.floor(120 / blank));
    expect(toCents(notebook.figure('Stringer lumber')[1].toFixed(2))).toBe(BigInt(boards) * 3120n);
    const planks = (risers - 1) * 2;
    expect(toCents(notebook.figure('Tread lumber')[1].toFixed(2))).toBe(BigInt(planks / 2) * 1180n);
  });
});

describe('the landing, in cubic inches', () => {
  const notebook = opened(text);
  const area = 72 * 48 + 60 * 42;

  test('bags are emptied until the slab with its waste is full', () => {
    let bags = 0;
    // A bag makes 0.45 cubic feet; with a tenth of waste everything is counted in tenths.
    for (let poured = 0; poured < area * 4 * 11; poured += 0.45 * 1728 * 10) bags++;
    expect(notebook.figure('Landing: Bags to buy')).toEqual(['bag', bags]);
    expect(notebook.shown('Landing: Concrete')).toBe(`$${(bags * 6.48).toFixed(2)}`);
  });

  test('forms go around both bays and stone is bought by the half ton', () => {
    expect(notebook.figure('Form length')).toEqual(['ft', (2 * (72 + 48) + 2 * 60 + 42) / 12]);
    const tons = (area * 4 * 1.2 * 1.4) / 46_656;
    expect(notebook.figure('Stone')).toEqual(['ton', Math.ceil(tons * 2) / 2]);
  });
});

describe('the money, in cents', () => {
  const notebook = opened(text);
  const cents = (name: string) => toCents(notebook.figure(name)[1].toFixed(2));

  test('an hour costs what a year of pay costs, over the hours that are billed', () => {
    const year = 2080 * 27 * 1.2965;
    const billed = (2080 - 168) * 0.85;
    expect(notebook.figure('Hour cost')[1]).toBeCloseTo(year / billed, 10);
    expect(notebook.figure('Charge rate')).toEqual(['$ per hour', Math.ceil(year / billed)]);
  });

  test('every cost line is what its hours and prices come to', () => {
    const hour = 4500n;
    expect(cents('Lay the boards')).toBe((224n * hour * 2n + 22n) / 44n);
    expect(cents('Build the steps')).toBe(6n * hour);
    expect(cents('Mix and place')).toBe((34n * 8n * hour) / 60n);
    expect(cents('Dig, form and finish')).toBe((415n * hour) / 90n);
    const rail = Math.hypot(25.5, 33) + 24;
    expect(cents('Steps: Handrail')).toBe(BigInt(Math.round((rail / 12) * 1450)));
    expect(cents('Oiling')).toBe(224n * 115n);
  });

  test('direct cost, contingency, overhead, profit and tax add up to the price', () => {
    const { total } = notebook.estimate.costs();
    const direct = toCents(total.direct);
    const contingency = share(direct, 500n);
    const overhead = share(direct + contingency, 1200n);
    const loaded = direct + contingency + overhead;
    // A margin of 15% of the price: cost is 85% of it.
    const profit = (loaded * 30n + 85n) / 170n;
    const tax = share(toCents(total.material), 600n);
    expect([cents('Contingency'), cents('Overhead'), cents('Profit'), cents('Sales tax')]).toEqual([
      contingency,
      overhead,
      profit,
      tax,
    ]);
    expect(cents('Price')).toBe(loaded + profit + tax);
    expect(toCents(total.price)).toBe(loaded + profit + tax);
  });
});

describe('a size that changes', () => {
  test('a thicker landing takes more bags, more hours and a higher price, and nothing on the deck', () => {
    const notebook = opened(text);
    const [, before] = notebook.figure('Price');
    const { ran } = notebook.estimate.setFormula(notebook.cell('Thickness').id, '5 in') as {
      ran: readonly number[];
    };
    expect(notebook.figure('Landing: Bags to buy')).toEqual(['bag', 43]);
    expect(notebook.shown('Mix and place')).toBe('$258.00');
    expect(notebook.figure('Price')[1]).toBeGreaterThan(before);
    const names = ran.map((id) => notebook.estimate.state(id).input.name);
    expect(names).toContain('Price');
    expect(names).not.toContain('Decking');
    notebook.estimate.undo();
    expect(notebook.figure('Price')).toEqual(['$', before]);
  });

  test.each([
    ['Frame height', '29 1/2 in', 'Guard check'],
    ['Riser limit', '6 1/4 in per riser', 'Riser count'],
    ['Landing finish', '3/4 in', 'Even check'],
    ['Tread depth', '9 3/4 in', 'Tread check'],
    ['Handrail count', '0 handrails', 'Handrail check'],
    ['Stair width', '6 ft 6 in', 'Landing check'],
    ['Bay 2 length', '9 ft', 'Joint check'],
  ])('%s of %s reaches the %s', (given, formula, reached) => {
    const notebook = opened(text);
    const before = notebook.shown(reached);
    notebook.estimate.setFormula(notebook.cell(given).id, formula);
    expect(notebook.shown(reached)).not.toBe(before);
    const failed = notebook.estimate.findings().map((f) => f.cell);
    if (reached.endsWith('check')) expect(failed).toContain(notebook.cell(reached).id);
  });

  test('a deck board that is thicker moves the total rise and every riser with it', () => {
    const notebook = opened(text);
    notebook.estimate.setFormula(notebook.cell('Board thickness').id, '1 1/2 in');
    expect(notebook.figure('Total rise')).toEqual(['in', 26]);
    expect(notebook.figure('Unit rise')).toEqual(['in per riser', 6.5]);
    expect(notebook.figure('Bottom riser')).toEqual(['in', 6.5]);
  });
});
