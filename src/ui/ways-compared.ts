// The alternatives of the open notebook, compared with it as it stands: found anew when one of them or the notebook is
// otherwise, and while a tape moves once it rests, so that all that is shown together belongs together.
import type { CellId } from '../language/tree.ts';
import { Alternatives, type ComparedAlternative } from '../moves-it/compared.ts';
import type { Result } from '../moves-it/stood.ts';
import type { Cell } from '../notebook/document.ts';
import type { WatchedKept } from '../store/alongside-shapes.ts';
import type { Desk } from './desk.ts';
import { allCells } from './reading-order.ts';
import { type Watched, markOf } from './watching.ts';

/** A result in a row of its own. */
export interface ComparedRow {
  readonly result: Result;
  readonly name: string;
  /** Null: of the totals, which are always here. */
  readonly watched: Watched | null;
  readonly better: WatchedKept['better'];
}

export interface Compared {
  readonly rows: readonly ComparedRow[];
  /** Every check of the notebook, watched or not. Their results come after those of the rows. */
  readonly checks: readonly Cell[];
  /** The notebook as it stands. */
  readonly is: ComparedAlternative;
  readonly ways: readonly ComparedAlternative[];
}

/** In milliseconds: so long a tape rests before what it moved is compared. */
const RESTS = 250;

const TOTALS: readonly Result[] = [{ of: 'price' }, { of: 'direct' }];

export class WaysCompared {
  readonly #desk: Desk;
  /** Called when there is something new to see. */
  readonly #rested: () => void;
  #beside: Alternatives | null = null;
  #compared: Compared | null = null;
  #of: readonly unknown[] = [];
  #rest: ReturnType<typeof setTimeout> | undefined;

  constructor(desk: Desk, rested: () => void) {
    this.#desk = desk;
    this.#rested = rested;
  }

  /** What was found last goes with the notebook that it was found in. */
  forget(): void {
    clearTimeout(this.#rest);
    this.#of = [];
    this.#beside = null;
  }

  look(): Compared {
    const { session, watching } = this.#desk;
    const { alternatives, varied } = watching.beside;
    const rows = this.#rows();
    const checks = allCells(session.door.notebook).filter(
      ({ id }) => session.door.state(id).kind === 'check',
    );
    const results = [
      ...rows.map(({ result }) => result),
      ...checks.map(({ id }): Result => ({ of: 'cell', cell: id })),
    ];
    const of = [results.map(markOf).join(), alternatives, varied, session.door.notebook];
    const other = of.findIndex((each, i) => each !== this.#of[i]);
    clearTimeout(this.#rest);
    // Names and which is better may be otherwise though the figures are not.
    if (this.#compared && other === -1) return { ...this.#compared, rows };
    if (this.#compared && session.trial && other === of.length - 1) {
      this.#rest = setTimeout(() => {
        this.#of = [];
        this.#rested();
      }, RESTS);
      return { ...this.#compared, rows };
    }
    this.#of = of;
    this.#beside ??= new Alternatives((text) => this.#desk.openBeside(text));
    const cells = watching.cellsOf(varied);
    const meant = alternatives.map(({ name, puts }) => ({
      name,
      puts: puts.flatMap(({ key, formula }) => {
        const cell = cells.get(key);
        return cell === undefined ? [] : [{ cell, formula }];
      }),
    }));
    const [is, ...ways] = this.#beside.compare(
      session.door,
      [{ name: '', puts: [] }, ...meant],
      results,
    );
    this.#compared = { rows, checks, is, ways };
    return this.#compared;
  }

  /** The cells that are varied and stand in the notebook, by their keys. */
  varied(): readonly (readonly [key: string, cell: CellId])[] {
    const { watching } = this.#desk;
    const { varied } = watching.beside;
    const cells = watching.cellsOf(varied);
    return varied.flatMap((key) => {
      const cell = cells.get(key);
      return cell === undefined ? [] : [[key, cell] as const];
    });
  }

  #rows(): readonly ComparedRow[] {
    const { watching } = this.#desk;
    const { entries } = watching;
    const totals = TOTALS.map((result): ComparedRow => {
      const watched = entries.find((one) => markOf(one.result) === markOf(result)) ?? null;
      const better = watched?.kept.better ?? null;
      return { result, name: watching.nameOf(result), watched, better };
    });
    const known = new Set(TOTALS.map(markOf));
    const others = entries
      .filter(({ result }) => !known.has(markOf(result)))
      .map((watched): ComparedRow => ({ ...watched, watched, better: watched.kept.better }));
    return [...totals, ...others];
  }
}
