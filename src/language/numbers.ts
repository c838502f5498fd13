// Written numbers: whole, decimal, with thousands commas, fractions and mixed numbers as on a tape measure.
import { Fraction } from '../quantity/measure.ts';
import type { Reader } from './reader.ts';

/** A written number; `value` null is `?`. `say` is how it is said back. */
export interface WrittenNumber {
  readonly value: Fraction | null;
  readonly say: string;
  /** Written without decimals or fraction. */
  readonly whole: boolean;
}

const VULGAR: ReadonlyMap<string, string> = new Map(
  Object.entries({
    '½': '1/2',
    '⅓': '1/3',
    '⅔': '2/3',
    '¼': '1/4',
    '¾': '3/4',
    '⅛': '1/8',
    '⅜': '3/8',
    '⅝': '5/8',
    '⅞': '7/8',
  }),
);

/** The most digits a number is read with. */
const MOST_DIGITS = 40;

const UP_TO_NINETEEN =
  'one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');

const NUMBER_WORDS: ReadonlyMap<string, number> = new Map([
  ...UP_TO_NINETEEN.map((word, i) => [word, i + 1] as const),
  ...TENS.map((word, i) => [word, (i + 2) * 10] as const),
  ['hundred', 100],
  ['dozen', 12],
  ...['nothing', 'zero', 'none', 'nil'].map((word) => [word, 0] as const),
]);

/** One to nine after tens: `thirty two`, `thirty-two`. */
function unitsAfterTens(r: Reader, tens: number): number {
  if (tens < 20 || tens > 90) return 0;
  const hyphen = r.sees('-') && !r.token.gap && !r.peek(1).gap ? 1 : 0;
  const units = NUMBER_WORDS.get(r.peek(hyphen).text) ?? 0;
  if (r.peek(hyphen).kind !== 'word' || units < 1 || units > 9) return 0;
  r.at += hyphen + 1;
  return units;
}

/** `two hundred`, `three dozen`; `one hundred and twenty`. */
function manyOf(r: Reader, count: number): number {
  if (r.sees('dozen') && count !== 12) {
    r.at++;
    return count * 12;
  }
  const many = r.sees('hundred') && count < 100 ? 100 : r.sees('thousand') ? 1000 : 0;
  if (many === 0) return count;
  r.at++;
  const and = r.sees('and') ? 1 : 0;
  const next = r.peek(and);
  const more = next.kind === 'word' ? (NUMBER_WORDS.get(next.text) ?? 0) : 0;
  // `two hundred and a half` is something else.
  if (more < 1 || more > 90 || next.text === 'dozen') return count * many;
  r.at += and + 1;
  return count * many + more + unitsAfterTens(r, more);
}

/** Does this word say a number? */
export function isNumberWord(word: string): boolean {
  return NUMBER_WORDS.has(word);
}

const FRACTION_WORDS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    half: '1/2',
    third: '1/3',
    quarter: '1/4',
    eighth: '1/8',
    sixteenth: '1/16',
  }),
);

/** Does a number in words begin here: `twelve`, `half inch`? A name of those words wins. */
export function seesNumberWord(r: Reader): boolean {
  if (r.token.kind !== 'word') return false;
  const number = NUMBER_WORDS.has(r.token.text);
  const fraction =
    FRACTION_WORDS.has(r.token.text) && (unitFollows(r, 1) || r.sees('half', 'a', 'dozen'));
  return (number || fraction) && !r.nameAt(0);
}

/** `inch`, `an inch`, `of an inch` so many tokens ahead. */
function unitFollows(r: Reader, ahead: number): boolean {
  const at = r.at + ahead + oneOfLength(r, ahead);
  if (r.vocabulary.unitAt(r.tokens, at)) return true;
  // `half a day`, but `the third post` is one of several.
  const noun = r.sees('half') || r.sees('quarter');
  return noun && !r.sees('half', 'of') && r.vocabulary.nounAt(r.tokens, at) !== null;
}

/** How many words `of an` or `an` takes before a unit: `3/8 of an inch`, `half an inch`; 0 where none stands there. */
function oneOfLength(r: Reader, ahead: number): number {
  const of = r.seesAt(ahead, 'of') ? 1 : 0;
  const article = r.seesAt(ahead + of, 'a') || r.seesAt(ahead + of, 'an') ? 1 : 0;
  if (article === 0) return 0;
  const at = r.at + ahead + of + 1;
  const one = r.vocabulary.unitAt(r.tokens, at) ?? r.vocabulary.nounAt(r.tokens, at);
  return one ? of + 1 : 0;
}

/** A part of one unit: the words between are passed over, `three eighths of an inch`. */
function ofOneUnit(r: Reader, number: WrittenNumber): WrittenNumber {
  r.at += oneOfLength(r, 0);
  return number;
}

function numberWord(r: Reader): WrittenNumber {
  const fraction = FRACTION_WORDS.get(r.token.text);
  const whole = NUMBER_WORDS.get(r.token.text) ?? 1;
  r.at++;
  if (fraction) {
    if (r.sees('a', 'dozen')) {
      r.at += 2;
      return { value: new Fraction(6), say: '6', whole: true };
    }
    return ofOneUnit(r, { value: new Fraction(fraction), say: fraction, whole: false });
  }
  const part = partOfOne(r.token.text);
  if (part) {
    // `one third`, `three quarters`
    r.at++;
    const value = new Fraction(part).mul(whole);
    return ofOneUnit(r, { value, say: value.toFraction(), whole: false });
  }
  const count = manyOf(r, whole + unitsAfterTens(r, whole));
  const say = count < 1000 ? `${count}` : tidy(`${count}`);
  return andAHalf(r, { value: new Fraction(count), say, whole: true });
}

function partOfOne(word: string): string | undefined {
  return FRACTION_WORDS.get(word.replace(/s$/, '').replace('halve', 'half'));
}

/** `seven and a half`, `nine and three quarter`. */
function andAHalf(r: Reader, number: WrittenNumber): WrittenNumber {
  if (!number.value || !r.sees('and')) return number;
  const [count, last] = [r.peek(1), r.peek(2)];
  const many =
    count.text === 'a' ? 1 : count.kind === 'word' ? NUMBER_WORDS.get(count.text) : undefined;
  const part = last.kind === 'word' ? partOfOne(last.text) : undefined;
  if (!part || many === undefined) return number;
  r.at += 3;
  const more = new Fraction(part).mul(many);
  return { value: number.value.add(more), say: `${number.say} ${more.toFraction()}`, whole: false };
}

/** Reads the number that stands here: a token of kind number, or `?`. Null after leaving a problem. */
export function expectNumber(r: Reader): WrittenNumber | null {
  if (r.sees('?')) {
    r.at++;
    return { value: null, say: '?', whole: false };
  }
  if (r.token.kind === 'word') return numberWord(r);
  const first = r.token;
  r.at++;
  const comma = r.token;
  if (comma.text === ',' && !comma.gap && r.peek(1).kind === 'number' && !r.peek(1).gap) {
    return refuseComma(r, first.from);
  }
  if (first.text.length > MOST_DIGITS && first.text.replace(/\D/g, '').length > MOST_DIGITS) {
    r.fail({
      code: 'odd-number',
      spots: [first],
      text: first.text.slice(0, 12) + '…',
      why: `Numbers of up to ${MOST_DIGITS} digits are read.`,
      fixes: [],
    });
    return null;
  }
  if (r.sees('k') && !r.token.gap) {
    // $1.2k
    r.at++;
    const value = exact(first.text).mul(1000);
    return { value, say: tidy(value.toString()), whole: value.d === 1n };
  }
  const vulgar = VULGAR.get(first.text);
  if (vulgar) return ofOneUnit(r, { value: new Fraction(vulgar), say: vulgar, whole: false });
  if (r.sees('dozen')) {
    r.at++;
    const value = exact(first.text).mul(12);
    return { value, say: tidy(value.toString()), whole: value.d === 1n };
  }
  const whole = /^[\d,]+$/.test(first.text);
  if (!whole) return { value: exact(first.text), say: tidy(first.text), whole: false };

  const alone = fractionAfter(r, first.text, 0);
  if (alone) return ofOneUnit(r, alone);
  // A fraction against a whole number: `7 1/2`, `7-1/2`, `7½`.
  const hyphen = r.sees('-') && !r.token.gap && !r.peek(1).gap ? 1 : 0;
  const next = r.peek(hyphen);
  if (next.kind === 'number') {
    const mark = VULGAR.get(next.text);
    if (mark) {
      r.at += hyphen + 1;
      return {
        value: exact(first.text).add(mark),
        say: `${tidy(first.text)} ${mark}`,
        whole: false,
      };
    }
    if (/^\d+$/.test(next.text) && (hyphen === 1 || next.gap)) {
      const before = r.at;
      r.at += hyphen + 1;
      const part = fractionAfter(r, next.text, 0);
      if (part?.value) {
        return {
          value: exact(first.text).add(part.value),
          say: `${tidy(first.text)} ${part.say}`,
          whole: false,
        };
      }
      r.at = before;
    }
  }
  return andAHalf(r, { value: exact(first.text), say: tidy(first.text), whole: true });
}

/** Reads the number token that stands here and no fraction after it. */
export function expectDecimal(r: Reader): WrittenNumber {
  const { text } = r.token;
  r.at++;
  return { value: exact(text), say: tidy(text), whole: /^[\d,]+$/.test(text) };
}

/** `3/4`, written tight between whole numbers, its first number already taken. */
function fractionAfter(r: Reader, over: string, ahead: number): WrittenNumber | null {
  const slash = r.peek(ahead);
  const under = r.peek(ahead + 1);
  const tight = slash.text === '/' && !slash.gap && under.kind === 'number' && !under.gap;
  if (!tight || !/^\d+$/.test(under.text) || /^0+$/.test(under.text) || over.includes(','))
    return null;
  r.at += ahead + 2;
  return {
    value: new Fraction(`${over}/${under.text}`),
    say: `${over}/${under.text}`,
    whole: false,
  };
}

function refuseComma(r: Reader, from: number): null {
  const spot = { from, to: r.peek(1).to };
  const text = r.slice(spot);
  r.fail({
    code: 'odd-number',
    spots: [spot],
    text,
    why: 'A comma inside a number has exactly three digits after it. For a decimal write a point; between two amounts leave a space after the comma.',
    fixes: [
      r.fix('Read it as a decimal', spot, text.replace(',', '.')),
      r.fix('Read it as two amounts', spot, text.replace(',', ', ')),
    ],
  });
  return null;
}

function exact(digits: string): Fraction {
  if (digits.length < 10 && isDigits(digits)) return new Fraction(Number(digits));
  const plain = digits.replaceAll(',', '');
  return new Fraction(plain.startsWith('.') ? '0' + plain : plain);
}

function isDigits(text: string): boolean {
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code < 48 || code > 57) return false;
  }
  return true;
}

function tidy(digits: string): string {
  if (digits.length < 4 && !digits.startsWith('0') && isDigits(digits)) return digits;
  const plain = digits.replaceAll(',', '');
  const [whole = '', decimals] = plain.split('.');
  const grouped = (whole === '' ? '0' : whole)
    .replace(/^0+(?=\d)/, '')
    .replace(/\B(?=(\d{3})+$)/g, ',');
  return decimals === undefined ? grouped : `${grouped}.${decimals}`;
}
