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
    configFile: false,
    root: folder,
    publicDir: false,
    build: { target: 'es2022', rolldownOptions: { input: entry } },
  };
}

function kilobytes(folder: string): number {
  const files = fs
    .readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(?:html|js|css|svg)$/.test(file));
  if (files.length === 0) throw new Error(`nothing was built in ${folder}`);
  const bytes = files.map(
    (file) => gzipSync(fs.readFileSync(path.join(folder, file)), { level: 9 }).length,
  );
  return bytes.reduce((a, b) => a + b, 0) / 1000;
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
