// Brackets and the `or` of `whichever is …`, found once for a whole formula.
import type { Token } from './lexer.ts';

export function closingBrackets(tokens: readonly Token[]): ReadonlyMap<number, number> {
  const closing = new Map<number, number>();
  const open: number[] = [];
  tokens.forEach(({ kind, text }, i) => {
    if (kind !== 'symbol') return;
    if (text === '(' || text === '[') open.push(i);
    else if (text === ')' || text === ']') {
      const from = open.pop();
      if (from !== undefined) closing.set(from, i);
    }
  });
  return closing;
}

/** For every `whichever`, the nearest `or` before it at the same depth. */
export function choosingOrs(tokens: readonly Token[]): ReadonlySet<number> {
  const found = new Set<number>();
  const open: number[][] = [[]];
  tokens.forEach((token, i) => {
    if (token.kind === 'quoted') return;
    if (token.text === '(' || token.text === '[') open.push([]);
    else if ((token.text === ')' || token.text === ']') && open.length > 1) open.pop();
    else if (token.text === 'or') open.at(-1)?.push(i);
    else if (token.text === 'whichever') {
      const or = open.at(-1)?.pop();
      if (or !== undefined) found.add(or);
    }
  });
  return found;
}
