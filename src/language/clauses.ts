// Level 3: clauses, with or without a comma. Each closes the sum to its left and works on it.
import { likeWritten, seesAmount, termAfter } from './amounts.ts';
import { noteLength, trailAt } from './asides.ts';
import { amountAfterComma, perOne, wholeOnes } from './after-comma.ts';
import { forClause } from './for-clause.ts';
import { seesMarginAfter, seesOperator } from './levels.ts';
import { heldAmount } from '../quantity/amount.ts';
import { AREA, type Dimension, VOLUME, hardPart } from '../quantity/dimension.ts';
import { type Form, type Term, writtenUnits } from '../quantity/form.ts';
import { Fraction } from '../quantity/measure.ts';
import { unitByKey } from '../quantity/units.ts';
import { nearNames } from '../words/near.ts';
import { IN_UNITS } from './problems.ts';
import { stockAfter, stockOf } from './phrases.ts';
import type { Reader } from './reader.ts';
import { roughDimension } from './rough.ts';
import type { Formula, InUnits, Way } from './tree.ts';
import { tablePhraseAt } from './table-phrases.ts';
import { expectSlot, seesSlot } from './values.ts';
import { OPERATOR_WORDS } from './words.ts';

/** The clause that stands here, perhaps after a comma, worked on `of`; null where there is none. */
export function maybeClause(r: Reader, of: Formula): Formula | null {
  // `, but at least $350`
  const but = r.sees('but') || r.sees(',', 'but');
  const comma = (r.sees(',') ? 1 : 0) + (but ? 1 : 0);
  const first = r.peek(comma);
  if (first.kind !== 'word') return comma === 1 && !but ? amountAfterComma(r, of) : null;
  if (comma === 1 && !but) {
    const whole = wholeOnes(r, of) ?? perOne(r, of);
    if (whole) return whole;
  }
  if (!OPENERS.has(first.text)) return comma === 1 && !but ? unitAlone(r, of) : null;
  if (comma <= 1 && trailAt(r, comma) > 0) return null;
  if (seesRounding(r, comma)) return rounded(r, of, comma);
  if (r.seesAt(comma, 'marked', 'up')) return markedUp(r, of, comma);
  // `labour at least $3,500`: without an `is` it is no comparison.
  const least = comma === 0 && r.conditions === 0 && tablePhraseAt(r, 1) === null;
  if (least && r.sees('at', 'least')) return limited(r, of, 0, 'not-less', 2);
  if (least && r.sees('at', 'most')) return limited(r, of, 0, 'not-more', 2);
  for (const [words, side] of comma > 0 ? ALL_LIMITS : LIMITS) {
    if (r.seesAll(comma, words)) return limited(r, of, comma, side, words.length);
  }
  const shareOf = SHARE_OF.find((words) => r.seesAll(comma, words));
  if (shareOf) {
    r.at += comma;
    r.take(shareOf.length, 'phrase');
    return wholeAlone(r, of, expectSlot(r));
  }
  if (r.seesAt(comma, 'as')) return asClause(r, of, comma);
  if (r.seesAt(comma, 'in')) return inClause(r, of, comma);
  const to = toUnits(r, comma);
  if (to > 0) return inUnitsAfter(r, of, to);
  const cut = stockAfter(r, comma);
  if (cut > 0 && (comma === 0 || !r.seesAt(comma, 'from'))) return cutFromStock(r, of, comma + cut);
  if (r.seesAt(comma, 'for')) return forClause(r, of, comma);
  if (comma === 0 && r.sees('at') && seesMarginAfter(r)) return forClause(r, of, comma);
  return null;
}

const LIMITS: readonly (readonly [readonly string[], 'not-less' | 'not-more'])[] = [
  [['not', 'less', 'than'], 'not-less'],
  [['no', 'less', 'than'], 'not-less'],
  [['not', 'below'], 'not-less'],
  [['not', 'under'], 'not-less'],
  [['not', 'more', 'than'], 'not-more'],
  [['no', 'more', 'than'], 'not-more'],
  [['not', 'above'], 'not-more'],
  [['not', 'over'], 'not-more'],
  [['capped', 'at'], 'not-more'],
  [['up', 'to', 'a', 'maximum', 'of'], 'not-more'],
  [['with', 'a', 'minimum', 'of'], 'not-less'],
  [['with', 'a', 'maximum', 'of'], 'not-more'],
];

/** After a comma these can only be limits; without one they could compare. */
const LIMITS_AFTER_COMMA: typeof LIMITS = [
  [['minimum', 'charge'], 'not-less'],
  [['minimum', 'of'], 'not-less'],
  [['minimum'], 'not-less'],
  [['min'], 'not-less'],
  [['max'], 'not-more'],
  [['at', 'least'], 'not-less'],
  [['maximum', 'of'], 'not-more'],
  [['maximum'], 'not-more'],
  [['at', 'most'], 'not-more'],
];

/** Does a limit stand there that begins as a sum does: `with a minimum of`? */
export function limitsAt(r: Reader, ahead: number): boolean {
  return LIMITS.some(([words]) => words[0] === 'with' && r.seesAll(ahead, words));
}

export const SHARE_OF: readonly (readonly string[])[] = [
  ['as', 'a', 'share', 'of'],
  ['as', 'a', 'percent', 'of'],
  ['as', 'a', 'percentage', 'of'],
  ['as', 'a', '%', 'of'],
  ['as', '%', 'of'],
  ['as', 'percent', 'of'],
];

export const ALL_LIMITS: typeof LIMITS = [...LIMITS, ...LIMITS_AFTER_COMMA];

/** The words that a clause can begin with: most of what stands after a value is none of them. */
const OPENERS: ReadonlySet<string> = new Set([
  ...ALL_LIMITS.map(([[first = '']]) => first),
  'rounded',
  'nearest',
  'up',
  'down',
  'to',
  'roundup',
  'round',
  'rnd',
  'marked',
  'as',
  'in',
  'for',
  'at',
  'into',
  'converted',
  'convert',
  'changed',
  'turned',
  'expressed',
  'shown',
  'cut',
  'ripped',
  'sawn',
  'made',
  'taken',
  'from',
  'out',
]);

/** `labour as a percentage of materials + labour`: of the first alone, or of the sum? */
function wholeAlone(r: Reader, of: Formula, whole: Formula): Formula {
  const share: Formula = { kind: 'what-share', of, whole, spot: r.since(of.spot.from) };
  if (r.problem || !seesOperator(r, 0)) return share;
  const rest = { from: whole.spot.from, to: r.endOfBracket() };
  const tail = r.slice({ from: r.token.from, to: rest.to }).trim();
  return r.fail({
    code: 'two-readings',
    spots: [{ from: r.token.from, to: rest.to }],
    about: `"${tail}" could belong to what the share is of, or go on with the share itself. Brackets or a comma say which.`,
    fixes: [
      r.fix('Of all of it', rest, `(${r.slice(rest).trimEnd()})`),
      r.fix('Go on with the share', { from: whole.spot.to, to: r.token.from }, ', '),
    ],
  });
}

/** `, cy`: a unit alone after a comma is what to show it in. */
function unitAlone(r: Reader, of: Formula): Formula | null {
  const term = termAfter(r, 1);
  if (term?.term.kind !== 'unit' || (r.nameAt(1)?.length ?? 0) >= term.length - 1) return null;
  const next = r.peek(term.length);
  const ends = next.kind === 'end' || /^[),.?]$/.test(next.text) || OPENERS.has(next.text);
  return ends ? inUnitsAfter(r, of, 1) : null;
}

const TURNED: ReadonlySet<string> = new Set([
  'converted',
  'convert',
  'changed',
  'turned',
  'expressed',
  'shown',
]);

/** `to cubic yards`, `converted to feet`, `into pounds`: how many tokens stand before the unit; 0 for none. */
function toUnits(r: Reader, comma: number): number {
  let ahead = comma;
  if (TURNED.has(r.peek(ahead).text)) ahead++;
  if (!['to', 'into', 'in', 'as'].includes(r.peek(ahead).text)) return 0;
  if (r.peek(ahead + 1).kind !== 'word') return 0;
  const term = termAfter(r, ahead + 1);
  return term?.term.kind === 'unit' ? ahead + 1 : 0;
}

function inUnitsAfter(r: Reader, of: Formula, ahead: number): Formula {
  r.take(ahead, 'phrase');
  return unitsHere(r, of);
}

/** The form that stands here, to show the value in. */
function unitsHere(r: Reader, of: Formula): Formula {
  const formFrom = r.token.from;
  const term = r.sees(r.vocabulary.sign) ? currency(r) : termAfter(r, 0);
  if (!term) return unknownUnit(r);
  r.take(term.length, 'phrase');
  const form: { over: Term[]; under: Term[] } = { over: [term.term], under: [] };
  while (r.sees('per') || (r.sees('/') && !r.token.gap)) {
    const under = termAfter(r, 1);
    if (!under) break;
    r.take(under.length, 'phrase');
    form.under.push(under.term);
  }
  const formSpot = r.since(formFrom);
  const shown: Formula = { kind: 'in-units', of, form, formSpot, spot: r.since(of.spot.from) };
  return atThenShown(r, shown) ?? shown;
}

/** `300 sq ft by 3 in, in tons at stone density`: worked at that rate first, then shown. Null: it measures that already. */
function atThenShown(r: Reader, shown: InUnits): Formula | null {
  const [over, ...more] = shown.form.over;
  if (!(r.sees('at') || r.sees('@')) || over?.kind !== 'unit' || more.length > 0) return null;
  if (shown.form.under.length > 0 || seesMarginAfter(r)) return null;
  const measure = roughDimension(r, shown.of);
  if (!measure || hardPart(measure) === over.unit.dimension) return null;
  if (loosely(over.unit.key, hardPart(measure))) return null;
  const opSpot = r.take(1, 'operator');
  const right = expectSlot(r);
  const spot = r.since(shown.spot.from);
  const of: Formula = { kind: 'binary', op: 'at', opSpot, left: shown.of, right, spot };
  return { ...shown, of, spot };
}

/** Yards of an area or a volume are square or cubic yards. */
function loosely(key: string, measure: Dimension): boolean {
  return key === 'yd' && (measure === AREA || measure === VOLUME);
}

/** `410 ft of decking cut from 16 ft boards`: a run, bought in lengths. */
function cutFromStock(r: Reader, of: Formula, ahead: number): Formula {
  r.take(ahead, 'phrase');
  return inPacks(r, of, r.token.from);
}

/** `as a percentage`, `as a deposit`, `as cubic yards`, `as boards`. */
function asClause(r: Reader, of: Formula, comma: number): Formula {
  const article =
    r.seesAt(comma + 1, 'a') || r.seesAt(comma + 1, 'an') || r.seesAt(comma + 1, 'the') ? 1 : 0;
  const ahead = comma + 1 + article;
  const percent = ['%', 'percent', 'percentage', 'share'].includes(r.peek(ahead).text);
  if (percent && !r.seesAt(ahead + 1, 'of')) return asPercent(r, of, ahead + 1);
  if (article > 0) {
    const note = noteLength(r, ahead);
    if (note > 0) {
      r.take(ahead + note, 'unread');
      return of;
    }
  }
  const to = toUnits(r, comma);
  return to > 0 ? inUnitsAfter(r, of, to) : asNoun(r, of, comma);
}

/** `labour / (labour + materials) as %`: what share the one is of the other. */
function asPercent(r: Reader, of: Formula, words: number): Formula {
  const { from } = r.token;
  if (of.kind === 'what-share' || of.kind === 'part-of') {
    r.take(words, 'unread');
    return of;
  }
  if (of.kind === 'binary' && of.op === 'over') {
    r.take(words, 'phrase');
    const spot = r.since(of.spot.from);
    return { kind: 'what-share', of: of.left, whole: of.right, spot };
  }
  r.take(words, 'phrase');
  return r.fail({
    code: 'phrase-slot',
    spots: [r.since(from)],
    phrase: 'as a percent of',
    wanted: 'the whole',
    like: '$42 as a percent of $60',
    fixes: [r.fix('Leave it open for now', r.afterLast(), ' of ?')],
  });
}

/** `rounded …`, `round up …`, `rnd up`, and `nearest $50` alone. */
function seesRounding(r: Reader, comma: number): boolean {
  if (r.seesAt(comma, 'rounded') || r.seesAt(comma, 'nearest')) return true;
  if (seesUpTo(r, comma)) return true;
  if (r.seesAt(comma, 'to', 'the', 'nearest') || r.seesAt(comma, 'to', 'nearest')) return true;
  if (r.seesAt(comma, 'roundup')) return true;
  return (
    (r.seesAt(comma, 'round') || r.seesAt(comma, 'rnd')) &&
    ['up', 'down', 'to'].includes(r.peek(comma + 1).text)
  );
}

/** `up to the next 1/4 yd`. */
function seesUpTo(r: Reader, comma: number): boolean {
  const the = r.seesAt(comma + 2, 'the') ? 1 : 0;
  const next = r.seesAt(comma + 2 + the, 'next') || r.seesAt(comma + 2 + the, 'nearest');
  return next && (r.seesAt(comma, 'up', 'to') || r.seesAt(comma, 'down', 'to'));
}

function rounded(r: Reader, of: Formula, comma: number): Formula {
  r.at += comma;
  const opFrom = r.token.from;
  const roundup = r.maybe('roundup');
  if (['rounded', 'round', 'rnd'].includes(r.token.text)) r.take(1, 'phrase');
  let way: Way = roundup || r.sees('up') ? 'up' : r.sees('down') ? 'down' : 'nearest';
  if (r.sees('up') || r.sees('down')) r.take(1, 'phrase');
  const opSpot = r.since(opFrom);
  let step: Formula | null = null;
  if (r.sees('to') || r.sees('nearest')) {
    r.maybe('to');
    r.skipArticle();
    if (r.sees('next')) {
      if (way === 'nearest') way = 'up';
      r.take(1, 'phrase');
    } else if (r.sees('nearest')) r.take(1, 'phrase');
    step = stepIn(r, of, expectStep(r));
  }
  return { kind: 'rounded', of, way, step, opSpot, spot: r.since(of.spot.from) };
}

/** `in cy, to the nearest 1/4`: a bare step is one of what it is shown in. */
function stepIn(r: Reader, of: Formula, step: Formula | null): Formula | null {
  if (of.kind !== 'in-units' || step?.kind !== 'amount' || !step.bare) return step;
  return likeWritten(r, step, { kind: 'form', form: of.form, larger: [] });
}

/** An amount, a name, a bracket, a unit alone for one of it (`the next cubic yard`), or `whole bags`. */
export function expectStep(r: Reader): Formula | null {
  if (r.sees('whole')) {
    r.take(1, 'phrase');
    if (r.sees('number') || r.sees('numbers')) r.take(1, 'phrase');
    else {
      if (termAfter(r, 0)) return oneOf(r);
    }
    return null;
  }
  const name = r.nameAt(0);
  const fraction = STEP_FRACTION.get(r.token.text);
  if (fraction && !name && termAfter(r, 1)) {
    r.at++;
    r.skipArticle();
    return oneOf(r, fraction);
  }
  const term = termAfter(r, 0);
  if (!seesAmount(r) && term && term.length >= (name?.length ?? 0)) return oneOf(r);
  return expectSlot(r);
}

/** `the next half yard`. */
const STEP_FRACTION: ReadonlyMap<string, string> = new Map(
  Object.entries({ half: '1/2', quarter: '1/4', third: '1/3' }),
);

/** A unit or noun alone: one of it, or so much of one. */
export function oneOf(r: Reader, much = '1'): Formula {
  const found = termAfter(r, 0);
  if (!found) return expectSlot(r);
  const spot = r.take(found.length, 'amount');
  const form: Form = { over: [found.term], under: [] };
  const held = heldAmount(new Fraction(much), form);
  const key = found.term.kind === 'unit' ? [found.term.unit.key] : [];
  const name = found.term.kind === 'unit' ? found.term.unit.one : found.term.noun;
  const holds = { measure: held.measure, showIn: null, written: writtenUnits(key) };
  return {
    kind: 'amount',
    value: held.value,
    holds,
    bare: false,
    label: null,
    say: `${much} ${name}`,
    spot,
  };
}

function markedUp(r: Reader, of: Formula, comma: number): Formula {
  r.at += comma;
  r.take(2, 'phrase');
  // A name may begin with the word: `marked up by the yard`. The longer one wins.
  const own = r.nameAt(0)?.length ?? 0;
  if (r.sees('by') && own < (r.nameAt(1)?.length ?? 0) + 1) r.take(1, 'phrase');
  const share = expectSlot(r);
  return { kind: 'marked-up', of, share, spot: r.since(of.spot.from) };
}

function limited(
  r: Reader,
  of: Formula,
  comma: number,
  side: 'not-less' | 'not-more',
  words: number,
): Formula {
  r.at += comma;
  const opSpot = r.take(words, 'phrase');
  const limit = expectSlot(r);
  return { kind: 'limited', of, side, limit, opSpot, spot: r.since(of.spot.from) };
}

function asNoun(r: Reader, of: Formula, comma: number): Formula {
  r.at += comma;
  r.take(1, 'phrase');
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  if (!noun) {
    return r.fail({
      code: 'phrase-slot',
      spots: [r.token],
      phrase: 'as',
      wanted: 'a thing that is counted',
      like: 'joist count, as boards',
      fixes:
        r.token.kind === 'word'
          ? nearNames(r.token.text, r.vocabulary.nouns.phrases.keys(), 3).map((near) =>
              r.fix(`Count it as ${near}`, r.token, near),
            )
          : [],
    });
  }
  const nounSpot = r.take(noun.length, 'phrase');
  return { kind: 'as-noun', of, noun: noun.noun, nounSpot, spot: r.since(of.spot.from) };
}

/** `in cubic yards`, `in $ per sq ft`, `in boxes of 350 screws`, `in 16 ft boards`, `in stock length boards`. */
function inClause(r: Reader, of: Formula, comma: number): Formula {
  r.at += comma;
  r.take(1, 'phrase');
  const formFrom = r.token.from;
  const name = r.nameAt(0);
  const term = seesAmount(r) ? (r.sees(r.vocabulary.sign) ? currency(r) : null) : termAfter(r, 0);
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  const pack = noun && r.seesAt(noun.length, 'of');
  if (
    pack ||
    (!term && (seesAmount(r) || seesSlot(r))) ||
    (name && name.length > (term?.length ?? 0))
  ) {
    return inPacks(r, of, formFrom);
  }
  if (!term) return unknownUnit(r);
  if (term.term.kind === 'noun' && !r.seesAt(term.length, 'per')) return packOfWhat(r, term);
  return unitsHere(r, of);
}

function currency(r: Reader): { term: Term; length: number } | null {
  const term: Term = { kind: 'unit', unit: unitByKey('$'), count: null };
  return r.peek(1).kind === 'number' ? null : { term, length: 1 };
}

function inPacks(r: Reader, of: Formula, formFrom: number): Formula {
  const found = stockOf(r);
  if (r.problem) return { kind: 'hole', spot: r.since(formFrom) };
  if (!found) {
    return r.fail({
      code: 'phrase-slot',
      spots: [r.since(formFrom)],
      phrase: 'in',
      wanted: 'the thing that is bought',
      like: 'deck run in 16 ft boards',
      fixes: ['boards', 'pieces'].map((by) => r.fix(`In ${by} of that`, r.afterLast(), ` ${by}`)),
    });
  }
  const { stock: holdsEach, noun, nounSpot } = found;
  return { kind: 'in-packs', of, noun, nounSpot, holdsEach, spot: r.since(of.spot.from) };
}

function packOfWhat(r: Reader, term: { term: Term; length: number }): Formula {
  const noun = term.term.kind === 'noun' ? term.term.noun : '';
  const spot = { from: r.token.from, to: r.peek(term.length - 1).to };
  const inSpot = { from: (r.tokens[r.at - 1] ?? spot).from, to: spot.to };
  const many = r.vocabulary.nouns.many(noun);
  return r.fail({
    code: 'pack-of-what',
    spots: [spot],
    noun,
    many,
    fixes: [r.fix(`Count it as ${many}`, inSpot, `as ${many}`)],
  });
}

function unknownUnit(r: Reader): Formula {
  const spot = { from: r.token.from, to: r.token.to };
  if (r.token.kind === 'end') {
    return r.fail({
      code: 'missing-value',
      spots: [r.tokens[r.at - 1] ?? spot],
      after: 'in',
      fixes: [
        r.fix(
          'Leave "in" out',
          { from: r.gapBefore(r.at > 0 ? (r.tokens[r.at - 1]?.from ?? 0) : 0), to: spot.to },
          '',
        ),
      ],
    });
  }
  let words = 1;
  while (words < 3 && r.peek(words).kind === 'word' && !OPERATOR_WORDS.has(r.peek(words).text))
    words++;
  for (; ; words--) {
    const all = { from: spot.from, to: r.peek(words - 1).to };
    const near = r.nearUnits(r.slice(all).toLowerCase());
    if (near.length === 0 && words > 1) continue;
    return r.fail({
      code: 'unknown-unit',
      spots: [all],
      word: r.slice(all),
      number: IN_UNITS,
      fixes: near.map((unit) => r.fix(`Use "${unit}"`, all, unit)),
    });
  }
}
