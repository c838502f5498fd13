import { describe, expect, it } from 'vitest';
import { bench, nodeOf, refused } from './bench.ts';

const at = bench(
  'Slab length: 12 ft',
  'Slab width: 4 ft',
  'Thickness: 4 in',
  'Total rise: 52 1/2 in',
  'Bag yield: 0.45 cubic feet per bag',
  'Bag price: $6.48 per bag',
  'Posts: 4 posts',
  'Bags: 2 bags',
  'Holes: 12 holes',
  'Hole volume: 1.5 cubic feet',
  'Ratio: 2.5',
  'Species: "hem-fir"',
  'Steep: yes',
);

describe('units multiply and divide', () => {
  it.each([
    ['slab length by slab width', '48 sq ft'],
    ['slab length by slab width by thickness', '16 cubic feet'],
    ['slab length by slab width by thickness, in cubic yards', '0.5926 cubic yards'],
    ['(slab length by slab width by thickness) divided by bag yield, rounded up', '36 bags'],
    ['total rise divided by 7 risers', '7 1/2 in per riser'],
    ['total rise divided by 7 3/4 in, rounded up', '7'],
    ['1 ft divided by 3, times 3', '1 ft'],
    ['2/3 times 3, rounded up', '2'],
    ['12 ft divided by 2', '6 ft'],
    ['1 m divided by 25.4 mm, rounded', '39'],
    ['16 cubic feet over 48 sq ft', '4 in'],
    ['$100 divided by 8 hours', '$12.50 per hour'],
    ['12 by 4', '48'],
    ['slab length times 2', '24 ft'],
    ['slab length times ratio', '30 ft'],
    ['10% times $200', '$20.00'],
    ['10% times 2', '20%'],
    ['50% times 50%', '25%'],
    ['10% divided by 2', '5%'],
    ['$200 divided by 50%', '$400.00'],
    ['50% divided by 25%', '2'],
    ['bag price times 2', '$12.96 per bag'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('a plain number leaves a rate its two sides', () => {
    const rate = nodeOf(at, 'bag price times 2').holds;
    expect(rate.measure.kind === 'amount' && rate.measure.rate).not.toBeNull();
    expect(rate.showIn).not.toBeNull();
  });

  it('more than three lengths are refused', () => {
    expect(refused(at, 'slab length by slab width by thickness by slab width').code).toBe(
      'too-many-lengths',
    );
    expect(refused(at, '$5 times $6').code).toBe('too-many-lengths');
  });
});

describe('a price per yard beside a volume or an area', () => {
  it('asks which yard', () => {
    expect(refused(at, '$140 per yard times hole volume')).toMatchObject({
      code: 'per-which-yard',
      fixes: ['$140 per cubic yard times hole volume'],
    });
    expect(refused(at, '(slab length by slab width) times $9 per yd').fixes).toEqual([
      '(slab length by slab width) times $9 per square yard',
    ]);
    expect(at.shown('slab length times $9 per yard')).toBe('$36.00');
  });
});

describe('counted things', () => {
  it.each([
    ['36 bags times bag price', '$233.28'],
    ['12 boards times 3 screws per board', '36 screws'],
    ['12 joists times 10 ft', '120 ft'],
    ['3 people times 8 hours', '24 hours'],
    ['3 people times 2 days times 8 hours per day', '48 hours'],
    ['3 people times 8 hours per day times 2 days', '48 hours'],
    ['40 bags times $6.48 each', '$259.20'],
    ['40 bags divided by 8 posts', '5 bags per post'],
    ['36 boards divided by 3 boards per bundle', '12 bundles'],
    ['holes times hole volume divided by bag yield, rounded up', '40 bags'],
    ['holes times hole volume times 2 bags per cubic foot', '36 bags'],
    ['40 person-hours divided by 8 hours', '5 people'],
    ['posts times 2 bags per post', '8 bags'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it.each(['36 boards times bag price', 'bag price times 36 boards', '36 boards by bag price'])(
    'a count of one thing and a price per another are refused: %s',
    (formula) => {
      const found = refused(at, formula);
      expect(found.code).toBe('noun-clash');
      expect(found.message).toContain('The price is per bag, the quantity counts boards.');
      expect(found.fixes).toEqual([formula.replace('36 boards', '(36 boards, as bags)')]);
    },
  );

  it('a count divided by a rate per that thing is offered `at`', () => {
    expect(refused(at, '3 bags divided by bag price')).toMatchObject({
      code: 'count-over-rate',
      fixes: ['3 bags at bag price'],
    });
    expect(refused(at, '36 boards divided by bag yield')).toMatchObject({
      code: 'count-over-rate',
      fixes: [],
    });
  });

  it('a thing times another thing asks', () => {
    expect(refused(at, '4 posts times 2 bags')).toMatchObject({
      code: 'noun-by-noun',
      fixes: ['4 posts times 2 bags per post', '4 posts per bag times 2 bags'],
    });
    expect(refused(at, 'posts times bags').fixes).toEqual(['posts times (bags divided by 1 post)']);
    expect(refused(at, '3 people times 2 posts').code).toBe('noun-by-noun');
  });
});

describe('a bare number by a length could be a side or a factor', () => {
  it.each([
    ['12 by 4 ft', ['12 ft by 4 ft', '12 in by 4 ft', '12 times 4 ft']],
    ['12x4 ft', ['12 ft x 4 ft', '12 in x 4 ft', '12 times 4 ft']],
    ['slab length by 2', ['slab length by 2 ft', 'slab length by 2 in', 'slab length times 2']],
    [
      'slab length by slab width by 4',
      [
        'slab length by slab width by 4 ft',
        'slab length by slab width by 4 in',
        'slab length by slab width times 4',
      ],
    ],
    [
      '12 by 4 by 4 in',
      ['12 ft by 4 ft by 4 in', '12 in by 4 in by 4 in', '12 times 4 times 4 in'],
    ],
  ])('%s', (formula, fixes) => {
    expect(refused(at, formula)).toMatchObject({ code: 'two-readings', fixes });
  });
});

describe('text and yes or no', () => {
  it('are no amounts; yes or no may be meant as a condition', () => {
    expect(refused(at, 'species times 2').code).toBe('not-an-amount');
    expect(refused(at, 'steep times $50')).toMatchObject({
      code: 'not-an-amount',
      spots: ['steep'],
      fixes: ['($50 where steep, otherwise 0)'],
    });
    expect(refused(at, '$50 divided by steep').fixes).toEqual([]);
  });
});
