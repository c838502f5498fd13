// A section as it was read, before its part has a key and its cells have ids.
import type { Spot } from '../words/spot.ts';
import type { Block, Cell, Settings } from './document.ts';
import type { NameProblem } from './names.ts';

export type DraftCell = Omit<Cell, 'id' | 'part'>;

export type DraftBlock =
  | { readonly kind: 'cell'; readonly cell: DraftCell }
  | Exclude<Block, { kind: 'cell' }>;

export interface DraftFinding {
  readonly code: string;
  readonly message: string;
  readonly cell: DraftCell | null;
  readonly spot: Spot;
}

/** A line `Name: text` whose name can't be one, so that it stays prose; pointed out where the text is a formula. */
export interface PassedOver {
  readonly name: string;
  readonly problem: NameProblem;
  readonly formula: string;
  readonly spot: Spot;
}

/** A section before its part has a key and its cells have ids. */
export interface DraftSection {
  readonly name: string;
  readonly nameSpot: Spot;
  readonly length: number;
  readonly blocks: readonly DraftBlock[];
  readonly cells: readonly DraftCell[];
  readonly findings: readonly DraftFinding[];
  readonly passedOver: readonly PassedOver[];
  /** What stands above the first part; null for a part. */
  readonly front: Front | null;
}

export interface Front {
  readonly title: string;
  readonly titleSpot: Spot | null;
  readonly settings: Settings;
}
