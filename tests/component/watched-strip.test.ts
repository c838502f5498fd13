// What is watched: in view with its value and how far it moved, following renames, let go with its cell and back with
// it, kept from one visit to the next by whichever page laid it there.
import { createStore } from 'idb-keyval';
import { describe, expect, test } from 'vitest';
import { Shelf } from '../../src/store/shelf.ts';
import type { Desk } from '../../src/ui/desk.ts';
import '../../src/ui/watched-strip.ts';
import { browserOf } from './desk.ts';
import {
  SMALL_JOB,
  axeFindings,
  button,
  drawn,
  everyElement,
  found,
  idOf,
  settled,
  wordsOf,
} from './drawn.ts';

async function strip(desk: Desk) {
  const element = await drawn('watched-strip', { desk });
  const said = (): readonly string[] =>
    everyElement(element)
      .filter((one) => one.localName === 'li')
      .map((one) => wordsOf(one).replace(' let go ', ' | '));
  return { element, said };
}

function watch(desk: Desk, ...names: readonly string[]): void {
  for (const name of names) {
    desk.watching.turn({ of: 'cell', cell: idOf(desk.session, name) });
  }
}

/** The key of the only part that has a name. */
function partOf(desk: Desk): string {
  return desk.session.door.notebook.parts.find(({ name }) => name === 'Landing')?.key ?? '';
}

describe('what is watched', () => {
  test('is accessible', async () => {
    const desk = await browserOf().page();
    watch(desk, 'Bags to buy', 'Thickness check');
    desk.watching.turn({ of: 'price' });
    const { element } = await strip(desk);
    expect(await axeFindings(element)).toEqual([]);
    desk.session.openTape(idOf(desk.session, 'Thickness'));
    desk.session.slideTape('6 in');
    await settled(element);
    expect(await axeFindings(element)).toEqual([]);
  });

  test('takes no room before anything is', async () => {
    const desk = await browserOf().page();
    const { element } = await strip(desk);
    expect(element.hidden).toBe(true);
    watch(desk, 'Bags to buy');
    await settled(element);
    expect(element.hidden).toBe(false);
  });

  test('shows a cell, a part and the price with their values', async () => {
    const desk = await browserOf().page();
    watch(desk, 'Bags to buy', 'Thickness check');
    desk.watching.turn({ of: 'part', part: partOf(desk) });
    desk.watching.turn({ of: 'price' });
    const { said } = await strip(desk);
    expect(said()).toEqual([
      'Bags to buy | 40 bags',
      'Thickness check | holds',
      'Cost of Landing | $259.20',
      'Price | $259.20',
    ]);
  });

  test('tells the change from the tick while a tape moves, and since it was watched once that is kept', async () => {
    const desk = await browserOf().page();
    const { session } = desk;
    watch(desk, 'Bags to buy', 'Thickness check', 'Slab width');
    desk.watching.turn({ of: 'price' });
    const { element, said } = await strip(desk);
    session.apply((door) => door.setFormula(idOf(session, 'Thickness'), '5 in'));
    session.openTape(idOf(session, 'Thickness'));
    session.slideTape('3 in');
    await settled(element);
    expect(said()).toEqual([
      'Bags to buy | 30 bags −19 bags −10 bags since watched',
      'Thickness check | does not hold was holds was holds since watched',
      'Slab width | 4 ft as it was',
      'Price | $194.40 −$123.12 −$64.80 since watched',
    ]);
    session.keepTape();
    await settled(element);
    expect(said()[0]).toBe('Bags to buy | 30 bags −10 bags since watched');
    button(element, 'Count from now').click();
    await settled(element);
    expect(said()[0]).toBe('Bags to buy | 30 bags');
  });

  test('works only what the tape reaches', async () => {
    const desk = await browserOf().page();
    const { session } = desk;
    watch(desk, 'Bags to buy', 'Slab width');
    await strip(desk);
    session.openTape(idOf(session, 'Waste'));
    const ran: number[][] = [];
    session.listen((happening) => {
      if (happening.kind === 'changed') ran.push([...happening.ran]);
    });
    session.slideTape('30%');
    const reached = ['Waste', 'Bags to buy', 'Concrete'].map((name) => idOf(session, name));
    expect(ran.map((cells) => cells.toSorted((a, b) => a - b))).toEqual([
      reached.toSorted((a, b) => a - b),
    ]);
  });

  test('is said to who can’t see it once the tape rests, and not at each of its places', async () => {
    const desk = await browserOf().page();
    const { session } = desk;
    watch(desk, 'Bags to buy', 'Slab width');
    const { element } = await strip(desk);
    const heard = (): string => wordsOf(found(element, '[role=status]'));
    expect(heard()).toBe('Slab width is watched from now on.');
    session.openTape(idOf(session, 'Thickness'));
    const all = new Set<string>();
    for (const slid of ['4 1/2 in', '5 in', '6 in']) {
      session.slideTape(slid);
      await settled(element);
      all.add(heard());
    }
    expect([...all]).toEqual(['Slab width is watched from now on.']);
    await expect.poll(heard, { timeout: 5000 }).toBe('Bags to buy 59 bags, 19 bags more');
  });

  test('follows a rename, is let go with its cell, told, and watched again when undo brings it back', async () => {
    const desk = await browserOf().page();
    const { session } = desk;
    watch(desk, 'Bags to buy', 'Concrete');
    const { element, said } = await strip(desk);
    session.apply((door) => door.rename(idOf(session, 'Bags to buy'), 'Sacks'));
    await settled(element);
    expect(said()[0]).toBe('Sacks | 40 bags');
    const sacks = idOf(session, 'Sacks');
    session.apply((door) => door.removeCell(sacks));
    await settled(element);
    expect(said()).toEqual(['Concrete | not yet known was $259.20 since watched']);
    expect(wordsOf(found(element, '.told'))).toBe(
      'Sacks is gone, and watched no more. Undo brings it back.',
    );
    session.undo();
    await settled(element);
    expect(said()).toEqual(['Sacks | 40 bags', 'Concrete | $259.20']);
    expect(wordsOf(found(element, '.told'))).toBe('Sacks is back, and watched again.');
  });

  test('is no table, which comes to no one value', async () => {
    const table = '- Runs:\n\n  | run | long |\n  |-----|------|\n  | a   | 3 ft |\n';
    const desk = await browserOf(SMALL_JOB + table).page();
    const [cell] = desk.session.door.notebook.parts
      .flatMap(({ blocks }) => blocks)
      .flatMap((block) => (block.kind === 'cell' && block.cell.table ? [block.cell] : []));
    desk.watching.turn({ of: 'cell', cell: cell.id });
    expect(desk.watching.entries).toEqual([]);
    expect(desk.session.notice?.text).toContain('Watch a cell that adds it up');
  });

  test('is let go from where it stands', async () => {
    const desk = await browserOf().page();
    watch(desk, 'Bags to buy', 'Concrete');
    const { element, said } = await strip(desk);
    button(element, 'Let go of Bags to buy').click();
    await settled(element);
    expect(said()).toEqual(['Concrete | $259.20']);
    expect(desk.session.watched).toEqual(new Set([`cell ${idOf(desk.session, 'Concrete')}`]));
  });

  test('is kept beside the notebook and never in it, with what it came to when it was first watched', async () => {
    const { page } = browserOf();
    const desk = await page();
    watch(desk, 'Bags to buy');
    desk.watching.turn({ of: 'price' });
    desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Thickness'), '5 in'));
    await desk.watching.settled();
    await desk.leave(0);
    const again = await page();
    await again.watching.settled();
    const { said } = await strip(again);
    expect(said()).toEqual([
      'Bags to buy | 49 bags +9 bags since watched',
      'Price | $317.52 +$58.32 since watched',
    ]);
    expect(again.session.door.notebook.text).toBe(
      SMALL_JOB.replace('Thickness: 4 in', 'Thickness: 5 in'),
    );
  });

  test('of one notebook is not watched in another, and is there again when one comes back', async () => {
    const desk = await browserOf().page();
    watch(desk, 'Bags to buy');
    const first = desk.openId;
    await desk.watching.settled();
    await desk.openText(SMALL_JOB);
    await desk.watching.settled();
    const { element, said } = await strip(desk);
    expect(said()).toEqual([]);
    await desk.openKept(first);
    await desk.watching.settled();
    await settled(element);
    expect(said()).toEqual(['Bags to buy | 40 bags']);
  });

  test('goes along with what is kept as a copy', async () => {
    const desk = await browserOf().page();
    watch(desk, 'Bags to buy');
    await desk.watching.settled();
    await desk.keepAsCopy();
    await desk.watching.settled();
    const { said } = await strip(desk);
    expect(said()).toEqual(['Bags to buy | 40 bags']);
  });

  test('in two pages at once loses nothing of either', async () => {
    const { page } = browserOf();
    const one = await page();
    await one.keepAnyway();
    const other = await page();
    watch(one, 'Bags to buy');
    watch(other, 'Concrete');
    watch(one, 'Slab volume');
    watch(other, 'Slab width');
    await one.watching.settled();
    await other.watching.settled();
    const third = await page();
    await third.watching.settled();
    const { said } = await strip(third);
    expect(
      said()
        .map((line) => line.split(' |')[0])
        .toSorted(),
    ).toEqual(['Bags to buy', 'Concrete', 'Slab volume', 'Slab width']);
  });

  test('that can’t be kept stands on the page, says so, and is kept with what is laid next', async () => {
    const shelf = new Shelf(createStore(`beside ${crypto.randomUUID()}`, 'kept'));
    const desk = await browserOf().page({ shelf });
    await desk.keepAnyway();
    const keep = shelf.keepAlongside.bind(shelf);
    shelf.keepAlongside = () => Promise.reject(new Error('no room'));
    watch(desk, 'Bags to buy');
    await desk.watching.settled();
    const { element, said } = await strip(desk);
    expect(said()).toEqual(['Bags to buy | 40 bags']);
    expect(wordsOf(found(element, '.trouble'))).toMatch(/^Not kept: .* It stands on this page\.$/);
    shelf.keepAlongside = keep;
    watch(desk, 'Concrete');
    await desk.watching.settled();
    await settled(element);
    expect(() => found(element, '.trouble')).toThrow('nothing matches');
    const kept = await shelf.alongside(desk.openId);
    expect(kept.kind === 'taken' && kept.value.watched.map(({ name }) => name)).toEqual([
      'Bags to buy',
      'Concrete',
    ]);
  });

  test('that a later version kept is left as it is, and told', async () => {
    const name = `beside ${crypto.randomUUID()}`;
    const store = createStore(name, 'kept');
    const { page } = browserOf();
    const shelf = new Shelf(store);
    const desk = await page({ shelf });
    await desk.keepAnyway();
    const later = { v: 2, revision: 7, watched: 'in another way' };
    await store('readwrite', (values) => {
      values.put(later, `alongside/${desk.openId}`);
    });
    const again = await page({ shelf });
    await again.watching.settled();
    const { element, said } = await strip(again);
    expect(wordsOf(found(element, '.trouble'))).toContain('left as it is');
    watch(again, 'Bags to buy');
    await again.watching.settled();
    await settled(element);
    expect(said()).toEqual(['Bags to buy | 40 bags']);
    expect(await shelf.alongside(again.openId)).toEqual({ kind: 'newer' });
  });
});
