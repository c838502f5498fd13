// A few kills of `npm run test:kill`, and that it sees what is lost when a page says too early that something is kept.
import { expect, test } from 'vitest';
import { killed } from '../kill/kills.ts';
import { PHASES } from '../kill/phases.ts';

const few = { seed: 5, say: () => undefined };
/** At each phase, and twice at any moment. */
const EACH = PHASES.length + 2;

test('a browser that is killed while it writes has kept all that was acknowledged', async () => {
  const outcome = await killed({ ...few, kills: EACH, way: 'right' });
  expect(outcome.faults).toEqual([]);
  expect([...outcome.phases.keys()]).toEqual([...PHASES, 'any']);
  expect(outcome).toMatchObject({ kills: EACH, lost: 0 });
  expect(outcome.fewest).toBeGreaterThanOrEqual(10);
  expect(outcome.acknowledged).toBeGreaterThanOrEqual(10 * EACH);
}, 180_000);

test('a page that acknowledges before it writes is found out', async () => {
  const outcome = await killed({ ...few, kills: 3, way: 'too-early' });
  expect(outcome.lost).toBeGreaterThanOrEqual(1);
  expect(outcome.faults.join('\n')).toMatch(/acknowledged/);
}, 180_000);

test('a page that brings a whole job in by halves is found out', async () => {
  const outcome = await killed({ ...few, kills: EACH, way: 'by-halves' });
  expect(outcome.faults.join('\n')).toContain('is there by half');
}, 180_000);
