// What was gone through so that nothing is forgotten, each with its answer: included, by others, not needed. They stand as
// lines with these choices, or as rows of a table that has a column of such answers.
import type { CellState } from '../engine/outcome.ts';
import type { Cell, Table } from '../notebook/document.ts';
import { cellsOf } from '../notebook/lines.ts';
import type { Handed } from './client-copy.ts';
import { toldClient } from './told-client.ts';

const ANSWERS = ['included', 'by others', 'not needed'] as const;
type Answer = (typeof ANSWERS)[number];

export interface AskedItem {
  /** Key of the part that it stands in. */
  readonly part: string;
  readonly name: string;
  /** Null: nobody has answered yet. */
  readonly answer: Answer | null;
  /** What the owner wrote to it for the client. */
  readonly told: readonly string[];
}

export function askedItems(estimate: Handed): readonly AskedItem[] {
  return estimate.notebook.parts.flatMap(cellsOf).flatMap((cell) => {
    if (cell.table) return inRows(estimate, cell, cell.table);
    const { input, outcome } = estimate.state(cell.id);
    if (!isAsked(input.choices ?? '')) return [];
    const { part, name } = cell;
    return [{ part, name, answer: answerIn(outcome), told: toldClient(cell) }];
  });
}

/** Its choices are these answers, in any order. */
function isAsked(choices: string): boolean {
  const given = choices.split(',').map((one) => one.trim().toLowerCase());
  return given.length > 1 && given.every((one) => answerOf(one) !== null);
}

function inRows(estimate: Handed, cell: Cell, { columns, rows }: Table): readonly AskedItem[] {
  const ids = estimate.rows(cell.id) ?? [];
  const said = (row: number, column: number): Answer | null => {
    const id = ids[row]?.[column];
    return id === undefined ? null : answerIn(estimate.state(id).outcome);
  };
  const column = columns.findIndex(
    (_, at) =>
      at > 0 &&
      rows.some((_row, row) => said(row, at) !== null) &&
      rows.every(({ texts }, row) => said(row, at) !== null || isOpen(texts[at] ?? '')),
  );
  if (column < 0) return [];
  return rows.flatMap(({ texts }, row) => {
    const name = texts[0]?.trim() ?? '';
    return name === '' ? [] : [{ part: cell.part, name, answer: said(row, column), told: [] }];
  });
}

function isOpen(text: string): boolean {
  return ['', '?'].includes(text.trim());
}

function answerIn(outcome: CellState['outcome']): Answer | null {
  const said = outcome.kind === 'value' ? outcome.value : null;
  return typeof said === 'string' ? answerOf(said) : null;
}

function answerOf(text: string): Answer | null {
  return ANSWERS.find((one) => one === text.trim().toLowerCase()) ?? null;
}
