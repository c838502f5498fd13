import { describe, expect, it } from 'vitest';
import { bench, nodeOf } from './bench.ts';

const at = bench(
  'Slab length: 12 ft',
  'Broken: 12 ft plus $4',
  'Also broken: broken by 2 ft',
  'Later: ?',
  'Later hours: ? hours',
  'Later still: ?',
  'Steep: yes',
);

describe('names', () => {
  it('hold what their cells hold', () => {
    expect(nodeOf(at, 'slab length').holds).toBe(at.holdsOf('Slab length'));
  });

  it('that hold nothing are waited for, each once, with no problem of its own', () => {
    const { checked, problems, waitsFor } = at.read('broken plus also broken plus broken');
    expect(checked).toBeNull();
    expect(problems).toEqual([]);
    expect(waitsFor).toEqual([2, 3]);
  });

  it('beside a mistake are not waited for', () => {
    const { problems, waitsFor } = at.read('(slab length plus $4) times broken');
    expect(problems.map((p) => p.code)).toEqual(['unit-clash']);
    expect(waitsFor).toEqual([]);
  });

  it('of yes or no work as conditions', () => {
    expect(at.shown('$5 where steep, otherwise $6')).toBe('$5.00');
  });
});

describe('what is not yet known', () => {
  it('waits with a measure when its unit is known', () => {
    expect(at.shown('later hours at $50 per hour')).toBe('not yet known');
    expect(nodeOf(at, 'later hours at $50 per hour').holds.measure).toMatchObject({
      kind: 'amount',
    });
  });

  it('leaves all that rests on it open, for every given that it waits for', () => {
    const node = nodeOf(at, '(later times slab length plus $4) by later still');
    expect(node.holds.measure.kind).toBe('open');
    expect(node.plan).toEqual({
      op: 'add',
      left: { op: 'cell', cell: 4 },
      right: { op: 'cell', cell: 6 },
    });
  });
});
