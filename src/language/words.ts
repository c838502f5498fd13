// The closed lists of words that the language gives a meaning.

/** Phrases by the first of their words, in their order: most words open none. */
export function byFirstWord<T extends { readonly words: readonly string[] }>(
  phrases: readonly T[],
): ReadonlyMap<string, readonly T[]> {
  const all = new Map<string, T[]>();
  for (const phrase of phrases) {
    const [first = ''] = phrase.words;
    const same = all.get(first);
    if (same) same.push(phrase);
    else all.set(first, [phrase]);
  }
  return all;
}

/** Words that work between values. A name made of one of these alone can't be a name. */
export const OPERATOR_WORDS: ReadonlySet<string> = new Set([
  'or',
  'and',
  'not',
  'is',
  'in',
  'rounded',
  'marked',
  'for',
  'as',
  'plus',
  'minus',
  'less',
  'with',
  'times',
  'by',
  'at',
  'divided',
  'multiplied',
  'over',
  'under',
  'per',
  'of',
  'on',
  'where',
  'if',
  'then',
  'otherwise',
  'else',
  'whichever',
  'every',
  'along',
  'around',
  'across',
  'from',
  'x',
  'split',
  '@',
  '+',
  '-',
  '×',
  '÷',
  '/',
  '(',
  ')',
  ',',
  '=',
]);

/** What may follow a written percent, for the reader. */
export const SHARE_LABELS: ReadonlySet<string> = new Set([
  'waste',
  'wastage',
  'breakage',
  'breakages',
  'extra',
  'overage',
  'tax',
  'overhead',
  'profit',
  'contingency',
  'discount',
  'compaction',
  'swell',
  'allowance',
  'deposit',
  'fee',
  'markup',
  'commission',
  'retention',
  'burden',
  'vat',
  'gst',
  'hst',
  'pst',
]);
