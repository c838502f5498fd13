// Which browser the tests drive, as launch options for playwright-core.
// TEST_BROWSER picks another one: a path, `bundled`, `system`, `chrome` or `msedge`.
import fs from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

export interface BrowserChoice {
  readonly executablePath?: string;
  readonly channel?: string;
  readonly args: string[];
  readonly env?: Record<string, string>;
}

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const ON_LINUX = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge',
];

const NO_BROWSER =
  'No browser for the tests was found: install Chrome, Edge or Chromium, or set TEST_BROWSER to the path of one.';

/** The browser to use here. Throws one clear sentence when there is none: the tests never skip themselves. */
export async function browserChoice(
  pick: string | undefined = process.env['TEST_BROWSER'],
): Promise<BrowserChoice> {
  const linux = process.platform === 'linux';
  const args = linux ? FLAGS : [];
  if (pick && path.isAbsolute(pick)) {
    if (!canRun(pick))
      throw new Error(`TEST_BROWSER names ${pick}, which is not there or can't be run.`);
    return { executablePath: pick, args };
  }
  if (pick === 'chrome' || pick === 'msedge') return { channel: pick, args };
  if (pick === 'bundled' || (!pick && linux && process.arch === 'x64')) return bundled();
  if (pick && pick !== 'system') {
    throw new Error(
      `TEST_BROWSER is "${pick}"; it takes a full path, bundled, system, chrome or msedge.`,
    );
  }
  if (linux) {
    const found = ON_LINUX.map(onPath).find((file) => file !== undefined);
    if (found) return { executablePath: found, args };
  }
  for (const channel of ['chrome', 'msedge']) {
    if (await starts(channel, args)) return { channel, args };
  }
  throw new Error(NO_BROWSER);
}

/**
 * The Chromium that comes inside an npm package, unpacked once into node_modules.
 * The package unpacks its own system libraries and fonts only where it believes to be on a cloud
 * machine; here it is told so, and the launch is pointed at both, so that a bare machine will do.
 */
async function bundled(): Promise<BrowserChoice> {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const place = path.join(root, 'node_modules/.cache/test-chromium', bundledVersion());
  const executablePath = path.join(place, 'chromium');
  if (!canRun(executablePath)) await unpack(place);
  const libraries = [path.join(place, 'al2023/lib'), process.env['LD_LIBRARY_PATH']];
  return {
    executablePath,
    args: FLAGS,
    env: {
      ...(process.env as Record<string, string>),
      LD_LIBRARY_PATH: libraries.filter(Boolean).join(path.delimiter),
      FONTCONFIG_FILE: path.join(place, 'fonts/fonts.conf'),
    },
  };
}

function bundledVersion(): string {
  const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium');
  const manifest = path.resolve(path.dirname(entry), '../../package.json');
  return (JSON.parse(fs.readFileSync(manifest, 'utf8')) as { version: string }).version;
}

/** Unpacks into a folder of this process and publishes it with one rename: two runs never see half a browser. */
async function unpack(place: string): Promise<void> {
  const own = `${place}.${process.pid}`;
  const before = process.env['TMPDIR'];
  fs.mkdirSync(own, { recursive: true });
  process.env['TMPDIR'] = own;
  process.env['CODEBUILD_BUILD_IMAGE'] ??= 'nodejs20';
  try {
    const { default: packed } = await import('@sparticuz/chromium');
    await packed.executablePath();
  } finally {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
  }
  fs.writeFileSync(
    path.join(own, 'fonts/fonts.conf'),
    `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>/usr/share/fonts</dir>
  <dir>${path.join(place, 'fonts')}</dir>
  <cachedir>${path.join(place, 'fonts-cache')}</cachedir>
</fontconfig>
`,
  );
  // What stands there without a browser in it is left over: a browser that still ran when the packages
  // were installed anew wrote its font cache back.
  if (!canRun(path.join(place, 'chromium'))) fs.rmSync(place, { recursive: true, force: true });
  try {
    fs.renameSync(own, place);
  } catch (cause) {
    fs.rmSync(own, { recursive: true, force: true });
    // Another run may have been first; then its browser is as good as ours.
    if (!canRun(path.join(place, 'chromium'))) throw cause;
  }
}

function canRun(file: string): boolean {
  try {
    fs.accessSync(file, fs.constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function onPath(name: string): string | undefined {
  const folders = (process.env['PATH'] ?? '').split(path.delimiter);
  return folders.map((folder) => path.join(folder, name)).find(canRun);
}

async function starts(channel: string, args: string[]): Promise<boolean> {
  try {
    const browser = await chromium.launch({ channel, args });
    await browser.close();
    return true;
  } catch {
    return false;
  }
}
