// A written amount as it is held: its value, what it measures, and in what it was written.
import type { Reader, WrittenIn } from './reader.ts';
import type { WrittenNumber } from './numbers.ts';
import { type Form, type Holds, NONE_WRITTEN, type Term, withUnit } from '../quantity/form.ts';
import type { Amount } from './tree.ts';
import { Fraction, ONE, SHARE } from '../quantity/measure.ts';
import { heldAmount } from '../quantity/amount.ts';
import { saidIn } from './amounts-said.ts';
import type { Unit } from '../quantity/units.ts';
import { LENGTH } from '../quantity/dimension.ts';

export function built(
  r: Reader,
  number: WrittenNumber,
  form: Form,
  say: string,
  from: number,
  start: number,
  alsoWritten: readonly string[],
): Amount {
  r.writtenIn = { kind: 'form', form, larger: alsoWritten };
  return finish(r, { ...heldIn(number.value, form, alsoWritten), label: null, say }, from, start);
}

export function heldIn(
  number: Fraction | null,
  form: Form,
  alsoWritten: readonly string[],
): Pick<Amount, 'value' | 'holds' | 'bare'> {
  const held = heldAmount(number ?? new Fraction(1), form);
  const holds: Holds = {
    measure: held.measure,
    showIn: form.under.length > 0 ? form : null,
    written: unitsIn(form, alsoWritten),
  };
  return { value: number === null ? null : held.value, holds, bare: false };
}

/** A bare number in the form in which another amount was written: `12` beside `16 hours`. */
export function likeWritten(r: Reader, bare: Amount, as: WrittenIn): Amount {
  const { kind, value, say, spot } = bare;
  if (as.kind === 'share') {
    const share = value && value.div(100);
    const holds = plain(SHARE);
    return { kind, value: share, holds, bare: false, label: null, say: `${say}%`, spot };
  }
  return {
    kind,
    ...heldIn(value, as.form, NONE_WRITTEN),
    label: null,
    say: saidIn(r, { value, say, whole: false }, as.form),
    spot,
  };
}

/** The held number of one in what it was written in: 12 for a foot, 0.01 for a percent. */
export function oneOfThese(as: WrittenIn | null): Fraction {
  if (as === null) return ONE;
  return as.kind === 'share' ? PERCENT : heldAmount(ONE, as.form).value;
}

const PERCENT = new Fraction('1/100');

export function finish(
  r: Reader,
  amount: Omit<Amount, 'kind' | 'spot'>,
  from: number,
  start: number,
): Amount {
  const spot = r.since(from);
  if (r.at > start) r.marks.push({ ...spot, kind: 'amount', cell: null });
  const { value, holds, bare, label, say } = amount;
  return { kind: 'amount', value, holds, bare, label, say, spot };
}

export function unitTerm(unit: Unit): Term {
  return { kind: 'unit', unit, count: null };
}

function unitsIn(form: Form, besides: readonly string[]): readonly string[] {
  let written = besides;
  for (const term of form.over) if (term.kind === 'unit') written = withUnit(written, term.unit);
  for (const term of form.under) if (term.kind === 'unit') written = withUnit(written, term.unit);
  return written;
}

export function plain(measure: Holds['measure']): Holds {
  return { measure, showIn: null, written: NONE_WRITTEN };
}

/** Is it a length as written: no rate, no number without a unit? */
export function isWrittenLength(amount: Amount): boolean {
  return isLength(amount.holds);
}

export function isLength(holds: Holds): boolean {
  const { measure } = holds;
  return measure.kind === 'amount' && measure.dimension === LENGTH && measure.rate === null;
}
