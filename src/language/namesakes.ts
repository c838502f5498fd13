// The cells of one name, and which of them a formula reaches.
import type { CellId } from './tree.ts';
import type { Token } from './lexer.ts';

/** A name found at a token: how many tokens it takes, and the cell; several when parts share it. */
export interface NameFound {
  readonly length: number;
  readonly cells: readonly CellId[];
}

/** The cells of one name. A job of many like sections has many of them, so each part's are found at once. */
export interface Namesakes {
  readonly words: readonly string[];
  /** The ways in which cells write it. */
  readonly spellings: string[];
  /** Lowest id first, here as there: what a formula means hangs on no history. */
  readonly all: CellId[];
  /** By the key of their part. */
  readonly byPart: Map<string, CellId[]>;
  /** With an operator word in it a name is read in another part only with its own part's name before it. */
  readonly needsPart: boolean;
}

export function standsAt(words: readonly string[], tokens: readonly Token[], at: number): boolean {
  return words.every((word, i) => tokens[at + i]?.text === word);
}

/** The own part's first; else those of other parts that can be read without their part's name. */
export function inReach(
  all: readonly Namesakes[],
  part: string,
  self: CellId | null,
): readonly CellId[] {
  for (const { byPart } of all) {
    for (const id of byPart.get(part) ?? NONE) if (id !== self) return [id];
  }
  const several: CellId[] = [];
  for (const { all: ids, byPart, needsPart } of all) {
    for (const id of needsPart ? (byPart.get('') ?? NONE) : ids) {
      if (id !== self) several.push(id);
      if (several.length === SEVERAL) return several;
    }
  }
  return several;
}

const NONE: readonly CellId[] = [];

/** No more are told of a name that many parts share: it is one too many with the second. */
const SEVERAL = 8;

export function ofParts(
  all: readonly Namesakes[],
  parts: readonly string[],
  self: CellId | null,
): readonly CellId[] {
  const found: CellId[] = [];
  for (const { byPart } of all) {
    for (const part of parts) {
      for (const id of byPart.get(part) ?? NONE) if (id !== self) found.push(id);
    }
  }
  return found;
}

/** Into ascending ids; most come last. */
export function insert(id: CellId, ids: CellId[]): void {
  let at = ids.length;
  while (at > 0 && (ids[at - 1] ?? 0) > id) at--;
  ids.splice(at, 0, id);
}
