// What became of one cell from one version to the next: a price that moved, a size that grew and a formula that was
// mended are told apart.
import type { CellState, Outcome } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { Cell, MoneyLine, Remark, Table } from '../notebook/document.ts';
import { remarkText, sourceOf } from '../notebook/remarks.ts';
import { scaled } from '../quantity/decimal.ts';
import type { Measure } from '../quantity/measure.ts';
import { type TableChange, tableChange } from './rows-apart.ts';
import type { Version } from './version.ts';
import { type Run, wordsApart } from './words-apart.ts';

/** What a person did to a cell; one can have several. */
export type Way =
  | 'added'
  | 'removed'
  | 'renamed'
  /** To another part, or to another place in its own. */
  | 'moved'
  /** A given amount, by what it is an amount of. */
  | 'price'
  | 'size'
  | 'time'
  | 'rate'
  | 'share'
  | 'count'
  /** A given text, or yes or no. */
  | 'answer'
  /** A `?` that was answered, and what is a `?` again. */
  | 'known'
  | 'unknown'
  /** A formula: written anew; it could not be worked and can be now; the other way about. */
  | 'formula'
  | 'mended'
  | 'broken'
  /** Set by hand, set otherwise, or no longer. */
  | 'by-hand'
  | 'table'
  /** What line of the costs it is. */
  | 'line'
  | 'source'
  | 'remarks';

/** A cell as it stands in one of the two. */
export interface CellThere {
  readonly id: CellId;
  readonly part: string;
  readonly name: string;
  readonly formula: string;
  readonly shown: string | null;
  readonly byHand: string | null;
  readonly from: string | null;
  readonly money: MoneyLine | null;
  readonly given: boolean;
}

export interface CellChange {
  readonly before: CellThere | null;
  readonly after: CellThere | null;
  readonly ways: readonly Way[];
  /** Its formula word by word; empty where it says what it said. */
  readonly words: readonly Run[];
  readonly table: TableChange | null;
  /** Which way its value went; null where the two can't be compared. */
  readonly toward: 'more' | 'less' | 'same' | null;
}

export function cellThere({ estimate }: Version, part: string, cell: Cell): CellThere {
  return {
    id: cell.id,
    part,
    name: cell.name,
    formula: cell.formula,
    shown: estimate.shown(cell.id)?.text ?? null,
    byHand: remarkText(cell.remarks, 'by hand'),
    from: sourceOf(cell.remarks),
    money: cell.money,
    given: cell.table === null && estimate.state(cell.id).kind === 'given',
  };
}

/**
 * Null where both say the same in the same place. `said` is the cell before, written in the names of after: a formula
 * that only follows a rename says what it said.
 */
export function cellChange(
  versions: readonly [Version, Version],
  cells: readonly [Cell, Cell],
  said: Cell,
  there: readonly [CellThere, CellThere],
  moved: boolean,
): CellChange | null {
  const [old, now] = cells;
  const [before, after] = there;
  const states = versions.map(({ estimate }, i) => estimate.state(cells[i].id));
  const ways: Way[] = [];
  if (old.name !== now.name) ways.push('renamed');
  if (moved) ways.push('moved');
  const otherFormula = said.formula !== now.formula;
  if (otherFormula) ways.push(formulaWay(states[0], states[1]));
  const was = tableBefore(old, said, now);
  if ((was?.source ?? '') !== (now.table?.source ?? '')) ways.push('table');
  if (remarkText(said.remarks, 'by hand') !== after.byHand) ways.push('by-hand');
  if (JSON.stringify(old.money) !== JSON.stringify(now.money)) ways.push('line');
  if (before.from !== after.from) ways.push('source');
  if (otherRemarks(old.remarks) !== otherRemarks(now.remarks)) ways.push('remarks');
  if (ways.length === 0) return null;
  const words = otherFormula ? wordsApart(said.formula, now.formula) : [];
  const table = ways.includes('table') && was && now.table ? tableChange(was, now.table) : null;
  return { before, after, ways, words, table, toward: towardOf(states[0], states[1]) };
}

/** As it was where a column has another name, else with the names of after. */
function tableBefore(old: Cell, said: Cell, now: Cell): Table | null {
  const names = ({ table }: Cell): string => JSON.stringify(table?.columns.map(({ name }) => name));
  return names(old) === names(now) ? said.table : old.table;
}

function formulaWay(old: CellState, now: CellState): Way {
  if (old.kind === 'given' && now.kind === 'given') {
    if (isOpen(old)) return 'known';
    if (isOpen(now)) return 'unknown';
    const measure = now.workedHolds?.measure ?? old.workedHolds?.measure;
    if (measure && old.worked.kind !== 'fault' && now.worked.kind !== 'fault')
      return givenWay(measure);
  }
  const [bad, badNow] = [old, now].map(({ worked }) => worked.kind === 'fault');
  return bad === badNow ? 'formula' : bad ? 'mended' : 'broken';
}

function isOpen({ worked }: CellState): boolean {
  return worked.kind === 'unknown';
}

function givenWay(measure: Measure): Way {
  switch (measure.kind) {
    case 'share':
      return 'share';
    case 'yes-no':
    case 'text':
      return 'answer';
    case 'open':
      return 'known';
    case 'amount': {
      const { money, length, mass, time } = measure.dimension;
      if (money !== 0) return 'price';
      if (measure.rate) return 'rate';
      if (length !== 0 || mass !== 0) return 'size';
      return time === 0 ? 'count' : 'time';
    }
  }
}

export function towardOf(old: CellState, now: CellState): CellChange['toward'] {
  const [a, b] = [amountIn(old.outcome, old), amountIn(now.outcome, now)];
  if (!a || !b || a.of !== b.of) return null;
  const way = b.amount.comparedTo(a.amount);
  return way > 0 ? 'more' : way < 0 ? 'less' : 'same';
}

function amountIn(outcome: Outcome, { holds }: CellState) {
  if (outcome.kind !== 'value' || typeof outcome.value !== 'object' || !holds) return null;
  const { measure } = holds;
  if (measure.kind === 'share') return { of: 'share', amount: outcome.value };
  if (measure.kind !== 'amount') return null;
  return { of: measure.dimension.key, amount: scaled(outcome.value, measure.scale) };
}

function otherRemarks(remarks: readonly Remark[]): string {
  const others = remarks.filter(
    ({ kind }) => !['from', 'by hand', 'cost', 'price'].includes(kind ?? ''),
  );
  return others.map(({ word, text }) => `${word}: ${text}`).join('\n');
}
