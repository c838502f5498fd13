// What is set out along a line: `joists every 16 in along 12 ft`, and as drawings and builders say it,
// `joists @ 16" o.c. along 12'`, `posts 6 ft apart along 30 ft`, `18" o.c. along 24'`.
import { LENGTH } from '../quantity/dimension.ts';
import { ARTICLES } from './lexer.ts';
import { roughDimension } from './rough.ts';
import { isWrittenLength } from './amounts-held.ts';
import { skipOfStuff, sortBefore } from './asides.ts';
import { slotProblem } from './phrases.ts';
import type { Reader } from './reader.ts';
import type { Ends, Formula, Spaced } from './tree.ts';
import { expectSlot, seesSlot, slotEnd } from './values.ts';

/** `#4 @ 12" o.c. along 24'`, `rebar @ 12" o.c. …`: the bars, by their size alone. Null where none are set out so. */
export function barsSpaced(r: Reader, from: number): Formula | null {
  if (!(r.sees('@') || r.sees('at') || r.sees('every'))) return null;
  let centres = r.sees('every');
  for (let i = 2; i < 9 && !centres; i++) centres = centresAt(r, i) > 0;
  if (!centres) return null;
  r.take(1, 'phrase');
  return alongAfter(r, 'bar', expectSlot(r), from);
}

/** How many tokens a noun with its `every` takes; 0 where nothing is set out here. */
export function spacedOpening(r: Reader, skip: number): number {
  const one = r.seesAt(skip, 'one') || r.peek(skip).text === '1' ? 1 : 0;
  const sort = sortBefore(r, skip + one);
  const noun = r.vocabulary.nounAt(r.tokens, r.at + skip + one + sort);
  if (!noun) return 0;
  const after = skip + one + sort + noun.length;
  const spread = r.seesAt(after, 'spaced') || r.seesAt(after, 'set') || r.seesAt(after, 'placed');
  const said = after + (spread ? 1 : 0);
  if (r.seesAt(said, 'every')) return said + 1;
  if (r.seesAt(said, 'at', 'every')) return said + 2;
  if (one > 0) return 0;
  const at = r.seesAt(said, '@') || r.seesAt(said, 'at') || r.seesAt(said, 'with') ? 1 : 0;
  for (let i = said + at + 1; i < said + at + 9; i++) {
    if (centresAt(r, i) > 0) return said + at;
    const { kind, text } = r.peek(i);
    if (kind === 'end' || text === ',' || text === '(') return 0;
  }
  return 0;
}

/** `o.c.`, `on centre`, `centres`, `apart`: how many words of it stand so many tokens ahead. */
export function centresAt(r: Reader, ahead: number): number {
  if (r.seesAt(ahead, 'o', 'c')) return 2;
  if (r.seesAt(ahead, 'o', '/', 'c')) return 3;
  if (r.seesAt(ahead, 'on')) return CENTRES.has(r.peek(ahead + 1).text) ? 2 : 0;
  if (r.nameAt(ahead)) return 0;
  return CENTRES.has(r.peek(ahead).text) || r.seesAt(ahead, 'oc') || r.seesAt(ahead, 'apart')
    ? 1
    : 0;
}

const CENTRES: ReadonlySet<string> = new Set(['centre', 'centres', 'spacing', 'spacings']);

/** Reads the phrase whose opening stands here. */
export function readSpaced(r: Reader, opening: number): Formula {
  const from = r.token.from;
  const start = r.at;
  r.skipArticle();
  if (r.sees('one') || r.token.text === '1') r.at++;
  r.take(sortBefore(r, 0), 'unread');
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  r.take(start + opening - r.at, 'phrase');
  const spacing = expectSlot(r);
  return alongAfter(r, noun?.noun ?? 'piece', spacing, from);
}

/** `[o.c.] along 12 ft[, one end]`, the spacing read. */
function alongAfter(r: Reader, noun: string, spacing: Formula, from: number): Formula {
  if (r.problem) return spacing;
  const centresSaid = centresAt(r, 0) > 0;
  r.take(centresAt(r, 0), 'phrase');
  const comma = r.sees(',') && centresSaid && (r.peek(1).kind === 'number' || r.nameAt(1) !== null);
  const loop = r.sees('around') || r.sees('round');
  if (!loop && !comma && !seesAlong(r)) {
    return slotProblem(
      r,
      from,
      'every',
      '"along" or "around" and a length',
      'joists every 16 in along 12 ft',
      'along ? ft',
    );
  }
  r.take(1, 'phrase');
  r.skipArticle();
  if (r.sees('length', 'of') || r.sees('run', 'of')) if (!r.nameAt(0)) r.at += 2;
  const along = expectSlot(r);
  if (along.kind === 'amount' && r.sees('of')) skipOfStuff(r, 'measure');
  const ends = loop ? 'loop' : maybeEnds(r);
  return { kind: 'spaced', noun, spacing, along, ends, spot: r.since(from) };
}

/** `along`, and what is said for it before a length: `over 24'`, `across the deck`, `in 12 ft`. */
function seesAlong(r: Reader): boolean {
  if (r.sees('along')) return true;
  if (!['over', 'across', 'in', 'for', 'on', 'down'].includes(r.token.text)) return false;
  r.at++;
  const value = seesSlot(r) || r.sees('a') || r.sees('the');
  r.at--;
  return value;
}

function maybeEnds(r: Reader): Ends {
  const comma = r.sees(',') ? 1 : 0;
  const at = r.seesAt(comma, 'at') ? 1 : 0;
  for (const [words, ends] of ENDS) {
    if (!r.seesAll(comma + at, words)) continue;
    r.take(comma + at + words.length, 'phrase');
    if (ends === 'both' && r.sees('included')) r.take(1, 'phrase');
    return ends;
  }
  return 'both';
}

const ends = (said: string, which: Ends): readonly (readonly [readonly string[], Ends])[] =>
  said.split(', ').map((words) => [words.split(' '), which] as const);

/** How it is said at which ends one stands. */
const ENDS: readonly (readonly [readonly string[], Ends])[] = [
  ...['including', 'incl', 'inc', 'counting', 'with']
    .flatMap((word) => [
      `${word} both ends`,
      `${word} the ends`,
      `${word} each end`,
      `${word} ends`,
    ])
    .flatMap((words) => ends(words, 'both')),
  ...ends('with one at each end, with one on each end, with one at both ends', 'both'),
  ...ends('one at each end, one on each end, one at both ends, both ends, each end', 'both'),
  ...ends('one end, only one end, with one end, with one at one end', 'one'),
  ...['not including', 'not counting', 'excluding', 'without', 'not at', 'none at', 'less']
    .flatMap((word) => [`${word} the ends`, `${word} both ends`, `${word} either end`])
    .flatMap((words) => ends(words, 'neither')),
  ...[
    'leaving out',
    'leave out',
    'leaving off',
    'skipping',
    'skip',
    'omitting',
    'minus',
    'except',
    'but not',
    'not',
    'no',
  ]
    .flatMap((word) =>
      [
        'the ends',
        'the two ends',
        'both ends',
        'the end ones',
        'ends',
        'end ones',
        'at the ends',
        'at ends',
      ].map((last) => `${word} ${last}`),
    )
    .flatMap((words) => ends(words, 'neither')),
  ...ends('neither end, no ends, without ends, with none at the ends', 'neither'),
];

/** `18" o.c. along 24'`: nobody says what is set out. Null where the length that was read is no spacing. */
export function spacedWithoutNoun(r: Reader, spacing: Formula): Formula | null {
  const words = centresAt(r, 0);
  if (words === 0 || spacing.kind !== 'amount' || !isWrittenLength(spacing)) return null;
  if (!['along', 'around', 'over', 'across'].includes(r.peek(words).text)) return null;
  if (slotEnd(r, words + 1) < 0) return null;
  return alongAfter(r, 'piece', spacing, spacing.spot.from);
}

/** `24' at 18" o.c.`, `30 ft of hedge planted at 18 inch centres`: along what stands before. */
export function spacedAlong(r: Reader, along: Formula, spacing: Formula): Spaced | null {
  const words = centresAt(r, 0);
  if (words === 0 || spacing.kind !== 'amount' || !isWrittenLength(spacing)) return null;
  r.take(words, 'phrase');
  const ends = maybeEnds(r);
  return { kind: 'spaced', noun: 'piece', spacing, along, ends, spot: r.since(along.spot.from) };
}

/** `posts every 1.8 m` so many tokens ahead, with no run of their own. */
export function setsOut(r: Reader, ahead: number): boolean {
  const article = ARTICLES.has(r.peek(ahead).text) ? 1 : 0;
  const opening = spacedOpening(r, ahead + article);
  if (opening === 0 || r.nameAt(ahead)) return false;
  for (let i = opening; i < opening + 12; i++) {
    const { kind, text } = r.peek(i);
    if (kind === 'end' || text === ',') return true;
    if (text === 'along' || text === 'around' || text === 'across') return false;
  }
  return true;
}

/** `18 m of fence with posts every 1.8 m`, `30 ft, posts every 6 ft`: along what stands before. Null where none are set out. */
export function thingsAlong(r: Reader, along: Formula): Formula | null {
  const comma = r.sees(',') ? 1 : 0;
  const joined = comma + (r.seesAt(comma, 'with') || r.seesAt(comma, 'and') ? 1 : 0);
  if (joined === 0 || r.seesAt(joined, 'one') || r.peek(joined).kind !== 'word') return null;
  const article = ARTICLES.has(r.peek(joined).text) ? 1 : 0;
  const opening = spacedOpening(r, joined + article);
  if (opening === 0 || r.nameAt(joined)) return null;
  const found = r.vocabulary.nounAt(
    r.tokens,
    r.at + joined + article + sortBefore(r, joined + article),
  );
  if (!found || roughDimension(r, along) !== LENGTH) return null;
  const { at, brackets } = r;
  const marks = r.marks.length;
  r.take(opening, 'phrase');
  const spacing = expectSlot(r);
  const centres = centresAt(r, 0);
  // Their own run may follow: `posts every 6 ft along 30 ft`.
  if (r.problem || /^(along|around|round|across|over|in|for|on|down)$/.test(r.peek(centres).text)) {
    r.goBack(at, marks, brackets);
    return null;
  }
  r.take(centres, 'phrase');
  const ends = maybeEnds(r);
  const spot = r.since(along.spot.from);
  return { kind: 'spaced', noun: found.noun, spacing, along, ends, spot };
}

/** `24' / 18" o.c.`: said for the reader where it is divided. */
export function skipCentres(r: Reader): void {
  const words = centresAt(r, 0);
  if (words > 0) r.take(words, 'unread');
}

/** `posts every 6 ft along 30 ft, plus one`: the count has both its ends already, so it asks. */
export function refuseOneMore(
  r: Reader,
  spaced: Spaced,
  op: { readonly from: number; readonly to: number },
  one: Formula,
): Formula {
  const many = r.vocabulary.nouns.many(spaced.noun);
  const phrase = r.slice(spaced.spot);
  return r.fail({
    code: 'two-readings',
    spots: [{ from: op.from, to: one.spot.to }],
    about: `"${phrase}" counts ${many} with one at both ends already. Adding one more could be that end one, said again, or one besides.`,
    fixes: [
      r.fix('It is the one at the end', { from: r.gapBefore(op.from), to: one.spot.to }, ''),
      r.fix('One besides', { from: spaced.spot.from, to: r.gapBefore(op.from) }, `(${phrase})`),
    ],
  });
}
