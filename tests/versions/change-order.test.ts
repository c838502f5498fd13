// A change order out of a comparison, and the contract sum after several.
import { describe, expect, it, test } from 'vitest';
import { type ChangeOrder, changeOrder } from '../../src/versions/change-order.ts';
import { compare } from '../../src/versions/compare.ts';
import { type OrderLog, contractOf, orderLogged, orderState } from '../../src/versions/contract.ts';
import { holdingToo } from '../../src/versions/held-twice.ts';
import { centsOf } from '../../src/versions/cents.ts';
import type { Version } from '../../src/versions/version.ts';
import { done } from '../notebook/cells.ts';
import { apart, edited } from './sides.ts';

const TEXT = `# Kestrel Court

## Deck

- Boards: $2,000
  - cost: material
- Railing: $500
  - cost: material
- Labour: $1,500
  - cost: labour

## Price

- Overhead: 10% of total cost of every part
  - price: overhead
- Goodwill: $100
  - price: discount
`;

const naming = {
  number: 1,
  date: '2026-03-10',
  reason: 'Steps asked for.',
  fromSeal: null,
  toSeal: null,
};

function orderOf(versions: readonly [Version, Version]): ChangeOrder {
  const order = changeOrder(compare(...versions), naming);
  if (!order) throw new Error('in different currencies');
  return order;
}

describe('a change order', () => {
  const versions = edited(TEXT, (e, cell) => {
    done(e.removeCell(cell('Railing').id));
    done(e.setFormula(cell('Boards').id, '$2,250'));
    done(e.addCell(cell('Boards').part, null, 'Steps', '$900'));
    done(e.setRemark(cell('Steps').id, 'cost', 'subcontract'));
    done(e.setFormula(cell('Goodwill').id, '$150'));
  });

  it('tells lines dropped, changed and added, with amounts, net and the new total', () => {
    const order = orderOf(versions);
    expect(
      order.lines.map(({ kind, name, before, after, difference }) => [
        kind,
        name,
        before,
        after,
        difference,
      ]),
    ).toEqual([
      ['dropped', 'Railing', '500.00', null, '-500.00'],
      ['changed', 'Boards', '2000.00', '2250.00', '250.00'],
      ['added', 'Steps', null, '900.00', '900.00'],
      ['changed', 'Overhead', '400.00', '465.00', '65.00'],
      ['changed', 'Goodwill', '-100.00', '-150.00', '-50.00'],
    ]);
    expect(order).toMatchObject({
      number: 1,
      reason: 'Steps asked for.',
      before: '4300.00',
      net: '665.00',
      after: '4965.00',
      rest: '0.00',
      incomplete: false,
    });
  });

  it('tells what is worked otherwise', () => {
    expect(orderOf(versions).lines[1]).toMatchObject({
      workedBefore: '$2,000',
      workedAfter: '$2,250',
    });
  });

  it('adds up for the way back too', () => {
    const back = orderOf([versions[1], versions[0]]);
    const sum = back.lines.reduce((total, { difference }) => total + centsOf(difference), 0n);
    expect(sum).toBe(centsOf(back.net));
    expect(back.net).toBe('-665.00');
  });

  it('says that a line has no value, and that the total leaves it out', () => {
    const order = orderOf(edited(TEXT, (e, cell) => done(e.setFormula(cell('Railing').id, '?'))));
    expect(order.incomplete).toBe(true);
    expect(order.lines[0]).toMatchObject({
      kind: 'changed',
      name: 'Railing',
      before: '500.00',
      after: null,
    });
  });

  it('is not made between two currencies', () => {
    const euros = TEXT.replace('# Kestrel Court\n', '# Kestrel Court\n\n- Currency: euros\n');
    const comparison = compare(...apart(TEXT, euros.replaceAll('$', '€')));
    expect(changeOrder(comparison, naming)).toBeNull();
  });
});

describe('the contract', () => {
  const order = (number: number, net: string): ChangeOrder => ({
    ...orderOf(edited(TEXT, () => undefined)),
    number,
    net,
  });
  const orders = [order(2, '-50.50'), order(1, '665.00'), order(3, '120.00'), order(4, '10.00')];
  const log = (
    [
      [1, 'priced'],
      [1, 'approved'],
      [1, 'done'],
      [1, 'billed'],
      [2, 'approved'],
      [3, 'priced'],
    ] as const
  ).reduce<OrderLog>(
    (before, [number, state]) =>
      orderLogged(before, { order: number, state, date: '2026-03-11', note: '' }),
    [],
  );

  test('is the signed sum and what was approved since, in the order of their numbers', () => {
    const contract = contractOf('4300.00', orders, log);
    expect(contract.rows.map((row) => [row.order.number, row.state, row.sum])).toEqual([
      [1, 'billed', '4965.00'],
      [2, 'approved', '4914.50'],
      [3, 'priced', null],
      [4, 'asked', null],
    ]);
    expect(contract).toMatchObject({ sum: '4914.50', open: '130.00', billed: '665.00' });
  });

  test('stands by what was said last', () => {
    expect(orderState(log, 1)).toBe('billed');
    expect(orderState([], 1)).toBe('asked');
  });
});

describe('two change orders', () => {
  const seals = ['bid', 'first', 'second'];
  const between = (from: string | null, to: string | null): ChangeOrder => ({
    ...orderOf(edited(TEXT, () => undefined)),
    from: { name: 'from', seal: from },
    to: { name: 'to', seal: to },
  });
  const ends = (from: string | null, to: string | null) => ({
    from: { seal: from },
    to: { seal: to },
  });

  test.for([
    ['bid', null, 'bid', 'first', 1],
    ['bid', 'second', 'first', 'second', 1],
    ['second', 'bid', 'first', 'second', 1],
    ['bid', null, 'first', 'second', 1],
    // Made before ends were frozen: it is only known to begin there.
    ['bid', null, 'bid', null, 1],
    ['first', null, 'bid', null, 0],
    ['first', 'second', 'bid', 'first', 0],
    ['first', null, 'bid', 'first', 0],
    ['bid', 'first', 'first', 'second', 0],
  ] as const)('%s to %s beside %s to %s hold the same: %i', ([from, to, from2, to2, same]) => {
    expect(holdingToo(ends(from, to), [between(from2, to2)], seals)).toHaveLength(same);
  });
});
