// Runs a TypeScript program of the project on plain Node: `node src/tools/run.mjs src/figure.ts …arguments`.
// Node 20 reads no TypeScript, so the program is bundled once and kept under the hash of all it may be made of;
// arguments, stdout and the exit code are the program's own.
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { makeReady, root } from './ready.mjs';

/** What a program may be made of, beside the packages that the lockfile holds. */
const SOURCES = ['src', 'shared', 'templates'];

const CACHE = path.join(root, 'node_modules/.cache/programs');

/**
 * The bundled form of a program, made now if it is not there yet.
 * @param {string} entry path below the root
 */
export async function bundled(entry) {
  const name = entry.replace(/\.ts$/, '').replaceAll(/[\\/]/g, '-');
  const folder = path.join(CACHE, `${name}-${fingerprint(entry)}`);
  const file = path.join(folder, 'program.mjs');
  if (!fs.existsSync(file)) {
    forgetOlder(name);
    await bundle(entry, folder);
  }
  return file;
}

/** @param {string} entry */
function fingerprint(entry) {
  const hash = createHash('sha256').update(process.versions.node);
  const folders = entry.startsWith('tests') ? [...SOURCES, path.dirname(entry)] : SOURCES;
  const files = ['package-lock.json', ...folders.flatMap(filesUnder)];
  for (const file of files.sort()) {
    const content = fs.readFileSync(path.join(root, file));
    hash.update(`${file}\0${content.length}\0`).update(content);
  }
  return hash.digest('hex').slice(0, 20);
}

/**
 * @param {string} folder
 * @returns {string[]}
 */
function filesUnder(folder) {
  const place = path.join(root, folder);
  if (!fs.existsSync(place)) return [];
  return fs.readdirSync(place, { withFileTypes: true }).flatMap((found) => {
    const name = `${folder}/${found.name}`;
    if (found.isDirectory()) return filesUnder(name);
    return found.isFile() ? [name] : [];
  });
}

/**
 * Bundles into a folder of this process and publishes it with one rename, so that two runs at once are safe.
 * @param {string} entry
 * @param {string} folder
 */
async function bundle(entry, folder) {
  // Always the same bundle, whoever asks: a test runner sets this to something else.
  process.env.NODE_ENV = 'production';
  const { build } = await import('vite');
  const own = `${folder}.${process.pid}`;
  await build({
    configFile: false,
    root,
    logLevel: 'silent',
    publicDir: false,
    ssr: { noExternal: true, target: 'node' },
    build: {
      ssr: path.join(root, entry),
      outDir: own,
      emptyOutDir: true,
      target: 'node20',
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'program.mjs', codeSplitting: false } },
    },
  });
  try {
    fs.renameSync(own, folder);
  } catch (cause) {
    fs.rmSync(own, { recursive: true, force: true });
    if (!fs.existsSync(folder)) throw cause;
  }
}

/**
 * Bundles of earlier sources; those of the last ten minutes may still be starting.
 * @param {string} name
 */
function forgetOlder(name) {
  if (!fs.existsSync(CACHE)) return;
  const old = Date.now() - 600_000;
  for (const found of fs.readdirSync(CACHE)) {
    const place = path.join(CACHE, found);
    if (!found.startsWith(`${name}-`) || fs.statSync(place).mtimeMs > old) continue;
    fs.rmSync(place, { recursive: true, force: true });
  }
}

/** The folder that named files belong to: npm starts scripts in the project's folder, wherever the person is. */
function goWhereThePersonIs() {
  const { INIT_CWD: folder, npm_lifecycle_script: script } = process.env;
  if (folder && script?.includes('tools/run.mjs')) process.chdir(folder);
}

async function main() {
  makeReady();
  const [entry, ...rest] = process.argv.slice(2);
  if (!entry || !fs.existsSync(path.join(root, entry))) {
    process.stderr.write(`There is no program ${entry ?? ''} to run.\n`);
    process.exit(70);
  }
  const file = await bundled(entry).catch((cause) => {
    process.stderr.write(`${entry} could not be put together: ${cause.message ?? cause}\n`);
    process.exit(70);
  });
  goWhereThePersonIs();
  process.argv = [process.execPath, file, ...rest];
  await import(pathToFileURL(file).href);
}

await main();
