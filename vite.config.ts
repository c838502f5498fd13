// How the page is served and built, and how the tests run: in node, in a browser, and on the whole page.
import { playwright } from '@vitest/browser-playwright';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { browserChoice } from './tests/tools/browser.ts';

/** The built page runs its own scripts and nothing else; no text is ever run as code. */
const POLICY = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** Only in the build: the development server needs scripts of its own in the page. */
function contentSecurityPolicy(): Plugin {
  return {
    name: 'content-security-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}

const TABLE = '/src/quantity/mathjs-units.ts';

/** Puts what the module exports in place of what works it out: the page needs the numbers of mathjs's unit table, not the table. */
function workedOutInBuild(): Plugin {
  return {
    name: 'worked-out-in-build',
    apply: 'build',
    async load(id) {
      if (!id.endsWith(TABLE)) return null;
      const made = await import('./src/quantity/mathjs-units.ts');
      return Object.entries(made)
        .map(([name, value]) => `export const ${name} = ${JSON.stringify(value)};`)
        .join('\n');
    },
  };
}

/** The Markdown reader decodes `&amp;` and its like with the page's document in a browser; a worker has none. */
const DECODER = 'decode-named-character-reference';
const withoutDocument = `${import.meta.dirname}/node_modules/${DECODER}/index.js`;

function decodesWithoutDocument(): Plugin {
  return {
    name: 'decodes-without-document',
    enforce: 'pre',
    resolveId: (source) => (source === DECODER ? withoutDocument : null),
  };
}

/** Launch options when tests run. Where no browser is found the tests in node still run; the others say why not. */
async function launchOptions() {
  return process.env['VITEST'] ? browserChoice().catch(() => ({ args: [] })) : { args: [] };
}

const here = import.meta.dirname;

export default defineConfig(async ({ command }) => ({
  root: `${here}/src`,
  base: './',
  publicDir: false as const,
  cacheDir: `${here}/node_modules/.vite`,
  plugins: [contentSecurityPolicy(), workedOutInBuild()],
  worker: {
    format: 'es' as const,
    plugins: () => [workedOutInBuild(), decodesWithoutDocument()],
  },
  // While developing page and worker share the packages; built, each has its own.
  resolve: { alias: command === 'serve' ? [{ find: DECODER, replacement: withoutDocument }] : [] },
  // The templates and trade tables lie beside src and are imported as text.
  server: { fs: { allow: [here] } },
  build: {
    outDir: `${here}/dist`,
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    rolldownOptions: {
      // The worker is a build of its own, which takes its time.
      checks: { pluginTimings: false },
      output: {
        // Cut up by who else needs which module, the first load would be packed worse, and more so with every page fetched later.
        codeSplitting: { groups: [{ name: 'page', tags: ['$initial' as const] }] },
      },
    },
    // A warning that every build gives is read by nobody; the bench holds the size of the first load.
    chunkSizeWarningLimit: 2000,
  },
  test: {
    root: here,
    projects: [
      {
        extends: true as const,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/component/**', 'tests/story/**'],
          // How long a test takes says nothing about it: a machine that is busy takes its time.
          testTimeout: 30_000,
        },
      },
      {
        extends: true as const,
        // Found one by one they would make the runner load its tests anew in the middle of a run.
        optimizeDeps: {
          include: [
            '@noble/hashes/sha2.js',
            '@noble/hashes/utils.js',
            'axe-core',
            'browser-fs-access',
            'idb-keyval',
            'lit',
            'lit/decorators.js',
            'lit/directives/keyed.js',
            'lit/directives/repeat.js',
            'lit/directive.js',
            'valibot',
          ],
        },
        test: {
          name: 'component',
          include: ['tests/component/**/*.test.ts'],
          testTimeout: 30_000,
          // What is waited for comes in a moment; a machine that is busy takes longer for a moment.
          expect: { poll: { timeout: 5000 } },
          globalSetup: ['tests/tools/need-browser.ts'],
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({ launchOptions: await launchOptions() }),
            instances: [{ browser: 'chromium' as const }],
          },
        },
      },
      {
        extends: true as const,
        test: {
          name: 'story',
          environment: 'node',
          include: ['tests/story/**/*.test.ts'],
          expect: { poll: { timeout: 10_000 } },
          globalSetup: ['tests/tools/serve-page.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          // One after the other in one process: the floors are read in once.
          fileParallelism: false,
          isolate: false,
        },
      },
    ],
  },
}));
