// What is asked beside the page, in a worker or in short goes on it, as plain values that can be sent: cells are told
// by their places in the notebook's order, which a text has wherever it is read.
import type { CellId } from '../language/tree.ts';
import { type Job, everyCell } from './figures.ts';
import type { Goes } from './goes.ts';
import { type Matter, type Matters, mattersInGoes } from './matters.ts';
import { tiesOf } from './ties.ts';
import { trialsInGoes } from './trials.ts';
import { DIRECT_COST, JOB_PRICE } from './whole-job.ts';

/** Which cell among all, from 0; -1 the price of the job, -2 its direct cost. */
export type Place = number;

export type Question =
  | { readonly kind: 'matters'; readonly result: Place }
  | {
      readonly kind: 'trials';
      readonly result: Place;
      readonly trials: number;
      readonly seed: number;
    };

export type Answer =
  /** Cells in it are places; null: the result is no number. */
  | { readonly kind: 'matters'; readonly matters: Matters | null }
  | {
      readonly kind: 'trials';
      /** In the unit that the result is shown in, ascending; empty: it depends on no range. */
      readonly sorted: Float64Array;
      /** Trials in which it had no value. */
      readonly none: number;
    };

/** The job has the totals among its cells. */
export function* answerTo(job: Job, question: Question): Goes<Answer> {
  const cells = everyCell(job).map(({ cell }) => cell);
  const result = cellAt(cells, question.result);
  switch (question.kind) {
    case 'matters': {
      const places = new Map(cells.map((cell, place) => [cell, place]));
      const matters = yield* mattersInGoes(job, result);
      if (!matters) return { kind: 'matters', matters };
      const told = withCells(matters, (cell) => places.get(cell) ?? NaN);
      return { kind: 'matters', matters: { ...told, result: question.result } };
    }
    case 'trials': {
      const { trials, seed } = question;
      const wish = { trials, seed, ties: tiesOf(job), cells: [result] };
      const [told] = yield* trialsInGoes(job, cells, wish);
      return told
        ? { kind: 'trials', sorted: told.sorted.slice(), none: told.none }
        : { kind: 'trials', sorted: new Float64Array(0), none: 0 };
    }
  }
}

export function placeIn(job: Job, cell: CellId): Place {
  if (cell === JOB_PRICE) return -1;
  if (cell === DIRECT_COST) return -2;
  const place = everyCell(job).findIndex((each) => each.cell === cell);
  if (place < 0) throw new Error(`cell ${cell} stands nowhere in the notebook`);
  return place;
}

/** What was answered about places, about the cells that stand there. */
export function cellsOfAnswer(job: Job, matters: Matters): Matters {
  const cells = everyCell(job).map(({ cell }) => cell);
  return withCells({ ...matters, result: cellAt(cells, matters.result) }, (place) =>
    cellAt(cells, place),
  );
}

function cellAt(cells: readonly CellId[], place: Place): CellId {
  if (place === -1) return JOB_PRICE;
  if (place === -2) return DIRECT_COST;
  const cell = cells[place];
  if (cell === undefined) throw new Error(`no cell stands at place ${place}`);
  return cell;
}

/** Of its givens and packs. */
function withCells(matters: Matters, of: (cell: CellId) => CellId): Matters {
  const own = (matter: Matter): Matter => ({
    ...matter,
    given: of(matter.given),
    packs: matter.packs.map((pack) => ({ ...pack, cell: of(pack.cell) })),
  });
  return { ...matters, givens: matters.givens.map(own) };
}
