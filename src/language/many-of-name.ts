// So many of what a cell holds, its name said in the plural: `29 row pitches`, `2 slab lengths`.
import { singularOf } from '../quantity/nouns.ts';
import type { Token } from './lexer.ts';
import { expectNumber } from './numbers.ts';
import type { Reader } from './reader.ts';
import { counts } from './unknown-words.ts';
import type { Formula } from './tree.ts';

/** A number and the plural of a name right after it; null where a unit or a noun is as long, or nothing is named so. */
export function manyOfName(r: Reader): Formula | null {
  if (r.token.kind !== 'number' || r.peek(1).kind !== 'word' || r.nameAt(0)) return null;
  const { at, brackets } = r;
  const { from } = r.token;
  const marks = r.marks.length;
  const length = pluralNameLength(r);
  if (length === 0) return null;
  const number = expectNumber(r);
  if (!number || r.at !== at + 1) {
    r.goBack(at, marks, brackets);
    return null;
  }
  const opSpot = { from: r.since(from).to, to: r.token.from };
  const left = r.number(r.tokens[at]?.text.replaceAll(',', '') ?? '1', number.say, r.since(from));
  r.marks.push({ ...left.spot, kind: 'amount', cell: null });
  const cell = cellAt(r, length);
  if (cell === null) return null;
  const spot = r.take(length, 'name', cell);
  r.mention(cell);
  const say = r.vocabulary.wayToSay(cell, r.part, r.self);
  const right: Formula = { kind: 'name', cell, say, spot };
  return { kind: 'binary', op: 'times', opSpot, left, right, spot: r.since(from) };
}

/** How many words after the number are the plural of a name; 0 for none. */
function pluralNameLength(r: Reader): number {
  // `12 times 4 ft` beside a cell Time.
  if (counts(r.peek(1).text)) return 0;
  const at = r.at + 1;
  const known = Math.max(
    r.vocabulary.unitAt(r.tokens, at)?.length ?? 0,
    r.vocabulary.nounAt(r.tokens, at)?.length ?? 0,
    r.nameAt(1)?.length ?? 0,
  );
  for (let length = 4; length > known; length--) {
    const last = r.peek(length);
    if (last.kind === 'word' && last.text.endsWith('s') && found(r, 1, length) !== null)
      return length;
  }
  return 0;
}

function cellAt(r: Reader, length: number): number | null {
  return found(r, 0, length);
}

function found(r: Reader, ahead: number, length: number): number | null {
  const from = r.at + ahead;
  const tokens: Token[] = r.tokens.slice(from, from + length);
  const last = tokens.at(-1);
  if (!last || tokens.some(({ kind }) => kind !== 'word')) return null;
  const singular = singularOf(last.text);
  if (singular === last.text) return null;
  const end = { kind: 'end', text: '', from: last.to, to: last.to, gap: true } as const;
  const words = [...tokens.slice(0, -1), { ...last, text: singular }, end];
  const name = r.vocabulary.nameAt(words, 0, r.part, r.self);
  const [cell, ...more] = name?.cells ?? [];
  if (name?.length !== length || cell === undefined || more.length > 0) return null;
  return r.vocabulary.table(cell) ? null : cell;
}
