// The arithmetic of a checked formula: what the engine compiles. Units are settled; only numbers are left.
// Every conversion stands in the plan as an exact scaling, so the engine needs to know no unit.
import type { Fraction } from '../quantity/measure.ts';
import type { Holds } from '../quantity/form.ts';
import type { CellId, Formula, Relation, Way } from './tree.ts';

export type Plan =
  | { readonly op: 'constant'; readonly value: Fraction }
  | { readonly op: 'pi' }
  /** A `?`: not yet known. */
  | { readonly op: 'unknown' }
  | { readonly op: 'text'; readonly value: string }
  | { readonly op: 'yes-no'; readonly value: boolean }
  | { readonly op: 'cell'; readonly cell: CellId }
  | {
      readonly op: 'add' | 'subtract' | 'multiply' | 'divide';
      readonly left: Plan;
      readonly right: Plan;
    }
  /** of × by, exactly: times the numerator, then divided by the denominator. */
  | { readonly op: 'scale'; readonly by: Fraction; readonly of: Plan }
  | { readonly op: 'power'; readonly of: Plan; readonly power: 2 | 3 }
  /** Square root; of a negative number it is a fault `root-of-negative`. */
  | { readonly op: 'root'; readonly of: Plan }
  /** What has to be more than 0 to go on; where it isn't, that is a fault of this code. */
  | { readonly op: 'some'; readonly of: Plan; readonly code: 'nothing-left' | 'piece-too-long' }
  /** To a whole multiple of `step` (null: of 1), on the snapped quotient. Half away from zero. */
  | {
      readonly op: 'round';
      readonly way: Way;
      readonly of: Plan;
      readonly step: Plan | null;
    }
  /** Numbers in one scale, yes/no or text. Compared on snapped values. */
  | {
      readonly op: 'compare';
      readonly relation: Relation;
      readonly left: Plan;
      readonly right: Plan;
    }
  | { readonly op: 'and' | 'or'; readonly left: Plan; readonly right: Plan }
  | { readonly op: 'not'; readonly of: Plan }
  /** The first branch whose condition holds. Only the branch that is taken has to have a value. */
  | {
      readonly op: 'choose';
      readonly branches: readonly { readonly when: Plan; readonly then: Plan }[];
      readonly otherwise: Plan;
    }
  | { readonly op: 'greatest' | 'least'; readonly items: readonly Plan[] }
  /** Items not yet known (or at fault, for a recap) are left out, and the outcome says how many. */
  | { readonly op: 'total'; readonly items: readonly Plan[] }
  | { readonly op: 'average'; readonly items: readonly Plan[] }
  /** A figure of a whole column: worked once for all that ask for it, until a cell of the column changes. */
  | { readonly op: 'column'; readonly column: CellId; readonly of: Plan }
  /** The first row that meets all conditions; none is a fault that names the condition. */
  | {
      readonly op: 'look-up';
      readonly wanted: readonly Wanted[];
      readonly rows: readonly LookUpRow[];
    };

/** One condition of a look-up. */
export interface Wanted {
  /** The column that is looked at. */
  readonly column: CellId;
  readonly relation: Relation;
  readonly value: Plan;
}

/** A row of the table: its cells in the order of the conditions, and what it answers. */
export interface LookUpRow {
  readonly cells: readonly Plan[];
  readonly answer: Plan;
}

/** A formula node with what it measures and how it is worked; `parts` are its operands in reading order. */
export interface Checked {
  readonly formula: Formula;
  readonly holds: Holds;
  readonly plan: Plan;
  readonly parts: readonly Checked[];
  /** What the checker decided in the reader's stead, for the reading: e.g. `2 is read as 2 boards`. */
  readonly note: string | null;
  /**
   * How a share or a rate was taken, for the working:
   * `share-of`: left ± a share of left; `share-added`: shares added; `from-whole`: 1 − shares;
   * `at-multiplied` / `at-divided`; null elsewhere.
   */
  readonly manner:
    | 'share-of'
    | 'share-added'
    | 'from-whole'
    | 'at-multiplied'
    | 'at-divided'
    | null;
}
