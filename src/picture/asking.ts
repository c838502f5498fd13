// What a `picture` remark asks for: `stair section for risers riser count, rise unit rise`. Words only; nothing is worked here.
import { nearNames } from '../words/near.ts';
import type { Spot } from '../words/spot.ts';
import { PICTURES, type Picture, isList } from './pictures.ts';

/** One value of a slot, as it is written. */
export interface AskedValue extends Spot {
  readonly text: string;
}

export interface AskedSlot {
  readonly slot: string;
  /** Where slot and values stand, from the comma before it on. */
  readonly spot: Spot;
  /** One; of a list maybe several. */
  readonly values: readonly AskedValue[];
}

/** Offsets are into the remark's text. */
export interface Asked {
  /** Null: no such picture. */
  readonly picture: Picture | null;
  /** The words before `for`. */
  readonly name: AskedValue;
  readonly slots: readonly AskedSlot[];
  /** What stands where a slot should begin. */
  readonly unknown: readonly AskedValue[];
}

export function askedIn(text: string): Asked {
  const cut = /\s+for(?:\s+|$)/i.exec(text);
  const name = { text: text.slice(0, cut?.index).trim(), from: 0, to: cut?.index ?? text.length };
  const key = name.text.toLowerCase().replace(/\s+/g, ' ');
  const picture = PICTURES.find((each) => each.name === key) ?? null;
  if (!picture) return { picture, name, slots: [], unknown: [] };
  const words = Object.keys(picture.slots).toSorted((a, b) => b.length - a.length);
  const starts: { readonly at: number; readonly comma: number; readonly slot: string | null }[] =
    [];
  const first = cut ? cut.index + cut[0].length : text.length;
  for (let at = first, comma = first; at < text.length;) {
    const slot = slotAt(text, at, words);
    if (slot !== null || at === first) starts.push({ at, comma, slot });
    const next = /,\s*/g;
    next.lastIndex = at;
    const found = next.exec(text);
    if (!found) break;
    comma = found.index;
    at = found.index + found[0].length;
  }
  const slots: AskedSlot[] = [];
  const unknown: AskedValue[] = [];
  for (const [i, { at, comma, slot }] of starts.entries()) {
    const to = starts[i + 1]?.comma ?? text.length;
    if (slot === null) unknown.push(valueOf(text, at, to));
    else {
      const takes = picture.slots[slot];
      const value = valueOf(text, at + slot.length, to);
      const values = takes && isList(takes) ? listed(text, value) : [value];
      slots.push({ slot, spot: { from: comma, to }, values });
    }
  }
  return { picture, name, slots, unknown };
}

/** The longest slot that begins here; a shorter one where the longer leaves no value: `post height` may be a post as high as Height. */
function slotAt(text: string, at: number, words: readonly string[]): string | null {
  const fits = words.filter((word) => {
    const there = text.slice(at, at + word.length).toLowerCase() === word;
    return there && !/[\p{L}\p{N}]/u.test(text[at + word.length] ?? '');
  });
  return fits.find((word) => !/^\s*(?:,|$)/.test(text.slice(at + word.length))) ?? fits[0] ?? null;
}

function valueOf(text: string, from: number, to: number): AskedValue {
  const part = text.slice(from, to);
  const start = from + (part.length - part.trimStart().length);
  const trimmed = part.trim();
  return { text: trimmed, from: start, to: start + trimmed.length };
}

/** `6 ft and 4 ft`: cut at every `and` that stands in no bracket. */
function listed(text: string, { from, to }: AskedValue): readonly AskedValue[] {
  const values: AskedValue[] = [];
  let depth = 0;
  let start = from;
  for (let i = from; i < to; i++) {
    if (text[i] === '(') depth++;
    if (text[i] === ')') depth--;
    const and = depth === 0 ? /^(?:\s+and\s+|\s*&\s+)/i.exec(text.slice(i, to)) : null;
    if (!and) continue;
    values.push(valueOf(text, start, i));
    start = i + and[0].length;
    i = start - 1;
  }
  return [...values, valueOf(text, start, to)];
}

/** The values that are formulas: all but the fixed words. */
export function formulasIn(text: string): readonly AskedValue[] {
  const { picture, slots } = askedIn(text);
  return slots.flatMap(({ slot, values }) => {
    const takes = picture?.slots[slot];
    const words: readonly string[] = typeof takes === 'object' ? takes : [];
    return values.filter((value) => value.text !== '' && !words.includes(value.text.toLowerCase()));
  });
}

/** The slots of one way to tell enough that are still missing: of the way of which most is there. */
export function missingIn({ picture, slots }: Asked): readonly string[] {
  const there = new Set(slots.map(({ slot }) => slot));
  const ways = picture?.needs.map((way) => way.filter((slot) => !there.has(slot))) ?? [];
  return ways.toSorted((a, b) => a.length - b.length)[0] ?? [];
}

/** Pictures, or slots of one, that are written nearly so. */
export function nearPictures(name: string): readonly string[] {
  const near = nearNames(
    name,
    PICTURES.map((each) => each.name),
    3,
  );
  const word = name.toLowerCase().split(/\s+/)[0] ?? '';
  return near.length > 0
    ? near
    : PICTURES.map((each) => each.name).filter((n) => n.startsWith(word));
}

export function nearSlots(picture: Picture, words: string): readonly string[] {
  const [one = '', two = ''] = words.split(/\s+/);
  const near = nearNames(`${one} ${two}`, Object.keys(picture.slots), 1);
  return near.length > 0 ? near : nearNames(one, Object.keys(picture.slots), 2);
}
