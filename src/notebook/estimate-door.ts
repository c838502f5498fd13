// What can be asked of an estimate and done to it: the contract of the door that the page, the headless run and the tests go through.
import type { CellState, Outcome, Value } from '../engine/outcome.ts';
import type { WorkedBy } from '../engine/reach.ts';
import type { Plan } from '../language/plan.ts';
import type { Reading } from '../language/reading.ts';
import type { CellId } from '../language/tree.ts';
import type { Holds } from '../quantity/form.ts';
import type { Shown } from '../quantity/show.ts';
import type { Fix } from '../words/report.ts';
import type { ColumnUse } from './column-uses.ts';
import type { Change, Finding, Notebook } from './document.ts';
import type { TablePlace } from './laid-out.ts';
import type { Mend } from './mends.ts';
import type { Destination } from './moves.ts';
import type { ColumnWish } from './new-table.ts';
import type { NotPasted } from './paste-edit.ts';
import type { PictureState } from './pictures.ts';
import type { ShownRange } from './ranges.ts';
import type { Costs } from './recap.ts';
import type { RecapTable } from './recap-table.ts';

/** A change that was made: what to call it and which cells were worked anew, in order. */
export interface Applied {
  readonly change: Change;
  readonly ran: readonly CellId[];
}

export interface Draft {
  readonly reading: Reading;
  readonly outcome: Outcome;
  readonly shown: Shown | null;
}

/**
 * Every change returns what was done, or a finding that says why not (`'change' in result` tells them apart):
 * a text past the limit, or words that could not be read back as meant. Nothing is lost either way.
 */
export interface EstimateDoor {
  /** A value; a new one after every change. */
  readonly notebook: Notebook;
  state(cell: CellId): CellState;
  /** Works any plan with the cells as they stand now. */
  evaluate(plan: Plan): Outcome;
  /** `up`: all that needs one of the cells; `down`: all that they need; in an order in which it can be worked. */
  reach(cells: readonly CellId[], way: 'up' | 'down'): readonly CellId[];
  /** How the value that is used of a cell is worked, for working it again beside the notebook. */
  workedBy(cell: CellId): WorkedBy | null;
  /** Any value as this notebook shows it. */
  say(value: Value, holds: Holds): Shown;
  /** The value as it is shown (`40 bags`, `$259.20`), with "so far" where a total leaves lines out. Null where there is none. */
  shown(cell: CellId): Shown | null;
  /** What a given is at best and at worst as these are shown, or null where it says nothing of it. */
  shownRange(cell: CellId): ShownRange | null;
  /** What the formula comes to beside a value set by hand, or null. */
  shownWorked(cell: CellId): Shown | null;
  /** The last good value, for greyed display, or null. */
  lastShown(cell: CellId): Shown | null;
  costs(): Costs;
  /** What every part costs, kind by kind with its shares, and what has a name and no price. */
  recap(): RecapTable;
  /** Every fault, finding, double counting, value by hand, `?`, failed check: where the owner looks. */
  findings(): readonly Finding[];
  /** The pictures of a cell, in the order of its remarks, from what the cells hold now. */
  picturesOf(cell: CellId): readonly PictureState[];
  /** Ways to mend a cell that is at fault, the best first. */
  mendsOf(cell: CellId): readonly Mend[];
  /** Other formulas that would mend this one while it is written for a cell, the best first. */
  mendsOfDraft(cell: CellId, formula: string): readonly Fix[];
  /** Ways to mend what is pointed out; none where only its owner knows. */
  mendsFor(finding: Finding): readonly Mend[];
  /** Makes a mend, in one step that undo takes back. */
  mend(mend: Mend): Applied | Finding;
  /** Reads a formula for this cell without changing anything: live "read as", problems, and what it would come to. */
  draft(cell: CellId, formula: string, as?: 'formula' | 'by hand'): Draft;

  /** Line breaks in a formula become spaces. */
  setFormula(cell: CellId, formula: string): Applied | Finding;
  /** Rewrites every formula that mentions it. */
  rename(cell: CellId, name: string): Applied | Finding;
  /** `after` null: at the end of the part. */
  addCell(part: string, after: CellId | null, name: string, formula: string): Applied | Finding;
  removeCell(cell: CellId): Applied | Finding;
  setRemark(cell: CellId, word: string, text: string): Applied | Finding;
  removeRemark(cell: CellId, word: string): Applied | Finding;
  /** Givens move together and say these words about it; null: each goes its own way. One step. */
  tie(cells: readonly CellId[], words: string | null): Applied | Finding;
  /** Sets a worked cell by hand, with why; `null` takes it back. */
  setByHand(cell: CellId, formula: string | null, from: string | null): Applied | Finding;
  /** `after` null: at the end of the notebook. */
  addPart(name: string, after: string | null): Applied | Finding;
  renamePart(key: string, name: string): Applied | Finding;
  /** Before the block at `place` of that part, counted without it. What named it names it still. */
  moveCell(cell: CellId, to: Destination, values: MovedValues): Applied | Finding;
  /** `place` among the other parts; 0 is before the first of them. */
  movePart(key: string, place: number, values: MovedValues): Applied | Finding;
  /** A second one right below it, `Waste 2`, with its sources and remarks. */
  duplicateCell(cell: CellId): Applied | Finding;
  /** A second one right after it, `Landing 2`, whose formulas name its own cells. */
  duplicatePart(key: string): Applied | Finding;
  /** Puts a template's parts at the end; a second copy gets a name of its own (`Landing 2`). */
  insertTemplate(text: string): Applied | Finding;
  /** Replaces any stretch of the text (prose, title). */
  replaceText(change: Change): Applied | Finding;
  /** What would be undone, or redone; null where there is nothing. */
  canUndo(): string | null;
  canRedo(): string | null;
  undo(): Applied | null;
  /** Undoes what was only tried out: it can't be redone. */
  takeBack(): Applied | null;
  redo(): Applied | null;
}

/** `kept`: a move that would change what any cell comes to is not made, and is told with what would change. */
export type MovedValues = 'kept' | 'may-change';

/** Tables through the same door: rows and columns by their places, counted from 0. */
export interface TableDoor {
  /** Is there a cell of this id, in the notebook or in a row of a table? */
  has(cell: CellId): boolean;
  /** The cells of a table, row by row in the order of the columns, for `state` and `shown`; null where it is none. */
  rows(cell: CellId): readonly (readonly CellId[])[] | null;
  /** Reads a text for a row and column without changing anything. */
  draftInRow(cell: CellId, row: number, column: number, text: string): Draft;
  /** `''` leaves it to the column's formula. */
  setRowCell(cell: CellId, row: number, column: number, text: string): Applied | Finding;
  /** `after` null: at the end; -1: before the first. */
  addRow(cell: CellId, after: number | null, texts: readonly string[]): Applied | Finding;
  removeRow(cell: CellId, row: number): Applied | Finding;
  moveRow(cell: CellId, from: number, to: number): Applied | Finding;
  setColumnFormula(cell: CellId, column: number, formula: string | null): Applied | Finding;
  /** Rewrites every formula that names it. */
  renameColumn(cell: CellId, column: number, name: string): Applied | Finding;
  /** `after` null: the last one; -1: the first. What its name would make read otherwise is written anew. */
  addColumn(
    cell: CellId,
    after: number | null,
    name: string,
    formula: string | null,
  ): Applied | Finding;
  /** What names it says that it is missing, or reads what else has its name: `columnUses` tells beforehand. */
  removeColumn(cell: CellId, column: number): Applied | Finding;
  /** `to`: where it stands afterwards. */
  moveColumn(cell: CellId, from: number, to: number): Applied | Finding;
  /** What names a column, here and elsewhere, and what it would read without it. */
  columnUses(cell: CellId, column: number): readonly ColumnUse[];
  /** A table of these columns and a blank row. `after` null: at the end of the part. */
  addTable(
    part: string,
    after: CellId | null,
    name: string,
    columns: readonly ColumnWish[],
  ): Applied | Finding;
  /**
   * A table out of tab- or comma-separated text, whose first line names the columns (`name`, or `name: formula`):
   * a new cell, or one in which nothing stands yet. What can't be read is told and left out.
   */
  layOutTable(
    where: TablePlace,
    text: string,
  ): (Applied & { readonly refused: readonly NotPasted[] }) | Finding;
  /** Tab- or comma-separated text, from this row and column on; new rows as they are needed. What can't be read is told and left out. */
  pasteRows(
    cell: CellId,
    row: number,
    column: number,
    text: string,
  ): (Applied & { readonly refused: readonly NotPasted[] }) | Finding;
}
