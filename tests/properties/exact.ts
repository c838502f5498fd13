// Exact fractions of whole numbers, for the oracle alone: nothing here is shared with the project's own arithmetic.

export class Exact {
  readonly over: bigint;
  readonly under: bigint;

  constructor(over: bigint, under = 1n) {
    if (under === 0n) throw new RangeError('divided by zero');
    const by = common(over, under) * (under < 0n ? -1n : 1n);
    this.over = over / by;
    this.under = under / by;
  }

  /** From `12`, `0.45`, `-3`, `3/4`. */
  static of(text: string | number | bigint): Exact {
    const [over = '', under = '1'] = String(text).split('/');
    const [whole = '', decimals = ''] = over.split('.');
    return new Exact(BigInt(whole + decimals), 10n ** BigInt(decimals.length) * BigInt(under));
  }

  plus(b: Exact): Exact {
    return new Exact(this.over * b.under + b.over * this.under, this.under * b.under);
  }

  minus(b: Exact): Exact {
    return this.plus(new Exact(-b.over, b.under));
  }

  times(b: Exact): Exact {
    return new Exact(this.over * b.over, this.under * b.under);
  }

  by(b: Exact): Exact {
    return new Exact(this.over * b.under, this.under * b.over);
  }

  /** −1, 0 or 1. */
  compare(b: Exact): number {
    const far = this.over * b.under - b.over * this.under;
    return far < 0n ? -1 : far > 0n ? 1 : 0;
  }

  down(): Exact {
    const cut = this.over / this.under;
    return new Exact(this.over < 0n && cut * this.under !== this.over ? cut - 1n : cut);
  }

  up(): Exact {
    return ZERO.minus(ZERO.minus(this).down());
  }

  /** Half away from zero. */
  nearest(): Exact {
    const half = new Exact(1n, 2n);
    return this.over < 0n ? this.minus(half).up() : this.plus(half).down();
  }

  toString(): string {
    return this.under === 1n ? `${this.over}` : `${this.over}/${this.under}`;
  }
}

export const ZERO = new Exact(0n);
export const ONE = new Exact(1n);

function common(a: bigint, b: bigint): bigint {
  let [x, y] = [a < 0n ? -a : a, b < 0n ? -b : b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x === 0n ? 1n : x;
}
