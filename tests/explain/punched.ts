// A printed line of a working, punched in as a builder would: figures and unit words as they are read, and nothing of the
// engine. Plain doubles, so what comes out is compared to as many digits as are printed.

/** An amount in inches, pounds, minutes, dollars and their powers; things that are counted have no dimension here. */
export interface Punched {
  readonly value: number;
  /** `length 3`, `money 1 time -1`; empty for a number, a count or a share. */
  readonly dimension: string;
  /** What a change of one in the last printed digit comes to; 0 for a fraction. */
  readonly digit: number;
  /** `10%`, which is taken of what stands before it where an amount in brackets follows. */
  readonly isShare: boolean;
}

type Powers = Readonly<Record<string, number>>;

/** As they are printed, in inches, pounds, minutes and dollars. */
const UNITS: Readonly<Record<string, readonly [number, Powers]>> = {
  in: [1, { length: 1 }],
  inch: [1, { length: 1 }],
  inches: [1, { length: 1 }],
  ft: [12, { length: 1 }],
  foot: [12, { length: 1 }],
  feet: [12, { length: 1 }],
  yd: [36, { length: 1 }],
  mm: [1 / 25.4, { length: 1 }],
  'sq in': [1, { length: 2 }],
  'sq ft': [144, { length: 2 }],
  'cubic in': [1, { length: 3 }],
  'cubic foot': [1728, { length: 3 }],
  'cubic feet': [1728, { length: 3 }],
  'cubic ft': [1728, { length: 3 }],
  'cubic yard': [46656, { length: 3 }],
  'cubic yards': [46656, { length: 3 }],
  'board foot': [144, { length: 3 }],
  'board feet': [144, { length: 3 }],
  gallon: [231, { length: 3 }],
  gallons: [231, { length: 3 }],
  quart: [57.75, { length: 3 }],
  quarts: [57.75, { length: 3 }],
  'fl oz': [231 / 128, { length: 3 }],
  cent: [0.01, { money: 1 }],
  mi: [63360, { length: 1 }],
  lb: [1, { mass: 1 }],
  ton: [2000, { mass: 1 }],
  tons: [2000, { mass: 1 }],
  psf: [1 / 144, { mass: 1, length: -2 }],
  psi: [1, { mass: 1, length: -2 }],
  min: [1, { time: 1 }],
  h: [60, { time: 1 }],
  hour: [60, { time: 1 }],
  hours: [60, { time: 1 }],
};

const NUMBER = /^(\d[\d,]*(?:\.\d+)?|\.\d+)(?: (\d+)\/(\d+))?/;
const FRACTION = /^(\d+)\/(\d+)/;
const CLOCK = /^(\d+):(\d\d)/;
/** One word or more, up to `per`, a sign or another figure. */
const UNIT =
  /^ ?((?!per\b|and\b|or\b|not\b)[A-Za-z][A-Za-z-]*(?: (?!per\b|and\b|or\b|not\b)[A-Za-z][A-Za-z-]*)*)/;

/** Works one side of a line; throws where it can't be read. */
export function punched(side: string): Punched {
  const reading = new Punching(side);
  const all = reading.sum();
  reading.end();
  return all;
}

class Punching {
  #rest: string;
  readonly #whole: string;

  constructor(text: string) {
    this.#rest = text.trim();
    this.#whole = text;
  }

  end(): void {
    if (this.#rest.trim() !== '') throw new Error(`"${this.#rest}" is left of "${this.#whole}"`);
  }

  sum(): Punched {
    let so = this.#product();
    for (;;) {
      const plus = this.#takes(' + ');
      if (!plus && !this.#takes(' − ')) return so;
      const next = this.#product();
      const added = next.isShare && this.#takes(' (') ? this.#onTop(so, next) : next;
      so = sameKind(so, added, this.#whole, plus ? so.value + added.value : so.value - added.value);
    }
  }

  /** `+ 10% (1.6 cubic feet)`: the amount has to be that share of what stands before it, to the digits it has. */
  #onTop(whole: Punched, share: Punched): Punched {
    const amount = this.sum();
    if (!this.#takes(')')) throw new Error(`no bracket closes in "${this.#whole}"`);
    const off = Math.abs(whole.value * share.value - amount.value);
    if (off > spread(whole, share) + amount.digit / 2 + 1e-9 * Math.abs(amount.value)) {
      throw new Error(
        `${share.value} of ${whole.value} is not ${amount.value} in "${this.#whole}"`,
      );
    }
    return amount;
  }

  #product(): Punched {
    let so = this.#factor();
    for (;;) {
      const times = this.#takes(' × ');
      if (!times && !this.#takes(' ÷ ')) return so;
      const next = this.#factor();
      const value = times ? so.value * next.value : so.value / next.value;
      so = { ...WHOLE, value, dimension: joined(so.dimension, next.dimension, times ? 1 : -1) };
    }
  }

  #factor(): Punched {
    if (this.#takes('√(')) {
      const of = this.#closed(')');
      return { ...WHOLE, value: Math.sqrt(of.value), dimension: halved(of.dimension) };
    }
    if (this.#takes('⌈')) {
      const of = this.#closed('⌉');
      return { ...WHOLE, value: Math.ceil(snapped(of.value)), dimension: of.dimension };
    }
    if (this.#takes('(')) return this.#closed(')');
    if (this.#takes('π')) return { ...WHOLE, value: Math.PI, dimension: '' };
    return this.#amount();
  }

  #closed(by: string): Punched {
    const of = this.sum();
    if (!this.#takes(by)) throw new Error(`no ${by} in "${this.#whole}"`);
    return of;
  }

  #amount(): Punched {
    const sign = this.#takes('−') ? -1 : 1;
    const slope = /^1 in (\d+)(?![\d/.])/.exec(this.#rest);
    if (slope) {
      this.#rest = this.#rest.slice(slope[0].length);
      return { ...WHOLE, value: 1 / Number(slope[1]), dimension: '' };
    }
    let total = this.#figure();
    // `9 ft 4 1/2 in`, `3 h 20 min`.
    while (/^ \d/.test(this.#rest)) {
      this.#rest = this.#rest.slice(1);
      const more = this.#figure();
      total = {
        ...sameKind(total, more, this.#whole, total.value + more.value),
        digit: more.digit,
      };
    }
    this.#takes(', a hair shy');
    this.#takes(', a hair over');
    return { ...total, value: sign * total.value };
  }

  #figure(): Punched {
    const isMoney = this.#takes('$');
    const [number, digit] = this.#number();
    if (this.#takes('%')) {
      return { value: number / 100, dimension: '', digit: digit / 100, isShare: true };
    }
    let [scale, powers] = isMoney ? ([1, { money: 1 }] as const) : this.#unit();
    // `8,850 lb × in`: a unit of two words.
    while (/^ × [a-z]/.test(this.#rest)) {
      this.#rest = this.#rest.slice(2);
      const [more, by] = this.#unit();
      scale *= more;
      powers = times(powers, by, 1);
    }
    while (this.#takes(' per ')) {
      if (this.#takes('$')) {
        scale /= this.#number()[0];
        powers = times(powers, { money: 1 }, -1);
        continue;
      }
      const many = /^[\d,]+ /.test(this.#rest) ? this.#number()[0] : 1;
      const [under, by] = this.#unit();
      scale /= under * many;
      powers = times(powers, by, -1);
    }
    return { value: number * scale, dimension: said(powers), digit: digit * scale, isShare: false };
  }

  #number(): readonly [value: number, digit: number] {
    const clock = CLOCK.exec(this.#rest);
    if (clock) {
      this.#rest = this.#rest.slice(clock[0].length);
      return [Number(clock[1]) + Number(clock[2]) / 60, 0];
    }
    const fraction = FRACTION.exec(this.#rest);
    if (fraction) {
      this.#rest = this.#rest.slice(fraction[0].length);
      return [Number(fraction[1]) / Number(fraction[2]), 0];
    }
    const found = NUMBER.exec(this.#rest);
    if (!found) throw new Error(`no number at "${this.#rest}" of "${this.#whole}"`);
    this.#rest = this.#rest.slice(found[0].length);
    const [, whole = '', over, under] = found;
    const places = whole.split('.')[1]?.length ?? 0;
    const part = over === undefined ? 0 : Number(over) / Number(under);
    // A whole number is one to two places: nought after the point is not printed.
    const digit = over === undefined ? 10 ** -Math.max(places, places === 0 ? 2 : 0) : 0;
    return [Number(whole.replaceAll(',', '')) + part, digit];
  }

  #unit(): readonly [scale: number, powers: Powers] {
    const found = UNIT.exec(this.#rest);
    if (!found) return [1, {}];
    const words = found[1] ?? '';
    this.#rest = this.#rest.slice(found[0].length);
    return UNITS[words] ?? [1, {}];
  }

  #takes(text: string): boolean {
    if (!this.#rest.startsWith(text)) return false;
    this.#rest = this.#rest.slice(text.length);
    return true;
  }
}

const WHOLE = { digit: 0, isShare: false } as const;

/** Both may be off by half of their last digit. */
function spread(a: Punched, b: Punched): number {
  return Math.abs((a.digit / 2) * b.value) + Math.abs((b.digit / 2) * a.value);
}

/** What can be added measures one thing; nought of anything is nought. */
function sameKind(a: Punched, b: Punched, whole: string, value: number): Punched {
  const dimension = a.dimension === '' && a.value === 0 ? b.dimension : a.dimension;
  if (dimension !== b.dimension && b.value !== 0) {
    throw new Error(`${a.dimension} and ${b.dimension} in "${whole}"`);
  }
  return { value, dimension, digit: Math.max(a.digit, b.digit), isShare: a.isShare && b.isShare };
}

function said(powers: Powers): string {
  return Object.entries(powers)
    .filter(([, power]) => power !== 0)
    .map(([base, power]) => `${base} ${power}`)
    .toSorted()
    .join(' ');
}

function read(dimension: string): Powers {
  return Object.fromEntries(
    [...dimension.matchAll(/([a-z]+) (-?[\d.]+)/g)].map(([, base = '', power]) => [
      base,
      Number(power),
    ]),
  );
}

function times(a: Powers, b: Powers, sign: 1 | -1): Powers {
  const bases = new Set([...Object.keys(a), ...Object.keys(b)]);
  return Object.fromEntries(
    [...bases].map((base) => [base, (a[base] ?? 0) + sign * (b[base] ?? 0)]),
  );
}

function joined(a: string, b: string, sign: 1 | -1): string {
  return said(times(read(a), read(b), sign));
}

function halved(dimension: string): string {
  const powers = Object.entries(read(dimension)).map(([base, power]) => [base, power / 2] as const);
  return said(Object.fromEntries(powers));
}

/** A quotient that is whole but for the noise of doubles is whole. */
export function snapped(value: number): number {
  const whole = Math.round(value);
  return Math.abs(value - whole) <= 1e-9 * Math.max(1, Math.abs(value)) ? whole : value;
}
