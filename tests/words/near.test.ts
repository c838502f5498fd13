// Nearest names for a name that is not known.
import { expect, test } from 'vitest';
import { nearNames } from '../../src/words/near.ts';

const names = [
  'slab length',
  'slab width',
  'slab volume',
  'landing slab length',
  'bag price',
  'bags to buy',
  'total rise',
  'waste',
  'board price',
  'C',
];

test.each([
  ['slab lenght', ['slab length', 'landing slab length']],
  ['slab lengt', ['slab length', 'landing slab length']],
  ['Slab  Length', ['slab length', 'landing slab length']],
  ['length slab', ['slab length', 'landing slab length']],
  ['wate', ['waste']],
  ['rise', ['total rise']],
  ['bagprice', ['bag price']],
])('%s is near %j', (typed, near) => {
  expect(nearNames(typed, names)).toEqual(near);
});

test('a name that is nothing like it is not offered', () => {
  expect(nearNames('chimney', names)).toEqual([]);
  expect(nearNames('x', names)).toEqual([]);
  expect(nearNames('', names)).toEqual([]);
});

test('no more are offered than were asked for, and none twice', () => {
  expect(nearNames('slab', [...names, ...names], 2)).toEqual(['slab width', 'slab length']);
});

test('two letters that changed places are one slip, not two', () => {
  expect(nearNames('wsate', ['waste'])).toEqual(['waste']);
});

test('ten thousand names are ranked without a wait', () => {
  const many = Array.from({ length: 10_000 }, (_, i) => `shed ${i} slab area`);
  expect(nearNames('shed 4217 slab aera', many)[0]).toBe('shed 4217 slab area');
});
