// Text files in and out: byte for byte, and files that are no notebook or mean harm.
import fs from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { Demo } from './demo.ts';
import {
  type Profile,
  choose,
  kept,
  priceOf,
  rewrite,
  seenIn,
  shownOf,
  stands,
  toldOn,
  visits,
} from './visit.ts';

const visit = visits();
let profile: Profile;
let page: Page;

/** A browser without file pickers: files come and go as uploads and downloads, as in most browsers. */
async function open(): Promise<void> {
  profile = await visit();
  await profile.context.addInitScript(() => {
    Reflect.deleteProperty(window, 'showOpenFilePicker');
    Reflect.deleteProperty(window, 'showSaveFilePicker');
  });
  page = await profile.tab();
}

async function openFile(name: string, content: string | Buffer): Promise<void> {
  const asked = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a text file' }).click();
  const buffer = Buffer.isBuffer(content) ? content : Buffer.from(content);
  await (await asked).setFiles({ name, mimeType: 'text/markdown', buffer });
}

/** Saves and returns the name offered and the bytes that came. */
async function saved(): Promise<readonly [string, Buffer]> {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a text file' }).click();
  const download = await coming;
  return [download.suggestedFilename(), fs.readFileSync(await download.path())];
}

async function titled(title: string): Promise<void> {
  await page.getByRole('heading', { level: 1, name: title }).waitFor();
}

describe('a text file', () => {
  // Line ends, a mark at the start and odd spacing are the person's own.
  const written =
    '\ufeff# Side yard\r\n\r\nSome  prose — with a dash.\r\n\r\n## Path\r\n- Path length:   20 ft\r\n  - from: measured\r\n- Path width: 3 ft\r\n- Gravel: path length by path width at $1.10 per sq ft\r\n  - cost: material\r\n\r\n\r\n';

  test('comes back byte for byte as it was, apart from what was changed', async () => {
    await open();
    await openFile('side yard.md', written);
    await titled('Side yard');
    expect(await priceOf(page)).toBe('$66.00');
    const [name, bytes] = await saved();
    expect(name).toBe('side-yard.md');
    expect(bytes.equals(Buffer.from(written))).toBe(true);

    await rewrite(page, 'Path width', '4 ft');
    await expect.poll(() => priceOf(page)).toBe('$88.00');
    const [, changed] = await saved();
    expect(changed.toString()).toBe(written.replace('width: 3 ft', 'width: 4 ft'));
    await kept(page);
    await page.reload();
    await stands(page);
    expect(await priceOf(page)).toBe('$88.00');
  });

  test('that is opened leaves the notebook that was open among those kept here', async () => {
    await open();
    await rewrite(page, 'Thickness', '5 in');
    await openFile('side yard.md', written);
    await titled('Side yard');
    await page.getByRole('button', { name: 'Notebooks' }).click();
    await page.getByRole('button', { name: /^Kestrel Court garden/ }).click();
    await titled('Kestrel Court garden');
    expect(await shownOf(page, 'Thickness')).toBe('5 in');
  });

  test('of the demo holds the demo with its change and nothing else', async () => {
    await open();
    await rewrite(page, 'Thickness', '5 in');
    const [name, bytes] = await saved();
    expect(name).toBe('kestrel-court-garden.md');
    expect(bytes.toString()).toBe(new Demo({ Thickness: '5 in' }).text);
  });
});

describe('a file that is no notebook is refused with its reason, and nothing is lost', () => {
  test.for([
    ['binary', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x00, 0xff, 0xfe, 0x01]), /text/],
    ['of 5 MB', Buffer.from('- Slab length: 12 ft\n'.repeat(250_000)), /5\.3 million characters/],
  ] as const)('%s', async ([, content, reason]) => {
    await open();
    await rewrite(page, 'Thickness', '5 in');
    await openFile('estimate.md', content);
    await expect.poll(() => toldOn(page)).toMatch(reason);
    expect(await toldOn(page)).toContain('The notebook that was open is still here.');
    expect(await shownOf(page, 'Thickness')).toBe('5 in');
    await kept(page);
    await page.reload();
    await stands(page);
    expect(await shownOf(page, 'Thickness')).toBe('5 in');
  });
});

test('an empty file is an empty notebook, and one can begin in it', async () => {
  await open();
  await openFile('empty.md', '');
  await titled('No title yet');
  expect(await priceOf(page)).toBe('$0.00');
  const [, bytes] = await saved();
  expect(bytes.length).toBe(0);
  await page.getByRole('button', { name: 'Insert a part' }).click();
  await page.getByRole('button', { name: 'Add an empty part' }).click();
  await page.getByRole('textbox', { name: 'Name of the part' }).fill('Path');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Add a cell to Path' }).click();
  await page.getByRole('textbox', { name: 'Name of the new cell' }).fill('Length');
  await page.keyboard.press('Enter');
  await page.getByRole('combobox', { name: 'Formula of Length' }).fill('20 ft');
  await page.keyboard.press('Enter');
  await expect.poll(() => shownOf(page, 'Length')).toBe('20 ft');
  const [, begun] = await saved();
  expect(begun.toString()).toMatch(/^## Path\n+- Length: 20 ft\n*$/);
});

test('markup and script in a file are text wherever they stand, and nothing of them runs', async () => {
  await open();
  const script = '<script>window.ran = 1</script>';
  const image = '<img src=x onerror="window.ran = 1">';
  const link = '[go](javascript:window.ran=1)';
  await openFile(
    'harm.md',
    `# ${image} ${script}\n\n${script} ${link}\n\n## __proto__ ${image}\n` +
      `- constructor: 3 ft\n  - from: ${image}${script}\n  - note: ${link}\n` +
      `- __proto__: constructor times 2\n- ${image}: 4 ft\n- toString: "${script}"\n` +
      `- Price ${script}: $5\n  - cost: material\n  - caution: ${image}\n` +
      `- Lost: ${image} plus constructor\n`,
  );
  await titled('window.ran');
  expect(await shownOf(page, '__proto__')).toBe('6 ft');
  expect(await seenIn(page.locator('main'))).toContain(`${script} ${link}`);
  // The working, the sheets and the printed title show the same texts again.
  for (const name of ['constructor', '__proto__']) await choose(page, name);
  await page.getByRole('button', { name: /^Look here/ }).click();
  await page.getByRole('dialog', { name: 'Look here' }).waitFor();
  await page.keyboard.press('Escape');
  const made = await page.evaluate(() => {
    const below = (root: ParentNode): Element[] =>
      [...root.querySelectorAll('*')].flatMap((one) => [
        one,
        ...(one.shadowRoot ? below(one.shadowRoot) : []),
      ]);
    const bad = (one: Element) =>
      one.matches('img, iframe, object, embed, body script, [onerror], [href^="javascript"]');
    return { bad: below(document).filter(bad).length, ran: 'ran' in window };
  });
  expect(made).toEqual({ bad: 0, ran: false });
  const [, bytes] = await saved();
  expect(bytes.toString()).toContain(`- ${image}: 4 ft`);
});

test('a formula of 100,000 characters and 5,000 nested brackets are told as faults of their cells', async () => {
  await open();
  const brackets = `${'('.repeat(5000)}1 ft${')'.repeat(5000)}`;
  await openFile(
    'deep.md',
    `# Deep\n\n## Part\n- Deep: ${brackets}\n- Long: ${'length plus '.repeat(8400)}1 ft\n- Length: 3 ft\n- Twice: length times 2\n`,
  );
  await titled('Deep');
  expect(await shownOf(page, 'Twice')).toBe('6 ft');
  expect(await page.locator('story-cell .fault').count()).toBe(2);
  const [, bytes] = await saved();
  expect(bytes.toString()).toContain(`- Deep: ${brackets}\n`);
});
