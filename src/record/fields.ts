// Reading what somebody typed, or copied out of a sheet, in one field of an entry. What can't be read is refused with the
// reason and what to write; nothing is guessed.
import type { CostKind } from '../language/tree.ts';
import { nameKey } from '../notebook/names.ts';
import { oddInPaste } from '../notebook/pasting.ts';
import { Dec } from '../quantity/decimal.ts';
import { dayNumber } from '../versions/days.ts';
import { nearNames } from '../words/near.ts';
import { OUTSIDE, type PartNamed } from './entry.ts';

export type Read<T> =
  | { readonly kind: 'read'; readonly value: T }
  | { readonly kind: 'refused'; readonly why: string };

/** Which number of `3/14/2026` is the month. */
export type DayOrder = 'month first' | 'day first' | null;

const MONTHS = 'jan feb mar apr may jun jul aug sep oct nov dec'.split(' ');
const MOST_HOURS = 10_000;

export function readDate(text: string, order: DayOrder): Read<string> {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text);
  if (iso) return dayOf(text, iso[1], iso[2], iso[3]);
  const slashed = SLASHED.exec(text);
  if (slashed) {
    const [, one, other, year] = slashed;
    const known = orderOf(text) ?? order;
    if (known === 'month first') return dayOf(text, year, one, other);
    if (known === 'day first') return dayOf(text, year, other, one);
    if (one === other) return dayOf(text, year, one, other);
    const first = isoOf(year, one, other);
    return refused(
      `"${text}" can be read as two days. Write ${first} or ${isoOf(year, other, one)}.`,
    );
  }
  const worded =
    /^(\d{1,2})[ -]([a-z]{3})[a-z]*\.?,?[ -](\d{4})$/i.exec(text) ??
    turned(/^([a-z]{3})[a-z]*\.? (\d{1,2}),? (\d{4})$/i.exec(text));
  if (worded) {
    const month = MONTHS.indexOf((worded[2] ?? '').toLowerCase()) + 1;
    if (month > 0) return dayOf(text, worded[3], String(month), worded[1]);
  }
  if (text === '') return refused('Its day is missing. Write it as 2026-03-14.');
  return refused(`"${text}" is no day that can be read. Write it as 2026-03-14.`);
}

const SLASHED = /^(\d{1,2})[/.](\d{1,2})[/.](\d{4})$/;

/** What a whole column of dates says of their order: `3/14/2026` tells, `3/4/2026` doesn't. */
export function dayOrder(texts: readonly string[]): DayOrder {
  const told = new Set(texts.map(orderOf).filter((order) => order !== null));
  return told.size === 1 ? ([...told][0] ?? null) : null;
}

function orderOf(text: string): DayOrder {
  const [, one = '', other = ''] = SLASHED.exec(text) ?? [];
  if (Number(one) > 12 && Number(other) <= 12) return 'day first';
  return Number(other) > 12 && Number(one) <= 12 ? 'month first' : null;
}

function turned(found: RegExpExecArray | null): readonly string[] | null {
  return found ? [found[0], found[2] ?? '', found[1] ?? '', found[3] ?? ''] : null;
}

function dayOf(text: string, year = '', month = '', day = ''): Read<string> {
  const iso = isoOf(year, month, day);
  if (dayNumber(iso) === null || Number(year) < 1970 || Number(year) > 2199)
    return refused(`"${text}" is no day of the calendar.`);
  return { kind: 'read', value: iso };
}

function isoOf(year = '', month = '', day = ''): string {
  return `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
}

export function readPart(text: string, parts: readonly PartNamed[]): Read<PartNamed> {
  const all = [...parts, OUTSIDE];
  const found = all.find(({ name }) => nameKey(name) === nameKey(text));
  if (found && text !== '') return { kind: 'read', value: found };
  if (text === '')
    return refused('Its part is missing. Write one of the notebook, or "not in the estimate".');
  const [near] = nearNames(
    text,
    all.map(({ name }) => name),
    1,
  );
  const offered =
    near === undefined ? 'Write one that is, or "not in the estimate".' : `Nearest here: ${near}.`;
  return refused(`"${text}" is no part of this notebook. ${offered}`);
}

const KINDS: ReadonlyMap<string, CostKind> = new Map([
  ['material', 'material'],
  ['materials', 'material'],
  ['labour', 'labour'],
  ['labor', 'labour'],
  ['hours', 'labour'],
  ['equipment', 'equipment'],
  ['rental', 'equipment'],
  ['subcontract', 'subcontract'],
  ['subcontractor', 'subcontract'],
  ['fee', 'fee'],
  ['fees', 'fee'],
  ['permit', 'fee'],
]);

const KIND_WORDS = 'material, labour, equipment, subcontract or fee';

export function readKind(text: string): Read<CostKind> {
  const kind = KINDS.get(nameKey(text));
  if (kind) return { kind: 'read', value: kind };
  if (text === '') return refused(`What it is a cost of is missing: ${KIND_WORDS}.`);
  return refused(`"${text}" is no cost that is known here. Write ${KIND_WORDS}.`);
}

/** Money of this currency as exact decimal text; with at most two places, or more for a price an hour. */
export function readMoney(text: string, currency: string, places: 2 | 4): Read<string> {
  const odd = oddInPaste(text);
  if (odd !== null) return refused(odd);
  const found =
    /^([-−+]?)\s?([$€£]?)\s?([-−]?)([\d.,]+)(?: ?\/ ?(?:h|hr|hour)| an hour| per hour)?$/.exec(
      text,
    );
  const [, before = '', sign = '', after = '', figure = ''] = found ?? [];
  if (!found || (before !== '' && after !== '') || !/\d/.test(figure))
    return refused(`"${text}" is no amount of money that can be read. Write it as 1,234.50.`);
  if (sign !== '' && sign !== currency)
    return refused(`"${text}" is in ${sign}; this notebook is in ${currency}.`);
  const number = readFigure(figure);
  if (number.kind === 'refused') return number;
  const [whole = '', part = ''] = number.value.split('.');
  if (part.length > places && /[1-9]/.test(part.slice(places)))
    return refused(
      places === 2
        ? `"${text}" has more places than there are cents. Write the amount to the cent.`
        : `"${text}" has more than four places.`,
    );
  if (whole.length > 12) return refused(`"${text}" is more than a job costs.`);
  const kept = part
    .slice(0, places)
    .padEnd(2, '0')
    .replace(/(?<=^..)0+$/, '');
  const minus = /[-−]/.test(before + after) && /[1-9]/.test(whole + kept);
  return { kind: 'read', value: `${minus ? '-' : ''}${whole}.${kept}` };
}

/** Hours as minutes, exactly: `7.5`, `7 1/2`, `7:30`, `7 h 30 min`, `45 min`. */
export function readHours(text: string): Read<string> {
  const odd = oddInPaste(text);
  if (odd !== null) return refused(odd);
  const minutes = minutesIn(text);
  if (typeof minutes === 'string') return refused(minutes);
  if (minutes === null)
    return refused(`"${text}" is no time that can be read. Write hours: 7.5 or 7:30.`);
  if (minutes.lte(0))
    return refused(`"${text}" is no time at all. Write the hours that were worked.`);
  if (minutes.gt(MOST_HOURS * 60)) return refused(`"${text}" is more than ten thousand hours.`);
  return { kind: 'read', value: minutes.toFixed() };
}

/** A text: why it can't be read. */
function minutesIn(text: string): Dec | string | null {
  const clock = /^(\d{1,5}):([0-5]\d)(?::00)?$/.exec(text);
  if (clock) return new Dec(clock[1] ?? 0).times(60).plus(clock[2] ?? 0);
  const mixed = /^(?:(\d{1,5})[ -])?(\d{1,2})\/(\d{1,2})(?: ?(?:h|hr|hrs|hour|hours))?$/.exec(text);
  if (mixed) {
    const [, whole = '0', over = '0', under = '0'] = mixed;
    if (Number(under) === 0) return null;
    const part = new Dec(over).times(60).div(under);
    if (!part.isInteger()) return `"${text}" is no whole number of minutes. Write it as 7:20.`;
    return part.plus(new Dec(whole).times(60));
  }
  const both = /^([\d.,]+) ?(?:h|hr|hrs|hour|hours) ?(\d{1,5}) ?(?:m|min|mins|minutes?)$/i.exec(
    text,
  );
  const minutes = /^(\d{1,6}) ?(?:m|min|mins|minutes?)$/i.exec(text)?.[1];
  if (minutes !== undefined) return new Dec(minutes);
  const hours = both?.[1] ?? /^([\d.,]+) ?(?:h|hr|hrs|hours?)?$/i.exec(text)?.[1];
  if (hours === undefined) return null;
  const figure = readFigure(hours);
  if (figure.kind === 'refused') return figure.why;
  if ((figure.value.split('.')[1] ?? '').length > 6)
    return `"${text}" has more places than hours need.`;
  return new Dec(figure.value).times(60).plus(both?.[2] ?? 0);
}

/** Percent from 0 to 100 with at most two places. */
export function readPercent(text: string): Read<string> {
  const found = /^([\d.,]+) ?%?$/.exec(text);
  const figure = found ? readFigure(found[1] ?? '') : null;
  if (figure?.kind === 'refused') return figure;
  if (!figure || new Dec(figure.value).gt(100))
    return refused(`"${text}" is no share that can be done. Write percent from 0 to 100.`);
  if ((figure.value.split('.')[1] ?? '').length > 2)
    return refused(`"${text}" has more than two places.`);
  return { kind: 'read', value: new Dec(figure.value).toFixed() };
}

/** Digits with a point, and commas that part thousands; a comma in any other place is refused. */
function readFigure(text: string): Read<string> {
  if (/^(\d+|\d{1,3}(,\d{3})+)(\.\d*)?$|^\.\d+$/.test(text)) {
    const [whole = '', part = ''] = text.replaceAll(',', '').split('.');
    const plain = whole.replace(/^0+(?=\d)/, '') || '0';
    return { kind: 'read', value: part === '' ? plain : `${plain}.${part}` };
  }
  if (/^\d+,\d+$/.test(text))
    return refused(
      `The comma in "${text}" can't part thousands. Write ${text.replace(',', '.')} with a point.`,
    );
  if (/^\d{1,3}(\.\d{3})+,\d+$|^\d{1,3}(\.\d{3}){2,}$/.test(text))
    return refused('Points and commas stand the other way round here: 1,234.50.');
  return refused(`"${text}" is no number that can be read.`);
}

/** Words in one field: no line breaks, not without an end, and no formula of a sheet. */
export function readWords(text: string, most: number, missing: string | null): Read<string> {
  if (text.startsWith('=')) return refused(oddInPaste(text) ?? 'It is a formula of a sheet.');
  if (text === '' && missing !== null) return refused(missing);
  if (text.length > most)
    return refused(
      `It has ${text.length.toLocaleString('en-US')} letters; ${most.toLocaleString('en-US')} are kept.`,
    );
  return { kind: 'read', value: text };
}

export function refused(why: string): { readonly kind: 'refused'; readonly why: string } {
  return { kind: 'refused', why };
}
