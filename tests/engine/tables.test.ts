// Tables in the engine: which cells an edit works, in order, and that a column's formula is read once.
import { describe, expect, it, vi } from 'vitest';
import * as reading from '../../src/language/read.ts';
import { Workings } from '../../src/engine/workings.ts';
import type { CellInput, TableInput } from '../../src/engine/outcome.ts';
import { Nouns } from '../../src/quantity/nouns.ts';

vi.mock('../../src/language/read.ts', async (original) => {
  const real = await original<typeof reading>();
  return { ...real, read: vi.fn<typeof real.read>(real.read) };
});

const nouns = new Nouns(['bay']);
const show = {
  currency: '$',
  fractions: 16,
  measures: 'us',
  many: (n: string) => nouns.many(n),
} as const;

function cell(id: number, name: string, formula: string, table?: TableInput): CellInput {
  return { id, part: 'p', name, formula, byHand: null, money: null, ...(table ? { table } : {}) };
}

function bays(rows: readonly (readonly string[])[]): TableInput {
  const columns = [
    { name: 'bay', formula: null },
    { name: 'length', formula: null },
    { name: 'area', formula: 'length by width' },
    { name: 'cost', formula: 'area at rate' },
  ];
  return { columns, rows };
}

const ROWS = [
  ['A', '12 ft', '', ''],
  ['B', '8 ft', '', ''],
  ['C', '6 ft', '10 sq ft', ''],
];

function job(rows: readonly (readonly string[])[] = ROWS): Workings {
  const workings = new Workings({ nouns, show });
  workings.load(
    [{ key: 'p', name: 'Landing' }],
    [
      cell(1, 'Width', '4 ft'),
      cell(2, 'Rate', '$3 per sq ft'),
      cell(3, 'Slab bays', '', bays(rows)),
      cell(4, 'Area', 'total of area in slab bays'),
      cell(5, 'Longest', 'greatest length in slab bays'),
      cell(6, 'Cost', 'total of cost in slab bays'),
      cell(7, 'Many', 'how many slab bays'),
      cell(8, 'Of B', 'read area off slab bays for bay B'),
    ],
  );
  return workings;
}

const namesOf = (workings: Workings, ids: readonly number[]): readonly string[] =>
  ids.map((id) => workings.state(id).input.name);

function put(workings: Workings, rows: readonly (readonly string[])[]): readonly string[] {
  return namesOf(
    workings,
    workings.change([{ kind: 'put', cell: cell(3, 'Slab bays', '', bays(rows)) }]),
  );
}

const valueOf = (workings: Workings, id: number): string => {
  const { outcome } = workings.state(id);
  return outcome.kind === 'value' ? String(outcome.value) : outcome.kind;
};

describe('an edit of one row', () => {
  //  B: length → B: area → B: cost
  //      ↓          ↓         ↓
  //   Longest   Area, Of B   Cost
  it('works that row and what asks about its columns, each once', () => {
    const workings = job();
    const ran = put(workings, [ROWS[0] ?? [], ['B', '9 ft', '', ''], ROWS[2] ?? []]);
    expect(ran).toEqual([
      'Slab bays: B: length',
      'Slab bays: B: area',
      'Slab bays: B: cost',
      'Longest',
      'Area',
      'Of B',
      'Cost',
    ]);
    // In square inches: 12, 9 ft by 4 ft, and 10 sq ft.
    expect(valueOf(workings, 4)).toBe(String((48 + 36 + 10) * 144));
  });

  it('stops where the column is set in the row', () => {
    const workings = job();
    const ran = put(workings, [ROWS[0] ?? [], ROWS[1] ?? [], ['C', '7 ft', '10 sq ft', '']]);
    expect(ran).toEqual(['Slab bays: C: length', 'Longest']);
  });

  it('in a text that nothing was looked up by works that text alone, and the looking up', () => {
    const workings = job();
    const ran = put(workings, [ROWS[0] ?? [], ROWS[1] ?? [], ['D', '6 ft', '10 sq ft', '']]);
    expect(ran).toContain('Slab bays: D: bay');
    expect(ran).toContain('Of B');
    expect(ran.filter((name) => name.startsWith('Slab bays: A'))).toEqual([]);
  });

  it('leaves everything as it is where the text stays the same', () => {
    const workings = job();
    expect(
      put(
        workings,
        ROWS.map((row) => [...row]),
      ),
    ).toEqual([]);
  });
});

describe('rows that come, go and move', () => {
  it('keep the cells of those that stay', () => {
    const workings = job();
    const before = workings.rowsOf(3);
    const ran = put(workings, [ROWS[0] ?? [], ['N', '1 ft', '', ''], ROWS[1] ?? [], ROWS[2] ?? []]);
    const now = workings.rowsOf(3);
    expect([now?.[0], now?.[2], now?.[3]]).toEqual(before);
    expect(ran.filter((name) => /: [ABC]: /.test(name))).toEqual([]);
    expect(valueOf(workings, 7)).toBe('4');
    put(workings, [ROWS[2] ?? [], ROWS[0] ?? []]);
    expect(workings.rowsOf(3)).toEqual([before?.[2], before?.[0]]);
    expect(workings.state(8).outcome).toMatchObject({ kind: 'fault' });
  });

  it('are no longer known once they are gone', () => {
    const workings = job();
    const gone = workings.rowsOf(3)?.[1]?.[0] ?? 0;
    put(workings, [ROWS[0] ?? []]);
    expect(() => workings.state(gone)).toThrow('there is no cell');
    workings.change([{ kind: 'drop', id: 3 }]);
    expect(workings.state(4).outcome).toMatchObject({ kind: 'fault' });
  });
});

describe("a column's formula", () => {
  const many = Array.from({ length: 300 }, (_, i) => [`B${i}`, `${(i % 9) + 1} ft`, '', '']);

  it('is read once for all rows in which what it names holds the same', () => {
    const read = vi.mocked(reading.read);
    read.mockClear();
    job(many);
    const texts = read.mock.calls.map(([found]) => found.text);
    expect(texts.filter((text) => text === 'length by width')).toHaveLength(1);
    expect(texts.filter((text) => text === 'area at rate')).toHaveLength(1);
    // Nine lengths, each read once.
    expect(texts.filter((text) => /^\d ft$/.test(text)).length).toBeLessThanOrEqual(9 + 1);
  });

  it('is read for each way in which a row differs', () => {
    const read = vi.mocked(reading.read);
    read.mockClear();
    const workings = job([...many, ['X', '2 m', '', '']]);
    const texts = read.mock.calls.map(([found]) => found.text);
    expect(texts.filter((text) => text === 'length by width')).toHaveLength(2);
    const last = workings.rowsOf(3)?.at(-1)?.[2] ?? 0;
    expect(workings.state(last).outcome.kind).toBe('value');
  });

  it('names a cell around the table where no column has the name', () => {
    const workings = job();
    workings.change([{ kind: 'put', cell: cell(1, 'Width', '5 ft') }]);
    expect(valueOf(workings, 4)).toBe(String((60 + 40 + 10) * 144));
    workings.change([{ kind: 'put', cell: cell(1, 'Breadth', '5 ft') }]);
    expect(workings.state(4).outcome.kind).toBe('value');
    const area = workings.rowsOf(3)?.[0]?.[2] ?? 0;
    expect(workings.state(area).outcome).toMatchObject({ report: { code: 'unknown-name' } });
    // What is known is added, and the rest is said to be left out.
    expect(workings.state(4).outcome).toMatchObject({ leftOut: { length: 2 } });
  });
});

describe('circles through a table are found and named', () => {
  it('within a row', () => {
    const workings = new Workings({ nouns, show });
    const table = {
      columns: [
        { name: 'a', formula: 'b plus 1' },
        { name: 'b', formula: 'a plus 1' },
      ],
      rows: [
        ['', ''],
        ['3', ''],
      ],
    };
    workings.load(
      [{ key: 'p', name: 'P' }],
      [cell(1, 'T', '', table), cell(2, 'Sum', 'total of b in T')],
    );
    const rows = workings.rowsOf(1) ?? [];
    expect(workings.state(rows[0]?.[0] ?? 0).outcome).toMatchObject({ report: { code: 'circle' } });
    expect(valueOf(workings, 2)).toBe('4');
    expect(workings.state(2).outcome).toMatchObject({ leftOut: [rows[0]?.[1]] });
  });

  it('through the total of the own column', () => {
    const workings = new Workings({ nouns, show });
    const table = { columns: [{ name: 'a', formula: 'total of a in T' }], rows: [[''], ['']] };
    workings.load([{ key: 'p', name: 'P' }], [cell(1, 'T', '', table)]);
    for (const [id = 0] of workings.rowsOf(1) ?? []) {
      expect(workings.state(id).outcome).toMatchObject({
        report: { code: 'circle', spots: [{ from: 9, to: 10 }] },
      });
    }
  });

  it('and a share of the total of another column is none', () => {
    const workings = new Workings({ nouns, show });
    const columns = [
      { name: 'a', formula: null },
      { name: 'share', formula: 'what share a is of (total of a in T)' },
    ];
    const table = {
      columns,
      rows: [
        ['3 ft', ''],
        ['1 ft', ''],
      ],
    };
    workings.load([{ key: 'p', name: 'P' }], [cell(1, 'T', '', table)]);
    const shares = (workings.rowsOf(1) ?? []).map((row) => valueOf(workings, row[1] ?? 0));
    expect(shares).toEqual(['0.75', '0.25']);
  });
});
