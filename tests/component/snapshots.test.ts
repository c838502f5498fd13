// The sheet of snapshots: freezing, what happened to them, comparing, change orders, copies, old prices and the file
// of the whole job.
import { createStore } from 'idb-keyval';
import { describe, expect, test, vi } from 'vitest';
import { userEvent } from 'vitest/browser';
import { openJobFile, writeJobFile } from '../../src/store/job-file.ts';
import { VersionsShelf } from '../../src/store/versions-shelf.ts';
import type { Desk } from '../../src/ui/desk.ts';
import { RecordBook } from '../../src/ui/record-book.ts';
import { openJobText } from '../../src/ui/job-files.ts';
import { OrderPaper } from '../../src/ui/order-paper.ts';
import '../../src/ui/snapshot-sheet.ts';
import { said } from '../record/records.ts';
import { browserOf } from './desk.ts';
import {
  SMALL_JOB,
  axeFindings,
  button,
  drawn,
  everyElement,
  focusedElement,
  found,
  idOf,
  settled,
  shownOf,
  wordsOf,
} from './drawn.ts';

const OLD_PRICE = SMALL_JOB.replace(
  'an invented price',
  'quoted by the yard, 2025-12-01, good for 30 days; an invented price',
);

async function sheetOn(desk: Desk) {
  const binder = await desk.binder();
  const sheet = await drawn('snapshot-sheet', { desk, open: true });
  await expect.poll(() => wordsOf(sheet)).toContain('Freeze it now');
  const press = async (says: string): Promise<void> => {
    button(sheet, says).click();
    await settled(sheet);
  };
  const write = (name: string, text: string): void => {
    found<HTMLInputElement>(sheet, `input[name=${name}]`).value = text;
  };
  return { binder, sheet, press, write };
}

async function laid(demo = SMALL_JOB) {
  const browser = browserOf(demo);
  const desk = await browser.page();
  return { browser, desk, ...(await sheetOn(desk)) };
}

function change(desk: Desk, cell: string, formula: string): void {
  desk.session.apply((door) => door.setFormula(idOf(desk.session, cell), formula));
}

/** A bid that was accepted, and the notebook changed since. */
async function changedSince() {
  const all = await laid();
  const { desk, binder, sheet } = all;
  const bid = await binder.freeze('Bid 1', '');
  if (!bid) throw new Error('nothing was frozen');
  await binder.log(bid, 'accepted', '');
  change(desk, 'Bag price', '$7.48 per bag');
  change(desk, 'Slab length', '14 ft');
  await settled(sheet);
  return { ...all, bid };
}

describe('freezing', () => {
  test('is one press of Enter: name, price, mark and day stand in the list, and the keyboard is there', async () => {
    const { sheet, binder, desk } = await laid();
    found<HTMLInputElement>(sheet, 'input[name=note]').focus();
    await userEvent.keyboard('as it was sent{Enter}');
    await expect.poll(() => binder.versions.snapshots.length).toBe(1);
    await settled(sheet);
    const [bid] = binder.versions.snapshots;
    const line = wordsOf(found(sheet, 'li.snap'));
    expect(line).toContain('$259.20 Bid 1');
    expect(line).toContain('2026');
    expect(line).toContain('as it was sent');
    expect(line).toContain(bid?.seal.slice(0, 4));
    await expect
      .poll(() => focusedElement()?.getAttribute('aria-label'))
      .toBe('Compare with now: Bid 1');
    expect(desk.session.door.notebook.text).toBe(SMALL_JOB);
    expect(await axeFindings(sheet)).toEqual([]);
  });

  test('keeps the notebook with it, so that both are there at the next visit', async () => {
    const { browser, binder } = await laid();
    await binder.freeze('Bid 1', '');
    const again = await (await browser.page()).binder();
    expect(again.versions.snapshots.map(({ name }) => name)).toEqual(['Bid 1']);
    expect(again.desk.openId).toBe(binder.desk.openId);
  });

  test('from two tabs adds both', async () => {
    const { browser, binder } = await laid();
    await binder.freeze('Bid 1', '');
    const other = await (await browser.page()).binder();
    await Promise.all([other.freeze('Bid 2', ''), binder.freeze('Bid 3', '')]);
    const third = await (await browser.page()).binder();
    expect(third.versions.snapshots.map(({ name }) => name).sort()).toEqual([
      'Bid 1',
      'Bid 2',
      'Bid 3',
    ]);
  });

  test('where nothing can be written stands on the page, and that it is not kept is told', async () => {
    const browser = browserOf();
    const versions = () =>
      Promise.resolve(new VersionsShelf(() => Promise.reject(new Error('no storage here'))));
    const desk = await browser.page({ versions });
    const { sheet, binder } = await sheetOn(desk);
    await binder.freeze('Bid 1', '');
    await settled(sheet);
    expect(binder.waits).toBe(true);
    expect(wordsOf(found(sheet, 'li.snap'))).toContain('Bid 1');
    expect(wordsOf(found(sheet, '[role=alert]'))).toContain('Save the whole job as a file');
  });
});

describe('what happened to a snapshot', () => {
  test('that the price is set beside is so again at the next visit, until one is accepted', async () => {
    const { browser, desk, binder } = await laid();
    const one = await binder.freeze('Bid 1', '');
    const two = await binder.freeze('Bid 2', '');
    if (!one || !two) throw new Error('nothing was frozen');
    await expect.poll(() => desk.keeping.kind).toBe('kept');
    binder.setAgainst(one.seal);
    const next = async () => (await browser.page()).binder();
    const later = async () => (await next()).against?.snapshot.name;
    await expect.poll(later).toBe('Bid 1');
    await binder.log(two, 'accepted', '');
    expect(binder.against).toMatchObject({ snapshot: { name: 'Bid 2' }, accepted: true });
    await expect.poll(later).toBe('Bid 2');
    binder.setAgainst(one.seal);
    expect(binder.against).toMatchObject({ snapshot: { name: 'Bid 1' }, accepted: false });
    binder.setAgainst(null);
    expect(binder.against?.snapshot.name).toBe('Bid 2');
  });

  test('is logged, and the accepted one stands out; the one accepted before it is superseded', async () => {
    const { sheet, press, binder, write } = await laid();
    await binder.freeze('Bid 1', '');
    await settled(sheet);
    await press('More of Bid 1');
    write('note', 'by letter');
    // The first field of that name is the one for freezing; the log has its own.
    const note = everyElement(sheet).filter((one) => one.matches('li input[name=note]'))[0];
    (note as HTMLInputElement).value = 'signed on site';
    await press('It was accepted');
    await expect.poll(() => binder.accepted?.name).toBe('Bid 1');
    await settled(sheet);
    expect(wordsOf(found(sheet, '.snap.accepted .stand'))).toMatch(/^accepted .*2026/);
    expect(wordsOf(found(sheet, '.log'))).toContain('accepted , signed on site');
    const two = await binder.freeze('Bid 2', '');
    if (two) await binder.log(two, 'accepted', '');
    expect(binder.accepted?.name).toBe('Bid 2');
    expect(binder.versions.log.map(({ happened }) => happened)).toEqual([
      'accepted',
      'superseded',
      'accepted',
    ]);
    expect(await axeFindings(sheet)).toEqual([]);
  });
});

describe('a comparison', () => {
  test('adds up: the kinds, the steps of the stair and the table come to the difference', async () => {
    const { sheet, press } = await changedSince();
    await press('Compare with now: Bid 1');
    await expect.poll(() => wordsOf(sheet)).toContain('Why the price is $84.88 more');
    await expect.poll(() => wordsOf(sheet)).toContain('prices that moved');
    await settled(sheet);
    const words = wordsOf(found(sheet, 'version-comparison'));
    expect(words).toContain('price $259.20 $344.08 +$84.88');
    const steps = everyElement(sheet).filter((one) => one.matches('.stair .step'));
    expect(steps.map((step) => wordsOf(found(step, '.label')))).toEqual([
      'Bid 1',
      'Slab length',
      'Bag price',
      'Now',
    ]);
    const cents = (text: string): number =>
      Math.round(Number(text.replace('−', '-').replace(/[$+,]/g, '')) * 100);
    const amounts = steps.map((step) => cents(wordsOf(found(step, '.amount'))));
    expect((amounts[0] ?? 0) + (amounts[1] ?? 0) + (amounts[2] ?? 0)).toBe(amounts[3]);
    expect(wordsOf(found(sheet, 'table.why'))).toContain('Bag price the price went up');
    expect(wordsOf(found(sheet, 'table.why'))).toContain('Slab length grew');
    expect(await axeFindings(sheet)).toEqual([]);
  });

  test('tells formulas word by word, cells that came and went, and a rename as no loss', async () => {
    const { sheet, press, desk } = await changedSince();
    const { session } = desk;
    session.apply((door) => door.rename(idOf(session, 'Waste'), 'Spare'));
    change(desk, 'Bags to buy', 'slab volume plus spare, in bags of bag yield');
    const { part } = session.cell(idOf(session, 'Waste check'.replace('Waste', 'Thickness'))) ?? {
      part: '',
    };
    session.apply((door) => door.addCell(part, null, 'Sand', '2 bags'));
    session.apply((door) => door.removeCell(idOf(session, 'Thickness check')));
    await press('Compare with now: Bid 1');
    const changes = everyElement(sheet).filter((one) => one.matches('.part .changes > .change'));
    const said = changes.map(wordsOf);
    expect(said.find((one) => one.includes('Spare'))).toContain('was called Waste');
    expect(said.find((one) => one.includes('Sand'))).toMatch(/^\+ Sand added 2 bags/);
    expect(said.find((one) => one.includes('Thickness check'))).toContain('taken out');
    const bags = changes.find((one) => wordsOf(one).includes('Bags to buy worked'));
    const marked = (selector: string) =>
      everyElement(bags ?? sheet)
        .filter((one) => one.matches(selector))
        .map((one) => one.textContent);
    expect(marked('del').join('|')).toContain('divided by');
    expect(marked('ins').join('|')).toContain('in bags of');
  });

  test('goes back with Escape to the list and to the button it came from', async () => {
    const { sheet, press } = await changedSince();
    button(sheet, 'Compare with now: Bid 1').focus();
    await press('Compare with now: Bid 1');
    await expect.poll(() => focusedElement()?.textContent).toBe('What changed');
    await userEvent.keyboard('{Escape}');
    await expect
      .poll(() => focusedElement()?.getAttribute('aria-label'))
      .toBe('Compare with now: Bid 1');
    expect(found<HTMLDialogElement>(sheet, 'dialog').open).toBe(true);
  });

  test('of any two is picked from lists, and can be swapped', async () => {
    const { sheet, press, binder } = await changedSince();
    await binder.freeze('Bid 2', '');
    await settled(sheet);
    await press('Compare the two');
    await expect.poll(() => wordsOf(sheet)).toContain('more');
    await press('Swap them');
    await expect
      .poll(() => wordsOf(found(sheet, 'version-comparison')))
      .toMatch(/Why the price is \$[\d.]+ less/);
  });
});

describe('a change order', () => {
  test('is made from a comparison, with lines, net, new total and lines to sign', async () => {
    const { sheet, press, write, binder } = await changedSince();
    await press('Compare with now: Bid 1');
    write('reason', 'Two feet longer');
    await press('It is priced so');
    await expect.poll(() => binder.versions.orders.length).toBe(1);
    await expect
      .poll(() => everyElement(sheet).some((one) => one instanceof OrderPaper))
      .toBe(true);
    await settled(sheet);
    const paper = wordsOf(found(sheet, '.paper'));
    const [order] = binder.versions.orders;
    expect(paper).toContain('Change order 1');
    expect(paper).toContain('Two feet longer');
    expect(paper).toMatch(/state priced since/);
    expect(paper).toContain('Concrete Landing $259.20');
    expect(paper).toContain(`New total $${order?.after}`);
    expect(paper).toContain('for the client');
    expect(paper).toContain('no change order is approved yet');
    expect(await axeFindings(sheet)).toEqual([]);
    const print = vi.spyOn(window, 'print').mockImplementation(() => undefined);
    await press('Print it');
    expect(print).toHaveBeenCalledOnce();
    print.mockRestore();
    await press('approved');
    await expect
      .poll(() => wordsOf(found(sheet, '.paper')))
      .toContain(`with 1 approved change order it comes to $${order?.after}`);
    await userEvent.keyboard('{Escape}');
    await expect.poll(() => wordsOf(sheet)).toContain('Contract sum');
    expect(wordsOf(sheet)).toContain('Two feet longer');
  });

  test('keeps overhead and profit in one line on the paper, until they are to be told', async () => {
    const priced = `${SMALL_JOB}
## Price

- Overhead: 10% of total cost of Landing
  - price: overhead
- Profit: 20% of total cost of Landing
  - price: markup
- Tax: 5% of total cost of Landing
  - price: tax
`;
    const { sheet, press, write, desk, binder } = await laid(priced);
    await binder.freeze('Bid 1', '');
    change(desk, 'Bag price', '$7.48 per bag');
    await settled(sheet);
    await press('Compare with now: Bid 1');
    await settled(sheet);
    write('reason', 'Dearer bags');
    await press('It is priced so');
    await expect.poll(() => wordsOf(sheet)).toContain('for the client');
    const paper = (): string => wordsOf(found(sheet, '.paper'));
    // 40 bags at $1 more: a tenth and a fifth of $40 on top, and a twentieth of it for tax.
    expect(paper()).toContain('Overhead and profit on these +$12.00');
    expect(paper()).not.toContain('Profit Price');
    expect(paper()).toContain('Tax Price $12.96 $14.96 +$2.00');
    expect(paper()).toContain('Net of this change order +$54.00');
    await press('Tell overhead, contingency and profit line by line');
    expect(paper()).toContain('Profit Price $51.84 $59.84 +$8.00');
    expect(paper()).not.toContain('on these');
  });

  test('freezes what it goes to, and the next one is told to start from there', async () => {
    const { sheet, press, write, desk, binder } = await changedSince();
    await press('Compare with now: Bid 1');
    expect(wordsOf(sheet)).not.toContain('holds changes from here already');
    write('reason', 'Two feet longer');
    await press('It is priced so');
    await expect.poll(() => wordsOf(sheet)).toContain('for the client');
    const [, frozen] = binder.versions.snapshots;
    expect(frozen).toMatchObject({ name: 'Change order 1', note: 'Two feet longer' });
    expect(binder.versions.orders[0]?.to).toEqual({ name: 'Change order 1', seal: frozen?.seal });
    await settled(sheet);
    await press('approved');
    change(desk, 'Slab length', '15 ft');
    await userEvent.keyboard('{Escape}');
    await settled(sheet);

    // From the bid once more it would count the two feet twice.
    await press('Compare with now: Bid 1');
    await settled(sheet);
    expect(wordsOf(sheet)).toContain('Change order 1 holds changes from here already.');
    await press('Start from Change order 1 instead');
    await settled(sheet);
    expect(wordsOf(sheet)).not.toContain('holds changes from here already');
    write('reason', 'One foot more');
    await press('It is priced so');
    await expect.poll(() => wordsOf(sheet)).toContain('for the client');
    await press('approved');
    const price = desk.session.door.costs().total.price;
    await expect
      .poll(() => wordsOf(found(sheet, '.paper')))
      .toContain(`with 2 approved change orders it comes to $${price} .`);
    expect(wordsOf(sheet)).not.toContain('counts them twice');
  });

  test('is told where it holds what another one holds, and both count in the contract', async () => {
    const { sheet, press, write, binder } = await changedSince();
    for (const reason of ['Two feet longer', 'The same again']) {
      await press('Compare with now: Bid 1');
      await settled(sheet);
      write('reason', reason);
      await press('It is priced so');
      await expect.poll(() => binder.versions.orders.at(-1)?.reason).toBe(reason);
      await expect.poll(() => wordsOf(sheet)).toContain('for the client');
      await press('approved');
      await settled(sheet);
      await userEvent.keyboard('{Escape}');
      await settled(sheet);
    }
    // Nothing was changed in between: what the second goes to was frozen already.
    expect(binder.versions.snapshots.map(({ name }) => name)).toEqual(['Bid 1', 'Change order 1']);
    const twice = 'Change order 2 holds changes that change order 1 holds as well';
    await expect.poll(() => wordsOf(sheet)).toContain(twice);
    await binder.logOrder(2, 'priced', '');
    await settled(sheet);
    expect(wordsOf(sheet)).not.toContain(twice);
  });
});

describe('copies', () => {
  test('a snapshot is taken up again in a notebook of its own, and the one that was open is as it was', async () => {
    const { sheet, press, desk, binder, bid } = await changedSince();
    const [id, text] = [desk.openId, desk.session.door.notebook.text];
    await press('More of Bid 1');
    await press('Take it up again');
    await expect.poll(() => desk.openId).not.toBe(id);
    await expect.poll(() => shownOf(desk.session, 'Bag price')).toBe('$6.48 per bag');
    await expect.poll(() => binder.versions.origin?.kind).toBe('restored');
    expect(binder.versions.snapshots).toEqual([bid]);
    await expect.poll(() => desk.keeping.kind).toBe('kept');
    await desk.openKept(id);
    expect(desk.session.door.notebook.text).toBe(text);
    expect(sheet.isConnected).toBe(true);
  });

  test('for the next client take nothing along of what happened to this one', async () => {
    const { press, write, desk, binder } = await changedSince();
    write('title', 'North yard');
    await press('Duplicate the notebook');
    await expect.poll(() => desk.session.door.notebook.title).toBe('North yard');
    await expect.poll(() => binder.versions.origin?.kind).toBe('duplicate');
    expect(binder.versions.snapshots).toEqual([]);
    expect(shownOf(desk.session, 'Bag price')).toBe('$7.48 per bag');
  });
});

test('the price as it stands now follows the notebook while the sheet lies over it', async () => {
  const { sheet, desk } = await laid();
  const now = (): string => wordsOf(found(sheet, 'form.snap'));
  expect(now()).toContain('$259.20 Now');
  change(desk, 'Bag price', '$12.96 per bag');
  await settled(sheet);
  expect(now()).toContain('$518.40 Now');
  change(desk, 'Bag price', '?');
  await settled(sheet);
  expect(now()).toContain('$0.00 Now so far: 1 line has no value yet');
});

test('prices past their date are pointed out and turned into ? in one go, which can be undone', async () => {
  const { sheet, press, desk } = await laid(OLD_PRICE);
  expect(wordsOf(sheet)).toContain(
    'Bag price , $6.48 per bag Landing : quoted 92 days ago, good for 30',
  );
  await press('Turn it into ?');
  expect(shownOf(desk.session, 'Bag price')).toBe(null);
  expect(desk.session.door.notebook.text).toContain('- Bag price: ?');
  await settled(sheet);
  expect(wordsOf(sheet)).not.toContain('Prices past their date');
  desk.session.undo();
  expect(desk.session.door.notebook.text).toBe(OLD_PRICE);
});

test('an old price inside a formula gets a cell of its own, and then it can be asked for', async () => {
  const text = SMALL_JOB.replace(
    '## Landing\n',
    '## Landing\n\n- Delivery: 3 trips at $20 per trip\n  - cost: equipment\n  - from: quoted 2025-12-01, good for 30 days\n',
  );
  const { sheet, press, desk } = await laid(text);
  expect(wordsOf(sheet)).toContain('Until Dec 31, 2025 every price was good');
  const before = desk.session.door.costs().total.price;
  await press('Give $20 per trip a cell of its own');
  expect(shownOf(desk.session, 'Delivery price')).toBe('$20.00 per trip');
  expect(desk.session.door.costs().total.price).toBe(before);
  await expect.poll(() => wordsOf(sheet)).toContain('Delivery price , $20 per trip');
  expect(wordsOf(sheet)).toContain(': done. Undo on the page takes it back.');
  await press('Turn it into ?');
  expect(shownOf(desk.session, 'Delivery price')).toBe(null);
});

test('old prices are tried dearer without changing anything, and a share that is none is told', async () => {
  const { sheet, press, desk } = await laid(OLD_PRICE);
  const before = desk.session.door.costs().total.price;
  const field = found<HTMLInputElement>(sheet, 'input[name=percent]');
  field.value = '12 %';
  await press('What would it come to?');
  // A bag at $6.48 is $7.2576 then.
  const bags = Number(before) / 6.48;
  const after = (bags * 7.2576).toFixed(2);
  expect(wordsOf(sheet)).toContain(`by 12%: the price would be $${after}`);
  field.value = 'some';
  await press('What would it come to?');
  expect(wordsOf(sheet)).toContain('"some" is no share');
  expect(desk.session.door.notebook.text).toBe(OLD_PRICE);
  expect(await axeFindings(sheet)).toEqual([]);
});

describe('what another page adds', () => {
  test('is seen here at once, beside the price and in the list', async () => {
    const { browser, desk, binder } = await laid();
    change(desk, 'Slab length', '14 ft');
    await expect.poll(() => desk.keeping.kind).toBe('kept');
    const other = await (await browser.page()).binder();
    const bid = await other.freeze('Bid 1', '');
    if (!bid) throw new Error('nothing was frozen');
    await expect.poll(() => binder.versions.snapshots.map(({ name }) => name)).toEqual(['Bid 1']);
    await binder.log(bid, 'accepted', '');
    await expect.poll(() => other.against).toMatchObject({ accepted: true });
  });

  test('is seen when the sheet is laid out, where pages can’t hear each other', async () => {
    const browser = browserOf();
    const deaf = { channel: () => null };
    const desk = await browser.page(deaf);
    change(desk, 'Slab length', '14 ft');
    await expect.poll(() => desk.keeping.kind).toBe('kept');
    const { binder, sheet } = await sheetOn(desk);
    const other = await (await browser.page(deaf)).binder();
    await other.freeze('Bid 1', '');
    expect(binder.versions.snapshots).toEqual([]);
    sheet.open = false;
    await settled(sheet);
    sheet.open = true;
    await expect.poll(() => wordsOf(sheet)).toContain('Bid 1');
  });
});

describe('the file of a whole job', () => {
  test('opens elsewhere with every snapshot, order and log, and every hash right', async () => {
    const { binder } = await changedSince();
    const comparison = (await import('../../src/versions/compare.ts')).compare(
      binder.version(binder.versions.snapshots[0]?.seal ?? ''),
      binder.version(null),
    );
    await binder.order(comparison, { from: null, to: null }, { reason: 'r', state: 'asked' });
    const file = writeJobFile(await binder.job());
    const other = await browserOf().page();
    const told = await openJobText(other, file);
    expect(told).toMatchObject({ kind: 'opened', mismatches: [] });
    expect(told.said).toContain('Every hash matches');
    const there = await other.binder();
    // The bid, and what the change order goes to.
    await expect.poll(() => there.versions.snapshots.length).toBe(2);
    const { text, origin, snapshots, log, orders, orderLog, records } = await binder.job();
    expect(there.versions).toEqual({ origin, snapshots, log, orders, orderLog, records });
    expect(other.session.door.notebook.text).toBe(text);
    // A cell is who it was: comparing with the snapshot finds no cell that came or went.
    const again = (await import('../../src/versions/compare.ts')).compare(
      there.version(snapshots[0]?.seal ?? ''),
      there.version(null),
    );
    const ways = again.parts.flatMap(({ cells }) => cells.flatMap((cell) => cell.ways));
    expect(ways.sort()).toEqual(['price', 'size']);
  });

  test('holds what was put into the job record since the page stands, and so does a copy', async () => {
    const { desk, binder } = await changedSince();
    const book = await RecordBook.opened(desk);
    expect(await book?.add([{ record: 'entry', says: said('12.00') }])).toBeNull();
    const other = await browserOf().page();
    await openJobText(other, writeJobFile(await binder.job()));
    const there = await RecordBook.opened(other);
    expect(there?.stands.entries.map(({ says }) => says?.cost)).toEqual([said('12.00').cost]);
    const [bid] = binder.versions.snapshots;
    await binder.copy(bid, 'restored');
    const copied = await RecordBook.opened(desk);
    expect(copied?.stands.entries).toHaveLength(1);
  });

  test('that somebody wrote into is opened and says what does not match, in the list too', async () => {
    const { binder, desk, sheet } = await changedSince();
    const file = writeJobFile(await binder.job()).replace('"note":""', '"note":"and the gate"');
    const told = await openJobText(desk, file);
    expect(told.kind).toBe('opened');
    expect(told.mismatches.join(' ')).toContain('"Bid 1" is not as it was sealed');
    await settled(sheet);
    await expect.poll(() => wordsOf(sheet)).toContain('Not as it was');
  });

  test('of a later version is refused with the reason, and what was open stays', async () => {
    const { binder, desk } = await laid();
    const id = desk.openId;
    const later = writeJobFile(await binder.job()).replace('"v":1', '"v":2');
    const told = await openJobText(desk, later);
    expect(told).toMatchObject({ kind: 'refused' });
    expect(told.said).toContain('later version');
    expect(told.said).toContain('still here');
    expect(desk.openId).toBe(id);
    expect(openJobFile(later, { id: 'a', stem: 'b' }).kind).toBe('refused');
  });
});

test('a copy that is kept because of another tab is a notebook of its own, without snapshots of the first', async () => {
  const { desk, binder } = await laid();
  await binder.freeze('Bid 1', '');
  await desk.keepAsCopy();
  await expect.poll(() => binder.versions.snapshots.length).toBe(0);
  await binder.freeze('Mine', '');
  expect(binder.versions.snapshots.map(({ name }) => name)).toEqual(['Mine']);
});

test('snapshots that a later version kept are left alone, and nothing can be frozen over them', async () => {
  const name = `later ${crypto.randomUUID()}`;
  const store = createStore(name, 'kept');
  const browser = browserOf();
  const desk = await browser.page({ versions: () => Promise.resolve(new VersionsShelf(store)) });
  const key = `versions/${desk.openId}`;
  await store('readwrite', (values) => {
    values.put({ v: 9, id: desk.openId, revision: 4 }, key);
  });
  const { sheet, binder } = await sheetOn(desk);
  expect(wordsOf(found(sheet, '[role=alert]'))).toContain('a later version of this page');
  expect(await binder.freeze('Bid 1', '')).toBe(null);
  expect(button(sheet, 'Freeze it now').disabled).toBe(true);
});
