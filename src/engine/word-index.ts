// Which formulas hold which words, so that a name that comes or goes leads to the few formulas it could
// matter to. Formulas that can't be read are in it too: a new name may be what they wait for.
import type { Slot } from './graph.ts';

export class WordIndex {
  readonly #numbers = new Map<string, number>();
  /** By word, the formulas that hold it, in no order. */
  readonly #holders: Slot[][] = [];
  /** By formula, the words it holds. */
  readonly #words: (readonly number[])[] = [];

  /** What a formula holds from now on; what it held before is forgotten. */
  put(slot: Slot, words: Iterable<string>): void {
    const before = this.#words[slot] ?? NO_WORDS;
    const now = this.#numbersOf(words);
    for (const word of before) if (!now.includes(word)) this.#forget(word, slot);
    for (const word of now) if (!before.includes(word)) this.#holders[word]?.push(slot);
    this.#words[slot] = now;
  }

  drop(slot: Slot): void {
    this.put(slot, []);
  }

  /** The formulas that hold all these words, in any order. Null where none of them is a word to go by. */
  holding(words: readonly string[]): readonly Slot[] | null {
    const wanted: number[] = [];
    for (const word of words.filter(isIndexed)) {
      const number = this.#numbers.get(word);
      if (number === undefined) return [];
      wanted.push(number);
    }
    let fewest: readonly Slot[] | null = null;
    for (const word of wanted) {
      const holders = this.#holders[word] ?? [];
      if (fewest === null || holders.length < fewest.length) fewest = holders;
    }
    return (
      fewest?.filter((slot) => wanted.every((word) => this.#words[slot]?.includes(word))) ?? null
    );
  }

  #numbersOf(words: Iterable<string>): readonly number[] {
    const numbers: number[] = [];
    for (const word of words) {
      let number = this.#numbers.get(word);
      if (number === undefined) {
        number = this.#holders.length;
        this.#numbers.set(word, number);
        this.#holders.push([]);
      }
      if (!numbers.includes(number)) numbers.push(number);
    }
    // A list no longer than it has to be: there is one a cell.
    return numbers.slice();
  }

  #forget(word: number, slot: Slot): void {
    const holders = this.#holders[word] ?? [];
    const at = holders.indexOf(slot);
    const last = holders.pop();
    if (at < holders.length && last !== undefined) holders[at] = last;
  }
}

const NO_WORDS: readonly number[] = [];

/** Numbers and marks stand in nearly every formula: they are not looked for. */
function isIndexed(word: string): boolean {
  return /^[\p{L}_]/u.test(word);
}
