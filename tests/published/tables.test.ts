// The trade tables in shared/ agree with the published figures, once their text is read as a formula.
import { expect, test } from 'vitest';
import bagTable from '../../shared/bag-yields.json' with { type: 'json' };
import lumberTable from '../../shared/lumber-sizes.json' with { type: 'json' };
import publishedBags from './bag-yields.json' with { type: 'json' };
import publishedSizes from './lumber-sizes.json' with { type: 'json' };
import { opened } from './opened.ts';

test.each(publishedSizes)('$id a $nominal is as thick and wide as the standard says', (fact) => {
  const row = lumberTable.rows.find((r) => r.nominal === fact.nominal);
  for (const side of [0, 1]) {
    const notebook = opened(
      `# Sizes\n## Check\n- Dry: ${row?.dry[side]}\n- Green: ${row?.green[side]}\n`,
    );
    expect(notebook.figure('Dry')).toEqual(['in', fact.dry[side]]);
    expect(notebook.figure('Green')).toEqual(['in', fact.green[side]]);
  }
});

test.each(publishedBags)('$id a $bag bag makes $cubicFeet cubic feet', (fact) => {
  const row = bagTable.rows.find((r) => r.bag === fact.bag);
  const notebook = opened(
    `# Bags\n## Check\n- Bag yield: ${row?.makes}\n` +
      '- One bag: 1 bag at bag yield\n- A cubic yard: 1 cubic yard in bags of bag yield\n',
  );
  expect(notebook.figure('One bag')).toEqual(['cubic ft', fact.cubicFeet]);
  expect(notebook.figure('A cubic yard')).toEqual(['bag', fact.bagsInACubicYard]);
});

test('every row of a table says where it stands, and every table its source', () => {
  for (const table of [bagTable, lumberTable]) {
    expect([table.source, table.edition, table.holds]).not.toContain('');
    expect(table.rows.filter((row) => row.where === '')).toEqual([]);
  }
  expect(lumberTable.rows.map((row) => row.nominal)).toEqual(publishedSizes.map((f) => f.nominal));
  expect(bagTable.rows.map((row) => row.bag)).toEqual(publishedBags.map((f) => f.bag));
});
