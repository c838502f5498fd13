// Names near to one that is not known, for "nearest name here". A near name is offered, never taken.
//
// Two names are as far apart as it takes slips to turn one into the other: a letter too many, too few,
// a wrong one, or two that changed places. A name is also near when it says the same words in another
// order, or when every word typed stands in it, perhaps with a slip.

/** The nearest of the candidates, best first, only those that may well have been meant. */
export function nearNames(word: string, candidates: Iterable<string>, most = 3): string[] {
  const typed = folded(word);
  if (typed === '') return [];
  const near: { readonly name: string; readonly far: number }[] = [];
  for (const name of new Set(candidates)) {
    const far = distance(typed, folded(name));
    if (far !== null) near.push({ name, far });
  }
  near.sort(
    (a, b) =>
      a.far - b.far ||
      Math.abs(a.name.length - word.length) - Math.abs(b.name.length - word.length) ||
      (a.name < b.name ? -1 : 1),
  );
  return near.slice(0, most).map((n) => n.name);
}

/** Slips that are let pass in a text of this length: one in a short word, a quarter of a long one. */
function slipsAllowed(length: number): number {
  if (length <= 2) return 0;
  return Math.max(1, Math.floor(length / 4));
}

/** How far a name is from what was typed; null for too far. */
function distance(typed: string, name: string): number | null {
  if (name === '') return null;
  const most = slipsAllowed(typed.length);
  const far = slips(typed, name, most);
  if (far <= most) return far;
  return distanceByWords(typed.split(' '), name.split(' '), most);
}

/** Each word typed has its own near word in the name; words left over push it further off. */
function distanceByWords(
  typed: readonly string[],
  name: readonly string[],
  most: number,
): number | null {
  const left = [...name];
  let far = most;
  for (const word of typed) {
    const allowed = slipsAllowed(word.length);
    let best = -1;
    let least = allowed + 1;
    for (const [place, other] of left.entries()) {
      const here = slips(word, other, allowed);
      if (here < least) {
        least = here;
        best = place;
      }
    }
    if (best < 0) return null;
    left.splice(best, 1);
    far += least;
  }
  return far + left.length / 2;
}

/** Slips between two texts, or more than `most` as soon as that is certain. */
function slips(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: readonly number[] = [];
  let row: readonly number[] = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min(
        (row[j] ?? 0) + 1,
        (next[j - 1] ?? 0) + 1,
        (row[j - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) least = Math.min(least, (before[j - 2] ?? 0) + 1);
      next.push(least);
    }
    if (Math.min(...next) > most) return most + 1;
    before = row;
    row = next;
  }
  return row[b.length] ?? most + 1;
}

function folded(name: string): string {
  return name.trim().toLowerCase().replaceAll('’', "'").replaceAll(/\s+/g, ' ');
}
