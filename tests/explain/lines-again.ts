// Every line of a working worked again from what is printed in it, and what is printed as its result.
import type { Step } from '../../src/explain/step.ts';
import { type Punched, punched, snapped } from './punched.ts';

/** What kind of line it was, so that a test can tell that none is passed over; `wrong` says what does not come out. */
export interface Again {
  readonly kind: 'sum' | 'rounding' | 'choice' | 'comparison' | 'read' | 'many' | 'open' | 'none';
  readonly wrong: string | null;
}

export function workedAgain(step: Step): Again {
  try {
    return again(step);
  } catch (reason) {
    const why = reason instanceof Error ? reason.message : String(reason);
    return { kind: 'none', wrong: `${step.words} | ${step.numbers}: ${why}` };
  }
}

function again(step: Step): Again {
  const { numbers, words } = step;
  if (numbers === '') return { kind: 'none', wrong: null };
  // A line without a value has no result to come out at.
  if (numbers.includes('?') || !numbers.endsWith(step.result)) return { kind: 'open', wrong: null };
  const arrow = numbers.lastIndexOf(' → ');
  if (arrow === -1) return worked(step);
  const left = numbers.slice(0, arrow);
  const right = numbers.slice(arrow + 3);
  if (right === 'yes' || right === 'no') {
    return is('comparison', holds(left) === (right === 'yes'), step);
  }
  if (words.startsWith('fewest ')) return fewest(step, left, right);
  if (/^(?:greatest|least|the (?:greater|greatest|lesser|least)) of /.test(words)) {
    return picked(step, left, right);
  }
  if (/(?:^read | of .*, read ).* off /.test(words) || / read off /.test(words))
    return read(step, right);
  const limit = /^(.*), not (less|more) than (.*)$/.exec(left);
  if (limit) {
    const [, of = '', side, than = ''] = limit;
    const least = side === 'less' ? Math.max : Math.min;
    return is('choice', isAs(least(punched(of).value, punched(than).value), right), step);
  }
  if (/\brounded\b/.test(words)) return rounded(step, left, right);
  return is('choice', isAs(punched(left).value, right), step);
}

/** `12 ft × 4 ft × 4 in ÷ 12 in per ft = 16 cubic feet`, with as many signs of equality as there are. */
function worked(step: Step): Again {
  const sides = step.numbers.split(' = ');
  const added = /^\(?(\d[\d,]*) (?:lines|rows|amounts) added\)?(?: ÷ (\d+))?$/.exec(sides[0] ?? '');
  if (added) {
    const parts = step.parts.flatMap(amounts);
    const sum = parts.reduce((so, part) => so + part, 0) / Number(added[2] ?? 1);
    return is('many', isAs(sum, sides[1] ?? ''), step);
  }
  const come = sides.slice(1).every((side, at) => {
    const [before, after] = [punched(sides[at] ?? ''), punched(unended(side))];
    const kind = before.dimension === after.dimension || before.value === 0 || after.value === 0;
    return kind && isAs(before.value, unended(side));
  });
  return is('sum', come, step);
}

/** A line of a long total, or what is behind `60 more`. */
function amounts(part: Step): readonly number[] {
  if (/^\d+ more$/.test(part.words)) return (part.open?.().parts ?? part.parts).flatMap(amounts);
  return /\d/.test(part.result) ? [punched(part.result).value] : [];
}

function rounded(step: Step, left: string, right: string): Again {
  const sides = left.split(' = ');
  const come = sides.slice(1).every((side, at) => isAs(punched(sides[at] ?? '').value, side));
  const [, way = ''] =
    /rounded( up| down)? to/.exec(step.words) ?? /rounded( down), as/.exec(step.words) ?? [];
  const to = stepOf(step, punched(right));
  const all = sides.map((side) => {
    const many = snapped(punched(side).value / to);
    const whole =
      way === ' up' ? Math.ceil(many) : way === ' down' ? Math.floor(many) : halfUp(many);
    return isAs(whole * to, right);
  });
  return is('rounding', come && all.every(Boolean), step);
}

/** What it is rounded to whole ones of. */
function stepOf({ words, parts }: Step, result: Punched): number {
  if (/ cent(?:,|$)/.test(words)) return 0.01;
  const [, said] = /(?:to the next|to the nearest|a whole step of) (.*)$/.exec(words) ?? [];
  if (said === undefined) return 1;
  if (/^[a-z ]+$/.test(said)) {
    const part = parts.find(({ name, words: own }) => (name ?? own).toLowerCase() === said);
    if (part) return punched(part.result).value;
    return punched(`1 ${said}`).value;
  }
  const step = punched(said);
  if (step.dimension !== result.dimension && result.value !== 0)
    throw new Error(`steps of ${said}`);
  return step.value;
}

function halfUp(value: number): number {
  return Math.floor(snapped(value + 0.5));
}

function picked(step: Step, left: string, right: string): Again {
  const apart = step.words.startsWith('the ') ? / or / : /(?<!, a hair (?:shy|over)), (?!a hair)/;
  const all = left.split(apart).map((one) => punched(one).value);
  const many = /^\d+ (?:rows|amounts)$/.test(left);
  const values = many ? step.parts.flatMap(amounts) : all;
  const best = /great/.test(step.words) ? Math.max(...values) : Math.min(...values);
  return is(many ? 'many' : 'choice', isAs(best, right), step);
}

/** `(72 in − 13 × 1 1/2 in) ÷ 14 = 3 3/4 in < 4 in → 13 balusters`. */
function fewest(step: Step, left: string, right: string): Again {
  const [line = '', compared = ''] = left.split(' = ');
  const [gap = ''] = compared.split(/ [<≤] /);
  const count = /^[\d,]+/.exec(right)?.[0] ?? '';
  const isIn = line.includes(` ${count} × `);
  return is('comparison', isIn && isAs(punched(line).value, gap) && holds(compared) === true, step);
}

/** The row that was read stands below with its amount. */
function read(step: Step, right: string): Again {
  const same = ({ result }: Step): boolean =>
    result === right || (maybe(result) !== null && maybe(result) === maybe(right));
  return is('read', step.parts.some(same), step);
}

/** A comparison as it is printed. */
function holds(text: string): boolean | null {
  const logic = /^(yes|no) (and|or) (yes|no)$/.exec(text);
  if (logic) {
    const [, a, op, b] = logic;
    return op === 'and' ? a === 'yes' && b === 'yes' : a === 'yes' || b === 'yes';
  }
  if (text.startsWith('not ')) return text === 'not no';
  const [first = '', sign = '', second = '', ...more] = text.split(/ ([=≠<>≤≥]) /);
  const one = compares(first, sign, second);
  if (more.length < 2) return one;
  return one === true && compares(second, more[0] ?? '', more[1] ?? '') === true;
}

function compares(first: string, sign: string, second: string): boolean | null {
  const [a, b] = [first, second].map(maybe);
  if (a === null || b === null || a === undefined || b === undefined) {
    const same = first.toLowerCase() === second.toLowerCase();
    return sign === '=' ? same : sign === '≠' ? !same : null;
  }
  const apart = Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a)) ? 0 : a - b;
  switch (sign) {
    case '=':
      return apart === 0;
    case '≠':
      return apart !== 0;
    case '<':
      return apart < 0;
    case '>':
      return apart > 0;
    case '≤':
      return apart <= 0;
    case '≥':
      return apart >= 0;
    default:
      return null;
  }
}

/** Null for words. */
function maybe(side: string): number | null {
  try {
    return punched(side).value;
  } catch {
    return null;
  }
}

/** To half of the last digit that is printed, or half a sixteenth of an inch. */
function isAs(value: number, printed: string): boolean {
  const as = punched(printed);
  const off = Math.abs(value - as.value);
  const onTape = as.dimension === 'length 1' && !/\d\.\d/.test(printed);
  return off <= (onTape ? 1 / 32 : as.digit / 2) * (1 + 1e-6) + 1e-9 * Math.abs(value);
}

/** `3 3/4 in < 4 in`: up to the sign. */
function unended(side: string): string {
  return side.split(/ [<≤] /)[0] ?? '';
}

function is(kind: Again['kind'], right: boolean, step: Step): Again {
  return { kind, wrong: right ? null : `${step.words} | ${step.numbers}` };
}
