// The formula tree: what a sentence says, before anything is checked or worked.
// Every node knows its spot in the typed text. A `hole` stands where nothing could be read.
import type { Spot } from '../words/spot.ts';
import type { Form, Holds } from '../quantity/form.ts';
import type { Fraction } from '../quantity/measure.ts';

export type CellId = number;

interface At {
  readonly spot: Spot;
}

/** A written amount: number with its unit, noun, money sign, percent sign or rate. `value` null is `?`, not yet known. */
export interface Amount extends At {
  readonly kind: 'amount';
  /** The number as held in `holds.measure` (12 ft is held as 144 with the scale of an inch); shares as 0.1. */
  readonly value: Fraction | null;
  readonly holds: Holds;
  /** A bare written number: it may take a unit from its neighbour. */
  readonly bare: boolean;
  /** The word after a percent (`10% waste`), for the reader. */
  readonly label: string | null;
  /** The amount in tidy words: `12 ft 6 1/2 in`, `$6.48 per bag`. */
  readonly say: string;
}

/** A text in quotes, or unquoted where choices are known. */
export interface Words extends At {
  readonly kind: 'words';
  readonly text: string;
  /** Written without quotes: one of the choices known here. */
  readonly chosen?: true;
}

/** A size with dimensions of its own, as its table writes it: `2x8`, `#4`. A piece of text, told from others by how it is written. */
export interface Size extends At {
  readonly kind: 'size';
  readonly text: string;
}

export interface YesNo extends At {
  readonly kind: 'yes-no';
  readonly value: boolean;
}

/** A cell, by name. `say` is how it has to be written here: with its part's name before it where that is needed. */
export interface Name extends At {
  readonly kind: 'name';
  readonly cell: CellId;
  readonly say: string;
}

export type Arithmetic = 'plus' | 'minus' | 'times' | 'by' | 'at' | 'over';

/**
 * Two things and an operator. `with 10% waste` is plus; `less` is minus; `divided by`, `÷`, `/` and `per` are over; `x` is by.
 * `closed`: left was closed by a comma or a clause before the operator.
 */
export interface Binary extends At {
  readonly kind: 'binary';
  readonly op: Arithmetic;
  readonly opSpot: Spot;
  readonly left: Formula;
  readonly right: Formula;
}

/** A sign. */
export interface Negative extends At {
  readonly kind: 'negative';
  readonly of: Formula;
}

export type Relation = 'is' | 'is-not' | 'more' | 'less' | 'at-least' | 'at-most';

export interface Comparison extends At {
  readonly kind: 'comparison';
  readonly relation: Relation;
  readonly opSpot: Spot;
  readonly left: Formula;
  readonly right: Formula;
}

export interface Between extends At {
  readonly kind: 'between';
  readonly opSpot: Spot;
  readonly of: Formula;
  readonly low: Formula;
  readonly high: Formula;
}

export interface Logic extends At {
  readonly kind: 'and' | 'or';
  readonly left: Formula;
  readonly right: Formula;
}

export interface Not extends At {
  readonly kind: 'not';
  readonly of: Formula;
}

/** `A where C, B where D, otherwise E`. */
export interface Condition extends At {
  readonly kind: 'condition';
  readonly branches: readonly { readonly value: Formula; readonly when: Formula }[];
  readonly otherwise: Formula;
}

/** `in cubic yards`. `loose` yards on an area or volume become square or cubic yards in checking. */
export interface InUnits extends At {
  readonly kind: 'in-units';
  readonly of: Formula;
  readonly form: Form;
  readonly formSpot: Spot;
}

/** `in boxes of 350 screws`, `in 16 ft boards`, `in bags of bag yield`: whole packs, rounded up. */
export interface InPacks extends At {
  readonly kind: 'in-packs';
  readonly of: Formula;
  readonly noun: string;
  readonly nounSpot: Spot;
  /** What one pack holds: an amount, or a rate per that noun. */
  readonly holdsEach: Formula;
}

/** `, as boards`: counts a thing as another noun on purpose. */
export interface AsNoun extends At {
  readonly kind: 'as-noun';
  readonly of: Formula;
  readonly noun: string;
  readonly nounSpot: Spot;
}

export type Way = 'up' | 'down' | 'nearest';

/** `rounded up`, `rounded down to the next 1/4 yd`, `rounded to the nearest cent`. `step` null: to a whole number. */
export interface Rounded extends At {
  readonly kind: 'rounded';
  readonly of: Formula;
  readonly way: Way;
  readonly step: Formula | null;
  readonly opSpot: Spot;
}

/** `marked up 20%`. */
export interface MarkedUp extends At {
  readonly kind: 'marked-up';
  readonly of: Formula;
  readonly share: Formula;
}

/** `for a 20% margin`, `for 10% overhead and 15% profit`, `for 11% fee`: each a share of the answer. */
export interface ForShares extends At {
  readonly kind: 'for-shares';
  readonly of: Formula;
  readonly shares: readonly { readonly share: Formula; readonly label: string | null }[];
}

/** `not less than 5 in`, `not more than …`. */
export interface Limited extends At {
  readonly kind: 'limited';
  readonly of: Formula;
  readonly side: 'not-less' | 'not-more';
  readonly limit: Formula;
  readonly opSpot: Spot;
}

/** `A or B, whichever is greater`, `the lesser of A and B`, `greatest of A, B and C`. */
export interface Pick extends At {
  readonly kind: 'pick';
  readonly which: 'greater' | 'less';
  readonly items: readonly Formula[];
}

/** `total of A, B and C`, `average of A and B`. */
export interface ListOf extends At {
  readonly kind: 'list';
  readonly what: 'total' | 'average';
  readonly items: readonly Formula[];
}

/** `10% of X`, `half of X`, `3/4 of X`, `sales tax on materials`. */
export interface PartOf extends At {
  readonly kind: 'part-of';
  readonly share: Formula;
  readonly of: Formula;
}

/** `what share X is of Y`. */
export interface ShareThatIs extends At {
  readonly kind: 'what-share';
  readonly of: Formula;
  readonly whole: Formula;
}

export interface Power extends At {
  readonly kind: 'power';
  readonly of: Formula;
  readonly power: 2 | 3;
}

export interface SquareRoot extends At {
  readonly kind: 'square-root';
  readonly of: Formula;
}

export interface Pi extends At {
  readonly kind: 'pi';
}

/** `diagonal of A and B`. */
export interface Diagonal extends At {
  readonly kind: 'diagonal';
  readonly a: Formula;
  readonly b: Formula;
}

/** `circle area for 12 in diameter`, `circumference for 6 in radius`. */
export interface Circle extends At {
  readonly kind: 'circle';
  readonly what: 'area' | 'circumference';
  readonly across: 'diameter' | 'radius';
  readonly size: Formula;
}

/** `triangle area for sides A, B and C`. */
export interface Triangle extends At {
  readonly kind: 'triangle';
  readonly sides: readonly [Formula, Formula, Formula];
}

/** `5 pieces of 9 ft from 16 ft boards`. */
export interface Pieces extends At {
  readonly kind: 'pieces';
  readonly count: Formula;
  readonly length: Formula;
  readonly stock: Formula;
  readonly noun: string;
  readonly nounSpot: Spot;
}

export type Ends = 'both' | 'one' | 'neither' | 'loop';

/** `joists every 16 in along 12 ft, one end`, `posts every 8 ft around 64 ft`. */
export interface Spaced extends At {
  readonly kind: 'spaced';
  readonly noun: string;
  readonly spacing: Formula;
  readonly along: Formula;
  readonly ends: Ends;
}

/** `fewest balusters of 1 1/2 in across 72 in with gaps under 4 in` (or `at most`). */
export interface Fewest extends At {
  readonly kind: 'fewest';
  readonly noun: string;
  readonly width: Formula;
  readonly across: Formula;
  readonly gap: Formula;
  readonly gapRelation: 'under' | 'at-most';
}

/** `even gap for 13 balusters of 1 1/2 in across 72 in`. */
export interface EvenGap extends At {
  readonly kind: 'even-gap';
  readonly count: Formula;
  readonly width: Formula;
  readonly across: Formula;
}

export type CostKind = 'material' | 'labour' | 'equipment' | 'subcontract' | 'fee';

/** Which cost lines a recap adds: of one kind or all, in one part (by key) or every part. */
export interface RecapScope {
  readonly costKind: CostKind | 'all';
  /** The part's key, or null for every part. */
  readonly part: string | null;
}

/** `total of material in Landing`, `total cost of Landing`, `total of labour in every part`. */
export interface Recap extends At {
  readonly kind: 'recap';
  readonly scope: RecapScope;
  /** The phrase in tidy words. */
  readonly say: string;
  /** The cost lines it adds, in notebook order. */
  readonly lines: readonly CellId[];
}

/** `total of volume in slab bays`, `greatest volume in slab bays`, `average of …`: one figure of a column. */
export interface ColumnOf extends At {
  readonly kind: 'column';
  readonly what: 'total' | 'average' | 'greatest' | 'least';
  readonly table: CellId;
  readonly column: CellId;
  readonly columnSay: string;
  readonly tableSay: string;
  /** Its cells from the first row to the last. */
  readonly cells: readonly CellId[];
}

/** `how many slab bays`: the rows of a table. */
export interface RowCount extends At {
  readonly kind: 'row-count';
  readonly table: CellId;
  readonly tableSay: string;
  readonly rows: number;
  /** What a row is, where the table's name ends in something that is counted. */
  readonly noun: string | null;
}

/** One condition of a look-up: a column at the left, a value at the right. */
export interface LookUpCondition {
  readonly column: CellId;
  readonly columnSay: string;
  readonly columnSpot: Spot;
  readonly cells: readonly CellId[];
  readonly blanks: readonly CellId[];
  readonly relation: Relation;
  readonly value: Formula;
  /** The value is one of the texts that stand in the column, written without quotes. */
  readonly listed: boolean;
}

/** `read size off joist spans for species hem-fir, span at least joist length`: the first row that fits. */
export interface LookUp extends At {
  readonly kind: 'look-up';
  readonly table: CellId;
  readonly column: CellId;
  readonly columnSay: string;
  readonly columnSpot: Spot;
  readonly tableSay: string;
  readonly cells: readonly CellId[];
  readonly conditions: readonly LookUpCondition[];
  /** What to heed where figures of this table are used. */
  readonly caution: string | null;
  /** Asked for in words of its own: `actual width` of the one value there is. */
  readonly asked?: string;
}

/**
 * `22 2x8 x 14 ft`, `12 2x6 boards`, `308 ft of 2x8`: pieces of one size. What is asked of them settles whether they
 * are counted, measured along, or taken by what they are sold by.
 */
export interface Sized extends At {
  readonly kind: 'sized';
  /** Null: one run of that length. */
  readonly count: Formula | null;
  /** Of each piece. */
  readonly length: Formula | null;
  readonly size: Formula;
  /** Figures of the size which, times the length, come to what it is sold by. */
  readonly sold: readonly LookUp[];
  /** The key of the unit it is sold by. */
  readonly unit: string;
  readonly usual: 'sold' | 'run';
}

/**
 * `13 hours, 12 at best, 16 at worst`: a given, never part of a formula. `12 to 16 hours` has no first value,
 * and its plain value is the middle of the two. Every amount is written out, a sign before it or not.
 */
export interface Range extends At {
  readonly kind: 'range';
  readonly first: Amount | Negative | null;
  readonly best: Amount | Negative;
  readonly worst: Amount | Negative;
  /** The plain value in tidy words, for places that take no range. */
  readonly plain: string;
}

/** Something in brackets: kept so that the sentence can show what was typed in doubt. */
export interface Bracket extends At {
  readonly kind: 'bracket';
  readonly of: Formula;
}

/** Nothing could be read here; the problem is in the reading's list. */
export interface Hole extends At {
  readonly kind: 'hole';
}

export type Formula =
  | Amount
  | Words
  | Size
  | YesNo
  | Name
  | Binary
  | Negative
  | Comparison
  | Between
  | Logic
  | Not
  | Condition
  | InUnits
  | InPacks
  | AsNoun
  | Rounded
  | MarkedUp
  | ForShares
  | Limited
  | Pick
  | ListOf
  | PartOf
  | ShareThatIs
  | Power
  | SquareRoot
  | Pi
  | Diagonal
  | Circle
  | Triangle
  | Pieces
  | Spaced
  | Fewest
  | EvenGap
  | Recap
  | ColumnOf
  | RowCount
  | LookUp
  | Sized
  | Range
  | Bracket
  | Hole;
