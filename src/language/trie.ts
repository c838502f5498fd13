// Phrases by their words: the longest one that begins at a token is found in one walk.
import type { Token } from './lexer.ts';

interface Node<T> {
  readonly next: Map<string, Node<T>>;
  readonly here: T[];
}

export interface Found<T> {
  /** How many tokens it takes. */
  readonly length: number;
  readonly values: readonly T[];
}

const NONE: readonly never[] = [];

export class Trie<T> {
  readonly #root: Node<T> = { next: new Map(), here: [] };

  add(words: readonly string[], value: T): void {
    let node = this.#root;
    for (const word of words) {
      let next = node.next.get(word);
      if (!next) node.next.set(word, (next = { next: new Map(), here: [] }));
      node = next;
    }
    node.here.push(value);
  }

  /** Takes a value away again; branches left bare are pruned. */
  remove(words: readonly string[], value: T): void {
    const path: Node<T>[] = [this.#root];
    for (const word of words) {
      const next = path.at(-1)?.next.get(word);
      if (!next) return;
      path.push(next);
    }
    const last = path.at(-1);
    const index = last?.here.indexOf(value) ?? -1;
    if (index >= 0) last?.here.splice(index, 1);
    for (let i = words.length; i > 0; i--) {
      const node = path[i];
      if (!node || node.here.length > 0 || node.next.size > 0) return;
      path[i - 1]?.next.delete(words[i - 1] ?? '');
    }
  }

  /** Every phrase that begins at `at`, longest first; at most `most` words are looked at. */
  all(tokens: readonly Token[], at: number): readonly Found<T>[] {
    let found: Found<T>[] | null = null;
    let node: Node<T> | undefined = this.#root;
    for (let i = at; node; i++) {
      const token = tokens[i];
      if (!token || token.kind === 'end' || token.kind === 'quoted') break;
      node = node.next.get(token.text);
      if (!node || node.here.length === 0) continue;
      const here = { length: i - at + 1, values: node.here };
      if (found) found.unshift(here);
      else found = [here];
    }
    return found ?? NONE;
  }

  longest(tokens: readonly Token[], at: number): Found<T> | null {
    let best: Found<T> | null = null;
    let node: Node<T> | undefined = this.#root;
    for (let i = at; node; i++) {
      const token = tokens[i];
      if (!token || token.kind === 'end' || token.kind === 'quoted') break;
      node = node.next.get(token.text);
      if (node && node.here.length > 0) best = { length: i - at + 1, values: node.here };
    }
    return best;
  }
}
