// Tokens into a tree: the way in. Parsing never fails; it returns a tree with holes and the first problem found.
import { skipLeads, skipTrails } from './leads-and-trails.ts';
import { readFormula } from './conditions.ts';
import { LONGEST_FORMULA, type Token } from './lexer.ts';
import { Reader } from './reader.ts';
import type { Mark, Surroundings } from './reading.ts';
import { LEAVE_OPEN, type ReadingProblem } from './problems.ts';
import type { CellId, Formula, RecapScope } from './tree.ts';
import { maybeOwnChoice, ownChoiceMissed } from './choices.ts';
import { maybeRange, rangeInside } from './ranges.ts';
import { leftOver } from './left-over.ts';
import type { Vocabulary } from './vocabulary.ts';

export interface Parsed {
  readonly tree: Formula;
  readonly problem: ReadingProblem | null;
  readonly mentions: readonly CellId[];
  readonly recaps: readonly RecapScope[];
  readonly columns: readonly CellId[];
  readonly marks: readonly Mark[];
  readonly askedHolds: boolean;
  /** How many values were read: never more than a few times the tokens. */
  readonly steps: number;
}

/** `surroundings` null: only names are looked for, and shares can't be told from other cells. */
export function parseTokens(
  text: string,
  tokens: readonly Token[],
  vocabulary: Vocabulary,
  part: string,
  self: CellId | null,
  surroundings: Surroundings | null,
): Parsed {
  const r = new Reader(text, tokens, vocabulary, part, self, surroundings, readFormula);
  const tree = whole(r);
  return {
    tree,
    problem: r.problem,
    mentions: r.mentions,
    recaps: r.recaps,
    columns: r.columns,
    marks: r.marks,
    askedHolds: r.askedHolds,
    steps: r.steps,
  };
}

function whole(r: Reader): Formula {
  if (r.text.length > LONGEST_FORMULA) {
    const spots = [{ from: LONGEST_FORMULA, to: r.text.length }];
    return r.fail({ code: 'too-long', spots, length: r.text.length, most: LONGEST_FORMULA });
  }
  if (r.token.kind === 'end') {
    return r.fail({
      code: 'empty',
      spots: [{ from: 0, to: r.text.length }],
      fixes: [{ say: LEAVE_OPEN, formula: '?' }],
    });
  }
  const choice = maybeOwnChoice(r);
  if (choice) return choice;
  skipLeads(r);
  const range = maybeRange(r);
  if (range) return range;
  const tree = readFormula(r);
  if (r.problem) return ownChoiceMissed(r) ?? rangeInside(r) ?? tree;
  skipTrails(r);
  // A comma, a full stop or a question mark at the very end says nothing.
  while (r.sees('.') || r.sees(',') || r.sees('?') || r.sees('please')) {
    if (!r.sees('please') && r.peek(1).kind !== 'end' && !/^[.,?]$|^please$/.test(r.peek(1).text))
      break;
    r.at++;
  }
  const done: boolean = r.peek(0).kind === 'end';
  if (done) return tree;
  const hole = leftOver(r);
  return rangeInside(r) ?? hole;
}
