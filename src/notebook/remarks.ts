// The words that may stand before the colon of a remark, and what those that carry money say.
import type { CostKind } from '../language/tree.ts';
import type { MoneyLine, PriceKind, Remark, RemarkKind } from './document.ts';

const KINDS: readonly RemarkKind[] = [
  'from',
  'sensible',
  'choices',
  'cost',
  'price',
  'buy',
  'caution',
  'picture',
  'recap',
  'client',
  'note',
  'moves with',
  'by hand',
];

const COSTS: ReadonlyMap<string, CostKind> = new Map([
  ['material', 'material'],
  ['materials', 'material'],
  ['labour', 'labour'],
  ['labor', 'labour'],
  ['equipment', 'equipment'],
  ['subcontract', 'subcontract'],
  ['fee', 'fee'],
  ['fees', 'fee'],
]);

const PRICES: ReadonlyMap<string, PriceKind> = new Map([
  ['overhead', 'overhead'],
  ['contingency', 'contingency'],
  ['markup', 'markup'],
  ['discount', 'discount'],
  ['tax', 'tax'],
]);

/** The kind of remark that begins with this word, or null. */
export function remarkKind(word: string): RemarkKind | null {
  const key = word.trim().replace(/\s+/g, ' ').toLowerCase();
  return KINDS.find((kind) => kind === key) ?? null;
}

/** The text of a cell's first remark of this kind, or null. */
export function remarkText(remarks: readonly Remark[], kind: RemarkKind): string | null {
  return remarks.find((r) => r.kind === kind)?.text ?? null;
}

/** What the `cost` or `price` remark makes of a cell: null when it has neither or says a word that isn't known. */
export function moneyLine(remarks: readonly Remark[]): MoneyLine | null {
  const cost = remarkText(remarks, 'cost');
  if (cost !== null) {
    const kind = COSTS.get(cost.toLowerCase());
    return kind ? { line: 'cost', kind } : null;
  }
  const price = remarkText(remarks, 'price');
  if (price === null) return null;
  const kind = PRICES.get(price.toLowerCase());
  return kind ? { line: 'price', kind } : null;
}

/** The words a `cost` or `price` remark may say, for messages. */
export function moneyWords(line: 'cost' | 'price'): string {
  return line === 'cost'
    ? 'material, labour, equipment, subcontract or fee'
    : 'overhead, contingency, markup, discount or tax';
}

/** Where the value comes from: of a value by hand, the `from` right below it says why. */
export function sourceOf(remarks: readonly Remark[]): string | null {
  const hand = remarks.findIndex((r) => r.kind === 'by hand');
  const why = hand >= 0 ? remarks[hand + 1] : undefined;
  return why?.kind === 'from' ? why.text : remarkText(remarks, 'from');
}

/** The words that a remark may begin with. */
export const REMARK_WORDS: readonly string[] = KINDS;

/** The words a `cost` or `price` remark may say. */
export function moneyWordsOf(line: 'cost' | 'price'): readonly string[] {
  return [...(line === 'cost' ? COSTS : PRICES).values()].filter(
    (kind, i, all) => all.indexOf(kind) === i,
  );
}
