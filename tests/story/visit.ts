// A visit to the built page in a real browser: opening it, what a person finds there, and that it never complained.
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  type Locator,
  type Page,
  chromium,
} from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, inject } from 'vitest';

/** As long as anything may take on a machine that is busy with other things. */
const PATIENCE = 10_000;

export const DESK = { width: 1440, height: 900 };
export const PHONE = { width: 390, height: 844 };

/** A browser profile of its own, as of a person who was never here. */
export interface Profile {
  readonly context: BrowserContext;
  /** What the browser complained of; a story that provokes a complaint takes it out. */
  readonly complaints: string[];
  /** Opens the page in one more tab and waits until the notebook stands. */
  readonly tab: () => Promise<Page>;
}

/**
 * One browser for a file of stories and a new profile each time one is asked for. After each story its
 * profiles are closed, and a complaint left over makes it fail.
 */
export function visits(): (options?: BrowserContextOptions) => Promise<Profile> {
  let browser: Browser;
  const profiles: Profile[] = [];
  beforeAll(async () => {
    browser = await chromium.launch(inject('browser'));
  });
  afterAll(() => browser.close());
  afterEach(async () => {
    const all = profiles.splice(0);
    for (const { context } of all) await context.close();
    expect(all.flatMap(({ complaints }) => complaints)).toEqual([]);
  });
  return async (options = {}) => {
    const profile = profileIn(await browser.newContext({ viewport: DESK, ...options }));
    profiles.push(profile);
    return profile;
  };
}

export function profileIn(context: BrowserContext): Profile {
  const complaints: string[] = [];
  const home = new URL(inject('page')).origin;
  context.setDefaultTimeout(PATIENCE);
  context.on('console', (message) => complaints.push(`${message.type()}: ${message.text()}`));
  context.on('weberror', (error) => complaints.push(`not caught: ${error.error().message}`));
  context.on('request', (request) => {
    if (!request.url().startsWith(home)) complaints.push(`asked elsewhere: ${request.url()}`);
  });
  const tab = async (): Promise<Page> => {
    const page = await context.newPage();
    await page.goto(inject('page'));
    await stands(page);
    return page;
  };
  return { context, complaints, tab };
}

/** Until the notebook is drawn. */
export async function stands(page: Page): Promise<void> {
  await page.getByRole('heading', { level: 1 }).waitFor();
}

export function rowOf(page: Page, name: string): Locator {
  return page
    .locator('story-cell')
    .filter({ has: page.getByRole('button', { name, exact: true }) });
}

/** Chooses a cell by pressing its name. */
export async function choose(page: Page, name: string): Promise<void> {
  await rowOf(page, name).getByRole('button', { name, exact: true }).click();
}

/** The number at the left of a row, or its money. */
export async function shownOf(page: Page, name: string): Promise<string> {
  return tidy(await changing(page, name).innerText());
}

/** The button that a row's number is. */
export function changing(page: Page, name: string): Locator {
  return rowOf(page, name).getByRole('button', { name: new RegExp(`\\. Change ${name}$`) });
}

/** Writes another formula in the place of a cell's own. */
export async function rewrite(page: Page, name: string, formula: string): Promise<void> {
  await choose(page, name);
  await page.keyboard.press('Enter');
  await page.getByRole('combobox', { name: `Formula of ${name}` }).fill(formula);
  await page.keyboard.press('Enter');
}

export async function priceOf(page: Page): Promise<string> {
  return tidy(await page.getByRole('contentinfo').locator('strong').innerText());
}

/** The working that stands beside the page. */
export function workingOf(page: Page): Locator {
  return page.getByRole('complementary', { name: 'Working' });
}

/** How the notebook is kept, in the words of the header. */
export async function keptSaid(page: Page): Promise<string> {
  return tidy(await page.getByRole('banner').getByRole('status').innerText());
}

/** Until everything that was changed is kept. */
export async function kept(page: Page): Promise<void> {
  await expect.poll(() => keptSaid(page)).toMatch(/^kept here, \d/);
}

/** What the page tells the person under the header. */
export async function toldOn(page: Page): Promise<string> {
  return seenIn(page.locator('.told'));
}

/** All words that can be seen in an element, through its components. */
export function seenIn(element: Locator): Promise<string> {
  return element.evaluate((top) => {
    const words: string[] = [];
    const visit = (node: Node): void => {
      if (node instanceof Text) words.push(node.data);
      if (node instanceof HTMLSlotElement) node.assignedNodes().forEach(visit);
      if (!(node instanceof Element) || !seen(node)) return;
      (node.shadowRoot ?? node).childNodes.forEach(visit);
    };
    const seen = (node: Element): boolean =>
      node.localName !== 'style' &&
      (getComputedStyle(node).display === 'contents' || node.checkVisibility());
    visit(top);
    return words.join(' ').replace(/\s+/g, ' ').trim();
  });
}

/** What has the keyboard, as a reader would be told. */
export function focusedOn(page: Page): Promise<string> {
  return page.evaluate(() => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    const said = at?.getAttribute('aria-label') ?? at?.textContent ?? '';
    return said.replace(/\s+/g, ' ').trim();
  });
}

/** Presses a key until this has the keyboard. */
export async function until(
  page: Page,
  key: string,
  said: string | RegExp,
  most: number,
): Promise<void> {
  for (let pressed = 0; pressed < most; pressed++) {
    await page.keyboard.press(key);
    const focused = await focusedOn(page);
    if (typeof said === 'string' ? focused === said : said.test(focused)) return;
  }
  throw new Error(`${key} ${most} times did not reach ${said}; now: ${await focusedOn(page)}`);
}

/** Tabs on until this has the keyboard. */
export async function tabTo(page: Page, target: Locator, most = 60): Promise<void> {
  await target.waitFor();
  for (let pressed = 0; pressed < most; pressed++) {
    await page.keyboard.press('Tab');
    if (await target.evaluate((one) => one.matches(':focus'))) return;
  }
  throw new Error(`Tab ${most} times did not reach it; now: ${await focusedOn(page)}`);
}

export function tidy(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
