// The examples that every build of the language must get right (the table of its design page, §7).
import { describe, expect, it } from 'vitest';
import { worked } from './worked.ts';

describe('a formula that can be read gives its value', () => {
  const cases: readonly (readonly [string, string])[] = [
    ['slab length by slab width by thickness', '16 cubic feet'],
    ['slab length by slab width by thickness plus waste, in bags of 0.45 cubic feet', '40 bags'],
    ['(slab length by slab width by thickness) divided by bag yield, rounded up', '36 bags'],
    ['36 bags at bag price', '$233.28'],
    ['3 at bag price', '$19.44'],
    ['slab length by slab width by thickness plus waste, in bags of bag yield', '40 bags'],
    ['joists every 16 in along deck width', '12 joists'],
    ['joists every 16 in along 12 ft', '10 joists'],
    ['total rise divided by 7 risers', '7 1/2 in per riser'],
    ['total rise divided by 7 3/4 in, rounded up', '7'],
    ['1,260 screws in boxes of 350 screws', '4 boxes'],
    ['640 sq ft at 40 sq ft per hour, at $50 per hour', '$800.00'],
    ['slab length by slab width plus 10% at $5 per sq ft', '$264.00'],
    ['$1,000 marked up 20%', '$1,200.00'],
    ['$1,000 for a 20% margin', '$1,250.00'],
    ['$7,500 for 10% overhead and 15% profit', '$10,000.00'],
    ['12 ft at 1/4 in per ft', '3 in'],
    ['fewest balusters of 1 1/2 in across 72 in with gaps under 4 in', '13 balusters'],
    ['even gap for 13 balusters of 1 1/2 in across 72 in', '3 3/4 in'],
    ['$1,000 ÷ (1 − 10% − 15%)', '$1,333.33'],
    ['$1,000 plus 12% overhead plus 10% profit', '$1,232.00'],
    ['10.8 ft', '10 ft 9 5/8 in, a hair shy'],
    ['8:30 hours at $50 per hour', '$425.00'],
    ['50 boards plus 10%, rounded up', '55 boards'],
    ['2/3 times 3, rounded up', '2'],
    ['1 ft divided by 3, times 3', '1 ft'],
    ['10 ft - 7-1/2 in', '9 ft 4 1/2 in'],
    ['thickness or 5 in, whichever is greater, plus 1 in', '6 in'],
    ['5 pieces of 9 ft from 16 ft boards', '5 boards'],
    ['3 people times 8 hours at $50 per hour per person', '$1,200.00'],
    ['3 people times 8 hours at $50 per hour', '$1,200.00'],
    ['diagonal of 3 ft and 4 ft', '5 ft'],
    ['6 in where thickness is less than 4 in, otherwise 4 in', '4 in'],
    ['0.6 cubic yards rounded up to the next 1/4 cubic yard', '0.75 cubic yards'],
    ['what share $42 is of $60', '70%'],
    ['what share $42 is of $60, times 2', '140%'],
    ['thickness is at least 4 in and slab width is under 5 ft', 'yes'],
  ];
  it.each(cases)('%s → %s', (formula, shown) => {
    const answer = worked(formula);
    expect(answer.message).toBe('');
    expect(answer.shown).toBe(shown);
  });

  it('shows a volume in the unit asked for and keeps it exact', () => {
    const answer = worked('slab length by slab width by thickness, in cubic yards');
    expect(answer.unit).toBe('cubic yd');
    expect(answer.exact).toMatch(/^0\.592592592592592592592592592592592592592[56]?/);
  });

  it('splits overhead and profit out of the price, each as asked', () => {
    expect(worked('10% of ($7,500 for 10% overhead and 15% profit)').shown).toBe('$1,000.00');
    expect(worked('15% of ($7,500 for 10% overhead and 15% profit)').shown).toBe('$1,500.00');
  });
});

describe('a formula that can not be read rightly says so, with fixes that read', () => {
  const cases: readonly (readonly [string, string, readonly (string | null)[]])[] = [
    ['36 boards at bag price', 'noun-clash', []],
    ['slab length plus bag price', 'unit-clash', []],
    ['total of $100, $100 and $100 plus 10%', 'two-readings', ['$310.00', '$330.00']],
    ['12 ft rounded up', 'no-rounding-step', ['12 ft']],
    ['slab lenght by 2', 'unknown-name', []],
    [
      'direct cost plus $50 where slab width is more than 100 ft, otherwise $0',
      'two-readings',
      ['$0.00', '$7,500.00'],
    ],
    ['16 1/2 in boards', 'two-readings', []],
    ['12 by 4 ft', 'two-readings', ['48 sq ft', '4 sq ft', '48 ft']],
    ['12\' - 6"', 'two-readings', ['12 ft 6 in', '11 ft 6 in']],
    ['6 in 12 ft boards', 'two-readings', []],
  ];
  it.each(cases)('%s → %s', (formula, code, values) => {
    const answer = worked(formula);
    expect(answer.code).toBe(code);
    expect(answer.shown).toBeNull();
    expect(answer.spots.length).toBeGreaterThan(0);
    if (values.length > 0) expect(answer.fixes.map((fix) => worked(fix).shown)).toEqual(values);
  });

  it('offers the nearest name and takes none by itself', () => {
    const answer = worked('slab lenght by 2');
    expect(answer.fixes).toContain('slab length by 2');
    expect(answer.spots).toEqual(['slab lenght']);
  });
});
