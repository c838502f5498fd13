// Slopes as they are written: `6 in 12`, `1:80`.
import type { Reader } from './reader.ts';
import { expectNumber, type WrittenNumber } from './numbers.ts';
import type { Formula } from './tree.ts';
import { unitByKey } from '../quantity/units.ts';
import { Fraction } from '../quantity/measure.ts';
import { type Form, NONE_WRITTEN } from '../quantity/form.ts';
import { built, unitTerm } from './amounts-held.ts';

/** `1:80`: a slope of one in eighty. */
export function ratio(r: Reader, rise: WrittenNumber, from: number, start: number): Formula {
  r.at++;
  const run = expectNumber(r);
  if (!run) return { kind: 'hole', spot: r.since(from) };
  if (!run.value || !rise.value || run.value.n === 0n) {
    const spot = r.since(from);
    const why = 'A slope is written with two numbers: 1:80, or 1/4 in per ft.';
    return r.fail({ code: 'odd-number', spots: [spot], text: r.slice(spot), why, fixes: [] });
  }
  return slope(r, rise, run, from, start);
}

/** `6 in 12` is a slope: so much rise in so much run. Null where `in` is the inch of the first number. */
export function maybeSlope(
  r: Reader,
  rise: WrittenNumber,
  from: number,
  start: number,
): Formula | null {
  const before = r.at;
  r.at++;
  const run = expectNumber(r);
  if (!run?.value || !rise.value || run.value.n === 0n) {
    if (!r.problem) r.at = before;
    return null;
  }
  const unit = r.vocabulary.unitAt(r.tokens, r.at);
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  const marked = r.sees("'") || r.sees('"') || r.sees('%');
  if (unit || noun || marked) {
    r.at += unit?.length ?? noun?.length ?? 1;
    const after = unit ? r.vocabulary.nounAt(r.tokens, r.at) : null;
    if (after) r.at += after.length;
    const spot = r.since(from);
    const stock = r.slice(spot).replace(/^.*?\bin\b\s*/, '');
    return r.fail({
      code: 'two-readings',
      spots: [spot],
      about: `"${r.slice(spot)}" could be ${rise.say} inches bought in lengths, or a slope of so much in so much. Write the one that is meant.`,
      fixes: [
        r.fix('Bought in lengths', spot, `${rise.say} in in ${stock}${after ? '' : ' pieces'}`),
        r.fix(
          'A slope',
          spot,
          `${rise.say} in per ${stock.replace(/\s+[a-z]+$/, after ? '' : '$&')}`,
        ),
      ],
    });
  }
  return slope(r, rise, run, from, start);
}

export function slope(
  r: Reader,
  rise: WrittenNumber,
  run: WrittenNumber,
  from: number,
  start: number,
): Formula {
  const inch = unitByKey('in');
  const count = decimalText(run.value ?? new Fraction(1));
  const form: Form = {
    over: [unitTerm(inch)],
    under: [{ kind: 'unit', unit: inch, count }],
  };
  return built(r, rise, form, `${rise.say} in ${run.say}`, from, start, NONE_WRITTEN);
}

function decimalText(value: Fraction): string {
  return value.d === 1n ? value.n.toString() : value.toString(20);
}
