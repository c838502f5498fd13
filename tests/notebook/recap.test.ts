// What the job costs, by part and kind, in cents that add up.
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { cellNamed } from './cells.ts';

// Many random cases: slow only where many are at work on one machine.
vi.setConfig({ testTimeout: 60_000 });

const cents = (text: string): bigint => BigInt(text.replace('.', ''));
const KINDS = ['material', 'labour', 'equipment', 'subcontract', 'fee'] as const;

describe('a recap', () => {
  it('adds every cost line of a part by its kind, wherever it stands, and says how many', () => {
    const estimate = new Estimate(
      '- Permit: $45\n  - cost: fee\n## A\n- Wood: $10.10\n  - cost: material\n\n### Later\n\nProse.\n\n- Hours: 2 hours\n- Work: hours at $50 per hour\n  - cost: labour\n## B\n- Nothing: 3 ft\n',
    );
    const { parts, total, shares } = estimate.costs();
    expect(parts.map((p) => [p.part, p.lines, p.material, p.labour, p.fee, p.direct])).toEqual([
      ['', 1, '0.00', '0.00', '45.00', '45.00'],
      ['A', 2, '10.10', '100.00', '0.00', '110.10'],
      ['B', 0, '0.00', '0.00', '0.00', '0.00'],
    ]);
    expect(total).toMatchObject({ lines: 3, direct: '155.10', price: '155.10', incomplete: [] });
    expect(shares.labour).toBeCloseTo(100 / 155.1, 12);
  });

  it('rounds each line to the cent before it adds, so that three thirds of a dollar come to 99 cents', () => {
    const third = (n: number): string => `- Third ${n}: $1 divided by 3\n  - cost: material\n`;
    const estimate = new Estimate(
      `## A\n${third(1)}${third(2)}${third(3)}- Sum: total cost of A\n`,
    );
    expect(estimate.costs().total.direct).toBe('0.99');
    expect(estimate.shown(cellNamed(estimate.notebook, 'Sum').id)?.text).toBe('$0.99');
  });

  it('puts overhead, contingency, markup and tax on top, and takes a discount off whatever its sign', () => {
    const line = (kind: string, amount: string): string =>
      `- ${kind}: ${amount}\n  - price: ${kind}\n`;
    const estimate = new Estimate(
      `## A\n- Wood: $1,000\n  - cost: material\n${line('overhead', '$100')}${line('contingency', '$50')}${line('markup', '$200')}${line('tax', '$10.50')}${line('discount', '$60')}## B\n${line('discount', '−$40')}`,
    );
    const { parts, total } = estimate.costs();
    expect([total.direct, total.price]).toEqual(['1000.00', '1260.50']);
    expect(parts[1]).toMatchObject({ part: 'B', lines: 0, price: '-40.00' });
  });

  it('names the lines that a sum leaves out, however far they are carried', () => {
    const estimate = new Estimate(
      '## A\n- Known: $10\n  - cost: material\n- Open: $?\n  - cost: labour\n- Broken: known plus nobody\n  - cost: fee\n- Waits: broken times 2\n  - cost: fee\n- Sum: total cost of A\n- Half: sum divided by 2\n- Share: sum times 10%\n  - price: overhead\n',
    );
    const name = (id: number): string => estimate.state(id).input.name;
    const { total } = estimate.costs();
    expect(total.incomplete.map(name)).toEqual(['Open', 'Broken', 'Waits']);
    expect([total.lines, total.direct, total.price]).toEqual([4, '10.00', '11.00']);
    const shown = (said: string): string | undefined =>
      estimate.shown(cellNamed(estimate.notebook, said).id)?.text;
    expect(shown('Half')).toBe('$5.00 so far; 3 lines without a value');
    const open = new Estimate(
      '## A\n- Known: $10\n  - cost: material\n- Open: $?\n  - cost: labour\n- Sum: total cost of A\n',
    );
    expect(open.shown(cellNamed(open.notebook, 'Sum').id)?.text).toBe(
      '$10.00 so far; 1 line not yet known',
    );
  });

  it('has parts that add up to the total, and kinds that add up to the direct cost, to the cent', () => {
    const amount = fc.integer({ min: -99_999_999, max: 99_999_999 });
    const line = fc.record({
      amount,
      by: fc.integer({ min: 1, max: 13 }),
      kind: fc.constantFrom(...KINDS),
    });
    fc.assert(
      fc.property(
        fc.array(fc.array(line, { maxLength: 6 }), { minLength: 1, maxLength: 4 }),
        (parts) => {
          const text = parts
            .map((lines, p) =>
              [`## Part ${p}`]
                .concat(
                  lines.map(
                    ({ amount: a, by, kind }, i) =>
                      `- Line ${p} ${i}: ${a < 0 ? '−' : ''}$${(Math.abs(a) / 100).toFixed(2)} divided by ${by}\n  - cost: ${kind}`,
                  ),
                )
                .join('\n'),
            )
            .join('\n\n');
          const estimate = new Estimate(`${text}\n`);
          const costs = estimate.costs();
          expect(costs.total.incomplete).toEqual([]);
          for (const key of [...KINDS, 'direct', 'price'] as const) {
            const sum = costs.parts.reduce((all, row) => all + cents(row[key]), 0n);
            expect(cents(costs.total[key])).toBe(sum);
          }
          for (const row of [...costs.parts, costs.total]) {
            expect(KINDS.reduce((all, kind) => all + cents(row[kind]), 0n)).toBe(cents(row.direct));
          }
          // Against whole-number arithmetic, half a cent away from zero.
          const expected = parts.flat().reduce((all, { amount: a, by }) => {
            const whole = (2 * Math.abs(a) + by) / (2 * by);
            return all + BigInt(Math.sign(a) * Math.floor(whole));
          }, 0n);
          expect(cents(costs.total.direct)).toBe(expected);
        },
      ),
      { numRuns: 60 },
    );
  });
});
