// Whether a page is alone on a notebook, with the browser's own locks.
import { describe, expect, test } from 'vitest';
import { aloneOn } from '../../src/store/alone.ts';

describe('a page on a notebook', () => {
  test('is alone until another one comes, and the other one is not', async () => {
    const id = crypto.randomUUID();
    const [one, other] = [aloneOn(navigator.locks), aloneOn(navigator.locks)];
    expect(await one(id)).toBe(true);
    expect(await other(id)).toBe(false);
  });

  test('stays alone when it asks again', async () => {
    const id = crypto.randomUUID();
    const one = aloneOn(navigator.locks);
    await one(id);
    expect(await one(id)).toBe(true);
  });

  test('gives the notebook up when it goes on to another one', async () => {
    const id = crypto.randomUUID();
    const [one, other] = [aloneOn(navigator.locks), aloneOn(navigator.locks)];
    await one(id);
    await one(crypto.randomUUID());
    expect(await other(id)).toBe(true);
  });

  test('takes its turn when the other one has left', async () => {
    const id = crypto.randomUUID();
    const [one, other, third] = [1, 2, 3].map(() => aloneOn(navigator.locks));
    await one?.(id);
    await other?.(id);
    await one?.(crypto.randomUUID());
    expect(await third?.(id)).toBe(false);
  });

  test('that left while it waited for its turn holds nothing', async () => {
    const id = crypto.randomUUID();
    const [one, other, third] = [1, 2, 3].map(() => aloneOn(navigator.locks));
    await one?.(id);
    await other?.(id);
    await other?.(crypto.randomUUID());
    await one?.(crypto.randomUUID());
    expect(await third?.(id)).toBe(true);
  });

  test('can’t tell where the browser has no locks', async () => {
    expect(await aloneOn(undefined)('any')).toBeNull();
  });
});
