// A formula's names before anything is measured: what it needs, so that the cells can be put in order.
import { parseTokens } from './parse.ts';
import { type Token, formulaTokens } from './lexer.ts';
import type { Reading, Scan } from './reading.ts';
import type { CellId, Formula } from './tree.ts';
import type { Vocabulary } from './vocabulary.ts';

/** What this floor keeps in a scan. */
export interface ScanInner {
  readonly tokens: readonly Token[];
  /** The tree, where how it reads hangs on no named cell; else null, and it is read again. */
  readonly tree: Formula | null;
  readonly vocabulary: Vocabulary;
}

/** Finds the names and recaps in a formula. `part` is the key of its part; `self` the cell it belongs to. */
export function scan(
  text: string,
  vocabulary: Vocabulary,
  part: string,
  self: CellId | null,
): Scan {
  const tokens = formulaTokens(text);
  const r = parseTokens(text, tokens, vocabulary, part, self, null);
  const mentions = r.problem ? sweep(tokens, vocabulary, part, self, r.mentions) : r.mentions;
  const settled = !r.problem && !r.askedHolds && r.recaps.length === 0;
  const inner: ScanInner = settled
    ? { tokens: NO_TOKENS, tree: r.tree, vocabulary }
    : { tokens, tree: null, vocabulary };
  return {
    text,
    part,
    self,
    mentions,
    recaps: r.recaps,
    columns: r.columns,
    words: wordsOf(tokens),
    given: isGiven(r.tree),
    inner,
  };
}

/** Could it make a difference to this formula that a name of these words came or went? */
export function turnsOn(
  words: readonly string[],
  text: string,
  vocabulary: Vocabulary,
  part: string,
  self: CellId | null,
): boolean {
  return vocabulary.turnsOn(words, formulaTokens(text), part, self);
}

/**
 * Would reading come to the same as it did? Asked after names came or went that this formula has the words of;
 * what the cells it names hold is taken to be the same.
 */
export function readsAsBefore(found: Scan, before: Reading): boolean {
  const { tree } = found.inner as ScanInner;
  if (tree === null || before.problems.length > 0) return false;
  if (compared?.one !== tree || compared.other !== before.tree) {
    compared = { one: tree, other: before.tree, same: isSame(tree, before.tree) };
  }
  return compared.same;
}

/** The trees that were compared last: thousands of rows of a column share theirs and ask one after the other. */
let compared: { readonly one: Formula; readonly other: Formula; readonly same: boolean } | null =
  null;

/** Are two plain values built alike? On a stack of its own: trees may be deep. */
function isSame(one: unknown, other: unknown): boolean {
  const pairs: [unknown, unknown][] = [[one, other]];
  for (let pair = pairs.pop(); pair; pair = pairs.pop()) {
    const [a, b] = pair;
    if (a === b) continue;
    if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
    const keys = Object.keys(a);
    if (keys.length !== Object.keys(b).length) return false;
    for (const key of keys) pairs.push([a[key as keyof typeof a], b[key as keyof typeof b]]);
  }
  return true;
}

/** Numbers and marks stand in nearly every formula and make no name by themselves. */
function wordsOf(tokens: readonly Token[]): readonly string[] {
  const words: string[] = [];
  for (const { kind, text } of tokens) {
    if (kind === 'word' && !words.includes(text)) words.push(text);
  }
  return words;
}

/** A settled formula is not read again: there is one scan a cell while a notebook is opened. */
const NO_TOKENS: readonly Token[] = [];

const GIVEN_KINDS: ReadonlySet<Formula['kind']> = new Set([
  'amount',
  'range',
  'words',
  'size',
  'yes-no',
]);

function isGiven(tree: Formula): boolean {
  if (tree.kind === 'negative') return tree.of.kind === 'amount';
  return GIVEN_KINDS.has(tree.kind);
}

/** In a formula that can't be read, every name that stands anywhere still counts: it may be mended, or renamed. */
function sweep(
  tokens: readonly Token[],
  vocabulary: Vocabulary,
  part: string,
  self: CellId | null,
  read: readonly CellId[],
): readonly CellId[] {
  const mentions = [...read];
  for (let at = 0; at < tokens.length; at++) {
    const found = vocabulary.nameAt(tokens, at, part, self);
    if (!found) continue;
    for (const id of found.cells) if (!mentions.includes(id)) mentions.push(id);
    at += found.length - 1;
  }
  return mentions;
}
