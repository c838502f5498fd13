// Labour rates: a year of one person reckoned apart from the notebook, random givens, each check made to say no.
import { describe, expect, test } from 'vitest';
import { keepsItsPromises } from './random-givens.ts';
import { openedWith, warnsWhere } from './warns.ts';

const FILE = 'labour-rates.md';

keepsItsPromises({
  file: FILE,
  tables: {
    Crew: {
      rows: [1, 5],
      columns: { people: '1 up to 4', wage: '$15 per hour up to $60 per hour' },
    },
    'Area work': {
      rows: [1, 4],
      columns: {
        amount: '0 sq ft up to 2,000 sq ft',
        pace: '4 sq ft per hour up to 80 sq ft per hour',
      },
    },
  },
  enough: [
    'loaded wage is at least wage',
    'billable hours is at most worked hours',
    'hour cost is at least loaded wage',
    'full rate is at least hour cost',
    'charge rate is at least hour cost',
    'charge rate is at least full rate or overhead and profit in is summary',
    'crew hours is at most work hours',
    'crew days times site day times crew size is at least work hours',
  ],
  grows: [
    { given: 'Crew: wage', never: ['Wage', 'Year pay', 'Loaded wage', 'Hour cost', 'Full rate', 'Charge rate', 'Work at rate'] },
    { given: 'Vacation', never: ['Hour cost', 'Hour overhead', 'Full rate', 'Charge rate'] },
    { given: 'Unbillable share', never: ['Hour cost', 'Full rate', 'Charge rate'] },
    { given: 'Year overhead', never: ['Hour overhead', 'Full rate', 'Charge rate'] },
    { given: 'Profit share', never: ['Full rate', 'Charge rate', 'Hour profit'] },
    { given: 'Area work: amount', never: ['Work hours', 'Crew hours', 'Crew days', 'Work at rate'] },
    { given: 'Area work', never: ['Work hours', 'Crew days'] },
  ],
});

warnsWhere(FILE, {
  'Wage check': { 'Crew: wage': '$7 per hour' },
  'Burden check': { 'Burden: share of wage': '1%' },
});

describe('an hour', () => {
  test('costs what a year of pay and burden costs, over the hours that are billed', () => {
    const rates = openedWith(FILE, {});
    const pay = 2080 * 27;
    const burden = pay * (0.062 + 0.0145 + 0.092 + 0.018) + 0.006 * 7000 + 0.027 * 9500 + 4800;
    const billed = (2080 - 80 - 48 - 40) * 0.85;
    expect(rates.figure('Burden share')[1]).toBeCloseTo((burden / pay) * 100, 9);
    expect(rates.figure('Hour cost')[1]).toBeCloseTo((pay + burden) / billed, 9);
    expect(rates.figure('Charge rate')).toEqual(['$ per hour', Math.ceil((pay + burden) / billed)]);
    const full = ((pay + burden) / billed + 26_000 / (billed * 2)) / 0.85;
    expect(rates.figure('Full rate')[1]).toBeCloseTo(full, 9);
    expect(rates.figure('Hour profit')[1]).toBeCloseTo(full * 0.15, 9);
  });

  test('is sold with overhead and profit in it only where the rate holds them', () => {
    const rates = openedWith(FILE, { 'Overhead and profit in': 'rate' });
    expect(rates.figure('Charge rate')[1]).toBe(Math.ceil(rates.figure('Full rate')[1]));
    expect(openedWith(FILE, {}).figure('Charge rate')[1]).toBeLessThan(rates.figure('Full rate')[1]);
  });

  test('of one person alone is the wage of that one', () => {
    const rates = openedWith(FILE, {});
    rates.estimate.removeRow(rates.cell('Crew').id, 1);
    expect(rates.figure('Crew size')[1]).toBe(1);
    expect(rates.figure('Wage')).toEqual(['$ per hour', 32]);
    expect(rates.figure('Crew hours')[1]).toBe(rates.figure('Work hours')[1]);
  });
});

describe('hours from quantities', () => {
  test('are the same from metres', () => {
    const feet = openedWith(FILE, { 'Area work: amount': '100 sq ft', 'Length work: amount': '10 ft' });
    const metric = openedWith(FILE, { 'Area work: amount': '9.290304 square metres', 'Length work: amount': '3.048 m' });
    expect(metric.figure('Work hours')).toEqual(feet.figure('Work hours'));
  });

  test('of no work are none', () => {
    const idle = openedWith(FILE, {
      'Area work: amount': '0 sq ft',
      'Volume work: amount': '0 cubic yards',
      'Length work: amount': '0 ft',
      'Piece work: amount': '0 units',
    });
    expect(idle.figure('Work hours')[1]).toBe(0);
    expect(idle.figure('Crew days')[1]).toBe(0);
    expect(idle.shown('Work at rate')).toBe('$0.00');
  });

  test('no line of this part is a cost: the parts of the job hold those', () => {
    expect(openedWith(FILE, {}).estimate.costs().total.lines).toBe(0);
  });
});
