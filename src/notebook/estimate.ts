// An estimate: the notebook as it stands, its numbers, and what was done to it. The page, the headless run and
// the tests all go through this door. It knows no screen, no clock and no file.
import type { CellState, Outcome, Value } from '../engine/outcome.ts';
import type { WorkedBy } from '../engine/reach.ts';
import type { Plan } from '../language/plan.ts';
import type { CellId } from '../language/tree.ts';
import type { Holds } from '../quantity/form.ts';
import type { Shown } from '../quantity/show.ts';
import type { Fix } from '../words/report.ts';
import {
  addColumnEdit,
  columnFormulaEdit,
  moveColumnEdit,
  removeColumnEdit,
} from './column-edits.ts';
import { renameColumnEdit, withNewColumn } from './column-renames.ts';
import { type ColumnUse, columnUses } from './column-uses.ts';
import { duplicateCellEdit, duplicatePartEdit } from './copies.ts';
import type { Change, Finding, Notebook } from './document.ts';
import {
  addCellEdit,
  addPartEdit,
  byHandEdit,
  formulaEdit,
  refused,
  remarkEdit,
  removeCellEdit,
  removeRemarkEdit,
} from './edits.ts';
import type { Applied, Draft, EstimateDoor, MovedValues, TableDoor } from './estimate-door.ts';
import type { TablePlace } from './laid-out.ts';
import { Changes } from './making-changes.ts';
import { type Mend, mendsOfCell, mendsOfDraft, mendsOfFinding } from './mends.ts';
import { type Destination, moveCellEdit, movePartEdit } from './moves.ts';
import type { ColumnWish } from './new-table.ts';
import type { NotPasted } from './paste-edit.ts';
import type { PictureState } from './pictures.ts';
import type { ShownRange } from './ranges.ts';
import { LONGEST_TEXT } from './read-notebook.ts';
import type { Costs } from './recap.ts';
import type { RecapTable } from './recap-table.ts';
import { renameEdit, renamePartEdit } from './renames.ts';
import { addRowsEdit, moveRowEdit, removeRowEdit, rowCellEdit } from './table-edits.ts';
import { layOutTable, pasteRows, tableEdits } from './table-from-text.ts';
import { insertTemplateEdit, withNewCell } from './templates.ts';
import { tieEdit } from './ties.ts';
import { WorkedNotebook } from './worked-notebook.ts';

export type { Applied, Draft, EstimateDoor, MovedValues, TableDoor } from './estimate-door.ts';

export class Estimate implements EstimateDoor, TableDoor {
  readonly #now: WorkedNotebook;
  readonly #changes: Changes;

  /** `longest` is for measuring with longer texts than a person may open. */
  constructor(text: string, longest = LONGEST_TEXT) {
    this.#now = new WorkedNotebook(text, longest);
    this.#changes = new Changes(this.#now);
  }

  get notebook(): Notebook {
    return this.#now.notebook;
  }

  state(cell: CellId): CellState {
    return this.#now.state(cell);
  }

  evaluate(plan: Plan): Outcome {
    return this.#now.workings.evaluate(plan);
  }

  reach(cells: readonly CellId[], way: 'up' | 'down'): readonly CellId[] {
    return this.#now.workings.reach(cells, way);
  }

  workedBy(cell: CellId): WorkedBy | null {
    return this.#now.workings.workedBy(cell);
  }

  say(value: Value, holds: Holds): Shown {
    return this.#now.say(value, holds);
  }

  shown(cell: CellId): Shown | null {
    return this.#now.shown(cell);
  }

  shownWorked(cell: CellId): Shown | null {
    return this.#now.shownWorked(cell);
  }

  shownRange(cell: CellId): ShownRange | null {
    return this.#now.shownRange(cell);
  }

  lastShown(cell: CellId): Shown | null {
    return this.#now.lastShown(cell);
  }

  costs(): Costs {
    return this.#now.costs();
  }

  recap(): RecapTable {
    return this.#now.recap();
  }

  findings(): readonly Finding[] {
    return this.#now.findings();
  }

  draft(cell: CellId, formula: string, as: 'formula' | 'by hand' = 'formula'): Draft {
    return this.#now.draft(cell, formula, as);
  }

  picturesOf(cell: CellId): readonly PictureState[] {
    return this.#now.picturesOf(cell);
  }

  mendsOf(cell: CellId): readonly Mend[] {
    return mendsOfCell(this.#now.mendable(), cell);
  }

  mendsOfDraft(cell: CellId, formula: string): readonly Fix[] {
    return mendsOfDraft(this.#now.mendable(), cell, formula);
  }

  mendsFor(finding: Finding): readonly Mend[] {
    return mendsOfFinding(this.#now.mendable(), finding);
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
    return this.#changes.edit(formulaEdit(this.#now.cell(cell), formula));
  }

  rename(cell: CellId, name: string): Applied | Finding {
    const found = this.#now.cell(cell);
    return this.#changes.edit(
      renameEdit(this.#now.known(), this.#now.part(found.part), found, name),
    );
  }

  addCell(part: string, after: CellId | null, name: string, formula: string): Applied | Finding {
    const place = this.#now.part(part);
    const neighbour = after === null ? null : this.#now.cell(after);
    const edits = addCellEdit(this.#now.notebook, place, neighbour, name, formula);
    return this.#changes.edit(withNewCell(this.#now.known(), place.key, name.trim(), edits));
  }

  removeCell(cell: CellId): Applied | Finding {
    return this.#changes.edit(removeCellEdit(this.#now.notebook, this.#now.cell(cell)));
  }

  setRemark(cell: CellId, word: string, text: string): Applied | Finding {
    return this.#changes.edit(remarkEdit(this.#now.notebook, this.#now.cell(cell), word, text));
  }

  removeRemark(cell: CellId, word: string): Applied | Finding {
    return this.#changes.edit(removeRemarkEdit(this.#now.cell(cell), word));
  }

  tie(cells: readonly CellId[], words: string | null): Applied | Finding {
    const found = cells.map((id) => this.#now.cell(id));
    return this.#changes.edit(tieEdit(this.#now.notebook, found, words));
  }

  setByHand(cell: CellId, formula: string | null, from: string | null): Applied | Finding {
    return this.#changes.edit(byHandEdit(this.#now.notebook, this.#now.cell(cell), formula, from));
  }

  addPart(name: string, after: string | null): Applied | Finding {
    return this.#changes.edit(
      addPartEdit(this.#now.notebook, name, after === null ? null : this.#now.part(after)),
    );
  }

  renamePart(key: string, name: string): Applied | Finding {
    const part = this.#now.part(key);
    if (key === '') {
      return refused('not-a-part', 'What stands above the first part has no name.', key, null);
    }
    return this.#changes.edit(renamePartEdit(this.#now.known(), part, name));
  }

  moveCell(cell: CellId, to: Destination, values: MovedValues): Applied | Finding {
    const found = this.#now.cell(cell);
    return this.#changes.moved(moveCellEdit(this.#now.known(), found, to), found.name, values);
  }

  movePart(key: string, place: number, values: MovedValues): Applied | Finding {
    const part = this.#now.part(key);
    if (key === '') return aboveTheParts('stays where it is');
    return this.#changes.moved(movePartEdit(this.#now.notebook, part, place), part.name, values);
  }

  duplicateCell(cell: CellId): Applied | Finding {
    const found = this.#now.cell(cell);
    return this.#changes.edit(
      duplicateCellEdit(this.#now.known(), this.#now.part(found.part), found),
    );
  }

  duplicatePart(key: string): Applied | Finding {
    const part = this.#now.part(key);
    if (key === '') return aboveTheParts('has no second copy');
    return this.#changes.edit(duplicatePartEdit(this.#now.known(), part));
  }

  insertTemplate(text: string): Applied | Finding {
    return this.#changes.edit(insertTemplateEdit(this.#now.known(), text));
  }

  replaceText(change: Change): Applied | Finding {
    return this.#changes.replaceText(change);
  }

  has(cell: CellId): boolean {
    return this.#now.workings.has(cell);
  }

  rows(cell: CellId): readonly (readonly CellId[])[] | null {
    return this.#now.workings.rowsOf(cell);
  }

  draftInRow(cell: CellId, row: number, column: number, text: string): Draft {
    const { reading, outcome, holds } = this.#now.workings.draftInRow(cell, row, column, text);
    return { reading, outcome, shown: this.#now.shownOutcome(outcome, holds) };
  }

  setRowCell(cell: CellId, row: number, column: number, text: string): Applied | Finding {
    return this.#changes.edit(
      rowCellEdit(this.#now.notebook, this.#now.cell(cell), { row, column, text }),
    );
  }

  addRow(cell: CellId, after: number | null, texts: readonly string[]): Applied | Finding {
    return this.#changes.edit(
      addRowsEdit(this.#now.notebook, this.#now.cell(cell), after, [texts]),
    );
  }

  removeRow(cell: CellId, row: number): Applied | Finding {
    return this.#changes.edit(removeRowEdit(this.#now.notebook, this.#now.cell(cell), row));
  }

  moveRow(cell: CellId, from: number, to: number): Applied | Finding {
    return this.#changes.edit(moveRowEdit(this.#now.notebook, this.#now.cell(cell), from, to));
  }

  setColumnFormula(cell: CellId, column: number, formula: string | null): Applied | Finding {
    return this.#changes.edit(columnFormulaEdit(this.#now.cell(cell), column, formula));
  }

  renameColumn(cell: CellId, column: number, name: string): Applied | Finding {
    return this.#changes.edit(
      renameColumnEdit(this.#now.known(), this.#now.cell(cell), column, name),
    );
  }

  addColumn(
    cell: CellId,
    after: number | null,
    name: string,
    formula: string | null,
  ): Applied | Finding {
    const found = this.#now.cell(cell);
    const edits = addColumnEdit(this.#now.notebook, found, after, name, formula);
    return this.#changes.edit(withNewColumn(this.#now.known(), found, after, name, edits));
  }

  removeColumn(cell: CellId, column: number): Applied | Finding {
    return this.#changes.edit(removeColumnEdit(this.#now.notebook, this.#now.cell(cell), column));
  }

  moveColumn(cell: CellId, from: number, to: number): Applied | Finding {
    return this.#changes.edit(moveColumnEdit(this.#now.notebook, this.#now.cell(cell), from, to));
  }

  columnUses(cell: CellId, column: number): readonly ColumnUse[] {
    return columnUses(this.#now.known(), this.#now.cell(cell), column);
  }

  addTable(
    part: string,
    after: CellId | null,
    name: string,
    columns: readonly ColumnWish[],
  ): Applied | Finding {
    return this.#changes.edit(
      tableEdits(this.#now, { kind: 'new', part, after, name }, { columns, rows: [] }),
    );
  }

  layOutTable(
    where: TablePlace,
    text: string,
  ): (Applied & { readonly refused: readonly NotPasted[] }) | Finding {
    return layOutTable(this.#now, this.#changes, where, text);
  }

  pasteRows(
    cell: CellId,
    row: number,
    column: number,
    text: string,
  ): (Applied & { readonly refused: readonly NotPasted[] }) | Finding {
    return pasteRows(this.#now, this.#changes, cell, row, column, text);
  }

  canUndo(): string | null {
    return this.#changes.canUndo();
  }

  canRedo(): string | null {
    return this.#changes.canRedo();
  }

  undo(): Applied | null {
    return this.#changes.undo();
  }

  takeBack(): Applied | null {
    return this.#changes.takeBack();
  }

  redo(): Applied | null {
    return this.#changes.redo();
  }
}

function aboveTheParts(what: string): Finding {
  return refused('not-a-part', `What stands above the first part ${what}.`, '', null);
}
