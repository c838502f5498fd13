// Every way in which a formula can be wrong, each with a formula that is, in one small notebook. Invented sizes and prices.
// `asks`: what a mend asks next, because only the person knows; `none`: why nothing is offered.
import type { MendCase } from '../notebook/mending.ts';

const GIVENS = [
  'Slab length: 12 ft',
  'Slab width: 4 ft',
  'Slab area: slab length by slab width',
  'Thickness: 4 in',
  'Bag price: $6.48 per bag',
  'Bags to buy: 40 bags',
  'Posts: 4 posts',
  'Waste: 10%',
  'Direct cost: $7,500',
  'Margin: 120%',
  'Wet: yes',
  'Nothing: 0',
  'Below: 0 sq ft minus 4 sq ft',
  'Short stock: 8 ft',
  'Huge: 10 squared squared squared squared squared squared squared squared',
  'Wood: "hem-fir"',
  'Species: pine\n  - choices: pine, hem-fir',
] as const;

const TABLES = [
  'Bays:\n\n  | kind | long | wide | area: long by wide |\n  |---|---|---|---|\n  | small | 4 ft | 3 ft | |\n  | large | 6 ft | 4 ft | |\n',
  'Cuts:\n\n  | what | size |\n  |---|---|\n  | rail | 4 ft |\n  | foot | 3 lb |\n',
  'Later:\n\n  | what | size |\n  |---|---|\n',
] as const;

function notebook(formula: string): string {
  const lines = [...GIVENS, `Answer: ${formula}`, ...TABLES].map((line) => `- ${line}\n`).join('');
  return `# Kestrel Court\n\n## Landing\n\n${lines}\n## Deck\n\n- Run: 14 ft\n- Drop: 2 ft\n\n## Stair\n\n- Drop: 3 ft\n`;
}

type More = Pick<MendCase, 'asks' | 'none'>;

const one = (code: string, formula: string, more: More = {}): MendCase => ({
  code,
  text: notebook(formula),
  cell: 'Answer',
  ...more,
});

const OPEN = { asks: ['not-yet-known'] } as const;

export const FORMULA_MENDS: readonly MendCase[] = [
  one('empty', '', OPEN),
  one('too-long', `1${' plus 1'.repeat(2000)}`, {
    none: 'Only its writer knows where to split it.',
  }),
  one('too-deep', `${'('.repeat(400)}1${')'.repeat(400)}`, {
    none: 'Only its writer knows which inner part deserves a name.',
  }),
  one('unknown-name', 'slab lenght by 2', { asks: ['not-yet-known', 'two-readings'] }),
  one('unknown-name', 'slab length by slab depht times 2', OPEN),
  one('unknown-name', 'gravel', OPEN),
  one('ambiguous-name', 'drop plus 1 ft'),
  one('unknown-unit', '4 bages at bag price', { asks: ['noun-clash'] }),
  one('unknown-unit', '5 gudgeons'),
  one('unknown-unit', 'slab area in cubic yrads', { asks: ['wrong-unit-asked'] }),
  one('unknown-part', 'total cost of Landng'),
  one('unknown-part', 'total cost of the shed'),
  one('unknown-table', 'total of long in bay', { asks: ['unknown-column'] }),
  one('unknown-table', 'read size off cutts for what rail', { asks: ['column-clash'] }),
  one('unknown-column', 'total of lnog in bays'),
  one('not-a-choice', 'read long off bays for kind smal'),
  one('table-not-a-value', 'bays plus 1 ft', { asks: ['unit-clash'] }),
  one('table-not-a-value', 'bays'),
  one('missing-operator', 'slab length slab width'),
  one('missing-operator', 'direct cost 10%'),
  one('missing-value', 'slab length plus', OPEN),
  one('missing-value', 'slab length plus times 3 ft'),
  one('missing-value', 'slab length by (slab width plus )', { asks: ['not-yet-known'] }),
  one('missing-value', '$', OPEN),
  one('missing-value', 'slab length in'),
  one('other-currency', '€50 plus $3'),
  one('unread', 'thickness ; plus 3 in'),
  one('unclosed-bracket', '(slab length plus 3 ft'),
  one('stray-bracket', 'slab length plus 3 ft)'),
  one('two-readings', 'total of $100, $100 and $100 plus 10%'),
  one('two-readings', '12\' - 6"'),
  one('two-readings', '12 by 4 ft'),
  one('two-readings', '16 1/2 in boards'),
  one('two-readings', 'direct cost plus $50 where slab width is more than 100 ft, otherwise $0'),
  one('margin-or-markup', 'direct cost plus 25% margin'),
  one('missing-otherwise', '6 in where thickness is less than 4 in'),
  one('per-what', 'direct cost per sq ft'),
  one('pack-of-what', '1,260 screws in boxes', { asks: ['noun-clash'] }),
  one('phrase-slot', 'joists every 16 in', OPEN),
  one('phrase-slot', 'diagonal of slab length', OPEN),
  one('phrase-slot', 'thickness or 5 in, whichever is'),
  one('phrase-slot', 'thickness is between 4 in'),
  one('phrase-slot', 'circle area for 12 in'),
  one('phrase-slot', '5 pieces of 3 ft from 16 ft'),
  one('phrase-slot', 'what share $42', OPEN),
  one('phrase-slot', 'read long off bays'),
  one('odd-number', '1,25 ft', { asks: ['bare-number', 'unread', 'missing-operator'] }),
  one('odd-number', '8:75 hours'),
  one('unit-clash', 'slab length plus direct cost'),
  one('unit-clash', 'slab length plus $3 per ft'),
  one('unit-clash', 'slab length plus bag price'),
  one('noun-clash', '36 boards at bag price'),
  one('noun-clash', 'posts plus bags to buy'),
  one('price-per-wrong-thing', 'direct cost plus bag price'),
  one('price-per-wrong-thing', 'direct cost plus $5 per sq ft'),
  one('share-of-what', 'waste plus $5'),
  one('not-a-share', 'direct cost marked up 20'),
  one('not-a-share', 'direct cost marked up $500'),
  one('not-an-amount', 'slab area times wet'),
  one('not-a-count', 'slab area, as bags'),
  one('not-a-count', 'even gap for 5 ft of 1 1/2 in across 72 in'),
  one('not-a-length', 'joists every 16 in along direct cost', {
    none: 'Only its writer knows which length was meant.',
  }),
  one('bare-number', 'slab length plus 3'),
  one('bare-number', 'joists every 16 along slab length'),
  one('count-over-rate', '3 bags over bag price'),
  one('price-per-what', 'slab area at $5'),
  one('per-which-yard', '$140 per yard times slab area'),
  one('wrong-unit-asked', 'slab area in feet'),
  one('column-not-amounts', 'total of kind in bays'),
  one('column-clash', 'total of size in cuts', {
    none: 'Only the owner of the table knows which of its rows is wrong.',
  }),
  one('no-rows', 'total of size in later', OPEN),
  one('no-order', 'wet is more than wet', { asks: ['check-fails'] }),
  one('no-order', 'wood is between "hem-fir" and "pine"'),
  one('no-order', 'read long off bays for kind at least small'),
  one('not-yes-or-no', '6 in where thickness, otherwise 4 in'),
  one('noun-by-noun', 'posts times bags to buy'),
  one('noun-by-noun', 'posts squared'),
  one('no-square-root', 'square root of slab length'),
  one('no-triangle', 'triangle area for sides 3 ft, 4 ft and 9 ft', {
    none: 'One of the sides has to be measured again.',
  }),
  one('too-many-lengths', 'slab area by slab area'),
  one('wrong-rounding-step', 'slab length rounded up to the next $5'),
  one('no-rounding-step', 'slab length rounded up'),
  one('nothing-left', 'direct cost for 60% overhead and 50% profit'),
  one('nothing-left', 'direct cost for a margin of margin'),
  one('piece-too-long', '5 pieces of 9 ft from short stock boards'),
  one('division-by-zero', 'direct cost divided by nothing', OPEN),
  one(
    'division-by-zero',
    'slab length plus (slab width divided by (posts minus 4 posts)) times 2 posts',
  ),
  one('root-of-negative', 'square root of below'),
  one('too-large', 'huge times huge', {
    none: 'Only its writer knows which amount or unit was not meant.',
  }),
  one('no-row', 'read long off bays for wide at least 5 ft', OPEN),
  one('no-row', 'read long off bays for kind "middling"', OPEN),
  one('half-a-range', '13 hours, 12 at best'),
  one('range-in-formula', '12 to 16 hours at $50 per hour'),
  one('range-end-open', '13 hours, 12 at best, ? at worst'),
  one('range-unlike', '13 hours, 12 ft at best, 16 hours at worst'),
  one('range-outside', '11 hours, 12 at best, 16 at worst'),
  one('unknown-size', '3x7'),
  one('which-dimension', '2x8 plus 1 in'),
  one('how-many', '2x8 at $5 each'),
  one('length-of-each', '22 2x8 in board feet', {
    none: 'Only its writer knows how long they are.',
  }),
  one('not-a-size', 'actual width of slab length', {
    none: 'Only its writer knows which size was meant.',
  }),
];
