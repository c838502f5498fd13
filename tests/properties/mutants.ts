// Formulas that were right until somebody's finger slipped: words left out, put in, swapped, doubled.
import { Chance } from './chance.ts';

/** The cells that the formulas name; invented sizes. */
export const GIVENS = [
  'Slab length: 12 ft',
  'Slab width: 4 ft',
  'Thickness: 4 in',
  'Bag yield: 0.45 cubic feet per bag',
  'Bag price: $6.48 per bag',
  'Bags: 40 bags',
  'Waste: 10%',
  'Total rise: 52 1/2 in',
  'Direct cost: $7,500',
  'Pace: 40 sq ft per hour',
  'Wet: yes',
  'Length of run: 9 ft',
  'Broken: slab lenght',
  'Open: ?',
] as const;

export const RIGHT = [
  'slab length by slab width by thickness, in cubic yards',
  'slab length by slab width by thickness plus waste, in bags of bag yield',
  '(slab length by slab width by thickness) divided by bag yield, rounded up',
  '36 bags at bag price',
  'bags at bag price plus 8.5% tax',
  'joists every 16 in along slab length, one end',
  'total rise divided by 7 3/4 in, rounded up, as risers',
  '1,260 screws in boxes of 350 screws',
  '640 sq ft at 40 sq ft per hour, at $50 per hour',
  'slab length by slab width plus 10% at $5 per sq ft',
  'direct cost marked up 20%',
  'direct cost for a 20% margin',
  '$7,500 for 10% overhead and 15% profit',
  '12\' 6-1/2" plus 3 ft 4 1/2 in',
  'fewest balusters of 1 1/2 in across 72 in with gaps under 4 in',
  'even gap for 13 balusters of 1 1/2 in across 72 in',
  '$1,000 ÷ (1 − 10% − 15%)',
  'thickness or 5 in, whichever is greater, plus 1 in',
  'total of slab length, slab width and 3 ft, times 2',
  'average of 4 in, 5 in and thickness',
  '5 pieces of 9 ft from 16 ft boards',
  '3 people times 8 hours at $50 per hour per person',
  'diagonal of slab length and slab width',
  '6 in where thickness is less than 4 in, otherwise 4 in',
  'if wet then 6 in, otherwise 4 in',
  '0.6 cubic yards rounded up to the next 1/4 cubic yard',
  'what share $42 is of direct cost',
  'thickness is at least 4 in and slab width is under 5 ft or not wet',
  'thickness is between 3 in and 6 in',
  'circle area for 12 in diameter by thickness',
  'square root of (slab length squared plus slab width squared)',
  'half of length of run rounded to the nearest 1/16 in, not less than 4 in',
  'waste of direct cost less $50',
  'length of run in 16 ft boards',
  'the greater of slab length and length of run',
  '8:30 hours at $50 per hour',
  'slab length by slab width at pace',
  "24' x 20' by thickness",
  'how many 16 ft boards for length of run',
  'add 10% to direct cost, less $50',
  'perimeter of slab length by slab width',
  '6 holes 10" dia x 3\' deep, cf',
  "12' long x 4' wide x 4 in thick of concrete in cy",
  'what is 2.3 cubic yards of gravel at $46 per cubic yard?',
  'two men for three days of eight hours at $50 per hour',
  'round up (slab length divided by 5 ft)',
  'a fall of 1 in 60 over slab length',
  '18 in o.c. along slab length',
  'whichever is greater of slab length and slab width',
  'difference between slab length and slab width',
  '15% profit on direct cost including 6% tax',
  'direct cost, but free if thickness over 6 in',
  'open plus slab length',
  '13 hours, 12 at best, 16 at worst',
  '12 to 16 hours at $50 per hour',
  'total cost of this part',
] as const;

const STRAY = [
  'plus',
  'minus',
  'times',
  'by',
  'at',
  'divided by',
  'of',
  'per',
  'in',
  'is',
  'and',
  'or',
  'not',
  'rounded',
  'rounded up',
  'where',
  'otherwise',
  'for',
  'from',
  '(',
  ')',
  ',',
  '%',
  '$',
  '"',
  "'",
  '-',
  '/',
  '?',
  '.',
  '12',
  '3/4',
  '7 1/2',
  '$5',
  '10%',
  'ft',
  'in',
  'bags',
  'boards',
  'cubic yards',
  'hours',
  'slab',
  'slab length',
  'bag price',
  'waste',
  'wet',
  'broken',
  'length',
  'margin',
  'total of',
  'each',
  'squared',
  'widht',
  'x',
  '1,25',
  '0',
  'yards',
  'than',
  'whichever is greater',
  'in boards of',
  '\u200B',
  'NaN',
  'undefined',
];

const OTHERS = [
  'slab length',
  'thickness',
  'bags',
  'bag price',
  'waste',
  'wet',
  'direct cost',
  'pace',
  '3 boards',
  '$4',
  '10 sq ft',
  '2',
  '5%',
  '2 hours',
  '60 lb',
  '3 screws per board',
  'yes',
  'open',
  'broken',
  '(3 ft plus 2)',
];

/** So many formulas for this seed, none of them as it was. */
export function mutants(seed: number, count: number): readonly string[] {
  const c = new Chance(seed);
  return Array.from({ length: count }, () => {
    // A word or mark, with the blank before it.
    let words: readonly string[] = c.of(RIGHT).match(/\s*(?:\w+|[^\s\w])/gu) ?? [];
    for (let more = c.whole(1, 2); more > 0; more--) words = slipped(words, c);
    return words.join('').trim();
  });
}

function slipped(words: readonly string[], c: Chance): string[] {
  const at = c.whole(0, Math.max(0, words.length - 1));
  const [before, here, after] = [words.slice(0, at), words[at] ?? '', words.slice(at + 1)];
  switch (c.whole(0, 6)) {
    case 0:
      return [...before, ...after];
    case 1:
      return [...before, ` ${c.of(STRAY)}`, here, ...after];
    case 2:
      return [...before, ` ${c.of(STRAY)}`, ...after];
    case 3: {
      const other = c.whole(0, Math.max(0, words.length - 1));
      return words.map((w, i) => (i === at ? (words[other] ?? '') : i === other ? here : w));
    }
    case 4: {
      const cut = c.whole(1, Math.max(1, here.length - 1));
      return [...before, here.slice(0, cut) + here.slice(cut + 1), ...after];
    }
    case 5: {
      // Something else of another kind where an amount or a name stood.
      const number = words.findIndex((w, i) => i >= at && /\d/.test(w));
      return number < 0
        ? [...words]
        : [...words.slice(0, number), ` ${c.of(OTHERS)} `, ...words.slice(number + 1)];
    }
    default:
      return [...before, here, here, ...after];
  }
}
