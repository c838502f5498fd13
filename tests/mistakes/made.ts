// Mistakes made in a step without the help of what recognises them: an amount in the formula is written otherwise, as whoever
// made the mistake would have written it, and the formula is read and worked again as a sentence.
import type { AskedStep } from '../../src/mistakes/diagnose.ts';
import type { Mistake } from '../../src/mistakes/mistake.ts';
import type { Estimate } from '../../src/notebook/estimate.ts';
import type { Checked } from '../../src/language/plan.ts';
import type { CellId, Formula } from '../../src/language/tree.ts';
import { Dec } from '../../src/quantity/decimal.ts';
import { AREA, LENGTH, TIME, VOLUME, isHard } from '../../src/quantity/dimension.ts';
import { amountWritten, significant } from './amount-written.ts';

export interface Made {
  readonly mistake: Mistake;
  /** As it is typed: `16 cubic ft`, and the number alone. */
  readonly answers: readonly string[];
  /** What was written in the place of what. */
  readonly how: string;
}

/** How an amount in a formula is shown, taken apart. */
interface Said {
  readonly number: number;
  readonly exact: string;
  readonly unit: string;
  readonly text: string;
}

/** The steps of a cell: its formula, and each stretch in it that is worked. */
export function stepsOf(estimate: Estimate, cell: CellId): readonly AskedStep[] {
  const { checked } = estimate.state(cell).reading;
  if (!checked) return [];
  return everyNode(checked)
    .filter(
      (node) => node === checked || (!isLeaf(node.formula) && node.formula.kind !== 'bracket'),
    )
    .map((node) => ({ cell, node }));
}

/** Every mistake that can be made in a step and comes to a number. */
export function madeIn(estimate: Estimate, step: AskedStep): readonly Made[] {
  const making = new Making(estimate, step);
  // In `lb × in` no answer can be written.
  if (making.right === null || making.right.unit.includes('×')) return [];
  return making.isReadAgain() ? making.all() : [];
}

class Making {
  readonly right: Said | null;
  readonly #estimate: Estimate;
  readonly #cell: CellId;
  readonly #root: Checked;
  readonly #made: Made[] = [];

  constructor(estimate: Estimate, { cell, node }: AskedStep) {
    this.#estimate = estimate;
    this.#cell = cell;
    this.#root = node;
    this.right = this.#said(node);
  }

  /** Does the formula, read as a sentence of its own, come to what the step comes to? */
  isReadAgain(): boolean {
    const again = this.#worked([]);
    return again !== null && this.right !== null && isClose(again.number, this.right.number);
  }

  all(): readonly Made[] {
    for (const node of everyNode(this.#root)) this.#node(node);
    return this.#made;
  }

  #node(node: Checked): void {
    const said = this.#said(node);
    if (!said || said.number === 0) return;
    const { formula } = node;
    const { measure } = node.holds;
    const isRoot = node === this.#root;
    if (isLeaf(formula) || isRoot) this.#amount(node, said);
    if (measure.kind === 'amount' && (isLeaf(formula) || isRoot)) {
      if (measure.dimension === VOLUME) this.#volume(node, said, isRoot);
      if (measure.dimension === AREA) this.#area(node, said, isRoot);
      if (measure.dimension === TIME) this.#time(node, said);
    }
    this.#shares(node);
    this.#products(node);
    this.#counts(node, said);
  }

  #amount(node: Checked, said: Said): void {
    const { measure } = node.holds;
    for (const number of swapped(said.exact))
      this.#instead('digits-swapped', node, number, said.unit);
    if (measure.kind !== 'amount' || measure.dimension !== LENGTH) return;
    const other = said.unit === 'ft' ? 'in' : said.unit === 'in' ? 'ft' : null;
    if (other) this.#instead('inches-for-feet', node, said.number, other);
    const both = /^(\d+) ft (\d+) in$/.exec(said.text);
    if (both) this.#instead('tenths-for-inches', node, Number(`${both[1]}.${both[2]}`), 'ft');
    const tenths = said.unit === 'ft' ? /^(\d+)\.(\d)$/.exec(said.exact) : null;
    if (tenths)
      this.#instead('tenths-for-inches', node, Number(tenths[1]) * 12 + Number(tenths[2]), 'in');
    const inches = said.unit === 'ft' ? said.number * 12 : said.unit === 'in' ? said.number : 0;
    const called = CALLED.get(inches);
    if (called !== undefined) this.#instead('nominal-for-actual', node, called, 'in');
  }

  #volume(node: Checked, said: Said, isRoot: boolean): void {
    const other =
      said.unit === 'cubic ft' ? 'cubic yd' : said.unit === 'cubic yd' ? 'cubic ft' : null;
    if (other) this.#instead('cubic-feet-for-yards', node, said.number, other);
    if (!isRoot) return;
    // The length of a yard and the area of one instead of the cube; the same with feet and inches.
    for (const by of [3, 1 / 3, 12, 1 / 12])
      this.#instead('square-for-cubic', node, said.number * by, said.unit);
    if (said.unit === 'cubic ft')
      this.#answer('square-for-cubic', `${significant(said.number, 9)} sq ft`, 'called square');
  }

  #area(node: Checked, said: Said, isRoot: boolean): void {
    if (!isRoot) return;
    for (const by of [3, 1 / 3, 12, 1 / 12])
      this.#instead('square-for-cubic', node, said.number * by, said.unit);
  }

  #time(node: Checked, said: Said): void {
    const other = said.unit === 'min' ? 'hour' : said.unit === 'hour' ? 'min' : null;
    if (other) this.#instead('minutes-for-hours', node, said.number, other);
    const both = /^(\d+) h (\d+) min$/.exec(said.text);
    if (both) {
      const two = (both[2] ?? '').padStart(2, '0');
      this.#instead('minutes-as-decimals', node, Number(`${both[1]}.${two}`), 'hour');
    }
    const decimals = said.unit === 'hour' ? /^(\d+)\.(\d\d?)$/.exec(said.exact) : null;
    if (decimals) {
      const minutes = Number(decimals[1]) * 60 + Number((decimals[2] ?? '').padEnd(2, '0'));
      this.#instead('minutes-as-decimals', node, minutes, 'min');
    }
  }

  #shares(node: Checked): void {
    const { formula, manner, parts } = node;
    const [of, ...shares] = parts.map((part) => this.#said(part));
    const percents = shares.map((share) => (share?.unit === '%' ? share.number / 100 : null));
    const share = percents[0] ?? null;
    if (!of || share === null || share === 0 || percents.includes(null)) return;
    const at = (mistake: Mistake, by: number): void =>
      this.#instead(mistake, node, of.number * by, of.unit);
    const all = percents.reduce<number>((sum, each) => sum + (each ?? 0), 0);
    const isAdded =
      formula.kind === 'marked-up' || (formula.kind === 'binary' && formula.op === 'plus');
    if (formula.kind === 'for-shares') {
      at('share-forgotten', 1);
      at('share-twice', 1 / (1 - all) ** 2);
      at('markup-for-margin', 1 + all);
    } else if (manner === 'share-of') {
      const sign = isAdded ? 1 : -1;
      at('share-forgotten', 1);
      at('share-twice', (1 + sign * share) ** 2);
      if (isAdded) at('markup-for-margin', 1 / (1 - share));
    }
  }

  #products(node: Checked): void {
    const { formula, manner } = node;
    if (formula.kind !== 'binary' || manner === 'share-of') return;
    if (formula.op === 'plus' || formula.op === 'minus') return;
    const [left, right] = node.parts.map((part) => this.#said(part));
    const here = this.#said(node);
    if (!left || !right || !here || left.number === 0 || right.number === 0) return;
    this.#instead('factor-missing', node, left.number, here.unit);
    // Of a longer product that would be two.
    const first = node.parts[0]?.formula;
    const isLonger = first?.kind === 'binary' && !['plus', 'minus'].includes(first.op);
    if (formula.op !== 'over' && !isLonger)
      this.#instead('factor-missing', node, right.number, here.unit);
    const isRate = node.parts.some(
      ({ holds: { measure } }) => measure.kind === 'amount' && measure.rate,
    );
    if (!isRate) return;
    const divides = formula.op === 'over' || manner === 'at-divided';
    const wrong = divides ? left.number * right.number : left.number / right.number;
    this.#instead('rate-upside-down', node, wrong, here.unit);
  }

  #counts(node: Checked, said: Said): void {
    const { formula } = node;
    if (formula.kind === 'spaced') {
      this.#instead('fence-post', node, said.number + 1, said.unit);
      if (said.number > 1) this.#instead('fence-post', node, said.number - 1, said.unit);
    }
    const isUp = formula.kind === 'rounded' && formula.way === 'up';
    const of = formula.kind === 'rounded' ? node.parts[0] : undefined;
    const before = of && this.#said(of);
    if (isUp && before && before.unit === said.unit && before.number !== said.number) {
      this.#instead('rounded-down', node, before.number, before.unit);
      if (formula.step === null)
        this.#instead('rounded-down', node, Math.floor(before.number), said.unit);
    }
    const { measure } = node.holds;
    const counts = measure.kind === 'amount' && !isHard(measure.dimension) && measure.rate === null;
    const cuts = formula.kind === 'in-packs' && counts ? this.#unrounded(node) : null;
    if (cuts !== null && !Number.isInteger(cuts) && said.number > 1) {
      this.#instead('rounded-down', node, said.number - 1, said.unit);
    }
  }

  /** How many packs before whole ones were made of them; null where that is not told by the numbers alone. */
  #unrounded(node: Checked): number | null {
    const [of, each] = node.parts.map((part) => this.#said(part));
    if (!of || !each || !each.unit.startsWith(of.unit)) return null;
    return Math.round((of.number / each.number) * 1e9) / 1e9;
  }

  #instead(mistake: Mistake, node: Checked, number: number, unit: string): void {
    if (!Number.isFinite(number) || number <= 0) return;
    const written = amountWritten(significant(number, 15), unit);
    const how = `${written} for ${this.#said(node)?.text}`;
    if (node === this.#root) {
      this.#answer(mistake, amountWritten(significant(number, 9), unit), how);
      if (unit === this.right?.unit) this.#answer(mistake, significant(number, 9), how);
      return;
    }
    const come = this.#worked([[node.formula, written]]);
    if (!come || come.unit !== this.right?.unit) return;
    // Less than a dollar, to the cent, could be anything.
    if (come.unit === '$' && come.number < 1) return;
    const typed = significant(come.number, 9);
    this.#answer(mistake, amountWritten(typed, come.unit), how);
    this.#answer(mistake, typed, how);
  }

  #answer(mistake: Mistake, answer: string, how: string): void {
    const known = this.#made.find((each) => each.mistake === mistake && each.how === how);
    if (known)
      this.#made.splice(this.#made.indexOf(known), 1, {
        ...known,
        answers: [...known.answers, answer],
      });
    else this.#made.push({ mistake, answers: [answer], how });
  }

  #said({ plan, holds }: Checked): Said | null {
    const outcome = this.#estimate.evaluate(plan);
    if (outcome.kind !== 'value' || !(outcome.value instanceof Dec)) return null;
    const { exact, unit, text } = this.#estimate.say(outcome.value, holds);
    return exact === '' ? null : { number: Number(exact), exact, unit, text };
  }

  /** The text of the step with stretches written otherwise, read and worked. In a row of a table every name is its amount. */
  #worked(instead: readonly (readonly [Formula, string])[]): Said | null {
    const { input } = this.#estimate.state(this.#cell);
    const inRow = input.inTable !== undefined;
    const names = inRow ? everyNode(this.#root).flatMap((node) => this.#asItsAmount(node)) : [];
    const replaced = new Map<Formula, string>([...names, ...instead]);
    const { from, to } = this.#root.formula.spot;
    let text = input.formula.slice(from, to);
    let reached = Infinity;
    const spots = [...replaced].toSorted(
      ([a], [b]) => b.spot.from - a.spot.from || a.spot.to - b.spot.to,
    );
    for (const [{ spot }, written] of spots) {
      const isWithin = instead.some(
        ([outer]) =>
          outer.spot !== spot && outer.spot.from <= spot.from && spot.to <= outer.spot.to,
      );
      if (isWithin || spot.to > reached) continue;
      text = `${text.slice(0, spot.from - from)}(${written})${text.slice(spot.to - from)}`;
      reached = spot.from;
    }
    const { reading, shown, outcome } = this.#estimate.draft(this.#cell, text);
    if (reading.problems.length > 0 || outcome.kind !== 'value' || !shown || shown.exact === '')
      return null;
    return { number: Number(shown.exact), exact: shown.exact, unit: shown.unit, text: shown.text };
  }

  #asItsAmount(node: Checked): readonly (readonly [Formula, string])[] {
    const { formula } = node;
    if (!['name', 'look-up', 'column', 'recap', 'row-count'].includes(formula.kind)) return [];
    const said = this.#said(node);
    if (said) return [[formula, amountWritten(said.exact, said.unit)]];
    const outcome = this.#estimate.evaluate(node.plan);
    const text =
      outcome.kind === 'value' && typeof outcome.value === 'string' ? outcome.value : null;
    return text === null ? [] : [[formula, `"${text}"`]];
  }
}

function everyNode(root: Checked): readonly Checked[] {
  return [root, ...root.parts.flatMap(everyNode)];
}

function isLeaf({ kind }: Formula): boolean {
  return ['name', 'amount', 'look-up', 'size', 'column', 'recap', 'row-count'].includes(kind);
}

function isClose(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b));
}

/** The first two neighbours that differ, changed. */
function swapped(exact: string): readonly number[] {
  if (exact.length > 8 || !/^[1-9][\d.]*$/.test(exact)) return [];
  const found = /(\d)(\.?)((?!\1)\d)/.exec(exact);
  if (!found) return [];
  const [all, a = '', point = '', b = ''] = found;
  return [Number(exact.replace(all, `${b}${point}${a}`))];
}

/** Dressed lumber, inches: what it has and what it is called by (American Softwood Lumber Standard PS 20, from memory). */
const CALLED: ReadonlyMap<number, number> = new Map([
  [1.5, 2],
  [3.5, 4],
  [5.5, 6],
  [7.25, 8],
  [9.25, 10],
  [11.25, 12],
]);
