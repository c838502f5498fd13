// Marks the units that cancel in a line of numbers, so that they can be struck in sight.
import {
  type Dimension,
  PLAIN,
  hardPart,
  overDimension,
  timesDimension,
} from '../quantity/dimension.ts';
import type { Piece } from './step.ts';

/** A written figure of a product; `side` says whether it multiplies, divides or takes no part. */
export interface Factor {
  readonly text: string;
  readonly side: Side;
}

export type Side = 'over' | 'under' | 'apart';

/** Unit words of one figure on one side of its `per`, that measure one thing together (`9 ft 4 in`). */
interface Block {
  readonly dimension: Dimension;
  readonly above: boolean;
  /** Where its words stand among the pieces of their figure. */
  readonly figure: number;
  readonly words: readonly number[];
}

/** The pieces of every figure, in order, with the units struck that cancel. */
export function cancelled(
  factors: readonly Factor[],
  measures: (word: string) => Dimension | null,
): readonly (readonly Piece[])[] {
  const split = factors.map((factor) => wordsApart(factor.text));
  const blocks = split.flatMap((words, figure) => {
    const side = factors[figure]?.side ?? 'apart';
    return side === 'apart' ? [] : blocksOf(words, figure, side, measures);
  });
  const struck = new Set(
    struckBlocks(blocks).flatMap((b) => b.words.map((w) => `${b.figure}:${w}`)),
  );
  return split.map((words, figure) =>
    words.map((text, word) => ({ text, struck: struck.has(`${figure}:${word}`) })),
  );
}

/** Numbers, unit words and what stands between them, each for itself; together they are the text. */
function wordsApart(text: string): readonly string[] {
  return text
    .split(/( per |[A-Za-z$€£][A-Za-z]*(?:[ -](?!per )[A-Za-z]+)*)/)
    .filter((t) => t !== '');
}

function blocksOf(
  words: readonly string[],
  figure: number,
  side: 'over' | 'under',
  measures: (word: string) => Dimension | null,
): readonly Block[] {
  const blocks: Block[] = [];
  const turn = words.indexOf(' per ');
  for (const [place, word] of words.entries()) {
    const dimension = measures(word);
    if (dimension === null || dimension === PLAIN) continue;
    const isBelow = turn !== -1 && place > turn;
    const above = isBelow ? side === 'under' : side === 'over';
    const before = blocks.at(-1);
    // The feet and inches of one length are one thing; a second `per` starts another.
    const goesOn =
      before?.dimension === dimension && !words.slice(before.words.at(-1), place).includes(' per ');
    if (goesOn) blocks.splice(-1, 1, { ...before, words: [...before.words, place] });
    else blocks.push({ dimension, above, figure, words: [place] });
  }
  return blocks;
}

/** Like against like first; then what is left of one measure where it comes out even (ft × ft against sq ft). */
function struckBlocks(blocks: readonly Block[]): readonly Block[] {
  const struck = new Set<Block>();
  for (const block of blocks.filter((b) => b.above)) {
    const other = blocks.find(
      (b) =>
        !b.above && !struck.has(b) && b.dimension === block.dimension && b.figure !== block.figure,
    );
    if (other) struck.add(block).add(other);
  }
  const left = blocks.filter((b) => !struck.has(b));
  for (const base of new Set(left.map((b) => baseOf(b.dimension)))) {
    if (base === null) continue;
    const same = left.filter((b) => baseOf(b.dimension) === base);
    const all = same.reduce<Dimension>(
      (so, b) => (b.above ? timesDimension(so, b.dimension) : overDimension(so, b.dimension)),
      PLAIN,
    );
    if (all === PLAIN && same.length > 1) for (const block of same) struck.add(block);
  }
  return [...struck];
}

/** The one thing that is measured, whatever its power: length for a volume; null for mixtures. */
function baseOf(dimension: Dimension): string | null {
  const hard = hardPart(dimension);
  const bases = [
    ...(['length', 'mass', 'time', 'money'] as const).filter((base) => hard[base] !== 0),
    ...dimension.nouns.map((n) => `noun ${n.noun}`),
  ];
  return bases.length === 1 ? (bases[0] ?? null) : null;
}
