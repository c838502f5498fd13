// Changes of a whole text: the one that makes a copy of a notebook, and the one between two texts of the same.
import type { Change, Splice } from '../notebook/document.ts';
import type { Door } from './session.ts';

/** The change that makes a copy of a notebook one by name. */
export function copied({ notebook }: Door): Change {
  const at = notebook.titleSpot;
  const title = `${notebook.title || 'Estimate'}, a copy`;
  const splice = at ? { ...at, insert: title } : { from: 0, to: 0, insert: `# ${title}\n\n` };
  return { say: `Title: ${title}`, splices: [splice] };
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
