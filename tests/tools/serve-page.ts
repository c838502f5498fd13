// Runs once before the story tests: builds the page as it is shipped, serves it on a free port, closes it after.
// A story asks for it with `inject('page')` (the address) and `inject('browser')` (launch options).
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { browserChoice, type BrowserChoice } from './browser.ts';

declare module 'vitest' {
  interface ProvidedContext {
    page: string;
    browser: BrowserChoice;
  }
}

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  // First, so that nothing is left running when there is no browser.
  const browser = await browserChoice();
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const outDir = path.join(root, 'node_modules/.cache/story-page', String(process.pid));
  const common = { configFile: path.join(root, 'vite.config.ts'), logLevel: 'warn' } as const;
  // The test runner says `test` here, and some packages would then bring their talkative form.
  process.env['NODE_ENV'] = 'production';
  await build({ ...common, build: { outDir, emptyOutDir: true } });
  const server = await preview({
    ...common,
    build: { outDir },
    preview: { host: '127.0.0.1', port: 0, open: false },
  });
  const page = server.resolvedUrls?.local[0];
  if (!page) throw new Error('The preview server of the story tests has no address.');
  project.provide('page', page);
  project.provide('browser', browser);
  return async () => {
    await server.close();
    fs.rmSync(outDir, { recursive: true, force: true });
  };
}
