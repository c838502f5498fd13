// A table out of tab- or comma-separated text, and such text put into a table: what can't be read is told and left out.
import { alikeMeasures } from '../quantity/alike.ts';
import { describe } from '../quantity/describe.ts';
import type { CellId } from '../language/tree.ts';
import type { Finding } from './document.ts';
import { type Edits, isRefused } from './edits.ts';
import type { Applied } from './estimate-door.ts';
import { type TablePlace, laidOut, readLines } from './laid-out.ts';
import type { Changes } from './making-changes.ts';
import { type TableWish, addTableEdit, tableHereEdit } from './new-table.ts';
import { type NotPasted, pasteEdit } from './paste-edit.ts';
import { withNewCell } from './templates.ts';
import { tried } from './trying.ts';
import type { WorkedNotebook } from './worked-notebook.ts';

type Pasted = (Applied & { readonly refused: readonly NotPasted[] }) | Finding;

export function layOutTable(
  now: WorkedNotebook,
  changes: Changes,
  where: TablePlace,
  text: string,
): Pasted {
  const lines = readLines(text, now.notebook.settings.currency);
  if (isRefused(lines)) return lines;
  const before = now.notebook;
  const trial = tried(before, tableEdits(now, where, lines.wish), now.longest);
  if (isRefused(trial)) return trial;
  const were = new Set(before.sections.flatMap((s) => s.cells.map((c) => c.id)));
  const first = now.take(trial.notebook);
  const fresh = trial.notebook.sections
    .flatMap((s) => s.cells)
    .find((c) => (where.kind === 'here' ? c.id === where.cell : !were.has(c.id)));
  const { wish, refused } = laidOut(
    lines,
    fresh ? (now.workings.rowsOf(fresh.id) ?? []) : [],
    (id) => now.state(id),
  );
  if (refused.length === 0) {
    changes.made(before, trial.change);
    return { change: trial.change, ran: first, refused };
  }
  now.take(before);
  const done = changes.edit(tableEdits(now, where, wish));
  return isRefused(done) ? done : { ...done, refused };
}

export function tableEdits(now: WorkedNotebook, where: TablePlace, wish: TableWish): Edits {
  if (where.kind === 'here') return tableHereEdit(now.notebook, now.cell(where.cell), wish);
  const place = now.part(where.part);
  const after = where.after === null ? null : now.cell(where.after);
  const name = where.name.trim();
  const edits = addTableEdit(now.notebook, place, after, name, wish);
  return withNewCell(now.known(), place.key, name, edits);
}

export function pasteRows(
  now: WorkedNotebook,
  changes: Changes,
  cell: CellId,
  row: number,
  column: number,
  text: string,
): Pasted {
  const pasted = pasteEdit(now.notebook, now.cell(cell), row, column, text, {
    isText: (k) => now.workings.isText(cell, k),
    why: (k, words) => whyNotInColumn(now, cell, k, words),
  });
  if (isRefused(pasted)) return pasted;
  const done = changes.edit(pasted.edits);
  return isRefused(done) ? done : { ...done, refused: pasted.refused };
}

/** Why a text can't stand in a column: it can't be read, or measures something else than the rows there. */
function whyNotInColumn(
  now: WorkedNotebook,
  cell: CellId,
  column: number,
  text: string,
): string | null {
  const { reading, holds } = now.workings.draftInRow(cell, -1, column, text);
  const [problem] = reading.problems;
  if (problem) return `${problem.headline} ${problem.explanation}`;
  const there = now.workings.rowsOf(cell) ?? [];
  for (const row of there) {
    const other = now.workings.state(row[column]);
    if (other.outcome.kind === 'fault' || !other.holds || other.holds.measure.kind === 'open')
      continue;
    if (!holds || alikeMeasures(holds.measure, other.holds.measure)) return null;
    return `This column holds ${describe(other.holds.measure)}, and this is ${describe(holds.measure)}.`;
  }
  return null;
}
