// Where names and amounts stand in a formula that was read, for links, ties and rings.
import type { Spot } from '../words/spot.ts';
import type { CellId, Formula } from '../language/tree.ts';

export type Stretch =
  | {
      readonly kind: 'name';
      readonly text: string;
      readonly cell: CellId;
      readonly ringed: boolean;
    }
  | { readonly kind: 'amount' | 'plain'; readonly text: string; readonly ringed: boolean };

/** A formula longer than this is shown as it stands: nobody reads ties under so many words. */
const LONGEST_TIED = 5_000;

/** The formula's text cut where a name, an amount or a ringed spot begins and ends; joined it is the text again. */
export function stretches(text: string, tree: Formula, rings: readonly Spot[]): readonly Stretch[] {
  if (text.length > LONGEST_TIED) return [{ kind: 'plain', text, ringed: false }];
  const marks = [...marksIn(tree)]
    .filter((mark) => mark.spot.from >= 0 && mark.spot.to <= text.length)
    .sort((a, b) => a.spot.from - b.spot.from);
  const ends = [...marks.map(({ spot }) => spot), ...rings].flatMap(({ from, to }) => [from, to]);
  const cuts = [...new Set([0, text.length, ...ends])]
    .filter((cut) => cut >= 0 && cut <= text.length)
    .sort((a, b) => a - b);
  const found: Stretch[] = [];
  let next = 0;
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [from = 0, to = 0] = cuts.slice(i, i + 2);
    const piece = text.slice(from, to);
    const ringed = rings.some((ring) => ring.from < to && from < ring.to);
    while ((marks[next]?.spot.to ?? Infinity) <= from) next++;
    const mark = marks[next];
    const within = mark && mark.spot.from <= from && to <= mark.spot.to ? mark : null;
    if (within && within.cell !== null) {
      found.push({ kind: 'name', text: piece, cell: within.cell, ringed });
    } else found.push({ kind: within ? 'amount' : 'plain', text: piece, ringed });
  }
  return found;
}

/** Stretches that one ring goes around stand together, others alone. */
export function byRing(all: readonly Stretch[]): readonly (readonly Stretch[])[] {
  const groups: Stretch[][] = [];
  for (const one of all) {
    const last = groups.at(-1);
    if (last && one.ringed && last[0]?.ringed) last.push(one);
    else groups.push([one]);
  }
  return groups;
}

interface Marked {
  readonly spot: Spot;
  readonly cell: CellId | null;
}

/** Names and amounts anywhere in the tree; a node holds others in its fields and lists. */
function marksIn(tree: Formula): readonly Marked[] {
  const found: Marked[] = [];
  const left: unknown[] = [tree];
  for (let node = left.pop(); node !== undefined; node = left.pop()) {
    if (Array.isArray(node)) left.push(...(node as unknown[]));
    else if (isNode(node)) {
      if (node.kind === 'name') found.push({ spot: node.spot, cell: node.cell });
      else if (node.kind === 'amount') found.push({ spot: node.spot, cell: null });
      else left.push(...Object.values(node).filter((inner) => typeof inner === 'object' && inner));
    }
  }
  return found;
}

/** A node of the tree, or a pair such as a branch that holds nodes; forms and measures hold none. */
function isNode(value: unknown): value is Formula {
  return typeof value === 'object' && value !== null && !('measure' in value) && !('over' in value);
}

/** Is it one written amount, perhaps with a sign or in brackets? */
export function isPlainAmount(tree: Formula): boolean {
  let inner = tree;
  while (inner.kind === 'bracket' || inner.kind === 'negative') inner = inner.of;
  return inner.kind === 'amount' || inner.kind === 'yes-no';
}
