// The phrases and clauses of the language as they are said: their fixed words and what each slot between them
// needs, in words, with an example that can be worked. For whoever helps to write one; reading is done by the parser.

/** What a slot needs, as far as it can be told from the phrase. `like` is what stands at the left of the clause. */
export type Needs =
  | 'anything'
  | 'length'
  | 'count'
  | 'share'
  | 'noun'
  /** A rate for what stands at the left. */
  | 'rate'
  /** What measures the same as what stands at the left, or as the first of a list. */
  | 'like'
  /** What one pack holds: a rate per pack of what stands at the left, or an amount of it. */
  | 'pack'
  | 'condition'
  | 'cost kind'
  | 'part'
  | 'column'
  | 'table'
  | 'row condition';

export interface Slot {
  readonly needs: Needs;
  /** What to write here, in words. */
  readonly say: string;
}

/** Where a phrase may stand: at the start of a value, after a counted thing, or after a value that measures this. */
export type Stands =
  | { readonly place: 'first' | 'after noun' | 'between' }
  | {
      readonly place: 'after';
      readonly left: readonly ('length' | 'area' | 'volume' | 'count' | 'number' | 'money')[];
    };

export interface PhraseShape {
  /** The phrase with a slot at every `…`. */
  readonly say: string;
  readonly slots: readonly Slot[];
  readonly stands: Stands;
  /** A formula that uses it and needs no cell, to be worked where it is shown; null where it needs a table or a part. */
  readonly example: string | null;
  /** Plain arithmetic: offered, but nobody needs telling what stands after it. */
  readonly plain?: true;
  /** The example in words, for a hint; the formula itself where not given. */
  readonly like?: string;
}

const slot = (needs: Needs, say: string): Slot => ({ needs, say });
const first = { place: 'first' } as const;
const between = { place: 'between' } as const;

export const PHRASE_SHAPES: readonly PhraseShape[] = [
  {
    say: 'fewest … of … across … with gaps under …',
    slots: [
      slot('noun', 'what is set side by side: balusters, pickets, boards'),
      slot('length', 'how wide one of them is'),
      slot('length', 'the clear opening that they fill'),
      slot('length', 'the gap that none may reach'),
    ],
    stands: first,
    example: 'fewest balusters of 1 1/2 in across 72 in with gaps under 4 in',
  },
  {
    say: 'even gap for … of … across …',
    slots: [
      slot('count', 'how many, with their name: 13 balusters'),
      slot('length', 'how wide one of them is'),
      slot('length', 'the clear opening that they fill'),
    ],
    stands: first,
    example: 'even gap for 13 balusters of 1 1/2 in across 72 in',
  },
  {
    say: '… every … along …',
    slots: [
      slot('noun', 'what is set out: joists, posts'),
      slot('length', 'the spacing from one to the next'),
      slot('length', 'the run along which they stand, one at both ends'),
    ],
    stands: { place: 'after noun' },
    example: 'joists every 16 in along 12 ft',
  },
  {
    say: '… every … around …',
    slots: [
      slot('noun', 'what is set out: posts, lights'),
      slot('length', 'the spacing from one to the next'),
      slot('length', 'the whole way around, back to the first'),
    ],
    stands: { place: 'after noun' },
    example: 'posts every 8 ft around 64 ft',
  },
  {
    say: '… pieces of … from …',
    slots: [
      slot('count', 'how many pieces'),
      slot('length', 'how long each piece is'),
      slot('length', 'the stock they are cut from: 16 ft boards'),
    ],
    stands: between,
    example: '5 pieces of 9 ft from 16 ft boards',
  },
  {
    say: 'diagonal of … and …',
    slots: [slot('length', 'one side'), slot('length', 'the side square to it')],
    stands: first,
    example: 'diagonal of 3 ft and 4 ft',
  },
  {
    say: 'circle area for … diameter',
    slots: [slot('length', 'straight across the circle, then the word diameter or radius')],
    stands: first,
    example: 'circle area for 12 in diameter',
  },
  {
    say: 'circumference for … diameter',
    slots: [slot('length', 'straight across the circle, then the word diameter or radius')],
    stands: first,
    example: 'circumference for 12 in diameter',
  },
  {
    say: 'triangle area for sides …, … and …',
    slots: [
      slot('length', 'the first side'),
      slot('length', 'the second side'),
      slot('length', 'the third side'),
    ],
    stands: first,
    example: 'triangle area for sides 3 ft, 4 ft and 5 ft',
  },
  {
    say: 'square root of …',
    slots: [slot('anything', 'an area or a number')],
    stands: first,
    example: 'square root of 16 sq ft',
  },
  {
    say: 'what share … is of …',
    slots: [slot('anything', 'the smaller amount'), slot('like', 'the whole that it is part of')],
    stands: first,
    example: 'what share $42 is of $60',
  },
  {
    say: 'total cost of …',
    slots: [slot('part', 'a part of the job, or every part')],
    stands: first,
    example: null,
    like: 'total cost of every part',
  },
  {
    say: 'total of … in …',
    slots: [
      slot('cost kind', 'material, labour, equipment, subcontract or fee; or a column of a table'),
      slot('part', 'a part of the job, every part, or the table'),
    ],
    stands: first,
    example: null,
    like: 'total of material in every part',
  },
  {
    say: 'total of …, … and …',
    slots: [
      slot('anything', 'the first amount to add up'),
      slot('like', 'another amount that measures the same'),
      slot('like', 'the last one'),
    ],
    stands: first,
    example: 'total of $100, $60 and $40',
  },
  {
    say: 'average of … and …',
    slots: [slot('anything', 'the first amount'), slot('like', 'another that measures the same')],
    stands: first,
    example: 'average of 12 ft and 14 ft',
  },
  {
    say: 'the greater of … and …',
    slots: [slot('anything', 'one amount'), slot('like', 'another that measures the same')],
    stands: first,
    example: 'the greater of 4 in and 5 in',
  },
  {
    say: 'the lesser of … and …',
    slots: [slot('anything', 'one amount'), slot('like', 'another that measures the same')],
    stands: first,
    example: 'the lesser of 4 in and 5 in',
  },
  {
    say: 'read … off … for …',
    slots: [
      slot('column', 'the column whose figure is wanted'),
      slot('table', 'the table'),
      slot('row condition', 'a column and what must stand in it; more after commas'),
    ],
    stands: first,
    example: null,
    like: 'read span off joist spans for species hem-fir, size 2x8',
  },
  {
    say: 'how many …',
    slots: [slot('table', 'a table: its rows are counted')],
    stands: first,
    example: null,
    like: 'how many slab bays',
  },
  {
    say: 'half of …',
    slots: [slot('anything', 'what is halved')],
    stands: first,
    example: 'half of 9 ft',
  },
  {
    say: 'in bags of …',
    slots: [slot('pack', 'what one bag holds or yields; whole bags are counted')],
    stands: { place: 'after', left: ['volume'] },
    example: '16 cubic feet in bags of 0.45 cubic feet',
  },
  {
    say: 'in boxes of …',
    slots: [slot('pack', 'what one box holds; whole boxes are counted')],
    stands: { place: 'after', left: ['count', 'area'] },
    example: '1,260 screws in boxes of 350 screws',
  },
  {
    say: 'in boards of …',
    slots: [slot('pack', 'how long one board is; joints are allowed, whole boards are counted')],
    stands: { place: 'after', left: ['length'] },
    example: '100 ft in boards of 16 ft',
  },
  {
    say: 'rounded up to the next …',
    slots: [slot('like', 'the step: one whole unit or a part of one')],
    stands: { place: 'after', left: ['length', 'area', 'volume', 'money'] },
    example: '0.6 cubic yards rounded up to the next 1/4 cubic yard',
  },
  {
    say: 'rounded down to the next …',
    slots: [slot('like', 'the step: one whole unit or a part of one')],
    stands: { place: 'after', left: [] },
    example: '10 ft 5 in rounded down to the next 1 ft',
  },
  {
    say: 'rounded to the nearest …',
    slots: [slot('like', 'the step: a cent, an inch, a part of one')],
    stands: { place: 'after', left: ['length', 'money'] },
    example: '10.8 ft rounded to the nearest 1/16 in',
  },
  {
    say: 'rounded up',
    slots: [],
    stands: { place: 'after', left: ['count', 'number'] },
    example: '39.1 bags rounded up',
  },
  {
    say: 'plus …',
    slots: [slot('like', 'what is added, or a share of what stands before it')],
    stands: { place: 'after', left: ['length', 'area', 'volume', 'count', 'number', 'money'] },
    example: '50 boards plus 10% waste, rounded up',
    plain: true,
  },
  {
    say: 'marked up …',
    slots: [slot('share', 'a share of the cost that is put on top')],
    stands: { place: 'after', left: ['money'] },
    example: '$1,000 marked up 20%',
  },
  {
    say: 'for a … margin',
    slots: [slot('share', 'a share of the price that is left over')],
    stands: { place: 'after', left: ['money'] },
    example: '$1,000 for a 20% margin',
  },
  {
    say: 'at …',
    slots: [slot('rate', 'what one costs, how much an hour does, or how much there is in each')],
    stands: { place: 'after', left: ['length', 'area', 'volume', 'count'] },
    example: '40 bags at $6.48 per bag',
  },
  {
    say: 'not less than …',
    slots: [slot('like', 'the least that it may be')],
    stands: { place: 'after', left: ['length', 'count', 'money'] },
    example: '4 in not less than 5 in',
  },
  {
    say: 'not more than …',
    slots: [slot('like', 'the most that it may be')],
    stands: { place: 'after', left: [] },
    example: '6 in not more than 5 in',
  },
  {
    say: 'is at least …',
    slots: [slot('like', 'the least that holds')],
    stands: { place: 'after', left: ['length', 'area', 'volume', 'count', 'number'] },
    example: '4 in is at least 3 1/2 in',
  },
  {
    say: 'is at most …',
    slots: [slot('like', 'the most that holds')],
    stands: { place: 'after', left: ['length'] },
    example: '7 1/2 in is at most 7 3/4 in',
  },
  {
    say: 'where …, otherwise …',
    slots: [
      slot('condition', 'when this holds: thickness is less than 4 in'),
      slot('like', 'what it is else'),
    ],
    stands: { place: 'after', left: ['length', 'count', 'money'] },
    example: '6 in where 3 in is less than 4 in, otherwise 4 in',
  },
];
