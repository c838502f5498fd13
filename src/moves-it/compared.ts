// Alternatives side by side: each is put into a copy of the notebook that stands beside it, read off and taken back, so
// that its figures are those the notebook itself would have. An alternative is a name and other formulas for some cells.
import type { CellId } from '../language/tree.ts';
import { difference } from '../notebook/change.ts';
import type { Change, Notebook } from '../notebook/document.ts';
import type { EstimateDoor } from '../notebook/estimate.ts';
import { cellsOf } from '../notebook/lines.ts';
import { type Moved, type Result, type Stood, leftOutOf, movedFrom, stoodOf } from './stood.ts';
import { type NotPut, type Put, putIn } from './written-in.ts';

export interface Alternative {
  readonly name: string;
  readonly puts: readonly Put[];
}

export interface ComparedResult {
  readonly stood: Stood;
  /** From the notebook as it stands. */
  readonly moved: Moved;
  /** How many lines its sum leaves out. */
  readonly leftOut: number;
}

export interface ComparedAlternative {
  /** In the order in which they were asked for. */
  readonly results: readonly ComparedResult[];
  /** What could not be put in, and why; the others were. */
  readonly refused: readonly NotPut[];
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
        const moved = movedFrom(copy, own, were[i], stood);
        return { stood, moved, leftOut: leftOutOf(copy, own) };
      });
      for (let step = 0; step < tried.made; step++) copy.takeBack();
      const change =
        text === door.notebook.text
          ? null
          : { say: `Put in ${name}`, splices: [difference(door.notebook.text, text)] };
      return { results: found, refused: tried.refused, change };
    });
  }

  /** The copy as the notebook stands now: only what is otherwise is worked anew. */
  #follow(text: string): EstimateDoor {
    const copy = this.#copy;
    if (copy && copy.notebook.text !== text) {
      const splices = [difference(copy.notebook.text, text)];
      copy.replaceText({ say: 'Follow the notebook', splices });
    }
    if (copy?.notebook.text === text) return copy;
    this.#copy = this.#open(text);
    return this.#copy;
  }
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
