// The phases of a write, at each of which the browser is killed, and what the page and the one who kills it say to each other.

export const PHASES = [
  /** Nothing was asked of the database yet. */
  'before',
  /** The transaction stands, and nothing is written in it. */
  'begun',
  /** The first of its values is on its way, the second is not. */
  'one-put',
  /** Two are; whether more follow hangs on what is written. */
  'two-put',
  /** The browser said that all of it is written; the page did not say so yet. */
  'written',
  /** The page said so, and goes on. */
  'acknowledged',
  /** The same of a whole job that is brought in: from a file, of a snapshot taken up again, or of a duplicate. */
  'bring-before',
  'bring-begun',
  'bring-one-put',
  /** Notebook and entry are on their way and some of its snapshots. */
  'bring-more-put',
  'bring-written',
  'bring-acknowledged',
] as const;

export type Phase = (typeof PHASES)[number];

/** What the page says is kept. */
export type Acknowledged =
  | {
      readonly kind: 'text';
      readonly id: string;
      readonly revision: number;
      readonly count: number;
      readonly hash: string;
    }
  | {
      readonly kind: 'snapshot';
      readonly id: string;
      readonly seal: string;
      readonly hash: string;
    }
  | Whole;

/** A whole job that comes or goes in one go; told before, too, so that half of one is known for what it is. */
export type Whole =
  | {
      readonly kind: 'job';
      readonly id: string;
      readonly hash: string;
      readonly seals: readonly string[];
    }
  | { readonly kind: 'removed'; readonly id: string };

/** What is found on reopening. */
export interface Found {
  readonly id: string;
  readonly kind: string;
  readonly revision: number;
  /** As the list of notebooks has it. */
  readonly listed: number;
  readonly hash: string;
  /** The number of the last edit as the notebook, read anew, has it; null where it does not parse. */
  readonly count: number | null;
  readonly snapshots: readonly {
    readonly seal: string;
    readonly hash: string;
    readonly right: boolean;
  }[];
  readonly unreadable: readonly string[];
}

/** In the address of the page. */
export interface Orders {
  readonly id: string;
  /** How many acknowledgements come before the page may be stopped; below nought it only looks. */
  readonly after: number;
  /** Where it stops itself and waits for its end; null: it is killed whatever it is doing. */
  readonly at: Phase | null;
  readonly way: Way;
}

/** `right`, or one of the ways to do it wrong, so that finding what is lost can be tried out. */
export type Way =
  | 'right'
  /** It acknowledges before anything is written. */
  | 'too-early'
  /** It brings a whole job in as two writes. */
  | 'by-halves';
