// The footing: kinds of cost, the price, what is left out, the difference while a tape is open.
import { describe, expect, test } from 'vitest';
import '../../src/ui/job-footing.ts';
import { frozen, opened } from '../versions/sides.ts';
import {
  SMALL_JOB,
  axeFindings,
  drawn,
  everyElement,
  found,
  idOf,
  sessionOn,
  settled,
  wordsOf,
} from './drawn.ts';

const MIXED = `${SMALL_JOB}- Placing: $100
  - cost: labour
  - from: a test
- Overhead: 10% of $1,000
  - price: overhead
`;

async function footing(text: string) {
  const session = sessionOn(text);
  const element = await drawn('job-footing', { session });
  return { session, element };
}

describe('the footing', () => {
  test('is accessible', async () => {
    const { element } = await footing(MIXED);
    expect(await axeFindings(element)).toEqual([]);
  });

  test('names five kinds of direct cost, their sum and the price', async () => {
    const { element } = await footing(MIXED);
    expect(wordsOf(found(element, 'dl'))).toBe(
      'material $259.20 labour $100.00 equipment $0.00 subcontract $0.00 fee $0.00 direct cost $359.20',
    );
    expect(wordsOf(found(element, '.price'))).toBe('price $459.20');
  });

  test('hatches each kind that costs something, as wide as its share', async () => {
    const { element } = await footing(MIXED);
    const pieces = everyElement(found(element, '.strip')).filter((one) =>
      one.getAttribute('fill')?.startsWith('url(#hatch-'),
    );
    expect(pieces.map((piece) => piece.getAttribute('fill'))).toEqual([
      'url(#hatch-material)',
      'url(#hatch-labour)',
    ]);
    expect(Number.parseFloat(pieces[0]?.getAttribute('width') ?? '')).toBeCloseTo(72.16, 1);
  });

  test('says so far and how many lines are not yet known', async () => {
    const { session, element } = await footing(MIXED);
    session.apply((door) => door.setFormula(idOf(session, 'Bag price'), '?'));
    await settled(element);
    expect(wordsOf(found(element, '.price'))).toBe('price so far; 1 line not yet known $200.00');
  });

  test('shows the difference from the start while a tape is slid', async () => {
    const { session, element } = await footing(MIXED);
    session.openTape(idOf(session, 'Bag price'));
    session.slideTape('$7.48 per bag');
    await settled(element);
    expect(wordsOf(found(element, '.price'))).toBe('$40.00 more than at the tick $499.20');
    session.leaveTape();
    await settled(element);
    expect(wordsOf(found(element, '.price'))).toBe('price $459.20');
  });

  test('says what the last change moved the price by, once and not while a tape is slid', async () => {
    const { session, element } = await footing(MIXED);
    const said = (): string => wordsOf(found(element, '[role=status]'));
    const price = (): string => wordsOf(found(element, '.price'));
    session.openTape(idOf(session, 'Bag price'));
    for (const slid of ['$7 per bag', '$7.48 per bag']) {
      session.slideTape(slid);
      await settled(element);
      expect(said()).toBe('');
    }
    session.keepTape();
    await settled(element);
    expect(price()).toBe('price $499.20 $40.00 more than before');
    expect(said()).toBe('Price $499.20, $40.00 more.');
    session.apply((door) => door.setFormula(idOf(session, 'Bag price'), '?'));
    await settled(element);
    expect(said()).toBe('');
  });

  test('stands beside a snapshot: the accepted one stands out, and how far the price is from it', async () => {
    const job = opened(MIXED);
    const bid = frozen(job);
    const { session, element } = await footing(MIXED);
    element.against = { snapshot: bid, accepted: true };
    await settled(element);
    expect(wordsOf(found(element, '.beside.accepted'))).toBe(
      'Bid 1 accepted at $459.20 the same price',
    );
    session.apply((door) => door.setFormula(idOf(session, 'Placing'), '$80'));
    element.against = { snapshot: bid, accepted: false };
    await settled(element);
    expect(wordsOf(found(element, '.beside'))).toBe('Bid 1 at $459.20 now $20.00 less');
    session.apply((door) => door.setFormula(idOf(session, 'Bag price'), '?'));
    await settled(element);
    expect(wordsOf(found(element, '.beside'))).toContain('less so far');
    expect(await axeFindings(element)).toEqual([]);
  });
});
