// Reads any CommonMark into the same outline as the plain reader, by way of the Markdown parser.
// Only blocks are asked for: the parser's inline constructs are switched off, because formulas and names
// are taken from the source as they were typed (`a_b: x*y*z` is no emphasis here).
import type { ListItem, Root, RootContent } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import type { Spot } from '../words/spot.ts';
import type { OutlineBlock, OutlineItem, OutlineSection } from './outline.ts';
import { lineEnd, lineStart, trimmed } from './outline.ts';

/** Levels of quotes and lists on one line beyond which a text is kept but not read. */
const DEEPEST = 60;
/** Columns of indent beyond which an item counts as nested too deeply. */
const WIDEST = 200;

const INLINE = {
  disable: {
    null: [
      'attention',
      'autolink',
      'characterEscape',
      'characterReference',
      'codeText',
      'hardBreakEscape',
      'htmlText',
      'labelEnd',
      'labelStartImage',
      'labelStartLink',
    ],
  },
};

/**
 * The sections of `text.slice(from, to)`, or null when `to` turns out to stand inside an open fence, comment
 * or paragraph, so that what follows can't be read without what stands here.
 * `from` has to be a place where nothing is open; at `to`, unless it is the end, a `## ` heading has to stand.
 */
export function markdownSections(
  text: string,
  from: number,
  to: number,
): readonly OutlineSection[] | null {
  const piece = text.slice(from, to);
  if (tooDeep(piece)) {
    return [
      { spot: { from, to }, heading: plainHeadingOf(text, from), blocks: [], unread: 'too-deep' },
    ];
  }
  const closed = to === text.length;
  const tree: Root = fromMarkdown(closed ? piece : `${piece}## next`, { extensions: [INLINE] });
  const nodes = [...tree.children];
  if (!closed) {
    const last = nodes.pop();
    if (last?.type !== 'heading' || placeOf(last).from !== piece.length) return null;
  }
  return sectionsOf(text, nodes, from, to);
}

function sectionsOf(
  text: string,
  nodes: readonly RootContent[],
  from: number,
  to: number,
): readonly OutlineSection[] {
  const sections: OutlineSection[] = [];
  let start = from;
  let heading: OutlineSection['heading'] = null;
  let blocks: OutlineBlock[] = [];
  const finish = (end: number): void => {
    sections.push({ spot: { from: start, to: end }, heading, blocks, unread: null });
  };
  for (const node of nodes) {
    const place = moved(placeOf(node), from);
    if (node.type === 'heading') {
      const lines = wholeLines(text, place, from);
      const found: OutlineBlock = {
        kind: 'heading',
        level: node.depth,
        spot: lines,
        text: headingText(text, place),
      };
      if (node.depth === 2) {
        if (lines.from > start || heading || blocks.length > 0) finish(lines.from);
        start = lines.from;
        heading = found;
        blocks = [];
      } else blocks.push(found);
    } else if (node.type === 'list') {
      for (const item of node.children)
        blocks.push({ kind: 'item', item: itemOf(text, item, from) });
    } else {
      const lines = wholeLines(text, place, from);
      blocks.push({
        kind: 'prose',
        spot: { from: lines.from, to: trimmed(text, lines.from, lines.to).to },
      });
    }
  }
  finish(to);
  return sections;
}

/** Iterative on the first level and recursive below it: the depth is bounded by `tooDeep`. */
function itemOf(text: string, node: ListItem, base: number): OutlineItem {
  const place = moved(placeOf(node), base);
  const spot = wholeLines(text, place, base);
  const afterMarker =
    place.from + (MARKER.exec(text.slice(place.from, place.from + 10))?.[0].length ?? 0);
  const nested: OutlineItem[] = [];
  const more: Spot[] = [];
  let line: Spot | null = null;
  let goesOn: readonly Spot[] = [];
  for (const [index, child] of node.children.entries()) {
    const node = moved(placeOf(child), base);
    const at = { from: Math.max(node.from, afterMarker), to: node.to };
    if (index === 0 && readsAsLine(text, place, at, child)) {
      const lines = linesOf(text, at);
      line = lines[0] ?? null;
      goesOn = lines.slice(1);
    } else if (child.type === 'list') {
      for (const item of child.children) nested.push(itemOf(text, item, base));
    } else more.push(at);
  }
  return { spot, line, goesOn, nested, more };
}

/**
 * Is this child the item's own line? A name such as `# of posts` is a heading to the parser, `[x]: 3` a definition,
 * `<b>` HTML, and text set off by many blanks is code: here all of them are what the person typed after the marker.
 */
function readsAsLine(text: string, item: Spot, at: Spot, child: RootContent): boolean {
  switch (child.type) {
    case 'paragraph':
    case 'heading':
    case 'definition':
    case 'html':
      return true;
    case 'code':
      return (
        at.from < lineEnd(text, item.from) && !/^[ \t]*(`{3}|~{3})/.test(text.slice(at.from, at.to))
      );
    default:
      return false;
  }
}

/** The lines of a stretch, each without the blanks (and quote marks of lazy lines) around it. */
function linesOf(text: string, place: Spot): readonly Spot[] {
  const lines: Spot[] = [];
  let at = place.from;
  while (at < place.to) {
    const next = Math.min(lineEnd(text, at), place.to);
    const line = trimmed(text, at, next);
    if (line.to > line.from) lines.push(line);
    at = next;
  }
  return lines;
}

function headingText(text: string, place: Spot): Spot {
  const source = text.slice(place.from, place.to);
  const opening = /^#{1,6}(?=[ \t]|$)/.exec(source);
  if (opening) {
    const words = trimmed(text, place.from + opening[0].length, place.to);
    const closing = /(^|[ \t])#+$/.exec(text.slice(words.from, words.to));
    return closing ? trimmed(text, words.from, words.from + closing.index) : words;
  }
  // Underlined: all lines but the last.
  return trimmed(text, place.from, lineStart(text, place.to, place.from));
}

/** Where a stretch that is left unread still opens with its part's heading. */
function plainHeadingOf(text: string, from: number): OutlineSection['heading'] {
  if (!/^##[ \t\r\n]/.test(text.slice(from, from + 3))) return null;
  const end = lineEnd(text, from);
  const place = trimmed(text, from, end);
  return { kind: 'heading', level: 2, spot: { from, to: end }, text: headingText(text, place) };
}

function wholeLines(text: string, place: Spot, floor: number): Spot {
  const to = lineEnd(text, place.to);
  // A node that ends with its own line break needs no other line.
  const ended = place.to > place.from && /[\r\n]/.test(text.charAt(place.to - 1));
  return { from: lineStart(text, place.from, floor), to: ended ? place.to : to };
}

function placeOf(node: RootContent): Spot {
  const { position } = node;
  const from = position?.start.offset;
  const to = position?.end.offset;
  if (from === undefined || to === undefined) throw new Error(`no position on ${node.type}`);
  return { from, to };
}

function moved(place: Spot, by: number): Spot {
  return { from: place.from + by, to: place.to + by };
}

const MARKER = /^(?:[-+*]|\d{1,9}[.)])/;

const CONTAINERS = /^[ \t]*(?:(?:>|[-+*](?=[ \t])|\d{1,9}[.)](?=[ \t]))[ \t]*)*/;

/** Nesting costs the parser more than its length: it is measured before it is parsed. */
export function tooDeep(piece: string): boolean {
  for (let at = 0; at < piece.length; at = lineEnd(piece, at)) {
    const code = piece.charCodeAt(at);
    if (
      code !== 32 &&
      code !== 9 &&
      code !== 62 &&
      code !== 45 &&
      code !== 43 &&
      code !== 42 &&
      !(code >= 48 && code <= 57)
    ) {
      continue;
    }
    const opening = CONTAINERS.exec(piece.slice(at, at + 4 * WIDEST))?.[0] ?? '';
    const blanks = /^[ \t]*/.exec(opening)?.[0] ?? '';
    const columns = blanks.length + 3 * (blanks.split('\t').length - 1);
    const marks = opening.replace(/[ \t]+/g, '').replace(/\d+[.)]/g, '-').length;
    if (marks > DEEPEST || (marks > 0 && columns > WIDEST)) return true;
  }
  return false;
}
