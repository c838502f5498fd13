// What a slab lies against, and how its fall is said of it.
import type { Given } from './given.ts';

/** What the near side is called, or null where it lies free. */
export function nearSide(given: Given): string | null {
  const side = given.word('side') ?? 'house';
  return side === 'nothing' ? null : side;
}

/** ` away from the house`; nothing where nothing is there to say it of. */
export function away(near: string | null): string {
  return near === null ? '' : ` away from the ${near}`;
}
