// Long work in goes of some milliseconds, with a breath between them in which drawing, keys and messages come to their turn.
import type { Goes } from '../moves-it/goes.ts';

export interface GoingOn {
  /** As long as one go may last, in milliseconds; it lasts longer where a single step of the work does. */
  readonly short: number;
  /** Asked before each go. */
  readonly goesOn: () => boolean;
  /** How much is done, 0 to 1. */
  readonly going: (done: number) => void;
}

/** Null: it was not gone on with. */
export async function inShortGoes<T>(
  goes: Goes<T>,
  { short, goesOn, going }: GoingOn,
): Promise<T | null> {
  for (;;) {
    await breath();
    if (!goesOn()) return null;
    const until = performance.now() + short;
    let went = goes.next();
    while (!went.done && performance.now() < until) went = goes.next();
    if (went.done) return went.value;
    going(went.value);
  }
}

function breath(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}
