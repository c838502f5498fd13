// What is being written on the page, what happens on it, and what is told of it.
import type { CellId } from '../language/tree.ts';
import type { RowPlace } from './row-places.ts';

/** What is being written: one thing at a time on the whole page. */
export type Writing =
  /** `typed` is what opened the line, in place of what stands there. */
  | {
      readonly kind: 'formula' | 'by-hand' | 'name';
      readonly cell: CellId;
      readonly typed?: string;
    }
  | { readonly kind: 'remark'; readonly cell: CellId; readonly word: string }
  | { readonly kind: 'new-cell'; readonly part: string; readonly after: CellId | null }
  | { readonly kind: 'new-table'; readonly part: string; readonly after: CellId | null }
  /** A table in a cell that holds nothing yet; `typed` is what was pasted into its line. */
  | { readonly kind: 'table-here'; readonly cell: CellId; readonly typed?: string }
  | { readonly kind: 'prose'; readonly part: string; readonly place: number }
  | { readonly kind: 'new-prose'; readonly part: string; readonly after: CellId | null }
  | { readonly kind: 'part-name'; readonly part: string }
  | { readonly kind: 'title' };

/** What happened, for those who draw it. */
export type Happening =
  /** A notebook was opened: everything is new. */
  | { readonly kind: 'opened' }
  /** The notebook changed; `ran` are the cells worked anew. */
  | { readonly kind: 'changed'; readonly ran: readonly CellId[] }
  | { readonly kind: 'chosen' }
  /** A cell was asked for: it is to be brought into view, and given the keyboard unless that is elsewhere. */
  | { readonly kind: 'bring'; readonly cell: CellId; readonly keyboard: 'goes' | 'stays' }
  /** A place in a table was asked for: as above, or to be written at once. Row -1 is its header. */
  | {
      readonly kind: 'bring-row';
      readonly at: RowPlace;
      readonly keyboard: 'goes' | 'stays' | 'writes';
    }
  /** A part was asked for: its heading is to be brought into view. */
  | { readonly kind: 'bring-part'; readonly part: string }
  | { readonly kind: 'writing' }
  | { readonly kind: 'tape' }
  /** What is watched, or laid beside the notebook, is otherwise. */
  | { readonly kind: 'watched' }
  | { readonly kind: 'told' }
  /** Words come from the guide into the line that is being written. */
  | { readonly kind: 'put'; readonly words: string }
  /** The keyboard went from the guide to something else: a line that waited for its words waits no longer. */
  | { readonly kind: 'guide-left' };

export type Listener = (happening: Happening) => void;

/** Something to tell the person, calmly. */
export interface Notice {
  readonly text: string;
  /** `plain` goes when the next thing happens; `stays` until it is put away. */
  readonly lasts: 'plain' | 'stays';
  /** What can be done about it, with a button; the notice goes with it. */
  readonly act?: { readonly say: string; readonly go: () => void };
}

/** `Move Waste` as it is told afterwards: `Moved Waste`. */
export function asDone(say: string): string {
  return say.replace(/^(Move|Duplicate|Rename|Add|Insert)\b/, (word) =>
    word.endsWith('e') ? `${word}d` : `${word}ed`,
  );
}
