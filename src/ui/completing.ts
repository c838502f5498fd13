// What the words before the caret could be going to be: names of cells, units and counted things after a number.
import type { Dimension } from '../quantity/dimension.ts';
import type { CellId } from '../language/tree.ts';
import type { Notebook } from '../notebook/document.ts';
import type { Nouns } from '../quantity/nouns.ts';
import { UNITS, unitPhrases } from '../quantity/units.ts';
import { allCells } from './reading-order.ts';

export interface Candidate {
  /** What is put in. */
  readonly text: string;
  /** Every way it may be begun, in lower case. */
  readonly keys: readonly string[];
  /** Where it stands, for telling names apart; empty for the own part and for units. */
  readonly place: string;
  readonly cell: CellId | null;
}

export interface Completion {
  readonly candidate: Candidate;
  /** The stretch of the formula that it replaces. */
  readonly from: number;
  readonly to: number;
}

/** Unasked, a word that may already be meant as it stands is left alone. */
export type Wanted = 'unasked' | 'asked';

const SHOWN_AT_MOST = 8;

/** A name is at most eight words long. */
const WORDS_BACK = 8;

/** Short words that join a formula: they are no beginning of a name unless one asks. */
const JOINING: ReadonlySet<string> = new Set(
  'as at by each every for from if in is least less marked minus more most of on over per plus than the times to total under up with without'.split(
    ' ',
  ),
);

/** Names as they have to be written in this part: with their own part before them where two share one. */
export function namesFor(
  notebook: Notebook,
  part: string,
  self: CellId | null,
): readonly Candidate[] {
  const cells = allCells(notebook).filter((cell) => cell.id !== self);
  const partNames = new Map(notebook.parts.map((p) => [p.key, p.name]));
  const owners = new Map<string, Set<string>>();
  for (const cell of cells) {
    const key = cell.name.toLowerCase();
    owners.set(key, (owners.get(key) ?? new Set()).add(cell.part));
  }
  const own = (key: string): boolean => owners.get(key)?.has(part) ?? false;
  return cells
    .map((cell): Candidate & { readonly near: number } => {
      const key = cell.name.toLowerCase();
      const elsewhere = cell.part !== part;
      const shared = (owners.get(key)?.size ?? 0) > 1 || (elsewhere && own(key));
      const place = elsewhere ? (partNames.get(cell.part) ?? '') : '';
      const text =
        elsewhere && shared && place ? `${place} ${lowered(cell.name)}` : lowered(cell.name);
      return { text, keys: [text.toLowerCase()], place, cell: cell.id, near: elsewhere ? 1 : 0 };
    })
    .sort((a, b) => a.near - b.near);
}

/** One spelling for each unit, those that measure what is wanted first; then what can be counted. */
export function unitsFor(nouns: Nouns, wanted: Dimension | null): readonly Candidate[] {
  const units = UNITS.map((unit) => ({
    text: unit.many,
    keys: [...unitPhrases].flatMap(([phrase, { key }]) => (key === unit.key ? [phrase] : [])),
    fits: wanted !== null && unit.dimension === wanted ? 0 : 1,
  })).sort((a, b) => a.fits - b.fits);
  const counted = [...new Set(nouns.phrases.values())].map((noun) => ({
    text: nouns.many(noun),
    keys: [...nouns.phrases].flatMap(([phrase, one]) => (one === noun ? [phrase] : [])),
  }));
  return [...units, ...counted].map(({ text, keys }) => ({ text, keys, place: '', cell: null }));
}

/** The best few for the words that end at the caret; none in the middle of a word. */
export function completionsAt(
  text: string,
  caret: number,
  names: readonly Candidate[],
  units: readonly Candidate[],
  wanted: Wanted = 'unasked',
): readonly Completion[] {
  if (/^[\p{L}\p{N}]/u.test(text.slice(caret))) return [];
  const before = text.slice(0, caret);
  const unasked = wanted === 'unasked';
  const measured = /[\d½¼¾⅛⅜⅝⅞]\s*([a-z]+(?: [a-z]*)?)$/i.exec(before)?.[1];
  if (measured !== undefined) {
    if (unasked && isWhole(measured, units)) return [];
    const found = starting(units, measured, caret);
    if (found.length > 0) return found.slice(0, SHOWN_AT_MOST);
  }
  const found: Completion[] = [];
  for (const typed of endings(before)) {
    const whole = isWhole(typed, names) || JOINING.has(typed.trim().toLowerCase());
    // A name that stands there whole is no beginning of another one, unless one asks.
    if (unasked && whole) break;
    const at = starting(names, typed, caret);
    const known = new Set(found.map(({ candidate }) => candidate));
    found.push(...at.filter(({ candidate }) => !known.has(candidate)));
    if (whole || found.length >= SHOWN_AT_MOST) break;
  }
  if (found.length === 0 && !unasked && /(^|[\s(,])$/.test(before)) {
    found.push(...names.map((candidate) => ({ candidate, from: caret, to: caret })));
  }
  return found.slice(0, SHOWN_AT_MOST);
}

function isWhole(typed: string, candidates: readonly Candidate[]): boolean {
  const whole = typed.trim().toLowerCase();
  return candidates.some(({ keys }) => keys.includes(whole));
}

/** Those that begin like this, then those with a later word that does. */
function starting(
  candidates: readonly Candidate[],
  typed: string,
  caret: number,
): readonly Completion[] {
  const wanted = typed.toLowerCase();
  const from = caret - typed.length;
  const others = candidates.filter(({ text }) => text.toLowerCase() !== wanted);
  const begins = ({ keys }: Candidate): boolean => keys.some((key) => key.startsWith(wanted));
  const within = ({ keys }: Candidate): boolean => keys.some((key) => key.includes(` ${wanted}`));
  const later = wanted.includes(' ') ? [] : others.filter((one) => !begins(one) && within(one));
  return [...others.filter(begins), ...later].map((candidate) => ({ candidate, from, to: caret }));
}

/** The last words before the caret, longest stretch first; a single letter says too little. */
function endings(before: string): readonly string[] {
  const starts = [...before.matchAll(/(?<![\p{L}\p{N}#])[\p{L}#]/gu)].map((found) => found.index);
  return starts
    .slice(-WORDS_BACK)
    .map((from) => before.slice(from))
    .filter((typed) => typed.trim().length > 1 && !/[,()]/.test(typed));
}

/** A name in the middle of a formula: small, unless it is all capitals. */
function lowered(name: string): string {
  const [first = ''] = name.split(' ');
  if (first.length > 1 && first === first.toUpperCase()) return name;
  return name.charAt(0).toLowerCase() + name.slice(1);
}
