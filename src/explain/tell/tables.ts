// Figures of a column, and rows that were read off a table.
import type { Checked, Plan } from '../../language/plan.ts';
import type { CellId, ColumnOf, LookUp, LookUpCondition, RowCount } from '../../language/tree.ts';
import type { Book } from '../book.ts';
import type { Target, Term, Token } from '../line.ts';
import { said } from '../naming.ts';
import { type Word, plainWords, saying } from '../step.ts';
import { joinedBy, leftOutNote, lineTerm } from './adding.ts';
import { TERMS_AT_MOST } from './arithmetic.ts';
import { type Told, type Used, byItsPlan, riser, use } from './told.ts';

/** `total of volume in slab bays, 2 rows`: each row stands below with its amount and opens in place. */
export function tellColumn(book: Book, checked: Checked, formula: ColumnOf, target: Target): Told {
  const outcome = book.evaluate(checked.plan);
  const { cells, what, columnSay, tableSay } = formula;
  const missing = new Set(outcome.kind === 'value' ? outcome.leftOut : []);
  const added = cells.filter((cell) => !missing.has(cell));
  const many = added.length === 1 ? '1 row' : `${added.length} rows`;
  const short = added.length <= TERMS_AT_MOST;
  const terms = new Map(
    added.length <= SETTLED_AT_MOST ? added.map((cell) => [cell, lineTerm(book, cell)]) : [],
  );
  const all = [...terms.values()];
  const picks = what === 'greatest' || what === 'least';
  const asked = {
    said: saying(`${what} of ${columnSay} in ${tableSay}, ${many}`),
    joint: picks ? '→' : '=',
    result: target,
    used: [],
    note: leftOutNote(book, outcome),
  } as const;
  // Each row has the digits with which they come out together, also where the line says no more than how many there are.
  const settled = riser(book, {
    ...asked,
    // The only one is the answer.
    tokens:
      added.length === 1 ? [] : columnLine(what, joinedBy(picks ? ', ' : ' + ', all), added.length),
    comesOut: terms.size > 0 ? [byItsRows(checked, terms)] : [],
  });
  const counted = picks ? many : `${many} added`;
  const made = short
    ? settled
    : {
        ...riser(book, {
          ...asked,
          tokens: columnLine(what, [counted], added.length),
          comesOut: [],
        }),
        targets: settled.targets,
      };
  const targetOf = (cell: CellId): Target | null => {
    const term = terms.get(cell);
    return (term && made.targets.get(term)) ?? null;
  };
  return [{ ...made, lines: cells.map((cell) => ({ cell, target: targetOf(cell) })) }];
}

/** Of more rows than this the digits are those that the page shows. */
const SETTLED_AT_MOST = 60;

function columnLine(
  what: ColumnOf['what'],
  line: readonly Token[],
  rows: number,
): readonly Token[] {
  return what === 'average' ? ['(', ...line, `) ÷ ${rows}`] : line;
}

/** Its plan worked from what is written for its rows. */
function byItsRows(
  { plan }: Checked,
  terms: ReadonlyMap<CellId, Term>,
): (stands: (term: Term) => Plan) => Plan {
  return (stands) => {
    const written = new Map([...terms].map(([cell, term]) => [cell, stands(term)]));
    return rowsSwapped(plan, written);
  };
}

/** Rows stand at the bottom of what adds them, perhaps in another scale than theirs. */
function rowsSwapped(plan: Plan, written: ReadonlyMap<CellId, Plan>): Plan {
  switch (plan.op) {
    case 'column':
      return rowsSwapped(plan.of, written);
    case 'total':
    case 'average':
    case 'greatest':
    case 'least':
      return { op: plan.op, items: plan.items.map((item) => rowsSwapped(item, written)) };
    case 'scale':
      return { ...plan, of: rowsSwapped(plan.of, written) };
    case 'cell':
      return written.get(plan.cell) ?? plan;
    default:
      return plan;
  }
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
    return saying(joint, conditionSaid(condition, words));
  });
  const size = formula.asked === undefined ? null : used[0];
  const line = size ? [size] : lookedUpBy(formula, used);
  const made = riser(book, {
    said: saying(...lookUpSaid(formula, used, conditions, book)),
    tokens: used.length > TERMS_AT_MOST ? [] : line,
    joint: '→',
    result: target,
    comesOut: [byItsPlan(checked, used)],
    used,
    note:
      cell === undefined
        ? null
        : `${capital(rowName(book, formula, cell))} is the first that fits.`,
  });
  return [{ ...made, lines: cell === undefined ? [] : [{ cell, target: null }] }];
}

/** `joist spacing` rather than `spacing joist spacing`, `span at least joist span`. */
function conditionSaid(
  { columnSay, relation }: LookUpCondition,
  words: readonly Word[],
): readonly Word[] {
  const isInTheName = plainWords(words).toLowerCase().endsWith(columnSay.toLowerCase());
  if (relation === 'is' && isInTheName) return words;
  return saying(`${columnSay}${RELATION[relation]} `, words);
}

/** What the row was looked for by, put in: `species hem-fir, span at least 9 ft`. */
function lookedUpBy(formula: LookUp, used: readonly Used[]): readonly Token[] {
  return formula.conditions.flatMap(({ columnSay, relation }, i): readonly Token[] => {
    const value = used[i];
    if (!value) return [];
    return [`${i === 0 ? '' : ', '}${columnSay}${RELATION[relation]} `, value];
  });
}

/** `Row 31`, `lay deck boards`: the table and the column are said already. */
function rowName(book: Book, { columnSay }: LookUp, cell: CellId): string {
  const { name } = book.facts(cell);
  const table = book.facts(book.state(cell).input.inTable ?? cell).name;
  const [before, after] = [`${table}: `, `: ${columnSay}`];
  return name.slice(before.length, -after.length);
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
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
