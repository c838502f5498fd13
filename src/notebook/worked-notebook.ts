// A notebook with its numbers, as they stand: what each cell comes to, how it is shown, its costs, findings and pictures.
// A new notebook takes the old one's place through `take`, and only what changed is worked.
import type { CellState, Outcome, Value } from '../engine/outcome.ts';
import { refusingRange } from '../engine/ranges.ts';
import type { CellEdit, Workings } from '../engine/workings.ts';
import { tokensOf } from '../language/lexer.ts';
import type { CellId } from '../language/tree.ts';
import type { Holds } from '../quantity/form.ts';
import { type Shown, show } from '../quantity/show.ts';
import { isAtFault } from './at-fault.ts';
import type { Cell, Finding, Part, Remark } from './document.ts';
import type { Draft } from './estimate-door.ts';
import { findingsOf } from './findings.ts';
import { sayLeftOut } from './left-out.ts';
import type { Saying } from './mentions.ts';
import type { Mendable } from './mends.ts';
import type { NotebookText } from './notebook-text.ts';
import { PictureShelf, sameNames } from './picture-shelf.ts';
import type { Picturable } from './picture-values.ts';
import { type PictureState, pictureOf, pictureRemarks } from './pictures.ts';
import { type ShownRange, showRange } from './ranges.ts';
import { readNotebook } from './read-notebook.ts';
import { type Costs, costsOf } from './recap.ts';
import { type RecapTable, type Recapped, recapTable, unpricedParts } from './recap-table.ts';
import { cellEdits, settingsOf, worked } from './worked-cells.ts';

export class WorkedNotebook {
  /** The longest text that is read. */
  readonly longest: number;
  #notebook: NotebookText;
  #workings: Workings;
  #settings: ReturnType<typeof settingsOf>;
  #costs: Costs | null = null;
  #findings: readonly Finding[] | null = null;
  readonly #pictures = new PictureShelf();

  constructor(text: string, longest: number) {
    this.longest = longest;
    this.#notebook = readNotebook(text, undefined, longest) as NotebookText;
    this.#settings = settingsOf(this.#notebook);
    this.#workings = worked(this.#notebook, this.#settings);
  }

  get notebook(): NotebookText {
    return this.#notebook;
  }

  get workings(): Workings {
    return this.#workings;
  }

  state(cell: CellId): CellState {
    return this.#workings.state(cell);
  }

  say(value: Value, holds: Holds): Shown {
    return show(value, holds, this.#settings.show);
  }

  shown(cell: CellId): Shown | null {
    const { outcome, holds } = this.state(cell);
    return this.shownOutcome(outcome, holds);
  }

  shownWorked(cell: CellId): Shown | null {
    const { worked, workedHolds } = this.state(cell);
    return this.shownOutcome(worked, workedHolds);
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
        rows: (id) => this.#workings.rowsOf(id),
        isName: (text, part) => this.#isName(text, part),
        say: (outcome, holds) => this.shownOutcome(outcome, holds)?.text ?? null,
        draft: (part, cell, text) => this.#workings.draft(part, cell, text),
        unpriced: () => unpricedParts(this.#recapped()),
        picture: (cell, remark, neighbours) => this.#picture(cell, remark, neighbours),
      }),
    ];
    return this.#findings;
  }

  recap(): RecapTable {
    return recapTable(this.#recapped());
  }

  #recapped(): Recapped {
    return {
      sections: this.#notebook.sections,
      costs: () => this.costs(),
      state: (id) => this.state(id),
      rows: (id) => this.#workings.rowsOf(id),
      reach: (cells, way) => this.#workings.reach(cells, way),
    };
  }

  draft(cell: CellId, formula: string, as: 'formula' | 'by hand'): Draft {
    const { input } = this.state(cell);
    const drafted = this.#workings.draft(input.part, cell, formula);
    const { outcome, holds } = drafted;
    const reading =
      as === 'formula' ? drafted.reading : refusingRange(drafted.reading, formula, as);
    return { reading, outcome, shown: this.shownOutcome(outcome, holds) };
  }

  picturesOf(cell: CellId): readonly PictureState[] {
    const found = this.cell(cell);
    const cells = this.#notebook.sections.find(({ key }) => key === found.part)?.cells ?? [];
    return pictureRemarks(found).map((remark) => this.#picture(found, remark, cells));
  }

  #picture(cell: Cell, remark: Remark, neighbours: readonly Cell[]): PictureState {
    return this.#pictures.stateOf(cell, remark, this.#workings.vocabulary, () =>
      pictureOf(this.picturable(), cell, remark, neighbours),
    );
  }

  /** The new notebook takes the old one's place; only cells that changed are worked. */
  take(notebook: NotebookText): readonly CellId[] {
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

  /** How an outcome is shown, with "so far" where a total leaves lines out. */
  shownOutcome(outcome: Outcome, holds: Holds | null): Shown | null {
    if (outcome.kind !== 'value' || !holds) return null;
    const shown = show(outcome.value, holds, this.#settings.show);
    const { leftOut } = outcome;
    if (leftOut.length === 0) return shown;
    return {
      ...shown,
      text: `${shown.text} so far; ${sayLeftOut(leftOut, (id) => this.state(id))}`,
    };
  }

  asked() {
    return {
      notebook: this.#notebook,
      state: (id: CellId) => this.state(id),
      say: (outcome: Outcome, holds: Holds | null) =>
        this.shownOutcome(outcome, holds)?.text ?? null,
      rows: (id: CellId) => this.#workings.rowsOf(id),
    };
  }

  known() {
    return {
      notebook: this.#notebook,
      vocabulary: this.#workings.vocabulary,
      atFault: (saying: Saying) => isAtFault(this.#workings, saying),
    };
  }

  mendable(): Mendable {
    return {
      notebook: this.#notebook,
      rows: (id) => this.#workings.rowsOf(id),
      say: (id, within) =>
        this.#workings.vocabulary.wayToSay(id, this.state(within).input.part, within),
      last: (id) => this.lastShown(id)?.text ?? null,
      shown: (id) => this.shown(id)?.text ?? null,
      ...this.picturable(),
    };
  }

  picturable(): Picturable {
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

  cell(id: CellId): Cell {
    const cell = this.#notebook.cell(id);
    if (!cell) throw new Error(`no cell ${id} in the notebook`);
    return cell;
  }

  part(key: string): Part {
    const part = this.#notebook.part(key);
    if (!part) throw new Error(`no part ${key} in the notebook`);
    return part;
  }
}
