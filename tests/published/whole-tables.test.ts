// Every row of every table in shared/ that answers a look-up, figure by figure, against what its source says. Lumber
// sizes, bag yields and soil volumes are held row by row in `tables.test.ts`.
import { describe, expect, test } from 'vitest';
import { REFERENCE_TABLES } from '../../src/reference/tables.ts';
import { opened } from './opened.ts';
import whole from './whole-tables.json' with { type: 'json' };

interface Published {
  readonly id: string;
  readonly source: string;
  readonly where: string;
  readonly table: string;
  /** Columns that may hold any of these. */
  readonly known: Readonly<Record<string, readonly string[]>>;
  /** The column that tells the values apart, and the one that answers. */
  readonly by: string;
  readonly column: string;
  readonly unit: string;
  readonly values: Readonly<Record<string, number>>;
}

const published: readonly Published[] = whole as never;

/** What the sources say of a row and column; more than one where two of them have it. */
function saidOf(table: string, row: Readonly<Record<string, string>>, column: string) {
  return published.filter(
    (each) =>
      each.table === table &&
      each.column === column &&
      Object.entries(each.known).every(([name, any]) => any.includes(row[name] ?? '')) &&
      each.values[row[each.by] ?? ''] !== undefined,
  );
}

describe.each([...new Set(published.map(({ table }) => table))])('%s', (name) => {
  const { table } = REFERENCE_TABLES.find((each) => each.name === name) ?? { table: null };
  const rows = (table?.rows ?? []).map(
    (texts) =>
      Object.fromEntries(table?.columns.map((c, k) => [c.name, texts[k] ?? '']) ?? []) as Record<
        string,
        string
      >,
  );
  const columns = [...new Set(published.filter((p) => p.table === name).map((p) => p.column))];

  test('every figure of every row is what its source says', () => {
    const asked = rows.flatMap((row) =>
      columns.map((column) => ({ row, column, said: saidOf(name, row, column) })),
    );
    expect(
      asked.filter(({ said }) => said.length !== 1).map(({ row, column }) => [row, column]),
    ).toEqual([]);
    const lines = asked.map(
      ({ row, column }, i) => `- Answer ${i + 1}: ${row[column] ?? ''}\n  - from: here\n`,
    );
    const notebook = opened(`# Read\n## Check\n${lines.join('')}`);
    for (const [i, { row, column, said }] of asked.entries()) {
      const [one] = said;
      const [unit, number] = notebook.figure(`Answer ${i + 1}`);
      const own = unit === 'ft' && one?.unit === 'in' ? number * 12 : number;
      expect([row, column, own]).toEqual([row, column, one?.values[row[one.by] ?? '']]);
    }
  });

  test('and the source has no row that is missing here', () => {
    const said = published
      .filter((p) => p.table === name && p.column === columns[0])
      .reduce(
        (sum, { known, values }) =>
          sum +
          Object.values(known).reduce((many, any) => many * any.length, 1) *
            Object.keys(values).length,
        0,
      );
    expect(rows).toHaveLength(said);
  });
});

test('all tables but those held elsewhere are here', () => {
  const elsewhere = ['Lumber sizes', 'Bag yields', 'Soil volumes'];
  expect([...new Set(published.map(({ table }) => table)), ...elsewhere].toSorted()).toEqual(
    REFERENCE_TABLES.map(({ name }) => name).toSorted(),
  );
});
