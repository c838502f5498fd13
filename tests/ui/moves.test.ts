// How the sheet "What moves it" draws and says: strips and jumps of a bar, chances in words, numbers that are only near.
import { describe, expect, it, test } from 'vitest';
import type { Matter } from '../../src/moves-it/matters.ts';
import { whatMatters } from '../../src/moves-it/matters.ts';
import { percentSaid, timesIn } from '../../src/ui/chance-words.ts';
import { placeOn, stretchesOf } from '../../src/ui/matter-bar.ts';
import { NearAmounts } from '../../src/ui/near-amounts.ts';
import { opened } from '../moves-it/opened.ts';

function matter(result: string, ...lines: readonly string[]): Matter {
  const open = opened(...lines);
  const found = whatMatters(open.estimate, open.cell(result))?.givens[0];
  if (!found) throw new Error(`nothing moves ${result}`);
  return found;
}

describe('a bar', () => {
  it('is smooth all along where nothing jumps, less on one side of now and more on the other', () => {
    const all = stretchesOf(matter('Cost', 'Rate: $50 per hour', 'Cost: 10 times rate'), 50);
    expect(new Set(all.map(({ how }) => how))).toEqual(new Set(['smooth']));
    expect(all[0]).toMatchObject({ side: 'less', from: 450 });
    expect(all.at(-1)).toMatchObject({ side: 'more', to: 550 });
    for (const [k, stretch] of all.entries()) if (k > 0) expect(stretch.from).toBe(all[k - 1].to);
  });

  it('jumps from level to level where only whole packs are paid, in as many jumps as there are', () => {
    const packs = [
      'Run: 100 ft',
      'Boards: run in 16 ft boards',
      'Cost: boards at $20 per board',
    ] as const;
    const found = matter('Cost', ...packs);
    const all = stretchesOf(found, 100);
    const jumps = all.filter(({ how }) => how === 'jump');
    // 90 to 110 ft: 6 boards up to 96 ft, 7 from there on.
    expect(jumps.map(({ side, from, to }) => [side, from, to])).toEqual([['less', 120, 140]]);
    for (const { how, from, to } of all) if (how === 'smooth') expect(from).toBe(to);
    expect(found.jumps).toHaveLength(1);
  });

  it('has nothing between whole things that are counted, with a range or without', () => {
    for (const posts of ['6 posts', '6 posts, 5 at best, 8 at worst']) {
      const all = stretchesOf(matter('Cost', `Posts: ${posts}`, 'Cost: posts at $30 per post'), 6);
      expect(all.every(({ how, from, to }) => how === 'jump' && to - from === 30)).toBe(true);
      expect(all[0]).toMatchObject({ side: 'less', from: 150, to: 180 });
    }
  });

  it('stands on one scale with all others', () => {
    const scale = { low: 100, high: 200, width: 402 };
    expect([100, 150, 200].map((value) => placeOn(scale, value))).toEqual([1, 201, 401]);
    expect(placeOn({ low: 5, high: 5, width: 400 }, 5)).toBe(200);
  });
});

describe('a chance', () => {
  test.for([
    [0, '0%'],
    [0.0004, 'less than 1%'],
    [0.236, '24%'],
    [0.9971, 'more than 99%'],
    [1, '100%'],
  ] as const)('of %f is %s', ([share, said]) => expect(percentSaid(share)).toBe(said));

  it('is said in times', () => {
    expect([0.5, 0.8, 0.9, 0.76].map(timesIn)).toEqual([
      'Half the time',
      'Four times in five',
      'Nine times in ten',
      '76 times in 100',
    ]);
  });
});

describe('a number that is only near', () => {
  const open = opened(
    'Price: $17,574.12',
    'Small: $6.48 per bag',
    'Length: 12 ft 6 in',
    'Bags: 40 bags',
    'Share: 15%',
  );
  test.for([
    ['Price', 17_574.5612, '$17,575'],
    ['Price', -17_574.12, '−$17,574'],
    ['Small', 6.4812, '$6.48 per bag'],
    ['Small', 6, '$6 per bag'],
    ['Length', 12.5, '12 ft 6 in'],
    ['Length', 12.777, '12 ft 9 3/8 in'],
    ['Bags', 40.5, '40.5 bags'],
    ['Share', 12.12942, '12.13%'],
    ['Price', NaN, 'no value'],
  ] as const)('of %s, %f, is said as %s', ([name, value, said]) => {
    expect(new NearAmounts(open.estimate, open.cell(name)).say(value)).toBe(said);
  });

  it('is what the cell shows where it is now', () => {
    const words = new NearAmounts(open.estimate, open.cell('Price'));
    expect([words.shown, words.now]).toEqual(['$17,574.12', 17_574.12]);
  });
});
