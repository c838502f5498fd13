// Which picture stands beside a step, and which of its dimensions are the measures in question: a picture's remark says which
// cells it is drawn from, and a dimension on it is said as its cell shows it.
import type { CellId } from '../language/tree.ts';
import { askedIn } from '../picture/asking.ts';
import { draw } from '../picture/draw.ts';
import { type PictureState, pictureRemarks } from '../notebook/pictures.ts';
import type { Cell } from '../notebook/document.ts';
import type { Session } from './session.ts';

export interface MarkedPicture {
  /** The cell whose remark asks for it, and the place of that among its pictures. */
  readonly cell: CellId;
  readonly place: number;
  /** Dimensions to be marked, as they are written on it. */
  readonly marks: readonly string[];
}

/** Of the part in which the step's cell stands: the picture that shows most of these cells, the step's own before all. */
export function pictureFor(
  session: Session,
  own: CellId,
  others: readonly CellId[],
): MarkedPicture | null {
  const part = session.part(session.cell(own)?.part ?? '');
  let best: (MarkedPicture & { readonly shows: number }) | null = null;
  for (const block of part?.blocks ?? []) {
    if (block.kind !== 'cell' || pictureRemarks(block.cell).length === 0) continue;
    const states = session.door.picturesOf(block.cell.id);
    for (const [place, state] of states.entries()) {
      if (state.kind !== 'drawn') continue;
      const said = saidIn(session, block.cell, place, state);
      const marks = said.get(own) ?? others.flatMap((cell) => said.get(cell) ?? []);
      const shows = said.has(own) ? others.length + 1 : others.filter((c) => said.has(c)).length;
      if (!best || shows > best.shows) best = { cell: block.cell.id, place, marks, shows };
    }
  }
  return best;
}

/** Could the answer be read off it? */
export function pictureTells(
  session: Session,
  { cell, place }: MarkedPicture,
  answer: string,
): boolean {
  const state = session.door.picturesOf(cell)[place];
  if (state?.kind !== 'drawn') return false;
  const { chains, words, alt, key } = draw(state.name, state.given);
  const texts = [
    ...chains.flatMap(({ says }) => says.filter((said) => said !== null)),
    ...words.map(({ text }) => text),
    ...key.map(({ text }) => text),
    alt,
  ];
  const plain = onDrawing(answer);
  return texts.some((text) => text.includes(plain));
}

/** A dimension on a drawing says neither how shy of its mark it is nor for what. */
function onDrawing(text: string): string {
  return text.replace(/, a hair (?:shy|over)$/, '').replace(/ per .*$/, '');
}

/** By the cell: its size in the words of the drawing. */
function saidIn(
  session: Session,
  cell: Cell,
  place: number,
  state: Extract<PictureState, { kind: 'drawn' }>,
): ReadonlyMap<CellId, readonly string[]> {
  const remark = pictureRemarks(cell)[place];
  const said = new Map<CellId, readonly string[]>();
  for (const { slot, values } of remark ? askedIn(remark.text).slots : []) {
    const sizes = state.given.sizes(slot);
    // One value may stand for a whole column of a table.
    if (values.length !== sizes.length) continue;
    for (const [at, { text }] of values.entries()) {
      const { tree } = session.door.draft(cell.id, text).reading;
      const size = sizes[at];
      if (tree.kind !== 'name' || !size) continue;
      said.set(tree.cell, [...(said.get(tree.cell) ?? []), size.said]);
    }
  }
  return said;
}
