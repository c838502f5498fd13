// What the words before the caret could be going to be: names of cells, units after a number.
import type { CellId } from '../language/tree.ts';
import type { Notebook } from '../notebook/document.ts';
import { allCells } from './reading-order.ts';

export interface Candidate {
  readonly kind: 'name' | 'unit';
  /** What is put in. */
  readonly text: string;
  /** Lower case, for comparing. */
  readonly key: string;
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

const SHOWN_AT_MOST = 8;

/** A name is at most eight words long. */
const WORDS_BACK = 8;

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
      return {
        kind: 'name',
        text,
        key: text.toLowerCase(),
        place,
        cell: cell.id,
        near: elsewhere ? 1 : 0,
      };
    })
    .sort((a, b) => a.near - b.near);
}

export function unitsFor(phrases: Iterable<string>): readonly Candidate[] {
  return [...phrases].map((text) => ({ kind: 'unit', text, key: text, place: '', cell: null }));
}

/** The best few for the words that end at the caret; none in the middle of a word. */
export function completionsAt(
  text: string,
  caret: number,
  names: readonly Candidate[],
  units: readonly Candidate[],
): readonly Completion[] {
  if (/^[\p{L}\p{N}]/u.test(text.slice(caret))) return [];
  const before = text.slice(0, caret);
  const afterNumber = /[\d½¼¾⅛⅜⅝⅞]\s*([a-z]+(?: [a-z]*)?)$/i.exec(before)?.[1];
  const found: Completion[] = [];
  if (afterNumber !== undefined) {
    found.push(...starting(units, afterNumber, caret));
    if (found.length > 0) return found.slice(0, SHOWN_AT_MOST);
  }
  for (const typed of endings(before)) {
    const whole = names.some(({ key }) => key === typed.toLowerCase());
    const at = starting(names, typed, caret);
    const known = new Set(found.map(({ candidate }) => candidate));
    found.push(...at.filter(({ candidate }) => !known.has(candidate)));
    // A name that stands there whole is no beginning of another one, unless that one goes on from it.
    if (whole || found.length >= SHOWN_AT_MOST) break;
  }
  return found.slice(0, SHOWN_AT_MOST);
}

/** Those whose text begins like this, then those with a later word that does. */
function starting(
  candidates: readonly Candidate[],
  typed: string,
  caret: number,
): readonly Completion[] {
  const wanted = typed.toLowerCase();
  const from = caret - typed.length;
  const first = candidates.filter(({ key }) => key.startsWith(wanted) && key !== wanted);
  const later = wanted.includes(' ')
    ? []
    : candidates.filter(({ key }) => !key.startsWith(wanted) && key.includes(` ${wanted}`));
  return [...first, ...later].map((candidate) => ({ candidate, from, to: caret }));
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
