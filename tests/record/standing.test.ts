// Corrections stand beside what they correct; nothing that was entered is ever lost.
import { describe, expect, test } from 'vitest';
import type { Recorded } from '../../src/record/entry.ts';
import { standingOf } from '../../src/record/standing.ts';
import { correction, entry, said } from './records.ts';

const PICTURE = { name: 'receipt.png', url: 'data:image/png;base64,iVBORw0KGgo=' };
const first = entry('a', said('10.00', { receipt: PICTURE }));
const amounts = (...records: readonly Recorded[]) =>
  standingOf(records).entries.map(({ says }) =>
    says?.cost.by === 'amount' ? says.cost.amount : null,
  );

describe('a correction', () => {
  test('stands in place of the entry, which stays as it was entered', () => {
    const { entries } = standingOf([
      first,
      correction('b', 'a', { ...said('12.00'), receipt: 'same' }),
    ]);
    const [one] = entries;
    expect(one.says).toEqual(said('12.00', { receipt: PICTURE }));
    expect(one.entry).toBe(first);
    expect([one.last, one.twice, one.corrections.length]).toEqual(['b', false, 1]);
  });

  test('is corrected again by pointing at it', () => {
    const b = correction('b', 'a', said('12.00'));
    expect(amounts(first, b, correction('c', 'b', said('13.00')))).toEqual(['13.00']);
  });

  test('takes an entry out, and another puts it back with its picture', () => {
    const out = correction('b', 'a', null);
    expect(amounts(first, out)).toEqual([null]);
    const back = correction('c', 'b', { ...said('10.00'), receipt: 'same' });
    expect(standingOf([first, out, back]).entries[0].says?.receipt).toBe(PICTURE);
  });

  test('made twice of the same state says so, and the later stands', () => {
    const { entries } = standingOf([
      first,
      correction('b', 'a', said('12.00')),
      correction('c', 'a', said('13.00')),
    ]);
    expect([entries[0].twice, entries[0].last]).toEqual([true, 'c']);
    expect(entries[0].corrections).toHaveLength(2);
  });

  test('of what is not here, or comes later, is a stray that changes nothing', () => {
    const early = correction('b', 'a', null);
    const { entries, strays } = standingOf([early, first, correction('c', 'nowhere', null)]);
    expect(entries[0].says).toBe(first.says);
    expect(strays.map(({ id }) => id)).toEqual(['b', 'c']);
  });

  test('can not point at itself, and a number that came twice counts once', () => {
    const { entries, strays } = standingOf([
      first,
      entry('a', said('99.00')),
      correction('d', 'd', null),
    ]);
    expect(entries).toHaveLength(1);
    expect(strays.map(({ id }) => id)).toEqual(['a', 'd']);
  });
});

test('what is watched is what was chosen last', () => {
  const watch = (id: string, over: string): Recorded => ({
    v: 1,
    id,
    entered: '2026-05-04',
    record: 'watch',
    budget: null,
    over,
  });
  expect(standingOf([watch('a', '1.00'), watch('b', '2.00')]).watch?.over).toBe('2.00');
  expect(standingOf([]).watch).toBeNull();
});
