// Makes an edit only when what is read back is what was meant, and everything else reads as it did.
import type { CellId } from '../language/tree.ts';
import { changed, inOrder } from './change.ts';
import type { Block, Cell, Change, Finding } from './document.ts';
import {
  type AddedCell,
  type Arranged,
  type Edit,
  type Edits,
  type MeantCell,
  isRefused,
  refused,
} from './edits.ts';
import type { Section } from './identified.ts';
import { nameKey } from './names.ts';
import { NotebookText } from './notebook-text.ts';
import { readNotebook, refusal } from './read-notebook.ts';

export interface Tried {
  readonly change: Change;
  readonly notebook: NotebookText;
}

/** The notebook after the first wording that holds, or why none does. */
export function tried(before: NotebookText, edits: Edits, longest: number): Tried | Finding {
  if (isRefused(edits)) return edits;
  for (const edit of edits) {
    const change: Change = { say: edit.say, splices: inOrder(edit.splices) };
    const text = changed(before.text, change);
    const tooMuch = refusal(text, longest);
    if (tooMuch) return refused(tooMuch.code, tooMuch.message, null, null);
    const notebook = readNotebook(text, before, longest);
    if (notebook instanceof NotebookText && readsAsMeant(before, notebook, edit)) {
      return { change, notebook };
    }
  }
  return refused(
    'not-read-back',
    'Written here, this would be read as something else, so nothing was changed. Try other words.',
    null,
    null,
  );
}

function readsAsMeant(before: NotebookText, now: NotebookText, edit: Edit): boolean {
  if (edit.arranged) return readsAsArranged(before, now, edit, edit.arranged);
  const [old, fresh] = unshared(before.sections, now.sections);
  if (edit.parts) {
    const names = now.sections.filter((s) => s.front === null).map((s) => s.name);
    if (names.length !== edit.parts.length || names.some((n, i) => n !== edit.parts?.[i]))
      return false;
  } else if (
    old.length !== fresh.length ||
    old.some((s, i) => s.key !== fresh[i].key || s.name !== fresh[i].name)
  ) {
    return false;
  }
  const oldCells = old.flatMap((s) => s.cells).filter((c) => c.id !== edit.removes);
  const known = new Set(oldCells.map((c) => c.id));
  const kept: Cell[] = [];
  const added: { part: string; cell: Cell }[] = [];
  for (const section of fresh) {
    for (const cell of section.cells) {
      if (known.has(cell.id)) kept.push(cell);
      else added.push({ part: section.name, cell });
    }
  }
  return (
    kept.length === oldCells.length &&
    kept.every((cell, i) => saysSame(oldCells[i], cell, edit.cells)) &&
    added.length === edit.adds.length &&
    added.every(({ part, cell }, i) => isAsAdded(part, cell, edit.adds[i])) &&
    sameProse(old, fresh, edit.prose)
  );
}

/** After a move: every part and every cell stands where it should, and says what it said. */
function readsAsArranged(
  before: NotebookText,
  now: NotebookText,
  edit: Edit,
  arranged: readonly Arranged[],
): boolean {
  const old = new Map(before.sections.flatMap((s) => s.cells.map((c) => [c.id, c] as const)));
  const names = new Map(before.sections.map((s) => [s.key, s.name]));
  const prose = (notebook: NotebookText): string =>
    JSON.stringify(notebook.sections.flatMap((s) => s.blocks.flatMap(proseOf)).sort());
  return (
    now.sections.length === arranged.length &&
    now.sections.every((section, i) => {
      const { part, cells } = arranged[i];
      return (
        section.key === part &&
        section.name === names.get(part) &&
        section.cells.length === cells.length &&
        section.cells.every((cell, k) => {
          const was = cell.id === cells[k] ? old.get(cell.id) : undefined;
          return was !== undefined && saysSame({ ...was, part }, cell, edit.cells);
        })
      );
    }) &&
    prose(before) === prose(now)
  );
}

/** The sections that the two notebooks don't share, at the same place in both. */
function unshared(
  before: readonly Section[],
  now: readonly Section[],
): readonly [readonly Section[], readonly Section[]] {
  const most = Math.min(before.length, now.length);
  let first = 0;
  while (first < most && before[first] === now[first]) first++;
  let tail = 0;
  while (tail < most - first && before[before.length - 1 - tail] === now[now.length - 1 - tail])
    tail++;
  return [before.slice(first, before.length - tail), now.slice(first, now.length - tail)];
}

function isAsAdded(part: string, cell: Cell, meant: AddedCell): boolean {
  return (
    part === meant.part &&
    nameKey(cell.name) === nameKey(meant.name) &&
    cell.formula === meant.formula &&
    (meant.table === undefined || sameTable(null, cell.table, meant.table))
  );
}

function saysSame(old: Cell, now: Cell, meant: ReadonlyMap<CellId, MeantCell>): boolean {
  if (old.id !== now.id || old.part !== now.part) return false;
  const wish = meant.get(old.id);
  if (now.name !== (wish?.name ?? old.name) || now.formula !== (wish?.formula ?? old.formula))
    return false;
  if (!sameTable(old.table, now.table, wish?.table)) return false;
  const remarks = wish?.remarks ?? old.remarks.map((r) => [r.word, r.text] as const);
  return (
    now.remarks.length === remarks.length &&
    now.remarks.every((r, i) => r.word === remarks[i][0] && r.text === remarks[i][1])
  );
}

function sameTable(old: Cell['table'], now: Cell['table'], meant: MeantCell['table']): boolean {
  if (!meant) return (old?.source ?? null) === (now?.source ?? null);
  if (now?.columns.length !== meant.columns.length || now.rows.length !== meant.rows.length) {
    return false;
  }
  return (
    now.columns.every((column, k) => {
      const [name, formula] = meant.columns[k];
      return column.name === name && column.formula === formula;
    }) && now.rows.every((row, i) => row.texts.every((text, k) => text === meant.rows[i][k]))
  );
}

function sameProse(
  old: readonly Section[],
  fresh: readonly Section[],
  how: Edit['prose'],
): boolean {
  if (how === 'free') return true;
  const before = old.flatMap((s) => s.blocks.flatMap(proseOf));
  const now = fresh.flatMap((s) => s.blocks.flatMap(proseOf));
  if (how === 'same' && before.length !== now.length) return false;
  return before.every((text, i) => text === now[i]);
}

function proseOf(block: Block): readonly string[] {
  switch (block.kind) {
    case 'cell':
      return [];
    case 'heading':
      return [block.text];
    case 'prose':
      return [block.markdown];
  }
}
