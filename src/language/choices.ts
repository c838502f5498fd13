// Texts that need no quotes: what may be chosen for a cell, after `is` and `is not` on it and as its own value.
import { nearNames } from '../words/near.ts';
import type { Reader } from './reader.ts';
import { sizeAt } from './sizes.ts';
import type { Formula, Relation, Words } from './tree.ts';
import { choiceAt } from './listed-choices.ts';

/** The whole formula is one of the choices of its own cell. */
export function maybeOwnChoice(r: Reader): Formula | null {
  const choices = r.self === null ? null : r.vocabulary.choicesOf(r.self);
  if (!choices) return null;
  const found = choiceAt(r.tokens, r.at, choices) ?? sizeChoiceAt(r, choices);
  if (!found || r.peek(found.length).kind !== 'end') return null;
  return takeChoice(r, found);
}

/** A cell with choices whose text is none of them and can't be read as anything else. */
export function ownChoiceMissed(r: Reader): Formula | null {
  const choices = r.self === null ? null : r.vocabulary.choicesOf(r.self);
  if (!choices || r.problem?.code !== 'unknown-name') return null;
  r.problem = null;
  return missed(r, { from: r.tokens[0]?.from ?? 0, to: r.text.trimEnd().length }, choices);
}

/** `species is hem-fir`, where species has choices. Null: what follows is read as usual. */
export function maybeChoice(r: Reader, relation: Relation, left: Formula): Formula | null {
  if ((relation !== 'is' && relation !== 'is-not') || left.kind !== 'name') return null;
  const choices = r.vocabulary.choicesOf(left.cell);
  return choices ? expectChoice(r, choices) : null;
}

/** `delivery is not needed`, where "not needed" is a choice and "needed" is none: the choice, so many tokens ahead. */
export function isNegativeChoice(r: Reader, left: Formula, ahead: number): boolean {
  if (left.kind !== 'name' || !r.seesAt(ahead, 'not')) return false;
  const choices = r.vocabulary.choicesOf(left.cell);
  if (!choices || choiceAt(r.tokens, r.at + ahead + 1, choices)) return false;
  return choiceAt(r.tokens, r.at + ahead, choices) !== null;
}

/** One of these texts without quotes; the longest wins. A text in quotes or a name is left to be read as usual. */
export function expectChoice(r: Reader, choices: readonly string[]): Formula | null {
  const found = choiceAt(r.tokens, r.at, choices) ?? sizeChoiceAt(r, choices);
  if (found) return takeChoice(r, found);
  if (r.token.kind === 'quoted' || r.sees('(') || r.sees('[')) return null;
  if (r.vocabulary.nameAt(r.tokens, r.at, r.part, r.self)) return null;
  if (r.token.kind === 'end') return null;
  let count = 1;
  while (count < 6 && isChoiceWord(r, count)) count++;
  return missed(r, { from: r.token.from, to: r.peek(count - 1).to }, choices);
}

/** A size among the choices, however it is typed: `2×8`, `2X8`. */
function sizeChoiceAt(
  r: Reader,
  choices: readonly string[],
): { readonly length: number; readonly text: string } | null {
  const seen = sizeAt(r, 0, 'blanks');
  return seen && choices.includes(seen.text) ? seen : null;
}

function isChoiceWord(r: Reader, ahead: number): boolean {
  const { kind, text, gap } = r.peek(ahead);
  if (kind === 'word' || kind === 'number') return text !== 'and' && text !== 'or';
  return kind === 'symbol' && !gap && text !== ',' && text !== ')';
}

function takeChoice(r: Reader, found: { readonly length: number; readonly text: string }): Words {
  return { kind: 'words', text: found.text, chosen: true, spot: r.take(found.length, 'amount') };
}

function missed(
  r: Reader,
  spot: { from: number; to: number },
  choices: readonly string[],
): Formula {
  const word = r.slice(spot);
  const near = nearNames(word, choices, 3);
  const offered = near.length > 0 ? near : choices.slice(0, 4);
  return r.fail({
    code: 'not-a-choice',
    spots: [spot],
    word,
    choices,
    fixes: offered.map((choice) => {
      // `is not neded`, where "not needed" is a choice: the "not" that is written is the choice's own.
      const before = r.tokens[r.at - 1];
      const own = /^not\b/.test(choice) && before?.text === 'not' && before.to <= spot.from;
      return r.fix(`Choose "${choice}"`, own ? { from: before.from, to: spot.to } : spot, choice);
    }),
  });
}
