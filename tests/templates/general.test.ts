// General: dumpsters filled load by load, permit fees tier by tier, tools by the day or the week, and each check made to say no.
import { describe, expect, test } from 'vitest';
import { keepsItsPromises } from './random-givens.ts';
import { templateText } from './texts.ts';
import { openedWith, warnsWhere } from './warns.ts';

const FILE = 'general.md';

keepsItsPromises({
  file: FILE,
  tables: {
    Loads: {
      rows: [1, 4],
      columns: { trips: '0 trips up to 6 trips', price: '$20 per trip up to $300 per trip' },
    },
    'Hired tools': {
      rows: [1, 4],
      columns: {
        days: '0 days up to 40 days',
        'day price': '$10 per day up to $200 per day',
        'week price': '$60 up to $700',
      },
    },
  },
  enough: [
    'dumpsters times dumpster holds is at least debris volume',
    'dumpsters times dumpster carries is at least debris weight',
    'slab heap is at least slab solid',
    'track sheets times 8 ft is at least track length',
    'permit fee is at least $60',
    'permit is $0 or permit needed',
    'valued work is work value',
    'toilet is $0 or toilet wanted',
  ],
  grows: [
    { given: 'Slab to break', never: ['Slab weight', 'Debris volume', 'Debris weight', 'Dumpsters', 'Dumpster cost', 'Break the slab'] },
    { given: 'Slab thickness', never: ['Debris volume', 'Debris weight', 'Dumpsters'] },
    { given: 'Wood heap', never: ['Debris volume', 'Debris weight', 'Dumpsters', 'Take down wood'] },
    { given: 'Rubbish weight', never: ['Debris weight', 'By weight', 'Dumpsters'] },
    { given: 'Dumpster days', never: ['Dumpster days over'] },
    { given: 'Work value', never: ['Permit fee', 'Permit'] },
    { given: 'Loads: trips', never: ['Delivery', 'General cost'] },
    { given: 'Hired tools: days', never: ['Tool hire', 'General cost'] },
    { given: 'Hired tools', never: ['Tool hire'] },
    { given: 'Track length', never: ['Track sheets', 'Track boards'] },
    { given: 'Barrier length', never: ['Barrier', 'Barrier posts', 'Barrier stakes'] },
    { given: 'Crew trips', never: ['Travel', 'Daily clean-up', 'General cost'] },
    { given: 'Site area', never: ['Last clean-up'] },
  ],
});

warnsWhere(FILE, {
  'Lead check': { 'Built before 1978': 'yes' },
  'Permit check': { 'Days to start': '5 days' },
  'Marking check': { 'Marking lead': '1 day' },
});

describe('dumpsters', () => {
  const dumpsters = (written: Readonly<Record<string, string>>) =>
    openedWith(FILE, { 'Slab to break': '0 sq ft', 'Wood heap': '0 cubic yards', 'Rubbish heap': '0 cubic yards', ...written });

  test('are filled by volume with light debris and by weight with concrete', () => {
    const wood = dumpsters({ 'Wood heap': '21 cubic yards', 'Wood heap weight': '150 lb per cubic yard' });
    expect([wood.figure('By volume')[1], wood.figure('By weight')[1]]).toEqual([3, 1]);
    expect(wood.figure('Dumpsters')).toEqual(['dumpster', 3]);
    // 200 sq ft of 4 in at 150 lb are 5 tons; 3.7 cubic yards broken.
    const concrete = dumpsters({ 'Slab to break': '200 sq ft' });
    expect([concrete.figure('By volume')[1], concrete.figure('By weight')[1]]).toEqual([1, 3]);
    expect(concrete.shown('Dumpster cost')).toBe('$1,260.00');
  });

  test('none is ordered where nothing is taken away', () => {
    expect(dumpsters({}).figure('Dumpsters')).toEqual(['dumpster', 0]);
    expect(dumpsters({}).shown('Dumpster cost')).toBe('$0.00');
  });
});

describe('the permit fee', () => {
  /** Dollar by dollar through the tiers, in tenths of a cent. */
  const fee = (value: number): number => {
    let tenths = 0;
    for (let dollar = 1; dollar <= value; dollar++) tenths += dollar <= 5000 ? 18 : dollar <= 25_000 ? 12 : 8;
    return Math.max(tenths / 1000, 60);
  };

  test.each([0, 500, 3333, 5000, 5001, 18_000, 25_000, 99_999, 100_000])('of work for $%s goes tier by tier', (value) => {
    const general = openedWith(FILE, { 'Work value': `$${value}` });
    expect(general.figure('Permit fee')[1]).toBeCloseTo(fee(value), 9);
  });

  test('beyond the last tier stops and says so, and the job lacks a line', () => {
    const general = openedWith(FILE, { 'Work value': '$100,001' });
    expect(general.state('Valued work').outcome.kind).toBe('fault');
    expect(general.shown('Permit')).toMatch(/^waits for Fee tiers/);
    expect(general.estimate.costs().total.incomplete).toContain(general.cell('Permit').id);
  });
});

test('a tool is hired by the day, by the week, or whole weeks and some days, whichever is least', () => {
  for (let days = 0; days <= 30; days++) {
    const general = openedWith(FILE, {
      'Hired tools: days': `${days} days`,
      'Hired tools: day price': '$80 per day',
      'Hired tools: week price': '$300',
    });
    let least = Infinity;
    for (let weeks = 0; weeks <= 5; weeks++) {
      least = Math.min(least, weeks * 300 + Math.max(0, days - weeks * 7) * 80);
    }
    expect([days, general.figure('Tool hire')[1]]).toEqual([days, least * 3]);
  }
});

test('sizes in metres come to the same', () => {
  const metric = openedWith(FILE, { 'Slab thickness': '101.6 mm', 'Track length': '12.192 m', 'Trip distance': '38.624256 km per trip' });
  expect(metric.shown('General cost')).toBe(openedWith(FILE, {}).shown('General cost'));
});

test('no load is counted for stone that the other parts buy delivered', () => {
  const stone = ['slab.md', 'landing.md', 'low-wall.md', 'path-and-planting.md'].map((file) => templateText(file));
  for (const text of stone) expect(text).toMatch(/buy: 3\/4 in graded stone[^\n]*, delivered/);
  expect(templateText(FILE)).toMatch(/\| stone and gravel +\| 0 trips \|/);
  expect(openedWith(FILE, {}).shown('Delivery')).toBe('$280.00');
});
