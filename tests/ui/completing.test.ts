// What is offered at a place in a formula, by what it means there. The caret is written as a bar.
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { Nouns } from '../../src/quantity/nouns.ts';
import { type Wanted, completionsAt, namesFor, unitsFor } from '../../src/ui/completing.ts';
import { allCells } from '../../src/ui/reading-order.ts';
import { senseOf } from '../../src/ui/sense-of.ts';

const JOB = `# Kestrel Court

## Deck

- Deck area: 224 sq ft
- Deck width: 14 ft
- Joists: 12 joists
- Board price: $9 per board
- Laying rate: 40 sq ft per hour

## Landing

- Answer: 1
- Concrete: 1
  - cost: material
- Bag price: $6.48 per bag
- Bag yield: 0.45 cubic feet per bag
- Bags to buy: 36 bags
- Crew rate: $50 per hour
- Slab length: 12 ft
- Slab volume: 16 cubic feet
- Step: 1/4 cubic yard
- Thickness: 4 in
- Truck step: 1/2 cubic yard
- Waste: 10%
- Wood: hem-fir
  - choices: species of spans
- Is deep: thickness is at least 3 in
- Follows: answer plus 1

## Tables

- Spans:

  | species | joist spacing | span |
  | --- | --- | --- |
  | hem-fir | 16 in | 12 ft |
  | pine | 16 in | 11 ft |

- Bays:

  | bay | volume |
  | --- | --- |
  | south | 2 cubic yards |
`;

const estimate = new Estimate(JOB);

function offered(marked: string, wanted: Wanted = 'asked', own = 'Answer'): readonly string[] {
  const caret = marked.indexOf('|');
  const text = marked.replace('|', '');
  const cell = allCells(estimate.notebook).find(({ name }) => name === own);
  if (!cell) throw new Error(`no cell called ${own}`);
  const nouns = new Nouns([]);
  return completionsAt(
    text,
    caret,
    namesFor(estimate.notebook, cell.part, cell.id),
    unitsFor(nouns, null),
    wanted,
    senseOf(estimate, cell, nouns)(text),
  ).map(({ candidate }) => candidate.label ?? candidate.text);
}

describe('where a length is needed', () => {
  test.each([
    ['joists every |', ['slab length', 'thickness', 'deck width']],
    ['joists every 16 in along |', ['slab length', 'thickness', 'deck width']],
    ['diagonal of 3 ft and |', ['slab length', 'thickness', 'deck width']],
    ['slab length plus |', ['slab length', 'thickness', 'waste', 'deck width']],
    ['(slab length plus thickness) minus |', ['slab length', 'thickness', 'waste', 'deck width']],
    ['slab length is at least |', ['slab length', 'thickness', 'deck width']],
    ['slab length by |', ['slab length', 'thickness', 'deck width']],
  ])('lengths come first: %s', (marked, first) => {
    expect(offered(marked).slice(0, first.length)).toEqual(first);
    expect(offered(marked, 'unasked')).toEqual(first);
  });

  test('a name that is begun stands by what it measures: lengths before the rest', () => {
    expect(offered('joists every s|').length).toBe(0);
    expect(offered('joists every sl|', 'unasked')).toEqual(['slab length', 'slab volume']);
    expect(offered('slab volume rounded up to the next st|', 'unasked')).toEqual([
      'step',
      'truck step',
    ]);
  });
});

describe('what fits what stands at the left', () => {
  test('a step is offered that measures the same', () => {
    expect(offered('slab volume, rounded up to the next |').slice(0, 3)).toEqual([
      'slab volume',
      'step',
      'truck step',
    ]);
  });

  test('after at, rates for what stands at the left come first, then those that give it', () => {
    expect(offered('bags to buy at |').slice(0, 2)).toEqual(['bag price', 'bag yield']);
    expect(offered('bags to buy at |', 'unasked', 'Concrete')).toEqual(['bag price', 'bag yield']);
    expect(offered('deck area at |', 'unasked')).toEqual(['laying rate']);
    expect(offered('16 hours at |', 'unasked')).toEqual(['crew rate', 'laying rate']);
  });

  test('in a cost line, rates in money come before other rates for the same thing', () => {
    expect(offered('2 bags at |', 'asked', 'Concrete').indexOf('bag price')).toBe(0);
    expect(offered('|', 'asked', 'Concrete')[0]).not.toBe('waste');
  });

  test('packs are offered that hold it', () => {
    expect(offered('slab volume in bags of |', 'unasked')[0]).toBe('bag yield');
  });

  test('what waits for this cell comes last: it would go around in a circle', () => {
    const all = offered('1 times |');
    expect(all).not.toContain('follows');
  });
});

describe('phrases', () => {
  test('clauses go on from a value, by what it measures', () => {
    expect(offered('slab volume |')).toEqual([
      'in bags of …',
      'in cubic yards',
      'in cubic feet',
      'rounded up to the next …',
      'plus …',
      'at …',
      'is at least …',
    ]);
    expect(offered('bags to buy |')[0]).toBe('in boxes of …');
    expect(offered('$100 |')).toContain('for a … margin');
    expect(offered('slab volume |', 'unasked')).toEqual([]);
    expect(offered('slab volume in b|', 'unasked')).toContain('in bags of …');
  });

  test('phrases begin a value, by their first words', () => {
    expect(offered('few|', 'unasked')).toEqual(['fewest … of … across … with gaps under …']);
    expect(offered('12 ft plus diag|', 'unasked')).toEqual(['diagonal of … and …']);
    expect(offered('jois|', 'unasked')).toContain('joists every … along …');
    expect(offered('slab volume few|', 'unasked')).toEqual([]);
  });
});

describe('tables', () => {
  test.each([
    ['total of |', ['joist spacing in spans', 'span in spans', 'volume in bays']],
    ['total of vo|', ['volume in bays']],
    ['read sp|', ['species off spans', 'span off spans']],
    ['read span off spans for |', ['species', 'joist spacing']],
    ['read span off spans for species |', ['hem-fir', 'pine']],
    ['read span off spans for species hem-fir, |', ['joist spacing']],
    ['wood is |', ['hem-fir', 'pine']],
    ['thickness where wood is not p|', ['pine']],
  ])('%s', (marked, first) => {
    expect(offered(marked).slice(0, first.length)).toEqual(first);
  });
});

test('the own part comes first, then parts nearby, then the name', () => {
  const cell = allCells(estimate.notebook).find(({ name }) => name === 'Deck width');
  const names = namesFor(estimate.notebook, cell?.part ?? '', cell?.id ?? null);
  expect(names.slice(0, 5).map(({ text }) => text)).toEqual([
    'board price',
    'deck area',
    'joists',
    'laying rate',
    'answer',
  ]);
  expect(names.at(-1)?.text).toBe('spans');
});

test('what is offered can be read: each clause and each phrase that is worked says what it gives', () => {
  const cell = allCells(estimate.notebook).find(({ name }) => name === 'Answer');
  if (!cell) throw new Error('no answer');
  const sense = senseOf(estimate, cell, new Nouns([]))('slab volume ');
  const [bags, yards] = sense.phrases(12, '');
  expect(bags?.hint?.()).toBe('16 cubic feet in bags of 0.45 cubic feet: 36 bags');
  expect(yards?.hint?.()).toBe('gives 0.5926 cubic yards');
});
