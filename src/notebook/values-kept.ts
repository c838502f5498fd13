// Does every cell come to what it came to? Asked when something is moved: a move says nothing about the job.
import type { CellState, Outcome } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import { cellsOf } from './lines.ts';
import type { NotebookText } from './notebook-text.ts';

/** What each cell and each row's cell comes to, in words to compare and in words to show. */
export type Values = ReadonlyMap<string, { readonly exact: string; readonly shown: string }>;

interface Asked {
  readonly notebook: NotebookText;
  state(cell: CellId): CellState;
  shown(cell: CellId): string | null;
  rows(cell: CellId): readonly (readonly CellId[])[] | null;
}

export interface Otherwise {
  readonly cell: CellId;
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

export function valuesOf(asked: Asked): Values {
  const values = new Map<string, { exact: string; shown: string }>();
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
  for (const [key, { exact, shown }] of now) {
    const was = before.get(key);
    if (!was || was.exact === exact) continue;
    const cell = Number(key.split(' ')[0]);
    if (found.has(cell)) continue;
    const name = asked.notebook.cell(cell)?.name ?? '';
    found.set(cell, { cell, name, before: was.shown, after: shown });
  }
  return [...found.values()];
}

export function sayOtherwise(moved: string, others: readonly Otherwise[]): string {
  const told = others.slice(0, 3).map(({ name, before, after }) => `${name} ${before} → ${after}`);
  const more = others.length > 3 ? ` and ${others.length - 3} more` : '';
  const what = others.length === 1 ? 'a value' : `${others.length} values`;
  return `Moving ${moved} there would change ${what}: ${told.join('; ')}${more}.`;
}

function worth(asked: Asked, id: CellId) {
  const { outcome, holds } = asked.state(id);
  return { exact: exactly(outcome, holds?.measure.key ?? ''), shown: shownOr(asked, id, outcome) };
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

function shownOr(asked: Asked, id: CellId, { kind }: Outcome): string {
  switch (kind) {
    case 'value':
      return asked.shown(id) ?? '';
    case 'unknown':
      return '?';
    case 'waiting':
      return 'waiting';
    case 'fault':
      return 'no value';
  }
}
