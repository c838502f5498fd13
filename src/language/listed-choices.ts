// What may be chosen for a cell of text, and which of it stands in a formula.
import type { CellId } from './tree.ts';
import type { Spot } from '../words/spot.ts';
import { Trie } from './trie.ts';
import { type Token, tokensOf } from './lexer.ts';

/** Where the choices of a cell come from; the spots are in what its remark says. */
export interface ChoiceColumn {
  readonly from: CellId;
  readonly texts: readonly string[];
  readonly spots: { readonly column: Spot; readonly table: Spot };
}

export function listedChoices(text: string): readonly string[] {
  return text
    .split(',')
    .map((choice) => choice.trim())
    .filter((choice) => choice !== '');
}

const choiceTries = new WeakMap<readonly string[], Trie<string>>();

/** The longest of these texts that begins here. */
export function choiceAt(
  tokens: readonly Token[],
  at: number,
  texts: readonly string[],
): { readonly length: number; readonly text: string } | null {
  let trie = choiceTries.get(texts);
  if (!trie) {
    trie = new Trie<string>();
    for (const text of texts) {
      const words = tokensOf(text)
        .slice(0, -1)
        .map((t) => t.text);
      if (words.length > 0) trie.add(words, text);
    }
    choiceTries.set(texts, trie);
  }
  const found = trie.longest(tokens, at);
  const text = found?.values[0];
  return found && text !== undefined ? { length: found.length, text } : null;
}
