// How tightly a form holds together: a part that is looser than its place wants stands in brackets.
import type { Binary, Formula } from './tree.ts';

// How tightly a form holds together; a part that is looser than its place wants stands in brackets.
export const CONDITION = 0;

export const OR = 1;

export const AND = 2;

export const NOT = 3;

const COMPARISON = 4;

export const CLAUSE = 5;

export const SUM = 6;

export const TERM = 7;

export const VALUE = 8;

export const SLOT = 9;

/** Phrases with several words of their own: beside an operator they stand in brackets. */
const IS_PHRASE: ReadonlySet<Formula['kind']> = new Set([
  'part-of',
  'what-share',
  'square-root',
  'diagonal',
  'circle',
  'triangle',
  'pieces',
  'spaced',
  'fewest',
  'even-gap',
  'sized',
]);

export function isPhrase(tree: Formula): boolean {
  return IS_PHRASE.has(tree.kind) || (tree.kind === 'look-up' && tree.asked !== undefined);
}

export function isSum(node: Binary): boolean {
  return node.op === 'plus' || node.op === 'minus';
}

export function isSlot(tree: Formula): boolean {
  return tightness(tree) >= SLOT;
}

export function tightness(tree: Formula): number {
  switch (tree.kind) {
    case 'condition':
    case 'range':
      return CONDITION;
    case 'or':
      return OR;
    case 'and':
      return AND;
    case 'not':
      return NOT;
    case 'comparison':
    case 'between':
      return COMPARISON;
    case 'in-units':
    case 'in-packs':
    case 'as-noun':
    case 'rounded':
    case 'marked-up':
    case 'for-shares':
    case 'limited':
      return CLAUSE;
    // After the last item of a list only a comma lets anything follow.
    case 'list':
    case 'pick':
      return CLAUSE;
    case 'look-up':
      return tree.asked === undefined ? CLAUSE : VALUE;
    case 'binary':
      return isSum(tree) ? SUM : TERM;
    case 'spaced':
      return tree.ends === 'one' || tree.ends === 'neither' ? CLAUSE : VALUE;
    case 'negative':
    case 'part-of':
    case 'what-share':
    case 'power':
    case 'square-root':
    case 'diagonal':
    case 'circle':
    case 'triangle':
    case 'pieces':
    case 'fewest':
    case 'even-gap':
    case 'recap':
    case 'column':
    case 'row-count':
    case 'sized':
      return VALUE;
    case 'bracket':
    case 'amount':
    case 'words':
    case 'size':
    case 'yes-no':
    case 'name':
    case 'pi':
    case 'hole':
      return SLOT;
  }
}
