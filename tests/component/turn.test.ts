// Which of several pages writes: with the browser's own locks, and where there are none by asking.
import { describe, expect, test } from 'vitest';
import { type Locks, type Role, Turn, type TurnSettings } from '../../src/store/turn.ts';

/** Pages on one notebook. */
function pages(locks: Locks | undefined) {
  const id = crypto.randomUUID();
  let count = 0;
  return async (own: Partial<TurnSettings> = {}) => {
    const roles: Role[] = [];
    const handed: string[] = [];
    const turn = new Turn(id, {
      locks,
      channel: new BroadcastChannel(`turn ${id}`),
      page: `page ${++count}`,
      patience: (call) => {
        const timer = setTimeout(call, 300);
        return () => clearTimeout(timer);
      },
      changed: (role) => roles.push(role),
      handOver: () => {
        handed.push('all');
        return Promise.resolve(true);
      },
      ...own,
    });
    await turn.begin();
    return { turn, roles, handed };
  };
}

const role = ({ turn }: { readonly turn: Turn }) => expect.poll(() => turn.role);

for (const [name, locks] of [
  ['with locks', navigator.locks],
  ['without locks', undefined],
] as const) {
  describe(`a page on a notebook, ${name}`, () => {
    test('writes until another one takes over, and follows then', async () => {
      const page = pages(locks);
      const [one, other] = [await page(), await page()];
      await role(one).toBe('writes');
      await role(other).toBe('follows');
      expect(await other.turn.takeOver()).toBe('taken');
      expect(one.handed).toEqual(['all']);
      expect([one.turn.role, other.turn.role]).toEqual(['follows', 'writes']);
      expect(await one.turn.takeOver()).toBe('taken');
      await role(other).toBe('follows');
    });

    test('does not let go of what it can not keep', async () => {
      const page = pages(locks);
      const one = await page({ handOver: () => Promise.resolve(false) });
      const other = await page();
      await role(other).toBe('follows');
      expect(await other.turn.takeOver()).toBe('refused');
      expect([one.turn.role, other.turn.role]).toEqual(['writes', 'follows']);
    });

    test('that does not answer is not waited for without end', async () => {
      const page = pages(locks);
      const one = await page({ handOver: () => new Promise(() => undefined) });
      const other = await page();
      await role(other).toBe('follows');
      expect(await other.turn.takeOver()).toBe('taken');
      await role(one).toBe('follows');
    });

    test('is one of several of which only one writes, whoever takes over', async () => {
      const page = pages(locks);
      const all = [await page(), await page(), await page()];
      for (const n of [2, 1, 0, 2]) {
        await role(all[n]).toBe('follows');
        await all[n].turn.takeOver();
        await expect
          .poll(() => all.map(({ turn }) => turn.role))
          .toEqual(all.map((_, i) => (i === n ? 'writes' : 'follows')));
      }
    });
  });
}

describe('with locks', () => {
  test('a page takes its turn when the one that writes is gone, and not once it is gone itself', async () => {
    const page = pages(navigator.locks);
    const [one, two, three] = [await page(), await page(), await page()];
    await role(three).toBe('follows');
    two.turn.close();
    one.turn.close();
    await role(three).toBe('writes');
    expect(two.turn.role).toBe('follows');
  });
});
