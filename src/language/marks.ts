// What the words of a formula are, for highlighting and for the ties under them while it is typed.
import type { Mark, Scan } from './reading.ts';
import type { ScanInner } from './scan.ts';

/** Marks in order, without overlaps: where one thing lies inside another the inner one is kept. */
export function marks(scan: Scan): readonly Mark[] {
  const all = [...(scan.inner as ScanInner).marks].sort((a, b) => a.from - b.from || a.to - b.to);
  const kept: Mark[] = [];
  for (const mark of all) {
    const last = kept.at(-1);
    if (!last || mark.from >= last.to) kept.push(mark);
  }
  return kept;
}
