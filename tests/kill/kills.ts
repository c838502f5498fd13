// Kills a browser with SIGKILL while a page in it writes, again and again on one profile, and looks at what is kept after each.
// The page stands still at a phase of a write and is killed there, phase after phase, or is killed at any moment.
import fs from 'node:fs';
import http from 'node:http';
import type { AddressInfo } from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { type BrowserContext, chromium } from 'playwright-core';
import { build } from 'vite';
import { browserChoice } from '../tools/browser.ts';
import { Ledger } from './ledger.ts';
import {
  type Acknowledged,
  type Found,
  type Orders,
  PHASES,
  type Phase,
  type Way,
  type Whole,
} from './phases.ts';

export interface Plan {
  readonly kills: number;
  /** Of the random moments; a run can be had again. */
  readonly seed: number;
  readonly way: Way;
  readonly say: (line: string) => void;
}

export interface Killed {
  readonly kills: number;
  readonly acknowledged: number;
  readonly lost: number;
  /** The fewest acknowledgements between two kills. */
  readonly fewest: number;
  readonly faults: readonly string[];
  readonly phases: ReadonlyMap<Phase | 'any', number>;
}

const LEAST = 10;
/** As long as a browser on a busy machine may take from its start to the moment it is killed. */
const PATIENCE = 90_000;
/** A notebook is left to rest after so many kills, and looked at again at the end. */
const KILLS_EACH = 20;

const here = fileURLToPath(new URL('./', import.meta.url));
const root = path.resolve(here, '../..');

export async function killed({ kills, seed, way, say }: Plan): Promise<Killed> {
  const work = fs.mkdtempSync(path.join(os.tmpdir(), 'storyrod-kill-'));
  const chance = chanceFrom(seed);
  const log = path.join(work, 'acknowledged.log');
  const ledger = new Ledger();
  const phases = new Map<Phase | 'any', number>();
  const faults: string[] = [];
  let lost = 0;
  let fewest = Infinity;
  let heard: Heard = {
    acknowledged: () => undefined,
    found: () => undefined,
    reached: () => undefined,
    failed: () => undefined,
  };
  const server = await served(await pageBuilt(work), (path, what) => {
    if (path === '/acknowledged') {
      fs.appendFileSync(log, `${JSON.stringify(what)}\n`);
      ledger.acknowledged(what as Acknowledged);
      heard.acknowledged();
    } else if (path === '/begun') ledger.begun(what as Whole);
    else if (path === '/found') heard.found(what as readonly Found[]);
    else if (path === '/reached') heard.reached();
    else heard.failed(String(what));
  });
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/page.html`;
  const browser = await browserChoice();
  const profile = path.join(work, 'profile');

  /** From opening to the end: by a kill, or by closing after a look. */
  const visit = async (orders: Orders, moment: number): Promise<void> => {
    const context = await chromium.launchPersistentContext(profile, browser);
    try {
      const process = await processOf(context);
      let count = 0;
      await new Promise<void>((resolve, reject) => {
        const late = setTimeout(
          () => reject(new Error(`nothing more was heard: ${JSON.stringify(orders)}`)),
          PATIENCE,
        );
        const end = (): void => {
          clearTimeout(late);
          if (orders.after < 0) resolve();
          else setTimeout(() => void kill(process, context).then(resolve, reject), moment);
        };
        heard = {
          found: (found) => {
            const loss = ledger.missing(found);
            lost += loss.lost;
            faults.push(...loss.why);
            if (orders.after < 0) end();
          },
          acknowledged: () => {
            count++;
            if (orders.at === null && count === orders.after) end();
          },
          reached: end,
          failed: (why) => {
            clearTimeout(late);
            reject(new Error(why));
          },
        };
        context
          .pages()[0]
          ?.goto(`${address}#${encodeURIComponent(JSON.stringify(orders))}`)
          .catch(() => undefined);
      });
      if (orders.after >= 0) fewest = Math.min(fewest, count);
    } finally {
      await context.close().catch(() => undefined);
    }
  };

  try {
    for (let n = 0; n < kills; n++) {
      const turn = n % (PHASES.length + 2);
      const at = PHASES[turn] ?? null;
      const id = `job-${Math.floor(n / KILLS_EACH)}`;
      const after = LEAST + Math.floor(chance() * 12);
      // At a phase the page stands still: what the browser's other processes had to do goes on for some milliseconds.
      const moment = at === null ? chance() * 40 : chance() < 0.5 ? 0 : chance() * 12;
      await visit({ id, after, at, way }, moment);
      phases.set(at ?? 'any', (phases.get(at ?? 'any') ?? 0) + 1);
      if ((n + 1) % 10 === 0)
        say(`${n + 1} kills, ${ledger.count} acknowledged writes, ${lost} lost`);
    }
    await visit({ id: 'job-0', after: -1, at: null, way }, 0);
    // The log that was written along is what counts: the browser has no part in it.
    const acknowledged = fs.readFileSync(log, 'utf8').trimEnd().split('\n').length;
    return { kills, acknowledged, lost, fewest, faults, phases };
  } finally {
    server.closeAllConnections();
    server.close();
    fs.rmSync(work, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });
  }
}

interface Heard {
  readonly acknowledged: () => void;
  readonly found: (found: readonly Found[]) => void;
  readonly reached: () => void;
  readonly failed: (why: string) => void;
}

async function processOf(context: BrowserContext): Promise<number> {
  const session = await context.browser()?.newBrowserCDPSession();
  const told = await session?.send('SystemInfo.getProcessInfo');
  const id = told?.processInfo.find(({ type }) => type === 'browser')?.id;
  if (!id) throw new Error('the browser does not say which process it is');
  return id;
}

async function kill(id: number, context: BrowserContext): Promise<void> {
  const gone = context.waitForEvent('close', { timeout: PATIENCE });
  // All processes of it in one blow: the runner gives each browser a group of its own. Where it did not, the first falls alone.
  try {
    process.kill(-id, 'SIGKILL');
  } catch {
    process.kill(id, 'SIGKILL');
  }
  await gone;
}

async function pageBuilt(work: string): Promise<string> {
  const outDir = path.join(work, 'page');
  process.env['NODE_ENV'] = 'production';
  await build({
    configFile: false,
    root: here,
    base: './',
    publicDir: false,
    logLevel: 'warn',
    cacheDir: path.join(root, 'node_modules/.vite'),
    build: {
      outDir,
      emptyOutDir: true,
      target: 'es2022',
      modulePreload: false,
      chunkSizeWarningLimit: 4000,
      rolldownOptions: { input: path.join(here, 'page.html') },
    },
  });
  return outDir;
}

const KINDS: Readonly<Record<string, string>> = { '.html': 'text/html', '.js': 'text/javascript' };

/** Serves the page and hears what it says. One address for the whole run: the database hangs on it. */
function served(folder: string, hear: (path: string, what: unknown) => void): Promise<http.Server> {
  const server = http.createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://here');
    if (request.method === 'POST') {
      const pieces: Buffer[] = [];
      request.on('data', (piece: Buffer) => pieces.push(piece));
      request.on('end', () => {
        const body = Buffer.concat(pieces).toString('utf8');
        if (pathname === '/reached') {
          // Never answered: the page waits for its end.
          hear(pathname, body);
          return;
        }
        hear(pathname, JSON.parse(body));
        response.end();
      });
      return;
    }
    const file = path.join(folder, path.normalize(pathname));
    if (!file.startsWith(folder) || !fs.existsSync(file) || !fs.statSync(file).isFile()) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'Content-Type': KINDS[path.extname(file)] ?? 'text/plain' });
    response.end(fs.readFileSync(file));
  });
  return new Promise((resolve) => server.listen(0, '127.0.0.1', () => resolve(server)));
}

/** Numbers from 0 to 1 that a seed gives again. */
function chanceFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
