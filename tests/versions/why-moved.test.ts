// The difference of two versions divided among what was changed: against results worked by hand, and on random pairs.
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { compare } from '../../src/versions/compare.ts';
import { centsOf } from '../../src/versions/cents.ts';
import type { Version } from '../../src/versions/version.ts';
import { weighing, whyMoved } from '../../src/versions/why-moved.ts';
import { done } from '../notebook/cells.ts';
import { apart, edited, frozen, opened, why } from './sides.ts';

/** `WHY_CASES=500` for the long run. */
const CASES = Number(process.env['WHY_CASES'] ?? 25);

const SLAB = `# Kestrel Court

## Slab

- Area: 100 sq ft
- Price: $5 per sq ft
- Waste: 10%
- Concrete: area at price
  - cost: material

## Price

- Markup: 10% of total cost of every part
  - price: markup
`;

describe('worked by hand', () => {
  test('a size and a price: each meets the other half the time', () => {
    const versions = edited(SLAB, (e, cell) => {
      done(e.setFormula(cell('Area').id, '120 sq ft'));
      done(e.setFormula(cell('Slab / Price').id, '$6 per sq ft'));
    });
    // Area first: 20 × $5 × 1.1 = $110, last: 20 × $6 × 1.1 = $132; price first: 100 × $1 × 1.1 = $110, last: $132.
    expect(why(versions)).toMatchObject({
      difference: '242.00',
      method: { kind: 'exact', changes: 2 },
      said: ['Area: 121.00', 'Price: 121.00'],
    });
    expect(why(versions).pieces.map(({ ways }) => ways)).toEqual([['size'], ['price']]);
  });

  test('two givens and a formula of three: the thirds are cents by largest remainder', () => {
    const text = '# K\n\n## P\n\n- A: 1\n- B: 1\n- Cost: $1 times A times B\n  - cost: fee\n';
    const versions = edited(text, (e, cell) => {
      done(e.setFormula(cell('A').id, '2'));
      done(e.setFormula(cell('B').id, '2'));
      done(e.setFormula(cell('Cost').id, '$2 times A times B'));
    });
    // $1 becomes $8. Each of the three alone adds $1, as the second $2, as the last $4; in six orders a change comes
    // first twice, second twice and last twice: (1 + 2 + 4) / 3 = $2.333…; one cent is over, the first gets it.
    expect(why(versions)).toMatchObject({
      difference: '7.00',
      method: { kind: 'exact', changes: 3 },
      said: ['A: 2.34', 'B: 2.33', 'Cost: 2.33'],
    });
  });

  test('a rounding that a price alone does not pass: bags are bought whole', () => {
    const text =
      '# K\n\n## P\n\n- Length: 10 ft\n- Bag: 4 ft per bag\n- Bag price: $6 per bag\n' +
      '- Bags: length divided by bag, rounded up\n- Concrete: bags at bag price\n  - cost: material\n';
    const versions = edited(text, (e, cell) => {
      done(e.setFormula(cell('Length').id, '13 ft'));
      done(e.setFormula(cell('Bag price').id, '$7 per bag'));
      done(e.setFormula(cell('Bag').id, '4.5 ft per bag'));
    });
    // Bags: 10/4 → 3, 13/4 → 4, 10/4.5 → 3, 13/4.5 → 3. From 3 × $6 = $18 to 3 × $7 = $21.
    // Length L: +6 or +7 (after the price) where the bag is still small, 0 after the bag grew.
    //   Orders: LBP +6, LPB +6, PLB +7, PBL 0, BLP 0, BPL 0: 19/6.
    // Bag B: −6 or −7 where the length has grown, else 0. LBP −6, LPB −7, PLB −7, others 0: −20/6.
    // Price P: × bags then. LBP 3, LPB 4, PLB 3, PBL 3, BLP 3, BPL 3: 19/6.
    // 3.1666…, −3.3333…, 3.1666… cut towards zero leave one cent, which the first of the two 0.666… gets.
    expect(why(versions)).toMatchObject({
      difference: '3.00',
      said: ['Length: 3.17', 'Bag: -3.33', 'Bag price: 3.16'],
    });
  });
});

describe('what only works together is one piece', () => {
  test('a new cell with the formula that names it', () => {
    const versions = edited(SLAB, (e, cell) => {
      done(e.addCell(cell('Area').part, null, 'Delivery', '$40'));
      done(e.setFormula(cell('Concrete').id, 'area at price plus delivery'));
      done(e.setFormula(cell('Area').id, '110 sq ft'));
    });
    expect(why(versions).said).toEqual(['Area: 55.00', 'Concrete + Delivery: 44.00']);
  });

  test('a price in another unit with the formula that turns to it', () => {
    const versions = edited(SLAB, (e, cell) => {
      done(e.setFormula(cell('Slab / Price').id, '$10 per sq yd'));
      done(e.setFormula(cell('Waste').id, '20%'));
    });
    expect(why(versions).said).toEqual(['Price: -427.78', 'Waste: 0.00']);
    const other = edited(SLAB, (e, cell) => {
      done(e.setFormula(cell('Slab / Price').id, '$10 per bag'));
      done(e.setFormula(cell('Concrete').id, '(area divided by 2 sq ft per bag) at price'));
    });
    expect(why(other).said).toEqual(['Price + Concrete: 0.00']);
  });

  test('what is taken out with the formula that named it', () => {
    const text = SLAB.replace('area at price', '(area plus waste) at price');
    const versions = edited(text, (e, cell) => {
      done(e.setFormula(cell('Concrete').id, 'area at price'));
      done(e.removeCell(cell('Waste').id));
      done(e.setFormula(cell('Slab / Price').id, '$6 per sq ft'));
    });
    expect(why(versions).said).toEqual(['Price: 115.50', 'Waste + Concrete: -60.50']);
  });

  test('names that were swapped, which no rename can do one by one', () => {
    const text = '# K\n\n## P\n\n- A: $2\n- B: $3\n- Cost: A plus A plus B\n  - cost: fee\n';
    const versions = apart(text, text.replace('- A: $2\n- B: $3', '- A: $3\n- B: $2'));
    expect(why(versions).difference).toBe('1.00');
  });
});

describe('what moves no money has no piece, or one of nothing', () => {
  it('gives a rename nothing, and a change beside it its own', () => {
    const versions = edited(SLAB, (e, cell) => {
      done(e.rename(cell('Area').id, 'Slab area'));
      done(e.renamePart(cell('Slab area').part, 'Landing'));
      done(e.setFormula(cell('Slab area').id, '120 sq ft'));
    });
    expect(why(versions).said).toEqual(['Slab area: 110.00']);
    expect(why([versions[1], versions[0]]).said).toEqual(['Area: -110.00']);
  });

  it('gives a changed given that no line uses nothing', () => {
    const versions = edited(SLAB, (e, cell) => done(e.setFormula(cell('Waste').id, '15%')));
    expect(why(versions)).toMatchObject({ difference: '0.00', said: ['Waste: 0.00'] });
  });

  it('tells rows of a table apart', () => {
    const text =
      '# K\n\n## P\n\n- Items:\n  | item | sum |\n  | --- | --- |\n  | A | $1 |\n  | B | $2 |\n  | C | $3 |\n' +
      '- Cost: total of sum in items\n  - cost: fee\n';
    const versions = apart(
      text,
      text
        .replace('| B | $2 |', '| B | $5 |')
        .replace('  | C | $3 |\n', '  | C | $3 |\n  | D | $9 |\n'),
    );
    expect(why(versions).said).toEqual(['Items [1,1]: 3.00', 'Items [null,3]: 9.00']);
  });

  it('can be put down between any two totals', () => {
    const versions = edited(SLAB, (e, cell) => {
      done(e.setFormula(cell('Area').id, '120 sq ft'));
      done(e.setFormula(cell('Slab / Price').id, '$6 per sq ft'));
    });
    const comparison = compare(...versions);
    const work = weighing(comparison, 'price');
    let steps = 0;
    let last = work.next();
    for (; !last.done; last = work.next()) steps++;
    expect(steps).toBe(4);
    expect(last.value).toEqual(whyMoved(comparison));
  });

  it('weighs the direct cost where that is asked for', () => {
    const versions = edited(SLAB, (e, cell) => done(e.setFormula(cell('Area').id, '120 sq ft')));
    expect(whyMoved(compare(...versions), 'direct')).toMatchObject({ difference: '100.00' });
  });

  it('takes no totals of two currencies from one another', () => {
    const euros = SLAB.replace('# Kestrel Court\n', '# Kestrel Court\n\n- Currency: euros\n');
    expect(whyMoved(compare(...apart(SLAB, euros.replaceAll('$', '€'))))).toBeNull();
  });

  it("says what today's tool makes otherwise than was frozen", () => {
    const job = opened(SLAB);
    const now: Version = { ...apart(SLAB, SLAB)[0], price: '560.00' };
    const moved = whyMoved(compare(apart(SLAB, SLAB)[0], now));
    expect(frozen(job).values.total.price).toBe('550.00');
    expect(moved).toMatchObject({
      difference: '10.00',
      pieces: [{ changes: [], amount: '10.00' }],
    });
  });
});

describe('beyond twelve changes', () => {
  const lines = Array.from({ length: 15 }, (_, i) => i + 1);
  const text = (amount: (n: number) => string, share: string): string =>
    `# K\n\n## P\n\n- Share: ${share}\n` +
    lines.map((n) => `- Line ${n}: ${amount(n)}\n  - cost: fee\n`).join('') +
    '- Markup: share of total cost of every part\n  - price: markup\n';

  it('averages over shuffled orders and their reverses and says so; pieces add up and mirror', () => {
    const [before, after] = apart(
      text((n) => `$${n}`, '10%'),
      text((n) => `$${n + 0.37}`, '20%'),
    );
    const moved = why([before, after]);
    expect(moved.method).toEqual({ kind: 'averaged', changes: 16, pairs: 75 });
    const sum = moved.pieces.reduce((total, { amount }) => total + centsOf(amount), 0n);
    expect(sum).toBe(centsOf(moved.difference));
    const back = why([after, before]);
    expect(back.pieces.map(({ amount }) => -centsOf(amount))).toEqual(
      moved.pieces.map(({ amount }) => centsOf(amount)),
    );
    expect(why([before, after]).said).toEqual(moved.said);
  });

  it('comes near what every order would give', () => {
    const versions = apart(
      text((n) => `$${n}`, '10%'),
      text((n) => `$${n + 1}`, '20%'),
    );
    // An added dollar brings its markup: 10% or 20%, half the orders each: $1.15. The share: 10% of 120 to 135, on
    // average 127.50: $12.75.
    const amounts = why(versions).pieces.map(({ amount }) => Number(amount));
    expect(Math.abs((amounts[0] ?? 0) - 12.75)).toBeLessThan(0.1);
    for (const amount of amounts.slice(1)) expect(Math.abs(amount - 1.15)).toBeLessThan(0.05);
  });
});

describe('on random pairs of notebooks', () => {
  const given = (...values: string[]) => fc.option(fc.constantFrom(...values), { freq: 6 });
  const job = fc.record({
    Length: given('10 ft', '12 ft', '13 ft 3 in', '?'),
    Rate: given('$3 per sq ft', '$3.33 per sq ft', '$9 per sq yd', '$2 per ft'),
    Waste: given('5%', '10%', '12.5%'),
    Hours: given('3 hours', '7.25 hours'),
    Area: given('length by length', 'length by 7 ft', 'length by', '90 sq ft'),
    Floor: given('area plus waste, at rate', 'area at rate', 'length at rate', '$700'),
    Labour: given('hours at $41.50 per hour', '$300 plus hours at $17 per hour'),
    Permit: given('$75', '$90.10'),
    Overhead: given('12% of total cost of every part', '$45', '8% of the total cost of Work'),
    Discount: given('$10', '2% of total cost of every part'),
  });
  const money: Readonly<Record<string, string>> = {
    Floor: 'cost: material',
    Labour: 'cost: labour',
    Permit: 'cost: fee',
    Overhead: 'price: overhead',
    Discount: 'price: discount',
  };
  type Job = typeof job extends fc.Arbitrary<infer T> ? T : never;
  const textOf = (cells: Job): string =>
    '# K\n\n## Work\n\n' +
    Object.entries(cells)
      .filter(([, formula]) => formula !== null)
      .map(([name, formula]) => {
        const line = money[name];
        return `- ${name}: ${formula}\n${line ? `  - ${line}\n` : ''}`;
      })
      .join('');

  it('pieces add up to the cent, mirror when the two are swapped, and what is unchanged gets none', () => {
    fc.assert(
      fc.property(job, job, (one, other) => {
        const versions = apart(textOf(one), textOf(other));
        const moved = why(versions);
        const amounts = moved.pieces.map(({ amount }) => centsOf(amount));
        const [before, after] = versions.map(({ price }) => centsOf(price));
        expect(amounts.reduce((sum, cents) => sum + cents, 0n)).toBe(after - before);
        const back = why([versions[1], versions[0]]);
        expect(back.pieces.map(({ amount }) => -centsOf(amount))).toEqual(amounts);
        const names = moved.said.flatMap((said) => said.replace(/: [-\d.]+$/, '').split(' + '));
        const changed = Object.keys(one).filter(
          (name) => one[name as keyof Job] !== other[name as keyof Job],
        );
        if (moved.method.kind !== 'together') expect(names.sort()).toEqual(changed.sort());
      }),
      { numRuns: CASES },
    );
  }, 120_000);

  it('every change gets its own piece where nothing leans on anything', () => {
    const amounts = fc.array(fc.integer({ min: 0, max: 5_000 }), { minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(amounts, amounts, (one, other) => {
        const text = (cents: readonly number[]): string =>
          `# K\n\n## P\n\n${cents.map((c, i) => `- L${i}x: $${(c / 100).toFixed(2)}\n  - cost: fee\n`).join('')}`;
        const { pieces } = why(apart(text(one), text(other)));
        const wanted = one.map((c, i) => BigInt((other[i] ?? 0) - c)).filter((c) => c !== 0n);
        expect(pieces.map(({ amount }) => centsOf(amount))).toEqual(wanted);
      }),
      { numRuns: 25 },
    );
  });
});
