// What a picture is drawn from: sizes in inches with the words in which the cells say them.

/** A size. What is said is what the cell shows, so that a dimension on the drawing is the cell's own. */
export interface Size {
  readonly inches: number;
  readonly said: string;
}

export type GivenValue =
  | { readonly kind: 'sizes'; readonly sizes: readonly Size[] }
  | { readonly kind: 'counts'; readonly counts: readonly number[] }
  /** Rise for one of run. */
  | { readonly kind: 'slope'; readonly ratio: number; readonly said: string }
  | { readonly kind: 'word'; readonly word: string };

/** Everything a picture was told. Asking for what has to be there and is not is a programmer's mistake. */
export class Given {
  readonly #values: ReadonlyMap<string, GivenValue>;
  /** Says a size that no cell holds, such as a sum, in the units of the others. */
  readonly say: (inches: number) => string;
  readonly measures: 'us' | 'metric';

  constructor(
    values: ReadonlyMap<string, GivenValue>,
    say: (inches: number) => string,
    measures: 'us' | 'metric',
  ) {
    this.#values = values;
    this.say = say;
    this.measures = measures;
  }

  sizes(slot: string): readonly Size[] {
    const value = this.#values.get(slot);
    return value?.kind === 'sizes' ? value.sizes : [];
  }

  size(slot: string): Size {
    const size = this.maybe(slot);
    if (!size) throw new Error(`the picture was told no ${slot}`);
    return size;
  }

  maybe(slot: string): Size | null {
    return this.sizes(slot)[0] ?? null;
  }

  /** A size of what there may be none of: told as nothing it is not there. */
  some(slot: string): Size | null {
    const size = this.maybe(slot);
    return size && size.inches > 0 ? size : null;
  }

  /** In inches; `otherwise` where it was not told. */
  inches(slot: string, otherwise: number): number {
    return this.maybe(slot)?.inches ?? otherwise;
  }

  counts(slot: string): readonly number[] {
    const value = this.#values.get(slot);
    return value?.kind === 'counts' ? value.counts : [];
  }

  count(slot: string): number | null {
    return this.counts(slot)[0] ?? null;
  }

  /** Null for what is level, told or not. */
  slope(slot: string): { readonly ratio: number; readonly said: string } | null {
    const value = this.#values.get(slot);
    return value?.kind === 'slope' && value.ratio > 0 ? value : null;
  }

  word(slot: string): string | null {
    const value = this.#values.get(slot);
    return value?.kind === 'word' ? value.word : null;
  }

  sized(inches: number): Size {
    return { inches, said: this.say(inches) };
  }
}

/** More than this of anything makes a drawing black, and a page slow. */
export const MOST_DRAWN = 600;

/** 0, spacing, 2 × spacing … up to the length; nothing where that would be more than can be drawn. */
export function everyAlong(spacing: number, length: number): readonly number[] {
  const many = Math.floor(length / spacing + 1e-9) + 1;
  return many > MOST_DRAWN ? [] : Array.from({ length: many }, (_, i) => i * spacing);
}

export function total(sizes: readonly Size[]): number {
  return sizes.reduce((sum, { inches }) => sum + inches, 0);
}

/** `a, b and c`. */
export function together(words: readonly string[]): string {
  return words.length < 2
    ? (words[0] ?? '')
    : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** `1 board`, `12 boards`. */
export function many(count: number, one: string): string {
  return `${count} ${count === 1 ? one : `${one}s`}`;
}
