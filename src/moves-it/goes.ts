// Work in short goes: it stops now and then, says how much of it is done, 0 to 1, and goes on when it is asked again.
export type Goes<T> = Generator<number, T>;

/** All of it at once. */
export function inOneGo<T>(goes: Goes<T>): T {
  for (;;) {
    const went = goes.next();
    if (went.done) return went.value;
  }
}
