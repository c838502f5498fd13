// What a formula that is being written means so far, for the list of what could go on from it: asked of the language
// and of the notebook, and remembered for as long as the text stays as it is.
import type { CellId } from '../language/tree.ts';
import type { Cell } from '../notebook/document.ts';
import type { Draft } from '../notebook/estimate.ts';
import type { Measure } from '../quantity/measure.ts';
import type { Nouns } from '../quantity/nouns.ts';
import { REFERENCE_TABLES } from '../reference/tables.ts';
import { type OfferedTable, columnsAt } from './columns-offered.ts';
import type { Candidate, Sense } from './completing.ts';
import { fitOf } from './fitting.ts';
import { clausesAfter, phrasesFirst, spacedOf } from './phrases-offered.ts';
import { allCells } from './reading-order.ts';
import type { Door } from './session.ts';
import type { Place } from './table-words.ts';
import { type Line, type WantedHere, leftMeasure, wantedAt } from './wanted-here.ts';

/** Cells that fit worse than any: they wait for this one, so naming them would go around in a circle. */
const CIRCLE = 9;

/** What is asked about the place in which a formula stands. */
interface Standing {
  readonly part: string;
  readonly line: Line;
  readonly draft: (text: string) => Draft;
  /** Cells that wait for this one. */
  readonly circle: ReadonlySet<CellId>;
}

export function senseOf(door: Door, cell: Cell, nouns: Nouns): (text: string) => Sense {
  return senseAt(door, nouns, {
    part: cell.part,
    line: cell.money?.line === 'cost' ? 'cost' : 'plain',
    draft: (text) => door.draft(cell.id, text),
    circle: followersOf(door, cell.id),
  });
}

/** In a row of a table, or in what a column works: as it would be worked in that row. */
export function senseInRow(
  door: Door,
  cell: Cell,
  { row, column }: Place,
  nouns: Nouns,
): (text: string) => Sense {
  const id = door.rows(cell.id)?.[row]?.[column];
  return senseAt(door, nouns, {
    part: cell.part,
    line: 'plain',
    draft: (text) => door.draftInRow(cell.id, row, column, text),
    circle: id === undefined ? new Set() : followersOf(door, id),
  });
}

function senseAt(
  door: Door,
  nouns: Nouns,
  { part, line, draft, circle }: Standing,
): (text: string) => Sense {
  const tables = lazily(() => tablesOf(door));
  const choices = (name: string): readonly string[] | null => choicesOf(door, part, name);
  const drafts = new Map<string, Measure | null>();
  const measured = (text: string): Measure | null => {
    const known = drafts.get(text);
    if (known !== undefined) return known;
    const measure = draft(text).reading.checked?.holds.measure ?? null;
    if (drafts.size > 200) drafts.clear();
    drafts.set(text, measure);
    return measure;
  };
  const worked = { shown: (text: string) => draft(text).shown?.text ?? null };
  const first = lazily(() => phrasesFirst(worked));
  return (text) => {
    const wantedHere = new Map<number, WantedHere>();
    const wanted = (from: number): WantedHere => {
      const known = wantedHere.get(from) ?? wantedAt(text, from, measured, line);
      wantedHere.set(from, known);
      return known;
    };
    const leftAt = (from: number): Measure | null => {
      const before = text.slice(0, from).trimEnd();
      return before === '' || wanted(from).kind !== 'anything'
        ? null
        : leftMeasure(before, measured);
    };
    return {
      place(from) {
        if (leftAt(from)) return 'clause';
        return WANTED.has(wanted(from).kind) ? 'wanted value' : 'value';
      },
      fit(id, from) {
        if (circle.has(id)) return CIRCLE;
        return fitOf(door.state(id).holds?.measure ?? null, wanted(from), line);
      },
      phrases(from, typed): readonly Candidate[] {
        const left = leftAt(from);
        if (left) return clausesAfter(text.slice(0, from), left, worked);
        const { kind } = wanted(from);
        if (kind === 'length') return first().filter(({ label }) => GIVES_LENGTH.has(label ?? ''));
        if (NO_PHRASE.has(kind)) return [];
        const counts = kind === 'like' || kind === 'added' ? [] : spacedOf(nouns, typed, worked);
        return [...counts, ...first()];
      },
      columns: (before) => columnsAt(before, tables(), choices),
    };
  };
}

/** After these a name is what one would write next. */
const WANTED: ReadonlySet<WantedHere['kind']> = new Set([
  'length',
  'rate',
  'like',
  'pack',
  'share',
  'added',
]);

/** Phrases that give a length, for where one is needed. */
const GIVES_LENGTH: ReadonlySet<string> = new Set([
  'diagonal of … and …',
  'the greater of … and …',
  'the lesser of … and …',
]);

/** A slot for one of these is filled with an amount or a name. */
const NO_PHRASE: ReadonlySet<WantedHere['kind']> = new Set(['rate', 'pack', 'share', 'count']);

/** A cell that all rows of a long table wait for is followed so far: names are only put in order by it. */
const MOST_FOLLOWED = 2000;

/** All cells that need this one, and those that need them. */
function followersOf(door: Door, id: CellId): ReadonlySet<CellId> {
  const found = new Set<CellId>();
  const left = [id];
  for (let one = left.pop(); one !== undefined && found.size < MOST_FOLLOWED; one = left.pop()) {
    for (const next of door.state(one).goesInto) {
      if (found.has(next)) continue;
      found.add(next);
      left.push(next);
    }
  }
  return found;
}

function tablesOf(door: Door): readonly OfferedTable[] {
  const own = allCells(door.notebook).flatMap(({ name, table }) =>
    table ? [{ name, table }] : [],
  );
  const named = own.map(({ name, table }) =>
    offered(
      name,
      table.columns.map((c) => c.name),
      table.rows.map((row) => row.texts),
    ),
  );
  const reference = REFERENCE_TABLES.map(({ name, table }) =>
    offered(
      name,
      table.columns.map((c) => c.name),
      table.rows,
    ),
  );
  return [...named, ...reference];
}

function offered(
  name: string,
  columns: readonly string[],
  rows: readonly (readonly string[])[],
): OfferedTable {
  return {
    name,
    columns: columns.filter((column) => column !== ''),
    texts(column) {
      const k = columns.indexOf(column);
      const texts = [...new Set(rows.map((row) => row[k] ?? ''))].filter((text) => text !== '');
      const words = texts.some((text) => /\p{L}/u.test(text) && !/^[$€£]?[\d.]/.test(text));
      return words ? texts : null;
    },
  };
}

/** What may be chosen for the cell of this name. */
function choicesOf(door: Door, part: string, name: string): readonly string[] | null {
  const wanted = name.toLowerCase();
  const cells = allCells(door.notebook).filter((cell) => cell.name.toLowerCase() === wanted);
  const cell = cells.find((one) => one.part === part) ?? cells[0];
  const remark = cell?.remarks.find(({ kind }) => kind === 'choices')?.text;
  if (remark === undefined) return null;
  const column = /^(.+) of (.+)$/.exec(remark);
  if (column && !remark.includes(',')) {
    const [, of = '', table = ''] = column;
    const found = tablesOf(door).find((t) => table.toLowerCase().endsWith(t.name.toLowerCase()));
    const texts = found?.texts(
      found.columns.find((c) => c.toLowerCase() === of.toLowerCase()) ?? '',
    );
    if (texts) return texts;
  }
  return remark.split(',').map((choice) => choice.trim());
}

function lazily<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => (made ??= { value: make() }).value;
}
