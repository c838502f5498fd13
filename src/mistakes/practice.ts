// A number to practise on: a result of a notebook with fresh numbers for its givens, worked in an estimate of its own.
// The same seed makes the same numbers; the notebook that it was made from knows nothing of it.
import type { CellState } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { Cell, Notebook } from '../notebook/document.ts';
import { Estimate } from '../notebook/estimate.ts';
import { nameKey } from '../notebook/names.ts';
import { outsideLimits, readLimits } from '../notebook/sensible.ts';
import { Dec } from '../quantity/decimal.ts';
import { type Draws, streams } from '../moves-it/draws.ts';
import { givensOf, numberOf } from '../moves-it/givens.ts';
import { REFERENCE_TABLES } from '../reference/tables.ts';
import { type Fresh, drawn, freshOf } from './fresh-numbers.ts';

/** A given that was changed, as it was written and as it is now. */
export interface FreshGiven {
  readonly cell: CellId;
  readonly name: string;
  readonly was: string;
  readonly now: string;
}

export interface Practice {
  /** Of its own: its cells have ids of their own. */
  readonly estimate: Estimate;
  /** The result in it. */
  readonly cell: CellId;
  readonly seed: number;
  /** In the order of the notebook. */
  readonly fresh: readonly FreshGiven[];
}

/** All givens are drawn together so many times; after that one after the other, and what would do harm is left. */
const DRAWN_TOGETHER = 12;
const DRAWS_FOR_ANOTHER = 4;

/** Null where there is nothing to practise: the cell has no number, or nothing under it can be moved. */
export function practiceOf(notebook: Notebook, cell: CellId, seed: number): Practice | null {
  const place = cellsOf(notebook).findIndex(({ id }) => id === cell);
  const estimate = new Estimate(notebook.text);
  const result = cellsOf(estimate.notebook)[place];
  if (!result || !numberOf(estimate.state(result.id))) return null;
  const set = new PracticeSet(estimate, result.id, seed);
  const fresh = set.made();
  return fresh.length === 0 ? null : { estimate, cell: result.id, seed, fresh };
}

interface Moved {
  readonly cell: CellId;
  readonly name: string;
  readonly was: string;
  readonly sensible: string | null;
  readonly fresh: Fresh;
  readonly draws: Draws;
  readonly place: 'cell' | 'row';
  readonly write: (text: string) => boolean;
}

class PracticeSet {
  readonly #estimate: Estimate;
  readonly #result: CellId;
  readonly #below: readonly CellId[];
  readonly #were: ReadonlyMap<CellId, CellState>;
  readonly #moved: readonly Moved[];

  constructor(estimate: Estimate, result: CellId, seed: number) {
    this.#estimate = estimate;
    this.#result = result;
    this.#below = [...new Set([...estimate.reach([result], 'down'), result])];
    this.#were = new Map(this.#below.map((id) => [id, estimate.state(id)]));
    this.#moved = this.#givens(seed);
  }

  made(): readonly FreshGiven[] {
    const now = this.#together() ?? this.#oneByOne();
    return this.#moved.flatMap(({ cell, name, was }) => {
      const text = now.get(cell);
      return text === undefined || text === was ? [] : [{ cell, name, was, now: text }];
    });
  }

  #together(): ReadonlyMap<CellId, string> | null {
    for (let round = 0; round < DRAWN_TOGETHER; round++) {
      const now = new Map<CellId, string>();
      for (const one of this.#moved) {
        const text = this.#other(one);
        if (text !== null) now.set(one.cell, text);
      }
      this.#write(now);
      if (now.size > 0 && this.#isSound()) return now;
    }
    return null;
  }

  /** Another number than stands there, if a few draws come to one. */
  #other({ cell, was, fresh, draws }: Moved): string | null {
    for (let draw = 0; draw < DRAWS_FOR_ANOTHER; draw++) {
      const text = drawn(this.#estimate, cell, fresh, draws);
      if (text !== was) return text;
    }
    return null;
  }

  /** Formulas in one change: a long notebook is read once. */
  #write(now: ReadonlyMap<CellId, string>): void {
    const splices = cellsOf(this.#estimate.notebook).flatMap(({ id, formulaSpot }) => {
      const insert = now.get(id);
      return insert === undefined ? [] : [{ ...formulaSpot, insert }];
    });
    this.#estimate.replaceText({ say: 'Fresh numbers', splices });
    for (const { cell, place, write } of this.#moved) {
      const text = now.get(cell);
      if (place === 'row' && text !== undefined) write(text);
    }
  }

  #oneByOne(): ReadonlyMap<CellId, string> {
    const now = new Map<CellId, string>();
    for (const { was, write } of this.#moved) write(was);
    for (const one of this.#moved) {
      const { cell, was, write } = one;
      const text = this.#other(one);
      if (text === null || !write(text)) continue;
      if (this.#isSound()) now.set(cell, text);
      else write(was);
    }
    return now;
  }

  /** Nothing on the way to the result is at fault or below nought that was not, and limits that hang on others hold. */
  #isSound(): boolean {
    const estimate = this.#estimate;
    const isWorked = this.#below.every((id) => {
      const [was, now] = [this.#were.get(id), estimate.state(id)];
      if (was?.outcome.kind !== now.outcome.kind) return false;
      const [before, after] = [numberOf(was), numberOf(now)];
      if (!before || !after) return true;
      if (after.isNegative() && !after.isZero() && !before.isNegative()) return false;
      return id !== this.#result || before.isZero() || !after.isZero();
    });
    return isWorked && this.#moved.every((one) => this.#isSensible(one));
  }

  #isSensible({ cell, sensible }: Moved): boolean {
    if (sensible === null) return true;
    const estimate = this.#estimate;
    const limits = readLimits(sensible, (text) => estimate.draft(cell, text));
    return !limits || outsideLimits(estimate.state(cell), limits) === null;
  }

  /** A stream of chance for each given, so that one more at the end leaves the draws of those before it as they were. */
  #givens(seed: number): readonly Moved[] {
    const estimate = this.#estimate;
    const rests = new Set([...this.#below.filter((id) => this.#isPlain(id)), ...this.#numbers()]);
    const found = cellsOf(estimate.notebook).flatMap((cell): readonly Omit<Moved, 'draws'>[] => {
      if (cell.table) return this.#rows(cell, rests);
      if (!rests.has(cell.id) || estimate.state(cell.id).input.byHand !== null) return [];
      const sensible = remarkOf(cell, 'sensible');
      const choices = this.#choices(cell);
      const fresh = freshOf(estimate, cell.id, { sensible, choices });
      if (!fresh) return [];
      const write = (text: string): boolean => 'change' in estimate.setFormula(cell.id, text);
      return [
        {
          cell: cell.id,
          name: cell.name,
          was: cell.formula,
          sensible,
          fresh,
          place: 'cell',
          write,
        },
      ];
    });
    const draws = streams(seed, found.length);
    return found.flatMap((one, at) => (draws[at] ? [{ ...one, draws: draws[at] }] : []));
  }

  #numbers(): readonly CellId[] {
    return givensOf(this.#estimate, this.#result);
  }

  /** A text that is chosen, or a yes or no. */
  #isPlain(id: CellId): boolean {
    const { kind, outcome, input } = this.#estimate.state(id);
    if (kind !== 'given' || outcome.kind !== 'value' || input.byHand !== null) return false;
    return !(outcome.value instanceof Dec) && id !== this.#result;
  }

  /**
   * The numbers in the rows of a table that works something. What only is read from stays as it is, and so does the
   * first column, which tells the rows apart: such as the lengths that a yard has in stock.
   */
  #rows({ id, table }: Cell, rests: ReadonlySet<CellId>): readonly Omit<Moved, 'draws'>[] {
    const estimate = this.#estimate;
    if (!table?.columns.some(({ formula }) => formula !== null)) return [];
    return (estimate.rows(id) ?? []).flatMap((row, r) =>
      row.flatMap((cell, c): readonly Omit<Moved, 'draws'>[] => {
        const was = table.rows[r]?.texts[c] ?? '';
        if (c === 0 || was === '' || !rests.has(cell)) return [];
        const fresh = freshOf(estimate, cell, { sensible: null, choices: null });
        if (fresh?.kind !== 'steps') return [];
        const { name } = estimate.state(cell).input;
        const write = (text: string): boolean => 'change' in estimate.setRowCell(id, r, c, text);
        return [{ cell, name, was, sensible: null, fresh, place: 'row', write }];
      }),
    );
  }

  /** `a, b`, or what stands in a column of a table. */
  #choices(cell: Cell): readonly string[] | null {
    const text = remarkOf(cell, 'choices');
    if (text === null) return null;
    const [, column, name] = /^(\S.*?) of (\S.*)$/.exec(text) ?? [];
    if (column === undefined || name === undefined) return text.split(/,\s*/);
    const tables = [
      ...cellsOf(this.#estimate.notebook).flatMap((each) =>
        each.table
          ? [
              {
                name: each.name,
                columns: each.table.columns,
                rows: each.table.rows.map((r) => r.texts),
              },
            ]
          : [],
      ),
      ...REFERENCE_TABLES.map(({ name: called, table }) => ({ name: called, ...table })),
    ];
    const table = tables.find((each) => nameKey(name).endsWith(nameKey(each.name)));
    const at = table?.columns.findIndex((each) => nameKey(each.name) === nameKey(column)) ?? -1;
    if (!table || at < 0) return null;
    return [...new Set(table.rows.flatMap((row) => row[at] || []))];
  }
}

function cellsOf(notebook: Notebook): readonly Cell[] {
  return notebook.parts.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === 'cell' ? [block.cell] : [])),
  );
}

function remarkOf(cell: Cell, kind: 'sensible' | 'choices'): string | null {
  return cell.remarks.find((remark) => remark.kind === kind)?.text.trim() ?? null;
}
