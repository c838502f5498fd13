// Random answers to what a template asks, each within its own sensible limits, and what has to hold whatever they are.
// For a long run: TEMPLATE_RUNS=500 npx vitest run --project unit tests/templates/slab.test.ts
import { describe, expect, test, vi } from 'vitest';
import type { Cell } from '../../src/notebook/document.ts';
import { type Dec, scaled, snapped } from '../../src/quantity/decimal.ts';
import { isHard } from '../../src/quantity/dimension.ts';
import { Chance } from '../properties/chance.ts';
import { type Opened, cellsOf, opened } from '../published/opened.ts';
import { remarkOf } from './remarks.ts';
import { templateText } from './texts.ts';

const RUNS = Number(process.env['TEMPLATE_RUNS'] ?? 24);

// Many notebooks are opened: slow only where many are at work on one machine.
vi.setConfig({ testTimeout: 60_000 });

/** How many rows a table may have, and for its columns the limits (`3 ft up to 12 ft`) or the texts to choose from. */
interface RandomTable {
  readonly rows: readonly [least: number, most: number];
  readonly columns: Readonly<Record<string, string | readonly string[]>>;
}

export interface Promises {
  readonly file: string;
  /** By the name of the table. A table that is not named here stays as it is written. */
  readonly tables?: Readonly<Record<string, RandomTable>>;
  /** Limits for a given that has none of its own, or narrower ones where two givens have to agree. */
  readonly limits?: Readonly<Record<string, string | readonly string[]>>;
  /** Yes/no formulas that hold for all answers: what is bought is at least what is needed. */
  readonly enough: readonly string[];
  /** Cells that may be less than nothing. */
  readonly mayBeNegative?: readonly string[];
  /** Cells that may say that no row of a table fits, and leave others waiting for them. */
  readonly mayFindNoRow?: readonly string[];
  /** Where this given, `Table: column`, or (the name of a table) its number of rows grows, these never fall. */
  readonly grows: readonly { readonly given: string; readonly never: readonly string[] }[];
}

/** An answer: the formula of a given, or the rows of a table. */
interface Answers {
  readonly givens: ReadonlyMap<string, string>;
  readonly rows: ReadonlyMap<string, readonly (readonly string[])[]>;
}

/** The tests that the promises of a template are kept. */
export function keepsItsPromises(promise: Promises): void {
  const text = templateText(promise.file);
  const template = opened(text);
  const asked = new Asked(template, promise);

  describe(`${promise.file} with random givens`, () => {
    test('has no problem, nothing below nought, and buys enough', () => {
      for (let seed = 1; seed <= RUNS; seed++) {
        const answers = asked.answers(new Chance(seed));
        const notebook = opened(answered(text, template, answers));
        expect({ seed, wrong: wrongIn(notebook, promise), answers }).toEqual({ seed, wrong: [], answers });
      }
    });

    test('comes to the same where its lengths are written in millimetres', () => {
      for (let seed = 1; seed <= Math.ceil(RUNS / 6); seed++) {
        const answers = asked.answers(new Chance(seed));
        const metric = inMillimetres(answers);
        const inches = figuresOf(opened(answered(text, template, answers)));
        const figures = figuresOf(opened(answered(text, template, metric)));
        expect({ seed, figures }).toEqual({ seed, figures: inches });
      }
    });

    test.each(promise.grows)('$given may grow and nothing falls that it makes', ({ given, never }) => {
      let grew = 0;
      for (let seed = 1; seed <= Math.ceil(RUNS / 4); seed++) {
        const chance = new Chance(seed);
        const answers = asked.answers(chance);
        const larger = asked.grown(answers, given, chance);
        if (!larger) continue;
        grew++;
        const before = opened(answered(text, template, answers));
        const after = opened(answered(text, template, larger));
        const fallen = never.filter((name) => less(sizeOf(after, name), sizeOf(before, name)));
        expect({ seed, fallen, answers, larger }).toEqual({ seed, fallen: [], answers, larger });
      }
      expect(grew).toBeGreaterThan(0);
    });
  });
}

/** What a template asks for, and ways to answer it. */
class Asked {
  readonly #template: Opened;
  readonly #promise: Promises;
  readonly #ask: ReadonlyMap<string, Range | readonly string[]>;

  constructor(template: Opened, promise: Promises) {
    this.#template = template;
    this.#promise = promise;
    const ask = new Map<string, Range | readonly string[]>();
    for (const { cell } of cellsOf(template.estimate)) {
      const limits = promise.limits?.[cell.name] ?? askedOf(template, cell);
      if (limits !== null) ask.set(cell.name, this.#range(limits));
    }
    for (const [name, { columns }] of Object.entries(promise.tables ?? {})) {
      for (const [column, limits] of Object.entries(columns)) {
        if (!template.cell(name).table?.columns.some((c) => c.name === column)) {
          throw new Error(`"${name}" has no column "${column}"`);
        }
        ask.set(`${name}: ${column}`, this.#range(limits));
      }
    }
    this.#ask = ask;
  }

  answers(chance: Chance): Answers {
    const givens = new Map<string, string>();
    for (const [name, range] of this.#ask) {
      if (!name.includes(': ')) givens.set(name, within(range, chance));
    }
    const rows = new Map<string, readonly (readonly string[])[]>();
    for (const [name, table] of Object.entries(this.#promise.tables ?? {})) {
      const many = chance.whole(...table.rows);
      rows.set(name, Array.from({ length: many }, (_, row) => this.#row(name, row, chance)));
    }
    return { givens, rows };
  }

  /** The same answers with one of them larger; null where it is as large as it may be. */
  grown(answers: Answers, what: string, chance: Chance): Answers | null {
    const table = this.#promise.tables?.[what];
    if (table) {
      const rows = answers.rows.get(what) ?? [];
      if (rows.length >= table.rows[1]) return null;
      const more = [...rows, this.#row(what, rows.length, chance)];
      return { ...answers, rows: new Map([...answers.rows, [what, more]]) };
    }
    const range = this.#ask.get(what);
    if (!range) throw new Error(`nothing that grows is called "${what}"`);
    const [name = '', column] = what.split(': ');
    if (column === undefined) {
      const now = answers.givens.get(name) ?? '';
      const larger = above(range, now, chance);
      return larger === null
        ? null
        : { ...answers, givens: new Map([...answers.givens, [name, larger]]) };
    }
    const place = this.#template.cell(name).table?.columns.findIndex((c) => c.name === column) ?? -1;
    const rows = answers.rows.get(name) ?? [];
    const row = chance.whole(0, rows.length - 1);
    const larger = above(range, rows[row]?.[place] ?? '', chance);
    if (larger === null) return null;
    const grown = rows.map((texts, at) => (at === row ? texts.with(place, larger) : texts));
    return { ...answers, rows: new Map([...answers.rows, [name, grown]]) };
  }

  #row(name: string, row: number, chance: Chance): readonly string[] {
    const table = this.#template.cell(name).table;
    const pattern = table?.rows[row % table.rows.length]?.texts ?? [];
    return pattern.map((text, place) => {
      const range = this.#ask.get(`${name}: ${table?.columns[place]?.name}`);
      if (range) return within(range, chance);
      // What tells the rows apart stands in the first column.
      return place === 0 && row >= (table?.rows.length ?? 0) ? `${text} ${row + 1}` : text;
    });
  }

  #range(limits: string | readonly string[]): Range | readonly string[] {
    if (typeof limits !== 'string') return limits;
    const [low, high] = limits.split(' up to ').map((end) => this.#amount(end));
    if (!low || !high || low.unit !== high.unit) throw new Error(`no limits: "${limits}"`);
    return { low: low.number, high: high.number, unit: low.unit, counted: low.counted };
  }

  #amount(text: string): { number: number; unit: string; counted: boolean } {
    const { estimate } = this.#template;
    const [first] = cellsOf(estimate);
    const { shown, reading } = estimate.draft(first?.cell.id ?? 0, text);
    const measure = reading.checked?.holds?.measure;
    if (!shown || !measure) throw new Error(`no amount: "${text}"`);
    const counted = measure.kind === 'amount' && !isHard(measure.dimension);
    const unit = shown.unit === 'ft' ? 'in' : shown.unit;
    return { number: Number(shown.exact) * (shown.unit === 'ft' ? 12 : 1), unit, counted };
  }
}

interface Range {
  readonly low: number;
  readonly high: number;
  /** Lengths are written in inches. */
  readonly unit: string;
  readonly counted: boolean;
}

/** The limits or choices that stand under a given, or null where it is not for asking. */
function askedOf(template: Opened, cell: Cell): string | readonly string[] | null {
  const choices = remarkOf(cell, 'choices');
  if (choices !== null) return choicesIn(template, choices);
  if (cell.formula === 'yes' || cell.formula === 'no') return ['yes', 'no'];
  return template.estimate.state(cell.id).kind === 'given' ? remarkOf(cell, 'sensible') : null;
}

/** `a, b`, or `column of table` for a table of the notebook. */
function choicesIn(template: Opened, choices: string): readonly string[] | null {
  const [, column = '', name = ''] = /^(\S.*) of (\S.*)$/.exec(choices) ?? [];
  const table = cellsOf(template.estimate).find(
    ({ cell }) => cell.table && cell.name.toLowerCase() === name.toLowerCase(),
  )?.cell.table;
  if (!table) return name === '' ? choices.split(/,\s*/) : null;
  const place = table.columns.findIndex((c) => c.name.toLowerCase() === column.toLowerCase());
  return [...new Set(table.rows.map((row) => row.texts[place] ?? ''))];
}

function within(range: Range | readonly string[], chance: Chance): string {
  if ('unit' in range) {
    // The ends of the limits are where things break.
    if (chance.in(0.1)) return amountText(range.low, range.unit);
    if (chance.in(0.1)) return amountText(range.high, range.unit);
    return between(range.low, range, chance);
  }
  return chance.of(range);
}

function between(low: number, range: Range, chance: Chance): string {
  const step = stepOf(range);
  const steps = Math.floor((range.high - low) / step);
  return amountText(low + chance.whole(0, steps) * step, range.unit);
}

/** More than `now`; null where there is no more. */
function above(range: Range | readonly string[], now: string, chance: Chance): string | null {
  if (!('unit' in range)) throw new Error('a choice can\'t grow');
  const low = Number(/-?[\d.]+/.exec(now)?.[0] ?? Number.NaN) + stepOf(range);
  return low > range.high ? null : between(low, range, chance);
}

/** Sixteenths on a tape, whole things, cents; else a fortieth of the way. */
function stepOf({ low, high, unit, counted }: Range): number {
  if (unit === 'in') return 1 / 16;
  if (counted) return 1;
  return unit.startsWith('$') ? 0.01 : (high - low) / 40;
}

function amountText(number: number, unit: string): string {
  const figure = String(Number(number.toFixed(6)));
  if (unit.startsWith('$')) return `$${figure}${unit.slice(1)}`;
  return unit === '%' ? `${figure}%` : `${figure} ${unit}`.trimEnd();
}

function inMillimetres({ givens, rows }: Answers): Answers {
  const metric = (text: string): string => {
    const [, inches] = /^([\d.]+) in$/.exec(text) ?? [];
    // In ten-thousandths, so that the product is a whole number and stays exact.
    return inches === undefined ? text : `${Math.round(Number(inches) * 254_000) / 10_000} mm`;
  };
  return {
    givens: new Map([...givens].map(([name, text]) => [name, metric(text)])),
    rows: new Map([...rows].map(([name, table]) => [name, table.map((row) => row.map(metric))])),
  };
}

/** The text of the template with the answers in it. */
function answered(text: string, template: Opened, { givens, rows }: Answers): string {
  const splices = [
    ...[...givens].map(([name, formula]) => ({ ...template.cell(name).formulaSpot, insert: formula })),
    ...[...rows].map(([name, written]) => {
      const { spot, table } = template.cell(name);
      const [first, last] = [table?.rows[0], table?.rows.at(-1)];
      if (!first || !last) throw new Error(`"${name}" has no row to go by`);
      const lines = written.map((row) => `| ${row.join(' | ')} |`);
      return {
        from: spot.from + first.spot.from,
        to: spot.from + last.spot.to,
        insert: lines.join('\n  '),
      };
    }),
  ].toSorted((a, b) => b.from - a.from);
  return splices.reduce((now, { from, to, insert }) => now.slice(0, from) + insert + now.slice(to), text);
}

/** Everything that may not be. */
function wrongIn(notebook: Opened, promise: Promises): readonly string[] {
  const { estimate } = notebook;
  const noRow = new Set<number>();
  const wrong: string[] = estimate.notebook.findings.map(({ message }) => message);
  const look = (name: string, id: number): void => {
    const { outcome, kind } = estimate.state(id);
    if (outcome.kind === 'fault') {
      if (outcome.report.code === 'no-row' && promise.mayFindNoRow?.includes(name)) noRow.add(id);
      else wrong.push(`${name}: ${outcome.report.headline}`);
    } else if (outcome.kind !== 'value') {
      if (!outcome.for.some((one) => noRow.has(one))) wrong.push(`${name} waits`);
      else noRow.add(id);
    } else if (typeof outcome.value === 'object' && outcome.value.lessThan(0)) {
      if (!promise.mayBeNegative?.includes(name)) {
        wrong.push(`${name} is ${estimate.shown(id)?.text} (${kind})`);
      }
    }
  };
  for (const { cell } of cellsOf(estimate)) {
    for (const row of estimate.rows(cell.id) ?? []) {
      row.forEach((id, place) => look(`${cell.name}: ${cell.table?.columns[place]?.name}`, id));
    }
    if (!cell.table) look(cell.name, cell.id);
  }
  const last = cellsOf(estimate).at(-1)?.cell.id ?? 0;
  for (const formula of promise.enough) {
    const { outcome, reading } = estimate.draft(last, formula);
    if (outcome.kind === 'value' ? outcome.value !== true : noRow.size === 0) {
      wrong.push(`${formula}: ${reading.problems[0]?.headline ?? 'no'}`);
    }
  }
  return wrong;
}

/** Every value in the base of what it measures, under the name of its cell. */
function figuresOf(notebook: Opened): Readonly<Record<string, string>> {
  const figures = cellsOf(notebook.estimate).flatMap(({ cell }) => {
    const { outcome } = notebook.estimate.state(cell.id);
    if (outcome.kind !== 'value') return [[cell.name, outcome.kind]];
    if (typeof outcome.value !== 'object') return [[cell.name, String(outcome.value)]];
    return [[cell.name, sizeOf(notebook, cell.name)?.toSignificantDigits(30).toString() ?? '']];
  });
  return Object.fromEntries(figures);
}

/** Null where it has no value. */
function sizeOf(notebook: Opened, name: string): Dec | null {
  const { outcome, holds } = notebook.state(name);
  if (outcome.kind !== 'value' || typeof outcome.value !== 'object' || !holds) return null;
  const { measure } = holds;
  return snapped(measure.kind === 'amount' ? scaled(outcome.value, measure.scale) : outcome.value);
}

/** What has no value has not fallen. */
function less(a: Dec | null, b: Dec | null): boolean {
  return a !== null && b !== null && a.lessThan(b);
}
