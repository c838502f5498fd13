// What changed between two versions, part by part: cells added, taken out, renamed and changed, formulas word by word,
// rows of tables, and folded away what only follows.
import { html, nothing, type TemplateResult } from 'lit';
import type { CellChange, CellThere } from '../versions/cell-change.ts';
import type { Comparison, Follows, PartChange } from '../versions/compare.ts';
import type { ColumnChange, RowChange } from '../versions/rows-apart.ts';
import { sayWay } from '../versions/say-change.ts';
import type { Run } from '../versions/words-apart.ts';
import { isNothing, money, signedMoney } from './money-words.ts';

/** Of more only the first are drawn, and how many are left is said. */
const MOST_FOLLOWING = 200;
const MOST_ROWS = 100;

export function comparedParts({ parts, after }: Comparison): TemplateResult {
  if (parts.length === 0) return html`<p>Both say the same, cell by cell.</p>`;
  const { currency } = after.estimate.notebook.settings;
  return html`${parts.map((part) => partOf(part, currency))}`;
}

function partOf(part: PartChange, currency: string): TemplateResult {
  const { cells, follows, direct } = part;
  return html`<section class="part">
    <h4>
      ${part.after ?? part.before ?? ''}${
        (part.after ?? part.before) === '' ? 'Above the first part' : nothing
      }
      <span class="tell">${partWays(part)}</span>
      ${
        isNothing(direct.difference)
          ? nothing
          : html`<span class="tell"
              >direct cost ${money(direct.before, currency)} → ${money(direct.after, currency)},
              ${signedMoney(direct.difference, currency)}</span
            >`
      }
    </h4>
    ${
      cells.length === 0
        ? nothing
        : html`<ul class="changes">
            ${cells.map(cellOf)}
          </ul>`
    }
    ${follows.length === 0 ? nothing : following(follows)}
  </section>`;
}

function partWays({ ways, before }: PartChange): string {
  return ways
    .map((way) => {
      switch (way) {
        case 'added':
          return 'a part that came';
        case 'removed':
          return 'a part that went';
        case 'renamed':
          return `was called ${before ?? ''}`;
        case 'moved':
          return 'moved';
      }
    })
    .join(', ');
}

function cellOf(change: CellChange): TemplateResult {
  const { before, after, ways, words, table } = change;
  const there = after ?? before;
  const sign = before === null ? '+' : after === null ? '−' : '·';
  return html`<li class="change">
    <span class="sign" aria-hidden="true">${sign}</span>
    <div>
      <b>${there?.name ?? ''}</b>
      <span class="tell">${ways.map((way) => sayWay(way, change)).join(', ')}</span>
      <div class="said">${saidOf(before, after, words)}</div>
      ${table ? tableOf(table.columns, table.rows) : nothing} ${sources(before, after)}
    </div>
    <span class="values">${values(before, after)}</span>
  </li>`;
}

/** Word by word where the formula changed; a cell that came or went in full. */
function saidOf(
  before: CellThere | null,
  after: CellThere | null,
  words: readonly Run[],
): TemplateResult | typeof nothing {
  if (before === null) return html`<ins>${after?.formula ?? ''}</ins>`;
  if (after === null) return html`<del>${before.formula}</del>`;
  const [was, is] = [before.byHand, after.byHand];
  const byHand =
    was === is
      ? nothing
      : html` by hand: ${was === null ? nothing : html`<del>${was}</del>`}
        ${is === null ? nothing : html`<ins>${is}</ins>`}`;
  return html`${runs(words)}${byHand}`;
}

function runs(words: readonly Run[]): readonly (TemplateResult | string)[] {
  return words.map(({ kind, text }) => {
    switch (kind) {
      case 'same':
        return text;
      case 'gone':
        return html`<del>${text}</del>`;
      case 'new':
        return html`<ins>${text}</ins>`;
    }
  });
}

function sources(
  before: CellThere | null,
  after: CellThere | null,
): TemplateResult | typeof nothing {
  const [was, is] = [before?.from ?? null, after?.from ?? null];
  if (before === null || after === null || was === is) return nothing;
  return html`<div class="tell">
    from: ${was === null ? nothing : html`<del>${was}</del>`}
    ${is === null ? nothing : html`<ins>${is}</ins>`}
  </div>`;
}

function values(before: CellThere | null, after: CellThere | null): TemplateResult {
  const [was, is] = [before?.shown ?? null, after?.shown ?? null];
  if (was === is) return html`${is ?? ''}`;
  return html`${was === null ? nothing : html`<span class="was">${was}</span> → `}<b
      >${is ?? (after ? 'no value' : 'gone')}</b
    >`;
}

function tableOf(columns: readonly ColumnChange[], rows: readonly RowChange[]): TemplateResult {
  return html`<ul class="rows">
    ${columns.map((column) => html`<li>${columnOf(column)}</li>`)}
    ${rows.slice(0, MOST_ROWS).map((row) => html`<li>${rowOf(row)}</li>`)}
    ${rows.length > MOST_ROWS ? html`<li>and ${rows.length - MOST_ROWS} rows more</li>` : nothing}
  </ul>`;
}

function columnOf(column: ColumnChange): TemplateResult {
  switch (column.kind) {
    case 'added':
      return html`column <ins>${column.name}</ins> came`;
    case 'removed':
      return html`column <del>${column.name}</del> went`;
    case 'renamed':
      return html`column <del>${column.was}</del> <ins>${column.name}</ins>`;
    case 'formula':
      return html`column ${column.name}:
      ${column.before === null ? nothing : html`<del>${column.before}</del>`}
      ${column.after === null ? nothing : html`<ins>${column.after}</ins>`}`;
  }
}

function rowOf({ before, after, cells }: RowChange): TemplateResult {
  const which =
    before === null
      ? `row ${(after ?? 0) + 1} came`
      : after === null
        ? `row ${before + 1} went`
        : `row ${after + 1}`;
  return html`${which}:
  ${cells.map(
    (cell, i) =>
      html`${i > 0 ? ', ' : ''}${cell.column}
      ${cell.words.length > 0 ? runs(cell.words) : before === null ? html`<ins>${cell.after}</ins>` : html`<del>${cell.before}</del>`}`,
  )}`;
}

function following(follows: readonly Follows[]): TemplateResult {
  return html`<details>
    <summary>
      ${follows.length === 1 ? '1 cell only follows' : `${follows.length} cells only follow`}
    </summary>
    <ul class="changes">
      ${follows.slice(0, MOST_FOLLOWING).map(
        ({ before, after }) =>
          html`<li class="change">
            <span class="sign"></span>
            <span>${after.name}</span>
            <span class="values">${values(before, after)}</span>
          </li>`,
      )}
      ${
        follows.length > MOST_FOLLOWING
          ? html`<li class="tell">and ${follows.length - MOST_FOLLOWING} more</li>`
          : nothing
      }
    </ul>
  </details>`;
}
