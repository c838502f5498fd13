// A few kills of `npm run test:kill`, and that it sees what is lost when a page says too early that something is kept.
import { expect, test } from 'vitest';
import { killed } from '../kill/kills.ts';

const few = { kills: 3, seed: 5, say: () => undefined };

test('a browser that is killed while it writes has kept all that was acknowledged', async () => {
  const outcome = await killed({ ...few, honest: true });
  expect(outcome.faults).toEqual([]);
  expect(outcome).toMatchObject({ kills: 3, lost: 0 });
  expect(outcome.fewest).toBeGreaterThanOrEqual(10);
  expect(outcome.acknowledged).toBeGreaterThanOrEqual(30);
}, 180_000);

test('a page that acknowledges before it writes is found out', async () => {
  const outcome = await killed({ ...few, honest: false });
  expect(outcome.lost).toBeGreaterThanOrEqual(1);
  expect(outcome.faults.join('\n')).toMatch(/acknowledged/);
}, 180_000);
