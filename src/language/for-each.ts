// So much for each: `2 bags for each of the holes`, `3 brackets for every post`, `1 bag for every 4 holes`.
import { NONE_WRITTEN } from '../quantity/form.ts';
import { heldIn } from './amounts-held.ts';
import { seesAmount } from './amounts.ts';
import type { Reader } from './reader.ts';
import { roughCount } from './rough.ts';
import { oneOf } from './rounding.ts';
import type { Formula } from './tree.ts';
import { expectSlot } from './values.ts';

/** `for` is taken already, `each` or `every` stands here; null where it says something else. */
export function forEach(r: Reader, of: Formula): Formula | null {
  if (r.nameAt(0) || !(r.sees('each') || r.sees('every'))) return null;
  const { from } = r.token;
  const ofThem = r.seesAt(1, 'of') ? 2 : r.seesAt(1, 'one', 'of') ? 3 : 0;
  if (ofThem > 0) return ofEachOf(r, of, ofThem);
  const noun = r.vocabulary.nounAt(r.tokens, r.at + 1);
  const { at } = r;
  r.at++;
  const counted = r.token.kind === 'number' && seesAmount(r);
  if (!noun && !counted) {
    r.at = at;
    return null;
  }
  const opSpot = { from, to: r.token.from };
  const under = counted ? expectSlot(r) : oneOf(r);
  if (r.problem) return under;
  return overOne(r, of, under, counted ? null : (noun?.noun ?? null), opSpot);
}

/** `for each of the holes`: so many for one, and as many times that. Null of people: they work hours. */
function ofEachOf(r: Reader, of: Formula, words: number): Formula | null {
  const { at } = r;
  const marks = r.marks.length;
  const opSpot = r.take(words, 'operator');
  const right = expectSlot(r);
  const noun = r.problem ? null : roughCount(r, right);
  const own = noun === null ? null : roughCount(r, of);
  if (noun === null || noun === 'person' || own === noun) {
    if (!r.problem) r.goBack(at, marks, r.brackets);
    return r.problem ? right : null;
  }
  const one = r.number('1', `1 ${noun}`, opSpot);
  const form = { over: [{ kind: 'noun', noun, count: null }], under: [] } as const;
  const each = overOne(r, of, { ...one, ...heldIn(one.value, form, NONE_WRITTEN) }, noun, opSpot);
  return { kind: 'binary', op: 'times', opSpot, left: each, right, spot: r.since(of.spot.from) };
}

/** A written count per thing is a rate, as one would write it; anything else is divided by one of them. */
function overOne(
  r: Reader,
  of: Formula,
  under: Formula,
  noun: string | null,
  opSpot: { readonly from: number; readonly to: number },
): Formula {
  const spot = r.since(of.spot.from);
  const own = of.kind === 'amount' && noun !== null ? roughCount(r, of) : null;
  if (own === null || noun === null || of.kind !== 'amount') {
    return { kind: 'binary', op: 'over', opSpot, left: of, right: under, spot };
  }
  const form = {
    over: [{ kind: 'noun', noun: own, count: null }],
    under: [{ kind: 'noun', noun, count: null }],
  } as const;
  return { ...of, ...heldIn(of.value, form, NONE_WRITTEN), say: `${of.say} per ${noun}`, spot };
}
