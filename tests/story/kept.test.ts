// What was written stays: when the browser is killed, and when two tabs are on the same notebook.
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { Demo } from './demo.ts';
import {
  DESK,
  type Profile,
  choose,
  kept,
  keptSaid,
  priceOf,
  profileIn,
  rewrite,
  seenIn,
  shownOf,
  stands,
  toldOn,
  visits,
} from './visit.ts';

describe('a browser that is killed', () => {
  let folder = '';
  beforeAll(() => {
    folder = fs.mkdtempSync(path.join(os.tmpdir(), 'storyrod-profile-'));
  });
  afterAll(() => {
    fs.rmSync(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });
  });

  async function opened(): Promise<Profile> {
    const options = { ...inject('browser'), viewport: DESK };
    return profileIn(await chromium.launchPersistentContext(folder, options));
  }

  test('had kept what the page called kept', async () => {
    const before = await opened();
    const page = await before.tab();
    await rewrite(page, 'Thickness', '5 in');
    await kept(page);
    await kill(before);
    expect(before.complaints).toEqual([]);

    const after = await opened();
    const again = await after.tab();
    expect(await shownOf(again, 'Thickness')).toBe('5 in');
    expect(await priceOf(again)).toBe(new Demo({ Thickness: '5 in' }).price);
    expect(await keptSaid(again)).toMatch(/^kept here/);
    await after.context.close();
    expect(after.complaints).toEqual([]);
  });

  test('had kept the line that was being written, but for the last half second', async () => {
    const before = await opened();
    const page = await before.tab();
    await choose(page, 'Waste');
    await page.keyboard.press('Enter');
    await page.getByRole('combobox', { name: 'Formula of Waste' }).fill('15% of');
    // Nobody is told when a line is noted: half a second is what it may take.
    await page.waitForTimeout(600);
    await kill(before);

    const after = await opened();
    const again = await after.tab();
    await expect.poll(() => toldOn(again)).toContain('is not in the notebook: 15% of');
    expect(await shownOf(again, 'Waste')).not.toContain('15');
    await again.getByRole('button', { name: 'Go on with it' }).click();
    const line = again.getByRole('combobox', { name: 'Formula of Waste' });
    expect(await line.inputValue()).toBe('15% of');
    await line.fill('15%');
    await again.keyboard.press('Enter');
    await kept(again);
    expect(await shownOf(again, 'Waste')).toBe('15%');
    await again.reload();
    await stands(again);
    expect(await shownOf(again, 'Waste')).toBe('15%');
    expect(await toldOn(again)).toBe('');
    await after.context.close();
    expect(after.complaints).toEqual([]);
  });

  test('had kept the line of the job record that was being written, and none that was put in', async () => {
    const before = await opened();
    const page = await before.tab();
    const write = async (at: Page, what: string): Promise<void> => {
      await at.getByRole('button', { name: 'Job record' }).click();
      const one = at.locator('record-line.new');
      await one.locator('#part').selectOption('Landing');
      await one.locator('#kind').selectOption('material');
      await one.locator('#what').fill(what);
      await one.locator('#amount').fill('12');
      await one.locator('#note').focus();
    };
    await write(page, 'Boards');
    await page.waitForTimeout(600);
    await kill(before);

    const after = await opened();
    const again = await after.tab();
    await expect
      .poll(() => toldOn(again))
      .toMatch(/in the job record .* is not in it: .*, Landing, material, Boards, 12/);
    await again.getByRole('button', { name: 'Put away' }).click();
    await write(again, 'Screws');
    await again.waitForTimeout(600);
    await again.keyboard.press('Enter');
    await expect
      .poll(() => seenIn(again.locator('record-sheet')))
      .toContain('Screws is in the record');
    await again.reload();
    await stands(again);
    await again.waitForTimeout(300);
    expect(await toldOn(again)).toBe('');
    await after.context.close();
    expect(after.complaints).toEqual([]);
  });
});

/** The whole browser at once, as when the power fails for it. */
async function kill({ context }: Profile): Promise<void> {
  const session = await context.browser()?.newBrowserCDPSession();
  const told = await session?.send('SystemInfo.getProcessInfo');
  const id = told?.processInfo.find(({ type }) => type === 'browser')?.id;
  if (!id) throw new Error('the browser does not say which process it is');
  const gone = context.waitForEvent('close');
  process.kill(id, 'SIGKILL');
  await gone;
}

const visit = visits();

test('a change is kept within half a second of the page’s own time', async () => {
  const { context, tab } = await visit();
  await context.clock.install();
  const page = await tab();
  await page.clock.pauseAt(new Date(Date.now() + 3_600_000));
  await rewrite(page, 'Thickness', '5 in');
  expect(await keptSaid(page)).toBe('keeping …');
  await page.clock.runFor(500);
  await kept(page);
});

test('leaving before a change is kept asks first, and whoever stays has it kept', async () => {
  const { context, tab } = await visit();
  await context.clock.install();
  const page = await tab();
  await page.clock.pauseAt(new Date(Date.now() + 3_600_000));
  await rewrite(page, 'Thickness', '5 in');
  expect(await keptSaid(page)).toBe('keeping …');
  const asked = page.waitForEvent('dialog');
  const leaving = page.evaluate(() => location.reload());
  const question = await asked;
  expect(question.type()).toBe('beforeunload');
  await question.dismiss();
  await leaving;
  await kept(page);
  await page.reload();
  await stands(page);
  expect(await shownOf(page, 'Thickness')).toBe('5 in');
});

describe('two tabs on one notebook', () => {
  async function twoTabs(profile: Profile): Promise<readonly [Page, Page]> {
    const first = await profile.tab();
    await rewrite(first, 'Thickness', '5 in');
    await kept(first);
    const second = await profile.tab();
    expect(await shownOf(second, 'Thickness')).toBe('5 in');
    return [first, second];
  }

  /** What a person who comes later finds kept here. */
  async function foundLater({ tab }: Profile, name = 'Thickness'): Promise<string> {
    const later = await tab();
    const shown = await shownOf(later, name);
    await later.close();
    return shown;
  }

  async function notebooksOn(page: Page): Promise<string> {
    await page.getByRole('button', { name: 'Notebooks' }).click();
    const sheet = page.getByRole('dialog', { name: 'Notebooks kept here' });
    await expect.poll(() => seenIn(sheet)).toContain('open now');
    const listed = await seenIn(sheet);
    await page.keyboard.press('Escape');
    return listed;
  }

  const takeOver = (page: Page) => page.getByRole('button', { name: 'Write here instead' });

  test('the second follows live, changes nothing, and takes over', async () => {
    const profile = await visit();
    const [first, second] = await twoTabs(profile);
    await expect.poll(() => toldOn(second)).toContain('This tab follows it');
    await rewrite(first, 'Thickness', '6 in');
    await expect.poll(() => shownOf(second, 'Thickness')).toBe('6 in');
    expect(await priceOf(second)).toBe(new Demo({ Thickness: '6 in' }).price);

    await choose(second, 'Waste');
    await second.keyboard.press('Enter');
    await expect.poll(() => toldOn(second)).toContain('Nothing was changed');

    // What was not kept yet comes along.
    await rewrite(first, 'Thickness', '7 in');
    await takeOver(second).first().click();
    await expect.poll(() => toldOn(second)).toBe('');
    await expect.poll(() => shownOf(second, 'Thickness')).toBe('7 in');
    await rewrite(second, 'Waste', '12%');
    await kept(second);
    await expect.poll(() => shownOf(first, 'Waste')).toBe('12%');
    await expect.poll(() => toldOn(first)).toContain('This tab follows it');
    expect(await foundLater(profile, 'Waste')).toBe('12%');

    // The one that wrote is closed: the other writes again by itself.
    await second.close();
    await expect.poll(() => toldOn(first)).toBe('');
    await rewrite(first, 'Waste', '9%');
    await kept(first);
    expect(await foundLater(profile, 'Waste')).toBe('9%');
  });

  test('lose no edit that was taken, in 100 turns at random', async () => {
    const profile = await visit();
    const tabs = await twoTabs(profile);
    const chance = chanceFrom(5);
    const taken: string[] = [];
    let turns = 0;
    for (let n = 1; n <= 100; n++) {
      const page = tabs[chance() < 0.5 ? 0 : 1];
      const takes = chance() < 0.6;
      const wait = chance() < 0.5 ? 0 : Math.floor(chance() * 40);
      const name = `Edit ${n}`;
      const made = await page.evaluate(
        async ({ name, takes, wait }) => {
          const desk = document.querySelector('story-page')?.desk;
          if (!desk) throw new Error('no desk');
          if (takes) await desk.takeOver();
          const part = desk.session.door.notebook.parts.at(-1)?.key ?? '';
          const made = desk.session.apply((door) => door.addCell(part, null, name, '3 ft'));
          await new Promise((done) => setTimeout(done, wait));
          return made;
        },
        { name, takes, wait },
      );
      if (made) taken.push(name);
      if (takes) turns++;
    }
    expect(turns).toBeGreaterThan(40);
    expect(taken.length).toBeGreaterThan(50);
    await Promise.all(tabs.map((tab) => expect.poll(() => keptSaid(tab)).toMatch(/^kept here/)));
    const later = await profile.tab();
    const names = await later.evaluate(() =>
      (document.querySelector('story-page')?.desk.session.door.notebook.parts ?? []).flatMap(
        ({ blocks }) => blocks.flatMap((block) => (block.kind === 'cell' ? [block.cell.name] : [])),
      ),
    );
    expect(names.filter((name) => name.startsWith('Edit ')).sort()).toEqual(taken.sort());
  });

  describe('that can’t know of each other', () => {
    async function deaf(): Promise<Profile> {
      const profile = await visit();
      await profile.context.addInitScript(() => {
        Reflect.deleteProperty(globalThis, 'BroadcastChannel');
        Object.defineProperty(navigator, 'locks', { value: undefined });
      });
      return profile;
    }

    test('the second is told when it keeps and writes over nothing; its work goes on as a copy', async () => {
      const profile = await deaf();
      const [first, second] = await twoTabs(profile);
      await rewrite(first, 'Thickness', '6 in');
      await kept(first);
      expect(await keptSaid(second)).toMatch(/^kept here/);
      await rewrite(second, 'Waste', '12%');
      await expect.poll(() => keptSaid(second)).toBe('not kept: changed in another tab');
      expect(await toldOn(second)).toContain('Another tab kept this notebook');
      expect(await priceOf(second)).toBe(new Demo({ Thickness: '5 in', Waste: '12%' }).price);
      expect(await shownOf(second, 'Thickness')).toBe('5 in');
      await kept(first);

      await second.getByRole('button', { name: 'Keep mine as a copy' }).click();
      await kept(second);
      expect(await toldOn(second)).not.toContain('Another tab kept this notebook');
      const listed = await notebooksOn(second);
      expect(listed).toContain('Kestrel Court garden, a copy open now');
      expect(listed).toMatch(/Kestrel Court garden kept /);
      await second.reload();
      await stands(second);
      expect(await shownOf(second, 'Thickness')).toBe('5 in');
      expect(await shownOf(second, 'Waste')).toBe('12%');
      expect(await shownOf(first, 'Thickness')).toBe('6 in');
    });

    test('the second follows what the first kept, when asked', async () => {
      const profile = await deaf();
      const [first, second] = await twoTabs(profile);
      await rewrite(first, 'Thickness', '6 in');
      await kept(first);
      await rewrite(second, 'Waste', '12%');
      await second.getByRole('button', { name: 'Follow what the other kept' }).click();
      await expect.poll(() => shownOf(second, 'Thickness')).toBe('6 in');
      await rewrite(second, 'Thickness', '7 in');
      await kept(second);
      expect(await foundLater(profile)).toBe('7 in');
    });
  });
});

describe('where something is missing', () => {
  test('a page that came over plain HTTP says what does not work, keeps, and lets one tab write', async () => {
    const profile = await visit();
    const home = inject('page');
    const plain = 'http://kestrel.test/';
    await profile.context.route(`${plain}**`, async (route) => {
      const there = new URL(route.request().url());
      await route.fulfill({
        response: await route.fetch({ url: new URL(`.${there.pathname}`, home).href }),
      });
    });
    const tab = async (): Promise<Page> => {
      const page = await profile.context.newPage();
      await page.goto(plain);
      await stands(page);
      return page;
    };
    const first = await tab();
    expect(
      await first.evaluate(() => [isSecureContext, 'locks' in navigator, 'subtle' in crypto]),
    ).toEqual([false, false, false]);
    await rewrite(first, 'Thickness', '5 in');
    await kept(first);
    await first.getByRole('button', { name: 'Notebooks' }).click();
    const sheet = first.getByRole('dialog', { name: 'Notebooks kept here' });
    await expect.poll(() => seenIn(sheet)).toContain('This page came over plain HTTP');
    expect(await seenIn(sheet)).toContain('There are no locks here');
    await first.keyboard.press('Escape');

    const second = await tab();
    await expect.poll(() => toldOn(second)).toContain('This tab follows it');
    await rewrite(first, 'Thickness', '6 in');
    await expect.poll(() => shownOf(second, 'Thickness')).toBe('6 in');
    await takesOver(second);
    await rewrite(second, 'Waste', '12%');
    await expect.poll(() => shownOf(first, 'Waste')).toBe('12%');
    profile.complaints.splice(
      0,
      Infinity,
      ...profile.complaints.filter((one) => !one.includes(plain)),
    );
  });

  async function takesOver(page: Page): Promise<void> {
    await page.getByRole('button', { name: 'Write here instead' }).first().click();
    await expect.poll(() => toldOn(page)).toBe('');
  }

  test('a full disk is told, nothing is lost, and what was changed is kept when there is room', async () => {
    const profile = await visit();
    await profile.context.addInitScript(() => {
      const put: unknown = Reflect.get(IDBObjectStore.prototype, 'put');
      IDBObjectStore.prototype.put = function (...told) {
        if (sessionStorage.getItem('full')) throw new DOMException('full', 'QuotaExceededError');
        return Reflect.apply(put as () => IDBRequest<IDBValidKey>, this, told);
      };
    });
    const page = await profile.tab();
    await rewrite(page, 'Thickness', '5 in');
    await kept(page);
    await page.evaluate(() => sessionStorage.setItem('full', 'yes'));
    await rewrite(page, 'Thickness', '6 in');
    await expect.poll(() => keptSaid(page)).toBe('not kept: this browser has no room left');
    expect(await toldOn(page)).toContain('tried again every few seconds');
    expect(await shownOf(page, 'Thickness')).toBe('6 in');

    // Closed all the same, it is there again at the next visit.
    await page.close({ runBeforeUnload: false });
    const next = await profile.tab();
    expect(await shownOf(next, 'Thickness')).toBe('6 in');
    expect(await toldOn(next)).toContain('It is here again');
    await kept(next);
    await next.reload();
    await stands(next);
    expect(await shownOf(next, 'Thickness')).toBe('6 in');
    expect(await toldOn(next)).toBe('');
  });

  test('a browser whose room is used up says so of notebook and snapshots, and loses nothing that it called kept', async () => {
    const profile = await visit();
    // Before the page is opened: a browser looks only now and then how much room is left.
    const devtools = await profile.context.newCDPSession(await profile.context.newPage());
    const { origin } = new URL(inject('page'));
    await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 500_000 });
    const page = await profile.tab();
    await rewrite(page, 'Thickness', '5 in');
    await kept(page);

    // Bids are frozen until there is no room for another.
    const frozen = await page.evaluate(async () => {
      const desk = document.querySelector('story-page')?.desk;
      const binder = await desk?.binder();
      if (!binder) throw new Error('no binder');
      const held: string[] = [];
      // Words that nothing can make shorter.
      const words = (): string =>
        Array.from(crypto.getRandomValues(new Uint32Array(3000)), (n) => n.toString(36)).join(' ');
      for (let n = 1; n <= 400 && binder.state.kind === 'here'; n++) {
        const snapshot = await binder.freeze(`Bid ${n}`, words());
        if (snapshot && binder.state.kind === 'here') held.push(snapshot.seal);
      }
      return held;
    });
    expect(frozen.length).toBeGreaterThan(2);
    expect(frozen.length).toBeLessThan(400);
    await choose(page, 'Thickness');
    await page.keyboard.press('s');
    const sheet = page.locator('snapshot-sheet');
    await expect
      .poll(() => seenIn(sheet))
      .toContain('This browser has no room left: what stands here is not kept.');
    await page.keyboard.press('Escape');

    // A change is small: some may find room still.
    let last = '';
    for (let n = 1; n <= 60 && !(await keptSaid(page)).startsWith('not kept'); n++) {
      last = `${n} in`;
      await rewrite(page, 'Thickness', last);
      await expect.poll(() => keptSaid(page)).toMatch(/^(kept here|not kept)/);
    }
    expect(await keptSaid(page)).toBe('not kept: this browser has no room left');
    expect(await toldOn(page)).toContain('tried again every few seconds');
    await page.close({ runBeforeUnload: false });

    // Room is made elsewhere.
    await devtools.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 50_000_000 });
    const next = await profile.tab();
    expect(await shownOf(next, 'Thickness')).toBe(last);
    expect(await toldOn(next)).toContain('It is here again');
    await kept(next);
    const found = await next.evaluate(async () => {
      const binder = await document.querySelector('story-page')?.desk.binder();
      return {
        seals: binder?.versions.snapshots.map(({ seal }) => seal),
        unreadable: binder?.unreadable,
      };
    });
    expect(found).toEqual({ seals: frozen, unreadable: [] });
    await choose(next, 'Thickness');
    await next.keyboard.press('s');
    await expect.poll(() => seenIn(next.locator('snapshot-sheet'))).toContain('Bid 1');
    expect(await seenIn(next.locator('snapshot-sheet'))).not.toContain('Not as it was');
  });

  test('what is in no file is mentioned as it grows, and no more once a file is saved', async () => {
    const { context, tab } = await visit();
    // Saving asks nobody here.
    await context.addInitScript(() => {
      Reflect.deleteProperty(window, 'showOpenFilePicker');
      Reflect.deleteProperty(window, 'showSaveFilePicker');
    });
    const page = await tab();
    for (let n = 1; n <= 10; n++) {
      await rewrite(page, 'Thickness', `${n} in`);
      await kept(page);
      expect((await keptSaid(page)).includes('in no file')).toBe(n === 10);
    }
    expect(await keptSaid(page)).toContain('10 changes in no file yet');
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save a text file' }).click();
    await saved;
    await expect.poll(() => keptSaid(page)).not.toContain('in no file');
    await page.reload();
    await stands(page);
    expect(await keptSaid(page)).not.toContain('in no file');
  });
});

/** Numbers from 0 to 1 that a seed gives again. */
function chanceFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
