// Alternatives side by side: the same figures as the notebook would have with the change made in it.
import { describe, expect, it } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { Alternatives, type Alternative } from '../../src/moves-it/compared.ts';
import { type Result, signed } from '../../src/moves-it/stood.ts';
import { templateText } from '../templates/texts.ts';
import { type Opened, opened, openedText } from './opened.ts';

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
  'Waiting: late at $50 per hour',
  '  - cost: labour',
];

const PRICE: Result = { of: 'price' };

function beside(open: Opened, alternatives: readonly Alternative[], results: readonly Result[]) {
  return new Alternatives((text) => new Estimate(text)).compare(
    open.estimate,
    alternatives,
    results,
  );
}

const cellsOf = (open: Opened, ...names: readonly string[]): readonly Result[] =>
  names.map((name) => ({ of: 'cell', cell: open.cell(name) }));

describe('alternatives', () => {
  it('stand side by side with what the notebook has', () => {
    const open = opened(...job);
    const [length, price] = ['Slab length', 'Bag price'].map(open.cell);
    const results = cellsOf(open, 'Concrete', 'Bags', 'Thick enough', 'Late');
    const told = beside(
      open,
      [
        { name: 'Shorter', puts: [{ cell: length, formula: '3 m' }] },
        {
          name: 'Longer and dearer',
          puts: [
            { cell: length, formula: '14 ft' },
            { cell: price, formula: '$7 per bag' },
          ],
        },
        { name: 'As it is', puts: [] },
      ],
      [...results, PRICE],
    );
    const lines = told.map((one) =>
      one.results.map(({ stood, moved }) => [stood.text, signed(moved) ?? moved.moves]),
    );
    expect(lines).toEqual([
      [
        ['$213.84', '−$45.36'],
        ['33 bags', '−7 bags'],
        ['no', 'otherwise'],
        [null, 'not'],
        ['$213.84', '−$45.36'],
      ],
      [
        ['$322.00', '+$62.80'],
        ['46 bags', '+6 bags'],
        ['yes', 'not'],
        [null, 'not'],
        ['$322.00', '+$62.80'],
      ],
      [
        ['$259.20', 'not'],
        ['40 bags', 'not'],
        ['yes', 'not'],
        [null, 'not'],
        ['$259.20', 'not'],
      ],
    ]);
    expect(told.map(({ change }) => change?.say ?? null)).toEqual([
      'Put in Shorter',
      'Put in Longer and dearer',
      null,
    ]);
  });

  it('give a value to what has none yet, and see other alternatives of the same go', () => {
    const open = opened(...job);
    const put = (formula: string): Alternative => ({
      name: formula,
      puts: [{ cell: open.cell('Late'), formula }],
    });
    const told = beside(open, [put('2 hours'), put('3 hours')], [PRICE]);
    expect(told.map(({ results }) => [results[0].stood.text, signed(results[0].moved)])).toEqual([
      ['$359.20', '+$100.00'],
      ['$409.20', '+$150.00'],
    ]);
  });

  it('work a formula with the other amounts of the same alternative', () => {
    const open = opened(...job);
    const [told] = beside(
      open,
      [
        {
          name: 'Square',
          puts: [
            { cell: open.cell('Volume'), formula: 'slab length by slab length by 4 in' },
            { cell: open.cell('Slab length'), formula: '10 ft' },
          ],
        },
      ],
      cellsOf(open, 'Volume'),
    );
    expect(told.results[0].stood.text).toBe('33.33 cubic feet');
  });

  it('refuse what can’t stand there, say why, and put the rest in', () => {
    const open = opened(...job);
    const [length, bags] = ['Slab length', 'Bags'].map(open.cell);
    const [told] = beside(
      open,
      [
        {
          name: 'Mixed',
          puts: [
            { cell: length, formula: 'slab lenth' },
            { cell: bags, formula: '30 bags' },
          ],
        },
      ],
      cellsOf(open, 'Concrete'),
    );
    expect(told.results[0].stood.text).toBe('$194.40');
    expect(told.refused.map(({ cell }) => cell)).toEqual([length]);
    expect(told.refused[0].why).toContain('slab lenth');
  });

  it('take a bare number for so many of what is counted, and offer the unit that is missing elsewhere', () => {
    const open = opened(...job);
    const tried = (name: string, formula: string) => {
      const puts = [{ cell: open.cell(name), formula }];
      const [told] = beside(open, [{ name: 'Other', puts }], cellsOf(open, 'Concrete'));
      const { refused, results, change } = told;
      if (change) expect(change.splices.map(({ insert }) => insert)).not.toEqual([formula]);
      const [not] = refused;
      return not ? [not.why, ...not.fixes.map((fix) => fix.formula)] : results[0].stood.text;
    };
    expect(tried('Bags', '30')).toBe('$194.40');
    expect(tried('Slab length', '16')).toEqual([
      'Slab length holds a length, and this is a plain number.',
      '16 ft',
      '16 in',
    ]);
    expect(tried('Waste', '15')).toEqual([
      'Waste holds a share, and this is a plain number.',
      '15%',
    ]);
    expect(tried('Bag price', '$7')).toEqual([
      'Bag price holds a price per bag, and this is money.',
      '$7 per bag',
    ]);
    expect(tried('Bag price', '7')).toEqual([
      'Bag price holds a price per bag, and this is a plain number.',
      '$7 per bag',
    ]);
  });

  it('write by hand what is set by hand', () => {
    const open = opened(...job);
    const { estimate } = open;
    estimate.setByHand(open.cell('Bags'), '50 bags', 'the pallet');
    const puts = [{ cell: open.cell('Bags'), formula: '60 bags' }];
    const [told] = beside(open, [{ name: 'Pallet', puts }], cellsOf(open, 'Concrete'));
    expect(signed(told.results[0].moved)).toBe('+$64.80');
    if (!told.change) throw new Error('nothing would be otherwise');
    estimate.replaceText(told.change);
    expect(estimate.state(open.cell('Bags')).input.byHand).toBe('60 bags');
  });

  it('leave the notebook as it is, and are one change when they are put in', () => {
    const open = opened(...job);
    const { estimate } = open;
    const before = estimate.notebook.text;
    const chosen = open.cell('Concrete');
    const puts = [
      { cell: open.cell('Slab length'), formula: '3 m' },
      { cell: open.cell('Waste'), formula: '5%' },
    ];
    const [told] = beside(open, [{ name: 'Shorter', puts }], cellsOf(open, 'Concrete'));
    expect(estimate.notebook.text).toBe(before);
    expect(estimate.canUndo()).toBe(null);
    if (!told.change) throw new Error('nothing would be otherwise');
    estimate.replaceText(told.change);
    expect(open.cell('Concrete')).toBe(chosen);
    expect(estimate.shown(chosen)?.text).toBe(told.results[0].stood.text);
    expect(estimate.undo()?.change.say).toBe('Put in Shorter');
    expect(estimate.notebook.text).toBe(before);
  });

  it('come to what the demo comes to with the change made, and follow it as it changes', () => {
    const open = openedText(templateText('kestrel-court.md'));
    const { estimate } = open;
    const compare = new Alternatives((text) => new Estimate(text));
    const results = [
      ...cellsOf(open, 'Boards to buy', 'Direct cost', 'Price', 'Square foot price'),
      PRICE,
      ...estimate.notebook.parts.map(({ key }): Result => ({ of: 'part', part: key })),
    ];
    for (let feet = 10; feet <= 18; feet += 2) {
      const puts = [{ cell: open.cell('Deck width'), formula: `${feet} ft` }];
      const [told] = compare.compare(estimate, [{ name: 'Other', puts }], results);
      const twin = openedText(estimate.notebook.text);
      twin.estimate.setFormula(twin.cell('Deck width'), `${feet} ft`);
      expect(told.results.slice(0, 4).map(({ stood }) => stood.text)).toEqual(
        ['Boards to buy', 'Direct cost', 'Price', 'Square foot price'].map(
          (name) => twin.estimate.shown(twin.cell(name))?.text,
        ),
      );
      const { parts } = twin.estimate.costs();
      const sums = told.results.slice(5).map(({ stood }) => Number(stood.amount ?? NaN));
      const named = twin.estimate.notebook.parts.map(({ key }) => {
        const row = parts.find((each) => each.key === key);
        return row ? Number(row.lines === 0 ? row.price : row.direct) : NaN;
      });
      expect(sums).toEqual(named);
      // The next one stands beside a notebook that is otherwise, at another place in its text.
      estimate.setFormula(open.cell('Deck length'), `${feet + 3} ft`);
    }
  });
});
