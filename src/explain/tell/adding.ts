// Lists and recaps: what was added, line by line, and what was left out.
import type { Outcome } from '../../engine/outcome.ts';
import type { Checked } from '../../language/plan.ts';
import type { CellId, ListOf, Recap } from '../../language/tree.ts';
import type { Book } from '../book.ts';
import { figureFrom } from '../figure.ts';
import type { Target, Term, Token } from '../line.ts';
import { said } from '../naming.ts';
import { type Word, saying } from '../step.ts';
import { TERMS_AT_MOST } from './arithmetic.ts';
import { listed } from './shares.ts';
import { type Told, byItsPlan, operand, riser, use } from './told.ts';

/** `total of A, B and C`, `average of A and B`. */
export function tellList(book: Book, checked: Checked, formula: ListOf, target: Target): Told {
  const used = formula.items.map((item, place) => {
    const part = checked.parts[place];
    return use(book, part?.formula === item ? part : operand(checked, item));
  });
  const short = used.length <= TERMS_AT_MOST;
  const many = `${used.length} amounts`;
  const sum = short ? joinedBy(' + ', used) : [`${many} added`];
  return [
    riser(book, {
      said: saying(
        `${formula.what} of `,
        ...(short ? listed(used.map((one) => said(book, one.checked))) : [many]),
      ),
      tokens: formula.what === 'total' ? sum : ['(', ...sum, `) ÷ ${used.length}`],
      joint: '=',
      result: target,
      comesOut: short ? [byItsPlan(checked, used)] : [],
      used,
      note: leftOutNote(book, book.evaluate(checked.plan)),
    }),
  ];
}

/** `total of material in Landing`: the cost lines it adds, and those it could not. */
export function tellRecap(book: Book, checked: Checked, formula: Recap, target: Target): Told {
  const outcome = book.evaluate(checked.plan);
  const missing = new Set(outcome.kind === 'value' ? outcome.leftOut : []);
  const added = formula.lines.filter((cell) => !missing.has(cell));
  const many = added.length === 1 ? '1 line' : `${added.length} lines`;
  const short = added.length <= TERMS_AT_MOST;
  const terms = new Map(short ? added.map((cell) => [cell, lineTerm(book, cell)]) : []);
  const made = riser(book, {
    said: saying(`${formula.say}, ${many}`),
    // The only one is the answer.
    tokens:
      added.length === 1 ? [] : short ? joinedBy(' + ', [...terms.values()]) : [`${many} added`],
    joint: '=',
    result: target,
    comesOut: [],
    used: [],
    note: leftOutNote(book, outcome),
  });
  const targetOf = (cell: CellId): Target | null => {
    const term = terms.get(cell);
    return (term && made.targets.get(term)) ?? null;
  };
  return [{ ...made, lines: formula.lines.map((cell) => ({ cell, target: targetOf(cell) })) }];
}

export function lineTerm(book: Book, cell: CellId): Term {
  const { outcome, holds, input } = book.state(cell);
  const instead = input.name;
  if (holds === null || outcome.kind !== 'value') {
    const lacking = outcome.kind === 'value' ? { kind: 'waiting' as const, for: [cell] } : outcome;
    return { figure: { kind: 'lacking', outcome: lacking }, side: 'apart', instead };
  }
  return { figure: figureFrom(book, outcome, holds), side: 'apart', instead };
}

export function joinedBy(sign: string, terms: readonly Term[]): readonly Token[] {
  return terms.flatMap((term, place): Token[] => (place === 0 ? [term] : [sign, term]));
}

/** As many names as one reads at a glance; the rest by their number. */
const NAMED_AT_MOST = 6;

/** `Leaves out Gravel path and Turf, which have no value yet.` */
export function leftOutNote(book: Book, outcome: Outcome): string | null {
  if (outcome.kind !== 'value' || outcome.leftOut.length === 0) return null;
  const { leftOut } = outcome;
  const named = leftOut.slice(0, NAMED_AT_MOST).map((cell) => saying(book.facts(cell).name));
  const more = leftOut.slice(NAMED_AT_MOST).length;
  const all: readonly (readonly Word[])[] = more === 0 ? named : [...named, saying(`${more} more`)];
  const names = saying(...listed(all))
    .map((word) => word.text)
    .join('');
  return `So far: leaves out ${names}, which ${leftOut.length === 1 ? 'has' : 'have'} no value yet.`;
}
