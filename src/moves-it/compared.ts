// Alternatives side by side, and results watched while a given moves: worked exactly beside the notebook, which is not
// touched. An alternative is a name and other amounts for some cells that are given.
import type { CellId } from '../language/tree.ts';
import { Dec } from '../quantity/decimal.ts';
import type { Shown } from '../quantity/show.ts';
import { ExactWork, type Put } from './exactly.ts';
import { type Reads, readFor } from './putting.ts';
import { type Web, webOf } from './web.ts';

/** What a result is now and would be then. */
export interface Seen {
  readonly cell: CellId;
  /** Null: it has no value. */
  readonly now: Shown | null;
  readonly then: Shown | null;
  /** By how much it changes, where both are numbers. */
  readonly change: Shown | null;
  readonly moves: 'up' | 'down' | 'not' | 'otherwise';
}

export interface Alternative {
  readonly name: string;
  readonly puts: readonly { readonly cell: CellId; readonly formula: string }[];
}

export interface ComparedAlternative {
  readonly name: string;
  readonly seen: readonly Seen[];
  /** What could not be put in, and why; the others were. */
  readonly refused: readonly { readonly cell: CellId; readonly why: string }[];
}

/** Each alternative against the notebook as it stands, result by result in the order they were asked for. */
export function compareAlternatives(
  reads: Reads,
  alternatives: readonly Alternative[],
  results: readonly CellId[],
): readonly ComparedAlternative[] {
  return alternatives.map(({ name, puts }) => {
    const watch = new Watch(
      reads,
      puts.map(({ cell }) => cell),
      results,
    );
    return { name, ...watch.at(puts) };
  });
}

/** Results that are watched while some cells are moved: made once, asked at every place of the tape. */
export class Watch {
  readonly #reads: Reads;
  readonly #results: readonly CellId[];
  readonly #web: Web;
  readonly #exact: ExactWork;

  constructor(reads: Reads, moved: readonly CellId[], results: readonly CellId[]) {
    this.#reads = reads;
    this.#results = results;
    this.#web = webOf(reads, [...new Set(moved)], results);
    this.#exact = new ExactWork(reads, this.#web);
  }

  at(puts: Alternative['puts']): Omit<ComparedAlternative, 'name'> {
    const values = new Map<CellId, Put>();
    const refused: { cell: CellId; why: string }[] = [];
    for (const { cell, formula } of puts) {
      if (!this.#web.moved.includes(cell)) throw new Error(`cell ${cell} was not to be moved`);
      const read = readFor(this.#reads, cell, formula);
      if (read.kind === 'value') values.set(cell, read.value);
      else refused.push({ cell, why: read.why });
    }
    this.#exact.run(values);
    return { seen: this.#results.map((cell) => this.#seen(cell)), refused };
  }

  #seen(cell: CellId): Seen {
    const { outcome, holds } = this.#reads.state(cell);
    const now = outcome.kind === 'value' ? outcome.value : null;
    const then = this.#exact.value(cell);
    const say = (value: Put | null): Shown | null =>
      value === null || !holds ? null : this.#reads.say(value, holds);
    const change = now instanceof Dec && then instanceof Dec ? then.minus(now) : null;
    return { cell, now: say(now), then: say(then), change: say(change), moves: movesBy(now, then) };
  }
}

function movesBy(now: Put | null, then: Put | null): Seen['moves'] {
  if (!(now instanceof Dec && then instanceof Dec)) return now === then ? 'not' : 'otherwise';
  if (then.eq(now)) return 'not';
  return then.gt(now) ? 'up' : 'down';
}
