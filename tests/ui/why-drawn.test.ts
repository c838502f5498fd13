// The pieces of a difference told apart and laid out as steps; no browser is needed for that.
import { describe, expect, test } from 'vitest';
import { chartSteps } from '../../src/ui/step-chart.ts';
import { kindSums, whyKind } from '../../src/ui/why-kinds.ts';
import { contractHere } from '../../src/ui/contract-here.ts';
import { dayShown } from '../../src/ui/day-words.ts';
import { NO_VERSIONS } from '../../src/store/versions-shelf.ts';
import { centsOf } from '../../src/versions/cents.ts';
import { changeOrder } from '../../src/versions/change-order.ts';
import { compare } from '../../src/versions/compare.ts';
import { type Happened, logged } from '../../src/versions/standing.ts';
import { stepsOf } from '../../src/versions/say-change.ts';
import { versionOf } from '../../src/versions/version.ts';
import { whyMoved } from '../../src/versions/why-moved.ts';
import { cellNamed, done } from '../notebook/cells.ts';
import { edited, frozen, opened } from '../versions/sides.ts';

const TEXT =
  '# Kestrel Court\n\n## Landing\n\n- Length: 10 ft\n- Price: $5 per ft\n- Kerb: length at price\n  - cost: material\n' +
  '- Extra: $10\n  - cost: fee\n';

function weighed(versions: ReturnType<typeof edited>) {
  const comparison = compare(...versions);
  const why = whyMoved(comparison);
  if (!why) throw new Error('in different currencies');
  return { why, steps: stepsOf(why, comparison), comparison };
}

describe('the kinds of what was changed', () => {
  const { why, comparison } = weighed(
    edited(TEXT, (e, cell) => {
      done(e.setFormula(cell('Length').id, '12 ft'));
      done(e.setFormula(cell('Price').id, '$6 per ft'));
      done(e.setFormula(cell('Kerb').id, 'length at price, plus $3'));
      done(e.removeCell(cell('Extra').id));
      done(e.addCell(cell('Kerb').part, null, 'Unused', '3 ft'));
    }),
  );

  test('tell a price that moved, a size that grew, a formula and a line apart', () => {
    expect(why.pieces.map(whyKind).sort()).toEqual(['formula', 'line', 'line', 'price', 'size']);
  });

  test('come to the whole difference', () => {
    const sums = kindSums(why.pieces);
    const all = sums.reduce((cents, { amount }) => cents + centsOf(amount), 0n);
    expect(all).toBe(centsOf(comparison.price.difference));
    expect(sums.find(({ kind }) => kind === 'line')).toEqual({
      kind: 'line',
      pieces: 2,
      amount: '-10.00',
    });
  });

  test('are together where changes of two kinds are one piece, and the tool where nobody changed anything', () => {
    expect(whyKind({ changes: [], ways: [] })).toBe('tool');
    const changes = why.pieces.flatMap((piece) => piece.changes);
    expect(whyKind({ changes, ways: ['price', 'formula'] })).toBe('together');
    expect(whyKind({ changes, ways: ['price', 'renamed'] })).toBe('price');
  });
});

describe('the steps that are drawn', () => {
  const many = Array.from({ length: 40 }, (_, i) => `- Item ${i}: $${i}\n  - cost: material\n`);
  const { why, steps, comparison } = weighed(
    edited(`# Many\n\n## Items\n\n${many.join('')}`, (e, cell) => {
      for (let i = 0; i < 40; i++)
        done(e.setFormula(cell(`Item ${i}`).id, `$${i + (i % 2 ? 1 : -1) * (i + 1)}`));
    }),
  );
  const drawn = chartSteps(steps, why.pieces.map(whyKind));

  test('leave out none of the difference where the smaller ones are one step', () => {
    expect(drawn).toHaveLength(24);
    expect(drawn.at(-1)?.label).toBe('17 smaller changes');
    expect(drawn[0]?.from).toBe(comparison.price.before);
    expect(drawn.at(-1)?.to).toBe(comparison.price.after);
    drawn.forEach(({ from }, i) => {
      if (i > 0) expect(from).toBe(drawn[i - 1]?.to);
    });
  });

  test('are none for what moved nothing', () => {
    const still = weighed(
      edited(TEXT, (e, cell) => done(e.addCell(cell('Kerb').part, null, 'Unused', '3 ft'))),
    );
    expect(chartSteps(still.steps, still.why.pieces.map(whyKind))).toEqual([]);
  });
});

describe('the contract', () => {
  const job = opened(TEXT);
  const bid = frozen(job);
  done(job.estimate.setFormula(cellNamed(job.estimate.notebook, 'Extra').id, '$25'));
  const changed = frozen(job, 'Bid 1 with the extra');
  const comparison = compare(versionOf(bid), versionOf(changed));
  const order = changeOrder(comparison, {
    number: 1,
    date: '2026-03-04',
    reason: 'an extra',
    fromSeal: bid.seal,
    toSeal: changed.seal,
  });
  if (!order) throw new Error('in different currencies');
  const entry = (snapshot: string, happened: Happened) => ({
    snapshot,
    happened,
    date: '2026-03-04',
    note: '',
  });
  const orderLog = [{ order: 1, state: 'approved' as const, date: '2026-03-05', note: '' }];

  test('is none before a snapshot was accepted', () => {
    expect(contractHere({ ...NO_VERSIONS, snapshots: [bid] })).toBe(null);
  });

  test('counts a change once, also where the version that holds it was accepted after it', () => {
    const signed = logged([], entry(bid.seal, 'accepted'));
    const versions = { ...NO_VERSIONS, snapshots: [bid, changed], orders: [order], orderLog };
    expect(contractHere({ ...versions, log: signed })?.sum).toBe('75.00');
    const log = logged(
      logged(signed, entry(bid.seal, 'superseded')),
      entry(changed.seal, 'accepted'),
    );
    expect(contractHere({ ...versions, log })?.sum).toBe('75.00');
    expect(contractHere({ ...versions, orders: [], orderLog: [], log })?.sum).toBe('75.00');
  });
});

test('a day is shown as that day in every time zone, and what is no date as it is written', () => {
  expect(dayShown('2026-03-03')).toContain('3');
  expect(dayShown('2026-03-03')).toContain('2026');
  expect(dayShown('last spring')).toBe('last spring');
});
