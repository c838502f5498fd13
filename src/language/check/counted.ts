// Counted things in what is measured: how `each` fits any of them, and which are left over.
import {
  type Dimension,
  type NounPower,
  PLAIN,
  dimension,
  hardPart,
  isHard,
} from '../../quantity/dimension.ts';
import { onceEach } from '../../quantity/once.ts';

/** `$6.48 each`: a thing below the line that fits whatever the other side counts. */
export const EACH = 'each';

/** The noun when one thing is counted and nothing else measured: 40 bags. */
export function countedNoun(a: Dimension): string | null {
  const only = a.nouns[0];
  return !isHard(a) && a.nouns.length === 1 && only?.power === 1 ? only.noun : null;
}

/** Only counted things, nothing hard: a count, or things per thing. */
export function isCounting(a: Dimension): boolean {
  return a !== PLAIN && !isHard(a);
}

export function powerOf(a: Dimension, noun: string): number {
  return a.nouns.find((n) => n.noun === noun)?.power ?? 0;
}

/** The same with other nouns. */
export function withNouns(a: Dimension, nouns: readonly NounPower[]): Dimension {
  return dimension({ ...a, nouns });
}

/** Without the nouns above the line, whatever stands beside them. */
export const withoutCounts = onceEach((a: Dimension) =>
  a.nouns.some((n) => n.power > 0)
    ? withNouns(
        a,
        a.nouns.filter((n) => n.power < 0),
      )
    : a,
);

/** What stands above the line. */
export const abovePart = onceEach((a: Dimension) =>
  dimension({
    length: Math.max(0, a.length),
    mass: Math.max(0, a.mass),
    time: Math.max(0, a.time),
    money: Math.max(0, a.money),
    nouns: a.nouns.filter((n) => n.power > 0),
  }),
);

/** What stands below the line, right way up. */
export const belowPart = onceEach((a: Dimension) =>
  dimension({
    length: Math.max(0, -a.length),
    mass: Math.max(0, -a.mass),
    time: Math.max(0, -a.time),
    money: Math.max(0, -a.money),
    nouns: a.nouns.filter((n) => n.power < 0).map((n) => ({ noun: n.noun, power: -n.power })),
  }),
);

/** `a`, with `each` read as the thing that stands in `b` in the same place. */
export function fitEach(a: Dimension, b: Dimension): Dimension {
  const power = powerOf(a, EACH);
  if (power === 0 || powerOf(b, EACH) !== 0) return a;
  const fits = b.nouns.find((n) => n.power === power && powerOf(a, n.noun) === 0);
  if (!fits) return a;
  return withNouns(
    a,
    a.nouns.map((n) => (n.noun === EACH ? fits : n)),
  );
}

/**
 * A product of `left` and `right` with every `each` taken off against a thing of the other side.
 * An `each` that is left above the line counts things nobody named: a plain number of them.
 */
export function cancelEach(product: Dimension, left: Dimension, right: Dimension): Dimension {
  let each = powerOf(product, EACH);
  if (each === 0) return product;
  const others = powerOf(left, EACH) !== 0 ? right : left;
  const nouns = new Map(product.nouns.map((n) => [n.noun, n.power]));
  for (const { noun } of others.nouns) {
    const power = nouns.get(noun) ?? 0;
    if (noun === EACH || power === 0 || power > 0 === each > 0) continue;
    const taken = Math.min(Math.abs(power), Math.abs(each));
    nouns.set(noun, power - Math.sign(power) * taken);
    each -= Math.sign(each) * taken;
    if (each === 0) break;
  }
  nouns.set(EACH, Math.min(0, each));
  return withNouns(
    product,
    [...nouns].map(([noun, power]) => ({ noun, power })),
  );
}

/** Lengths, areas, volumes and weights: a thing below the line is a label there and never stands in the way. */
export function labelsAreFree(a: Dimension): boolean {
  return a.money === 0 && a.time === 0 && isHard(a);
}

/** Is the hard part a length, an area … above the line, so that counts beside it drop out? */
export function measuresAbove(a: Dimension): boolean {
  const hard = hardPart(a);
  return hard !== PLAIN && hard.length >= 0 && hard.mass >= 0 && hard.time >= 0 && hard.money >= 0;
}

/** People over days go together, and coats on sides: neither asks what the other is per. */
export function goTogether(a: string, b: string): boolean {
  return TOGETHER.some(([one, other]) => (a === one && b === other) || (a === other && b === one));
}

const TOGETHER = [
  ['person', 'day'],
  ['coat', 'side'],
  ['coat', 'face'],
] as const;
