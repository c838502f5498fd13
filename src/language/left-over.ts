// What stands where nothing can be read: a value that is missing, or words that nothing before them takes.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import type { Fix } from '../words/report.ts';
import { LEAVE_OPEN, LEAVE_OUT } from './problems.ts';
import { counts } from './unknown-words.ts';
import { OPERATOR_WORDS } from './words.ts';
import { seesSlot } from './values.ts';
import { termAfter } from './rates.ts';
import { besideSize } from './sized.ts';
import { seesAmount } from './amounts.ts';
import { unknownName } from './unknown-name.ts';

export function missing(r: Reader): Formula {
  const token = r.token;
  const before = r.at > 0 ? (r.tokens[r.at - 1] ?? null) : null;
  if (token.kind === 'word') {
    const problem = unknownName(r);
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
    const problem = unknownName(r);
    r.at = at;
    if (problem.code === 'unknown-name' && problem.near.length > 0) {
      const longer = problem.near.filter((n) => n !== r.slice(last).toLowerCase());
      if (longer.length > 0 && (problem.spots[0]?.to ?? 0) > last.to) return r.fail(problem);
    }
  }
  if (token.kind === 'word') {
    const problem = unknownName(r);
    if (problem.code === 'unknown-name' && problem.near.length > 0) return r.fail(problem);
  }
  // A word that counts can't be left out without meaning something else.
  if (token.kind === 'word' && counts(token.text)) {
    return r.fail({ code: 'unread', spots: [here], word: r.slice(here), fixes: [] });
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
