// Two versions in one engine, so that each change can be switched over on its own: cells that are one and the same
// stand in it once, and what differs in them is a switch. Only what a switch reaches is worked again.
import type { CellInput, CellState, TableInput } from '../engine/outcome.ts';
import { type CellEdit, Workings } from '../engine/workings.ts';
import type { CellId } from '../language/tree.ts';
import { REFERENCE_TABLES } from '../reference/tables.ts';
import type { Estimate } from '../notebook/estimate.ts';
import { settingsOf } from '../notebook/worked-cells.ts';
import type { NotebookText } from '../notebook/notebook-text.ts';
import { centsOfLine } from './money-lines.ts';

/** A cell of both versions, or of one. */
export interface WorldCell {
  readonly id: CellId;
  readonly before: CellInput | null;
  readonly after: CellInput | null;
  /** Of a table whose columns are the same: its rows with what stands in each before and after. */
  readonly rows: readonly WorldRow[] | null;
}

export interface WorldRow {
  readonly before: readonly string[] | null;
  readonly after: readonly string[] | null;
  readonly same: boolean;
}

export interface WorldPart {
  readonly key: string;
  readonly before: string;
  readonly after: string;
}

/** One difference that can be switched over: a cell, a row of a table by its place, or a part's name. */
export type Switch =
  | { readonly kind: 'cell'; readonly cell: CellId }
  | { readonly kind: 'row'; readonly cell: CellId; readonly row: number }
  | { readonly kind: 'part'; readonly part: string };

/** Which total: the price, or the direct cost alone. */
export type TotalOf = 'price' | 'direct';

export class World {
  readonly switches: readonly Switch[];
  readonly cells: ReadonlyMap<CellId, WorldCell>;
  readonly #of: TotalOf;
  readonly #parts: readonly WorldPart[];
  readonly #workings: Workings;
  readonly #on: boolean[];
  readonly #switchesOf = new Map<CellId, number[]>();
  readonly #present = new Map<CellId, CellInput>();
  /** Cents of each money line that has a value now. */
  readonly #cents = new Map<CellId, bigint>();
  /** Cells that have to have a value in every mixture, because they have one wherever they stand unmixed. */
  #valued: ReadonlySet<CellId> = new Set();
  readonly #lacking = new Set<CellId>();
  #total = 0n;
  /** How many cells the last switching worked. */
  reach = 0;

  constructor(
    cells: readonly WorldCell[],
    parts: readonly WorldPart[],
    estimates: readonly [Estimate, Estimate],
    of: TotalOf,
  ) {
    this.#of = of;
    this.#parts = parts;
    this.cells = new Map(cells.map((cell) => [cell.id, cell]));
    this.switches = [...parts.flatMap(partSwitch), ...cells.flatMap(cellSwitches)];
    this.#on = this.switches.map(() => false);
    this.switches.forEach((each, i) => {
      if (each.kind === 'part') return;
      const list = this.#switchesOf.get(each.cell);
      if (list) list.push(i);
      else this.#switchesOf.set(each.cell, [i]);
    });
    const [before, after] = estimates.map(({ notebook }) => notebook as NotebookText);
    const settings = settingsOf(before, after.settings.counted);
    this.#workings = new Workings({ ...settings, reference: REFERENCE_TABLES });
    for (const { id, before: input } of cells) if (input) this.#present.set(id, input);
    this.#workings.load(this.#partNames(), [...this.#present.values()]);
    this.#workings.vocabulary.offers = 'nothing';
    this.#count(this.#present.keys());
    this.#valued = this.#valuedAtBothEnds();
  }

  get total(): bigint {
    return this.#total;
  }

  /** Lines that lack a value in this mixture alone. */
  get lacking(): ReadonlySet<CellId> {
    return this.#lacking;
  }

  isOn(index: number): boolean {
    return this.#on[index];
  }

  switchesOf(cell: CellId): readonly number[] {
    return this.#switchesOf.get(cell) ?? [];
  }

  /** The cell as it is in this mixture; null where it is not. */
  state(cell: CellId): CellState | null {
    return cell > 0 && !this.#present.has(cell) ? null : this.#workings.state(cell);
  }

  /** Sets these switches, and works what that reaches. */
  set(indexes: Iterable<number>, on: boolean): void {
    const touched = new Set<CellId>();
    let partNames = false;
    for (const index of indexes) {
      if (this.#on[index] === on) continue;
      this.#on[index] = on;
      const each = this.switches[index];
      if (each.kind === 'part') partNames = true;
      else touched.add(each.cell);
    }
    const edits: CellEdit[] = partNames ? [{ kind: 'parts', parts: this.#partNames() }] : [];
    const puts: CellEdit[] = [];
    for (const id of touched) {
      const input = this.#inputNow(id);
      if (input) {
        this.#present.set(id, input);
        puts.push({ kind: 'put', cell: input });
      } else if (this.#present.delete(id)) edits.push({ kind: 'drop', id });
    }
    edits.push(...puts);
    const ran = edits.length === 0 ? [] : this.#workings.change(edits);
    this.reach = ran.length;
    this.#count(new Set([...touched, ...ran]));
  }

  setAll(on: boolean): void {
    this.set(this.switches.keys(), on);
  }

  #inputNow(id: CellId): CellInput | null {
    const cell = this.cells.get(id);
    if (!cell) throw new Error(`no cell ${id} in either version`);
    const indexes = this.switchesOf(id);
    const own = indexes.find((i) => this.switches[i].kind === 'cell');
    const input = own !== undefined && this.#on[own] ? cell.after : cell.before;
    if (!cell.rows || !input?.table) return input;
    const onRows = new Set<number>();
    for (const i of indexes) {
      const each = this.switches[i];
      if (each.kind === 'row' && this.#on[i]) onRows.add(each.row);
    }
    const rows = cell.rows
      .map((row, i) => (onRows.has(i) ? row.after : row.before))
      .filter((texts) => texts !== null);
    const table: TableInput = { columns: input.table.columns, rows };
    return { ...input, table };
  }

  #partNames() {
    const on = new Set<string>();
    this.switches.forEach((each, i) => {
      if (each.kind === 'part' && this.#on[i]) on.add(each.part);
    });
    return this.#parts.map(({ key, before, after }) => ({
      key,
      name: on.has(key) ? after : before,
    }));
  }

  #count(ids: Iterable<CellId>): void {
    for (const id of ids) {
      const input = this.#present.get(id);
      this.#total -= this.#cents.get(id) ?? 0n;
      this.#cents.delete(id);
      this.#lacking.delete(id);
      if (!input?.money) continue;
      const state = this.#workings.state(id);
      const cents = centsOfLine(state, input.money);
      if (this.#lacks(id, state)) this.#lacking.add(id);
      if (cents === null || (this.#of === 'direct' && input.money.line === 'price')) continue;
      this.#cents.set(id, cents);
      this.#total += cents;
    }
  }

  /** It has no value that it should have, or leaves out what should have one. */
  #lacks(id: CellId, { outcome }: CellState): boolean {
    if (outcome.kind !== 'value') return this.#valued.has(id);
    return outcome.leftOut.some((left) => this.#valued.has(left));
  }

  #valuedAtBothEnds(): ReadonlySet<CellId> {
    const without = new Set<CellId>();
    const look = (): void => {
      for (const id of this.#present.keys()) {
        if (this.#workings.state(id).outcome.kind !== 'value') without.add(id);
      }
    };
    look();
    this.setAll(true);
    look();
    this.setAll(false);
    return new Set([...this.cells.keys()].filter((id) => !without.has(id)));
  }
}

function partSwitch({ key, before, after }: WorldPart): readonly Switch[] {
  return before === after ? [] : [{ kind: 'part', part: key }];
}

function cellSwitches({ id, before, after, rows }: WorldCell): readonly Switch[] {
  const own: Switch = { kind: 'cell', cell: id };
  if (!rows) return JSON.stringify(before) === JSON.stringify(after) ? [] : [own];
  const bare = (input: CellInput | null): string => JSON.stringify({ ...input, table: null });
  return [
    ...(bare(before) === bare(after) ? [] : [own]),
    ...rows.flatMap((row, i): Switch[] => (row.same ? [] : [{ kind: 'row', cell: id, row: i }])),
  ];
}
