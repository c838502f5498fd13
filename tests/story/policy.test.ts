// The page under the policy it is built with: only its own scripts and styles, nothing written into it.
import { expect, test } from 'vitest';
import { choose, kept, rewrite, visits } from './visit.ts';

const visit = visits();

test('the built page allows its own files and nothing unsafe', async () => {
  const page = await (await visit()).tab();
  const policy = await page
    .locator('meta[http-equiv="Content-Security-Policy"]')
    .getAttribute('content');
  expect(policy).toContain("script-src 'self'");
  expect(policy).toContain("style-src 'self'");
  expect(policy).toContain("object-src 'none'");
  expect(policy).not.toContain('unsafe');
});

test('a script, a style and a handler written into the page are refused by the browser', async () => {
  const { tab, complaints } = await visit();
  const page = await tab();
  const refused = await page.evaluate(async () => {
    const seen: string[] = [];
    const all = new Promise<void>((done) => {
      document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) => {
        if (seen.push(effectiveDirective) === 4) done();
      });
    });
    const script = document.createElement('script');
    script.textContent = 'window.ran = 1';
    const style = document.createElement('style');
    style.textContent = 'body { color: red }';
    const marked = document.createElement('p');
    marked.innerHTML = '<i style="color: red" onclick="window.ran = 1">x</i>';
    document.body.append(script, style, marked);
    marked.querySelector('i')?.click();
    await all;
    return { seen: seen.sort(), ran: 'ran' in window };
  });
  expect(refused.ran).toBe(false);
  expect(refused.seen).toEqual([
    'script-src-attr',
    'script-src-elem',
    'style-src-attr',
    'style-src-elem',
  ]);
  expect(complaints.splice(0).length).toBe(4);
});

test('everything a person opens works under the policy without one refusal', async () => {
  // A refusal is a complaint of the console, as the story before shows, and no story may end with one.
  const page = await (await visit()).tab();
  for (const sheet of ['Insert a part', 'Notebooks', 'Keys']) {
    await page.getByRole('button', { name: sheet, exact: true }).click();
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
  }
  await choose(page, 'Bags to buy');
  await page.keyboard.press('Enter');
  await page.keyboard.type('slab vo');
  await page.getByRole('listbox', { name: 'What could go on from here' }).waitFor();
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await choose(page, 'Thickness');
  await page.keyboard.press('t');
  await page.getByRole('slider').press('ArrowRight');
  await page.keyboard.press('Enter');
  await rewrite(page, 'Waste', '12%');
  await kept(page);
  const styled = await page.locator('story-rod').evaluate((rod) => rod.clientHeight);
  expect(styled).toBeGreaterThan(300);
});
