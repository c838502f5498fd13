// Random trees of amounts with units: each as a formula of the language and, step by step, in mathjs's own unit arithmetic.
// Nothing here knows which of them are right: feet are added to dollars as gladly as to inches.
import { type MathJsInstance, type Unit, all, create } from 'mathjs';
import type { Chance } from './chance.ts';

/** What mathjs holds: a plain number, an amount with a unit, or a yes or no. */
export type Worked = number | boolean | Unit;

export type Bare = 'count' | 'slope';

export interface Tree {
  /** As a formula of the language; whatever is not one amount stands in brackets inside another. */
  readonly text: string;
  /** How closely it holds together. */
  readonly hold: 'amount' | 'more';
  /** What stands in it that is a bare number to mathjs: bags that are counted, ounces per pound. */
  readonly bare: ReadonlySet<Bare>;
  /** Throws where mathjs does. */
  readonly work: () => Worked;
  /** The same with every minus made a plus: how large the numbers are that its last digits come from. */
  readonly reach: () => Worked;
}

const math: MathJsInstance = create(all, {});
const NO_UNIT = math.unit(1, 'in / in');
// mathjs knows no money: a base unit of its own, as feet and hours are.
math.createUnit('dollar');

/** As they are written after a number, and in mathjs. */
const UNITS: readonly (readonly [string, string])[] = [
  ['in', 'in'],
  ['ft', 'ft'],
  ['yd', 'yd'],
  ['m', 'm'],
  ['mm', 'mm'],
  ['sq ft', 'ft^2'],
  ['sq in', 'in^2'],
  ['sq m', 'm^2'],
  ['cubic ft', 'ft^3'],
  ['cubic yards', 'yd^3'],
  ['gal', 'gallon'],
  ['lb', 'lbm'],
  ['oz', 'oz'],
  ['kg', 'kg'],
  ['tons', 'ton'],
  ['hours', 'hour'],
  ['min', 'minute'],
];
const UNDER: readonly (readonly [string, string])[] = [
  ['ft', 'ft'],
  ['sq ft', 'ft^2'],
  ['cubic yard', 'yd^3'],
  ['lb', 'lbm'],
  ['hour', 'hour'],
  ['in', 'in'],
];
const THINGS = ['bag', 'board', 'post'] as const;

/** With counted things among the amounts, or without. */
export type Among = 'counts' | 'hard';

export function tree(c: Chance, depth: number, among: Among): Tree {
  if (depth <= 0 || c.in(0.15)) return leaf(c, among);
  const part = (): Tree => tree(c, depth - 1, among);
  const first = part();
  // Two that can be added come seldom by chance alone.
  const alike = (): Tree => {
    let other = part();
    for (let tries = 0; c.in(0.9) && tries < 12 && !goes(() => sum(first.work(), other.work()));) {
      tries++;
      other = part();
    }
    return other;
  };
  switch (c.whole(0, 9)) {
    case 0:
    case 1:
    case 2:
      return joined(c.of(['plus', '+']), first, alike(), sum, sum);
    case 3:
      return joined(c.of(['minus', '−']), first, alike(), difference, sum);
    case 4:
    case 5:
      return joined(c.of(['times', 'by', '×']), first, part(), product, product);
    case 6:
      return joined(c.of(['divided by', '÷']), first, part(), quotient, quotient);
    case 7: {
      const [unit, theirs] = c.of(UNITS);
      const of = first;
      const inUnit = (value: Worked): Worked =>
        math.to(asUnit(value), math.unit(unit === 'yd' ? yardsFor(value) : theirs)) as Unit;
      const text = `${held(of)}, in ${unit === 'in' ? 'inches' : unit}`;
      return made(
        text,
        [of],
        ([a]) => inUnit(a),
        ([a]) => inUnit(a),
      );
    }
    case 8: {
      const of = first;
      const [word, power] = c.of([
        ['squared', 2],
        ['cubed', 3],
      ] as const);
      const raised = (value: Worked): Worked => plain(math.pow(firm(value), power) as Worked);
      return made(
        `${held(of)} ${word}`,
        [of],
        ([a]) => raised(a),
        ([a]) => raised(a),
      );
    }
    default: {
      const parts = [first, alike(), alike()].slice(0, c.whole(2, 3));
      const words = parts.map(held);
      const text = `total of ${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
      const added = (all: readonly Worked[]): Worked => all.reduce(sum);
      return made(text, parts, added, added);
    }
  }
}

/** A comparison of two trees, which mathjs answers with yes or no. */
export function compared(c: Chance, a: Tree, b: Tree): Tree {
  const [words, way] = c.of([
    ['is more than', 'larger'],
    ['is less than', 'smaller'],
    ['is at least', 'largerEq'],
  ] as const);
  const text = `${held(a)} ${words} ${held(b)}`;
  const answer = (one: Worked, other: Worked): Worked => {
    if (typeof one === 'number' && typeof other === 'number')
      return math[way](one, other) as boolean;
    return math[way](asUnit(one), asUnit(other)) as boolean;
  };
  return made(
    text,
    [a, b],
    ([one, other]) => answer(one, other),
    ([one]) => one,
  );
}

/** An amount in this many of our base units: inches, pounds, minutes and dollars. Throws where mathjs has something else. */
export function inBase(
  value: Worked,
  { length, mass, time, money }: Readonly<Record<'length' | 'mass' | 'time' | 'money', number>>,
): number {
  if (length === 0 && mass === 0 && time === 0 && money === 0) {
    if (typeof value !== 'number') throw new Error(`${String(value)} is no plain number`);
    return value;
  }
  const base = `in^${length} lbm^${mass} minute^${time} dollar^${money}`;
  return asUnit(value).toNumber(base);
}

function leaf(c: Chance, among: Among): Tree {
  const number = c.of(['2', '3', '12', '0.45', '7.5', '40', '16', '1.25', '100']);
  const value = Number(number);
  const say = (text: string, unit: string | null, ...bare: readonly Bare[]): Tree => {
    const work = once((): Worked => (unit === null ? value : plain(math.unit(value, unit))));
    return { text, hold: 'amount', bare: new Set(bare), work, reach: work };
  };
  if (c.in(0.12)) return say(number, null);
  if (c.in(0.15)) return say(`$${number}`, 'dollar');
  if (c.in(0.12)) {
    const [under, theirs] = c.of(UNDER);
    return say(`$${number} per ${under}`, `dollar / (${theirs})`);
  }
  if (c.in(0.08)) {
    const [[over, above], [under, below]] = [c.of(UNITS), c.of(UNDER)];
    const isSlope = math.unit(1, above).equalBase(math.unit(1, below));
    const unit = `(${above}) / (${below})`;
    return say(`${number} ${over} per ${under}`, unit, ...(isSlope ? (['slope'] as const) : []));
  }
  if (among === 'counts' && c.in(0.4)) {
    const thing = c.of(THINGS);
    if (c.in(0.3)) return say(`$${number} per ${thing}`, 'dollar', 'count');
    return say(`${number} ${thing}s`, null, 'count');
  }
  const [unit, theirs] = c.of(UNITS);
  return say(`${number} ${unit}`, theirs);
}

function held({ hold, text }: Tree): string {
  return hold === 'amount' ? text : `(${text})`;
}

type Two = (a: Worked, b: Worked) => Worked;

function joined(word: string, a: Tree, b: Tree, work: Two, reach: Two): Tree {
  const text = `${held(a)} ${word} ${held(b)}`;
  return made(
    text,
    [a, b],
    ([one, other]) => work(one, other),
    ([one, other]) => reach(one, other),
  );
}

function made(
  text: string,
  parts: readonly Tree[],
  work: (values: readonly Worked[]) => Worked,
  reach: (values: readonly Worked[]) => Worked,
): Tree {
  return {
    text,
    hold: 'more',
    bare: new Set(parts.flatMap((part) => [...part.bare])),
    work: once(() => work(parts.map((part) => part.work()))),
    reach: once(() => reach(parts.map((part) => part.reach()))),
  };
}

/** The language takes yards of an area for square ones, of a volume for cubic ones. */
function yardsFor(value: Worked): string {
  const power = [2, 3].find((n) => asUnit(value).equalBase(math.unit(1, `yd^${n}`)));
  return power === undefined ? 'yd' : `yd^${power}`;
}

/** Worked at most once, and thrown as often as it is asked for. */
function once(work: () => Worked): () => Worked {
  let done: { readonly value: Worked } | { readonly thrown: unknown } | null = null;
  return () => {
    if (done === null) {
      try {
        done = { value: work() };
      } catch (thrown) {
        done = { thrown };
      }
    }
    if ('thrown' in done) throw done.thrown;
    return done.value;
  };
}

function sum(a: Worked, b: Worked): Worked {
  return plain(math.add(firm(a), firm(b)) as Worked);
}

function difference(a: Worked, b: Worked): Worked {
  return plain(math.subtract(firm(a) as Unit, firm(b) as Unit) as Worked);
}

function product(a: Worked, b: Worked): Worked {
  return plain(math.multiply(firm(a) as Unit, firm(b) as Unit) as Worked);
}

function quotient(a: Worked, b: Worked): Worked {
  return plain(math.divide(firm(a) as Unit, firm(b) as Unit) as Worked);
}

function goes(work: () => Worked): boolean {
  try {
    work();
    return true;
  } catch {
    return false;
  }
}

/** Not a yes or no: mathjs would take one for 1 or 0. */
function firm(value: Worked): number | Unit {
  if (typeof value === 'boolean') throw new TypeError('a yes or no in arithmetic');
  return value;
}

function asUnit(value: Worked): Unit {
  if (typeof value === 'object') return value;
  throw new TypeError(`${String(value)} has no unit`);
}

/** mathjs leaves feet over inches as a unit without a dimension; it is the number that it comes to. */
function plain(value: Worked): Worked {
  if (typeof value !== 'object') return value;
  return value.equalBase(NO_UNIT) ? value.toNumber('in / in') : value;
}
