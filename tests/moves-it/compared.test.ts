// Alternatives and what is watched: the same figures as the notebook would have with the change made in it.
import { describe, expect, it } from 'vitest';
import { Watch, compareAlternatives } from '../../src/moves-it/compared.ts';
import { openedText, opened } from './opened.ts';
import { templateText } from '../templates/texts.ts';

const job = [
  'Slab length: 12 ft',
  'Bag price: $6.48 per bag',
  'Waste: 10%, 5 at best, 15 at worst',
  'Volume: slab length by 4 ft by 4 in',
  'Bags: volume plus waste, in bags of 0.45 cubic feet per bag',
  'Concrete: bags at bag price',
  '  - cost: material',
  'Thick enough: volume is at least 15 cubic feet',
  'Late: ? hours',
];

describe('alternatives', () => {
  it('stand side by side with what the notebook has', () => {
    const open = opened(...job);
    const [length, price] = ['Slab length', 'Bag price'].map(open.cell);
    const results = ['Concrete', 'Bags', 'Thick enough', 'Late'].map(open.cell);
    const told = compareAlternatives(
      open.estimate,
      [
        { name: 'Shorter', puts: [{ cell: length, formula: '3 m' }] },
        {
          name: 'Longer and dearer',
          puts: [
            { cell: length, formula: '14 ft' },
            { cell: price, formula: '$7' },
            { cell: price, formula: '$7 per bag' },
          ],
        },
        { name: 'As it is', puts: [] },
      ],
      results,
    );
    const lines = told.map(({ name, seen }) => [
      name,
      ...seen.map(({ now, then, change, moves }) => [now?.text, then?.text, change?.text, moves]),
    ]);
    expect(lines).toEqual([
      [
        'Shorter',
        ['$259.20', '$213.84', '−$45.36', 'down'],
        ['40 bags', '33 bags', '−7 bags', 'down'],
        ['yes', 'no', undefined, 'otherwise'],
        [undefined, undefined, undefined, 'not'],
      ],
      [
        'Longer and dearer',
        ['$259.20', '$322.00', '$62.80', 'up'],
        ['40 bags', '46 bags', '6 bags', 'up'],
        ['yes', 'yes', undefined, 'not'],
        [undefined, undefined, undefined, 'not'],
      ],
      [
        'As it is',
        ['$259.20', '$259.20', '$0.00', 'not'],
        ['40 bags', '40 bags', '0 bags', 'not'],
        ['yes', 'yes', undefined, 'not'],
        [undefined, undefined, undefined, 'not'],
      ],
    ]);
    expect(told[1].refused).toEqual([
      { cell: price, why: 'Bag price holds a price per bag, and this is money.' },
    ]);
  });

  it('leave the notebook as it is', () => {
    const open = opened(...job);
    const before = open.estimate.notebook.text;
    const puts = [{ cell: open.cell('Slab length'), formula: '3 m' }];
    compareAlternatives(open.estimate, [{ name: 'Shorter', puts }], [open.cell('Concrete')]);
    expect(open.estimate.notebook.text).toBe(before);
    expect(open.estimate.shown(open.cell('Concrete'))?.text).toBe('$259.20');
    expect(open.estimate.canUndo()).toBe(null);
  });
});

describe('what is watched', () => {
  it('comes to what the notebook comes to with the change made, at every place of a tape', () => {
    const open = openedText(templateText('kestrel-court.md'));
    const { estimate } = open;
    const given = open.cell('Deck width');
    const results = ['Boards to buy', 'Direct cost', 'Price', 'Square foot price'].map(open.cell);
    const watch = new Watch(estimate, [given], results);
    for (let inches = 120; inches <= 216; inches += 7) {
      const formula = `${inches} in`;
      const { seen, refused } = watch.at([{ cell: given, formula }]);
      expect(refused).toEqual([]);
      estimate.setFormula(given, formula);
      expect(seen.map(({ then }) => then?.exact)).toEqual(
        results.map((cell) => estimate.shown(cell)?.exact),
      );
      estimate.takeBack();
    }
  });
});
