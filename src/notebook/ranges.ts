// What a person reads and writes of a given's range: its two ends in words, and the text that is kept.
import { type GivenRange, type RangeEnd, saysWhichEnd } from '../engine/ranges.ts';
import type { Reading } from '../language/reading.ts';
import { wordsOf } from '../language/range-ends.ts';
import { type Shown, type ShowSettings, show } from '../quantity/show.ts';

export interface ShownRange {
  readonly best: Shown;
  readonly worst: Shown;
  /** `12 hours at best, 16 hours at worst`. */
  readonly text: string;
}

export function showRange({ best, worst, plain }: GivenRange, settings: ShowSettings): ShownRange {
  const end = ({ value, holds }: RangeEnd): Shown => show(value, holds, settings);
  const [low, high] = [end(best), end(worst)];
  const text =
    plain === 'first'
      ? `${low.text} at best, ${high.text} at worst`
      : `the middle of ${low.text} at best and ${high.text} at worst`;
  return { best: low, worst: high, text };
}

/** What is kept of a formula that a person writes: a range without words becomes one with them. */
export function textToKeep(reading: Reading, typed: string): string {
  const isShort = reading.tree.kind === 'range' && !saysWhichEnd(typed);
  return isShort && reading.checked ? reading.sentence : typed;
}

/** What stands in a line that is opened by typing this: over a range an amount takes the place of the plain value. */
export function typedOver(reading: Reading, typed: string): string {
  return /^[-−$€£.\d½¼¾⅓⅔⅛⅜⅝⅞]/u.test(typed) ? withPlainValue(reading, typed) : typed;
}

/** Another plain value in place of the one a given has; the ends of its range stay. */
export function withPlainValue({ tree, checked }: Reading, plain: string): string {
  if (tree.kind !== 'range' || !checked) return plain;
  return `${plain}, ${wordsOf(tree.best)} at best, ${wordsOf(tree.worst)} at worst`;
}
