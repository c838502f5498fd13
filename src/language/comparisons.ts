// Level 2: comparisons, each between two picked values; they don't chain.
import { isNegativeChoice, maybeChoice } from './choices.ts';
import { likeWritten } from './amounts-held.ts';
import { readPicked } from './levels.ts';
import { readSum } from './sums.ts';
import type { Reader } from './reader.ts';
import { tablePhraseAt } from './table-phrases.ts';
import type { Comparison, Formula, Relation } from './tree.ts';
import { byFirstWord } from './words.ts';

/** comparison = picked [ relation picked ] */
export function readComparison(r: Reader): Formula {
  const from = r.token.from;
  if (r.sees('is')) return readQuestion(r, from);
  const left = readPicked(r);
  if (r.problem) return left;
  const alone = r.sees('between') ? 1 : r.sees(',', 'between') ? 2 : 0;
  if (alone > 0 || r.sees('is', 'between') || r.sees('are', 'between')) {
    const opSpot = r.take(alone > 0 ? alone : 2, 'operator');
    r.separating++;
    let low = besideRelation(r, readSum);
    r.separating--;
    if (!r.maybe('and')) {
      return r.fail({
        code: 'phrase-slot',
        spots: [opSpot],
        phrase: 'is between',
        wanted: 'two limits',
        like: 'thickness is between 4 in and 6 in',
        fixes: [
          r.fix('At least that', opSpot, 'is at least'),
          r.fix('At most that', opSpot, 'is at most'),
        ],
      });
    }
    const bare = low.kind === 'amount' && low.bare ? low : null;
    const high = besideRelation(r, readPicked);
    // `between 550 and 700 mm`
    if (bare && high.kind === 'amount' && !high.bare && r.writtenIn) {
      low = likeWritten(r, bare, r.writtenIn);
    }
    return { kind: 'between', opSpot, of: left, low, high, spot: r.since(from) };
  }
  const negative = r.sees('is') && isNegativeChoice(r, left, 1);
  const found = negative ? { words: 1, relation: 'is' as const } : relationAt(r);
  if (!found) return left;
  const opSpot = r.take(found.words, 'operator');
  const right = maybeChoice(r, found.relation, left) ?? besideRelation(r, readPicked);
  const relation = (found.relation === 'is' && maybeOrLess(r)) || found.relation;
  return andAlso(r, { kind: 'comparison', relation, opSpot, left, right, spot: r.since(from) });
}

/** `X is at least 4 in and at most 8 in`, `X is over 4 in but under 8 in`: the same X is compared again. */
function andAlso(r: Reader, first: Comparison): Formula {
  let whole: Formula = first;
  while (!r.problem) {
    const comma = r.sees(',') ? 1 : 0;
    const word = r.peek(comma).text;
    if (word !== 'and' && word !== 'but' && word !== 'or') return whole;
    const is = r.seesAt(comma + 1, 'is') || r.seesAt(comma + 1, 'also') ? 1 : 0;
    const found = AGAIN.get(r.peek(comma + 1 + is).text)?.find(({ words }) =>
      r.seesAll(comma + 1 + is, words),
    );
    if (!found || r.nameAt(comma + 1) || found.words[0] === 'between') return whole;
    r.take(comma + 1, 'operator');
    const opSpot = r.take(is + found.words.length, 'operator');
    const right = besideRelation(r, readPicked);
    const { left } = first;
    const spot = r.since(first.spot.from);
    const again: Formula = {
      kind: 'comparison',
      relation: found.relation,
      opSpot,
      left,
      right,
      spot,
    };
    whole = { kind: word === 'or' ? 'or' : 'and', left: whole, right: again, spot };
  }
  return whole;
}

const RELATIONS: readonly (readonly [string, Relation])[] = [
  ['is not more than', 'at-most'],
  ['is not greater than', 'at-most'],
  ['is not over', 'at-most'],
  ['is no more than', 'at-most'],
  ['is not less than', 'at-least'],
  ['is not under', 'at-least'],
  ['is no less than', 'at-least'],
  ['is more than', 'more'],
  ['is greater than', 'more'],
  ['is less than', 'less'],
  ...['bigger', 'larger', 'longer', 'wider', 'higher', 'deeper', 'thicker'].map(
    (word) => [`is ${word} than`, 'more'] as const,
  ),
  ...['smaller', 'shorter', 'narrower', 'lower', 'thinner', 'fewer'].map(
    (word) => [`is ${word} than`, 'less'] as const,
  ),
  ['is at least', 'at-least'],
  ['is at most', 'at-most'],
  ['is equal to', 'is'],
  ['is exactly', 'is'],
  ['is over', 'more'],
  ['is above', 'more'],
  ['is under', 'less'],
  ['is below', 'less'],
  ['is not', 'is-not'],
  ['is', 'is'],
  ['equals', 'is'],
  ['under', 'less'],
  ['=', 'is'],
  ['≠', 'is-not'],
  ['>', 'more'],
  ['<', 'less'],
  ['≥', 'at-least'],
  ['≤', 'at-most'],
];
export const RELATION_WORDS = RELATIONS.map(([words, relation]) => ({
  words: words.split(' '),
  relation,
}));
const RELATIONS_BY_WORD = byFirstWord(RELATION_WORDS);

/** The other side of a comparison: nothing in it compares once more. */
function besideRelation(r: Reader, read: (r: Reader) => Formula): Formula {
  const { conditions } = r;
  r.conditions = 0;
  r.beside++;
  const side = read(r);
  r.beside--;
  r.conditions = conditions;
  return side;
}

/** In a condition the `is` may be left out: `if materials over $4,000`. */
const WITHOUT_IS = byFirstWord(
  RELATION_WORDS.filter(({ words }) => words[0] === 'is' && words.length > 1 && words[1] !== 'not')
    .map(({ words, relation }) => ({ words: words.slice(1), relation }))
    .concat([{ words: ['exceeds'], relation: 'more' }]),
);

/** Without their `is`, with `not` and `no` as well: what is compared again after `and` or `but`. */
const AGAIN = byFirstWord(
  RELATION_WORDS.filter(
    ({ words }) => words[0] === 'is' && words.length > 1 && words[1] !== 'exactly',
  )
    .map(({ words, relation }) => ({ words: words.slice(1), relation }))
    .filter(({ words }) => words.join(' ') !== 'not'),
);

/** Does `over` compare here? In a condition with no other word that does. */
export function overCompares(r: Reader): boolean {
  if (r.conditions === 0) return false;
  let depth = 0;
  for (let i = 1; i < 40; i++) {
    const { kind, text } = r.peek(i);
    if (kind === 'end') return true;
    if (text === '(') depth++;
    else if (text === ')' && --depth < 0) return true;
    if (depth > 0) continue;
    if (text === 'is' || text === 'over' || COMPARES.has(text)) return false;
    if (ENDS_CONDITION.has(text)) return true;
  }
  return false;
}

const COMPARES: ReadonlySet<string> = new Set(['=', '≠', '>', '<', '≥', '≤', 'equals', 'under']);
const ENDS_CONDITION: ReadonlySet<string> = new Set([
  'then',
  'otherwise',
  'else',
  'and',
  'or',
  ',',
]);

function relationAt(r: Reader): { words: number; relation: Relation } | null {
  if (r.conditions > 0) {
    const bare = WITHOUT_IS.get(r.token.text)?.find(
      ({ words }) => r.seesAll(0, words) && !cutsName(r, words.length),
    );
    const figure = bare && r.sees('at', 'least') && tablePhraseAt(r, 1) !== null;
    if (bare && !figure) return { words: bare.words.length, relation: bare.relation };
  }
  // `if materials are over $4,000`
  const many = r.sees('are') && r.nameAt(0) === null;
  const found = RELATIONS_BY_WORD.get(many ? 'is' : r.token.text)?.find(
    ({ words }) =>
      (many || r.seesAll(0, words)) && r.seesAll(1, words.slice(1)) && !cutsName(r, words.length),
  );
  return found ? { words: found.words.length, relation: found.relation } : null;
}

/** Do the words end within a name? With a cell called Over all, `is over all` compares with it. */
function cutsName(r: Reader, words: number): boolean {
  for (let ahead = 1; ahead < words; ahead++) {
    if (ahead + (r.nameAt(ahead)?.length ?? 0) > words) return true;
  }
  return false;
}

/** `is the deck longer than the slab?`: the question for the statement. */
function readQuestion(r: Reader, from: number): Formula {
  const is = r.take(1, 'operator');
  const left = readPicked(r);
  if (r.problem) return left;
  const found = RELATION_WORDS.find(
    ({ words }) => words[0] === 'is' && words.length > 1 && r.seesAll(0, words.slice(1)),
  );
  if (!found) {
    return r.fail({
      code: 'missing-value',
      spots: [is],
      after: null,
      fixes: [r.fix('Leave "is" out', { from: is.from, to: is.to + 1 }, '')],
    });
  }
  const opSpot = r.take(found.words.length - 1, 'operator');
  const right = readPicked(r);
  const { relation } = found;
  return { kind: 'comparison', relation, opSpot, left, right, spot: r.since(from) };
}

/** `is 4 in or less`: the limit said after its amount. */
function maybeOrLess(r: Reader): Relation | null {
  if (!r.sees('or') || r.choosingOrs.has(r.at)) return null;
  const side = OR_LESS.get(r.peek(1).text);
  if (!side) return null;
  r.take(2, 'operator');
  return side;
}

export const OR_LESS: ReadonlyMap<string, Relation> = new Map(
  Object.entries({
    less: 'at-most',
    fewer: 'at-most',
    under: 'at-most',
    lower: 'at-most',
    more: 'at-least',
    over: 'at-least',
    greater: 'at-least',
    higher: 'at-least',
  }),
);
