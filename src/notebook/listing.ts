// An estimate as plain text that reads well aloud: part by part the value, the name and how it came about,
// then what each part costs, then where the owner should look.
import type { Finding } from './document.ts';
import type { Estimate } from './estimate.ts';
import { type CellFigure, type Figures, type RowFigure, figuresOf } from './figures.ts';
import { sayLeftOut } from './left-out.ts';
import { cellsOf } from './lines.ts';
import { COST_KINDS } from './recap.ts';
import { tableLines } from './table-listing.ts';

/** Values wider than this push their name out instead of moving all names. */
const WIDEST_VALUE = 30;

export function listingOf(estimate: Estimate): string {
  const figures = figuresOf(estimate);
  const widths = figures.cells.map((cell) => valueOf(cell).length);
  const width = widths.reduce((most, w) => (w <= WIDEST_VALUE ? Math.max(most, w) : most), 0);
  const lines: string[] = [];
  if (figures.title !== '') lines.push(figures.title, '');
  let index = 0;
  let tables = 0;
  for (const part of estimate.notebook.parts) {
    const blocks = cellsOf(part);
    if (part.key !== '') lines.push(part.name);
    for (const { table } of blocks) {
      const [cell, rows] = table
        ? [null, figures.tables[tables++]]
        : [figures.cells[index++], null];
      if (cell) lines.push(...cellLines(cell, width));
      else if (rows) lines.push(...tableLines(rows, width));
    }
    const row = rowOf(estimate, figures, part.key);
    if (row)
      lines.push(
        `  ${costLine(row, estimate.notebook.settings.currency, leftOut(estimate, part.key))}`,
      );
    if (part.key !== '' || blocks.length > 0) lines.push('');
  }
  lines.push(
    `Whole job: ${costLine(figures.costs.total, estimate.notebook.settings.currency, leftOut(estimate, null))}`,
  );
  lines.push(...problemLines(estimate, figures));
  return `${lines.join('\n')}\n`;
}

function rowOf(estimate: Estimate, figures: Figures, key: string): RowFigure | null {
  const index = estimate.costs().parts.findIndex((row) => row.key === key);
  const row = figures.costs.parts[index];
  return row && (row.lines > 0 || row.price !== row.direct) ? row : null;
}

function cellLines(cell: CellFigure, width: number): readonly string[] {
  const lines = [`  ${valueOf(cell).padEnd(width)}  ${cell.name}: ${howOf(cell)}`];
  const { error } = cell;
  if (!error) return lines;
  const indent = ' '.repeat(width + 4);
  // The words in question are ringed below the formula as it was typed.
  if (error.spots.length > 0 && cell.formula.length <= 200) {
    lines.push(`${indent}${cell.formula}`, `${indent}${ringed(cell.formula.length, error.spots)}`);
  }
  lines.push(`${indent}${error.message}`);
  for (const fix of error.fixes) lines.push(`${indent}Try: ${fix}`);
  return lines;
}

function ringed(length: number, spots: readonly { from: number; to: number }[]): string {
  let line = '';
  for (let i = 0; i < length; i++) line += spots.some((s) => i >= s.from && i < s.to) ? '~' : ' ';
  return line.trimEnd();
}

function valueOf(cell: CellFigure): string {
  if (cell.shown !== null) return cell.shown;
  if (cell.error) return 'problem';
  return cell.waitsFor.length > 0 ? 'waiting' : '?';
}

function howOf(cell: CellFigure): string {
  const asWritten = (cell.kind === 'given' && cell.range === null) || cell.readAs === '';
  const said = asWritten ? cell.formula : cell.readAs;
  const how = cell.byHand ? `set by hand; worked from ${said}` : said;
  const waits = cell.waitsFor.length > 0 ? `; waiting for ${cell.waitsFor.join(', ')}` : '';
  return `${how}${waits}${cell.from ? ` (${cell.from})` : ''}`;
}

/** `; 1 line not yet known`: what the sums of a part, or of the whole job, leave out. */
function leftOut(estimate: Estimate, key: string | null): string {
  const { total, parts } = estimate.costs();
  const row = key === null ? total : parts.find((part) => part.key === key);
  if (!row || row.incomplete.length === 0) return '';
  return `; ${sayLeftOut(row.incomplete, (id) => estimate.state(id))}`;
}

function costLine(row: RowFigure, currency: string, left: string): string {
  const money = (text: string): string =>
    text.startsWith('-') ? `−${currency}${grouped(text.slice(1))}` : `${currency}${grouped(text)}`;
  const kinds = COST_KINDS.filter((kind) => row[kind] !== '0.00').map(
    (kind) => `${kind} ${money(row[kind])}`,
  );
  const lines = row.lines === 1 ? '1 cost line' : `${row.lines} cost lines`;
  const price = row.price === row.direct ? '' : `; price ${money(row.price)}`;
  const soFar = row.incomplete ? ' so far' : '';
  const split =
    kinds.length > 1 ? `: ${kinds.join(', ')}` : kinds.length === 1 ? `, all ${kindWord(row)}` : '';
  if (row.lines === 0 && row.price !== row.direct) {
    return `no cost lines; adds ${money(row.price)} to the price${soFar}${left}`;
  }
  return `${lines}, direct cost ${money(row.direct)}${soFar}${split}${price}${left}`;
}

function kindWord(row: RowFigure): string {
  return COST_KINDS.find((kind) => row[kind] !== '0.00') ?? '';
}

function grouped(text: string): string {
  return text.replace(/\B(?=(\d{3})+\.)/g, ',');
}

/** Faults already stand beside their cells. */
function problemLines(estimate: Estimate, figures: Figures): readonly string[] {
  const findings: readonly Finding[] = estimate.findings();
  const told = findings.flatMap((finding, i) => {
    const isFault = finding.cell !== null && estimate.state(finding.cell).outcome.kind === 'fault';
    const figure = figures.problems[i];
    if (isFault && finding.spot === null) return [];
    return [`  ${figure.part ? `${figure.part}: ` : ''}${figure.message}`];
  });
  return told.length === 0 ? [] : ['', 'Worth a look', ...told];
}
