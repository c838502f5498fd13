// Amounts that a person would write: on the marks of a tape, in whole cents, with few digits.
import { Dec } from '../quantity/decimal.ts';
import type { ShownUnit } from './unit.ts';

/** Values of a cell as they are held, in steps that are written in its unit. */
export class Writable {
  readonly #factor: Dec;
  readonly #unit: string;
  readonly #isWhole: boolean;

  constructor({ unit, exactFactor }: ShownUnit, isWhole: boolean) {
    this.#unit = unit;
    this.#factor = exactFactor;
    this.#isWhole = isWhole;
  }

  /** The least amount on a step that is no less, as it is held. */
  from(held: number): Dec {
    const step = this.#step(held);
    return this.#held(
      this.#shown(held)
        .div(step)
        .times(1 - 1e-13 * Math.sign(held))
        .ceil(),
      step,
    );
  }

  /** The greatest amount on a step that is no more. */
  upTo(held: number): Dec {
    const step = this.#step(held);
    return this.#held(
      this.#shown(held)
        .div(step)
        .times(1 + 1e-13 * Math.sign(held))
        .floor(),
      step,
    );
  }

  next(held: Dec, way: 1 | -1): Dec {
    const step = this.#step(held.toNumber());
    return this.#held(this.#shown(held).div(step).round().plus(way), step);
  }

  /** The amount with the fewest digits from the one to the other. */
  simplest(from: number, to: number): Dec {
    const [low, high] = [this.#shown(from), this.#shown(to)];
    for (let places = 0; places <= 18; places++) {
      const step = new Dec(10).pow(-places);
      const first = low.div(step).ceil();
      if (first.times(step).lte(high)) return this.#held(first, step);
    }
    return new Dec(from).plus(to).div(2);
  }

  #shown(held: number | Dec): Dec {
    return new Dec(held).times(this.#factor);
  }

  #held(steps: Dec, step: Dec): Dec {
    return steps.times(step).div(this.#factor).toSignificantDigits(40);
  }

  #step(held: number): Dec {
    const unit = this.#unit;
    if (this.#isWhole) return new Dec(1);
    if (unit === 'ft') return new Dec(1).div(192);
    if (unit === 'in') return new Dec(1).div(16);
    if (unit === '%') return new Dec('0.1');
    if (/^[$€£]/.test(unit)) return new Dec('0.01');
    const size = this.#shown(held).abs();
    return size.isZero() ? new Dec('0.001') : new Dec(10).pow(size.e - 3);
  }
}
