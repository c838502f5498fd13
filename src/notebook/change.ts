// Changes as splices of the text: made, taken back, and put in order.
import type { Change, Splice } from './document.ts';

/** The text after the change. Splices stand in order and don't overlap. */
export function changed(text: string, change: Change): string {
  let out = '';
  let at = 0;
  for (const { from, to, insert } of change.splices) {
    if (from < at || to < from || to > text.length) {
      throw new Error(`splice ${from}-${to} out of order or outside a text of ${text.length}`);
    }
    out += text.slice(at, from) + insert;
    at = to;
  }
  return out + text.slice(at);
}

/** The change that takes this one back, to be made on the text after it. */
export function inverse(text: string, change: Change): Change {
  let shift = 0;
  const splices = change.splices.map(({ from, to, insert }): Splice => {
    const start = from + shift;
    shift += insert.length - (to - from);
    return { from: start, to: start + insert.length, insert: text.slice(from, to) };
  });
  return { say: change.say, splices };
}

/** Splices in the order of the text. */
export function inOrder(splices: readonly Splice[]): readonly Splice[] {
  return [...splices].sort((a, b) => a.from - b.from || a.to - b.to);
}

/** The one stretch in which two texts differ, never through the middle of a sign. */
export function difference(before: string, after: string): Splice {
  const most = Math.min(before.length, after.length);
  let from = 0;
  while (from < most && before[from] === after[from]) from++;
  let end = 0;
  while (end < most - from && before.at(-1 - end) === after.at(-1 - end)) end++;
  if (/[\uD800-\uDBFF]/.test(before[from - 1] ?? '')) from--;
  if (/[\uDC00-\uDFFF]/.test(before[before.length - end] ?? '')) end--;
  return { from, to: before.length - end, insert: after.slice(from, after.length - end) };
}
