// What the page weighs before anything can be done with it, and how much of that is the engine with all it leans on.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { runTable } from './table.ts';

const root = process.cwd();

/** Builds into a folder of its own and says how many kB the first load has, gzipped, without fonts. */
function firstLoad(settings: (folder: string) => object): number {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'storyrod-size-'));
  try {
    const build = { outDir: path.join(folder, 'out'), emptyOutDir: true };
    const given = settings(folder);
    const options = JSON.stringify({
      logLevel: 'error',
      ...given,
      build: { ...build, ...('build' in given ? (given.build as object) : {}) },
    });
    // In a process of its own: the bundler is not to be bundled into this program.
    const program = `import { build } from 'vite'; await build(${options});`;
    const built = spawnSync(process.execPath, ['--input-type=module', '--eval', program], {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, NODE_ENV: 'production' },
    });
    if (built.status !== 0) throw new Error(built.stderr);
    return kilobytes(build.outDir);
  } finally {
    fs.rmSync(folder, { recursive: true, force: true });
  }
}

/** The engine alone, kept alive by being put somewhere. */
function engineAlone(folder: string): object {
  const entry = path.join(folder, 'engine.js');
  const engine = path.join(root, 'src/engine/workings.ts');
  fs.writeFileSync(
    entry,
    `import { Workings } from ${JSON.stringify(engine)};\nObject.assign(globalThis, { Workings });\n`,
  );
  return {
    // Built as the page is.
    configFile: path.join(root, 'vite.config.ts'),
    root: folder,
    build: { target: 'es2022', rolldownOptions: { input: entry } },
  };
}

/** What a browser fetches before anything is asked of the page: the page, and all that is named in it and in turn. */
function kilobytes(folder: string): number {
  const page = path.join(folder, 'index.html');
  const wanted = fs.existsSync(page)
    ? [page]
    : fs
        .readdirSync(folder, { recursive: true, encoding: 'utf8' })
        .filter((file) => file.endsWith('.js'))
        .map((file) => path.join(folder, file));
  if (wanted.length === 0) throw new Error(`nothing was built in ${folder}`);
  let bytes = 0;
  const fetched = new Set<string>();
  for (let file = wanted.pop(); file !== undefined; file = wanted.pop()) {
    if (fetched.has(file)) continue;
    fetched.add(file);
    const content = fs.readFileSync(file);
    bytes += gzipSync(content, { level: 9 }).length;
    for (const named of namedIn(content.toString('utf8'))) {
      wanted.push(path.resolve(path.dirname(file), named));
    }
  }
  return bytes / 1000;
}

/** Files that a page or a module can't do without; `import(…)` is not among them: that is fetched when it is needed. */
function namedIn(text: string): readonly string[] {
  const fetchedAtOnce =
    /(?:\b(?:src|href)=|\bfrom\s*|\bimport\s*)["'](\.\/[^"']+\.(?:js|css|svg))["']/g;
  return [...text.matchAll(fetchedAtOnce)].map(([, file = '']) => file);
}

runTable('Size, gzipped', [
  {
    what: 'the engine and all it leans on',
    measure: () => firstLoad(engineAlone),
    goal: 70,
    gate: null,
    better: 'lower',
    unit: ' kB',
  },
  {
    what: 'the whole first load, without fonts',
    measure: () => firstLoad(() => ({})),
    goal: 180,
    gate: null,
    better: 'lower',
    unit: ' kB',
  },
]);
