// A watched or compared result in the words of the page.
import type { Moved, Result, Stood } from '../moves-it/stood.ts';
import { signed } from '../moves-it/stood.ts';
import type { Door } from './session.ts';
import { DOES_NOT_HOLD, HOLDS } from './value-words.ts';

/** What it came to; what is left out of it is told apart. */
export function stoodSaid(door: Door, result: Result, { text }: Stood): string {
  if (text === null) return 'not yet known';
  if (result.of === 'cell' && door.state(result.cell).kind === 'check') return checked(text);
  return text.split(' so far; ')[0] ?? text;
}

/** `+2 bags`, `as it was`; of what is no number what it was before. */
export function movedSaid(
  door: Door,
  result: Result,
  moved: Moved,
  before: Stood,
  still: string,
): string {
  if (moved.moves === 'not') return still;
  return signed(moved) ?? `was ${stoodSaid(door, result, before)}`;
}

/** The same as it is read aloud: `2 bags more`. */
export function movedHeard(
  door: Door,
  result: Result,
  { moves, by }: Moved,
  before: Stood,
): string {
  if (moves === 'not') return 'as it was';
  if (by !== null && moves === 'up') return `${by} more`;
  if (by !== null && moves === 'down') return `${by} less`;
  return `was ${stoodSaid(door, result, before)}`;
}

function checked(text: string): string {
  if (text === 'yes') return HOLDS;
  return text === 'no' ? DOES_NOT_HOLD : text;
}
