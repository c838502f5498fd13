// Text in, notebook out. After an edit only the parts that the edit touches are read again.
//
// The text is cut at its `## ` headings. A heading at the start of a line closes everything but an open fence
// or HTML at the outermost level, so parts can be read one by one; where the reader can't be sure of a cut it
// reads further. What stands in a part is kept relative to the part's start: the parts before and after an
// edit are taken over as they are, and their places in the text are worked out when somebody asks.
import type { Spot } from '../words/spot.ts';
import type { Finding, Notebook } from './document.ts';
import { identified } from './identified.ts';
import { NotebookText } from './notebook-text.ts';
import { markdownSections, tooDeep } from './outline-markdown.ts';
import { plainSection } from './outline-plain.ts';
import { type OutlineSection, lineEnd } from './outline.ts';
import type { DraftSection } from './draft-section.ts';
import { draftSection } from './section.ts';

/** The longest text that is read, in characters. */
export const LONGEST_TEXT = 2_000_000;
/**
 * Markdown that isn't plain costs the parser: so much of it is read in one stretch, and in one text. Counted in
 * characters; a line, and a quote or list that opens in it, costs the parser as much as so many characters.
 */
const LONGEST_STRETCH = 250_000;
const MOST_INVOLVED = 500_000;
const OPENING_COSTS = 60;

/**
 * Reads a notebook. `previous` is what the text was before: parts and cells that are still there keep their
 * keys and ids, and what didn't change is not read again.
 */
export function readNotebook(text: string, previous?: Notebook, longest = LONGEST_TEXT): Notebook {
  const before = previous instanceof NotebookText ? previous : null;
  if (before && before.text === text) return before;
  const refused = refusal(text, longest);
  if (refused) return NotebookText.unread(text, refused, before);
  if (before && before.refusal === null) {
    const again = readAgain(text, before);
    if (again) return again;
  }
  const start = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  const outline = readOutline(text, start, text.length);
  if (!outline) throw new Error('the end of a text is always a place to cut');
  const drafts = draftsOf(text, outline, 0);
  return NotebookText.made(
    text,
    start,
    identified(text, start, drafts, before?.stretch(0) ?? null),
  );
}

/** Why this text can't be read as a notebook, or null. */
export function refusal(
  text: string,
  longest = LONGEST_TEXT,
): Pick<Finding, 'code' | 'message'> | null {
  if (text.length > longest) {
    const size = (text.length / 1_000_000).toFixed(1);
    return {
      code: 'text-too-long',
      message: `This text has ${size} million characters; up to ${longest / 1_000_000} million can be read. It is kept as it is.`,
    };
  }
  if (text.includes('\0')) {
    return {
      code: 'not-text',
      message:
        'This does not look like text: it holds bytes that no text has. It is kept as it is.',
    };
  }
  return null;
}

function readAgain(text: string, before: NotebookText): NotebookText | null {
  const { from, to, by } = changedSpan(before.text, text);
  const { starts, sections } = before;
  if (from <= before.start) return null;
  let first = Math.max(0, lastBefore(starts, from));
  // Where the heading itself was changed, its line may now belong to what stands before it.
  while (first > 0 && !isCut(text, starts[first])) first--;
  let last = first;
  while (last + 1 < sections.length && starts[last + 1] < to) last++;
  // A text that was cut right before a heading may have taken the heading's line start with it.
  if (last + 1 < sections.length && starts[last + 1] === to && !isCut(text, to + by)) last++;
  for (; last < sections.length; last = Math.min(sections.length - 1, last * 2 - first + 1)) {
    const atEnd = last + 1 === sections.length;
    const until = atEnd ? text.length : starts[last + 1] + by;
    if (!atEnd && !isCut(text, until)) continue;
    const outline = readOutline(text, starts[first], until);
    if (outline) {
      const drafts = draftsOf(text, outline, first);
      const made = identified(text, starts[first], drafts, before.stretch(first, last + 1));
      return before.replaced(text, first, last + 1, made);
    }
    if (atEnd) return null;
  }
  return null;
}

/** A line that opens with `## ` at its very start. */
function isCut(text: string, at: number): boolean {
  const before = text.charCodeAt(at - 1);
  if (before !== 10 && before !== 13) return false;
  return /^##[ \t\r\n]/.test(text.slice(at, at + 3));
}

/** The sections of a stretch, or null when its end turns out not to be a place to cut. */
function readOutline(text: string, from: number, until: number): readonly OutlineSection[] | null {
  const sections: OutlineSection[] = [];
  let at = from;
  let involved = 0;
  do {
    const plain = plainSection(text, at, until);
    if (plain) {
      sections.push(plain);
      at = plain.spot.to;
      continue;
    }
    const found = involvedSections(text, at, until, MOST_INVOLVED - involved);
    if (!found) return null;
    sections.push(...found);
    const end = found.at(-1)?.spot.to ?? until;
    involved += costOf(text, at, end);
    at = end;
  } while (at < until);
  return sections;
}

/** Reads as far as the next cut that holds; the stretches tried double, so the work stays in proportion. */
function involvedSections(
  text: string,
  from: number,
  until: number,
  left: number,
): readonly OutlineSection[] | null {
  let cut = nextCut(text, from + 1, until);
  const firstCut = cut;
  for (let tries = 1; ; tries *= 2) {
    // What is too deep isn't parsed, so it costs nothing.
    const dear = costOf(text, from, cut) > Math.min(LONGEST_STRETCH, left);
    if (dear && !tooDeep(text.slice(from, cut))) break;
    const found = markdownSections(text, from, cut);
    if (found) return found;
    if (cut === until) return null;
    for (let i = 0; i < tries && cut < until; i++) cut = nextCut(text, cut + 1, until);
  }
  // Too much to be read in good time: the part is kept unread, and reading goes on at the next heading.
  const end = costOf(text, from, firstCut) > Math.min(LONGEST_STRETCH, left) ? firstCut : until;
  if (end === until && until < text.length) return null;
  return [
    { spot: { from, to: end }, heading: headingAt(text, from), blocks: [], unread: 'too-involved' },
  ];
}

/** What a stretch costs the Markdown parser, in characters: deep lists and quotes cost far more than long ones. */
function costOf(text: string, from: number, to: number): number {
  let openings = 0;
  for (let at = from; at < to; at = lineEnd(text, at)) {
    LINE_OPENING.lastIndex = at;
    const opening = LINE_OPENING.exec(text)?.[0] ?? '';
    const marks = opening.replace(/[ \t]+/g, '').replace(/\d+[.)]/g, '-').length;
    const deep = Math.max(0, marks + indentOf(opening) / 2 - 2);
    openings += 1 + marks + deep * deep;
  }
  return to - from + openings * OPENING_COSTS;
}

/** Quotes and lists that open a line, and no more of it than counts. */
const LINE_OPENING = /[ \t]{0,120}(?:(?:>|[-+*](?=[ \t])|\d{1,9}[.)](?=[ \t]))[ \t]*){0,60}/y;

function indentOf(opening: string): number {
  let columns = 0;
  for (const char of opening) {
    if (char === '\t') columns += 4;
    else if (char === ' ') columns++;
    else break;
  }
  return columns;
}

function headingAt(text: string, from: number): OutlineSection['heading'] {
  if (!isCut(text, from)) return null;
  const line = /^[^\r\n]*(\r\n|\r|\n)?/.exec(text.slice(from))?.[0] ?? '';
  const alone = plainSection(`${line.trimEnd()}\n`, 0, line.trimEnd().length + 1)?.heading;
  const name: Spot = alone
    ? { from: from + alone.text.from, to: from + alone.text.to }
    : { from: from + 3, to: from + line.trimEnd().length };
  return { kind: 'heading', level: 2, spot: { from, to: from + line.length }, text: name };
}

function nextCut(text: string, from: number, until: number): number {
  CUT.lastIndex = from - 1;
  const found = CUT.exec(text);
  const at = found ? found.index + 1 : until;
  return Math.min(at, until);
}

const CUT = /[\r\n]##(?=[ \t\r\n])/g;

/** `first` is the index of the section with which the stretch begins; the very first is the front. */
function draftsOf(
  text: string,
  outline: readonly OutlineSection[],
  first: number,
): readonly DraftSection[] {
  const drafts = outline.map((section, index) =>
    draftSection(text, section, first + index === 0 && !section.heading ? 'front' : 'part'),
  );
  // A text that begins with a part still has a front, an empty one.
  if (first === 0 && !drafts[0]?.front) {
    const from = outline[0]?.spot.from ?? 0;
    drafts.unshift(
      draftSection(
        text,
        { spot: { from, to: from }, heading: null, blocks: [], unread: null },
        'front',
      ),
    );
  }
  return drafts;
}

/** Where two texts differ: `from`–`to` in the old one, and by how much the new one is longer. */
function changedSpan(old: string, text: string): Spot & { readonly by: number } {
  const most = Math.min(old.length, text.length);
  let from = 0;
  while (
    from + STRIDE < most &&
    old.slice(from, from + STRIDE) === text.slice(from, from + STRIDE)
  ) {
    from += STRIDE;
  }
  while (from < most && old.charCodeAt(from) === text.charCodeAt(from)) from++;
  let tail = 0;
  const limit = most - from;
  while (
    tail + STRIDE < limit &&
    old.slice(old.length - tail - STRIDE, old.length - tail) ===
      text.slice(text.length - tail - STRIDE, text.length - tail)
  ) {
    tail += STRIDE;
  }
  while (
    tail < limit &&
    old.charCodeAt(old.length - 1 - tail) === text.charCodeAt(text.length - 1 - tail)
  ) {
    tail++;
  }
  // A line break of two characters is one.
  while (from > 0 && old.charCodeAt(from - 1) === 13) from--;
  return { from, to: old.length - tail, by: text.length - old.length };
}

/** Equal stretches are compared so many characters at a time. */
const STRIDE = 4096;

/** The last index whose start stands before `at`, or -1. */
function lastBefore(starts: readonly number[], at: number): number {
  let low = 0;
  let high = starts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (starts[middle] < at) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
