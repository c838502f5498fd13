// What the words of a formula are, for highlighting and for the ties under them while it is typed.
import { formulaTokens } from './lexer.ts';
import { parseTokens } from './parse.ts';
import type { Mark, Scan } from './reading.ts';
import type { ScanInner } from './scan.ts';

/**
 * Marks in order, without overlaps: where one thing lies inside another the inner one is kept.
 * The formula is read again for them: of all that are scanned, few are ever looked at.
 */
export function marks(found: Scan): readonly Mark[] {
  const parsed = parsedAgain(found);
  const all = [...parsed.marks].sort((a, b) => a.from - b.from || a.to - b.to);
  const kept: Mark[] = [];
  for (const mark of all) {
    const last = kept.at(-1);
    if (!last || mark.from >= last.to) kept.push(mark);
  }
  return kept;
}

/** Can it be read as far as its words go, whatever its names measure? */
export function canBeRead(found: Scan): boolean {
  return parsedAgain(found).problem === null;
}

function parsedAgain({ text, part, self, inner }: Scan) {
  const { vocabulary } = inner as ScanInner;
  return parseTokens(text, formulaTokens(text), vocabulary, part, self, null);
}
