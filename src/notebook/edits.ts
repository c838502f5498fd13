// Described changes to a notebook: each knows what it replaces and what has to be read back from the result.
// Nothing is changed here; `tried` in trying.ts makes the first wording that reads back as meant.
import type { CellId } from '../language/tree.ts';
import type { Cell, Finding, Part, Remark, Splice } from './document.ts';
import { cellLead, cellsOf, leadAt, lineBreak, nextLead, oneLine, remarkLead } from './lines.ts';
import { nameKey, nameProblem, sayNameProblem } from './names.ts';
import type { NotebookText } from './notebook-text.ts';
import { lineEnd, trimmed } from './outline.ts';
import { remarkKind } from './remarks.ts';

/** What has to be read back of a cell. */
export interface MeantCell {
  readonly name?: string;
  readonly formula?: string;
  /** Word and text of every remark. */
  readonly remarks?: readonly (readonly [string, string])[];
  readonly table?: MeantTable;
}

/** What has to be read back of a table. */
export interface MeantTable {
  /** Name and formula of every column. */
  readonly columns: readonly (readonly [string, string | null])[];
  readonly rows: readonly (readonly string[])[];
}

/** One way to write an edit, and what it is meant to say. */
export interface Edit {
  readonly say: string;
  readonly splices: readonly Splice[];
  /** Cells that come out differently; all others must read as before. */
  readonly cells: ReadonlyMap<CellId, MeantCell>;
  readonly removes: CellId | null;
  /** New cells in order, each with the name of its part. */
  readonly adds: readonly AddedCell[];
  /** Part names in order after the edit; null when they stay. */
  readonly parts: readonly string[] | null;
  /** Every part in order with its cells in theirs, where something was moved; null where nothing is. */
  readonly arranged: readonly Arranged[] | null;
  /** Prose and headings stay as they are, only get more after them, or may change anywhere. */
  readonly prose: 'same' | 'grows' | 'free';
}

/** The cells of a part in their order after a move. */
export interface Arranged {
  readonly part: string;
  readonly cells: readonly CellId[];
}

export interface AddedCell {
  readonly part: string;
  readonly name: string;
  readonly formula: string;
  readonly table?: MeantTable;
}

/** Ways to write an edit, the one that fits in best first; or why it can't be made. */
export type Edits = readonly Edit[] | Finding;

export const NOTHING = {
  cells: new Map<CellId, MeantCell>(),
  removes: null,
  adds: [],
  parts: null,
  arranged: null,
  prose: 'same',
} as const;

export function refused(
  code: string,
  message: string,
  part: string | null,
  cell: CellId | null,
): Finding {
  return { code, message, part, cell, spot: null };
}

export function isRefused<T extends object>(result: T | Finding): result is Finding {
  return 'code' in result;
}

export function formulaEdit(cell: Cell, formula: string): Edits {
  const text = oneLine(formula);
  return [
    {
      ...NOTHING,
      say: `${cell.name}: ${shortened(text)}`,
      splices: [formulaSplice(cell, text)],
      cells: new Map([[cell.id, { formula: text }]]),
    },
  ];
}

/** The splice that writes a formula; right after the colon a blank is put first. */
export function formulaSplice(cell: Cell, text: string): Splice {
  const { from, to } = cell.formulaSpot;
  return { from, to, insert: from === to && text !== '' ? ` ${text}` : text };
}

/** Why a cell of this part can't be called so, or null. `self` is the cell that is renamed. */
export function nameRefusal(part: Part, name: string, self: CellId | null): Finding | null {
  const problem = nameProblem(name);
  if (problem) return refused('not-a-name', sayNameProblem(oneLine(name), problem), part.key, self);
  const twin = cellsOf(part).find((c) => c.id !== self && nameKey(c.name) === nameKey(name));
  if (!twin) return null;
  const where = part.name === '' ? 'The notebook' : `"${part.name}"`;
  return refused(
    'same-name',
    `${where} already has a cell called "${twin.name}".`,
    part.key,
    twin.id,
  );
}

export function addCellEdit(
  notebook: NotebookText,
  part: Part,
  after: Cell | null,
  name: string,
  formula: string,
): Edits {
  const clean = name.trim();
  const refusal = nameRefusal(part, clean, null);
  if (refusal) return refusal;
  const { text } = notebook;
  const end = lineBreak(text);
  const cells = cellsOf(part);
  const neighbour = after ?? cells.at(-1) ?? null;
  const body = oneLine(formula);
  const line = `${clean}:${body === '' ? '' : ` ${body}`}`;
  const edit = {
    ...NOTHING,
    say: `Add ${clean}`,
    adds: [{ part: part.name, name: clean, formula: body }],
  };
  if (neighbour) {
    const lead = nextLead(leadAt(text, neighbour.spot.from) ?? '- ');
    const at = neighbour.spot.to;
    const last = at === text.length && !endsLine(text, at);
    const item = last ? `${end}${lead}${line}` : `${lead}${line}${end}`;
    return [
      { ...edit, splices: [{ from: at, to: at, insert: item }] },
      { ...edit, splices: [{ from: at, to: at, insert: `${end}${item}${end}` }] },
    ];
  }
  const content = trimmed(text, part.spot.from, part.spot.to);
  const gap = content.to === content.from ? '' : `${end}${end}`;
  const tail = content.to === text.length || endsHere(text, content.to) ? '' : end;
  const item = `${gap}${cellLead(notebook, part)}${line}${tail}`;
  return [{ ...edit, splices: [{ from: content.to, to: content.to, insert: item }] }];
}

export function removeCellEdit(notebook: NotebookText, cell: Cell): Edits {
  const { from, to } = cell.spot;
  const edit = { ...NOTHING, say: `Remove ${cell.name}`, removes: cell.id };
  return [
    { ...edit, splices: [{ from, to, insert: '' }] },
    // Where what stands around it would run together, a blank line is left.
    { ...edit, splices: [{ from, to, insert: lineBreak(notebook.text) }] },
  ];
}

export function remarkEdit(notebook: NotebookText, cell: Cell, word: string, text: string): Edits {
  const clean = oneLine(word);
  if (clean === '' || /:(\s|$)/.test(clean)) {
    return refused('not-a-remark', 'A remark begins with a word and a colon.', cell.part, cell.id);
  }
  const body = oneLine(text);
  const there = remarkIndex(cell, clean);
  const say = `${cell.name}, ${clean}: ${shortened(body)}`;
  if (there >= 0) {
    const remark = cell.remarks[there];
    const meant = cell.remarks.map(asMeant);
    meant[there] = [remark.word, body];
    return [
      {
        ...NOTHING,
        say,
        splices: [remarkSplice(remark, body)],
        cells: new Map([[cell.id, { remarks: meant }]]),
      },
    ];
  }
  return writtenRemarks(notebook, cell, say, [[clean, body]], cell.remarks.length);
}

export function removeRemarkEdit(cell: Cell, word: string): Edits {
  const there = remarkIndex(cell, oneLine(word));
  if (there < 0) {
    return refused('no-such-remark', `"${cell.name}" has no remark "${word}".`, cell.part, cell.id);
  }
  return [withoutRemarks(cell, `${cell.name}, without ${word}`, [there])];
}

/** The value by hand goes in as a remark, with a `from` right below it that says why. */
export function byHandEdit(
  notebook: NotebookText,
  cell: Cell,
  formula: string | null,
  from: string | null,
): Edits {
  const there = cell.remarks.findIndex((r) => r.kind === 'by hand');
  const why = there >= 0 && cell.remarks[there + 1]?.kind === 'from' ? there + 1 : -1;
  if (formula === null) {
    if (there < 0) {
      return refused('not-by-hand', `"${cell.name}" is not set by hand.`, cell.part, cell.id);
    }
    return [withoutRemarks(cell, `${cell.name}, worked again`, why >= 0 ? [there, why] : [there])];
  }
  const body = oneLine(formula);
  if (body === '') {
    return refused('empty-by-hand', 'Say the value by hand, or take it back.', cell.part, cell.id);
  }
  const say = `${cell.name} by hand: ${shortened(body)}`;
  const reason = from === null ? null : oneLine(from);
  if (there < 0) {
    const lines: [string, string][] = [['by hand', body]];
    if (reason) lines.push(['from', reason]);
    return writtenRemarks(notebook, cell, say, lines, cell.remarks.length);
  }
  const meant = cell.remarks.map(asMeant);
  meant[there] = [cell.remarks[there].word, body];
  const splices = [remarkSplice(cell.remarks[there], body)];
  if (reason && why >= 0) {
    meant[why] = [cell.remarks[why].word, reason];
    splices.push(remarkSplice(cell.remarks[why], reason));
  } else if (reason) {
    const lead = leadAt(notebook.text, cell.remarks[there].spot.from) ?? '  - ';
    meant.splice(there + 1, 0, ['from', reason]);
    splices.push(lineAfter(notebook.text, cell.remarks[there].spot.to, [`${lead}from: ${reason}`]));
  }
  return [{ ...NOTHING, say, splices, cells: new Map([[cell.id, { remarks: meant }]]) }];
}

export function addPartEdit(notebook: NotebookText, name: string, after: Part | null): Edits {
  const clean = name.trim();
  const refusal = partRefusal(notebook, clean, null);
  if (refusal) return refusal;
  const { text, parts } = notebook;
  const before = after ?? parts[parts.length - 1];
  const end = lineBreak(text);
  const content = trimmed(text, before.spot.from, before.spot.to);
  const gap = content.to === content.from ? '' : `${end}${end}`;
  const tail = content.to === text.length || endsHere(text, content.to) ? '' : end;
  const names = parts.slice(1).map((p) => p.name);
  names.splice(parts.indexOf(before), 0, clean);
  return [
    {
      ...NOTHING,
      say: `Add ${clean}`,
      splices: [{ from: content.to, to: content.to, insert: `${gap}## ${clean}${tail}` }],
      parts: names,
    },
  ];
}

export function partRefusal(
  notebook: NotebookText,
  name: string,
  self: string | null,
): Finding | null {
  if (name.trim() === '') return refused('not-a-name', 'A part needs a name.', self, null);
  if (oneLine(name) !== name)
    return refused('not-a-name', 'A name stands on one line.', self, null);
  const twin = notebook.sections.find(
    (s) => s.front === null && s.key !== self && nameKey(s.name) === nameKey(name),
  );
  if (!twin) return null;
  return refused(
    'same-part-name',
    `There is already a part called "${twin.name}".`,
    twin.key,
    null,
  );
}

/** The heading's words replaced. */
export function partNameSplice(part: Part, name: string): Splice {
  const { from, to } = part.nameSpot;
  return { from, to, insert: from === to ? ` ${name}` : name };
}

function writtenRemarks(
  notebook: NotebookText,
  cell: Cell,
  say: string,
  lines: readonly (readonly [string, string])[],
  index: number,
): Edits {
  const { text } = notebook;
  const lead = remarkLead(notebook, cell);
  const meant = cell.remarks.map(asMeant);
  meant.splice(index, 0, ...lines);
  const written = lines.map(([word, body]) => `${lead}${word}:${body === '' ? '' : ` ${body}`}`);
  const edit = { ...NOTHING, say, cells: new Map([[cell.id, { remarks: meant }]]) };
  const own = cell.table ? cell.spot.from + cell.table.spot.to : lineEnd(text, cell.formulaSpot.to);
  const first = cell.remarks.at(-1)?.spot.to ?? own;
  return [
    { ...edit, splices: [lineAfter(text, first, written)] },
    // Where the item goes on below its first line, the remark goes to its end.
    { ...edit, splices: [lineAfter(text, cell.spot.to, written)] },
    { ...edit, splices: [lineAfter(text, cell.spot.to, ['', ...written])] },
  ];
}

/** Lines put in at the start of a line, or after a last line that has no end. */
function lineAfter(text: string, at: number, lines: readonly string[]): Splice {
  const end = lineBreak(text);
  const whole = lines.join(end);
  const insert = at === text.length && !endsLine(text, at) ? `${end}${whole}` : `${whole}${end}`;
  return { from: at, to: at, insert };
}

function withoutRemarks(cell: Cell, say: string, indexes: readonly number[]): Edit {
  return {
    ...NOTHING,
    say,
    splices: indexes.map((i) => {
      const { from, to } = cell.remarks[i].spot;
      return { from, to, insert: '' };
    }),
    cells: new Map([
      [cell.id, { remarks: cell.remarks.filter((_, i) => !indexes.includes(i)).map(asMeant) }],
    ]),
  };
}

function remarkSplice(remark: Remark, text: string): Splice {
  const { from, to } = remark.textSpot;
  return { from, to, insert: from === to && text !== '' ? ` ${text}` : text };
}

function remarkIndex(cell: Cell, word: string): number {
  const kind = remarkKind(word);
  return cell.remarks.findIndex((r) =>
    kind ? r.kind === kind : nameKey(r.word) === nameKey(word),
  );
}

function asMeant(remark: Remark): readonly [string, string] {
  return [remark.word, remark.text];
}

function endsLine(text: string, at: number): boolean {
  return at === 0 || text.charCodeAt(at - 1) === 10 || text.charCodeAt(at - 1) === 13;
}

function endsHere(text: string, at: number): boolean {
  return text.charCodeAt(at) === 10 || text.charCodeAt(at) === 13;
}

function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 59)}…` : text;
}
