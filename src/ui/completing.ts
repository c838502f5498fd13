// What could stand at the caret, by what it means there: names of cells, units and counted things after a number,
// phrases and clauses of the language, columns and what stands in them. What fits best comes first.
import type { Dimension } from '../quantity/dimension.ts';
import type { CellId } from '../language/tree.ts';
import type { Notebook } from '../notebook/document.ts';
import type { Nouns } from '../quantity/nouns.ts';
import { UNITS, unitPhrases } from '../quantity/units.ts';
import type { ColumnsOffered } from './columns-offered.ts';
import { allCells } from './reading-order.ts';

export interface Candidate {
  /** What is put in. */
  readonly text: string;
  /** Every way it may be begun, in lower case. */
  readonly keys: readonly string[];
  /** Where it stands, for telling names apart; empty for the own part and for units. */
  readonly place: string;
  readonly cell: CellId | null;
  /** How it is shown where that is not what is put in: a phrase with its slots. */
  readonly label?: string;
  /** What is said beside it, worked out when it is shown. */
  readonly hint?: () => string;
}

/** What is known of the formula and of the notebook around it. */
export interface Sense {
  /** Do names go at this place, and is just that wanted there for which some fit? */
  place(from: number): 'value' | 'wanted value' | 'clause';
  /** How well a cell fits at a place: the lower the better, 0 is just what is wanted. */
  fit(cell: CellId, from: number): number;
  /** Phrases that could begin here, those that a person has begun by these words among them. */
  phrases(from: number, typed: string): readonly Candidate[];
  columns(before: string): ColumnsOffered | null;
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
/** Of these, where there are so many. */
const PHRASES_AT_LEAST = 3;

/** A name is at most eight words long. */
const WORDS_BACK = 8;

/** Short words that join a formula: they are no beginning of a name unless one asks. */
const JOINING: ReadonlySet<string> = new Set(
  'as at by each every for from if in is least less marked minus more most of on over per plus than the times to total under up with without'.split(
    ' ',
  ),
);

/**
 * Names as they have to be written in this part, with their own part before them where two share one: the own
 * part's first, then those of parts nearby, then by name.
 */
export function namesFor(
  notebook: Notebook,
  part: string,
  self: CellId | null,
): readonly Candidate[] {
  const cells = allCells(notebook).filter((cell) => cell.id !== self);
  const partNames = new Map(notebook.parts.map((p) => [p.key, p.name]));
  const places = new Map(notebook.parts.map((p, place) => [p.key, place]));
  const here = places.get(part) ?? 0;
  const owners = new Map<string, Set<string>>();
  for (const cell of cells) {
    const key = cell.name.toLowerCase();
    owners.set(key, (owners.get(key) ?? new Set()).add(cell.part));
  }
  const own = (key: string): boolean => owners.get(key)?.has(part) ?? false;
  return cells
    .map((cell): Candidate & { readonly far: number } => {
      const key = cell.name.toLowerCase();
      const elsewhere = cell.part !== part;
      const shared = (owners.get(key)?.size ?? 0) > 1 || (elsewhere && own(key));
      const place = elsewhere ? (partNames.get(cell.part) ?? '') : '';
      const text =
        elsewhere && shared && place ? `${place} ${lowered(cell.name)}` : lowered(cell.name);
      const far = Math.abs((places.get(cell.part) ?? 0) - here);
      return { text, keys: [text.toLowerCase()], place, cell: cell.id, far };
    })
    .sort((a, b) => a.far - b.far || a.text.localeCompare(b.text, 'en', { numeric: true }));
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
  sense: Sense = NO_SENSE,
): readonly Completion[] {
  if (/^[\p{L}\p{N}]/u.test(text.slice(caret))) return [];
  const before = text.slice(0, caret);
  const unasked = wanted === 'unasked';
  const inTable = sense.columns(before);
  const ofTable = inTable ? inTableAt(inTable, before) : [];
  if (inTable?.alone === 'alone' && ofTable.length > 0) return ofTable.slice(0, SHOWN_AT_MOST);
  const measured = /[\d½¼¾⅛⅜⅝⅞]\s*([a-z]+(?: [a-z]*)?)$/i.exec(before)?.[1];
  if (measured !== undefined) {
    if (unasked && isWhole(measured, units)) return [];
    const found = starting(units, measured, caret);
    if (found.length > 0) return found.slice(0, SHOWN_AT_MOST);
  }
  const found: Completion[] = [];
  const phrases: Completion[] = [];
  for (const typed of endings(before)) {
    const from = caret - typed.length;
    const joins = JOINING.has(typed.trim().toLowerCase());
    const whole = isWhole(typed, names);
    if (!unasked || !whole) {
      const begun = sense
        .phrases(from, typed)
        .filter(({ keys, text }) => begins(keys, typed) && text.trim() !== typed.trim());
      phrases.push(...begun.map((candidate) => ({ candidate, from, to: caret })));
    }
    // A name that stands there whole is no beginning of another one, unless one asks.
    if (unasked && (whole || joins)) break;
    const at = byFit(starting(names, typed, caret), sense);
    const known = new Set(found.map(({ candidate }) => candidate));
    found.push(...at.filter(({ candidate }) => !known.has(candidate)));
    if (whole || joins || found.length >= SHOWN_AT_MOST) break;
  }
  if (found.length === 0 && phrases.length === 0 && /(^|[\s(,])$/.test(before)) {
    return [...ofTable, ...atBlank(caret, names, sense, wanted)].slice(0, SHOWN_AT_MOST);
  }
  return shared([...ofTable, ...found], phrases);
}

/** Where nothing is typed yet: what fits there, unasked only where something is wanted that some fit. */
function atBlank(
  caret: number,
  names: readonly Candidate[],
  sense: Sense,
  wanted: Wanted,
): readonly Completion[] {
  const here = (candidate: Candidate): Completion => ({ candidate, from: caret, to: caret });
  const place = sense.place(caret);
  if (wanted === 'unasked') {
    if (place !== 'wanted value') return [];
    const fit = (one: Candidate): number => (one.cell === null ? 3 : sense.fit(one.cell, caret));
    return byFit(names.filter((one) => fit(one) <= 1).map(here), sense);
  }
  const phrases = sense.phrases(caret, '').map(here);
  return place === 'clause' ? phrases : shared(byFit(names.map(here), sense), phrases);
}

/** The list is short: names first, and room for some phrases. */
function shared(
  names: readonly Completion[],
  phrases: readonly Completion[],
): readonly Completion[] {
  const room = SHOWN_AT_MOST - Math.min(phrases.length, PHRASES_AT_LEAST);
  return [...names.slice(0, room), ...phrases].slice(0, SHOWN_AT_MOST);
}

function byFit(found: readonly Completion[], sense: Sense): readonly Completion[] {
  const fits = found.map((one) => {
    const { cell } = one.candidate;
    return [cell === null ? 0 : sense.fit(cell, one.from), one] as const;
  });
  return fits.sort(([a], [b]) => a - b).map(([, one]) => one);
}

function inTableAt({ from, candidates }: ColumnsOffered, before: string): readonly Completion[] {
  const typed = before.slice(from).toLowerCase();
  const fitting = candidates.filter(
    ({ keys, text }) => begins(keys, typed) && text.toLowerCase() !== typed,
  );
  return fitting.map((candidate) => ({ candidate, from, to: before.length }));
}

function begins(keys: readonly string[], typed: string): boolean {
  return keys.some((key) => key.startsWith(typed.toLowerCase()));
}

/** Where nothing is known but names. */
const NO_SENSE: Sense = {
  place: () => 'value',
  fit: () => 0,
  phrases: () => [],
  columns: () => null,
};

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
  const opens = ({ keys }: Candidate): boolean => begins(keys, wanted);
  const within = ({ keys }: Candidate): boolean => keys.some((key) => key.includes(` ${wanted}`));
  const later = wanted.includes(' ') ? [] : others.filter((one) => !opens(one) && within(one));
  return [...others.filter(opens), ...later].map((candidate) => ({ candidate, from, to: caret }));
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
