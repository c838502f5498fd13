// Circles in a graph of slots: which slots need one another, and the shortest way around.
// Both walks keep their own stack, so that a chain of any length is safe.
import type { Slot } from './graph.ts';

export interface Groups {
  /** A slot that is in no circle with another. */
  readonly one: (slot: Slot) => void;
  /** Slots that all need one another. */
  readonly many: (slots: readonly Slot[]) => void;
}

/**
 * The groups of slots that need one another, among all that `roots` lead to; a group is told after
 * every group that it needs (Tarjan's algorithm). `admits` keeps the walk from going further than it must.
 */
export function tellGroups(
  roots: Iterable<Slot>,
  needsOf: (slot: Slot) => readonly Slot[],
  admits: (slot: Slot) => boolean,
  groups: Groups,
): void {
  const met = new Map<Slot, number>();
  const low = new Map<Slot, number>();
  const open: Slot[] = [];
  const isOpen = new Set<Slot>();
  const path: Slot[] = [];
  const at: number[] = [];

  const enter = (slot: Slot): void => {
    const turn = met.size;
    met.set(slot, turn);
    low.set(slot, turn);
    open.push(slot);
    isOpen.add(slot);
    path.push(slot);
    at.push(0);
  };
  const lower = (slot: Slot, turn: number): void => {
    if (turn < (low.get(slot) ?? 0)) low.set(slot, turn);
  };

  for (const root of roots) {
    if (met.has(root)) continue;
    enter(root);
    while (path.length > 0) {
      const top = path.length - 1;
      const slot = path[top] ?? 0;
      const needs = needsOf(slot);
      const next = at[top] ?? 0;
      if (next < needs.length) {
        at[top] = next + 1;
        const need = needs[next] ?? 0;
        const turn = met.get(need);
        if (turn === undefined) {
          if (admits(need)) enter(need);
        } else if (isOpen.has(need)) lower(slot, turn);
        continue;
      }
      path.pop();
      at.pop();
      const lowest = low.get(slot) ?? 0;
      const above = path.at(-1);
      if (above !== undefined) lower(above, lowest);
      if (lowest !== met.get(slot)) continue;
      close(slot, open, isOpen, groups);
    }
  }
}

function close(slot: Slot, open: Slot[], isOpen: Set<Slot>, groups: Groups): void {
  if (open.at(-1) === slot) {
    open.pop();
    isOpen.delete(slot);
    groups.one(slot);
    return;
  }
  const members = open.splice(open.indexOf(slot));
  for (const member of members) isOpen.delete(member);
  groups.many(members);
}

/**
 * The shortest way from one of `starts` to `goal`, both included, each slot needing the next;
 * of equally short ones the one that is mentioned first. Null: there is none, or it was not found
 * among the `most` slots that are looked at.
 */
export function shortestWay(
  starts: readonly Slot[],
  goal: Slot,
  needsOf: (slot: Slot) => readonly Slot[],
  admits: (slot: Slot) => boolean,
  most = Infinity,
): readonly Slot[] | null {
  const from = new Map<Slot, Slot | null>();
  const queue: Slot[] = [];
  for (const start of starts) {
    if (from.has(start) || !admits(start)) continue;
    from.set(start, null);
    queue.push(start);
  }
  for (let i = 0; i < queue.length; i++) {
    const slot = queue[i] ?? 0;
    if (slot === goal) return wayTo(slot, from);
    for (const need of needsOf(slot)) {
      if (from.has(need) || !admits(need)) continue;
      from.set(need, slot);
      if (need === goal) return wayTo(goal, from);
      if (queue.push(need) > most) return null;
    }
  }
  return null;
}

function wayTo(goal: Slot, from: ReadonlyMap<Slot, Slot | null>): readonly Slot[] {
  const way: Slot[] = [];
  for (let slot: Slot | null = goal; slot !== null; slot = from.get(slot) ?? null) way.push(slot);
  return way.reverse();
}
