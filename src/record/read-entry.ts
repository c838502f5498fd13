// Nine fields of text as an entry, or what is wrong with each of them.
import { Dec } from '../quantity/decimal.ts';
import { centsOf } from '../versions/cents.ts';
import { type Cost, type PartNamed, type Said, centsFor } from './entry.ts';
import {
  type DayOrder,
  type Read,
  readDate,
  readHours,
  readKind,
  readMoney,
  readPart,
  readWords,
  refused,
} from './fields.ts';

export const FIELDS = ['date', 'part', 'kind', 'what', 'amount', 'hours', 'rate', 'note'] as const;
export type Field = (typeof FIELDS)[number];
export type Texts = Readonly<Record<Field, string>>;

/** What the fields are read against. */
export interface Around {
  readonly parts: readonly PartNamed[];
  readonly currency: string;
  readonly order: DayOrder;
}

export interface FieldFault {
  readonly field: Field;
  readonly why: string;
}

export type ReadEntry =
  | { readonly kind: 'read'; readonly says: Said }
  | { readonly kind: 'refused'; readonly faults: readonly FieldFault[] };

export const MOST_WHAT = 200;
export const MOST_NOTE = 2000;

export function readEntry(texts: Texts, { parts, currency, order }: Around): ReadEntry {
  const faults: FieldFault[] = [];
  const taken = <T>(field: Field, read: Read<T>): T | null => {
    if (read.kind === 'read') return read.value;
    faults.push({ field, why: read.why });
    return null;
  };
  const date = taken('date', readDate(texts.date, order));
  const part = taken('part', readPart(texts.part, parts));
  // Hours without another word are somebody's work.
  const kind = taken(
    'kind',
    readKind(texts.kind === '' && texts.hours !== '' ? 'labour' : texts.kind),
  );
  const what = taken('what', readWords(texts.what, MOST_WHAT, 'What it was is missing.'));
  const cost = readCost(texts, currency, taken);
  const note = taken('note', readWords(texts.note, MOST_NOTE, null));
  if (
    date === null ||
    part === null ||
    kind === null ||
    what === null ||
    cost === null ||
    note === null
  )
    return { kind: 'refused', faults };
  return {
    kind: 'read',
    says: { date, part, kind, what, cost, note, currency, receipt: null },
  };
}

/** Money, or hours at a rate; both only where they agree to the cent. */
function readCost(
  { amount, hours, rate }: Texts,
  currency: string,
  taken: <T>(field: Field, read: Read<T>) => T | null,
): Cost | null {
  const money = amount === '' ? '' : taken('amount', readMoney(amount, currency, 2));
  if (hours === '') {
    if (amount === '') {
      taken('amount', refused('What it came to is missing: an amount, or hours and a rate.'));
      return null;
    }
    if (rate !== '') {
      taken('hours', refused('A rate stands here without hours.'));
      return null;
    }
    return money === null ? null : { by: 'amount', amount: money };
  }
  const minutes = taken('hours', readHours(hours));
  if (rate === '') {
    taken('rate', refused('What an hour costs is missing.'));
    return null;
  }
  const perHour = taken('rate', readMoney(rate, currency, 4));
  if (minutes === null || perHour === null || money === null) return null;
  if (new Dec(perHour).lt(0)) {
    taken('rate', refused('An hour costs no less than nothing.'));
    return null;
  }
  const cost: Cost = { by: 'time', minutes, rate: perHour };
  if (money !== '' && centsOf(money) !== centsFor(cost)) {
    taken('amount', refused('Hours at that rate come to another amount. Leave one of them out.'));
    return null;
  }
  return cost;
}
