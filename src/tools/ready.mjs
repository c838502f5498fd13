// Makes the project ready to run: installs the packages of the lockfile when some are missing or out of date.
// Runs on Node alone, before anything is installed; npm's own words go to stderr, so that stdout stays clean.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url));

const OLDEST = [20, 19];

/** @typedef {{ version?: string, integrity?: string, optional?: boolean, os?: string[], cpu?: string[], libc?: string[] }} Entry */
/** @typedef {Record<string, Entry>} Entries */

/** Installs what is missing; ends the process with a sentence when it can't. */
export function makeReady() {
  const version = process.versions.node;
  if (!recentEnough(version)) {
    stop(`Storyrod needs Node ${OLDEST.join('.')} or newer; this is Node ${version}.`);
  }
  const wanted = entriesOf(path.join(root, 'package-lock.json'));
  if (!wanted)
    stop(
      'package-lock.json is missing or can’t be read; the packages it names can’t be installed.',
    );
  const installed = entriesOf(path.join(root, 'node_modules/.package-lock.json'));
  if (missing(wanted, installed).length === 0 && allThere(installed)) return;
  process.stderr.write('Installing the packages that Storyrod is built with …\n');
  const npm = npmCommand();
  const done = spawnSync(npm.command, [...npm.first, 'ci', '--no-progress'], {
    cwd: root,
    stdio: ['ignore', process.stderr, process.stderr],
    shell: npm.shell,
  });
  if (done.status !== 0) stop('The packages could not be installed; npm says why above.');
}

/**
 * The packages of the lockfile that this machine needs and that are not there as the lockfile has them.
 * What npm has put in place it lists itself, in `node_modules/.package-lock.json`, once all is in place.
 * @param {Entries} wanted
 * @param {Entries | null} installed
 */
export function missing(wanted, installed, platform = process.platform, arch = process.arch) {
  return Object.entries(wanted)
    .filter(([place]) => place.startsWith('node_modules/'))
    .filter(([, entry]) => !entry.optional || isFor(entry, platform, arch))
    .filter(([place, entry]) => !same(entry, installed?.[place]))
    .map(([place]) => place);
}

/**
 * Whether what npm has put in place still is: a folder may have been deleted since.
 * @param {Entries | null} installed
 */
function allThere(installed) {
  return Object.keys(installed ?? {}).every((place) => fs.existsSync(path.join(root, place)));
}

/**
 * Optional packages come one for each kind of machine. One that names a C library may belong to the
 * other one, and one that names no machine at all is npm's to leave out: neither is counted as missing.
 * @param {Entry} entry
 * @param {string} platform
 * @param {string} arch
 */
function isFor(entry, platform, arch) {
  if (entry.libc || !entry.os || !entry.cpu) return false;
  return entry.os.includes(platform) && entry.cpu.includes(arch);
}

/**
 * @param {Entry} wanted
 * @param {Entry | undefined} found
 */
function same(wanted, found) {
  return found?.version === wanted.version && found?.integrity === wanted.integrity;
}

/**
 * @param {string} file
 * @returns {Entries | null}
 */
function entriesOf(file) {
  try {
    return JSON.parse(fs.readFileSync(file, 'utf8')).packages ?? null;
  } catch {
    return null;
  }
}

/** @param {string} version */
export function recentEnough(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return major > OLDEST[0] || (major === OLDEST[0] && minor >= OLDEST[1]);
}

/** The npm that started us where there is one: a machine may have several. */
function npmCommand() {
  const script = process.env.npm_execpath;
  if (script && /npm-cli\.c?js$/.test(script)) {
    return { command: process.execPath, first: [script], shell: false };
  }
  return { command: 'npm', first: [], shell: process.platform === 'win32' };
}

/**
 * @param {string} sentence
 * @returns {never}
 */
function stop(sentence) {
  process.stderr.write(sentence + '\n');
  process.exit(2);
}

if (process.argv[1] && path.resolve(process.argv[1]) === fileURLToPath(import.meta.url))
  makeReady();
