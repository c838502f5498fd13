// Rows copied out of a spreadsheet, or a CSV file, as entries. A row is taken as a whole or not at all; each of its
// fields that can't be read is told with its reason, and the rows that were left can be mended and read again.
import { nameKey } from '../notebook/names.ts';
import { MOST_PASTED, type PastedText, pastedText } from '../notebook/pasting.ts';
import type { Said } from './entry.ts';
import { dayOrder } from './fields.ts';
import { type Around, FIELDS, type Field, type Texts, readEntry } from './read-entry.ts';

export interface NotTaken {
  /** Counted from 1, as a sheet counts its rows. */
  readonly row: number;
  /** As it is headed here, or by its letter. */
  readonly column: string;
  readonly text: string;
  readonly why: string;
}

export interface ReadRows {
  readonly taken: readonly Said[];
  readonly notTaken: readonly NotTaken[];
  /** The rows that were left with their heading, to be mended; empty: none. */
  readonly left: string;
  /** Why none of it was looked at, or null. */
  readonly refused: string | null;
}

/** The longest text that is read in one go, in letters. */
const LONGEST = 4_000_000;

/** What a column may be headed by. */
const HEADINGS: ReadonlyMap<string, Field> = new Map(
  Object.entries({
    date: ['date', 'day', 'when'],
    part: ['part', 'part of the job', 'section', 'area'],
    kind: ['kind', 'kind of cost', 'cost', 'cost kind'],
    what: ['what', 'description', 'item', 'details', 'supplier'],
    amount: ['amount', 'total', 'sum', 'money', 'paid'],
    hours: ['hours', 'hrs', 'time'],
    rate: ['rate', 'rate per hour', 'hourly rate', 'per hour', 'an hour'],
    note: ['note', 'notes', 'remark', 'remarks'],
  } satisfies Record<Field, readonly string[]>).flatMap(([field, words]) =>
    words.map((word) => [word, field as Field] as const),
  ),
);

export function readRows(text: string, around: Omit<Around, 'order'>): ReadRows {
  if (text.length > LONGEST)
    return none('This is too long to be read in one go. Take it in pieces.');
  if (text.includes('\0'))
    return none('This is no text. Save the sheet as CSV and take that file.');
  const { rows } = rowsIn(text.replace(/^\uFEFF/, ''));
  if (rows.length === 0) return none('There is nothing in this to put in.');
  if (rows.length > MOST_PASTED)
    return none(`This has ${count(rows.length)} rows; ${count(MOST_PASTED)} are taken at once.`);
  const head = headOf(rows[0] ?? []);
  const places: readonly (Field | null)[] = head ?? FIELDS;
  const notTaken: NotTaken[] = [];
  head?.forEach((field, j) => {
    const heading = rows[0]?.[j] ?? '';
    if (field === null && heading !== '')
      notTaken.push({
        row: 1,
        column: columnName(j),
        text: heading,
        why: 'There is no column for it; it is left out.',
      });
  });
  const first = head ? 1 : 0;
  const body = rows.slice(first);
  const textsOf = (row: readonly string[]): Texts => {
    const texts = Object.fromEntries(FIELDS.map((field) => [field, ''])) as Record<Field, string>;
    places.forEach((field, j) => {
      if (field) texts[field] = row[j] ?? '';
    });
    return texts;
  };
  const all = body.map(textsOf);
  const order = dayOrder(all.map(({ date }) => date));
  const taken: Said[] = [];
  const left: (readonly string[])[] = [];
  body.forEach((row, i) => {
    const number = i + first + 1;
    const texts = all[i];
    const over = row.slice(places.length).filter((cell) => cell !== '');
    const read = readEntry(texts, { ...around, order });
    const faults = read.kind === 'refused' ? read.faults : [];
    for (const { field, why } of faults)
      notTaken.push({ row: number, column: field, text: texts[field], why });
    for (const cell of over)
      notTaken.push({
        row: number,
        column: columnName(places.length),
        text: cell,
        why: 'There is no column for it.',
      });
    if (read.kind === 'read' && over.length === 0) taken.push(read.says);
    else left.push(row);
  });
  const again = left.length === 0 ? [] : [head ? (rows[0] ?? []) : FIELDS, ...left];
  return {
    taken,
    notTaken,
    left: again.map((row) => row.map(quoted).join('\t')).join('\n'),
    refused: null,
  };
}

/** Semicolons part cells where a first line has more of them than of commas and no tab. */
function rowsIn(text: string): PastedText {
  const [line = ''] = text.split(/\r|\n/, 1);
  const many = (mark: string): number => line.split(mark).length - 1;
  const semicolons = !text.includes('\t') && many(';') > many(',');
  return semicolons ? pastedText(text, 'semicolon') : pastedText(text);
}

/** The fields of a first row of headings, null for one that is none of them; null: it is a row like the others. */
function headOf(row: readonly string[]): readonly (Field | null)[] | null {
  const seen = new Set<Field>();
  const fields = row.map((text) => {
    const field = HEADINGS.get(nameKey(text)) ?? null;
    // The first of two with one heading is meant.
    if (field === null || seen.has(field)) return null;
    seen.add(field);
    return field;
  });
  return seen.has('date') || seen.size > 2 ? fields : null;
}

/** So that it is read again as the cell that it was. */
function quoted(cell: string): string {
  return cell.includes('"') ? `"${cell.replaceAll('"', '""')}"` : cell;
}

function columnName(at: number): string {
  return at < 26 ? `column ${String.fromCharCode(65 + at)}` : `column ${at + 1}`;
}

function count(many: number): string {
  return many.toLocaleString('en-US');
}

function none(refused: string): ReadRows {
  return { taken: [], notTaken: [], left: '', refused };
}
