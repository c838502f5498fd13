// Changes in words, and the steps from one total to the other as they are drawn and listed.
import type { CellChange, CellThere, Way } from './cell-change.ts';
import { centsOf, moneyText } from './cents.ts';
import type { Comparison } from './compare.ts';
import type { Changed, WhyMoved } from './why-moved.ts';

/** One change as it is listed: `Bag price`, `$6.48 per bag`, `$6.92 per bag`, `the price went up`. */
export interface SaidChange {
  readonly part: string;
  readonly name: string;
  /** As it was written and is; null: it wasn't there, or isn't. */
  readonly was: string | null;
  readonly is: string | null;
  readonly how: string;
}

/** One step of the way from the total before to the total after. */
export interface TotalStep {
  /** Several: they only work together. Empty: today's tool works it otherwise than it was frozen. */
  readonly changes: readonly SaidChange[];
  readonly amount: string;
  readonly from: string;
  readonly to: string;
}

/** The pieces one after the other; the last one ends at the total after. */
export function stepsOf(why: WhyMoved, comparison: Comparison): readonly TotalStep[] {
  let total = centsOf(comparison[why.of].before);
  return why.pieces.map(({ changes, amount }) => {
    const from = moneyText(total);
    total += centsOf(amount);
    const said = changes.map((each) => saidChange(each, comparison));
    return { changes: said, amount, from, to: moneyText(total) };
  });
}

export function sayMethod({ method }: WhyMoved): string {
  switch (method.kind) {
    case 'exact':
      return 'Each change has its average effect over every order in which they can be made.';
    case 'averaged':
      return `Each change has its average effect over ${2 * method.pairs} of the orders in which they can be made, shuffled and reversed.`;
    case 'together':
      return 'The changes could not be told apart.';
  }
}

function saidChange(each: Changed, comparison: Comparison): SaidChange {
  if (each.kind === 'part')
    return { part: each.after, name: '', was: each.before, is: each.after, how: 'renamed' };
  const change = changeOf(each, comparison);
  if (each.kind === 'row') {
    const [was, is] = [change?.before, change?.after];
    const row = change?.table?.rows.find(
      ({ before, after }) => before === each.rows[0] && after === each.rows[1],
    );
    const texts = (side: 'before' | 'after'): string =>
      row?.cells.map((cell) => cell[side]).join(', ') ?? '';
    const there = is ?? was;
    return {
      part: there?.part ?? '',
      name: there?.name ?? '',
      was: each.rows[0] === null ? null : texts('before'),
      is: each.rows[1] === null ? null : texts('after'),
      how:
        each.rows[0] === null
          ? 'row added'
          : each.rows[1] === null
            ? 'row taken out'
            : 'row changed',
    };
  }
  const there = change?.after ?? change?.before ?? null;
  return {
    part: there?.part ?? '',
    name: there?.name ?? '',
    was: written(change?.before ?? null),
    is: written(change?.after ?? null),
    how: change ? change.ways.map((way) => sayWay(way, change)).join(', ') : '',
  };
}

function changeOf(each: Extract<Changed, { kind: 'cell' | 'row' }>, { parts }: Comparison) {
  for (const { cells } of parts) {
    const found = cells.find(
      ({ before, after }) =>
        (before?.id ?? null) === each.before && (after?.id ?? null) === each.after,
    );
    if (found) return found;
  }
  return null;
}

/** What stands by hand stands in for the formula. */
function written(there: CellThere | null): string | null {
  return there && (there.byHand ?? there.formula);
}

/** What was done to a cell: `the price went up`, `grew`, `its formula was mended`. */
export function sayWay(way: Way, { before, after, toward }: CellChange): string {
  const by = (more: string, less: string, other: string): string =>
    toward === 'more' ? more : toward === 'less' ? less : other;
  switch (way) {
    case 'added':
      return 'added';
    case 'removed':
      return 'taken out';
    case 'renamed':
      return `was called ${before?.name ?? ''}`;
    case 'moved':
      return before?.part === after?.part ? 'moved' : `moved from ${before?.part ?? ''}`;
    case 'price':
      return by('the price went up', 'the price came down', 'another price');
    case 'size':
      return by('grew', 'became smaller', 'written another way');
    case 'time':
      return by('takes longer', 'takes less time', 'written another way');
    case 'rate':
      return by('the rate went up', 'the rate came down', 'another rate');
    case 'share':
      return by('the share went up', 'the share came down', 'another share');
    case 'count':
      return by('more of them', 'fewer of them', 'another count');
    case 'answer':
      return 'another answer';
    case 'known':
      return 'known now';
    case 'unknown':
      return 'not known any more';
    case 'formula':
      return 'worked another way';
    case 'mended':
      return 'its formula was mended';
    case 'broken':
      return "its formula can't be worked any more";
    case 'by-hand':
      if (after?.byHand === null) return 'no longer set by hand';
      return before?.byHand === null ? 'set by hand' : 'set by hand to something else';
    case 'table':
      return 'its table changed';
    case 'line':
      return 'another line of the costs';
    case 'source':
      return 'another source';
    case 'remarks':
      return 'other remarks';
  }
}
