// What axe-core finds on a page into which its source was put.
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** What axe finds on the whole page, as sentences. In the dark only colours differ. */
export async function findings(page: Page, scheme: 'light' | 'dark'): Promise<readonly string[]> {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
  const { violations, passes } = await page.evaluate(
    async (runOnly) => {
      const { axe: inPage } = globalThis as unknown as { axe: typeof import('axe-core') };
      return inPage.run(document, { runOnly, resultTypes: ['violations'] });
    },
    scheme === 'light' ? tags : ['color-contrast'],
  );
  expect(passes.length).toBeGreaterThan(scheme === 'light' ? 10 : 0);
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ html }) => html).join(' | ')}`,
  );
}
