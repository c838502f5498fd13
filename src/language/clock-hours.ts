// Hours as a clock shows them: `8:30 hours`.
import type { Reader } from './reader.ts';
import type { WrittenNumber } from './numbers.ts';
import type { Formula } from './tree.ts';
import { Fraction } from '../quantity/measure.ts';
import { withTails } from './rates.ts';
import { unitTerm } from './amounts-held.ts';
import { unitByKey } from '../quantity/units.ts';
import type { Fix } from '../words/report.ts';

/** `8:30 hours`: hours and minutes as a clock shows them. */
export function clock(r: Reader, hours: WrittenNumber, from: number, start: number): Formula {
  const minutes = r.peek(1);
  r.at += 2;
  const unit = r.vocabulary.unitAt(r.tokens, r.at);
  const reads = hours.whole && /^[0-5]\d$/.test(minutes.text) && unit?.unit.key === 'hour';
  if (!reads || !unit || !hours.value) {
    const spot = r.since(from);
    return r.fail({
      code: 'odd-number',
      spots: [spot],
      text: r.slice(spot),
      why: 'Hours and minutes are written "8:30 hours", with two digits of minutes under 60.',
      fixes: asHours(r, hours, minutes.text, spot),
    });
  }
  r.at += unit.length;
  const value = hours.value.add(new Fraction(`${minutes.text}/60`));
  const number = { value, say: '', whole: false };
  const say = `${hours.say}:${minutes.text} hours`;
  return withTails(r, number, [unitTerm(unitByKey('hour'))], say, from, start);
}

/** `8:30` without its hours, or `8:75 hours` with minutes that make another hour. */
function asHours(
  r: Reader,
  hours: WrittenNumber,
  minutes: string,
  spot: { from: number; to: number },
): readonly Fix[] {
  if (!hours.whole || !hours.value || !/^\d\d$/.test(minutes)) return [];
  const whole = hours.value.add(Math.floor(Number(minutes) / 60)).toString();
  const said = `${whole}:${String(Number(minutes) % 60).padStart(2, '0')}`;
  const unit = r.vocabulary.unitAt(r.tokens, r.at);
  if (unit) return unit.unit.key === 'hour' ? [r.fix(`Write ${said}`, spot, said)] : [];
  return [r.fix(`Write ${said} hours`, spot, `${said} hours`)];
}
