// Keeps parts and cells who they are through edits of the text: by name first, then by place.
//
// Among the old and the new things of the stretch that was read again:
// 1. same label (a part's name; a cell's part and name) and same source, in order;
// 2. same label, in order;
// 3. same source elsewhere (a cell that was moved);
// 4. the only one left of its name on both sides (a cell that was moved and written anew);
// 5. what is left between the same two neighbours, as many as before: edited in place, one for one;
// 6. a label that stood here before and was taken out (undo brings it back).
// Whatever is still without an identity is new.

export interface Known<T> extends Unknown {
  readonly identity: T;
}

export interface Unknown {
  readonly label: string;
  readonly source: string;
  /** Its name alone, without the part it stands in; null for what can't be moved into another. */
  readonly name: string | null;
}

/** The identity of each new thing, null where it is new. `gone` answers for what was taken out earlier. */
export function matched<T>(
  before: readonly Known<T>[],
  now: readonly Unknown[],
  gone: (label: string) => T | undefined,
): readonly (T | null)[] {
  const taken: number[] = before.map(() => -1);
  const found: number[] = now.map(() => -1);
  const pair = (old: number, fresh: number): void => {
    taken[old] = fresh;
    found[fresh] = old;
  };
  pairBy(before, now, taken, found, (t) => `${t.label}\0${t.source}`, pair);
  pairBy(before, now, taken, found, (t) => t.label, pair);
  pairBy(before, now, taken, found, (t) => t.source, pair);
  pairOnly(before, now, taken, found, pair);
  pairInPlace(taken, found, pair);
  const used = new Set<T>();
  for (const old of found) if (old >= 0) used.add(before[old].identity);
  return found.map((old, index) => {
    if (old >= 0) return before[old].identity;
    const back = gone(now[index].label);
    if (back === undefined || used.has(back)) return null;
    used.add(back);
    return back;
  });
}

function pairBy<T>(
  before: readonly Known<T>[],
  now: readonly Unknown[],
  taken: readonly number[],
  found: readonly number[],
  keyOf: (thing: Unknown) => string,
  pair: (old: number, fresh: number) => void,
): void {
  const waiting = new Map<string, number[]>();
  for (let i = before.length - 1; i >= 0; i--) {
    if (taken[i] >= 0) continue;
    const key = keyOf(before[i]);
    const list = waiting.get(key);
    if (list) list.push(i);
    else waiting.set(key, [i]);
  }
  if (waiting.size === 0) return;
  for (let i = 0; i < now.length; i++) {
    if (found[i] >= 0) continue;
    const old = waiting.get(keyOf(now[i]))?.pop();
    if (old !== undefined) pair(old, i);
  }
}

/** One old and one new thing of a name, both without a partner. */
function pairOnly<T>(
  before: readonly Known<T>[],
  now: readonly Unknown[],
  taken: readonly number[],
  found: readonly number[],
  pair: (old: number, fresh: number) => void,
): void {
  const olds = onlyOnes(before, taken);
  if (olds.size === 0) return;
  for (const [name, fresh] of onlyOnes(now, found)) {
    const old = olds.get(name) ?? -1;
    if (old >= 0 && fresh >= 0) pair(old, fresh);
  }
}

/** Where the unmatched thing of each name stands; -1 where there are several. */
function onlyOnes(things: readonly Unknown[], partner: readonly number[]): Map<string, number> {
  const ones = new Map<string, number>();
  things.forEach(({ name }, place) => {
    if (name === null || partner[place] >= 0) return;
    ones.set(name, ones.has(name) ? -1 : place);
  });
  return ones;
}

/** Runs of unmatched things between matched neighbours, where as many are left as before. */
function pairInPlace(
  taken: readonly number[],
  found: readonly number[],
  pair: (old: number, fresh: number) => void,
): void {
  let start = 0;
  while (start < found.length) {
    if (found[start] >= 0) {
      start++;
      continue;
    }
    let end = start;
    while (end < found.length && found[end] < 0) end++;
    const from = start === 0 ? 0 : found[start - 1] + 1;
    let to = from;
    while (to < taken.length && taken[to] < 0) to++;
    const meets = end === found.length ? to === taken.length : to === found[end];
    if (meets && to - from === end - start) {
      for (let i = 0; i < end - start; i++) pair(from + i, start + i);
    }
    start = end;
  }
}
