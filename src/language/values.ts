// Levels 6 and 7: amounts, names, brackets, and the phrases that stand where a value is needed.
import { afterAmount } from './after-amount.ts';
import { expectAmount, seesAmount, termAfter, writtenAmount } from './amounts.ts';
import { skipOfStuff } from './asides.ts';
import { refuseCall } from './calls.ts';
import { oneOf } from './clauses.ts';
import { ARTICLES } from './lexer.ts';
import { partOf, phraseAt, piecesOf } from './phrases.ts';
import type { Fix } from '../words/report.ts';
import { LEAVE_OPEN, LEAVE_OUT } from './problems.ts';
import { DEEPEST, type Reader } from './reader.ts';
import { besideSize, maybeSized, sizedOf } from './sized.ts';
import { sizeStandsAt, takeSize } from './sizes.ts';
import { barsSpaced, readSpaced, spacedOpening } from './spaced.ts';
import type { TableShape } from './table-shape.ts';
import type { Formula } from './tree.ts';
import { plainName } from './vocabulary.ts';
import { OPERATOR_WORDS } from './words.ts';

/** value = sign value | prime { 'squared' | 'cubed' } */
export function expectValue(r: Reader): Formula {
  if (r.depth >= DEEPEST) {
    return r.fail({ code: 'too-deep', spots: [r.token], most: DEEPEST });
  }
  r.depth++;
  r.steps++;
  const value = signed(r);
  r.depth--;
  return value;
}

function signed(r: Reader): Formula {
  const from = r.token.from;
  if (r.sees('-')) {
    r.take(1, 'operator');
    const of = expectValue(r);
    return { kind: 'negative', of, spot: r.since(from) };
  }
  let value = prime(r);
  for (;;) {
    const power = r.sees('squared') || r.sees('²') ? 2 : r.sees('cubed') || r.sees('³') ? 3 : null;
    if (!power) return value;
    r.take(1, 'operator');
    value = { kind: 'power', of: value, power, spot: r.since(from) };
  }
}

function prime(r: Reader): Formula {
  if (r.sees('(') || r.sees('[')) {
    const bracket = expectBracket(r);
    if (r.problem) return bracket;
    const pieces = sizedOf(r, bracket) ?? maybePieces(r, bracket);
    if (!pieces) skipOfStuff(r, 'measure');
    return pieces ?? bracket;
  }
  if (r.sees('a') || r.sees('an') || r.sees('the')) {
    // `a 20% margin`, `a quarter inch`, `the 12 ft`
    r.at++;
    if (!seesAmount(r)) r.at--;
  }
  // A name that begins with a number is no amount: `2x8 joists`, `1st step`.
  if (r.token.kind === 'number' && r.nameAt(0)) return afterName(r, expectName(r));
  if (r.sees('rebar') && !r.nameAt(0)) {
    const { from } = r.token;
    r.take(1, 'phrase');
    const bars = barsSpaced(r, from);
    if (bars) return bars;
    r.at--;
    r.marks.pop();
  }
  if (r.sees('one') || r.token.text === '1') {
    const opening = spacedOpening(r, 0);
    if (opening > 0) return readSpaced(r, opening);
  }
  const sized = maybeSized(r);
  if (sized) return sized;
  if (seesAmount(r)) {
    r.joinsInches = r.separating === 0;
    const amount = expectAmount(r);
    r.joinsInches = false;
    return afterAmount(r, amount);
  }
  if (r.token.kind === 'quoted') {
    const text = r.token.text;
    return { kind: 'words', text, spot: r.take(1, 'amount') };
  }
  const one = maybeOne(r);
  if (one) return afterAmount(r, one);
  const call = refuseCall(r);
  if (call) return call;
  const name = r.nameAt(0);
  const phrase = phraseAt(r);
  if (phrase && phrase.opening > (name?.length ?? 0)) return phrase.read(r);
  if (name) return afterName(r, expectName(r));
  if (r.sees('yes') || r.sees('no')) {
    const value = r.sees('yes');
    return { kind: 'yes-no', value, spot: r.take(1, 'amount') };
  }
  return missing(r);
}

/** `a pair of hinges`, `an hour at labour rate`: one of it. Names and phrases that begin so win. */
function maybeOne(r: Reader): Formula | null {
  if (!(r.sees('a') || r.sees('an')) || r.nameAt(0)) return null;
  const term = termAfter(r, 1);
  if (!term || term.term.count !== null || phraseAt(r)) return null;
  const { from } = r.token;
  r.at++;
  const one = oneOf(r);
  return { ...one, spot: r.since(from) };
}

/** One amount, one name or one bracket: what a phrase or clause takes. */
export function expectSlot(r: Reader): Formula {
  if (r.token.kind === 'number' && r.nameAt(0)) return expectName(r);
  const size = sizeStandsAt(r, 0);
  if (size) return takeSize(r, size);
  if (seesAmount(r)) return expectAmount(r);
  if (r.sees('(') || r.sees('[')) return expectBracket(r);
  if (r.nameAt(0)) return expectName(r);
  if (r.sees('-') && !r.peek(1).gap) return expectValue(r);
  r.skipArticle();
  if (seesAmount(r)) return expectAmount(r);
  if (r.sees('pi')) return expectValue(r);
  return missing(r);
}

/**
 * How many tokens ahead the slot ends that begins so many ahead; -1 where none does. Brackets are
 * skipped, not read, so that looking ahead never costs more than the text is long.
 */
export function slotEnd(r: Reader, ahead: number): number {
  const token = r.peek(ahead);
  if (token.text === '(' || token.text === '[') {
    const close = r.closing.get(r.at + ahead);
    return close === undefined ? -1 : close + 1 - r.at;
  }
  const { at, brackets } = r;
  const marks = r.marks.length;
  r.at += ahead;
  let end = -1;
  if (seesAmount(r)) {
    writtenAmount(r);
    if (!r.problem) end = r.at - at;
  } else {
    const name = r.nameAt(0);
    if (name) end = ahead + name.length;
  }
  r.goBack(at, marks, brackets);
  return end;
}

export function seesSlot(r: Reader): boolean {
  if (seesAmount(r) || r.sees('(') || r.sees('[') || r.nameAt(0) !== null) return true;
  return sizeStandsAt(r, 0) !== null;
}

/** The name that stands here, already known to be one. */
export function expectName(r: Reader): Formula {
  const found = r.nameAt(0);
  const id = found?.cells[0];
  if (!found || id === undefined) return missing(r);
  if (found.cells.length > 1) return ambiguous(r, found.length, found.cells);
  const table = r.vocabulary.table(id);
  if (table) return notAValue(r, found.length, table);
  const skipped = found.length > 1 ? r.token : null;
  const spot = r.take(found.length, 'name', id);
  r.mention(id);
  const cell = r.vocabulary.cell(id);
  const name = plainName(cell?.name ?? '');
  const words = r.vocabulary.wordsOf(cell?.name ?? '').length;
  const article = skipped && ARTICLES.has(skipped.text) ? 1 : 0;
  const qualified = found.length - article > words;
  const say = qualified ? `${r.vocabulary.partName(cell?.part ?? '')} ${name}` : name;
  return { kind: 'name', cell: id, say, spot };
}

function afterName(r: Reader, name: Formula): Formula {
  if (name.kind !== 'name') return name;
  const pieces = sizedOf(r, name) ?? maybePieces(r, name);
  if (pieces) return pieces;
  if ((r.sees('of') || r.sees('on')) && !r.sees('on', 'top')) {
    if (r.holdsShare(name)) return partOf(r, name);
    const { at } = r;
    skipOfStuff(r, 'measure');
    if (r.at === at && !r.surroundings) return partOf(r, name);
  }
  return name;
}

function maybePieces(r: Reader, count: Formula): Formula | null {
  const follows = r.sees('pieces', 'of') || r.sees('piece', 'of') || r.sees('of');
  return follows ? piecesOf(r, count) : null;
}

/** A table is no amount: one of its columns may be added up, or a row read off it. */
function notAValue(r: Reader, length: number, table: TableShape): Formula {
  const spot = { from: r.token.from, to: r.peek(length - 1).to };
  const words = r.slice(spot);
  r.mention(table.id);
  const columns = table.columns.filter((c) => c.texts === null && c.name !== '').slice(-3);
  return r.fail({
    code: 'table-not-a-value',
    spots: [spot],
    table: table.name,
    fixes: [
      ...columns.map((c) =>
        r.fix(`Add up ${plainName(c.name)}`, spot, `(total of ${plainName(c.name)} in ${words})`),
      ),
      r.fix('Count its rows', spot, `(how many ${words})`),
    ],
  });
}

function ambiguous(r: Reader, length: number, cells: readonly number[]): Formula {
  const spot = { from: r.token.from, to: r.peek(length - 1).to };
  for (const id of cells) r.mention(id);
  const choices = cells.map((id) => {
    const cell = r.vocabulary.cell(id);
    return `${r.vocabulary.partName(cell?.part ?? '')} ${plainName(cell?.name ?? '')}`.trim();
  });
  return r.fail({
    code: 'ambiguous-name',
    spots: [spot],
    word: r.slice(spot),
    choices,
    fixes: choices.map((say) => r.fix(`Use "${say}"`, spot, say)),
  });
}

function expectBracket(r: Reader): Formula {
  const open = r.token;
  r.at++;
  r.brackets++;
  const { conditions } = r;
  r.conditions = 0;
  const inner = r.readFormula(r);
  r.conditions = conditions;
  if (r.problem) return inner;
  if (!r.sees(')') && !r.sees(']')) {
    const atEnd = r.token.kind === 'end';
    if (!atEnd) return leftOver(r);
    return r.fail({
      code: 'unclosed-bracket',
      spots: [{ from: open.from, to: open.to }],
      fixes: [{ say: 'Close it at the end', formula: r.text.trimEnd() + ')' }],
    });
  }
  r.at++;
  r.brackets--;
  // The brackets belong to the spot, so that a fix can move the whole.
  return closedWhole({ ...inner, spot: r.since(open.from) });
}

/**
 * `(1 − 10%) plus 20%`: shares taken from a bare 1 end where it is closed, so that closing stays in the tree.
 * Any other brackets are told by the tree's shape.
 */
export function closedWhole(tree: Formula): Formula {
  let left = tree;
  while (left.kind === 'binary' && (left.op === 'plus' || left.op === 'minus')) left = left.left;
  const isWhole = left !== tree && left.kind === 'amount' && /^(1|100%)$/.test(left.say);
  return isWhole ? { kind: 'bracket', of: tree, spot: tree.spot } : tree;
}

function missing(r: Reader): Formula {
  const token = r.token;
  const before = r.at > 0 ? (r.tokens[r.at - 1] ?? null) : null;
  if (token.kind === 'word') {
    const problem = r.unknownName();
    if (problem.code === 'unknown-name') return r.fail(problem);
  }
  if (/^[$£€¥]$/.test(token.text)) {
    const sign = { from: token.from, to: token.to };
    return r.fail({
      code: 'other-currency',
      spots: [sign],
      sign: r.vocabulary.sign,
      fixes: [
        {
          say: `Use ${r.vocabulary.sign}`,
          formula: r.text.replaceAll(token.text, r.vocabulary.sign),
        },
      ],
    });
  }
  const spot =
    token.kind === 'end'
      ? (before ?? { from: 0, to: r.text.length })
      : { from: token.from, to: token.to };
  return r.fail({
    code: 'missing-value',
    spots: [{ from: spot.from, to: spot.to }],
    after: before ? r.slice(before) : null,
    fixes: withoutTheGap(r),
  });
}

/** An amount still to come where one is missing, or the word that wanted it left out. */
function withoutTheGap(r: Reader): readonly Fix[] {
  const { token } = r;
  const ends = token.kind === 'end' || token.text === ')' || token.text === ']';
  const last = r.marks.at(-1);
  const before = r.tokens[r.at - 1];
  const wanting = last?.kind === 'operator' && last.to === before?.to ? last : null;
  const fixes: Fix[] = [];
  if (wanting && ends && r.slice({ from: 0, to: wanting.from }).trim() !== '') {
    const stretch = { from: r.gapBefore(wanting.from), to: wanting.to };
    fixes.push(r.fix(`Leave "${r.slice(wanting)}" out`, stretch, ''));
  }
  if (ends && r.at > 0) {
    const at = { from: before?.to ?? 0, to: before?.to ?? 0 };
    const tight = before?.text === '(' || before?.text === '[';
    fixes.push(r.fix(LEAVE_OPEN, at, tight ? '?' : ' ?'));
  } else if (!ends) {
    const count = untilValue(r);
    const words = { from: token.from, to: r.peek(Math.max(0, count - 1)).to };
    const rest = { from: token.from, to: r.peek(count).from };
    if (count > 0) fixes.push(r.fix(`Leave "${r.slice(words)}" out`, rest, ''));
  }
  return fixes;
}

/** How many signs and operator words stand here before the next value; 0 where none follows soon. */
function untilValue(r: Reader): number {
  const before = r.at;
  let count = 0;
  while (count < 6 && (r.token.kind === 'symbol' || OPERATOR_WORDS.has(r.token.text))) {
    if (seesSlot(r)) break;
    r.at++;
    count++;
  }
  const found = count > 0 && seesSlot(r);
  r.at = before;
  return found ? count : 0;
}

/** Something stands here that nothing before it takes. */
export function leftOver(r: Reader): Formula {
  const token = r.token;
  const here = { from: token.from, to: token.to };
  const last = r.marks.at(-1);
  const before = r.tokens[r.at - 1];
  // What stands before it ends with its bracket, which has no mark.
  const ended = before && /[)\]]/.test(before.text) ? before.to : (last?.to ?? 0);
  if (token.text === ')' || token.text === ']') {
    return r.fail({
      code: 'stray-bracket',
      spots: [here],
      fixes: [r.fix('Take it away', here, '')],
    });
  }
  const name = token.kind === 'word' ? r.nameAt(0) : null;
  const term = token.kind === 'word' && !name ? termAfter(r, 0) : null;
  if (term && last) {
    const right = { from: token.from, to: r.peek(term.length - 1).to };
    return r.fail({
      code: 'missing-operator',
      spots: [{ from: last.from, to: last.to }, right],
      left: r.slice(last),
      right: r.slice(right),
      // `93 in hours` is no rate per hours: only one of something can stand under the line.
      fixes: token.text.endsWith('s')
        ? [r.fix('Multiply them', { from: ended, to: token.from }, ' times 1 ')]
        : [r.fix('For each of them', { from: ended, to: token.from }, ' per ')],
    });
  }
  if (!name && token.kind === 'word' && before?.kind === 'number') {
    return r.fail({
      code: 'unknown-unit',
      spots: [here],
      word: r.slice(here),
      number: last ? r.slice(last) : before.text,
      fixes: [
        ...r.nearUnits(token.text).map((near) => r.fix(`Use "${near}"`, here, near)),
        // `$85 haulage`: the amount is whole without the word.
        ...(r.tokens[r.at - 2]?.text === r.vocabulary.sign ? [r.fix(LEAVE_OUT, here, '')] : []),
      ],
    });
  }
  const asSized = besideSize(r);
  if (last && asSized.length > 0) {
    return r.fail({
      code: 'missing-operator',
      spots: [{ from: last.from, to: last.to }, here],
      left: r.slice(last),
      right: r.slice(here),
      fixes: asSized,
    });
  }
  if (last && (name || seesAmount(r) || r.sees('('))) {
    const right = name ? { from: token.from, to: r.peek(name.length - 1).to } : here;
    const left = r.slice(last);
    const percent = r.peek(1).text === '%' ? { from: token.from, to: r.peek(1).to } : null;
    const fixes = percent
      ? [
          r.fix('Add it on', { from: ended, to: token.from }, ' plus '),
          ...(ended === last.to
            ? [
                r.fix(
                  'That share of it',
                  { from: last.from, to: percent.to },
                  `${r.slice(percent)} of ${left}`,
                ),
              ]
            : []),
        ]
      : last.kind === 'amount' && token.kind === 'word'
        ? [
            r.fix(LEAVE_OUT, { from: ended, to: right.to }, ''),
            r.fix('Multiply them', { from: ended, to: token.from }, ' times '),
          ]
        : [
            r.fix('Multiply them', { from: ended, to: token.from }, ' times '),
            r.fix('Add them', { from: ended, to: token.from }, ' plus '),
          ];
    return r.fail({
      code: 'missing-operator',
      spots: [{ from: last.from, to: last.to }, right],
      left,
      right: r.slice(percent ?? right),
      fixes,
    });
  }
  if (token.kind === 'word' && last?.kind === 'name') {
    // A name that was begun right and went on wrong: `slab length totl`.
    const at = r.at;
    while (r.at > 0 && (r.tokens[r.at - 1]?.from ?? 0) >= last.from) r.at--;
    const problem = r.unknownName();
    r.at = at;
    if (problem.code === 'unknown-name' && problem.near.length > 0) {
      const longer = problem.near.filter((n) => n !== r.slice(last).toLowerCase());
      if (longer.length > 0 && (problem.spots[0]?.to ?? 0) > last.to) return r.fail(problem);
    }
  }
  if (token.kind === 'word') {
    const problem = r.unknownName();
    if (problem.code === 'unknown-name' && problem.near.length > 0) return r.fail(problem);
  }
  const say = token.kind === 'symbol' ? `Leave "${token.text}" out` : LEAVE_OUT;
  let count = 1;
  while (token.kind === 'symbol' && r.peek(count).text === token.text) count++;
  // A mark between words leaves its blank behind.
  const joins = before && r.peek(count).kind !== 'end' && !token.gap && r.peek(count).gap;
  const left = r.fix(say, { from: token.from, to: r.peek(count).from }, joins ? ' ' : '');
  const fixes = left.formula.trim() === '' ? [] : [left];
  return r.fail({ code: 'unread', spots: [here], word: r.slice(here), fixes });
}
