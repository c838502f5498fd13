// A number that only shows how far something goes, from trials or along a given, in the words of the notebook: to the whole
// dollar where it is money, else to four digits. What is shown as the answer is never said by this.
import type { CellId } from '../language/tree.ts';
import type { Asked } from '../moves-it/web.ts';
import { type ShownUnit, shownUnit } from '../moves-it/unit.ts';
import { Dec } from '../quantity/decimal.ts';

export class NearAmounts {
  readonly #job: Asked;
  readonly #cell: CellId;
  readonly #unit: ShownUnit | null;

  constructor(job: Asked, cell: CellId) {
    this.#job = job;
    this.#cell = cell;
    this.#unit = shownUnit(job, job.state(cell));
  }

  /** In the unit that the cell is shown in; null: it is no number. */
  get unit(): ShownUnit | null {
    return this.#unit;
  }

  /** What the cell holds now, in its unit. */
  get now(): number | null {
    const { outcome } = this.#job.state(this.#cell);
    const isNumber = outcome.kind === 'value' && outcome.value instanceof Dec;
    return isNumber && this.#unit ? outcome.value.toNumber() * this.#unit.factor : null;
  }

  /** What it holds now as the notebook shows it. */
  get shown(): string {
    const { outcome, holds } = this.#job.state(this.#cell);
    return outcome.kind === 'value' && holds ? this.#job.say(outcome.value, holds).text : '';
  }

  say(value: number): string {
    const { holds } = this.#job.state(this.#cell);
    if (!this.#unit || !holds || !Number.isFinite(value)) return 'no value';
    const held = new Dec(this.#rounded(value)).div(this.#unit.exactFactor);
    const { text } = this.#job.say(held, holds);
    // It is near to it anyway: no cents that are nought, no hair shy.
    return this.#isMoney
      ? text.replace(/\.00(?=\D|$)/, '')
      : text.replace(/, a hair (shy|over)$/, '');
  }

  get #isMoney(): boolean {
    return /^[$€£]/.test(this.#unit?.unit ?? '');
  }

  #rounded(value: number): number {
    if (!this.#isMoney) return Number(value.toPrecision(4));
    return Math.abs(value) >= 100 ? Math.round(value) : Math.round(value * 100) / 100;
  }
}
