// Random formulas by the grammar, for properties: every one of them can be read.
import fc from 'fast-check';

const number = fc.constantFrom('12', '3', '1,250', '0.45', '3/4', '7 1/2', '7½', '2');
const unit = fc.constantFrom('ft', 'in', 'sq ft', 'cubic yards', 'bags', 'hours', 'lb', 'boards');
const plainAmount = fc.oneof(
  number,
  fc.tuple(number, unit).map(([n, u]) => `${n} ${u}`),
  fc.constantFrom(
    '$4.25',
    '85 cents',
    '10%',
    '8.5% overhead',
    '12 ft 6 1/2 in',
    '$6.48 per bag',
    '40 sq ft per hour',
    '1/4 in per ft',
    '$320 per 1000 sq ft',
    '$12 per $1,000',
    '$6.48 each',
    '8:30 hours',
    '5 h 35 min',
    '? bags',
    '$?',
    '6 in 12',
  ),
);
const name = fc.constantFrom(
  'slab length',
  'the slab width',
  'Thickness',
  'bags',
  'waste',
  'markup',
  'length of run',
  'total rise',
  'Steps thickness',
  'Deck surface stringers',
  '# of posts',
);
const size = fc.constantFrom('2x8', '5/4x6', '4x4', '2×12', '2 x 6');
const count = fc.constantFrom('5 pieces', '12 joists', '13 balusters', '40 bags');
const length = fc.constantFrom('9 ft', '16 in', '72 in', 'slab length', '1 1/2 in');

/** A formula, with spaces in the usual places. */
export const formula: fc.Arbitrary<string> = fc.letrec<{
  slot: string;
  value: string;
  term: string;
  sum: string;
  closed: string;
  comparison: string;
  logic: string;
  formula: string;
}>((tie) => ({
  slot: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    plainAmount,
    name,
    tie('formula').map((f) => `(${f})`),
  ),
  value: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    tie('slot'),
    tie('slot').map((s) => `${s} squared`),
    tie('value').map((v) => `half of ${v}`),
    tie('value').map((v) => `10% of ${v}`),
    tie('value').map((v) => `square root of ${v}`),
    tie('slot').map((s) => `-${s}`),
    fc.tuple(tie('slot'), tie('slot')).map(([a, b]) => `what share ${a} is of ${b}`),
    fc.tuple(tie('slot'), tie('slot')).map(([a, b]) => `diagonal of ${a} and ${b}`),
    fc.tuple(tie('slot'), tie('slot')).map(([a, b]) => `(the greater of ${a} and ${b})`),
    fc.tuple(tie('slot'), tie('slot')).map(([a, b]) => `(total of ${a}, ${b} and 3)`),
    fc.tuple(count, length, length).map(([n, a, b]) => `${n} of ${a} from boards of ${b}`),
    fc.tuple(length, length).map(([a, b]) => `joists every ${a} along ${b}`),
    fc
      .tuple(length, length, length)
      .map(([a, b, c]) => `fewest balusters of ${a} across ${b} with gaps under ${c}`),
    fc.tuple(count, length, length).map(([n, a, b]) => `even gap for ${n} of ${a} across ${b}`),
    length.map((l) => `circle area for ${l} diameter`),
    fc
      .constantFrom('total of', 'average of', 'greatest', 'the least')
      .map((what) => `${what} clear span in slab bays`),
    fc.constant('how many slab bays'),
    fc.constantFrom('2x8', '5/4x6', '4x4 posts', '#4', '#5 bar'),
    fc
      .tuple(fc.constantFrom('actual width', 'actual depth', 'nominal thickness'), size)
      .map(([figure, s]) => `${figure} of ${s}`),
    fc
      .tuple(fc.constantFrom('actual width of', 'nominal width of the'), name)
      .map((w) => w.join(' ')),
    fc.constantFrom('diameter of #4 bar', 'weight of a #5 bar', '40 #4 bars x 20 ft'),
    fc
      .tuple(fc.constantFrom('22', '1,250', '3 joists of', 'bags of', '308 ft of'), size)
      .map((w) => w.join(' ')),
    fc
      .tuple(
        fc.constantFrom('22', '22 -', '22 pieces of', '12 joists', 'bags of', '(thickness) of'),
        size,
        fc.constantFrom('x', 'by', 'boards x'),
        length,
      )
      .map((w) => w.join(' ')),
    fc.tuple(name, length).map(([n, l]) => `5 pieces of ${n} by ${l}`),
    fc
      .tuple(fc.constantFrom('at least', 'under', 'is', 'over'), tie('slot'))
      .map(
        ([relation, s]) =>
          `(read run off slab bays for species hem-fir, clear span ${relation} ${s})`,
      ),
  ),
  term: fc.oneof(
    tie('value'),
    fc
      .tuple(
        tie('value'),
        fc.constantFrom('times', 'by', '×', 'at', 'divided by', '÷'),
        tie('value'),
      )
      .map(([a, op, b]) => `${a} ${op} ${b}`),
  ),
  sum: fc.oneof(
    tie('term'),
    fc
      .tuple(tie('term'), fc.constantFrom('plus', 'minus', 'less', '+', '−'), tie('slot'))
      .map(([a, op, b]) => `${a} ${op} ${b}`),
  ),
  closed: fc.oneof(
    tie('sum'),
    tie('sum').map((s) => `${s}, rounded up`),
    tie('sum').map((s) => `${s}, rounded to the nearest 1/4 in`),
    tie('sum').map((s) => `${s}, in cubic yards`),
    tie('sum').map((s) => `${s}, in boxes of 350 screws`),
    tie('sum').map((s) => `${s}, marked up 15%`),
    tie('sum').map((s) => `${s}, for a 15% margin`),
    tie('sum').map((s) => `${s}, for 10% overhead and 15% profit`),
    tie('sum').map((s) => `${s}, as boards`),
    fc.tuple(tie('sum'), tie('slot')).map(([s, l]) => `${s}, not less than ${l}`),
    fc.tuple(tie('sum'), tie('slot')).map(([s, l]) => `${s}, times ${l}`),
    fc.tuple(tie('sum'), tie('sum')).map(([a, b]) => `${a} or ${b}, whichever is greater`),
  ),
  comparison: fc
    .tuple(
      tie('sum'),
      fc.constantFrom('is', 'is more than', 'is at most', 'is under', 'is not', '≥'),
      tie('sum'),
    )
    .map(([a, op, b]) => `${a} ${op} ${b}`),
  logic: fc.oneof(
    tie('comparison'),
    fc
      .tuple(tie('comparison'), fc.constantFrom('and', 'or'), tie('comparison'))
      .map(([a, op, b]) => `${a} ${op} ${b}`),
    tie('comparison').map((c) => `not ${c}`),
  ),
  formula: fc.oneof(
    { maxDepth: 3, withCrossShrink: true },
    tie('closed'),
    tie('logic'),
    fc
      .tuple(tie('slot'), tie('logic'), tie('slot'))
      .map(([a, c, b]) => `${a} where ${c}, otherwise ${b}`),
  ),
})).formula;

/** The amounts of one range: all in the same measure, some of them bare. */
const alike = fc
  .constantFrom(
    ['12 hours', '16 hours', '13', '5 h 35 min', '8:30 hours', '90 min'],
    ['$4', '$1,250', '6.48', '85 cents', '$?'],
    ['$6 per bag', '7', '$6.50 per bag', '$9'],
    ['12 ft', '7 1/2 in', '7½', '12 ft 6 1/2 in', "9'", '-3 ft'],
    ['10%', '8', '8.5% overhead', '15 percent'],
    ['40 sq ft per hour', '50', '3/4', '400 sq ft per hour'],
    ['3 bags', '5', '1 bag', '? bags'],
    ['0.45', '3', '3/4', '1,250', '-2'],
    ['6 in 12', '8', '1/4 in per ft', '1:80'],
  )
  .chain((amounts) => {
    const one = fc.constantFrom(...amounts);
    return fc.tuple(one, one, one);
  });

/** A given that says what it is at best and at worst. */
export const ranges: fc.Arbitrary<string> = fc
  .tuple(alike, fc.nat({ max: 8 }))
  .map(([[a, b, c], way]) => {
    const ways = [
      `${a}, ${b} at best, ${c} at worst`,
      `${a}, ${b} at worst, ${c} at best`,
      `${a} at best, ${b} at worst`,
      `${a} at worst and ${b} at best`,
      `best ${a}, worst ${b}`,
      `${a} to ${b}`,
      `between ${a} and ${b}`,
      `${a} (${b} to ${c})`,
      `${a}, between ${b} and ${c}`,
    ];
    return ways[way] ?? '';
  });
