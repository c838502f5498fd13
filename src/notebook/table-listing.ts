// A table in the plain listing: its name, the heads of its columns, and its rows in line below them.
import type { CellFigure, TableFigure } from './figures.ts';

/** Columns are no wider than this; what is longer pushes the rest of its row along. */
const WIDEST = 28;

/** `width` is that of the values beside which names stand. */
export function tableLines(table: TableFigure, width: number): readonly string[] {
  const indent = ' '.repeat(width + 4);
  const many = table.rows.length === 1 ? '1 row' : `${table.rows.length} rows`;
  const from = table.from ? ` (${table.from})` : '';
  const heads = table.columns.map((column) => column.name);
  const rows = table.rows.map((cells) => cells.map(valueOf));
  const widths = heads.map((head, k) =>
    rows.reduce((most, row) => Math.max(most, fitting(row[k] ?? '')), head.length),
  );
  const line = (texts: readonly string[]): string =>
    `${indent}${texts.map((text, k) => text.padEnd(widths[k] ?? 0)).join('  ')}`.trimEnd();
  const worked = table.columns.flatMap(({ name, formula }) =>
    formula === null ? [] : [`${indent}${name} is worked in every row: ${formula}`],
  );
  const ranges = table.rows.flatMap((cells) => cells.flatMap((cell) => rangeLines(cell, indent)));
  const faults = table.rows.flatMap((cells) => cells.flatMap((cell) => faultLines(cell, indent)));
  return [
    `  ${many.padEnd(width)}  ${table.name}${from}`,
    line(heads),
    ...rows.map(line),
    ...worked,
    ...ranges,
    ...faults,
  ];
}

function fitting(text: string): number {
  return text.length > WIDEST ? 0 : text.length;
}

function valueOf(cell: CellFigure): string {
  if (cell.shown !== null) return cell.shown;
  if (cell.error) return 'problem';
  if (cell.waitsFor.length > 0) return 'waiting';
  return cell.formula === '' ? '' : '?';
}

function rangeLines({ name, range }: CellFigure, indent: string): readonly string[] {
  if (!range) return [];
  return [`${indent}${name}: ${range.best.shown} at best, ${range.worst.shown} at worst`];
}

function faultLines(cell: CellFigure, indent: string): readonly string[] {
  if (!cell.error) return [];
  const fixes = cell.error.fixes.map((fix) => `${indent}Try: ${fix}`);
  return [`${indent}${cell.name}: ${cell.error.message}`, ...fixes];
}
