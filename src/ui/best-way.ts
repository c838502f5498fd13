// Which of several is the best and which the worst, where it can be told: less money, a check that holds, or the way
// that the person said is better. What is alike everywhere is neither.
import { MONEY } from '../quantity/dimension.ts';
import { type Result, type Stood, compareStood } from '../moves-it/stood.ts';
import type { Door } from './session.ts';

export type Rank = 'best' | 'worst' | null;

export function bestAndWorst(
  door: Door,
  result: Result,
  all: readonly Stood[],
  said: 'less' | 'more' | null,
): readonly Rank[] {
  const none = all.map((): Rank => null);
  const isCheck = result.of === 'cell' && door.state(result.cell).kind === 'check';
  if (isCheck) return ranked(all, (a, b) => yes(b) - yes(a));
  const better = said ?? (all[0] && isMoney(all[0]) ? 'less' : null);
  if (better === null) return none;
  // What has no value, or another kind of one, is in nobody's order.
  const sign = better === 'less' ? 1 : -1;
  if (all.some((one) => compareStood(all[0], one) === null)) return none;
  return ranked(all, (a, b) => sign * (compareStood(a, b) ?? 0));
}

function ranked(all: readonly Stood[], order: (a: Stood, b: Stood) => number): readonly Rank[] {
  const inOrder = [...all].sort(order);
  const [first, last] = [inOrder[0], inOrder.at(-1)];
  if (!first || !last || order(first, last) === 0) return all.map(() => null);
  return all.map((one) => {
    if (order(one, first) === 0) return 'best';
    return order(one, last) === 0 ? 'worst' : null;
  });
}

function yes({ text }: Stood): number {
  return text === 'yes' ? 1 : 0;
}

/** An amount of money, not a price per something. */
export function isMoney({ dimension }: Stood): boolean {
  return dimension === MONEY.key;
}
