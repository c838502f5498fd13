// Where the marks of the rod stand. The whole job is always on it: in the middle every mark is level with
// its row on the page; at both ends the rod is folded, and all that is out of sight lies close together there.

/** One mark: a cell, a cost line or a part, at the height of its row in the whole page. */
export interface RodMark {
  readonly kind: 'cell' | 'cost' | 'part';
  /** The cell's id; for a part its place among the parts. */
  readonly id: number;
  /** Pixels from the top of the page's content. */
  readonly y: number;
}

export interface RodView {
  /** Height of the rod, which is the height of what is in view. */
  readonly height: number;
  readonly scroll: number;
  /** Height of the whole page's content. */
  readonly total: number;
}

/** The folded ends are no longer than this. */
const FOLD = 84;

export function foldOf({ height }: RodView): number {
  return Math.min(FOLD, height / 7);
}

/** From the page to the rod. */
export function onRod(y: number, view: RodView): number {
  const fold = foldOf(view);
  const { height, scroll, total } = view;
  const level = y - scroll;
  if (level < fold) return (y / (scroll + fold)) * fold;
  const low = height - fold;
  if (level <= low) return level;
  const hidden = Math.max(total - scroll - low, fold);
  return low + ((level - low) / hidden) * fold;
}

/** From the rod back to the page. */
export function onPage(at: number, view: RodView): number {
  const fold = foldOf(view);
  const { height, scroll, total } = view;
  if (at < fold) return (at / fold) * (scroll + fold);
  const low = height - fold;
  if (at <= low) return scroll + at;
  const hidden = Math.max(total - scroll - low, fold);
  return scroll + low + ((at - low) / fold) * hidden;
}

/** A label beside the rod: where it wants to stand and how high it is. */
export interface Labelled<T> {
  readonly what: T;
  readonly at: number;
}

/** Labels that do not cover one another, as near as can be to where they belong; the last ones go where room ends. */
export function spread<T>(
  labels: readonly Labelled<T>[],
  size: number,
  height: number,
): readonly (Labelled<T> & { readonly shown: number })[] {
  const sorted = [...labels].sort((a, b) => a.at - b.at);
  const places: number[] = [];
  let free = size / 2;
  for (const { at } of sorted) {
    const place = Math.max(at, free);
    places.push(place);
    free = place + size;
  }
  let room = height - size / 2;
  for (let i = places.length - 1; i >= 0; i--) {
    places[i] = Math.min(places[i] ?? room, room);
    room = (places[i] ?? room) - size;
  }
  return sorted.map((label, i) => ({ ...label, shown: places[i] ?? label.at }));
}
