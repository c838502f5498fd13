// Mends of a cell that is at fault: those that its report offers, and those that change something else in the notebook.
// What is offered as another formula was read first, so that it does not lead to the same fault.
import type { CellId, Formula, LookUp } from '../language/tree.ts';
import { abovePart } from '../language/check/counted.ts';
import { partsOf } from '../language/check/parts.ts';
import {
  type Dimension,
  MONEY,
  PLAIN,
  timesDimension,
  withoutNounsAbove,
} from '../quantity/dimension.ts';
import { singularOf } from '../quantity/nouns.ts';
import type { Fix, Report } from '../words/report.ts';
import type { Cell, Splice } from './document.ts';
import { lineBreak } from './lines.ts';
import type { Mend, Mendable } from './mends.ts';
import { nameKey, nameProblem } from './names.ts';
import { isSetting } from './settings.ts';

/** What a given still to come is written as. */
const OPEN = '?';
/** As many cells as are offered to multiply by. */
const MOST_OFFERED = 3;

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

/** In a row: its own text, or what its column says for every row. */
export function rowMends(
  estimate: Mendable,
  table: CellId,
  { row, column }: { readonly row: number; readonly column: number },
  code: string,
): readonly Mend[] {
  const cell = estimate.notebook.cell(table);
  const id = estimate.rows(table)?.[row]?.[column];
  const said = cell?.table?.rows[row]?.texts[column] ?? '';
  if (id === undefined || !cell?.table) return [];
  const at = { cell: table, row, column } as const;
  if (code === 'set-in-row') {
    return [{ say: 'Leave it to its column', does: { kind: 'row-cell', ...at, text: '' } }];
  }
  if (code === 'text-or-name') {
    return [
      { say: 'Take the cell of that name', does: { kind: 'row-cell', ...at, text: `(${said})` } },
    ];
  }
  const { outcome } = estimate.state(id);
  if (outcome.kind !== 'fault') return [];
  const mends = outcome.report.fixes.map(({ say, formula }): Mend => {
    if (said !== '') return { say, does: { kind: 'row-cell', ...at, text: formula } };
    return { say: `${say}, in every row`, does: { kind: 'column-formula', ...at, formula } };
  });
  if (said === '' || cell.table.columns[column]?.formula !== null) return mends;
  return [
    ...mends,
    { say: 'Leave it open for now', does: { kind: 'row-cell', ...at, text: OPEN } },
  ];
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

function formulaMend(cell: CellId, say: string, formula: string): Mend {
  return { say, does: { kind: 'formula', cell, formula } };
}

/** Reads without a problem and comes to something, if perhaps to nothing known yet. */
function works(estimate: Mendable, cell: Cell, formula: string): boolean {
  const { reading, outcome } = estimate.draft(cell.part, cell.id, formula);
  return reading.problems.length === 0 && outcome.kind !== 'fault';
}

/** The cells of the same part first, then all others. */
function* nearCells(estimate: Mendable, cell: Cell): Iterable<Cell> {
  const { sections } = estimate.notebook;
  for (const own of [true, false]) {
    for (const section of sections) {
      if ((section.key === cell.part) === own) yield* section.cells;
    }
  }
}

/** The words under the report's first spot. */
function words(cell: Cell, { spots }: Report): string {
  const [spot] = spots;
  return spot ? cell.formula.slice(spot.from, spot.to).trim() : '';
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

/** A price per bag beside money: at the cells that count bags. */
function priced(estimate: Mendable, cell: Cell, report: Report): readonly Mend[] {
  for (const { from, to } of report.spots) {
    const rate = cell.formula.slice(from, to);
    const measure = estimate.draft(cell.part, cell.id, rate).holds?.measure;
    if (measure?.kind !== 'amount' || measure.dimension === MONEY) continue;
    if (abovePart(measure.dimension) !== MONEY) continue;
    const offered = multipliers(estimate, cell, measure.dimension).flatMap((say): Mend[] => {
      const by = `(${say} at ${rate})`;
      const formula = cell.formula.slice(0, from) + by + cell.formula.slice(to);
      if (!works(estimate, cell, formula)) return [];
      return [formulaMend(cell.id, `${say} at ${rate}`, formula)];
    });
    if (offered.length > 0) return offered.slice(0, MOST_OFFERED);
  }
  return [];
}

/** A cost line that is a price for one, or no money: by what makes money of it; or it is no cost line. */
function toCost(estimate: Mendable, cell: Cell): readonly Mend[] {
  const { formula } = cell;
  const { measure } = estimate.draft(cell.part, null, formula).holds ?? {};
  const line = estimate.state(cell.id).input.money?.line ?? 'cost';
  const away: Mend = {
    say: `Leave "${line}" out: it is no ${line} line`,
    does: { kind: 'no-remark', cell: cell.id, word: line },
  };
  if (measure?.kind !== 'amount') return [away];
  const { kind } = estimate.draft(cell.part, null, formula).reading.tree;
  const isOne = kind === 'name' || kind === 'amount' || kind === 'bracket';
  const asOne = isOne ? formula : `(${formula})`;
  const isPrice = abovePart(measure.dimension) === MONEY;
  const offered = multipliers(estimate, cell, measure.dimension)
    .map((say) => (isPrice ? `${say} at ${asOne}` : `${asOne} at ${say}`))
    .filter((made) => works(estimate, cell, made))
    .slice(0, MOST_OFFERED)
    .map((made) => formulaMend(cell.id, made, made));
  return [...offered, away];
}

/** Cells that make money of this when they are multiplied with it, as they are called here. */
function multipliers(estimate: Mendable, cell: Cell, by: Dimension): readonly string[] {
  const found: string[] = [];
  const isPlain = withoutNounsAbove(by) === PLAIN && by === PLAIN;
  if (isPlain) return found;
  for (const other of nearCells(estimate, cell)) {
    if (other.id === cell.id || found.length >= MOST_OFFERED) continue;
    const measure = estimate.state(other.id).holds?.measure;
    if (measure?.kind !== 'amount' || measure.dimension === PLAIN) continue;
    if (timesDimension(measure.dimension, by) !== MONEY) continue;
    found.push(estimate.say(other.id, cell.id));
  }
  return found;
}

/** A row in which what is asked for stands, the rest still to come. */
function rowToAdd(estimate: Mendable, cell: Cell, report: Report): readonly Mend[] {
  const [spot] = report.spots;
  const asked = lookUps(estimate.draft(cell.part, cell.id, cell.formula).reading.tree).find(
    (each) => each.conditions.some((one) => one.columnSpot.from === spot?.from),
  );
  const table = asked && estimate.notebook.cell(asked.table)?.table;
  if (!asked || !table) return [];
  const wanted = new Map(
    asked.conditions.map(({ columnSay, value }) => {
      const shown = value.kind === 'name' ? estimate.shown(value.cell) : null;
      const said = cell.formula.slice(value.spot.from, value.spot.to);
      return [nameKey(columnSay), value.kind === 'words' ? value.text : (shown ?? said)] as const;
    }),
  );
  const first = estimate.rows(asked.table)?.[0] ?? [];
  // In a column of texts a question mark would be read as a formula, and all others with it.
  const isText = (k: number): boolean => {
    const measure = first[k] === undefined ? null : estimate.state(first[k]).holds?.measure;
    return measure?.kind === 'text';
  };
  const texts = table.columns.map(
    ({ name, formula }, k) =>
      wanted.get(nameKey(name)) ?? (formula === null && !isText(k) ? OPEN : ''),
  );
  return [
    {
      say: `Add a row to ${asked.tableSay}`,
      does: { kind: 'new-row', cell: asked.table, texts },
    },
  ];
}

function firstRow(estimate: Mendable, cell: Cell, report: Report): readonly Mend[] {
  const said = words(cell, report).toLowerCase();
  for (const other of nearCells(estimate, cell)) {
    if (!other.table || other.table.rows.length > 0) continue;
    if (!said.includes(nameKey(other.name))) continue;
    const texts = other.table.columns.map(({ formula }) => (formula === null ? OPEN : ''));
    const does = { kind: 'new-row', cell: other.id, texts } as const;
    return [{ say: `Put a row into ${other.name}, still to come`, does }];
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

function lookUps(tree: Formula): readonly LookUp[] {
  const found: LookUp[] = [];
  const waiting: Formula[] = [tree];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (next.kind === 'look-up') found.push(next);
    waiting.push(...partsOf(next));
  }
  return found;
}
