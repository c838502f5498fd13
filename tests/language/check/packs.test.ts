import { describe, expect, it } from 'vitest';
import { bench, nodeOf, refused } from './bench.ts';

const at = bench(
  'Slab volume: 16 cubic feet',
  'Waste: 10%',
  'Bag yield: 0.45 cubic feet per bag',
  'Board length: 16 ft',
  'Railing: 50 ft',
  'Screws: 1260 screws',
  'Steps: 52 1/2 in divided by 7 3/4 in, rounded up',
  'Cuts: 5',
);

describe('packs are whole and rounded up', () => {
  it.each([
    ['1,260 screws in boxes of 350 screws', '4 boxes'],
    ['screws in boxes of 350', '4 boxes'],
    ['(1,260) in boxes of 350 screws', '4 boxes'],
    ['slab volume plus waste, in bags of 0.45 cubic feet', '40 bags'],
    ['slab volume plus waste, in bags of bag yield', '40 bags'],
    ['12 holes times 1.5 cubic feet, in bags of bag yield', '40 bags'],
    ['railing in 16 ft boards', '4 boards'],
    ['railing in boards of board length', '4 boards'],
    ['12 ft in 96 in boards', '2 boards'],
    ['1 m in 10 cm tiles', '10 tiles'],
    ['steps in boxes of 4', '2 boxes'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('of a length are one run, and say so', () => {
    expect(nodeOf(at, 'railing in 16 ft boards').note).toContain('one continuous run');
    expect(at.read('railing in 16 ft boards').notes).toHaveLength(1);
    expect(at.read('screws in boxes of 350 screws').notes).toEqual([]);
  });

  it.each([
    ['slab volume in bags of 350 screws', 'unit-clash'],
    ['screws in boxes of 350 bolts', 'noun-clash'],
    ['slab volume in boxes of bag yield', 'noun-clash'],
    ['railing in boards of 16', 'bare-number'],
    ['steps in boxes of 350 screws', 'unit-clash'],
  ])('%s: %s', (formula, code) => {
    expect(refused(at, formula).code).toBe(code);
  });
});

describe('pieces are cut whole from each stock length', () => {
  it.each([
    ['5 pieces of 9 ft from 16 ft boards', '5 boards'],
    ['5 pieces of 5 ft from 16 ft boards', '2 boards'],
    ['cuts pieces of 8 ft from 16 ft boards', '3 boards'],
    ['4 pieces of 1 m from 4 m boards', '1 board'],
    ['16 pieces of 1/3 ft from 16 ft boards', '1 board'],
  ])('%s → %s', (formula, shown) => {
    expect(at.shown(formula)).toBe(shown);
  });

  it('a piece that is longer than its stock is refused', () => {
    expect(refused(at, '5 pieces of 17 ft from 16 ft boards')).toMatchObject({
      code: 'piece-too-long',
      spots: ['17 ft', '16 ft'],
      fixes: ['5 pieces times 17 ft, in boards of 16 ft'],
    });
  });

  it('what is no length is refused', () => {
    expect(refused(at, '5 pieces of $9 from 16 ft boards').code).toBe('not-a-length');
    expect(refused(at, '5 pieces of 9 from 16 ft boards').code).toBe('bare-number');
  });
});
