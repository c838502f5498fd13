// Mends of how the text is laid out: lines that go on, tables, prose, remarks and settings that are not known.
import { nearNames } from '../words/near.ts';
import type { Cell, Finding, Splice } from './document.ts';
import { leadAt, lineBreak } from './lines.ts';
import type { Mend } from './mends.ts';
import { nameProblem } from './names.ts';
import { lineEnd, lineStart } from './outline.ts';
import { REMARK_WORDS } from './remarks.ts';
import { cellRooms, cellSpots } from './table-text.ts';
import { texts } from './mend-words.ts';

/** The nearest word that is known, or a note that says the same. */
export function knownRemark(text: string, { spot }: Finding): readonly Mend[] {
  if (!spot) return [];
  const lead = leadAt(text, spot.from)?.length ?? 0;
  const from = spot.from + lead;
  const colon = text.indexOf(':', from);
  const word = text.slice(from, colon).trim();
  const near = nearNames(word, REMARK_WORDS, 2);
  const to = from + text.slice(from, colon).trimEnd().length;
  return [
    ...near.map((known) => texts(`Write "${known}"`, { from, to, insert: known })),
    texts('Keep it as a note', { from, to: from, insert: 'note: ' }),
  ];
}

/** What goes on below its first line is drawn up to it. */
export function goesOn(text: string, cell: Cell, { spot }: Finding): readonly Mend[] {
  if (!spot) return [];
  const { from, to } = cell.formulaSpot;
  const more = text.slice(spot.from, spot.to).trim();
  const start = lineStart(text, spot.from);
  return [
    texts(
      'Make it one line',
      { from: to, to, insert: from === to ? ` ${more}` : ` ${more}` },
      { from: start, to: lineEnd(text, spot.to), insert: '' },
    ),
    texts('Keep it as a note', { from: spot.from, to: spot.from, insert: '- note: ' }),
  ];
}

/** A table under a formula: an item of its own, the formula's name before it. */
export function ownCell(text: string, cell: Cell, { spot }: Finding): readonly Mend[] {
  if (!spot) return [];
  const start = lineStart(text, spot.from);
  const name = `${cell.name} table`;
  if (nameProblem(name) !== null) return [];
  const lead = leadAt(text, cell.spot.from) ?? '- ';
  const line = `${lead}${name}:${lineBreak(text)}`;
  return [texts(`Give it a cell, "${name}"`, { from: start, to: start, insert: line })];
}

/** A cell in a list under prose: to the start of the line, and what is under it with it. */
export function outOfProse(text: string, { spot }: Finding): readonly Mend[] {
  if (!spot) return [];
  const first = lineStart(text, spot.from);
  const indent = /^[ \t]*/.exec(text.slice(first, spot.to))?.[0] ?? '';
  const splices: Splice[] = [];
  for (let at = first; at < spot.to; at = lineEnd(text, at)) {
    if (text.startsWith(indent, at)) splices.push({ from: at, to: at + indent.length, insert: '' });
  }
  return indent === '' ? [] : [texts('Bring it to the start of the line', ...splices)];
}

/** As many marks under the header as it has names. */
export function tableMarks(text: string, { spot }: Finding): readonly Mend[] {
  if (!spot) return [];
  const header = { from: spot.from, to: spot.from + lineOf(text, spot.from).length };
  const many = cellSpots(text, header).length;
  const marks = `|${'---|'.repeat(many)}`;
  const next = lineEnd(text, header.to);
  const below = lineOf(text, next);
  const indent = text.slice(lineStart(text, spot.from), spot.from).replace(/[^\t]/g, ' ');
  const isMarks = /^\s*\|[\s:|-]+$/.test(below);
  if (many === 0) return [];
  if (isMarks) {
    const bar = next + below.indexOf('|');
    if (cellRooms(text, { from: bar, to: next + below.length }).length === many) return [];
    const end = next + below.trimEnd().length;
    return [texts('Put a mark under each name', { from: bar, to: end, insert: marks })];
  }
  const insert = `${lineBreak(text)}${indent}${marks}`;
  return [texts('Put the row of marks in', { from: header.to, to: header.to, insert })];
}

function lineOf(text: string, from: number): string {
  return text.slice(from, lineEnd(text, from)).trimEnd();
}

/** Without it the usual one is used, as it is now. */
export function settingAway(text: string, { spot }: Finding): readonly Mend[] {
  if (!spot) return [];
  const from = lineStart(text, spot.from);
  return [texts('Take it away', { from, to: lineEnd(text, spot.from), insert: '' })];
}
