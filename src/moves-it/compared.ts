// Alternatives side by side: each is put into a copy of the notebook that stands beside it, read off and taken back, so
// that its figures are those the notebook itself would have. An alternative is a name and other formulas for some cells.
import type { CellId } from '../language/tree.ts';
import { stretchBetween } from '../notebook/change.ts';
import type { Change, Finding, Notebook } from '../notebook/document.ts';
import type { Applied, EstimateDoor } from '../notebook/estimate.ts';
import { cellsOf, oneLine } from '../notebook/lines.ts';
import { type Moved, type Result, type Stood, movedFrom, stoodOf } from './stood.ts';

export interface Put {
  readonly cell: CellId;
  readonly formula: string;
}

export interface Alternative {
  readonly name: string;
  readonly puts: readonly Put[];
}

export interface ComparedResult {
  readonly stood: Stood;
  /** From the notebook as it stands. */
  readonly moved: Moved;
}

export interface ComparedAlternative {
  /** In the order in which they were asked for. */
  readonly results: readonly ComparedResult[];
  /** What could not be put in, and why; the others were. */
  readonly refused: readonly { readonly cell: CellId; readonly why: string }[];
  /** What makes the notebook this alternative, in one change; null where nothing would be otherwise. */
  readonly change: Change | null;
}

export class Alternatives {
  readonly #open: (text: string) => EstimateDoor;
  #copy: EstimateDoor | null = null;

  /** How a notebook is opened beside the one that is compared with. */
  constructor(open: (text: string) => EstimateDoor) {
    this.#open = open;
  }

  /** Each against the notebook as it stands, which is not touched. */
  compare(
    door: EstimateDoor,
    alternatives: readonly Alternative[],
    results: readonly Result[],
  ): readonly ComparedAlternative[] {
    const copy = this.#follow(door.notebook.text);
    const there = placesOf(door.notebook, copy.notebook);
    const were = results.map((result) => stoodOf(door, result));
    return alternatives.map(({ name, puts }) => {
      const tried = putIn(copy, puts, there.cell);
      const { text } = copy.notebook;
      const found = results.map((result, i): ComparedResult => {
        const own = there.result(result);
        const stood = stoodOf(copy, own);
        return { stood, moved: movedFrom(copy, own, were[i], stood) };
      });
      for (let step = 0; step < tried.made; step++) copy.takeBack();
      const change =
        text === door.notebook.text
          ? null
          : { say: `Put in ${name}`, splices: [stretchBetween(door.notebook.text, text)] };
      return { results: found, refused: tried.refused, change };
    });
  }

  /** The copy as the notebook stands now: only what is otherwise is worked anew. */
  #follow(text: string): EstimateDoor {
    const copy = this.#copy;
    if (copy && copy.notebook.text !== text) {
      const splices = [stretchBetween(copy.notebook.text, text)];
      copy.replaceText({ say: 'Follow the notebook', splices });
    }
    if (copy?.notebook.text === text) return copy;
    this.#copy = this.#open(text);
    return this.#copy;
  }
}

interface Tried {
  /** So many steps are to be taken back. */
  readonly made: number;
  readonly refused: ComparedAlternative['refused'];
}

/** All that can stand there together; what is at fault once all of it stands is refused, and the rest put in without it. */
function putIn(copy: EstimateDoor, puts: readonly Put[], place: (cell: CellId) => CellId): Tried {
  const refused: { cell: CellId; why: string }[] = [];
  let made = 0;
  const stand: Put[] = [];
  for (const put of puts) {
    const done = write(copy, place(put.cell), put.formula);
    if (done === 'as it was') continue;
    if ('change' in done) {
      made++;
      stand.push(put);
    } else refused.push({ cell: put.cell, why: done.message });
  }
  const atFault = stand.flatMap(({ cell }) => {
    const why = faultOf(copy, place(cell));
    return why === null ? [] : [{ cell, why }];
  });
  if (atFault.length === 0) return { made, refused };
  for (let step = 0; step < made; step++) copy.takeBack();
  const faulty = new Set(atFault.map(({ cell }) => cell));
  const rest = putIn(
    copy,
    stand.filter(({ cell }) => !faulty.has(cell)),
    place,
  );
  return { made: rest.made, refused: [...refused, ...atFault, ...rest.refused] };
}

/** A value that was set by hand is written by hand: its formula would change nothing. */
function write(copy: EstimateDoor, cell: CellId, formula: string): Applied | Finding | 'as it was' {
  const { input } = copy.state(cell);
  const now = input.byHand ?? input.formula;
  if (oneLine(formula) === oneLine(now)) return 'as it was';
  return input.byHand === null
    ? copy.setFormula(cell, formula)
    : copy.setByHand(cell, formula, null);
}

function faultOf(copy: EstimateDoor, cell: CellId): string | null {
  const { reading, outcome } = copy.state(cell);
  const [problem] = reading.problems;
  const report = problem ?? (outcome.kind === 'fault' ? outcome.report : null);
  return report && `${report.headline} ${report.explanation}`;
}

/** The same text read twice: what stands at one place is one thing. */
function placesOf(notebook: Notebook, copy: Notebook) {
  const [own, other] = [notebook, copy].map(({ parts }) => parts.flatMap(cellsOf));
  const cells = new Map(own.map(({ id }, i) => [id, other[i].id]));
  const parts = new Map(notebook.parts.map(({ key }, i) => [key, copy.parts[i].key]));
  const cell = (id: CellId): CellId => cells.get(id) ?? id;
  const result = (asked: Result): Result => {
    switch (asked.of) {
      case 'cell':
        return { of: 'cell', cell: cell(asked.cell) };
      case 'part':
        return { of: 'part', part: parts.get(asked.part) ?? asked.part };
      case 'direct':
      case 'price':
        return asked;
    }
  };
  return { cell, result };
}
