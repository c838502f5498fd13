// The `picture` remarks of a cell: what each asks for, worked; or what is wrong with it and how to mend it.
import type { CellId } from '../language/tree.ts';
import { Given, type GivenValue } from '../picture/given.ts';
import {
  type Asked,
  type AskedSlot,
  askedIn,
  missingIn,
  nearPictures,
  nearSlots,
} from '../picture/asking.ts';
import { PICTURES, type SlotTakes, isList, takesSaid } from '../picture/pictures.ts';
import { nearNames } from '../words/near.ts';
import type { Spot } from '../words/spot.ts';
import type { Cell, Remark } from './document.ts';
import {
  type Picturable,
  type Plainly,
  type Worked,
  givenOf,
  sayingLike,
  together,
  workedValues,
} from './picture-values.ts';

/** A picture as it stands. */
export type PictureState =
  | { readonly kind: 'drawn'; readonly name: string; readonly given: Given }
  /** Cells that have no value yet, or are at fault. */
  | { readonly kind: 'waits'; readonly name: string; readonly for: readonly CellId[] }
  /** What it would show is none: no steps, no boards. `slot` says what. */
  | { readonly kind: 'nothing'; readonly name: string; readonly slot: string }
  | { readonly kind: 'wrong'; readonly problems: readonly PictureProblem[] };

export interface PictureProblem {
  readonly code: string;
  readonly message: string;
  /** The remark as it would stand, the best first. Null: without it. */
  readonly mends: readonly { readonly say: string; readonly text: string | null }[];
}

export function pictureRemarks(cell: Cell): readonly Remark[] {
  return cell.remarks.filter((remark) => remark.kind === 'picture');
}

/** `neighbours` are the cells that may be offered for a slot: those of the part. */
export function pictureOf(
  estimate: Picturable,
  cell: Cell,
  remark: Remark,
  neighbours: readonly Cell[],
): PictureState {
  const { text } = remark;
  const asked = askedIn(text);
  const { picture } = asked;
  if (!picture) return { kind: 'wrong', problems: [notKnown(cell, asked, text)] };
  const on = { estimate, cell, text, asked, neighbours };
  const problems: PictureProblem[] = [
    ...asked.unknown.map((each) => slotNotKnown(on, each.text, each)),
    ...twice(on),
  ];
  const values = new Map<string, GivenValue>();
  const waits = new Set<CellId>();
  let isWaiting = false;
  const plain: Plainly[] = [];
  let none: string | null = null;
  for (const slot of asked.slots) {
    const takes = picture.slots[slot.slot];
    if (!takes) throw new Error(`${picture.name} has no slot ${slot.slot}`);
    const worked = slotWorked(on, slot, takes);
    if (worked.kind === 'waits') {
      isWaiting = true;
      for (const id of worked.for) waits.add(id);
    }
    if (worked.kind === 'wrong') problems.push(valueWrong(on, slot, takes, worked));
    if (worked.kind !== 'worked') {
      values.set(slot.slot, NOT_YET);
      continue;
    }
    const given = givenOf(slot.slot, takes, worked.values, estimate.show);
    if (given.kind === 'wrong') problems.push(valueWrong(on, slot, takes, given));
    else if (given.kind !== 'nothing') values.set(slot.slot, given);
    else if (picture.needs.some((way) => way.includes(slot.slot))) none ??= slot.slot;
    plain.push(...worked.values);
  }
  const missing = problems.length === 0 ? missingIn(asked) : [];
  problems.push(...missing.slice(0, 1).map((slot) => slotMissing(on, slot, picture.like)));
  if (problems.length === 0) problems.push(...unlikeLists(on, values));
  if (problems.length > 0) return { kind: 'wrong', problems };
  if (none !== null) return { kind: 'nothing', name: picture.name, slot: none };
  if (isWaiting) return { kind: 'waits', name: picture.name, for: [...waits] };
  const { say, measures } = sayingLike(plain, estimate.show);
  return { kind: 'drawn', name: picture.name, given: new Given(values, say, measures) };
}

const NOT_YET: GivenValue = { kind: 'sizes', sizes: [] };

interface On {
  readonly estimate: Picturable;
  readonly cell: Cell;
  readonly text: string;
  readonly asked: Asked;
  readonly neighbours: readonly Cell[];
}

function slotWorked({ estimate, cell }: On, { values }: AskedSlot, takes: SlotTakes): Worked {
  if (typeof takes === 'object') {
    const [only] = values;
    const word = takes.find((one) => one === only?.text.toLowerCase());
    if (word) return { kind: 'worked', values: [{ value: word, holds: TEXT_HOLDS }] };
  }
  return together(values.map(({ text }) => workedValues(estimate, cell.part, text)));
}

const TEXT_HOLDS = { measure: { kind: 'text', key: 'text' }, showIn: null, written: [] } as const;

const AWAY = { say: 'Take the picture away', text: null };

function notKnown(cell: Cell, { name }: Asked, text: string): PictureProblem {
  const near = nearPictures(name.text);
  const all = PICTURES.map((each) => each.name);
  const list = `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
  return {
    code: 'picture-not-known',
    message: `"${cell.name}" asks for a picture "${name.text}". Drawn here are: ${list}.`,
    mends: [...near.map((one) => ({ say: `Write "${one}"`, text: put(text, name, one) })), AWAY],
  };
}

function slotNotKnown({ asked, cell, text }: On, words: string, at: Spot): PictureProblem {
  const picture = asked.picture ?? PICTURES[0];
  const near = nearSlots(picture, words);
  const [first = '', second = ''] = words.split(/\s+/);
  return {
    code: 'picture-slot-not-known',
    message: `The ${picture.name} of "${cell.name}" can't be told "${words}": it begins with none of the words that it takes. It is written as in "${picture.like}".`,
    mends: [
      ...near.map((slot) => {
        // As many of the words are the slot's as are nearest to it.
        const both = slot.includes(' ') && second !== '' ? `${first} ${second}` : first;
        return {
          say: `Write "${slot}"`,
          text: put(text, { from: at.from, to: at.from + both.length }, slot),
        };
      }),
      without(text, { from: before(text, at.from), to: at.to }, `Leave "${words}" out`),
    ],
  };
}

/** Where the comma before it stands, or itself where none does. */
function before(text: string, at: number): number {
  const lead = /,\s*$/.exec(text.slice(0, at));
  return lead ? at - lead[0].length : at;
}

/** The remark without a stretch; the first slot leaves no comma behind. */
function without(text: string, { from, to }: Spot, say: string) {
  const rest = text.slice(from, to).startsWith(',')
    ? text.slice(to)
    : text.slice(to).replace(/^\s*,\s*/, '');
  return { say, text: (text.slice(0, from) + rest).trim() };
}

function put(text: string, { from, to }: Spot, insert: string): string {
  return text.slice(0, from) + insert + text.slice(to);
}

function twice({ asked, cell, text }: On): readonly PictureProblem[] {
  const seen = new Set<string>();
  return asked.slots.flatMap(({ slot, spot }) => {
    if (!seen.has(slot)) {
      seen.add(slot);
      return [];
    }
    return [
      {
        code: 'picture-slot-twice',
        message: `The picture of "${cell.name}" is told "${slot}" twice.`,
        mends: [without(text, spot, 'Take the second one away')],
      },
    ];
  });
}

function valueWrong(
  on: On,
  asked: AskedSlot,
  takes: SlotTakes,
  { code, why, fixes }: Extract<Worked, { kind: 'wrong' }>,
): PictureProblem {
  const { cell, text } = on;
  const picture = on.asked.picture ?? PICTURES[0];
  const { slot, values, spot } = asked;
  const last = values.at(-1) ?? { text: '', from: spot.to, to: spot.to };
  // A comma and no slot after it: maybe one was meant.
  const comma = text.slice(spot.from + 1, spot.to).lastIndexOf(',');
  const tail = comma < 0 ? null : text.slice(spot.from + 1 + comma + 1, spot.to);
  if (
    code === 'picture-value-not-read' &&
    tail !== null &&
    nearSlots(picture, tail.trim()).length > 0
  ) {
    const from = spot.to - tail.trimStart().length;
    return slotNotKnown(on, tail.trim(), { from, to: spot.to });
  }
  const whole = { from: values[0]?.from ?? spot.to, to: last.to };
  const needed = picture.needs.some((way) => way.includes(slot));
  const offered = candidates(on, slot, takes).map((name) => ({
    say: `Take ${name}`,
    text: put(text, whole, name),
  }));
  const mended =
    values.length === 1
      ? fixes
          .slice(0, 3)
          .map((formula) => ({ say: `Write "${formula}"`, text: put(text, whole, formula) }))
      : [];
  const subject =
    code === 'picture-value-not-read'
      ? `"${slot}" of the ${picture.name} of "${cell.name}" can't be read: ${why}`
      : `In the ${picture.name} of "${cell.name}" ${why}`;
  return {
    code,
    message: subject,
    mends: [
      ...mended,
      ...(code === 'picture-value-odd' ? [] : offered),
      needed ? AWAY : without(text, spot, `Leave "${slot}" out`),
    ],
  };
}

function slotMissing(on: On, slot: string, like: string): PictureProblem {
  const { asked, cell, text } = on;
  const picture = asked.picture ?? PICTURES[0];
  const takes = picture.slots[slot] ?? 'length';
  const bare = text
    .trim()
    .replace(/[,\s]+$/, '')
    .replace(/\s+for$/i, '');
  const lead = asked.slots.length > 0 ? `${bare}, ` : `${bare} for `;
  return {
    code: 'picture-slot-missing',
    message: `The ${picture.name} of "${cell.name}" wants to be told "${slot}" too, ${takesSaid(takes)}. It is written as in "${like}".`,
    mends: [
      ...candidates(on, slot, takes).map((name) => ({
        say: `Say "${slot} ${name}"`,
        text: `${lead}${slot} ${name}`,
      })),
      AWAY,
    ],
  };
}

/** Cells of the part whose value the slot could take: those called like it first. */
function candidates(
  { estimate, neighbours }: On,
  slot: string,
  takes: SlotTakes,
): readonly string[] {
  const fit = neighbours.filter(({ id, table }) => {
    const { outcome, holds } = estimate.state(id);
    if (table || outcome.kind !== 'value' || !holds || typeof outcome.value !== 'object')
      return false;
    return !['wrong', 'nothing'].includes(
      givenOf(slot, takes, [{ value: outcome.value, holds }], estimate.show).kind,
    );
  });
  const names = fit.map(({ name }) => name.toLowerCase());
  const single = slot.replace(/s$/, '');
  const words = single.split(' ');
  const alike = names.filter((name) => words.every((word) => name.includes(word)));
  const near = nearNames(single, names, 2);
  const best = [...new Set([...alike, ...near])];
  return (best.length > 0 ? best : isList(takes) ? [] : names).slice(0, 2);
}

function unlikeLists(
  { asked, cell }: On,
  values: ReadonlyMap<string, GivenValue>,
): readonly PictureProblem[] {
  const long = (slot: string): number => {
    const value = values.get(slot);
    return value?.kind === 'sizes'
      ? value.sizes.length
      : value?.kind === 'counts'
        ? value.counts.length
        : 0;
  };
  return (asked.picture?.alike ?? []).flatMap(([one, other]) => {
    const [a, b] = [long(one), long(other)];
    if (a === 0 || b <= 1 || a === b) return [];
    return [
      {
        code: 'picture-lists-unlike',
        message: `The ${asked.picture?.name} of "${cell.name}" is told ${a} ${one} and ${b} ${other}. Give as many of the one as of the other, or one ${other.replace(/s$/, '')} for all.`,
        mends: [AWAY],
      },
    ];
  });
}
