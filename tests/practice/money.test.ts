// Overhead, profit, tax and rates that were taken of the wrong thing.
import { describe, expect, test } from 'vitest';
import { opened } from '../published/opened.ts';

const part = (...lines: string[]) =>
  opened(`# Price\n## Summary\n${lines.map((line) => `- ${line}`).join('\n')}\n`);

describe('PC-22: ten percent of what', () => {
  const notebook = part(
    'Cost: $1,000 plus $1,000',
    'Added on: (cost plus (10% plus 10%)) plus 5% tax',
    'Really: what share (10% of cost) is of added on',
    'Price: cost for 10% overhead and 10% profit',
    'With tax: price plus 5% tax',
    'Of the total: cost ÷ (1 − (10% × 1.05) − (10% × 1.05))',
    'Whole total: of the total plus 5% tax',
    'Overhead share: what share (10% of price) is of price',
  );

  test('added to the cost, each ten percent is less of the total', () => {
    expect(notebook.shown('Added on')).toBe('$2,520.00');
    expect(notebook.figure('Really')[1]).toBeCloseTo(7.936508, 5);
  });

  test('as a share of the price, the price is solved and no circle is made', () => {
    expect(notebook.shown('Price')).toBe('$2,500.00');
    expect(notebook.shown('With tax')).toBe('$2,625.00');
    expect(notebook.figure('Overhead share')).toEqual(['%', 10]);
  });

  test('as a share of the total with its tax, it is a third price', () => {
    expect(notebook.shown('Of the total')).toBe('$2,531.65');
    expect(notebook.shown('Whole total')).toBe('$2,658.23');
  });

  test('added without saying of what, it asks', () => {
    const asks = part('Cost: $2,000', 'Price: cost plus 10% margin');
    expect(asks.state('Price').outcome.kind).toBe('fault');
    expect(asks.state('Price').reading.problems[0]?.fixes.length).toBe(2);
  });
});

describe('PC-24: a price by tiers, as a table that can be read', () => {
  // $12 for each thousand of the first 100,000, then $9 of the next 400,000, $8 and $6 of two times 200,000.
  const bond = (amount: string) =>
    part(
      `Contract: ${amount}`,
      'Bond tiers:\n\n' +
        '  | tier | above | up to | rate | in the tier: (the lesser of bonded and up to) minus above, not less than $0 | fee: in the tier at rate |\n' +
        '  |---|---|---|---|---|---|\n' +
        '  | first | $0 | $100,000 | $12 per $1,000 | | |\n' +
        '  | second | $100,000 | $500,000 | $9 per $1,000 | | |\n' +
        '  | third | $500,000 | $700,000 | $8 per $1,000 | | |\n' +
        '  | fourth | $700,000 | $900,000 | $6 per $1,000 | | |\n\n' +
        '  - from: the surety, invented rates\n',
      'Bonded: the lesser of contract and (read up to off bond tiers for up to at least contract)',
      'Bond: total of fee in bond tiers',
    );
  const inTiers = (notebook: ReturnType<typeof bond>) =>
    notebook.estimate
      .rows(notebook.cell('Bond tiers').id)
      ?.map((row) => notebook.estimate.shown(row[4] ?? 0)?.text);

  test.each([
    ['$300,000', '$3,000.00', ['$100,000.00', '$200,000.00', '$0.00', '$0.00']],
    ['$600,000', '$5,600.00', ['$100,000.00', '$400,000.00', '$100,000.00', '$0.00']],
    ['$900,000', '$7,600.00', ['$100,000.00', '$400,000.00', '$200,000.00', '$200,000.00']],
  ])('%s costs %s, and how much falls into each tier is in sight', (amount, fee, tiers) => {
    const notebook = bond(amount);
    expect(notebook.shown('Bond')).toBe(fee);
    expect(inTiers(notebook)).toEqual(tiers);
    expect(notebook.estimate.findings().filter((f) => f.code !== 'given-without-source')).toEqual(
      [],
    );
  });

  test('a rate stands in its tier as it is spoken', () => {
    const notebook = bond('$300,000');
    const rates = notebook.estimate
      .rows(notebook.cell('Bond tiers').id)
      ?.map((row) => notebook.estimate.shown(row[3] ?? 0)?.text);
    expect(rates?.[0]).toBe('$12.00 per $1,000');
  });

  test('beyond the last tier it stops, names the amount and goes on with no rate', () => {
    const notebook = bond('$900,001');
    const { outcome } = notebook.state('Bonded');
    expect(outcome.kind === 'fault' && outcome.report.code).toBe('no-row');
    expect(outcome.kind === 'fault' && outcome.report.explanation).toContain('$900,001.00');
    expect(notebook.state('Bond').outcome.kind).not.toBe('value');
    expect(inTiers(notebook)).toEqual([undefined, undefined, undefined, undefined]);
  });
});

test('PC-25: a charge rate shows what it is made of', () => {
  const notebook = part(
    'Wage: $37 per hour',
    'Vacation: 10%',
    'Other burden: $9.30 per hour',
    'Paid rate: wage plus vacation',
    'Cost rate: paid rate plus other burden',
    'Charge rate: $80 per hour',
    'Markup: what share (charge rate minus cost rate) is of cost rate',
    'Margin: what share (charge rate minus cost rate) is of charge rate',
  );
  expect(notebook.figure('Paid rate')).toEqual(['$ per hour', 40.7]);
  expect(notebook.figure('Cost rate')).toEqual(['$ per hour', 50]);
  expect(notebook.figure('Markup')).toEqual(['%', 60]);
  expect(notebook.figure('Margin')).toEqual(['%', 37.5]);
  const needs = notebook
    .state('Cost rate')
    .needs.map((id) => notebook.estimate.state(id).input.name);
  expect(needs).toEqual(['Paid rate', 'Other burden']);
});

test('PC-28: the ceiling of a price follows the floor of it', () => {
  const notebook = part('Lowest: $8,000', 'Highest: lowest plus 30% allowance');
  expect(notebook.shown('Highest')).toBe('$10,400.00');
});

test('PC-30: tax goes by the place: on materials, on all, or inside the cost', () => {
  const tax = (material: string, labour: string) =>
    part(
      'Materials: $4,000',
      'Labour cost: $6,000',
      `Material tax: ${material}`,
      `Labour tax: ${labour}`,
      'Tax: material tax of materials plus labour tax of labour cost',
      'Bill: materials plus labour cost plus tax',
    );
  expect(tax('8%', '0%').shown('Tax')).toBe('$320.00');
  expect(tax('8%', '8%').shown('Tax')).toBe('$800.00');
  const inside = part(
    'Materials: $4,000',
    'Sales tax: 8%',
    'Tax paid: sales tax on materials',
    'Material cost: materials plus tax paid',
    'Tax on the bill: $0',
  );
  expect(inside.shown('Tax paid')).toBe('$320.00');
  expect(inside.shown('Material cost')).toBe('$4,320.00');
  expect(inside.shown('Tax on the bill')).toBe('$0.00');
});

describe('PC-32: a part of the contract that nobody priced', () => {
  const notebook = opened(
    '# Deck\n## Contract\n- Price: $33,175\n  - cost: subcontract\n- Stairs: $?\n  - cost: labour\n' +
      '- Step price: $350 per step\n- Claim: 12 steps at step price\n' +
      '- Old area: 36 ft by 12 ft plus 6 ft by 12 ft\n- New area: 40 ft by 12 ft\n' +
      '- Square foot price: $33,175 divided by old area\n' +
      '- Credit: (new area minus old area) at square foot price\n' +
      '- Whole: total cost of this part\n',
  );

  test('the total says that a named line has no price yet', () => {
    expect(notebook.estimate.costs().total.incomplete).toEqual([notebook.cell('Stairs').id]);
    const { outcome } = notebook.state('Whole');
    expect(outcome.kind === 'value' && outcome.leftOut).toEqual([notebook.cell('Stairs').id]);
  });

  test('what it comes to when it is priced at last', () => {
    expect(notebook.shown('Claim')).toBe('$4,200.00');
    expect(notebook.figure('Old area')).toEqual(['sq ft', 504]);
    expect(notebook.figure('New area')).toEqual(['sq ft', 480]);
    expect(notebook.figure('Square foot price')[1]).toBeCloseTo(65.823413, 6);
    expect(notebook.figure('Credit')[1]).toBeCloseTo(-1579.761905, 6);
  });
});

test('PC-34: a price three weeks old takes a third of the profit', () => {
  const notebook = part(
    'Material: $3,200\n  - from: quoted 2026-03-03, good until 2026-03-24; invented',
    'Rise: 12%',
    'Extra: rise of material',
    'Profit: 15% of $8,000',
    'Lost: what share extra is of profit',
  );
  expect(notebook.shown('Extra')).toBe('$384.00');
  expect(notebook.shown('Profit')).toBe('$1,200.00');
  expect(notebook.figure('Lost')).toEqual(['%', 32]);
  expect(notebook.cell('Material').remarks.map((r) => [r.kind, r.text])).toEqual([
    ['from', 'quoted 2026-03-03, good until 2026-03-24; invented'],
  ]);
});

describe('PC-37: a price by the board foot becomes one by the foot when the board is known', () => {
  test('no figure is dropped on the way', () => {
    const notebook = part(
      'Thick: 1 in',
      'Wide: 10 in',
      'Price: $5 per board foot',
      'Board: thick by wide by 8 ft, in board feet',
      'Board price: board at price',
      'Foot price: board price divided by 8 ft, in $ per ft',
    );
    expect(notebook.figure('Board')[1]).toBeCloseTo(6.666667, 6);
    expect(notebook.shown('Board price')).toBe('$33.33');
    expect(notebook.figure('Foot price')[1]).toBeCloseTo(4.166667, 6);
    expect(notebook.shown('Foot price')).toBe('$4.17 per ft');
  });

  test('without the board it is refused', () => {
    const notebook = part('Price: $5 per board foot', 'Cost: 8 ft at price');
    expect(notebook.state('Cost').outcome.kind).toBe('fault');
  });
});

test('PC-39: a small deck has twice the railing for each square foot', () => {
  const deck = (width: string, length: string) =>
    part(
      `Deck area: ${width} by ${length}`,
      `Railing: ${width} plus ${length} plus ${width}`,
      'Low: deck area at $15 per sq ft',
      'High: deck area at $21 per sq ft',
      'Railing for each foot: railing divided by deck area, in ft per sq ft',
    );
  const small = deck('12 ft', '15 ft');
  expect(small.shown('Low')).toBe('$2,700.00');
  expect(small.shown('High')).toBe('$3,780.00');
  expect(small.figure('Railing for each foot')[1]).toBeCloseTo(0.216667, 6);
  expect(deck('16 ft', '32 ft').figure('Railing for each foot')[1]).toBeCloseTo(0.125, 6);
});

test('PC-45: an overrun says of what it is a share', () => {
  const notebook = part(
    'Next: $12,000',
    'Of the estimate: next plus 25%',
    'Of what it cost: next ÷ (1 − 25%)',
  );
  expect(notebook.shown('Of the estimate')).toBe('$15,000.00');
  expect(notebook.shown('Of what it cost')).toBe('$16,000.00');
});
