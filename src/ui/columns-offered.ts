// What a phrase about a table goes on with: its columns, the table itself, conditions and what may stand in a column;
// and, after `is` on a cell with choices, those.
import type { Candidate } from './completing.ts';

/** A table as far as offers need it. */
export interface OfferedTable {
  readonly name: string;
  readonly columns: readonly string[];
  /** What stands in a column of text, without repeats; null for a column of amounts. */
  texts(column: string): readonly string[] | null;
}

export interface ColumnsOffered {
  /** Where the word that is being written begins. */
  readonly from: number;
  readonly candidates: readonly Candidate[];
  /** Columns and values stand before all names, or names may go on there as well. */
  readonly alone: 'alone' | 'with names';
}

const MOST_VALUES = 12;

export function columnsAt(
  before: string,
  tables: readonly OfferedTable[],
  choicesOf: (name: string) => readonly string[] | null,
): ColumnsOffered | null {
  return (
    inRead(before, tables) ??
    inTotal(before, tables) ??
    inRows(before, tables) ??
    afterIs(before, choicesOf)
  );
}

/** `read column off table for column value, column value`. */
function inRead(before: string, tables: readonly OfferedTable[]): ColumnsOffered | null {
  const start = lastStart(before, /\bread\s+/gi);
  if (start === null) return null;
  const said = before.slice(start);
  if (/[()]/.test(said)) return null;
  const off = /^(.*?)\s+off\s+(.*)$/is.exec(said);
  if (!off) {
    const all = tables.flatMap(({ name, columns }) =>
      columns.map((column) =>
        candidate(`${column} off ${lowered(name)}`, 'column', [column.toLowerCase()]),
      ),
    );
    return { from: start, candidates: all, alone: 'alone' };
  }
  const [, column = '', rest = ''] = off;
  const cond = /^(.*?)\s+for\s+(.*)$/is.exec(rest);
  if (!cond) {
    const having = tables.filter(({ columns }) => columns.some((c) => same(c, column)));
    const names = (having.length > 0 ? having : tables).map(({ name }) =>
      candidate(lowered(name), 'table'),
    );
    return { from: before.length - rest.length, candidates: names, alone: 'alone' };
  }
  const [, tableSaid = '', conditions = ''] = cond;
  const table = tables.find(({ name }) =>
    tableSaid.trim().toLowerCase().endsWith(name.toLowerCase()),
  );
  if (!table) return null;
  const last = conditions.slice(conditions.lastIndexOf(',') + 1).trimStart();
  const from = before.length - last.length;
  const named = longest(table.columns.filter((c) => starts(last, c)));
  if (named === undefined || last.length === named.length) {
    const used = conditions.toLowerCase();
    const free = table.columns.filter(
      (c) => !same(c, column) && !used.includes(`${c.toLowerCase()} `),
    );
    return { from, candidates: free.map((c) => candidate(c, 'column')), alone: 'alone' };
  }
  const after = last
    .slice(named.length)
    .trimStart()
    .replace(/^is\s+/i, '');
  const texts = table.texts(named);
  const values = texts
    ? texts.slice(0, MOST_VALUES).map((text) => candidate(text, `in ${named}`))
    : ['at least ', 'at most '].map((words) => candidate(words, named));
  if (!texts && /^at (least|most)\s/i.test(after)) return null;
  return { from: before.length - after.length, candidates: values, alone: 'with names' };
}

/** `total of volume in slab bays`, `greatest volume in …`. */
function inTotal(before: string, tables: readonly OfferedTable[]): ColumnsOffered | null {
  const start = lastStart(
    before,
    /\b(?:total of|average of|average|greatest|(?<!\bat )least)\s+/gi,
  );
  if (start === null) return null;
  const said = before.slice(start);
  if (/[(),]/.test(said) || said.split(' ').length > 8) return null;
  const within = /^(.*?)\s+in\s+(.*)$/is.exec(said);
  if (within) {
    const [, column = '', typed = ''] = within;
    const having = tables.filter(({ columns }) => columns.some((c) => same(c, column)));
    const names = having.map(({ name }) => candidate(lowered(name), 'table'));
    return names.length === 0
      ? null
      : { from: before.length - typed.length, candidates: names, alone: 'alone' };
  }
  const amounts = tables.flatMap((table) =>
    table.columns
      .filter((column) => table.texts(column) === null)
      .map((column) =>
        candidate(`${column} in ${lowered(table.name)}`, 'column', [column.toLowerCase()]),
      ),
  );
  return amounts.length === 0 ? null : { from: start, candidates: amounts, alone: 'with names' };
}

function inRows(before: string, tables: readonly OfferedTable[]): ColumnsOffered | null {
  const start = lastStart(before, /\bhow many\s+/gi);
  if (start === null || /[(),]/.test(before.slice(start))) return null;
  return {
    from: start,
    candidates: tables.map(({ name }) => candidate(lowered(name), 'table')),
    alone: 'with names',
  };
}

/** `species is …`, `species is not …` on a cell that lists choices. */
function afterIs(
  before: string,
  choicesOf: (name: string) => readonly string[] | null,
): ColumnsOffered | null {
  const found =
    /(?:^|[(,]\s*|\b(?:where|if|and|or)\s+)([^(),]*?)\s+is(?:\s+not)?\s+([^(),]*)$/i.exec(before);
  const [, said = '', typed = ''] = found ?? [];
  const name = said.replace(/^.*\b(?:where|if|and|or)\s+/i, '');
  const choices = name === '' ? null : choicesOf(name.trim());
  if (!choices) return null;
  return {
    from: before.length - typed.length,
    candidates: choices.map((choice) => candidate(choice, 'one of the choices')),
    alone: 'alone',
  };
}

function lastStart(before: string, opening: RegExp): number | null {
  let at: number | null = null;
  for (const found of before.matchAll(opening)) at = found.index + found[0].length;
  return at;
}

function candidate(text: string, place: string, keys: readonly string[] = []): Candidate {
  return { text, keys: [text.toLowerCase(), ...keys], place, cell: null };
}

/** Do the words begin with this name, whole or not yet followed by anything? */
function starts(words: string, name: string): boolean {
  return `${words.toLowerCase()} `.startsWith(`${name.toLowerCase()} `);
}

function same(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase();
}

function longest(names: readonly string[]): string | undefined {
  return [...names].sort((a, b) => b.length - a.length)[0];
}

function lowered(name: string): string {
  return /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}
