// What the job costs: cost lines by part and kind, and what stands between cost and price. Cents that add up:
// every line is already a whole number of cents, and sums of decimals are exact.
import type Decimal from 'decimal.js';
import type { CellState } from '../engine/outcome.ts';
import type { CellId, CostKind } from '../language/tree.ts';
import { Dec, scaled } from '../quantity/decimal.ts';
import type { MoneyLine } from './document.ts';
import type { Section } from './identified.ts';

/** Money here is decimal text with two places: `1412.60`. */
export interface CostRow {
  /** How many cost lines there are, those without a value too. */
  readonly lines: number;
  readonly material: string;
  readonly labour: string;
  readonly equipment: string;
  readonly subcontract: string;
  readonly fee: string;
  readonly direct: string;
  /** Direct cost and the price lines: overhead, contingency, markup and tax added, discounts taken off. */
  readonly price: string;
  /** What the sums leave out: cost and price lines without a value, and whatever the lines themselves left out. */
  readonly incomplete: readonly CellId[];
}

export interface Costs {
  readonly parts: readonly (CostRow & { readonly key: string; readonly part: string })[];
  readonly total: CostRow;
  /** Each kind's share of direct cost, for the footing; 0..1. */
  readonly shares: Readonly<Record<CostKind, number>>;
}

export const COST_KINDS = ['material', 'labour', 'equipment', 'subcontract', 'fee'] as const;

/** Every part in notebook order; what stands above the first part only where money stands in it. */
export function costsOf(sections: readonly Section[], state: (cell: CellId) => CellState): Costs {
  const total = new Row();
  const parts: (CostRow & { key: string; part: string })[] = [];
  for (const { key, name, cells } of sections) {
    const row = new Row();
    for (const { id, money } of cells) {
      if (!money) continue;
      row.add(money, id, state(id));
      total.add(money, id, state(id));
    }
    if (key !== '' || !row.isEmpty) parts.push({ key, part: name, ...row.shown() });
  }
  return { parts, total: total.shown(), shares: total.shares() };
}

class Row {
  readonly #sums: Record<CostKind, Decimal> = {
    material: new Dec(0),
    labour: new Dec(0),
    equipment: new Dec(0),
    subcontract: new Dec(0),
    fee: new Dec(0),
  };
  #between: Decimal = new Dec(0);
  #lines = 0;
  readonly #incomplete = new Set<CellId>();
  isEmpty = true;

  add(money: MoneyLine, id: CellId, { outcome, holds }: CellState): void {
    this.isEmpty = false;
    if (money.line === 'cost') this.#lines++;
    if (
      outcome.kind !== 'value' ||
      holds?.measure.kind !== 'amount' ||
      typeof outcome.value !== 'object'
    ) {
      this.#incomplete.add(id);
      return;
    }
    for (const left of outcome.leftOut) this.#incomplete.add(left);
    const amount = scaled(outcome.value, holds.measure.scale);
    if (money.line === 'cost') this.#sums[money.kind] = this.#sums[money.kind].plus(amount);
    // A discount is taken off, whichever sign it is written with.
    else if (money.kind === 'discount') this.#between = this.#between.minus(amount.abs());
    else this.#between = this.#between.plus(amount);
  }

  shown(): CostRow {
    const direct = this.#direct();
    return {
      lines: this.#lines,
      material: this.#sums.material.toFixed(2),
      labour: this.#sums.labour.toFixed(2),
      equipment: this.#sums.equipment.toFixed(2),
      subcontract: this.#sums.subcontract.toFixed(2),
      fee: this.#sums.fee.toFixed(2),
      direct: direct.toFixed(2),
      price: direct.plus(this.#between).toFixed(2),
      incomplete: [...this.#incomplete],
    };
  }

  shares(): Readonly<Record<CostKind, number>> {
    const direct = this.#direct();
    const share = (kind: CostKind): number =>
      direct.isZero() ? 0 : this.#sums[kind].div(direct).toNumber();
    return {
      material: share('material'),
      labour: share('labour'),
      equipment: share('equipment'),
      subcontract: share('subcontract'),
      fee: share('fee'),
    };
  }

  #direct(): Decimal {
    return COST_KINDS.reduce((sum, kind) => sum.plus(this.#sums[kind]), new Dec(0));
  }
}
