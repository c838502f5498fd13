// Estimates that went out, were changed by others, and were compared with what was signed.
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { changeOrder } from '../../src/versions/change-order.ts';
import { compare } from '../../src/versions/compare.ts';
import { newIdentities, readIdentities } from '../../src/versions/identities.ts';
import { ifMoved } from '../../src/versions/moved-prices.ts';
import { askAgain } from '../../src/versions/asked-again.ts';
import { pastDates, sayPast, validity } from '../../src/versions/past-dates.ts';
import { freeze, markOf, verify } from '../../src/versions/snapshot.ts';
import { versionNow, versionOf } from '../../src/versions/version.ts';
import { whyMoved } from '../../src/versions/why-moved.ts';
import { copyOfSnapshot, sayOrigin } from '../../src/versions/working-copy.ts';
import { opened } from '../published/opened.ts';

const issued = (text: string) => {
  const { estimate } = opened(text);
  const identities = newIdentities(estimate.notebook, 'k');
  const naming = { name: 'Bid 1', note: '', date: '2026-03-03', tool: '0.1.0' };
  return { estimate, identities, snapshot: freeze(estimate, identities, naming) };
};

describe('PC-21: a client changes the figures of an issued estimate and passes it on', () => {
  const text =
    '# Wall\n## Work\n- Length: 40 ft\n- Price: $30 per ft\n- Wall: length at price\n  - cost: subcontract\n';
  const { snapshot } = issued(text);

  test('the issued copy can be proved unchanged', () => {
    expect(verify(snapshot)).toEqual([]);
    const passedOn = { ...snapshot, text: text.replace('$30', '$21') };
    expect(verify(passedOn)).toEqual(['content']);
    const { total } = snapshot.values;
    const lowered = { ...snapshot.values, total: { ...total, price: '840.00' } };
    expect(verify({ ...snapshot, values: lowered })).toEqual(['content']);
  });

  test('it is marked with a short fingerprint', () => {
    expect(markOf(snapshot)).toMatch(/^Bid 1, [0-9a-f]{4} [0-9a-f]{4} [0-9a-f]{4}$/);
  });

  test('a copy to try things in is another one, and says so on paper', () => {
    const copy = copyOfSnapshot('trial', snapshot, { stem: 'm', date: '2026-03-05' });
    const there = new Estimate(copy.text.replace('$30', '$21'));
    const identities = readIdentities(copy.identities, there.notebook);
    const naming = { name: 'Bid 1', note: '', date: '2026-03-03', tool: '0.1.0' };
    const again = freeze(there, identities, naming);
    expect(again.hash).not.toBe(snapshot.hash);
    expect(markOf(again)).not.toBe(markOf(snapshot));
    expect(copy.identities.stem).not.toBe(snapshot.identities.stem);
    expect(sayOrigin(copy.origin)).toContain('It is not the estimate that was issued.');
  });
});

describe('PC-32: the signed version beside the revised one', () => {
  const { estimate, identities, snapshot } = issued(
    '# Deck\n## Contract\n- Length: 36 ft\n- Bump: 72 sq ft\n- Area: length by 12 ft plus bump\n' +
      '- Square foot price: $33,175 divided by 504 sq ft\n- Deck: area at square foot price\n  - cost: subcontract\n' +
      '- Steps: 0 steps\n- Step price: $350 per step\n- Stairs: steps at step price\n  - cost: labour\n',
  );
  const id = (name: string): number => {
    const found = estimate.notebook.parts
      .flatMap(({ blocks }) => blocks)
      .flatMap((block) =>
        block.kind === 'cell' && block.cell.name === name ? [block.cell.id] : [],
      );
    return found[0] ?? 0;
  };
  estimate.setFormula(id('Length'), '40 ft');
  estimate.setFormula(id('Bump'), '0 sq ft');
  estimate.setFormula(id('Steps'), '12 steps');
  const comparison = compare(versionOf(snapshot), versionNow('revised', estimate, identities));

  test('the sizes that changed, the credit and the claim stand line by line', () => {
    const naming = {
      number: 1,
      date: '2026-04-01',
      reason: '',
      fromSeal: snapshot.seal,
      toSeal: null,
    };
    const order = changeOrder(comparison, naming);
    expect(order?.lines.map(({ name, difference }) => [name, difference])).toEqual([
      ['Deck', '-1579.76'],
      ['Stairs', '4200.00'],
    ]);
    expect(order).toMatchObject({ before: '33175.00', net: '2620.24', after: '35795.24' });
  });

  test('each change has its share of it', () => {
    const ways = whyMoved(comparison)?.pieces.map(({ ways, amount }) => [ways, amount]);
    // 48 sq ft and 72 sq ft at $65.8234…: to the cent $3,159.52 alone and $3,159.53 after the other, −$4,739.29 and
    // −$4,739.28; the halves of a cent cancel.
    expect(ways).toEqual([
      [['size'], '3159.52'],
      [['size'], '-4739.28'],
      [['count'], '4200.00'],
    ]);
  });
});

describe('PC-34: a price past its date when the order is placed', () => {
  const { estimate, identities, snapshot } = issued(
    '# Deck\n## Work\n- Lumber: $3,200\n  - cost: material\n' +
      '  - from: quoted 2026-03-03, good until 2026-03-17; invented\n',
  );

  test('it is pointed out on the day, with its age', () => {
    const [past] = pastDates(estimate, '2026-03-24');
    expect(past && sayPast(past)).toBe('quoted 21 days ago, good for 14');
    expect(pastDates(estimate, '2026-03-17')).toEqual([]);
  });

  test('until when all prices are good and which is the oldest is told', () => {
    expect(validity(estimate)).toEqual({
      oldest: { name: 'Lumber', day: '2026-03-03' },
      first: { name: 'Lumber', until: '2026-03-17' },
    });
  });

  test('what a rise would do is told before anything is changed', () => {
    const moved = ifMoved(estimate, pastDates(estimate, '2026-03-24'), '12');
    expect(moved).toEqual({ before: '3200.00', after: '3584.00', count: 1 });
    // 15% on $8,000 was planned to stay: nearly a third of it goes.
    const profit = opened(
      '# Deck\n## Profit\n- Planned: 15% of $8,000\n- More: $3,584 less $3,200\n- Lost: more as a percent of planned\n',
    );
    expect(['Planned', 'More', 'Lost'].map((name) => profit.shown(name))).toEqual([
      '$1,200.00',
      '$384.00',
      '32%',
    ]);
  });

  test('asked for again and answered, the difference is the price that moved', () => {
    const change = askAgain(estimate, pastDates(estimate, '2026-03-24'));
    expect(change && 'change' in estimate.replaceText(change)).toBe(true);
    expect(estimate.costs().total.incomplete).toHaveLength(1);
    estimate.setFormula(estimate.costs().total.incomplete[0] ?? 0, '$3,584');
    const now = versionNow('now', estimate, identities);
    expect(whyMoved(compare(versionOf(snapshot), now))).toMatchObject({
      difference: '384.00',
      pieces: [{ ways: ['price'], amount: '384.00' }],
    });
  });
});
