// Where the owner looks in a table: rows at fault, columns that measure two things, blanks, and what was set in a row.
import type { Glance } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import { describe } from '../quantity/describe.ts';
import { withoutNounsAbove } from '../quantity/dimension.ts';
import type { Measure } from '../quantity/measure.ts';
import type { Cell, Finding, Table } from './document.ts';
import { remarkText } from './remarks.ts';

/** What these findings ask of an estimate. */
interface Asked {
  glance(cell: CellId): Glance;
  rows(cell: CellId): readonly (readonly CellId[])[] | null;
  isName(text: string, part: string): boolean;
}

/** As many of one sort as are told one by one. */
const MOST_TOLD = 20;

export function tableFindings(asked: Asked, cell: Cell, table: Table): readonly Finding[] {
  const found: Finding[] = [];
  const point = (code: string, message: string, place?: Finding['place']): void => {
    const at = place ? { place } : {};
    found.push({ code, message, part: cell.part, cell: cell.id, spot: null, ...at });
  };
  const rows = asked.rows(cell.id) ?? [];
  const told = new Told(cell.name, point);
  let givens = 0;
  let blanks = 0;
  const leaders = new Map<number, { readonly row: number; readonly measure: Measure }>();
  const clashes = new Set<number>();
  rows.forEach((ids, row) => {
    ids.forEach((id, k) => {
      const state = asked.glance(id);
      const place = { row, column: k };
      const { outcome, holds } = state;
      const own = table.rows[row]?.texts[k] ?? '';
      const column = table.columns[k];
      const name = (): string => state.input.name;
      if (outcome.kind === 'fault') {
        const { code, headline, explanation } = outcome.report;
        told.say(code, place, () => `"${name()}": ${headline} ${explanation}`);
        return;
      }
      if (own === '' && column?.formula === null) {
        blanks++;
        return;
      }
      if (outcome.kind === 'unknown' && outcome.for.includes(id)) {
        told.say('not-yet-known', place, () => `"${name()}" is not yet known.`);
      }
      if (own !== '' && column && column.formula !== null) {
        told.say(
          'set-in-row',
          place,
          () => `"${name()}" is ${own} in its row; its column works ${column.formula}.`,
        );
      } else if (state.kind === 'given' && holds?.measure.kind === 'amount') givens++;
      if (holds?.measure.kind === 'text' && asked.isName(own, cell.part)) {
        told.say(
          'text-or-name',
          place,
          () =>
            `"${name()}" is read as the text "${own}". For the cell of that name write (${own}).`,
        );
      }
      if (!holds || holds.measure.kind === 'open' || clashes.has(k)) return;
      const leader = leaders.get(k);
      if (!leader) leaders.set(k, { row, measure: holds.measure });
      else if (!isAlike(leader.measure, holds.measure)) {
        clashes.add(k);
        point(
          'column-clash',
          `In "${cell.name}" the rows of "${column?.name}" don't all measure the same: row ${leader.row + 1} holds ${describe(leader.measure)}, row ${row + 1} ${describe(holds.measure)}.`,
        );
      }
    });
  });
  told.rest();
  if (blanks > 0 && rows.length > 0) {
    const many = blanks === 1 ? '1 cell' : `${blanks} cells`;
    point(
      'blank-in-table',
      `"${cell.name}" has ${many} with nothing in ${blanks === 1 ? 'it' : 'them'}.`,
    );
  }
  const from = remarkText(cell.remarks, 'from') !== null;
  // A column may say it row by row.
  const fromColumn = table.columns.some((c) => /^source$/i.test(c.name));
  if (givens > 0 && !from && !fromColumn) {
    point('given-without-source', `"${cell.name}" does not say where its figures come from.`);
  }
  return found;
}

/** Tells the first of each sort one by one, and how many more there are. */
class Told {
  readonly #table: string;
  readonly #point: (code: string, message: string, place?: Finding['place']) => void;
  readonly #many = new Map<string, number>();

  constructor(
    table: string,
    point: (code: string, message: string, place?: Finding['place']) => void,
  ) {
    this.#table = table;
    this.#point = point;
  }

  say(code: string, place: Finding['place'], message: () => string): void {
    const many = (this.#many.get(code) ?? 0) + 1;
    this.#many.set(code, many);
    if (many <= MOST_TOLD) this.#point(code, message(), place);
  }

  rest(): void {
    for (const [code, many] of this.#many) {
      if (many > MOST_TOLD) {
        this.#point(
          code,
          `"${this.#table}" has ${many - MOST_TOLD} more cells of which the same is to be said.`,
        );
      }
    }
  }
}

function isAlike(a: Measure, b: Measure): boolean {
  if (a.kind !== 'amount' || b.kind !== 'amount') return a.kind === b.kind;
  return withoutNounsAbove(a.dimension) === withoutNounsAbove(b.dimension);
}
