import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bench } from './bench.ts';

const at = bench(
  'Slab length: 12 ft',
  'Slab area: 48 sq ft',
  'Bag price: $6.48 per bag',
  'Bag yield: 0.45 cubic feet per bag',
  'Waste: 10%',
  'Boards: 12 boards',
  'Cost: $250',
  'Hours: 8 hours',
  'Factor: 2.5',
  'Species: "hem-fir"',
  'Steep: yes',
  'Later: ?',
  'Rise: 52 in divided by 7 risers',
  'Fall: 1/4 in per ft',
  'Broken: 12 ft plus $4',
  'Runs: 2.5 m',
);

const ATOMS = (
  'slab length|slab area|bag price|bag yield|waste|boards|cost|hours|factor|species|steep|later|' +
  'rise|fall|broken|runs|12|0|1|100%|4 ft|$5|3 bags|$50 per hour|$2 each|2 people|3 days|10%|0.5|' +
  '3/4|85 cents|2 sq m|40 sq ft per hour|$3 per 100 sq ft|pi|"pine"|30 min'
).split('|');
const WORDS = 'plus|minus|times|by|at|over|is|is under|and|or|not less than|marked up by'.split(
  '|',
);
const atom = fc.constantFrom(...ATOMS);
const joined = (a: string, b: string, word: string): string => `(${a}) ${word} (${b})`;
const formula = fc.letrec<{ value: string; pair: string; clause: string }>((tie) => ({
  value: fc.oneof({ maxDepth: 3 }, atom, tie('pair'), tie('clause')),
  pair: fc
    .tuple(tie('value'), tie('value'), fc.constantFrom(...WORDS))
    .map(([a, b, word]) => joined(a, b, word)),
  clause: fc
    .tuple(tie('value'), tie('value'))
    .chain(([a, b]) =>
      fc.constantFrom(
        `(${a}) rounded up`,
        `(${a}) rounded to the nearest (${b})`,
        `(${a}) in cubic yards`,
        `(${a}) in feet`,
        `(${a}), as boards`,
        `(${a}) in bags of (${b})`,
        `(${a}) for a margin of (${b})`,
        `(${a}) squared`,
        `square root of (${a})`,
        `diagonal of (${a}) and (${b})`,
        `total of (${a}) and (${b})`,
        `what share (${a}) is of (${b})`,
        `10% of (${a})`,
        `joists every (${a}) along (${b})`,
        `even gap for (${a}) balusters of (${b}) across (${a})`,
        `(${a}) where (${b}), otherwise (${a})`,
        `the greater of (${a}) and (${b})`,
        `circle area for (${a}) diameter`,
      ),
    ),
})).value;

describe('whatever is written', () => {
  it('checking ends in a result, one problem with its fixes, or something to wait for', () => {
    fc.assert(
      fc.property(formula, (text) => {
        const { checked, problems, waitsFor } = at.read(text);
        if (checked) {
          expect([problems, waitsFor]).toEqual([[], []]);
          return;
        }
        expect(problems.length + waitsFor.length).toBeGreaterThan(0);
        for (const problem of problems) {
          expect(problem.headline.length).toBeLessThan(60);
          expect(problem.headline + problem.explanation).not.toMatch(/undefined|null|NaN|\[object/);
          expect(problem.explanation).toMatch(/[.…]$/);
          for (const { from, to } of problem.spots) {
            expect(from >= 0 && from < to && to <= text.length).toBe(true);
          }
          const starts = problem.spots.map((s) => s.from);
          expect(starts).toEqual([...starts].sort((a, b) => a - b));
        }
      }),
      { numRuns: 3000 },
    );
  });

  it('fixes applied one after another come to an end', () => {
    fc.assert(
      fc.property(formula, fc.nat(3), (text, pick) => {
        const steps = [text];
        for (;;) {
          const last = steps.at(-1) ?? '';
          const fixes = at.read(last).problems[0]?.fixes ?? [];
          const fix = fixes[pick % Math.max(1, fixes.length)];
          if (!fix) return;
          expect(steps).not.toContain(fix.formula);
          steps.push(fix.formula);
          expect(steps.length).toBeLessThan(40);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
