// Pictures as they were last worked: one is worked anew only when something that it is told has changed, for they are
// asked for after every change, and to read what a picture is told takes longer than most changes.
import { scan } from '../language/scan.ts';
import type { CellId } from '../language/tree.ts';
import type { Vocabulary } from '../language/vocabulary.ts';
import { formulasIn } from '../picture/asking.ts';
import type { Cell, Remark } from './document.ts';
import type { Section } from './identified.ts';
import type { NotebookText } from './notebook-text.ts';
import { COLUMN_LEAD, endsInTable } from './picture-values.ts';
import type { PictureState } from './pictures.ts';
import { remarkText } from './remarks.ts';

interface Kept {
  readonly state: PictureState;
  readonly needs: ReadonlySet<CellId>;
  /** It asks about columns: any row may be what changes it. */
  readonly columns: boolean;
}

export class PictureShelf {
  readonly #kept = new Map<string, Kept>();

  /** The picture as it stands; `make` works it where nothing is kept. */
  stateOf(
    cell: Cell,
    remark: Remark,
    vocabulary: Vocabulary,
    make: () => PictureState,
  ): PictureState {
    const key = `${cell.id} ${remark.text}`;
    const kept = this.#kept.get(key);
    if (kept) return kept.state;
    const state = make();
    // What would mend it hangs on other cells as well.
    if (state.kind === 'wrong') return state;
    const needs = new Set<CellId>();
    let columns = false;
    for (const { text } of formulasIn(remark.text)) {
      const lead = endsInTable(text, vocabulary.tableNames()) ? COLUMN_LEAD : '';
      const found = scan(lead + text, vocabulary, cell.part, null);
      if (found.recaps.length > 0) return state;
      for (const id of found.mentions) needs.add(id);
      columns ||= found.columns.length > 0;
    }
    this.#kept.set(key, { state, needs, columns });
    return state;
  }

  /** After these cells were worked anew. Cells in rows have ids below nought. */
  worked(ran: readonly CellId[]): void {
    const inRows = ran.some((id) => id < 0);
    for (const [key, { needs, columns }] of this.#kept) {
      if ((columns && inRows) || ran.some((id) => needs.has(id))) this.#kept.delete(key);
    }
  }

  clear(): void {
    this.#kept.clear();
  }
}

/** Does every name mean what it meant: the same cells and tables under the same names in the same parts? */
export function sameNames(before: NotebookText, now: NotebookText): boolean {
  if (before.sections.length !== now.sections.length) return false;
  return before.sections.every((section, i) => sameIn(section, now.sections[i]));
}

function sameIn(one: Section, other: Section): boolean {
  if (one === other) return true;
  if (one.key !== other.key || one.name !== other.name) return false;
  if (one.cells.length !== other.cells.length) return false;
  return one.cells.every((cell, i) => {
    const now = other.cells[i];
    return (
      cell.id === now.id &&
      cell.name === now.name &&
      cell.table?.source === now.table?.source &&
      remarkText(cell.remarks, 'choices') === remarkText(now.remarks, 'choices')
    );
  });
}
