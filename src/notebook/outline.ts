// The skeleton of a stretch of Markdown: headings, list items and the rest, each by where it stands.
// Two readers make it, a plain one and one that knows all of CommonMark; offsets are into the text they were given.
import type { Spot } from '../words/spot.ts';

/** A list item. Its children stand in `nested`; whatever else is in it (paragraphs, code, quotes) in `more`. */
export interface OutlineItem {
  /** From the start of its first line, up to and including its last line break. */
  readonly spot: Spot;
  /** The first source line of its text, without the blanks around it; null when it begins with a list, a quote or a fence. */
  readonly line: Spot | null;
  /** Further lines of that same paragraph. */
  readonly goesOn: readonly Spot[];
  readonly nested: readonly OutlineItem[];
  readonly more: readonly Spot[];
}

export type OutlineBlock =
  | {
      readonly kind: 'heading';
      readonly level: number;
      /** The whole of its lines, with the last line break. */
      readonly spot: Spot;
      readonly text: Spot;
    }
  | { readonly kind: 'item'; readonly item: OutlineItem }
  /** A paragraph, quote, code, rule …; without its last line break. */
  | { readonly kind: 'prose'; readonly spot: Spot };

/** One part of the text: from a heading of the second level to the next. The first has no heading. */
export interface OutlineSection {
  readonly spot: Spot;
  readonly heading: Extract<OutlineBlock, { kind: 'heading' }> | null;
  readonly blocks: readonly OutlineBlock[];
  /** Too deep or too long to be read: kept as it stands. */
  readonly unread: 'too-deep' | 'too-involved' | null;
}

/** The end of the line that holds `at`, with its line break. A line ends in `\n`, `\r\n` or `\r`. */
export function lineEnd(text: string, at: number): number {
  for (let i = at; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 10) return i + 1;
    if (code === 13) return text.charCodeAt(i + 1) === 10 ? i + 2 : i + 1;
  }
  return text.length;
}

/** The start of the line that holds `at`; never before `floor`. */
export function lineStart(text: string, at: number, floor = 0): number {
  let i = at;
  while (i > floor && text.charCodeAt(i - 1) !== 10 && text.charCodeAt(i - 1) !== 13) i--;
  return i;
}

/** The same stretch without blanks and line breaks at its two ends. */
export function trimmed(text: string, from: number, to: number): Spot {
  let a = from;
  let b = to;
  while (a < b && isBlank(text.charCodeAt(a))) a++;
  while (b > a && isBlank(text.charCodeAt(b - 1))) b--;
  return { from: a, to: b };
}

function isBlank(code: number): boolean {
  return code === 32 || code === 9 || code === 10 || code === 13;
}
