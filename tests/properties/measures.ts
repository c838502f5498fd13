// The oracle's own table of what is written and what it comes to: in mm, grams, seconds and cents, exact by definition.
// 1 in = 25.4 mm, 1 lb = 453.59237 g, 1 US gal = 231 cubic in, 1 acre = 43,560 sq ft, 1 board foot = 144 cubic in
// (NIST Special Publication 811 and Handbook 44).
import { Exact, ONE } from './exact.ts';

export type Plain =
  | 'number'
  | 'length'
  | 'area'
  | 'volume'
  | 'weight'
  | 'time'
  | 'money'
  | 'share'
  | `count ${string}`;
/** `money per count bag` is a rate. */
export type Kind = Plain | `${Plain} per ${Plain}`;

const INCH = Exact.of('25.4');
const FOOT = INCH.times(Exact.of(12));
const YARD = FOOT.times(Exact.of(3));
const POUND = Exact.of('453.59237');
const cube = (a: Exact): Exact => a.times(a).times(a);
const square = (a: Exact): Exact => a.times(a);

interface Written {
  readonly size: Exact;
  /** Ways to write several of it, after the number and a blank. */
  readonly many: readonly string[];
  /** Ways to write one of it after `per`. */
  readonly one: readonly string[];
}

function unit(size: Exact, many: readonly string[], one: readonly string[]): Written {
  return { size, many, one };
}

export const WRITTEN: Readonly<Record<string, readonly Written[]>> = {
  length: [
    unit(INCH, ['in', 'inches'], ['in', 'inch']),
    unit(FOOT, ['ft', 'feet', 'lf', 'linear feet'], ['ft', 'foot']),
    unit(YARD, ['yd', 'yards'], ['yd', 'yard']),
    unit(ONE, ['mm'], ['mm']),
    unit(Exact.of(10), ['cm'], ['cm']),
    unit(Exact.of(1000), ['m', 'metres'], ['m']),
  ],
  area: [
    unit(square(INCH), ['sq in', 'square inches'], ['sq in']),
    unit(square(FOOT), ['sq ft', 'sf', 'square feet'], ['sq ft', 'square foot']),
    unit(square(YARD), ['sq yd', 'square yards'], ['sq yd']),
    unit(Exact.of(1_000_000), ['sq m', 'square metres'], ['sq m']),
    unit(square(FOOT).times(Exact.of(43_560)), ['acres'], ['acre']),
  ],
  volume: [
    unit(cube(FOOT), ['cubic feet', 'cu ft', 'cubic ft'], ['cubic foot', 'cu ft']),
    unit(cube(YARD), ['cubic yards', 'cy', 'cu yd'], ['cubic yard', 'cy']),
    unit(cube(INCH), ['cubic inches'], ['cubic inch']),
    unit(cube(Exact.of(1000)), ['cubic m'], ['cubic m']),
    unit(cube(INCH).times(Exact.of(231)), ['gallons', 'gal'], ['gallon', 'gal']),
    unit(cube(Exact.of(100)), ['litres'], ['litre']),
    unit(cube(INCH).times(Exact.of(144)), ['board feet', 'bf'], ['board foot']),
  ],
  weight: [
    unit(POUND, ['lb', 'pounds'], ['lb', 'pound']),
    unit(POUND.by(Exact.of(16)), ['oz', 'ounces'], ['ounce']),
    unit(POUND.times(Exact.of(2000)), ['tons'], ['ton']),
    unit(Exact.of(1000), ['kg'], ['kg']),
    unit(Exact.of(1_000_000), ['tonnes'], ['tonne']),
  ],
  time: [
    unit(Exact.of(3600), ['hours', 'hr'], ['hour', 'hr']),
    unit(Exact.of(60), ['min', 'minutes'], ['minute', 'min']),
  ],
};

/** Counted things: one and many. */
export const THINGS: ReadonlyMap<string, string> = new Map([
  ['bag', 'bags'],
  ['board', 'boards'],
  ['box', 'boxes'],
  ['joist', 'joists'],
  ['post', 'posts'],
  ['riser', 'risers'],
  ['screw', 'screws'],
]);

/** Plain unit texts as a machine is told them, in the oracle's measure. */
const SHOWN: ReadonlyMap<string, Exact> = new Map([
  ['', ONE],
  ['%', new Exact(1n, 100n)],
  ['$', Exact.of(100)],
  ['in', INCH],
  ['ft', FOOT],
  ['yd', YARD],
  ['mm', ONE],
  ['cm', Exact.of(10)],
  ['m', Exact.of(1000)],
  ...['sq', 'cubic'].flatMap((power) =>
    (
      [
        ['in', INCH],
        ['ft', FOOT],
        ['yd', YARD],
        ['mm', ONE],
        ['cm', Exact.of(10)],
        ['m', Exact.of(1000)],
      ] as const
    ).map(([key, size]): [string, Exact] => [
      `${power} ${key}`,
      power === 'sq' ? square(size) : cube(size),
    ]),
  ),
  ['acre', square(FOOT).times(Exact.of(43_560))],
  ['gal', cube(INCH).times(Exact.of(231))],
  ['litre', cube(Exact.of(100))],
  ['board ft', cube(INCH).times(Exact.of(144))],
  ['mbf', cube(INCH).times(Exact.of(144_000))],
  ['km', Exact.of(1_000_000)],
  ['square', square(FOOT).times(Exact.of(100))],
  ['lb', POUND],
  ['oz', POUND.by(Exact.of(16))],
  ['ton', POUND.times(Exact.of(2000))],
  ['kg', Exact.of(1000)],
  ['tonne', Exact.of(1_000_000)],
  ['hour', Exact.of(3600)],
  ['min', Exact.of(60)],
  ...[...THINGS.keys()].map((one): [string, Exact] => [one, ONE]),
]);

/** `$ per 1000 sq ft` → cents per square millimetre; null for a unit that the oracle was never told of. */
export function sizeOf(shown: string): Exact | null {
  const [over = '', ...under] = shown.split(/(?:^| )per /);
  const top = SHOWN.get(over);
  if (!top) return null;
  let size = top;
  for (const each of under) {
    const [, count = '1', key = ''] = /^(?:([\d.]+) )?(.*)$/.exec(each) ?? [];
    const bottom = SHOWN.get(key);
    if (!bottom) return null;
    size = size.by(bottom.times(Exact.of(count)));
  }
  return size;
}
