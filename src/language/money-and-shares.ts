// Written money and written percents: `$4.25`, `85 cents`, `10% waste`, `8% for tax`.
import type { Reader, WrittenIn } from './reader.ts';
import type { Formula } from './tree.ts';
import { LEAVE_OPEN } from './problems.ts';
import { termAfter, withTails } from './rates.ts';
import { expectDecimal, expectNumber, type WrittenNumber } from './numbers.ts';
import { finish, plain, unitTerm } from './amounts-held.ts';
import { unitByKey } from '../quantity/units.ts';
import { SHARE_LABELS } from './words.ts';
import { isUnknown } from './unknown-words.ts';
import { SHARE } from '../quantity/measure.ts';

export function money(r: Reader, from: number, start: number): Formula {
  const sign = r.sees('-') && !r.token.gap;
  if (sign) r.at++;
  if (r.token.kind !== 'number' && !r.sees('?')) {
    const spot = r.since(from);
    return r.fail({
      code: 'missing-value',
      spots: [spot],
      after: r.vocabulary.sign,
      fixes: [r.fix(LEAVE_OPEN, spot, `${r.vocabulary.sign}?`)],
    });
  }
  // `$100/4 hours` is a rate: the slash belongs to the hours, not to a fraction.
  const written = r.token.kind === 'number';
  const rate = written && r.seesAt(1, '/') && !r.peek(1).gap && termAfter(r, 2);
  const number = rate ? expectDecimal(r) : expectNumber(r);
  if (!number) return { kind: 'hole', spot: r.since(from) };
  const signed = sign && number.value ? { ...number, value: number.value.neg() } : number;
  const say = `${sign ? '−' : ''}${r.vocabulary.sign}${number.say}`;
  return withTails(r, signed, [unitTerm(unitByKey('$'))], say, from, start);
}

export function share(r: Reader, number: WrittenNumber, from: number, start: number): Formula {
  r.at++;
  let label: string | null = null;
  if (SHARE_SORTS.has(r.token.text) && SHARE_LABELS.has(r.peek(1).text)) {
    label = `${r.token.text} ${r.peek(1).text}`;
    r.at += 2;
  } else if (/^[A-Z]{2,4}$/.test(r.slice(r.token)) && isUnknown(r, 0)) {
    // A tax by its letters, wherever that is.
    label = r.slice(r.token);
    r.at++;
  } else if (SHARE_LABELS.has(r.token.text) && r.token.kind === 'word') {
    label = TAXES.has(r.token.text) ? r.token.text.toUpperCase() : r.token.text;
    r.at++;
  } else if (r.sees('for')) {
    // `plus 10% for waste`: the word says what the percent is for, even beside a cell of that name.
    const ahead = SHARE_LABELS.has(r.peek(1).text) ? 1 : SHARE_LABELS.has(r.peek(2).text) ? 2 : 0;
    const word = r.peek(ahead);
    if (ahead > 0 && r.peek(1).kind === 'word' && word.kind === 'word') {
      label = word.text;
      r.at += ahead + 1;
    }
  }
  r.writtenIn = WRITTEN_IN_PERCENT;
  const say = `${number.say}%${label ? ' ' + label : ''}`;
  const value = number.value ? number.value.div(100) : null;
  return finish(r, { value, holds: plain(SHARE), bare: false, label, say }, from, start);
}

/** `sales tax`, `payroll burden`: which tax or burden it is. */
const SHARE_SORTS: ReadonlySet<string> = new Set(
  'sales payroll labour labor service land property'.split(' '),
);

const TAXES: ReadonlySet<string> = new Set(['vat', 'gst', 'hst', 'pst']);

const WRITTEN_IN_PERCENT: WrittenIn = { kind: 'share' };
