// Reads the Markdown that notebooks are mostly made of, line by line: headings, one-line items with one level
// of items under them, and paragraphs. Whatever else it meets it leaves to the full reader by returning null,
// so it never has to guess; a test holds the two to the same outline.
//
// What makes a line safe is how it begins: an item's or a paragraph's text that opens with a letter, a quotation
// mark or a bracket can be nothing else in CommonMark. Inline marks don't matter: nothing here reads them.
import type { OutlineBlock, OutlineItem, OutlineSection } from './outline.ts';
import type { Spot } from '../words/spot.ts';
import { trimmed } from './outline.ts';

interface OpenItem {
  from: number;
  to: number;
  line: { from: number; to: number };
  /** Lines of a table that follows its own line at once. */
  goesOn: Spot[];
  nested: OutlineItem[];
  /** A table after a blank line. */
  more: { from: number; to: number }[];
  /** Column at which its text begins, and the indent of the first item under it. */
  content: number;
  indent: number | null;
}

/**
 * The section that begins at `from`, up to the next `## ` at the start of a line or to `until`;
 * null where it holds anything that isn't plain. `from` has to be a place where no list, fence or HTML is open.
 */
export function plainSection(text: string, from: number, until: number): OutlineSection | null {
  const blocks: OutlineBlock[] = [];
  let heading: OutlineSection['heading'] = null;
  let item: OpenItem | null = null;
  let paragraph: { from: number; to: number } | null = null;
  let afterBlank = true;
  let at = from;

  const close = (): void => {
    if (item) {
      blocks.push({
        kind: 'item',
        item: {
          spot: { from: item.from, to: item.to },
          line: item.line,
          goesOn: item.goesOn,
          nested: item.nested,
          more: item.more,
        },
      });
    }
    if (paragraph)
      blocks.push({ kind: 'prose', spot: trimmed(text, paragraph.from, paragraph.to) });
    item = null;
    paragraph = null;
  };

  while (at < until) {
    let newline = text.indexOf('\n', at);
    if (newline < 0 || newline >= until) newline = until;
    const next = newline < until ? newline + 1 : until;
    const end =
      newline > at && text.charCodeAt(newline - 1) === 13 && next > newline ? newline - 1 : newline;
    if (hasReturn(text, at, end)) return null;
    const indent = spacesAt(text, at, end);
    const start = at + indent;
    if (start === end) {
      if (item || paragraph) {
        if (paragraph) close();
      }
      afterBlank = true;
      at = next;
      continue;
    }
    const code = text.charCodeAt(start);
    if (code === 35 && indent === 0) {
      const found = plainHeading(text, at, end, next);
      if (!found) return null;
      if (found.level === 2 && at > from) break;
      close();
      if (found.level === 2) heading = found;
      else blocks.push(found);
    } else {
      const marker: number = code === 124 && item ? 0 : markerWidth(text, start, end);
      if (marker < 0) return null;
      if (marker > 0) {
        const line = trimmed(text, start + marker, end);
        if (indent === 0) {
          const ordered = marker > 2;
          if (ordered && paragraph) return null;
          close();
          item = {
            from: at,
            to: next,
            line,
            goesOn: [],
            nested: [],
            more: [],
            content: marker,
            indent: null,
          };
        } else {
          const open: OpenItem | null = item;
          if (!open) return null;
          if (indent < open.content || indent > open.content + 3) return null;
          if (open.indent !== null && open.indent !== indent) return null;
          // An ordered item that doesn't start at 1 can't break into a paragraph.
          const breaksIn = open.nested.length === 0 && !afterBlank;
          if (breaksIn && marker > 2 && !(marker === 3 && code === 49)) return null;
          open.indent = indent;
          open.nested.push({
            spot: { from: at, to: next },
            line,
            goesOn: [],
            nested: [],
            more: [],
          });
          open.to = next;
        }
      } else if (code === 124 && item) {
        if (!tableLine(text, item, indent, { from: start, to: end }, afterBlank)) return null;
        item.to = next;
      } else {
        if (indent > 0 || !opensText(code)) return null;
        if (item && !afterBlank) return null;
        if (item) close();
        const open: { from: number; to: number } | null = paragraph;
        if (open) open.to = end;
        else paragraph = { from: at, to: end };
      }
    }
    afterBlank = false;
    at = next;
  }
  close();
  return { spot: { from, to: at }, heading, blocks, unread: null };
}

/** A line that begins with a bar is text of the item: it goes on below its own line, or after a blank one. */
function tableLine(
  text: string,
  item: OpenItem,
  indent: number,
  place: Spot,
  afterBlank: boolean,
): boolean {
  if (indent < item.content || indent > item.content + 3 || item.nested.length > 0) return false;
  const line = trimmed(text, place.from, place.to);
  const open = item.more.at(-1);
  if (!afterBlank) {
    if (open) open.to = place.to;
    else item.goesOn.push(line);
    return true;
  }
  if (open) return false;
  item.more.push({ from: line.from, to: place.to });
  return true;
}

function plainHeading(
  text: string,
  from: number,
  end: number,
  next: number,
): Extract<OutlineBlock, { kind: 'heading' }> | null {
  let level = 0;
  while (text.charCodeAt(from + level) === 35) level++;
  if (level > 6) return null;
  if (from + level < end && text.charCodeAt(from + level) !== 32) return null;
  const words = trimmed(text, from + level, end);
  // A closing row of # is left to the full reader.
  if (words.to > words.from && text.charCodeAt(words.to - 1) === 35) return null;
  return { kind: 'heading', level, spot: { from, to: next }, text: words };
}

/** Width of `- `, `* `, `+ ` or `12. ` with plain text after it; 0 where there is no marker; -1 where it isn't plain. */
function markerWidth(text: string, at: number, end: number): number {
  let i = at;
  const code = text.charCodeAt(i);
  if (code === 45 || code === 42 || code === 43) i++;
  else if (code >= 48 && code <= 57) {
    while (i < end && text.charCodeAt(i) >= 48 && text.charCodeAt(i) <= 57) i++;
    if (i - at > 9 || (text.charCodeAt(i) !== 46 && text.charCodeAt(i) !== 41)) return -1;
    i++;
  } else return 0;
  if (text.charCodeAt(i) !== 32 || i + 1 >= end || !opensText(text.charCodeAt(i + 1))) return -1;
  return i + 1 - at;
}

/** A letter, a quotation mark or an opening bracket. */
function opensText(code: number): boolean {
  return (
    (code >= 97 && code <= 122) ||
    (code >= 65 && code <= 90) ||
    (code >= 0xc0 && code < 0x2000) ||
    code === 34 ||
    code === 40 ||
    code === 0x201c
  );
}

function spacesAt(text: string, at: number, end: number): number {
  let i = at;
  while (i < end && text.charCodeAt(i) === 32) i++;
  return i - at;
}

/** A lone carriage return ends a line too; such texts are left to the full reader. */
function hasReturn(text: string, from: number, to: number): boolean {
  for (let i = from; i < to; i++) if (text.charCodeAt(i) === 13) return true;
  return false;
}
