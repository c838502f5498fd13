// Estimate against actual: cases worked by hand, and that parts, kinds and the whole always agree.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CostKind } from '../../src/language/tree.ts';
import { COST_KINDS } from '../../src/notebook/recap.ts';
import { type Figures, against, warnings } from '../../src/record/against.ts';
import { type ByKind, eachKind } from '../../src/record/budget.ts';
import {
  OUTSIDE,
  type PartNamed,
  type Recorded,
  centsFor,
  hoursText,
} from '../../src/record/entry.ts';
import { sharesOf } from '../../src/record/shares.ts';
import { standingOf } from '../../src/record/standing.ts';
import { LANDING, RAILING, budget, correction, entry, progress, said } from './records.ts';

/** Landing: material $259.20, labour $480.00; railing: material $610.00, labour $720.00. Together $2,069.20. */
const BID = budget(
  [LANDING, { material: 25_920n, labour: 48_000n }],
  [RAILING, { material: 61_000n, labour: 72_000n }],
);

/** `estimate actual toGo forecast over` in cents. */
const row = ({ estimate, actual, toGo, forecast, over }: Figures): string =>
  [estimate, actual, toGo, forecast, over].join(' ');

const held = (...records: readonly Recorded[]) => against(BID, standingOf(records));

describe('what a line of the record costs', () => {
  test.for([
    ['amount', { by: 'amount', amount: '-12.34' }, -1234n],
    ['7.5 hours at $62.50', { by: 'time', minutes: '450', rate: '62.50' }, 46_875n],
    // 7 1/3 hours at $61.00 are $447.333…
    ['7:20 at $61.00', { by: 'time', minutes: '440', rate: '61.00' }, 44_733n],
    // A quarter of $0.50 is half a cent more than 12: away from nothing.
    ['15 minutes at $0.50', { by: 'time', minutes: '15', rate: '0.50' }, 13n],
    ['a rate with more places', { by: 'time', minutes: '60', rate: '62.3750' }, 6_238n],
  ] as const)('%s', ([, cost, cents]) => {
    expect(centsFor(cost)).toBe(cents);
  });

  test('hours are shown to two places', () => {
    expect([hoursText('440'), hoursText('450'), hoursText('60')]).toEqual(['7.33', '7.5', '1']);
  });
});

describe('estimate against actual', () => {
  test('without an entry everything is still to go', () => {
    const { whole, parts } = held();
    expect(parts.map(({ part }) => part.name)).toEqual(['Landing', 'Railing']);
    expect(row(whole)).toBe('206920 0 206920 206920 0');
  });

  test('where nobody tells how much is done, the rest of the estimate is to go, and what is over stays over', () => {
    const { parts, kinds, whole } = held(
      entry('a', said('203.04')),
      entry('b', said(['9', '60.00'])),
    );
    const [landing] = parts;
    expect(row(landing.kinds.material)).toBe('25920 20304 5616 25920 0');
    // 9 hours at $60 are $540, $60 more than the estimate.
    expect(row(landing.kinds.labour)).toBe('48000 54000 0 54000 6000');
    expect(row(landing.whole)).toBe('73920 74304 5616 79920 6000');
    expect(row(kinds.material)).toBe('86920 20304 66616 86920 0');
    expect(row(whole)).toBe('206920 74304 138616 212920 6000');
  });

  test('a told share done says what it comes to in the end: spent, divided by the share', () => {
    const { parts } = held(
      entry('a', said(['9', '60.00'])),
      progress('p', LANDING, null, '75'),
      entry('b', said('200.00', { part: RAILING })),
      progress('q', RAILING, 'material', '30'),
    );
    // $540 ÷ 75 % = $720. Of material nothing was spent yet: its estimate stands.
    expect(row(parts[0].kinds.labour)).toBe('48000 54000 18000 72000 24000');
    expect(row(parts[0].kinds.material)).toBe('25920 0 25920 25920 0');
    // $200 ÷ 30 % = $666.666…, to the cent $666.67.
    expect(row(parts[1].kinds.material)).toBe('61000 20000 46667 66667 5667');
    expect(parts[1].done).toMatchObject({ material: '30', labour: null });
  });

  test('what is done comes to what was spent, also where nothing was', () => {
    const { parts } = held(entry('a', said('100.00')), progress('p', LANDING, null, '100'));
    expect(row(parts[0].whole)).toBe('73920 10000 0 10000 -63920');
  });

  test('the share of the latest day counts, of one day the one told last, of a kind or of all', () => {
    const done = (...records: readonly Recorded[]) => held(...records).parts[0].done;
    const late = progress('a', LANDING, 'labour', '80', '2026-05-09');
    const early = progress('b', LANDING, null, '20', '2026-05-02');
    expect(done(late, early)).toMatchObject({ labour: '80', material: '20' });
    const same = progress('c', LANDING, null, '90', '2026-05-09');
    expect(done(late, early, same)).toMatchObject({ labour: '90', material: '90' });
  });

  test('what comes back is taken off', () => {
    const { parts } = held(entry('a', said('336.96')), entry('b', said('-220.32')));
    expect(row(parts[0].kinds.material)).toBe('25920 11664 14256 25920 0');
  });

  test('a part keeps its entries when it is renamed; work outside the estimate has rows of its own', () => {
    const { parts, whole } = held(
      entry('a', said('10.00', { part: { key: 'k-1', name: 'Slab' } })),
      entry('b', said('20.00', { part: { key: 'other', name: 'landing' } })),
      entry('c', said('5.00', { part: OUTSIDE })),
      entry('d', said('7.00', { part: { key: 'k-9', name: 'Fence' } })),
      entry('e', said('8.00', { part: { key: 'k-9', name: 'Fence by the gate' } })),
    );
    expect(
      parts.map(({ part, inEstimate, whole: each }) => [part.name, inEstimate, each.actual]),
    ).toEqual([
      ['Landing', true, 3000n],
      ['Railing', true, 0n],
      ['Not in the estimate', false, 500n],
      ['Fence', false, 1500n],
    ]);
    expect(whole.over).toBe(2000n);
  });

  test('what was taken out, or is in another currency, stands in no sum', () => {
    const { whole, otherCurrency } = held(
      entry('a', said('10.00')),
      correction('b', 'a', null),
      entry('c', said('10.00', { currency: '€' })),
    );
    expect([whole.actual, otherCurrency]).toEqual([0n, 1]);
  });
});

describe('a warning', () => {
  const over = held(
    entry('a', said(['9', '60.00'])),
    entry('b', said('611.00', { part: RAILING })),
  );

  test('comes where the forecast is over by more than was chosen, of the whole first', () => {
    expect(warnings(over, '0.00')).toEqual([
      { part: null, over: 6100n },
      { part: 'Landing', over: 6000n },
      { part: 'Railing', over: 100n },
    ]);
    expect(warnings(over, '60.00')).toEqual([{ part: null, over: 6100n }]);
  });

  test('does not come at the very amount', () => {
    expect(warnings(over, '61.00')).toEqual([]);
    expect(warnings(over, '60.99')).toHaveLength(1);
  });
});

describe('shares of the kinds', () => {
  test('add up to a hundred percent', () => {
    const thirds = eachKind((kind) => (kind === 'fee' || kind === 'equipment' ? 0n : 100n));
    expect(sharesOf(thirds)).toEqual({
      material: 33.4,
      labour: 33.3,
      equipment: 0,
      subcontract: 33.3,
      fee: 0,
    });
  });

  test('say nothing where the sum is nothing or something came back', () => {
    expect(sharesOf(eachKind(() => 0n))).toBeNull();
    expect(sharesOf(eachKind((kind) => (kind === 'fee' ? -1n : 10n)))).toBeNull();
  });
});

const PARTS: readonly PartNamed[] = [LANDING, RAILING, OUTSIDE, { key: 'k-7', name: 'Gate' }];

const happened = fc.oneof(
  fc.record({
    kind: fc.constant('entry'),
    part: fc.constantFrom(...PARTS),
    cost: fc.constantFrom<CostKind>(...COST_KINDS),
    cents: fc.integer({ min: -50_000, max: 500_000 }),
  }),
  fc.record({
    kind: fc.constant('time'),
    part: fc.constantFrom(...PARTS),
    cost: fc.constantFrom<CostKind>(...COST_KINDS),
    cents: fc.integer({ min: 1, max: 4000 }),
  }),
  fc.record({
    kind: fc.constant('done'),
    part: fc.constantFrom(...PARTS),
    cost: fc.constantFrom<CostKind>(...COST_KINDS),
    cents: fc.integer({ min: 0, max: 10_000 }),
  }),
);

describe('on any record', () => {
  test('the parts, the kinds and the whole come to the same, to the cent', () => {
    fc.assert(
      fc.property(fc.array(happened, { maxLength: 60 }), (all) => {
        let spent = 0n;
        const records = all.map(({ kind, part, cost, cents }, i): Recorded => {
          if (kind === 'done')
            return progress(`${i}`, part, i % 2 ? cost : null, hundredths(cents));
          const says =
            kind === 'entry'
              ? said(hundredths(cents), { part, kind: cost })
              : said([String(cents / 60), '61.37'], { part, kind: cost });
          spent += centsFor(says.cost);
          return entry(`${i}`, says);
        });
        const { parts, kinds, whole } = held(...records);
        const sum = (rows: readonly Figures[], of: keyof Figures): bigint =>
          rows.reduce((one, each) => one + each[of], 0n);
        const all5: (by: ByKind<Figures>) => readonly Figures[] = (by) =>
          COST_KINDS.map((k) => by[k]);
        for (const of of ['estimate', 'actual', 'toGo', 'forecast', 'over'] as const) {
          expect(
            sum(
              parts.map((each) => each.whole),
              of,
            ),
          ).toBe(whole[of]);
          expect(sum(all5(kinds), of)).toBe(whole[of]);
          for (const each of parts) expect(sum(all5(each.kinds), of)).toBe(each.whole[of]);
        }
        expect(whole.actual).toBe(spent);
        expect(whole.forecast).toBe(whole.actual + whole.toGo);
        for (const each of parts.flatMap((part) => all5(part.kinds))) {
          if (each.actual >= 0n) expect(each.toGo).toBeGreaterThanOrEqual(0n);
        }
        const shares = sharesOf(eachKind((kind) => kinds[kind].actual));
        if (shares) {
          const tenths = COST_KINDS.reduce(
            (all10, kind) => all10 + Math.round(shares[kind] * 10),
            0,
          );
          expect(tenths).toBe(1000);
        }
      }),
      { numRuns: 300 },
    );
  });
});

function hundredths(cents: number): string {
  const size = Math.abs(cents);
  return `${cents < 0 ? '-' : ''}${Math.floor(size / 100)}.${String(size % 100).padStart(2, '0')}`;
}
