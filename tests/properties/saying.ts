// What somebody says in a formula: its words, what they come to by exact fractions, and how closely they hold together.
import type { Chance } from './chance.ts';
import { type Exact, ZERO } from './exact.ts';
import { type Kind, type Plain, THINGS } from './measures.ts';

/**
 * How closely the words hold together. `carried`: a sum went on after a comma, so that a further times wants a comma too.
 * `closed`: ends in a clause, on whose result arithmetic may go on. `open`: a list or condition; only a comma goes on.
 */
export type Hold = 'slot' | 'value' | 'term' | 'sum' | 'carried' | 'closed' | 'open';
const LOOSENESS: readonly Hold[] = ['slot', 'value', 'term', 'sum', 'carried', 'closed', 'open'];

export interface Spoken {
  readonly text: string;
  readonly size: Exact;
  readonly kind: Kind;
  readonly hold: Hold;
}

export interface Named {
  /** As it has to be written from where the formula stands. */
  readonly say: string;
  readonly size: Exact;
  readonly kind: Kind;
}

export interface Answered {
  readonly say: string;
  readonly holds: boolean;
}

/** Left where an estimator would not go, such as dividing by nothing: the caller throws the dice again. */
export class NotSaid extends Error {}

export const COUNTS: readonly Plain[] = [...THINGS.keys()].map((one): Plain => `count ${one}`);
export const MEASURED: readonly Plain[] = ['length', 'area', 'volume', 'weight', 'time'];
export const PLAIN_KINDS: readonly Plain[] = [
  'number',
  ...MEASURED,
  'money',
  'share',
  ...COUNTS.slice(0, 4),
];
/** Rates as builders write them. */
export const RATES: readonly Kind[] = [
  ...([...MEASURED, ...COUNTS] as const).map((under): Kind => `money per ${under}`),
  'area per time',
  'volume per time',
  'length per time',
  'weight per volume',
  'area per volume',
  'time per count riser',
  'length per count riser',
  'volume per count bag',
  'weight per count bag',
  'area per count box',
  'count screw per count board',
  'count screw per length',
  'count bag per area',
  'count post per time',
];

export function spoken(text: string, size: Exact, kind: Kind, hold: Hold): Spoken {
  return { text, size, kind, hold };
}

export function bracketed(of: Spoken): Spoken {
  return spoken(`(${of.text})`, of.size, of.kind, 'slot');
}

/** With brackets around it, if it holds together less closely than that. */
export function held(hold: Hold, of: Spoken): Spoken {
  return LOOSENESS.indexOf(of.hold) <= LOOSENESS.indexOf(hold) ? of : bracketed(of);
}

/** Right after a number `in` would be inches. */
export function commaBeforeIn(of: Spoken, c: Chance): string {
  return of.hold === 'open' || /[\d½]$/.test(of.text) || c.in(0.5) ? ', ' : ' ';
}

export function isCount(kind: Kind): boolean {
  return kind.startsWith('count ');
}

/** After a bare 1 or 100% shares are taken from that whole, as far as a sum goes on that is not closed. */
export function isBareWhole(of: Spoken): boolean {
  return of.kind === 'number' || of.kind === 'share'
    ? /^(?:1|100%|\(+(?:1|100%)\)+)(?= (?:plus|with|\+|less|minus|-|−) |$)/.test(of.text)
    : false;
}

export function positive(size: Exact): Exact {
  if (size.compare(ZERO) <= 0) throw new NotSaid();
  return size;
}

export function atLeast(a: Exact, b: Exact): Exact {
  return a.compare(b) >= 0 ? a : b;
}

export function rounded(size: Exact, way: 'up' | 'down' | ''): Exact {
  return way === 'up' ? size.up() : way === 'down' ? size.down() : size.nearest();
}
