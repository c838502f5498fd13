// What an amount measures: powers of the four hard dimensions and of counted things.
// Dimensions are interned: two that are equal are the same object, so `===` compares them.
import { onceAPair, onceEach } from './once.ts';

/** One counted thing and its power. The noun is its singular, e.g. `bag`. `each` fits any noun. */
export interface NounPower {
  readonly noun: string;
  readonly power: number;
}

export interface Dimension {
  /** A text that is the same for equal dimensions. */
  readonly key: string;
  readonly length: number;
  readonly mass: number;
  readonly time: number;
  readonly money: number;
  /** Sorted by noun; no zero powers. */
  readonly nouns: readonly NounPower[];
}

const known = new Map<string, Dimension>();

/** The one dimension with these powers. Nouns may come in any order, repeated, or with zero powers. */
export function dimension(powers: {
  length?: number;
  mass?: number;
  time?: number;
  money?: number;
  nouns?: readonly NounPower[];
}): Dimension {
  const { length = 0, mass = 0, time = 0, money = 0 } = powers;
  const nouns = tidyNouns(powers.nouns ?? []);
  const key = `${length},${mass},${time},${money};${nouns.map((n) => `${n.noun}^${n.power}`).join(',')}`;
  const found = known.get(key);
  if (found) return found;
  const made: Dimension = { key, length, mass, time, money, nouns };
  known.set(key, made);
  return made;
}

export const PLAIN = dimension({});
export const LENGTH = dimension({ length: 1 });
export const AREA = dimension({ length: 2 });
export const VOLUME = dimension({ length: 3 });
export const MASS = dimension({ mass: 1 });
export const TIME = dimension({ time: 1 });
export const MONEY = dimension({ money: 1 });

/** The dimension of one thing of this noun. */
export function countOf(noun: string, power = 1): Dimension {
  return power === 1 ? oneThing(noun) : dimension({ nouns: [{ noun, power }] });
}

const oneThing = onceEach((noun: string) => dimension({ nouns: [{ noun, power: 1 }] }));

/** a × b; the same noun adds its powers. `each` is left as it stands: see `cancelEach`. */
export const timesDimension = onceAPair((a: Dimension, b: Dimension) => combined(a, b, 1));

/** a ÷ b. */
export const overDimension = onceAPair((a: Dimension, b: Dimension) => combined(a, b, -1));

/** a to a whole power. */
export function powerDimension(a: Dimension, power: number): Dimension {
  return dimension({
    length: a.length * power,
    mass: a.mass * power,
    time: a.time * power,
    money: a.money * power,
    nouns: a.nouns.map((n) => ({ noun: n.noun, power: n.power * power })),
  });
}

/** Only the hard part, without counted things. */
export const hardPart = onceEach((a: Dimension) =>
  a.nouns.length === 0
    ? a
    : dimension({ length: a.length, mass: a.mass, time: a.time, money: a.money }),
);

/** Does it have a length, mass, time or money in it? */
export function isHard(a: Dimension): boolean {
  return a.length !== 0 || a.mass !== 0 || a.time !== 0 || a.money !== 0;
}

/**
 * Nouns above the line beside a hard unit that is above it too drop out (12 joists × 10 ft is 120 ft);
 * nouns below the line stay (in per riser). A pure count is left as it is, and so is a count per
 * something hard (3 screws per sq ft).
 */
export const withoutNounsAbove = onceEach((a: Dimension) => {
  const hardAbove = a.length > 0 || a.mass > 0 || a.time > 0 || a.money > 0;
  if (!hardAbove || a.nouns.every((n) => n.power < 0)) return a;
  return dimension({ ...a, nouns: a.nouns.filter((n) => n.power < 0) });
});

function combined(a: Dimension, b: Dimension, sign: 1 | -1): Dimension {
  if (b === PLAIN) return a;
  return dimension({
    length: a.length + sign * b.length,
    mass: a.mass + sign * b.mass,
    time: a.time + sign * b.time,
    money: a.money + sign * b.money,
    nouns: [...a.nouns, ...b.nouns.map((n) => ({ noun: n.noun, power: sign * n.power }))],
  });
}

function tidyNouns(nouns: readonly NounPower[]): readonly NounPower[] {
  if (nouns.length === 0) return nouns;
  const sum = new Map<string, number>();
  for (const n of nouns) sum.set(n.noun, (sum.get(n.noun) ?? 0) + n.power);
  return [...sum]
    .filter(([, power]) => power !== 0)
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    .map(([noun, power]) => ({ noun, power }));
}
