// A clock that is set back between two visits, or in the middle of one: what came later is later all the same.
import { describe, expect, test } from 'vitest';
import { RecordBook } from '../../src/ui/record-book.ts';
import { said } from '../record/records.ts';
import { browserOf } from './desk.ts';
import { idOf } from './drawn.ts';

const TODAY = Date.UTC(2026, 2, 3, 16, 25);
const LAST_YEAR = Date.UTC(2025, 2, 3, 16, 25);

/** A desk whose clock is set as a test likes. */
function clocked() {
  let time = TODAY;
  const browser = browserOf();
  return {
    page: () => browser.page({ now: () => time }),
    set: (to: number) => {
      time = to;
    },
  };
}

describe('with a clock set back', () => {
  test('the notebook that is opened is the one kept last, as it was kept last', async () => {
    const { page, set } = clocked();
    const desk = await page();
    const change = async (thickness: string): Promise<void> => {
      desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Thickness'), thickness));
      await expect.poll(() => desk.keeping.kind).toBe('kept');
    };
    await change('5 in');
    set(LAST_YEAR);
    await change('6 in');
    await desk.openEmpty();
    await expect.poll(() => desk.keeping).toMatchObject({ kind: 'kept', at: LAST_YEAR });
    const empty = desk.openId;
    expect((await page()).openId).toBe(empty);
    const there = (await desk.list()).find(({ id }) => id !== empty);
    await desk.openKept(there?.id ?? '');
    expect(desk.session.door.shown(idOf(desk.session, 'Thickness'))?.text).toBe('6 in');
  });

  test('the snapshot that was accepted last is the accepted one, and a later change order has the later number', async () => {
    const { page, set } = clocked();
    const desk = await page();
    const binder = await desk.binder();
    const one = await binder.freeze('Bid 1', '');
    set(LAST_YEAR);
    const two = await binder.freeze('Bid 2', '');
    if (!one || !two) throw new Error('nothing was frozen');
    await binder.log(one, 'accepted', '');
    await binder.log(two, 'accepted', '');
    expect(binder.accepted?.name).toBe('Bid 2');
    const again = await (await page()).binder();
    expect(again.versions.snapshots.map(({ name }) => name)).toEqual(['Bid 1', 'Bid 2']);
    expect(again.accepted?.name).toBe('Bid 2');
  });

  test('a correction stands over what it corrects', async () => {
    const { page, set } = clocked();
    const desk = await page();
    const book = await RecordBook.opened(desk);
    if (!book) throw new Error('no record');
    const line = said('12.00');
    expect(await book.add([{ record: 'entry', says: line }])).toBeNull();
    const [entry] = book.stands.entries;
    set(LAST_YEAR);
    const says = { ...line, cost: { by: 'amount', amount: '21.00' } as const };
    const correction = {
      record: 'correction',
      corrects: entry.last,
      why: 'misread',
      says,
    } as const;
    expect(await book.add([correction])).toBeNull();
    const again = await RecordBook.opened(await page());
    expect(again?.stands.entries.map((one) => one.says?.cost)).toEqual([says.cost]);
  });
});
