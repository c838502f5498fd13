// The trade tables in shared/ agree with the published figures, read from a notebook by name.
import { expect, test } from 'vitest';
import { readNotebook } from '../../src/notebook/read-notebook.ts';
import { REFERENCE_TABLES } from '../../src/reference/tables.ts';
import { committedFiles, contentOf } from '../house/committed.ts';
import publishedBags from './bag-yields.json' with { type: 'json' };
import publishedSizes from './lumber-sizes.json' with { type: 'json' };
import spans from './spans.json' with { type: 'json' };
import { cellsOf, opened } from './opened.ts';

test.each(publishedSizes)('$id a $nominal is as thick and wide as the standard says', (fact) => {
  const notebook = opened(
    '# Sizes\n## Check\n' +
      ['thickness', 'width', 'green thickness', 'green width']
        .map((side) => `- The ${side}: read ${side} off lumber sizes for size ${fact.nominal}\n`)
        .join(''),
  );
  expect(notebook.figure('The thickness')).toEqual(['in', fact.dry[0]]);
  expect(notebook.figure('The width')).toEqual(['in', fact.dry[1]]);
  expect(notebook.figure('The green thickness')).toEqual(['in', fact.green[0]]);
  expect(notebook.figure('The green width')).toEqual(['in', fact.green[1]]);
});

test.each(publishedBags)('$id a $bag bag makes $cubicFeet cubic feet', (fact) => {
  const notebook = opened(
    `# Bags\n## Check\n- Bag yield: read makes off bag yields for bag ${fact.bag}\n` +
      '- One bag: 1 bag at bag yield\n- A cubic yard: 1 cubic yard in bags of bag yield\n',
  );
  expect(notebook.figure('One bag')).toEqual(['cubic ft', fact.cubicFeet]);
  expect(notebook.figure('A cubic yard')).toEqual(['bag', fact.bagsInACubicYard]);
});

test.each(spans)('$id $formula is $value', ({ formula, value }) => {
  const notebook = opened(`# Spans\n## Check\n- Answer: ${formula}\n`);
  expect(notebook.shown('Answer')).toBe(value);
});

// In the ground 1, loose, packed: Navy table 10-1 (sand), FM 5-34 and FM 5-434 (the others).
test.each([
  ['sand', 1.11, 0.95],
  ['loam', 1.25, 0.9],
  ['clay', 1.43, 0.9],
  ['blasted rock', 1.5, 1.3],
])('a yard of %s lies loose as %d and packs to %d', (ground, loose, packed) => {
  const notebook = opened(
    '# Soil\n## Check\n' +
      `- Loose: read loose off soil volumes for ground ${ground}\n` +
      `- Packed: read packed off soil volumes for ground ${ground}\n`,
  );
  expect(notebook.figure('Loose')).toEqual(['', loose]);
  expect(notebook.figure('Packed')).toEqual(['', packed]);
});

const files = committedFiles().filter((file) => /^shared\/.+\.md$/.test(file));

test('every table in shared/ can be read from by name', () => {
  expect(files.length).toBe(REFERENCE_TABLES.length);
});

test.each(files)('%s is a notebook: its table reads there as it is read from', (file) => {
  const notebook = readNotebook(contentOf(file).toString());
  expect(notebook.findings.filter((f) => f.code !== 'remark-not-known')).toEqual([]);
  const cells = notebook.parts
    .flatMap((p) => p.blocks)
    .flatMap((b) => (b.kind === 'cell' ? b.cell : []));
  const [cell] = cells;
  const table = REFERENCE_TABLES.find((t) => t.name === cell?.name);
  expect(cell?.table?.columns.map((c) => c.name)).toEqual(table?.table.columns.map((c) => c.name));
  expect(cell?.table?.rows.map((row) => row.texts)).toEqual(table?.table.rows);
});

test('every row says where it stands, every table its source, and what carries a load a caution', () => {
  for (const { name, source, caution, table } of REFERENCE_TABLES) {
    const place = table.columns.findIndex((c) => c.name === 'source');
    expect(
      table.rows.filter((row) => (row[place] ?? '') === ''),
      name,
    ).toEqual([]);
    expect(source.length, name).toBeGreaterThan(10);
    if (/span|footing|ledger/i.test(name)) expect(caution, name).toMatch(/building department/);
  }
  const nominal = (name: string): readonly (string | undefined)[] =>
    REFERENCE_TABLES.find((t) => t.name === name)?.table.rows.map((row) => row[0]) ?? [];
  expect(nominal('Lumber sizes')).toEqual(publishedSizes.map((f) => f.nominal));
  expect(nominal('Bag yields')).toEqual(publishedBags.map((f) => f.bag));
});

test('every cell of every table can be read, and a column measures one thing', () => {
  const text = REFERENCE_TABLES.map(({ table: { columns, rows }, name }) => {
    const line = (texts: readonly string[]): string => `  | ${texts.join(' | ')} |\n`;
    const heads = line(columns.map((c) => c.name)) + line(columns.map(() => '---'));
    return `- ${name}:\n${heads}${rows.map(line).join('')}  - from: here\n`;
  }).join('');
  const { estimate } = opened(`# All\n## Part\n${text}`);
  expect(cellsOf(estimate)).toHaveLength(REFERENCE_TABLES.length);
  expect(estimate.findings()).toEqual([]);
});

test("a table of the notebook's own goes before one of the trade", () => {
  const own = '- Bar sizes:\n  | bar | weight |\n  |---|---|\n  | #4 | 1 lb per ft |\n';
  const notebook = opened(
    `# Own\n## Part\n${own}- Answer: 2 ft at (read weight off bar sizes for bar #4)\n`,
  );
  expect(notebook.shown('Answer')).toBe('2 lb');
});

test('the caution goes with the reading', () => {
  const notebook = opened(
    '# X\n## Part\n- Answer: read spacing off ledger fasteners for fastener lag screws\n',
  );
  expect(notebook.state('Answer').reading.notes.join()).toMatch(/masonry veneer/);
});
