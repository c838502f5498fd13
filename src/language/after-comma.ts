// What goes on after a comma without a word of its own for it: `, 350 to a box`, `, $180 minimum`, `, 6 of them`,
// `, whole bags only`, `, per hour`. Each comes to a tree that a tidy sentence says too.
import { seesAmount, writtenAmount } from './amounts.ts';
import { termAfter } from './rates.ts';
import { oneOf } from './rounding.ts';
import { eachTakesAfter } from './after-comma-rates.ts';
import { inUnitsAfter } from './in-clause.ts';
import { stockOf } from './stock.ts';
import { offAt, offWords } from './taken-off.ts';
import { closedWhole, slotEnd } from './values.ts';
import { MONEY, hardPart, isHard, overDimension, countOf } from '../quantity/dimension.ts';
import type { Term } from '../quantity/form.ts';
import { unitByKey } from '../quantity/units.ts';
import type { Reader } from './reader.ts';
import { roughDimension } from './rough.ts';
import type { Formula } from './tree.ts';

/** After a comma and a number: packs, a limit, or so many of them. Null where none of these is said. */
export function amountAfterComma(r: Reader, of: Formula): Formula | null {
  const next = r.peek(1);
  if (next.kind !== 'number' && !r.seesAt(1, r.vocabulary.sign)) return null;
  if (r.nameAt(1)) return null;
  return (
    shownPer(r, of) ??
    takenOffAfter(r, of) ??
    soManyOfThem(r, of) ??
    eachTakesAfter(r, of) ??
    toABox(r, of) ??
    inSticks(r, of) ??
    limitAfterComma(r, of)
  );
}

/** `materials / deck area, $ per sq ft`: what it is shown in. */
function shownPer(r: Reader, of: Formula): Formula | null {
  if (
    !r.seesAt(1, r.vocabulary.sign) ||
    r.peek(2).kind === 'number' ||
    !(r.seesAt(2, 'per') || r.seesAt(2, '/'))
  )
    return null;
  return termAfter(r, 3) ? inUnitsAfter(r, of, 1) : null;
}

/** `materials, 10% off`, `labour, $50 off` */
function takenOffAfter(r: Reader, of: Formula): Formula | null {
  if (!offAt(r, 1)) return null;
  const { from, to } = r.token;
  r.at++;
  const right = writtenAmount(r);
  if (r.problem) return right;
  r.take(offWords(r, 0), 'operator');
  const spot = r.since(of.spot.from);
  return { kind: 'binary', op: 'minus', opSpot: { from, to }, left: closedWhole(of), right, spot };
}

/** `88 ft, 20' sticks`: a run, bought in lengths. Null where more is said of them, or it is no run. */
function inSticks(r: Reader, of: Formula): Formula | null {
  const rough = roughDimension(r, of);
  if (!rough || !isHard(hardPart(rough)) || hardPart(rough).money !== 0) return null;
  const { at, brackets } = r;
  const marks = r.marks.length;
  r.at++;
  const stock = stockOf(r);
  const long = stock?.stock.kind === 'amount' && roughDimension(r, stock.stock) === hardPart(rough);
  const ends =
    endsAt(r, 0) || (r.sees(',') && /^(rounded|round|rnd|rd|whole)$/.test(r.peek(1).text));
  if (r.problem || !stock || !long || !ends) {
    r.goBack(at, marks, brackets);
    return null;
  }
  const { stock: holdsEach, noun, nounSpot } = stock;
  return { kind: 'in-packs', of, noun, nounSpot, holdsEach, spot: r.since(of.spot.from) };
}

/** `4 ft x 12 in x 7 in, 6 of them` */
function soManyOfThem(r: Reader, of: Formula): Formula | null {
  if (!r.seesAt(2, 'of') || !/^(them|these|those)$/.test(r.peek(3).text)) return null;
  const { text } = r.peek(1);
  if (!/^\d{1,6}$/.test(text)) return null;
  const opSpot = r.take(4, 'operator');
  const right = r.number(text, text, opSpot);
  return { kind: 'binary', op: 'times', opSpot, left: of, right, spot: r.since(of.spot.from) };
}

/** `840 screws, 350 to a box, how many boxes`: whole packs. */
function toABox(r: Reader, of: Formula): Formula | null {
  const { text } = r.peek(1);
  const outOf = r.seesAt(2, 'out', 'of') ? 2 : 0;
  const joined = /^(to|in|from|on|per)$/.test(r.peek(2).text) ? 1 : outOf;
  const per = joined === 1 && r.seesAt(2, 'per') ? 1 : 0;
  const one = per > 0 ? 0 : /^(a|an|the|each|every|per)$/.test(r.peek(2 + joined).text) ? 1 : 0;
  if (!/^\d[\d,]*$/.test(text) || one + per === 0) return null;
  const ahead = 2 + joined + one + stockLength(r, 2 + joined + one);
  const noun = r.vocabulary.nounAt(r.tokens, r.at + ahead);
  if (!noun) return null;
  const asked = asksHowMany(r, ahead + noun.length, noun.noun);
  if (asked === null) return null;
  r.at += 1;
  const eachSpot = r.take(1, 'amount');
  const plain = text.replaceAll(',', '');
  const holdsEach = r.number(plain, text, eachSpot);
  r.take(ahead - 2, 'phrase');
  const nounSpot = r.take(noun.length, 'phrase');
  r.take(asked, 'unread');
  const spot = r.since(of.spot.from);
  return { kind: 'in-packs', of, noun: noun.noun, nounSpot, holdsEach, spot };
}

/** `2 from each 8 ft board`: how long it is, said before it. */
function stockLength(r: Reader, ahead: number): number {
  const end = r.peek(ahead).kind === 'number' ? slotEnd(r, ahead) : -1;
  return end > 0 && r.vocabulary.nounAt(r.tokens, r.at + end) ? end - ahead : 0;
}

/** `, how many boxes` of the same noun: how many tokens; null where something else goes on. */
function asksHowMany(r: Reader, ahead: number, noun: string): number | null {
  if (endsAt(r, ahead)) return 0;
  const comma = r.seesAt(ahead, ',') ? 1 : 0;
  // `, 120 to the pallet, whole pallets`
  if (comma > 0 && /^(whole|full)$/.test(r.peek(ahead + 1).text)) {
    const whole = r.vocabulary.nounAt(r.tokens, r.at + ahead + 2);
    const words =
      2 + (whole?.length ?? 0) + (r.seesAt(ahead + 2 + (whole?.length ?? 0), 'only') ? 1 : 0);
    return whole?.noun === noun && endsAt(r, ahead + words) ? words : null;
  }
  if (!r.seesAt(ahead + comma, 'how', 'many')) return null;
  const asked = r.vocabulary.nounAt(r.tokens, r.at + ahead + comma + 2);
  if (asked?.noun !== noun) return null;
  const words = comma + 2 + asked.length;
  return endsAt(r, ahead + words) ? words : null;
}

function endsAt(r: Reader, ahead: number): boolean {
  const { kind, text } = r.peek(ahead);
  return kind === 'end' || /^[?.)\]]$/.test(text);
}

const LEAST: ReadonlySet<string> = new Set(['minimum', 'min']);
const MOST: ReadonlySet<string> = new Set(['maximum', 'max']);

/** `, $180 minimum`, `, 1 yard minimum`: of the whole, or of what is priced where that is what it measures. */
function limitAfterComma(r: Reader, of: Formula): Formula | null {
  const { at, brackets } = r;
  const marks = r.marks.length;
  r.at += 1;
  const opFrom = r.token.from;
  const limit = seesAmount(r) ? writtenAmount(r) : null;
  const word = r.token.text;
  const side = LEAST.has(word) ? 'not-less' : MOST.has(word) ? 'not-more' : null;
  const charge = /^(charge|order|load|call|fee)$/.test(r.peek(1).text) ? 1 : 0;
  if (!limit || r.problem || !side || !endsAt(r, 1 + charge)) {
    r.goBack(at, marks, brackets);
    return null;
  }
  const wanted = roughDimension(r, limit);
  const whole = roughDimension(r, of);
  const priced = of.kind === 'binary' && of.op === 'at' ? of : null;
  const quantity = priced && wanted !== whole && roughDimension(r, priced.left) === wanted;
  r.take(1 + charge, 'phrase');
  const opSpot = r.since(opFrom);
  const spot = r.since(of.spot.from);
  if (!quantity) return { kind: 'limited', of, side, limit, opSpot, spot };
  const left: Formula = { kind: 'limited', of: priced.left, side, limit, opSpot, spot };
  return { ...priced, left, spot };
}

/** `, full bags`, `, whole metres only`, `, next whole riser`, `, in whole loads`, `, whole ones`: rounded up. */
export function wholeOnes(r: Reader, of: Formula): Formula | null {
  let ahead = 1;
  if (/^(in|as)$/.test(r.peek(ahead).text)) ahead++;
  if (r.seesAt(ahead, 'the')) ahead++;
  if (r.seesAt(ahead, 'next')) ahead++;
  if (!/^(whole|full)$/.test(r.peek(ahead).text) || r.nameAt(ahead)) return null;
  const ones = /^(ones?|numbers?)$/.test(r.peek(ahead + 1).text);
  if (!ones && !termAfter(r, ahead + 1)) return null;
  const end = ahead + 1 + (ones ? 1 : (termAfter(r, ahead + 1)?.length ?? 0) - ahead - 1);
  const only = r.seesAt(end, 'only') ? 1 : 0;
  if (!endsAt(r, end + only) && !r.seesAt(end + only, ',')) return null;
  r.at += 1;
  const opSpot = r.take(ahead - 1, 'phrase');
  let step: Formula | null = null;
  if (ones) r.take(2, 'phrase');
  else step = wholeStep(r);
  if (only > 0) r.take(1, 'unread');
  return { kind: 'rounded', of, way: 'up', step, opSpot, spot: r.since(of.spot.from) };
}

/** One of what the word after `whole` or `full` names. */
function wholeStep(r: Reader): Formula | null {
  r.take(1, 'phrase');
  return oneOf(r);
}

/** `labour rate plus 28% burden, per hour`: what it measures anyway. Null where it measures something else. */
export function perOne(r: Reader, of: Formula): Formula | null {
  if (!r.seesAt(1, 'per') && !(r.seesAt(1, 'a') || r.seesAt(1, 'an'))) return null;
  const found = termAfter(r, 2);
  if (!found || found.term.count !== null || !endsAt(r, found.length)) return null;
  const under = found.term.kind === 'unit' ? found.term.unit.dimension : countOf(found.term.noun);
  const rough = roughDimension(r, of);
  if (!rough || hardPart(rough) !== hardPart(overDimension(MONEY, under))) return null;
  // A label such as "per board" stays below; a noun that is asked for is no label.
  if (found.term.kind === 'noun' && rough !== overDimension(MONEY, under)) return null;
  r.at += 1;
  const { from } = r.token;
  const money: Term = { kind: 'unit', unit: unitByKey('$'), count: null };
  r.take(found.length - 1, 'phrase');
  const labels = rough.nouns.flatMap(({ noun, power }): readonly Term[] =>
    power === -1 && found.term.kind === 'unit' ? [{ kind: 'noun', noun, count: null }] : [],
  );
  const form = { over: [money], under: [found.term, ...labels] };
  return { kind: 'in-units', of, form, formSpot: r.since(from), spot: r.since(of.spot.from) };
}
