// Which slot of which phrase a place in a formula stands in, told from the fixed words around it. A phrase that is
// still being written has no tree yet, so this goes by words; where two phrases are open the later one counts.
import { PHRASE_SHAPES, type PhraseShape, type Slot } from './phrase-shapes.ts';

export interface SlotFound {
  readonly shape: PhraseShape;
  readonly slot: Slot;
  readonly index: number;
  /** Where what is written in the slot begins. */
  readonly from: number;
  /** Where the phrase begins: what it goes on from ends here. */
  readonly opening: number;
}

/** Formulas longer than this get no hints: nobody reads them word by word. */
const LONGEST_HINTED = 2_000;

/** A word that ends the last slot of a phrase once something stands in it. */
const GOES_ON =
  /^(plus|minus|less|times|by|at|divided|multiplied|over|rounded|marked|for|where|is|and|or|in)$/;

const OTHER_PHRASE = /^(along|around)$/;

interface Word {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  /** Inside how many brackets. */
  readonly depth: number;
}

export function slotAt(text: string, caret: number): SlotFound | null {
  if (text.length > LONGEST_HINTED) return null;
  const words = wordsOf(text.slice(0, caret));
  let best: SlotFound | null = null;
  for (const { shape, pieces } of SHAPES) {
    for (let at = words.length - 1; at >= 0; at--) {
      const found = slotFrom(shape, pieces, words, at, caret);
      if (!found) continue;
      if (!best || found.from > best.from || (found.from === best.from && longer(found, best))) {
        best = found;
      }
      break;
    }
  }
  return best;
}

function longer(one: SlotFound, other: SlotFound): boolean {
  return one.opening < other.opening;
}

/** The fixed words before each slot; a comma is a word. What is left after the last slot is not looked at. */
interface Pieces {
  readonly before: readonly (readonly string[])[];
}

const SHAPES = PHRASE_SHAPES.filter((shape) => shape.slots.length > 0 && !shape.plain).map(
  (shape) => ({
    shape,
    pieces: piecesOf(shape.say),
  }),
);

function piecesOf(say: string): Pieces {
  const before = say.split('…').slice(0, -1);
  return { before: before.map((words) => words.match(/[\p{L}]+|,/gu) ?? []) };
}

/** The slot at the caret of a phrase whose first fixed words stand at word `at`. */
function slotFrom(
  shape: PhraseShape,
  { before }: Pieces,
  words: readonly Word[],
  at: number,
  caret: number,
): SlotFound | null {
  // A phrase that begins with a slot is known by the words after it.
  const [opening = [], ...more] = before;
  const leads = opening.length === 0 ? (more[0] ?? []) : opening;
  if (!stand(leads, words, at)) return null;
  const start = words[at];
  if (!start) return null;
  let index = opening.length === 0 ? 1 : 0;
  let next = at + leads.length;
  for (;;) {
    const fixed = before[index + 1];
    const then = fixed ? nextAt(fixed, words, next, start.depth) : null;
    if (then === null || !fixed) break;
    index++;
    next = then + fixed.length;
  }
  const slot = shape.slots[index];
  const last = words[next - 1];
  if (!slot || !last || closed(words, next, start.depth, before[index + 1] === undefined))
    return null;
  // The caret must have left the fixed word behind.
  if (caret <= last.to) return null;
  return { shape, slot, index, from: last.to + 1, opening: start.from };
}

/** Has the slot ended: by a bracket that closes around it, or by a word that goes on from what stands in it? */
function closed(words: readonly Word[], from: number, depth: number, isLast: boolean): boolean {
  return words.some((word, i) => {
    if (i < from) return false;
    if (word.depth < depth) return true;
    if (word.depth > depth || i === from) return false;
    // Of two phrases that begin alike the other one was meant.
    if (!isLast) return OTHER_PHRASE.test(word.text);
    return word.text === ',' || (GOES_ON.test(word.text) && !belongs(words, i));
  });
}

/** The inch of an amount, and the `at` of `at least`, go on nothing. */
function belongs(words: readonly Word[], at: number): boolean {
  const [before = '', word = '', after = ''] = [at - 1, at, at + 1].map((i) => words[i]?.text);
  if (word === 'in') return /\d|[¼½¾]/.test(before);
  return word === 'at' && /^(least|most)$/.test(after);
}

function nextAt(
  fixed: readonly string[],
  words: readonly Word[],
  from: number,
  depth: number,
): number | null {
  for (let i = from; i + fixed.length <= words.length; i++) {
    if ((words[i]?.depth ?? 0) < depth) return null;
    if (
      words[i]?.depth === depth &&
      i > from - (fixed.length > 0 ? 0 : 1) &&
      stand(fixed, words, i)
    )
      return i;
  }
  return null;
}

function stand(fixed: readonly string[], words: readonly Word[], at: number): boolean {
  return fixed.length > 0 && fixed.every((word, i) => words[at + i]?.text === word);
}

function wordsOf(text: string): readonly Word[] {
  const words: Word[] = [];
  let depth = 0;
  for (const found of text.matchAll(/[\p{L}]+|[(),[\]]|[^\s\p{L}(),[\]]+/gu)) {
    const [word] = found;
    if (word === '(' || word === '[') depth++;
    else if (word === ')' || word === ']') depth--;
    const opens = word === '(' || word === '[';
    const from = found.index;
    words.push({
      text: word.toLowerCase(),
      from,
      to: from + word.length,
      depth: opens ? depth - 1 : depth,
    });
  }
  return words;
}
