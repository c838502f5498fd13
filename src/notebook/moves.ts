// Moving a cell to another place, in its part or in another, and moving a whole part. What named the cell names
// it still: where its part's name was before it the new one stands, and where words alone would now mean
// something else they get a part's name before them.
import type { CellId } from '../language/tree.ts';
import type { Spot } from '../words/spot.ts';
import type { Cell, Part, Splice } from './document.ts';
import { changed, inOrder } from './change.ts';
import {
  type Arranged,
  type Edit,
  type Edits,
  type MeantCell,
  NOTHING,
  isRefused,
  nameRefusal,
  refused,
} from './edits.ts';
import { keptChoices } from './kept-choices.ts';
import { keptReadings } from './kept-readings.ts';
import { cellsOf, lineBreak } from './lines.ts';
import { type Saying, mentionsIn, partWithin, phraseSpots, said } from './mentions.ts';
import type { NotebookText } from './notebook-text.ts';
import { trimmed } from './outline.ts';
import { type Known, withTexts } from './renames.ts';

/** Where a cell goes: before the block at `place`, counted as if the cell were not there; at the end past the last. */
export interface Destination {
  readonly part: string;
  readonly place: number;
}

export function moveCellEdit(known: Known, cell: Cell, to: Destination): Edits {
  const { notebook } = known;
  const part = partOf(notebook, to.part);
  const elsewhere = part.key !== cell.part;
  const refusal = elsewhere ? nameRefusal(part, cell.name, cell.id) : null;
  if (refusal) return refusal;
  const blocks = withoutCell(part, cell);
  const place = Math.max(0, Math.min(to.place, blocks.length));
  if (!elsewhere && placeOf(part, cell) === place) {
    return refused('stays', `"${cell.name}" already stands there.`, cell.part, cell.id);
  }
  const texts = elsewhere ? readingsAfterMove(known, cell, part) : [];
  if (isRefused(texts)) return texts;
  const choices = elsewhere ? keptChoices(known, broughtTo(known, cell, part)) : [];
  const own = texts.filter(({ saying }) => saying.cell === cell.id);
  const others = texts.filter(({ saying }) => saying.cell !== cell.id);
  const end = lineBreak(notebook.text);
  const inside = withTexts(known, own, { ...NOTHING, say: '', splices: [] });
  const ownChoices = choices.filter((c) => c.cell === cell.id);
  const within = [...inside.splices, ...ownChoices.map((c) => c.splice)];
  const source = endedBy(rewrittenSource(notebook.text, cell, within), end);
  const cells = new Map<CellId, MeantCell>(inside.cells);
  for (const { cell: id, remarks } of choices) cells.set(id, { ...cells.get(id), remarks });
  const edits = slotsFor(notebook, part, blocks, place).flatMap((slot): readonly Edit[] =>
    ['', end].map((left) =>
      withTexts(known, others, {
        ...NOTHING,
        say: elsewhere ? `Move ${cell.name} to ${named(part)}` : `Move ${cell.name}`,
        splices: [
          { ...cutOf(notebook.text, cell), insert: left },
          put(notebook.text, slot, source, end),
          ...choices.flatMap((c) => (c.cell === cell.id ? [] : [c.splice])),
        ],
        cells,
        arranged: arrangedWith(notebook, cell.id, part.key, place),
      }),
    ),
  );
  const mended = own.flatMap(({ mended: words }) => words.map((w) => `"${w}" in ${cell.name}`));
  if (mended.length === 0) return edits;
  return edits.map((edit) => {
    const join = edit.say.includes('; now written ') ? ', ' : '; now written ';
    return { ...edit, say: `${edit.say}${join}${mended.join(', ')}` };
  });
}

/** `place` among the other parts: 0 is before the first of them. */
export function movePartEdit(notebook: NotebookText, part: Part, place: number): Edits {
  const parts = notebook.parts.slice(1);
  const others = parts.filter((p) => p.key !== part.key);
  const at = Math.max(0, Math.min(place, others.length));
  const now = [...others.slice(0, at), part, ...others.slice(at)];
  const first = now.findIndex((p, i) => p.key !== parts[i]?.key);
  if (first < 0) {
    return refused('stays', `"${part.name}" already stands there.`, part.key, null);
  }
  const last = now.findLastIndex((p, i) => p.key !== parts[i]?.key);
  const { text } = notebook;
  const end = lineBreak(text);
  const bodies = now.slice(first, last + 1).map((p) => bodyOf(text, p));
  // What stands between the parts stays between them; only the parts change places.
  const gaps = parts.slice(first, last + 1).map((p) => {
    const { to } = trimmed(text, p.spot.from, p.spot.to);
    return text.slice(to, p.spot.to);
  });
  const from = parts[first]?.spot.from ?? 0;
  const to = parts[last]?.spot.to ?? text.length;
  const arranged = [notebook.parts[0], ...now].map((p) => ({
    part: p?.key ?? '',
    cells: cellsOf(p).map((c) => c.id),
  }));
  const apart = gaps.map((gap, i) => (i < gaps.length - 1 && isTight(gap) ? end + end : gap));
  return [gaps, apart].map((between) => ({
    ...NOTHING,
    say: `Move ${part.name}`,
    splices: [{ from, to, insert: bodies.map((body, i) => body + (between[i] ?? '')).join('') }],
    arranged,
  }));
}

/** Where the cell stands among the other blocks of its part. */
export function placeOf(part: Part, cell: Cell): number {
  return part.blocks.findIndex((b) => b.kind === 'cell' && b.cell.id === cell.id);
}

function withoutCell(part: Part, cell: Cell): Part['blocks'] {
  return part.blocks.filter((b) => b.kind !== 'cell' || b.cell.id !== cell.id);
}

function named(part: Part): string {
  return part.name === '' ? 'above the parts' : part.name;
}

function partOf(notebook: NotebookText, key: string): Part {
  const part = notebook.part(key);
  if (!part) throw new Error(`no part ${key} in the notebook`);
  return part;
}

/** Every text that has to be written anew once the cell stands in that part. */
function readingsAfterMove(known: Known, cell: Cell, to: Part) {
  const { notebook, vocabulary } = known;
  const from = vocabulary.partName(cell.part);
  return keptReadings({
    notebook,
    vocabulary,
    ...broughtTo(known, cell, to),
    names: [cell.name],
    atFault: (saying) => known.atFault(saying),
    later: (saying) => (saying.cell === cell.id ? { ...saying, part: to.key } : saying),
    rewrite(saying) {
      const spots = withPartSaid(saying, known, cell, from).map((spot): Splice => ({
        ...spot,
        insert: to.name === '' ? '' : `${to.name} `,
      }));
      if (saying.cell === cell.id && from !== '') {
        const here = phraseSpots(saying.text, saying, vocabulary, /^this\s+part$/i);
        spots.push(...here.map((spot) => ({ ...spot, insert: from })));
      }
      return spots.length === 0 ? null : said(saying.text, inOrder(spots));
    },
  });
}

function broughtTo({ vocabulary }: Known, cell: Cell, to: Part) {
  const swap = (part: string) => (): void => {
    vocabulary.remove(cell.id);
    vocabulary.add({ id: cell.id, name: cell.name, part });
  };
  return { bring: swap(to.key), takeBack: swap(cell.part) };
}

/** Where a text says the cell with its part's name before it: that name, with the blanks after it. */
function withPartSaid(saying: Saying, known: Known, cell: Cell, part: string) {
  const { text } = saying;
  if (part === '' || !text.toLowerCase().includes(part.split(' ')[0]?.toLowerCase() ?? '')) {
    return [];
  }
  return mentionsIn(text, saying, known.vocabulary)
    .filter((m) => m.cell === cell.id)
    .flatMap((m) => partWithin(text, m, cell.name, part) ?? [])
    .map(({ from, to }) => ({ from, to: to + (/^\s*/.exec(text.slice(to))?.[0].length ?? 0) }));
}

/** The lines of a cell with its own texts written anew. */
function rewrittenSource(text: string, cell: Cell, splices: readonly Splice[]): string {
  const base = cell.spot.from;
  const inside = splices.map((s) => ({ ...s, from: s.from - base, to: s.to - base }));
  return changed(text.slice(base, cell.spot.to), { say: '', splices: inOrder(inside) });
}

/** The cell's lines, with one of the two empty lines between which it stood alone. */
function cutOf(text: string, { spot: { from, to } }: Cell): Spot {
  const alone = /(^|\n\n|\r\r|\r\n\r\n)$/.test(text.slice(Math.max(0, from - 4), from));
  const below = alone ? /^(\r\n|\r|\n)/.exec(text.slice(to, to + 2)) : null;
  return { from, to: to + (below?.[0].length ?? 0) };
}

/** A place in the text for a block, and what has to stand around it there. */
interface Slot {
  readonly at: number;
  readonly before: string;
  readonly after: string;
}

/** The places for a cell before the block at `place`, the one that fits in best first. */
export function slotsFor(
  notebook: NotebookText,
  part: Part,
  blocks: Part['blocks'],
  place: number,
): readonly Slot[] {
  const { text } = notebook;
  const end = lineBreak(text);
  const before = blocks[place - 1];
  const after = blocks[place];
  const slots: Slot[] = [];
  if (before?.kind === 'cell') {
    const at = before.cell.spot.to;
    slots.push({ at, before: '', after: '' }, { at, before: '', after: end });
    slots.push({ at, before: end, after: end });
  }
  if (after?.kind === 'cell') {
    const at = after.cell.spot.from;
    slots.push({ at, before: '', after: '' }, { at, before: end, after: '' });
  } else if (after) {
    const at = after.spot.from;
    slots.push({ at, before: '', after: end }, { at, before: end, after: end });
  }
  if (!after) {
    // Past prose, or under a bare heading: a line of its own below it.
    const last = before ? (before.kind === 'cell' ? before.cell.spot : before.spot) : part.spot;
    const content = trimmed(text, last.from, last.to);
    if (content.to === content.from) {
      slots.push({ at: last.from, before: '', after: end });
    } else {
      const tail = endsHere(text, content.to) ? 'cut' : '';
      slots.push({ at: content.to, before: `${end}${end}`, after: tail });
    }
  }
  return slots;
}

/** `cut`: the line that the block is put into has its end already. */
export function put(text: string, slot: Slot, source: string, end: string): Splice {
  const { at, before, after } = slot;
  if (after === 'cut') {
    return { from: at, to: at, insert: before + source.slice(0, source.length - end.length) };
  }
  const open = at === text.length && at > 0 && !endsLine(text, at);
  return { from: at, to: at, insert: `${open ? end : ''}${before}${source}${after}` };
}

export function endedBy(source: string, end: string): string {
  return /[\r\n]$/.test(source) ? source : source + end;
}

function bodyOf(text: string, part: Part): string {
  const { from, to } = trimmed(text, part.spot.from, part.spot.to);
  // Blanks before a heading belong to it.
  return text.slice(Math.min(from, part.spot.from), to);
}

/** No empty line in it. */
function isTight(gap: string): boolean {
  return (gap.match(/\r\n|\r|\n/g) ?? []).length < 2;
}

function endsLine(text: string, at: number): boolean {
  return /[\r\n]/.test(text.charAt(at - 1));
}

function endsHere(text: string, at: number): boolean {
  return /[\r\n]/.test(text.charAt(at));
}

/** The notebook's cells in order, with this one at its new place. */
function arrangedWith(
  notebook: NotebookText,
  moved: CellId,
  to: string,
  place: number,
): readonly Arranged[] {
  return notebook.parts.map((part) => {
    const blocks = part.blocks.filter((b) => b.kind !== 'cell' || b.cell.id !== moved);
    const ids = blocks.map((b) => (b.kind === 'cell' ? b.cell.id : null));
    if (part.key === to) ids.splice(place, 0, moved);
    return { part: part.key, cells: ids.filter((id) => id !== null) };
  });
}
