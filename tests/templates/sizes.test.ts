// What the templates call looked up is what the trade tables hold.
import { expect, test } from 'vitest';
import { REFERENCE_TABLES } from '../../src/reference/tables.ts';
import { cellsOf, opened } from '../published/opened.ts';
import { remarkOf } from './remarks.ts';
import { templateFiles, templateText } from './texts.ts';

const looked = templateFiles.flatMap((file) =>
  cellsOf(opened(templateText(file)).estimate).map(({ cell }) => ({
    file,
    name: cell.name,
    formula: cell.formula,
    from: remarkOf(cell, 'from') ?? '',
  })),
);

const ofLumber = looked.flatMap((c) => {
  const [, size, side] = /^looked up: a (\S+), dry, is .+ (thick|wide)/.exec(c.from.replace(' board', '')) ?? [];
  return size && side ? [{ ...c, size: size.replace('×', 'x'), side: side === 'thick' ? 0 : 1 }] : [];
});

const ofBags = looked.flatMap((c) => {
  const bag = /^looked up: (\d+ lb) bag/.exec(c.from)?.[1];
  return bag ? [{ ...c, bag }] : [];
});

/** What stands in a table of the trade, in the row that begins so. */
function stands(name: string, first: string, column: string): string | undefined {
  const table = REFERENCE_TABLES.find((t) => t.name === name)?.table;
  const place = table?.columns.findIndex((c) => c.name === column) ?? -1;
  return table?.rows.find((row) => row[0] === first)?.[place];
}

test.each(ofLumber)('$file: $name is a $size as dressed', ({ size, side, formula, from }) => {
  expect(formula).toBe(stands('Lumber sizes', size, side === 0 ? 'thickness' : 'width'));
  expect(from).toContain(formula);
});

test.each(ofBags)('$file: $name is what a $bag bag makes', ({ bag, formula }) => {
  expect(formula).toBe(stands('Bag yields', bag, 'makes'));
});

test('the templates look up lumber and bags', () => {
  expect(ofLumber.length).toBeGreaterThanOrEqual(5);
  expect(ofBags.length).toBeGreaterThanOrEqual(1);
});
