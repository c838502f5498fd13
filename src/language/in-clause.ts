// What a value is shown or bought in: `in cubic yards`, `converted to feet`, `in boxes of 350 screws`, `cut from 16 ft boards`.
import { placeLength } from './asides.ts';
import { endsValue } from './unknown-words.ts';
import type { Reader } from './reader.ts';
import type { Formula, InUnits } from './tree.ts';
import { termAfter } from './rates.ts';
import { OPENERS } from './clauses.ts';
import type { Term } from '../quantity/form.ts';
import { seesMarginAfter } from './products.ts';
import { roughDimension } from './rough.ts';
import { PLAIN, AREA, type Dimension, hardPart, VOLUME } from '../quantity/dimension.ts';
import { expectSlot, seesSlot } from './values.ts';
import { seesAmount } from './amounts.ts';
import { unitByKey } from '../quantity/units.ts';
import { stockOf } from './stock.ts';
import { ARTICLES } from './lexer.ts';
import { OPERATOR_WORDS } from './words.ts';
import { IN_UNITS } from './problems.ts';

/** `, cy`: a unit alone after a comma is what to show it in. */
export function unitAlone(r: Reader, of: Formula): Formula | null {
  const noun = r.nameAt(1) === null ? r.vocabulary.nounAt(r.tokens, r.at + 1) : null;
  if (noun && r.seesAt(1 + noun.length, 'of') && r.peek(2 + noun.length).kind === 'number') {
    // `, boxes of 25`
    r.at++;
    return inPacks(r, of, r.token.from);
  }
  if (noun && isEnd(r, 1 + noun.length) && roughDimension(r, of) === PLAIN) {
    // `52 in / 8 in rounded up, risers`
    r.at++;
    const nounSpot = r.take(noun.length, 'phrase');
    return { kind: 'as-noun', of, noun: noun.noun, nounSpot, spot: r.since(of.spot.from) };
  }
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
export function toUnits(r: Reader, comma: number): number {
  let ahead = comma;
  if (TURNED.has(r.peek(ahead).text)) ahead++;
  if (!['to', 'into', 'in', 'as'].includes(r.peek(ahead).text)) return 0;
  if (r.peek(ahead + 1).kind !== 'word') return 0;
  const term = termAfter(r, ahead + 1);
  return term?.term.kind === 'unit' ? ahead + 1 : 0;
}

export function inUnitsAfter(r: Reader, of: Formula, ahead: number): Formula {
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
export function cutFromStock(r: Reader, of: Formula, ahead: number): Formula {
  r.take(ahead, 'phrase');
  return inPacks(r, of, r.token.from);
}

/** `in cubic yards`, `in $ per sq ft`, `in boxes of 350 screws`, `in 16 ft boards`, `in stock length boards`. */
export function inClause(r: Reader, of: Formula, comma: number): Formula {
  const place = placeLength(r, comma);
  if (place > 0 && endsValue(r, comma + place)) {
    // `half of slab volume in the first pour`
    r.take(comma + place, 'unread');
    return of;
  }
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
    const near = ARTICLES.has(r.token.text) ? [] : r.nearUnits(r.slice(all).toLowerCase());
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

function isEnd(r: Reader, ahead: number): boolean {
  const { kind, text } = r.peek(ahead);
  return kind === 'end' || /^[),.?]$/.test(text);
}
