// Mends in tables: of a row's cell that is at fault, and rows that a look-up doesn't find.
import type { CellId, Formula, LookUp } from '../language/tree.ts';
import { partsOf } from '../language/check/parts.ts';
import type { Report } from '../words/report.ts';
import type { Cell } from './document.ts';
import type { Mend, Mendable } from './mends.ts';
import { nameKey } from './names.ts';
import { OPEN, nearCells, words } from './mends-tried.ts';

/** In a row: its own text, or what its column says for every row. */
export function rowMends(
  estimate: Mendable,
  table: CellId,
  { row, column }: { readonly row: number; readonly column: number },
  code: string,
): readonly Mend[] {
  const cell = estimate.notebook.cell(table);
  const id = estimate.rows(table)?.[row]?.[column];
  const said = cell?.table?.rows[row]?.texts[column] ?? '';
  if (id === undefined || !cell?.table) return [];
  const at = { cell: table, row, column } as const;
  if (code === 'set-in-row') {
    return [{ say: 'Leave it to its column', does: { kind: 'row-cell', ...at, text: '' } }];
  }
  if (code === 'text-or-name') {
    return [
      { say: 'Take the cell of that name', does: { kind: 'row-cell', ...at, text: `(${said})` } },
    ];
  }
  const { outcome } = estimate.state(id);
  if (outcome.kind !== 'fault') return [];
  const mends = outcome.report.fixes.map(({ say, formula }): Mend => {
    if (said !== '') return { say, does: { kind: 'row-cell', ...at, text: formula } };
    return { say: `${say}, in every row`, does: { kind: 'column-formula', ...at, formula } };
  });
  if (said === '' || cell.table.columns[column]?.formula !== null) return mends;
  return [
    ...mends,
    { say: 'Leave it open for now', does: { kind: 'row-cell', ...at, text: OPEN } },
  ];
}

/** A row in which what is asked for stands, the rest still to come. */
export function rowToAdd(estimate: Mendable, cell: Cell, report: Report): readonly Mend[] {
  const [spot] = report.spots;
  const asked = lookUps(estimate.draft(cell.part, cell.id, cell.formula).reading.tree).find(
    (each) => each.conditions.some((one) => one.columnSpot.from === spot?.from),
  );
  const table = asked && estimate.notebook.cell(asked.table)?.table;
  if (!asked || !table) return [];
  const wanted = new Map(
    asked.conditions.map(({ columnSay, value }) => {
      const shown = value.kind === 'name' ? estimate.shown(value.cell) : null;
      const said = cell.formula.slice(value.spot.from, value.spot.to);
      return [nameKey(columnSay), value.kind === 'words' ? value.text : (shown ?? said)] as const;
    }),
  );
  const first = estimate.rows(asked.table)?.[0] ?? [];
  // In a column of texts a question mark would be read as a formula, and all others with it.
  const isText = (k: number): boolean => {
    const measure = first[k] === undefined ? null : estimate.state(first[k]).holds?.measure;
    return measure?.kind === 'text';
  };
  const texts = table.columns.map(
    ({ name, formula }, k) =>
      wanted.get(nameKey(name)) ?? (formula === null && !isText(k) ? OPEN : ''),
  );
  return [
    {
      say: `Add a row to ${asked.tableSay}`,
      does: { kind: 'new-row', cell: asked.table, texts },
    },
  ];
}

export function firstRow(estimate: Mendable, cell: Cell, report: Report): readonly Mend[] {
  const said = words(cell, report).toLowerCase();
  for (const other of nearCells(estimate, cell)) {
    if (!other.table || other.table.rows.length > 0) continue;
    if (!said.includes(nameKey(other.name))) continue;
    const texts = other.table.columns.map(({ formula }) => (formula === null ? OPEN : ''));
    const does = { kind: 'new-row', cell: other.id, texts } as const;
    return [{ say: `Put a row into ${other.name}, still to come`, does }];
  }
  return [];
}

function lookUps(tree: Formula): readonly LookUp[] {
  const found: LookUp[] = [];
  const waiting: Formula[] = [tree];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (next.kind === 'look-up') found.push(next);
    waiting.push(...partsOf(next));
  }
  return found;
}
