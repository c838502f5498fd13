// Every check of a template is made to say no once, and its caution then stands where the owner looks.
import { describe, expect, test } from 'vitest';
import { type Opened, cellsOf, opened } from '../published/opened.ts';
import { remarkOf } from './remarks.ts';
import { templateText } from './texts.ts';

/** Givens by name, or `Table: column` for every row of it, and what is written there. */
export type Written = Readonly<Record<string, string>>;

/** A template with other givens. */
export function openedWith(file: string, written: Written): Opened {
  const notebook = opened(templateText(file));
  for (const [name, text] of Object.entries(written)) write(notebook, name, text);
  return notebook;
}

function write(notebook: Opened, name: string, text: string): void {
  const { estimate } = notebook;
  const [table = '', column] = name.split(': ');
  const { id, table: held } = notebook.cell(column === undefined ? name : table);
  if (column === undefined) {
    expect(estimate.setFormula(id, text)).toHaveProperty('change');
    return;
  }
  const place = held?.columns.findIndex((c) => c.name === column) ?? -1;
  held?.rows.forEach((_, row) => {
    expect(estimate.setRowCell(id, row, place, text)).toHaveProperty('change');
  });
}

/** For each check by name the givens at which it says no. A check without any is told. */
export function warnsWhere(file: string, cases: Readonly<Record<string, Written>>): void {
  describe(`${file} warns`, () => {
    test('each of its checks is made to say no here', () => {
      const { estimate } = opened(templateText(file));
      const checks = cellsOf(estimate).filter(({ cell }) => estimate.state(cell.id).kind === 'check');
      expect(Object.keys(cases).toSorted()).toEqual(checks.map(({ cell }) => cell.name).toSorted());
    });

    test.each(Object.entries(cases))('%s', (check, written) => {
      const notebook = openedWith(file, written);
      expect([check, notebook.shown(check)]).toEqual([check, 'no']);
      const { id } = notebook.cell(check);
      const pointed = notebook.estimate.findings().filter((found) => found.cell === id);
      expect(pointed.map(({ code }) => code)).toContain('check-fails');
      const caution = remarkOf(notebook.cell(check), 'caution') ?? 'none';
      expect(pointed.map(({ message }) => message).join(' ')).toContain(caution);
    });
  });
}
