// Figures of a column, and rows that were read off a table.
import type { Checked } from '../../language/plan.ts';
import type { CellId, ColumnOf, LookUp, RowCount } from '../../language/tree.ts';
import type { Book } from '../book.ts';
import type { Target } from '../line.ts';
import { said } from '../naming.ts';
import { type Word, saying } from '../step.ts';
import { joinedBy, leftOutNote, lineTerm } from './adding.ts';
import { TERMS_AT_MOST } from './arithmetic.ts';
import { type Told, type Used, riser, use } from './told.ts';

/** `total of volume in slab bays, 2 rows`: each row stands below with its amount and opens in place. */
export function tellColumn(book: Book, checked: Checked, formula: ColumnOf, target: Target): Told {
  const outcome = book.evaluate(checked.plan);
  const { cells, what, columnSay, tableSay } = formula;
  const missing = new Set(outcome.kind === 'value' ? outcome.leftOut : []);
  const added = cells.filter((cell) => !missing.has(cell));
  const many = added.length === 1 ? '1 row' : `${added.length} rows`;
  const short = added.length <= TERMS_AT_MOST;
  const terms = new Map(short ? added.map((cell) => [cell, lineTerm(book, cell)]) : []);
  const sum = short ? joinedBy(' + ', [...terms.values()]) : [`${many} added`];
  const picks = what === 'greatest' || what === 'least';
  const tokens = picks
    ? short
      ? joinedBy(', ', [...terms.values()])
      : [many]
    : what === 'total'
      ? sum
      : ['(', ...sum, `) ÷ ${added.length}`];
  const made = riser(book, {
    said: saying(`${what} of ${columnSay} in ${tableSay}, ${many}`),
    tokens,
    joint: picks ? '→' : '=',
    result: target,
    comesOut: [],
    used: [],
    note: leftOutNote(book, outcome),
  });
  const targetOf = (cell: CellId): Target | null => {
    const term = terms.get(cell);
    return (term && made.targets.get(term)) ?? null;
  };
  return [{ ...made, lines: cells.map((cell) => ({ cell, target: targetOf(cell) })) }];
}

/** Which row was read, and by what. */
export function tellLookUp(book: Book, checked: Checked, formula: LookUp, target: Target): Told {
  const used = checked.parts.map((part) => use(book, part));
  const row = rowRead(book, checked, formula);
  const cell = row === null ? undefined : formula.cells[row];
  const conditions = formula.conditions.flatMap((condition, i): readonly Word[] => {
    const part = checked.parts[i];
    const words = part ? said(book, part) : [];
    const joint = i === 0 ? '' : ', ';
    return saying(`${joint}${condition.columnSay}${RELATION[condition.relation]} `, words);
  });
  const made = riser(book, {
    said: saying(...lookUpSaid(formula, used, conditions, book)),
    tokens: [],
    joint: '→',
    result: target,
    comesOut: [],
    used,
    note: cell === undefined ? null : `The first row that fits: ${book.facts(cell).name}.`,
  });
  return [{ ...made, lines: cell === undefined ? [] : [{ cell, target: null }] }];
}

function lookUpSaid(
  formula: LookUp,
  used: readonly Used[],
  conditions: readonly Word[],
  book: Book,
): readonly (string | readonly Word[])[] {
  const { asked, columnSay, tableSay } = formula;
  const [size] = used;
  if (asked === undefined || !size) return [`read ${columnSay} off ${tableSay} for `, conditions];
  return [`${asked} of `, said(book, size.checked), `, read off ${tableSay}`];
}

export function tellRowCount(book: Book, formula: RowCount, target: Target): Told {
  return [
    riser(book, {
      said: saying(`the rows of ${formula.tableSay}`),
      tokens: [],
      joint: '=',
      result: target,
      comesOut: [],
      used: [],
    }),
  ];
}

const RELATION = {
  is: '',
  'is-not': ' not',
  more: ' over',
  less: ' under',
  'at-least': ' at least',
  'at-most': ' at most',
} as const;

/** Asks the engine row by row: the first whose conditions all hold. */
function rowRead(book: Book, { plan }: Checked, formula: LookUp): number | null {
  if (plan.op !== 'look-up') return null;
  for (const row of plan.rows) {
    const fits = row.cells.every((left, i) => {
      const wanted = plan.wanted[i];
      if (!wanted) return false;
      const { relation, value: right } = wanted;
      const outcome = book.evaluate({ op: 'compare', relation, left, right });
      return outcome.kind === 'value' && outcome.value === true;
    });
    if (!fits) continue;
    let { answer } = row;
    while (answer.op === 'scale') answer = answer.of;
    return answer.op === 'cell' ? formula.cells.indexOf(answer.cell) : null;
  }
  return null;
}
