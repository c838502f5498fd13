// Mends of a cell that is at fault: those that its report offers, and those that change something else in the notebook.
// What is offered as another formula was read first, so that it does not lead to the same fault.
import type { CellId } from '../language/tree.ts';
import { singularOf } from '../quantity/nouns.ts';
import type { Fix, Report } from '../words/report.ts';
import type { Cell, Splice } from './document.ts';
import { lineBreak } from './lines.ts';
import type { Mend, Mendable } from './mends.ts';
import { nameKey, nameProblem } from './names.ts';
import { isSetting } from './settings.ts';
import { OPEN, formulaMend, nearCells, words, works } from './mends-tried.ts';
import { priced, toCost } from './price-mends.ts';
import { firstRow, rowToAdd } from './row-mends.ts';

export function cellMends(estimate: Mendable, id: CellId): readonly Mend[] {
  const { outcome } = estimate.state(id);
  const cell = estimate.notebook.cell(id);
  return cell && outcome.kind === 'fault' ? mendsFor(estimate, cell, outcome.report) : [];
}

/** Of a formula that is being written: other formulas only, since nothing else of the notebook is written with it. */
export function draftMends(estimate: Mendable, id: CellId, formula: string): readonly Fix[] {
  const cell = estimate.notebook.cell(id);
  if (!cell) return [];
  const { reading, outcome } = estimate.draft(cell.part, id, formula);
  const worked = outcome.kind === 'fault' ? [outcome.report] : [];
  const [report] = [...reading.problems, ...worked];
  if (!report) return [];
  return mendsFor(estimate, { ...cell, formula }, report).flatMap(({ say, does }) =>
    does.kind === 'formula' && does.cell === id ? [{ say, formula: does.formula }] : [],
  );
}

/** A price finds what it is the price of before the price of one is offered. */
const FURTHER_FIRST = new Set(['price-per-wrong-thing', 'unit-clash']);

function mendsFor(estimate: Mendable, cell: Cell, report: Report): readonly Mend[] {
  const own = report.fixes.map((fix): Mend => formulaMend(cell.id, fix.say, fix.formula));
  const more = further(estimate, cell, report);
  return FURTHER_FIRST.has(report.code) ? [...more, ...own] : [...own, ...more];
}

function further(estimate: Mendable, cell: Cell, report: Report): readonly Mend[] {
  switch (report.code) {
    case 'unknown-name':
      return newCell(estimate, cell, report);
    case 'unknown-unit':
      return counted(estimate, cell, report);
    case 'circle':
      return outOfCircle(estimate, cell);
    case 'division-by-zero':
      return openGiven(estimate, cell, report);
    case 'unit-clash':
    case 'price-per-wrong-thing':
      return priced(estimate, cell, report);
    case 'not-yet-a-cost':
      return toCost(estimate, cell);
    case 'no-row':
      return rowToAdd(estimate, cell, report);
    case 'no-rows':
      return firstRow(estimate, cell, report);
    case 'by-hand-unread':
    case 'by-hand-measure':
      return byHand(estimate, cell);
    default:
      return [];
  }
}

/** A given of the name that nobody knows yet, right above. */
function newCell(estimate: Mendable, cell: Cell, report: Report): readonly Mend[] {
  const name = words(cell, report);
  if (nameProblem(name) !== null) return [];
  const section = estimate.notebook.sections.find(({ key }) => key === cell.part);
  const cells = section?.cells ?? [];
  if (cells.some((other) => nameKey(other.name) === nameKey(name))) return [];
  const place = cells.findIndex(({ id }) => id === cell.id);
  const after = cells[place - 1]?.id ?? cell.id;
  const named = name.slice(0, 1).toUpperCase() + name.slice(1);
  return [
    {
      say: `Add "${named}", still to come`,
      does: { kind: 'new-cell', part: cell.part, after, name: named, formula: OPEN },
    },
  ];
}

/** `5 sleepers`: one more thing that is counted in this notebook. */
function counted(estimate: Mendable, cell: Cell, report: Report): readonly Mend[] {
  const word = words(cell, report).toLowerCase();
  const after = cell.formula.slice(0, report.spots[0]?.from ?? 0);
  if (!/^\p{L}{3,}$/u.test(word) || !/[\d½¼¾]\s*$/.test(after)) return [];
  const thing = singularOf(word);
  return [
    {
      say: `Count ${word} in this notebook`,
      does: { kind: 'text', splices: [withCounted(estimate, thing)] },
    },
  ];
}

function withCounted({ notebook }: Mendable, thing: string): Splice {
  const { text, titleSpot } = notebook;
  const end = lineBreak(text);
  const front = text.slice(0, notebook.sections[1] ? notebook.starts[1] : text.length);
  const line = /^[ \t]*[-+*][ \t]+counted things:[^\r\n]*/im.exec(front);
  if (line) {
    const at = line.index + line[0].trimEnd().length;
    return { from: at, to: at, insert: `${/:\s*$/.test(line[0]) ? ' ' : ', '}${thing}` };
  }
  const other = /^[ \t]*[-+*][ \t]+([^:\r\n]+):/m.exec(front);
  if (other && isSetting(other[1] ?? '')) {
    return { from: other.index, to: other.index, insert: `- Counted things: ${thing}${end}` };
  }
  if (!titleSpot) return { from: 0, to: 0, insert: `- Counted things: ${thing}${end}${end}` };
  const at = titleSpot.to;
  // Text right below would be read as the item going on.
  const isClear = /^(?:\r\n|\r|\n)?[ \t]*(?:[\r\n#]|$)/.test(text.slice(at));
  return {
    from: at,
    to: at,
    insert: `${end}${end}- Counted things: ${thing}${isClear ? '' : end}`,
  };
}

/** The cell gets an amount: what it last came to, or one still to come. */
function outOfCircle(estimate: Mendable, cell: Cell): readonly Mend[] {
  const last = estimate.last(cell.id);
  const held =
    last !== null && works(estimate, cell, last)
      ? [formulaMend(cell.id, `Make ${cell.name} ${last}, as it last was`, last)]
      : [];
  return [...held, formulaMend(cell.id, `Make ${cell.name} an amount still to come`, OPEN)];
}

/** Divided by a given that is 0: its amount may still be to come. */
function openGiven(estimate: Mendable, cell: Cell, report: Report): readonly Mend[] {
  const name = nameKey(words(cell, report));
  for (const { id, name: given } of nearCells(estimate, cell)) {
    if (estimate.state(id).kind !== 'given') continue;
    if (nameKey(estimate.say(id, cell.id)) !== name) continue;
    return [formulaMend(id, `Leave ${given} open for now`, OPEN)];
  }
  return [];
}

function byHand(estimate: Mendable, cell: Cell): readonly Mend[] {
  const { byHand: text, formula } = estimate.state(cell.id).input;
  const back: Mend = {
    say: 'Take the value by hand back',
    does: { kind: 'by-hand', cell: cell.id, formula: null },
  };
  if (text === null || formula === text) return [back];
  const { reading } = estimate.draft(cell.part, cell.id, text);
  const offered = reading.problems.flatMap(({ fixes }) =>
    fixes.map((fix): Mend => ({
      say: fix.say,
      does: { kind: 'by-hand', cell: cell.id, formula: fix.formula },
    })),
  );
  return [...offered, back];
}
