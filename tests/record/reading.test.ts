// What people type, paste and export comes in as entries, or is refused field by field with a reason.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { centsFor } from '../../src/record/entry.ts';
import {
  dayOrder,
  readDate,
  readHours,
  readKind,
  readMoney,
  readPart,
  readPercent,
} from '../../src/record/fields.ts';
import { readRows } from '../../src/record/read-rows.ts';
import { LANDING, RAILING } from './records.ts';

const PARTS = [LANDING, RAILING];
const around = { parts: PARTS, currency: '$' };

/** The value, or `no: ` and the reason. */
const heard = (read: ReturnType<typeof readMoney>): string =>
  read.kind === 'read' ? read.value : `no: ${read.why}`;

describe('a day', () => {
  test.for([
    ['2026-03-04', '2026-03-04'],
    ['2026-3-4', '2026-03-04'],
    ['3/14/2026', '2026-03-14'],
    ['14.3.2026', '2026-03-14'],
    ['5/5/2026', '2026-05-05'],
    ['14 Mar 2026', '2026-03-14'],
    ['March 14, 2026', '2026-03-14'],
    ['2024-02-29', '2024-02-29'],
  ] as const)('%s', ([text, day]) => {
    expect(heard(readDate(text, null))).toBe(day);
  });

  test('that can be read in two ways is asked about, unless its column tells', () => {
    expect(heard(readDate('3/4/2026', null))).toBe(
      'no: "3/4/2026" can be read as two days. Write 2026-03-04 or 2026-04-03.',
    );
    expect(dayOrder(['3/4/2026', '3/14/2026', 'x'])).toBe('month first');
    expect(dayOrder(['3/4/2026', '14/3/2026'])).toBe('day first');
    expect(dayOrder(['3/14/2026', '14/3/2026'])).toBeNull();
    expect(heard(readDate('3/4/2026', 'day first'))).toBe('2026-04-03');
  });

  test.for([
    '2026-02-30',
    '2025-02-29',
    '13/13/2026',
    '',
    'soon',
    '46143',
    '3/4/26',
    '0026-01-01',
  ] as const)('is not %s', (text) => {
    expect(heard(readDate(text, null))).toMatch(/^no: /);
  });
});

describe('money', () => {
  test.for([
    ['1,234.50', '1234.50'],
    ['$1,234.5', '1234.50'],
    ['-$12', '-12.00'],
    ['$-12', '-12.00'],
    ['−0.00', '0.00'],
    ['0012.340', '12.34'],
    ['.5', '0.50'],
    ['1234567', '1234567.00'],
  ] as const)('%s', ([text, amount]) => {
    expect(heard(readMoney(text, '$', 2))).toBe(amount);
  });

  test.for([
    ['12,50', 'Write 12.50 with a point'],
    ['1,23', 'Write 1.23 with a point'],
    ['1.234,50', 'the other way round'],
    ['1.234.567', 'the other way round'],
    ['12,34,567', 'no number'],
    ['€12.00', 'is in €; this notebook is in $'],
    ['(12.00)', 'minus'],
    ['=A1+B1', 'points at places in a sheet'],
    ['#REF!', 'found an error'],
    ['1.2e5', 'shortened'],
    ['12.345', 'to the cent'],
    ['--5', 'no amount of money'],
    ['12 USD', 'no amount of money'],
    ['9999999999999', 'more than a job costs'],
    ['$', 'no amount of money'],
  ] as const)('is refused: %s', ([text, why]) => {
    expect(heard(readMoney(text, '$', 2))).toContain(why);
  });

  test('an hour may cost parts of a cent', () => {
    expect(heard(readMoney('$62.375/h', '$', 4))).toBe('62.375');
    expect(heard(readMoney('60', '$', 4))).toBe('60.00');
  });
});

describe('hours', () => {
  test.for([
    ['7.5', '450'],
    ['7:20', '440'],
    ['7:30:00', '450'],
    ['7 1/2', '450'],
    ['1/3', '20'],
    ['7 h 30 min', '450'],
    ['45 min', '45'],
    ['8 hours', '480'],
    ['1,250', '75000'],
    ['7.3333', '439.998'],
  ] as const)('%s', ([text, minutes]) => {
    expect(heard(readHours(text))).toBe(minutes);
  });

  test.for(['', '0', '-3', '7:60', '7,5', '1/7', '3/0', 'all day', '99999', '7.12345678'] as const)(
    'are not %s',
    (text) => {
      expect(heard(readHours(text))).toMatch(/^no: /);
    },
  );
});

test('a share done is percent from 0 to 100', () => {
  expect(['0', '62.5 %', '100%'].map((text) => heard(readPercent(text)))).toEqual([
    '0',
    '62.5',
    '100',
  ]);
  for (const text of ['101', '-1', '12.345', 'half', '1,5', ''])
    expect(heard(readPercent(text))).toMatch(/^no: /);
});

test('a part or a kind that is not known is refused with the nearest', () => {
  expect(readPart('  landing ', PARTS)).toEqual({ kind: 'read', value: LANDING });
  expect(readPart('Landng', PARTS)).toMatchObject({
    why: expect.stringContaining('Nearest here: Landing.'),
  });
  expect(readPart('not in the estimate', PARTS)).toMatchObject({ value: { key: null } });
  expect(readPart('', PARTS)).toMatchObject({ why: expect.stringContaining('missing') });
  expect(readKind('Labor')).toEqual({ kind: 'read', value: 'labour' });
  expect(readKind('misc')).toMatchObject({ why: expect.stringContaining('material, labour') });
});

describe('rows of a sheet', () => {
  test('come in by their headings, in any order', () => {
    const { taken, notTaken, left } = readRows(
      'What\tPart\tDate\tHours\tRate\tKind\tAmount\n' +
        'Forms and pour\tLanding\t2026-05-04\t7:30\t$62.00\t\t\n' +
        '40 bags\tLANDING\t2026-05-04\t\t\tmaterial\t$259.20\n',
      around,
    );
    expect([notTaken, left]).toEqual([[], '']);
    expect(
      taken.map(({ part, kind, what, cost }) => [part.key, kind, what, centsFor(cost)]),
    ).toEqual([
      ['k-1', 'labour', 'Forms and pour', 46_500n],
      ['k-1', 'material', '40 bags', 25_920n],
    ]);
  });

  test('come in without headings in the order of the fields', () => {
    const { taken } = readRows('2026-05-04, Railing, fee, Permit, 85.00', around);
    expect(taken).toHaveLength(1);
    expect(taken[0]).toMatchObject({ what: 'Permit', kind: 'fee' });
  });

  test('a CSV file with a byte order mark, quotes, line breaks in quotes and other line ends', () => {
    const { taken, notTaken } = readRows(
      '\uFEFF"Date","Part","Kind","What","Amount","Note"\r\n' +
        '"2026-05-04","Landing","material","Mix, 60 lb, ""dry""","1,259.20","two\r\nlines"\r\n' +
        '2026-05-05,Railing,material,6" posts,12.00,\r\n',
      around,
    );
    expect(notTaken).toEqual([]);
    expect(taken.map(({ what, note, cost }) => [what, note, centsFor(cost)])).toEqual([
      ['Mix, 60 lb, "dry"', 'two lines', 125_920n],
      ['6" posts', '', 1200n],
    ]);
  });

  test('semicolons part cells, and the decimal commas that come with them are refused with what to write', () => {
    const { taken, notTaken, left } = readRows(
      'date;part;kind;what;amount\n2026-05-04;Landing;material;Mix;259,20\n2026-05-05;Landing;fee;Permit, town;85.00\n',
      around,
    );
    expect(taken.map(({ what }) => what)).toEqual(['Permit, town']);
    expect(notTaken).toEqual([
      {
        row: 2,
        column: 'amount',
        text: '259,20',
        why: `The comma in "259,20" can't part thousands. Write 259.20 with a point.`,
      },
    ]);
    const mended = readRows(left.replace('259,20', '259.20'), around);
    expect(mended.taken.map(({ what }) => what)).toEqual(['Mix']);
  });

  test('a row at fault is left as a whole, with every reason, and the others are taken', () => {
    const { taken, notTaken, left } = readRows(
      'Date\tPart\tKind\tWhat\tAmount\tHours\tRate\n' +
        '2026-02-30\tLandng\tmisc\t\t12,50\t\t\n' +
        '2026-05-04\tLanding\t\tPour\t\t7.5\t\n' +
        '2026-05-04\tLanding\t\tPour\t440\t7.5\t60\n' +
        '2026-05-04\tLanding\t\tPour\t450\t7.5\t60\n',
      around,
    );
    expect(taken).toHaveLength(1);
    expect(notTaken.map(({ row, column }) => `${row} ${column}`)).toEqual([
      '2 date',
      '2 part',
      '2 kind',
      '2 what',
      '2 amount',
      '3 rate',
      '4 amount',
    ]);
    expect(left.split('\n')).toHaveLength(4);
  });

  test('what has no column is told; nothing of it is guessed', () => {
    const { taken, notTaken } = readRows(
      'Date,Part,Kind,What,Amount,Colour\n2026-05-04,Landing,fee,Permit,85,red\n2026-05-04,Landing,fee,Permit,85,red,more\n',
      around,
    );
    expect(taken).toHaveLength(1);
    expect(notTaken.map(({ row, column, text }) => [row, column, text])).toEqual([
      [1, 'column F', 'Colour'],
      [3, 'column G', 'more'],
    ]);
  });

  test.for([
    ['', 'nothing in this'],
    ['\n \n', 'nothing in this'],
    ['a\0b', 'no text'],
    ['x\n'.repeat(20_001), '20,001 rows'],
    ['x'.repeat(4_000_001), 'too long'],
  ] as const)('refused whole: %#', ([text, why]) => {
    expect(readRows(text, around).refused).toContain(why);
  });

  test('any text at all is read or refused: every row is taken, or left with a reason', () => {
    const piece = fc.constantFrom(
      '"',
      '""',
      ',',
      ';',
      '\t',
      '\n',
      '\r',
      '2026-05-04',
      'Landing',
      'fee',
      '12.00',
      '=1+1',
      '__proto__',
      'date',
      '\uFEFF',
      '7:30',
      '-',
      '1,5',
      ' ',
    );
    const text = fc.oneof(
      fc.string({ maxLength: 200 }),
      fc.array(piece, { maxLength: 60 }).map((all) => all.join('')),
    );
    fc.assert(
      fc.property(text, (pasted) => {
        const { taken, notTaken, left, refused } = readRows(pasted, around);
        if (refused !== null) expect([taken, notTaken, left]).toEqual([[], [], '']);
        else if (left !== '') expect(notTaken.length).toBeGreaterThan(0);
        for (const { cost, what } of taken) {
          expect(typeof centsFor(cost)).toBe('bigint');
          expect(what).not.toMatch(/^=|[\n\r\t]/);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
