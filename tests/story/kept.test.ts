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
    await expect.poll(() => toldOn(second)).toContain('open in another tab too');
    return [first, second];
  }

  /** What a person who comes later finds kept here. */
  async function foundLater({ tab }: Profile): Promise<string> {
    const later = await tab();
    const shown = await shownOf(later, 'Thickness');
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

  test('the second is told and writes over nothing; its work goes on as a copy', async () => {
    const profile = await visit();
    const [first, second] = await twoTabs(profile);
    await rewrite(first, 'Thickness', '6 in');
    await kept(first);
    await expect.poll(() => keptSaid(second)).toBe('not kept: changed in another tab');
    expect(await toldOn(second)).toContain('Another tab kept this notebook');

    await rewrite(second, 'Waste', '12%');
    expect(await priceOf(second)).toBe(new Demo({ Thickness: '5 in', Waste: '12%' }).price);
    expect(await keptSaid(second)).toBe('not kept: changed in another tab');
    expect(await foundLater(profile)).toBe('6 in');
    expect(await keptSaid(first)).toMatch(/^kept here/);

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
    const profile = await visit();
    const [first, second] = await twoTabs(profile);
    await rewrite(first, 'Thickness', '6 in');
    await kept(first);
    await second.getByRole('button', { name: 'Follow what the other kept' }).click();
    await expect.poll(() => shownOf(second, 'Thickness')).toBe('6 in');
    await rewrite(second, 'Thickness', '7 in');
    await kept(second);
    expect(await foundLater(profile)).toBe('7 in');
    await expect.poll(() => keptSaid(first)).toBe('not kept: changed in another tab');
  });

  test('tabs that cannot hear each other write over nothing either', async () => {
    const profile = await visit();
    await profile.context.addInitScript(() => {
      Reflect.deleteProperty(globalThis, 'BroadcastChannel');
    });
    const [first, second] = await twoTabs(profile);
    await rewrite(first, 'Thickness', '6 in');
    await kept(first);
    expect(await keptSaid(second)).toMatch(/^kept here/);
    await rewrite(second, 'Thickness', '7 in');
    await expect.poll(() => keptSaid(second)).toBe('not kept: changed in another tab');
    expect(await foundLater(profile)).toBe('6 in');
    expect(await shownOf(second, 'Thickness')).toBe('7 in');
  });
});
