// An estimate: the notebook as it stands, its numbers, and what was done to it. The page, the headless run and
// the tests all go through this door. It knows no screen, no clock and no file.
import type { CellState, Outcome, Value } from '../engine/outcome.ts';
import type { WorkedBy } from '../engine/reach.ts';
import { refusingRange } from '../engine/ranges.ts';
import type { CellEdit, Workings } from '../engine/workings.ts';
import { tokensOf } from '../language/lexer.ts';
import type { Plan } from '../language/plan.ts';
import type { Reading } from '../language/reading.ts';
import type { CellId } from '../language/tree.ts';
import { alikeMeasures } from '../quantity/alike.ts';
import { describe } from '../quantity/describe.ts';
import type { Holds } from '../quantity/form.ts';
import { type Shown, show } from '../quantity/show.ts';
import type { Fix } from '../words/report.ts';
import { changed, inverse } from './change.ts';
import type { Cell, Change, Finding, Notebook, Part, Remark } from './document.ts';
import {
  type Edits,
  addCellEdit,
  addPartEdit,
  byHandEdit,
  formulaEdit,
  isRefused,
  refused,
  remarkEdit,
  removeCellEdit,
  removeRemarkEdit,
} from './edits.ts';
import { findingsOf } from './findings.ts';
import { History } from './history.ts';
import { sayLeftOut } from './left-out.ts';
import type { NotebookText } from './notebook-text.ts';
import { type ShownRange, showRange } from './ranges.ts';
import { LONGEST_TEXT, readNotebook, refusal } from './read-notebook.ts';
import { type Costs, costsOf } from './recap.ts';
import { renameEdit, renamePartEdit } from './renames.ts';
import { insertTemplateEdit, withNewCell } from './templates.ts';
import { duplicateCellEdit, duplicatePartEdit } from './copies.ts';
import { type Destination, moveCellEdit, movePartEdit } from './moves.ts';
import { otherwiseThan, sayOtherwise, valuesOf } from './values-kept.ts';
import { renameColumnEdit, withNewColumn } from './column-renames.ts';
import { type NotPasted, pasteEdit } from './paste-edit.ts';
import { isAtFault } from './at-fault.ts';
import {
  addColumnEdit,
  columnFormulaEdit,
  moveColumnEdit,
  removeColumnEdit,
} from './column-edits.ts';
import { type ColumnUse, columnUses } from './column-uses.ts';
import type { Saying } from './mentions.ts';
import { type TablePlace, laidOut, readLines } from './laid-out.ts';
import { type ColumnWish, type TableWish, addTableEdit, tableHereEdit } from './new-table.ts';
import { addRowsEdit, moveRowEdit, removeRowEdit, rowCellEdit } from './table-edits.ts';
import { PictureShelf, sameNames } from './picture-shelf.ts';
import { type PictureState, pictureOf, pictureRemarks } from './pictures.ts';
import type { Picturable } from './picture-values.ts';
import { type Mend, type Mendable, mendsOfCell, mendsOfDraft, mendsOfFinding } from './mends.ts';
import { tried } from './trying.ts';
import { tieEdit } from './ties.ts';
import { cellEdits, settingsOf, worked } from './worked-cells.ts';

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

export class Estimate implements EstimateDoor, TableDoor {
  readonly #longest: number;
  readonly #history = new History();
  #notebook: NotebookText;
  #workings: Workings;
  #settings: ReturnType<typeof settingsOf>;
  #costs: Costs | null = null;
  #findings: readonly Finding[] | null = null;
  readonly #pictures = new PictureShelf();

  /** `longest` is for measuring with longer texts than a person may open. */
  constructor(text: string, longest = LONGEST_TEXT) {
    this.#longest = longest;
    this.#notebook = readNotebook(text, undefined, longest) as NotebookText;
    this.#settings = settingsOf(this.#notebook);
    this.#workings = worked(this.#notebook, this.#settings);
  }

  get notebook(): Notebook {
    return this.#notebook;
  }

  state(cell: CellId): CellState {
    return this.#workings.state(cell);
  }

  evaluate(plan: Plan): Outcome {
    return this.#workings.evaluate(plan);
  }

  reach(cells: readonly CellId[], way: 'up' | 'down'): readonly CellId[] {
    return this.#workings.reach(cells, way);
  }

  workedBy(cell: CellId): WorkedBy | null {
    return this.#workings.workedBy(cell);
  }

  say(value: Value, holds: Holds): Shown {
    return show(value, holds, this.#settings.show);
  }

  shown(cell: CellId): Shown | null {
    const { outcome, holds } = this.state(cell);
    return this.#shown(outcome, holds);
  }

  shownWorked(cell: CellId): Shown | null {
    const { worked, workedHolds } = this.state(cell);
    return this.#shown(worked, workedHolds);
  }

  shownRange(cell: CellId): ShownRange | null {
    const { range } = this.state(cell);
    return range && showRange(range, this.#settings.show);
  }

  lastShown(cell: CellId): Shown | null {
    const { lastGood } = this.state(cell);
    return lastGood && show(lastGood.value, lastGood.holds, this.#settings.show);
  }

  costs(): Costs {
    this.#costs ??= costsOf(this.#notebook.sections, (id) => this.state(id));
    return this.#costs;
  }

  findings(): readonly Finding[] {
    this.#findings ??= [
      ...this.#notebook.findings,
      ...findingsOf({
        sections: this.#notebook.sections,
        starts: this.#notebook.starts,
        state: (id) => this.state(id),
        glance: (id) => this.#workings.glance(id),
        rows: (id) => this.rows(id),
        isName: (text, part) => this.#isName(text, part),
        say: (outcome, holds) => this.#shown(outcome, holds)?.text ?? null,
        draft: (part, cell, text) => this.#workings.draft(part, cell, text),
        picture: (cell, remark, neighbours) => this.#picture(cell, remark, neighbours),
      }),
    ];
    return this.#findings;
  }

  draft(cell: CellId, formula: string, as: 'formula' | 'by hand' = 'formula'): Draft {
    const { input } = this.state(cell);
    const drafted = this.#workings.draft(input.part, cell, formula);
    const { outcome, holds } = drafted;
    const reading =
      as === 'formula' ? drafted.reading : refusingRange(drafted.reading, formula, as);
    return { reading, outcome, shown: this.#shown(outcome, holds) };
  }

  picturesOf(cell: CellId): readonly PictureState[] {
    const found = this.#cell(cell);
    const cells = this.#notebook.sections.find(({ key }) => key === found.part)?.cells ?? [];
    return pictureRemarks(found).map((remark) => this.#picture(found, remark, cells));
  }

  #picture(cell: Cell, remark: Remark, neighbours: readonly Cell[]): PictureState {
    return this.#pictures.stateOf(cell, remark, this.#workings.vocabulary, () =>
      pictureOf(this.#picturable(), cell, remark, neighbours),
    );
  }

  mendsOf(cell: CellId): readonly Mend[] {
    return mendsOfCell(this.#mendable(), cell);
  }

  mendsOfDraft(cell: CellId, formula: string): readonly Fix[] {
    return mendsOfDraft(this.#mendable(), cell, formula);
  }

  mendsFor(finding: Finding): readonly Mend[] {
    return mendsOfFinding(this.#mendable(), finding);
  }

  mend({ say, does }: Mend): Applied | Finding {
    switch (does.kind) {
      case 'formula':
        return this.setFormula(does.cell, does.formula);
      case 'by-hand':
        return this.setByHand(does.cell, does.formula, null);
      case 'name':
        return this.rename(does.cell, does.name);
      case 'part-name':
        return this.renamePart(does.part, does.name);
      case 'new-cell':
        return this.addCell(does.part, does.after, does.name, does.formula);
      case 'remark':
        return this.setRemark(does.cell, does.word, does.text);
      case 'no-remark':
        return this.removeRemark(does.cell, does.word);
      case 'row-cell':
        return this.setRowCell(does.cell, does.row, does.column, does.text);
      case 'new-row':
        return this.addRow(does.cell, null, does.texts);
      case 'column-formula':
        return this.setColumnFormula(does.cell, does.column, does.formula);
      case 'column-name':
        return this.renameColumn(does.cell, does.column, does.name);
      case 'text':
        return this.replaceText({ say, splices: does.splices });
    }
  }

  setFormula(cell: CellId, formula: string): Applied | Finding {
    return this.#edit(formulaEdit(this.#cell(cell), formula));
  }

  rename(cell: CellId, name: string): Applied | Finding {
    const found = this.#cell(cell);
    return this.#edit(renameEdit(this.#known(), this.#part(found.part), found, name));
  }

  addCell(part: string, after: CellId | null, name: string, formula: string): Applied | Finding {
    const place = this.#part(part);
    const neighbour = after === null ? null : this.#cell(after);
    const edits = addCellEdit(this.#notebook, place, neighbour, name, formula);
    return this.#edit(withNewCell(this.#known(), place.key, name.trim(), edits));
  }

  removeCell(cell: CellId): Applied | Finding {
    return this.#edit(removeCellEdit(this.#notebook, this.#cell(cell)));
  }

  setRemark(cell: CellId, word: string, text: string): Applied | Finding {
    return this.#edit(remarkEdit(this.#notebook, this.#cell(cell), word, text));
  }

  removeRemark(cell: CellId, word: string): Applied | Finding {
    return this.#edit(removeRemarkEdit(this.#cell(cell), word));
  }

  tie(cells: readonly CellId[], words: string | null): Applied | Finding {
    const found = cells.map((id) => this.#cell(id));
    return this.#edit(tieEdit(this.#notebook, found, words));
  }

  setByHand(cell: CellId, formula: string | null, from: string | null): Applied | Finding {
    return this.#edit(byHandEdit(this.#notebook, this.#cell(cell), formula, from));
  }

  addPart(name: string, after: string | null): Applied | Finding {
    return this.#edit(addPartEdit(this.#notebook, name, after === null ? null : this.#part(after)));
  }

  renamePart(key: string, name: string): Applied | Finding {
    const part = this.#part(key);
    if (key === '') {
      return refused('not-a-part', 'What stands above the first part has no name.', key, null);
    }
    return this.#edit(renamePartEdit(this.#known(), part, name));
  }

  moveCell(cell: CellId, to: Destination, values: MovedValues): Applied | Finding {
    const found = this.#cell(cell);
    return this.#moved(moveCellEdit(this.#known(), found, to), found.name, values);
  }

  movePart(key: string, place: number, values: MovedValues): Applied | Finding {
    const part = this.#part(key);
    if (key === '') return aboveTheParts('stays where it is');
    return this.#moved(movePartEdit(this.#notebook, part, place), part.name, values);
  }

  duplicateCell(cell: CellId): Applied | Finding {
    const found = this.#cell(cell);
    return this.#edit(duplicateCellEdit(this.#known(), this.#part(found.part), found));
  }

  duplicatePart(key: string): Applied | Finding {
    const part = this.#part(key);
    if (key === '') return aboveTheParts('has no second copy');
    return this.#edit(duplicatePartEdit(this.#known(), part));
  }

  insertTemplate(text: string): Applied | Finding {
    return this.#edit(insertTemplateEdit(this.#known(), text));
  }

  replaceText(change: Change): Applied | Finding {
    const text = changed(this.#notebook.text, change);
    const tooMuch = refusal(text, this.#longest);
    if (tooMuch) return refused(tooMuch.code, tooMuch.message, null, null);
    return this.#record(change, readNotebook(text, this.#notebook, this.#longest) as NotebookText);
  }

  has(cell: CellId): boolean {
    return this.#workings.has(cell);
  }

  rows(cell: CellId): readonly (readonly CellId[])[] | null {
    return this.#workings.rowsOf(cell);
  }

  draftInRow(cell: CellId, row: number, column: number, text: string): Draft {
    const { reading, outcome, holds } = this.#workings.draftInRow(cell, row, column, text);
    return { reading, outcome, shown: this.#shown(outcome, holds) };
  }

  setRowCell(cell: CellId, row: number, column: number, text: string): Applied | Finding {
    return this.#edit(rowCellEdit(this.#notebook, this.#cell(cell), { row, column, text }));
  }

  addRow(cell: CellId, after: number | null, texts: readonly string[]): Applied | Finding {
    return this.#edit(addRowsEdit(this.#notebook, this.#cell(cell), after, [texts]));
  }

  removeRow(cell: CellId, row: number): Applied | Finding {
    return this.#edit(removeRowEdit(this.#notebook, this.#cell(cell), row));
  }

  moveRow(cell: CellId, from: number, to: number): Applied | Finding {
    return this.#edit(moveRowEdit(this.#notebook, this.#cell(cell), from, to));
  }

  setColumnFormula(cell: CellId, column: number, formula: string | null): Applied | Finding {
    return this.#edit(columnFormulaEdit(this.#cell(cell), column, formula));
  }

  renameColumn(cell: CellId, column: number, name: string): Applied | Finding {
    return this.#edit(renameColumnEdit(this.#known(), this.#cell(cell), column, name));
  }

  addColumn(
    cell: CellId,
    after: number | null,
    name: string,
    formula: string | null,
  ): Applied | Finding {
    const found = this.#cell(cell);
    const edits = addColumnEdit(this.#notebook, found, after, name, formula);
    return this.#edit(withNewColumn(this.#known(), found, after, name, edits));
  }

  removeColumn(cell: CellId, column: number): Applied | Finding {
    return this.#edit(removeColumnEdit(this.#notebook, this.#cell(cell), column));
  }

  moveColumn(cell: CellId, from: number, to: number): Applied | Finding {
    return this.#edit(moveColumnEdit(this.#notebook, this.#cell(cell), from, to));
  }

  columnUses(cell: CellId, column: number): readonly ColumnUse[] {
    return columnUses(this.#known(), this.#cell(cell), column);
  }

  addTable(
    part: string,
    after: CellId | null,
    name: string,
    columns: readonly ColumnWish[],
  ): Applied | Finding {
    return this.#edit(this.#tableEdits({ kind: 'new', part, after, name }, { columns, rows: [] }));
  }

  layOutTable(
    where: TablePlace,
    text: string,
  ): (Applied & { readonly refused: readonly NotPasted[] }) | Finding {
    const lines = readLines(text, this.#notebook.settings.currency);
    if (isRefused(lines)) return lines;
    const before = this.#notebook;
    const trial = tried(before, this.#tableEdits(where, lines.wish), this.#longest);
    if (isRefused(trial)) return trial;
    const were = new Set(before.sections.flatMap((s) => s.cells.map((c) => c.id)));
    const first = this.#take(trial.notebook);
    const fresh = trial.notebook.sections
      .flatMap((s) => s.cells)
      .find((c) => (where.kind === 'here' ? c.id === where.cell : !were.has(c.id)));
    const { wish, refused } = laidOut(lines, fresh ? (this.rows(fresh.id) ?? []) : [], (id) =>
      this.state(id),
    );
    if (refused.length === 0) {
      const back = inverse(before.text, trial.change);
      this.#history.record({ done: trial.change, back });
      return { change: trial.change, ran: first, refused };
    }
    this.#take(before);
    const done = this.#edit(this.#tableEdits(where, wish));
    return isRefused(done) ? done : { ...done, refused };
  }

  #tableEdits(where: TablePlace, wish: TableWish): Edits {
    if (where.kind === 'here') return tableHereEdit(this.#notebook, this.#cell(where.cell), wish);
    const place = this.#part(where.part);
    const after = where.after === null ? null : this.#cell(where.after);
    const name = where.name.trim();
    const edits = addTableEdit(this.#notebook, place, after, name, wish);
    return withNewCell(this.#known(), place.key, name, edits);
  }

  pasteRows(
    cell: CellId,
    row: number,
    column: number,
    text: string,
  ): (Applied & { readonly refused: readonly NotPasted[] }) | Finding {
    const pasted = pasteEdit(this.#notebook, this.#cell(cell), row, column, text, {
      isText: (k) => this.#workings.isText(cell, k),
      why: (k, words) => this.#whyNotInColumn(cell, k, words),
    });
    if (isRefused(pasted)) return pasted;
    const done = this.#edit(pasted.edits);
    return isRefused(done) ? done : { ...done, refused: pasted.refused };
  }

  /** Why a text can't stand in a column: it can't be read, or measures something else than the rows there. */
  #whyNotInColumn(cell: CellId, column: number, text: string): string | null {
    const { reading, holds } = this.#workings.draftInRow(cell, -1, column, text);
    const [problem] = reading.problems;
    if (problem) return `${problem.headline} ${problem.explanation}`;
    const there = this.#workings.rowsOf(cell) ?? [];
    for (const row of there) {
      const other = this.#workings.state(row[column]);
      if (other.outcome.kind === 'fault' || !other.holds || other.holds.measure.kind === 'open')
        continue;
      if (!holds || alikeMeasures(holds.measure, other.holds.measure)) return null;
      return `This column holds ${describe(other.holds.measure)}, and this is ${describe(holds.measure)}.`;
    }
    return null;
  }

  canUndo(): string | null {
    return this.#history.undoes;
  }

  canRedo(): string | null {
    return this.#history.redoes;
  }

  undo(): Applied | null {
    const step = this.#history.back();
    return step && this.#move(step.back);
  }

  takeBack(): Applied | null {
    const step = this.#history.drop();
    return step && this.#move(step.back);
  }

  redo(): Applied | null {
    const step = this.#history.forward();
    return step && this.#move(step.done);
  }

  #edit(edits: Edits): Applied | Finding {
    const result = tried(this.#notebook, edits, this.#longest);
    return isRefused(result) ? result : this.#record(result.change, result.notebook);
  }

  /** A move is only made where every cell comes to what it came to, or where that was agreed to. */
  #moved(edits: Edits, name: string, values: MovedValues): Applied | Finding {
    const result = tried(this.#notebook, edits, this.#longest);
    if (isRefused(result)) return result;
    if (values === 'may-change') return this.#record(result.change, result.notebook);
    const before = this.#notebook;
    const were = valuesOf(this.#asked());
    this.#take(result.notebook);
    const others = otherwiseThan(were, this.#asked());
    this.#take(before);
    const [first] = others;
    if (!first) return this.#record(result.change, result.notebook);
    return refused('values-change', sayOtherwise(name, others), null, first.cell);
  }

  #asked() {
    return {
      notebook: this.#notebook,
      state: (id: CellId) => this.state(id),
      say: (outcome: Outcome, holds: Holds | null) => this.#shown(outcome, holds)?.text ?? null,
      rows: (id: CellId) => this.rows(id),
    };
  }

  #record(change: Change, notebook: NotebookText): Applied {
    this.#history.record({ done: change, back: inverse(this.#notebook.text, change) });
    return { change, ran: this.#take(notebook) };
  }

  #move(change: Change): Applied {
    const text = changed(this.#notebook.text, change);
    const notebook = readNotebook(text, this.#notebook, this.#longest) as NotebookText;
    return { change, ran: this.#take(notebook) };
  }

  /** The new notebook takes the old one's place; only cells that changed are worked. */
  #take(notebook: NotebookText): readonly CellId[] {
    const before = this.#notebook;
    this.#notebook = notebook;
    this.#costs = null;
    this.#findings = null;
    if (!sameNames(before, notebook)) this.#pictures.clear();
    if (JSON.stringify(before.settings) !== JSON.stringify(notebook.settings)) {
      this.#settings = settingsOf(notebook);
      const workings = worked(notebook, this.#settings);
      workings.recall(
        this.#workings,
        notebook.sections.flatMap(({ cells }) => cells.map(({ id }) => id)),
      );
      this.#workings = workings;
      this.#pictures.clear();
      return workings.ran;
    }
    const edits: readonly CellEdit[] = cellEdits(before, notebook);
    const ran = edits.length === 0 ? [] : this.#workings.change(edits);
    this.#pictures.worked(ran);
    return ran;
  }

  #shown(outcome: Outcome, holds: Holds | null): Shown | null {
    if (outcome.kind !== 'value' || !holds) return null;
    const shown = show(outcome.value, holds, this.#settings.show);
    const { leftOut } = outcome;
    if (leftOut.length === 0) return shown;
    return {
      ...shown,
      text: `${shown.text} so far; ${sayLeftOut(leftOut, (id) => this.state(id))}`,
    };
  }

  #mendable(): Mendable {
    return {
      notebook: this.#notebook,
      rows: (id) => this.rows(id),
      say: (id, within) =>
        this.#workings.vocabulary.wayToSay(id, this.state(within).input.part, within),
      last: (id) => this.lastShown(id)?.text ?? null,
      shown: (id) => this.shown(id)?.text ?? null,
      ...this.#picturable(),
    };
  }

  #picturable(): Picturable {
    return {
      state: (id) => this.state(id),
      draft: (part, cell, text) => this.#workings.draft(part, cell, text),
      show: this.#settings.show,
      tableNames: () => this.#workings.vocabulary.tableNames(),
    };
  }

  #isName(text: string, part: string): boolean {
    const tokens = tokensOf(text);
    const found = this.#workings.vocabulary.nameAt(tokens, 0, part, null);
    return found !== null && found.length === tokens.length - 1;
  }

  #known() {
    return {
      notebook: this.#notebook,
      vocabulary: this.#workings.vocabulary,
      atFault: (saying: Saying) => isAtFault(this.#workings, saying),
    };
  }

  #cell(id: CellId): Cell {
    const cell = this.#notebook.cell(id);
    if (!cell) throw new Error(`no cell ${id} in the notebook`);
    return cell;
  }

  #part(key: string): Part {
    const part = this.#notebook.part(key);
    if (!part) throw new Error(`no part ${key} in the notebook`);
    return part;
  }
}

function aboveTheParts(what: string): Finding {
  return refused('not-a-part', `What stands above the first part ${what}.`, '', null);
}
