// Does every cell come to what it came to? Asked when something is moved: a move says nothing about the job.
import type { CellState, Outcome } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { Holds } from '../quantity/form.ts';
import { cellsOf } from './lines.ts';
import type { NotebookText } from './notebook-text.ts';

/** What each cell and each row's cell comes to. */
export type Values = ReadonlyMap<string, Worth>;

interface Worth {
  /** The same for equal values that measure the same. */
  readonly exact: string;
  readonly outcome: Outcome;
  readonly holds: Holds | null;
}

interface Asked {
  readonly notebook: NotebookText;
  state(cell: CellId): CellState;
  /** A value in words. */
  say(outcome: Outcome, holds: Holds | null): string | null;
  rows(cell: CellId): readonly (readonly CellId[])[] | null;
}

export interface Otherwise {
  readonly cell: CellId;
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

export function valuesOf(asked: Asked): Values {
  const values = new Map<string, Worth>();
  for (const part of asked.notebook.parts) {
    for (const cell of cellsOf(part)) {
      values.set(String(cell.id), worth(asked, cell.id));
      asked.rows(cell.id)?.forEach((row, i) => {
        row.forEach((id, k) => values.set(`${cell.id} ${i} ${k}`, worth(asked, id)));
      });
    }
  }
  return values;
}

/** The cells that come to something else than before, in the order of the notebook. */
export function otherwiseThan(before: Values, asked: Asked): readonly Otherwise[] {
  const now = valuesOf(asked);
  const found = new Map<CellId, Otherwise>();
  for (const [key, worthNow] of now) {
    const was = before.get(key);
    if (!was || was.exact === worthNow.exact) continue;
    const cell = Number(key.split(' ')[0]);
    if (found.has(cell)) continue;
    const name = asked.notebook.cell(cell)?.name ?? '';
    found.set(cell, { cell, name, before: said(asked, was), after: said(asked, worthNow) });
  }
  return [...found.values()];
}

export function sayOtherwise(moved: string, others: readonly Otherwise[]): string {
  const told = others.slice(0, 3).map(({ name, before, after }) => `${name} ${before} → ${after}`);
  const more = others.length > 3 ? ` and ${others.length - 3} more` : '';
  const what = others.length === 1 ? 'a value' : `${others.length} values`;
  return `Moving ${moved} there would change ${what}: ${told.join('; ')}${more}.`;
}

function worth(asked: Asked, id: CellId): Worth {
  const { outcome, holds } = asked.state(id);
  return { exact: exactly(outcome, holds?.measure.key ?? ''), outcome, holds };
}

function exactly(outcome: Outcome, measure: string): string {
  switch (outcome.kind) {
    case 'value':
      return `${String(outcome.value)} ${measure}`;
    case 'unknown':
      return '?';
    case 'waiting':
      return 'waiting';
    case 'fault':
      return `fault ${outcome.report.code}`;
  }
}

function said(asked: Asked, { outcome, holds }: Worth): string {
  switch (outcome.kind) {
    case 'value':
      return asked.say(outcome, holds) ?? '';
    case 'unknown':
      return '?';
    case 'waiting':
      return 'waiting';
    case 'fault':
      return 'no value';
  }
}
