import { describe, expect, it } from 'vitest';
import { bench, nodeOf, refused } from './bench.ts';

const at = bench(
  'Slab length: 12 ft',
  'Slab volume: 16 cubic feet',
  'Deck area: 224 sq ft',
  'Bag price: $6.48 per bag',
  'Bag yield: 0.45 cubic feet per bag',
  'Base rate: $38 per hour',
  'Loaded rate: base rate plus 25% plus $2 per hour',
  'Pace: 40 sq ft per hour',
  'Fall: 1/4 in per ft',
  'Steps: 52 1/2 in divided by 7 3/4 in, rounded up',
  'Hours: 8 hours',
  'Waste: 10%',
  'Turf dose: 3 cubic yards per 1000 sq ft per inch',
  'Money: $6.48',
);

describe('a quantity at a rate per what it measures is multiplied', () => {
  it.each([
    ['36 bags at bag price', '$233.28'],
    ['12 ft at 1/4 in per ft', '3 in'],
    ['12 ft at fall', '3 in'],
    ['12 ft at (fall times 2)', '6 in'],
    ['8:30 hours at $50 per hour', '$425.00'],
    ['hours at loaded rate', '$396.00'],
    ['3 people times 8 hours at $50 per hour per person', '$1,200.00'],
    ['3 people times 8 hours at $50 per hour', '$1,200.00'],
    ['3 people times 4 days at $400 per day', '$4,800.00'],
    ['40 bags at $6.48 each', '$259.20'],
    ['40 bags at $6.48', '$259.20'],
    ['steps at $40 each', '$280.00'],
    ['2 cubic yards at $145 per cubic yard', '$290.00'],
    ['slab length by 4 ft plus 10% at $5 per sq ft', '$264.00'],
    ['500 sq ft at $320 per 1000 sq ft', '$160.00'],
    ['8 hours per post at $50 per hour', '$400.00 per post'],
    ['3 screws per board at $0.05 per screw', '$0.15 per board'],
    ['10 ft at 3 lb per ft', '30 lb'],
    ['deck area by 2 in at turf dose, in cubic yards', '1.344 cubic yards'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('says so', () => {
    expect(nodeOf(at, '36 bags at bag price').manner).toBe('at-multiplied');
  });
});

describe('a quantity of what a rate is of is divided', () => {
  it.each([
    ['640 sq ft at 40 sq ft per hour', '16 hours'],
    ['640 sq ft at 40 sq ft per hour, at $50 per hour', '$800.00'],
    ['deck area at pace', '5.6 hours'],
    ['deck area at (pace times 2)', '2.8 hours'],
    ['slab volume at bag yield, rounded up', '36 bags'],
    ['12 holes times 1.5 cubic feet at bag yield', '40 bags'],
    ['1 cubic yard at 9 cubic feet per hour', '3 hours'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('says so', () => {
    expect(nodeOf(at, 'deck area at pace').manner).toBe('at-divided');
  });
});

describe('a bare number before a rate', () => {
  it.each([
    ['3 at bag price', '$19.44', '3 is read as 3 bags.'],
    ['8 at $50 per hour', '$400.00', '8 is read as 8 hours.'],
    ['30 at $2 per min', '$60.00', '30 is read as 30 min.'],
  ])('takes what the rate is per: %s → %s', (formula, shown, note) => {
    expect(at.shown(formula)).toBe(shown);
    expect(at.read(formula).notes).toEqual([note]);
  });

  it('asks where the rate is per a hard unit', () => {
    expect(refused(at, '12 at $5 per sq ft')).toMatchObject({
      code: 'bare-number',
      fixes: ['12 sq ft at $5 per sq ft'],
    });
  });

  it('that was worked out is asked what it counts', () => {
    expect(refused(at, 'steps at bag price')).toMatchObject({
      code: 'bare-number',
      fixes: ['(steps, as bags) at bag price'],
    });
    expect(refused(at, 'steps at base rate').fixes).toEqual(['(steps times 1 hour) at base rate']);
  });
});

describe('what neither multiplies nor divides is refused', () => {
  it('a count of another thing', () => {
    const found = refused(at, '36 boards at bag price');
    expect(found).toMatchObject({
      code: 'noun-clash',
      spots: ['36 boards', 'bag price'],
      fixes: ['(36 boards, as bags) at bag price'],
    });
    expect(found.message).toContain('The price is per bag, the quantity counts boards.');
  });

  it('with both readings', () => {
    expect(refused(at, 'slab length at bag price')).toMatchObject({
      code: 'two-readings',
      fixes: ['slab length times bag price', 'slab length divided by bag price'],
    });
  });

  it('plain money after what is no count asks per what', () => {
    expect(refused(at, '8 hours at $50')).toMatchObject({
      code: 'price-per-what',
      fixes: ['8 hours at $50 per hour'],
    });
    expect(refused(at, 'deck area at $5').fixes).toEqual(['deck area at $5 per sq ft']);
    expect(refused(at, '3 at $6.48').fixes).toEqual([
      '3 at $6.48 each',
      '3 hours at $6.48 per hour',
    ]);
    expect(refused(at, '$8 at $50')).toMatchObject({
      code: 'two-readings',
      fixes: ['$8 divided by $50'],
    });
    expect(refused(at, 'hours at money').fixes).toEqual(['hours at (money divided by 1 hour)']);
  });

  it('a volume at a price per yard asks whether it is a cubic yard', () => {
    expect(refused(at, 'slab volume at $145 per yard')).toMatchObject({
      code: 'per-which-yard',
      fixes: ['slab volume at $145 per cubic yard'],
    });
  });

  it('a share', () => {
    expect(refused(at, '$1,000 at waste')).toMatchObject({
      code: 'two-readings',
      fixes: ['(waste times $1,000)', '($1,000 plus waste)'],
    });
  });
});
