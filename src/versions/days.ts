// Dates as people write them beside a price, and how many days lie between two. No clock: today is handed in.

const DAY = /\b(\d{4})-(\d{2})-(\d{2})\b/;

/** Days since the first of March of the year 0; null where the text opens with no date of the calendar. */
export function dayNumber(text: string): number | null {
  const found = DAY.exec(text);
  if (found?.index !== 0) return null;
  const [year, month, day] = found.slice(1).map(Number);
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return null;
  // The year is counted from March, so that a leap day is its last.
  const y = month > 2 ? year : year - 1;
  const m = (month + 9) % 12;
  const leaps = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  return 365 * y + leaps + Math.floor((153 * m + 2) / 5) + day - 1;
}

/** `2026-03-31` of a day counted as above. */
export function dayText(number: number): string {
  // Years of 365 days in whole spans of 400 years, and what their leap days add taken off again.
  const span = Math.floor(number / 146_097);
  const inSpan = number - span * 146_097;
  const leaps =
    Math.floor(inSpan / 1460) - Math.floor(inSpan / 36_524) + Math.floor(inSpan / 146_096);
  const y = Math.floor((inSpan - leaps) / 365);
  const inYear = inSpan - (365 * y + Math.floor(y / 4) - Math.floor(y / 100));
  const m = Math.floor((5 * inYear + 2) / 153);
  const day = inYear - Math.floor((153 * m + 2) / 5) + 1;
  const month = m < 10 ? m + 3 : m - 9;
  const year = span * 400 + y + (m < 10 ? 0 : 1);
  const digits = (count: number, most: number): string => String(count).padStart(most, '0');
  return `${digits(year, 4)}-${digits(month, 2)}-${digits(day, 2)}`;
}

function daysIn(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** What a source says of its days. */
export interface Dated {
  /** The day it was quoted. */
  readonly quoted: number | null;
  /** The last day it is good. */
  readonly until: number;
}

/** `quoted by the yard, 2026-02-24, good until 2026-03-31`, or `good for 30 days`; null where it never ends. */
export function datedBy(source: string): Dated | null {
  const end = /\bgood\s+(?:until|till|through|to)\s+(?=\d)/i.exec(source);
  const term = /\bgood\s+for\s+(\d{1,4})\s+days?\b/i.exec(source);
  const ends = [end, term].flatMap((found) => (found ? [found.index] : []));
  if (ends.length === 0) return null;
  const quoted = firstDay(source.slice(0, Math.min(...ends))) ?? (end ? null : firstDay(source));
  if (end) {
    const until = dayNumber(source.slice(end.index + end[0].length));
    if (until !== null) return { quoted, until };
  }
  return term && quoted !== null ? { quoted, until: quoted + Number(term[1]) } : null;
}

function firstDay(text: string): number | null {
  const found = DAY.exec(text);
  return found ? dayNumber(text.slice(found.index)) : null;
}
