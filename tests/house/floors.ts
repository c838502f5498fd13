// The house rules of src: which floor may lean on which, and through which floor each package comes in.
import { posix } from 'node:path';
import { globalsOf, importsOf, type Import } from './imports.ts';

/** From the ground up: each floor imports only from itself and from floors before it. */
export const FLOORS = [
  'words',
  'quantity',
  'language',
  'engine',
  'reference',
  'picture',
  'notebook',
  'explain',
  'moves-it',
  'mistakes',
  'versions',
  'client',
  'record',
  'store',
  'ui',
] as const;

type Floor = (typeof FLOORS)[number];

/** The floors from here on know a browser; those before know no DOM, no clock and no chance. */
const FIRST_OUTSIDE = FLOORS.indexOf('store');

/** Each package, and the floors that are its door. What is not here has no door yet. */
const DOORS: Readonly<Record<string, readonly Floor[]>> = {
  'decimal.js': ['quantity'],
  'fraction.js': ['quantity'],
  mathjs: ['quantity', 'engine'],
  mdast: ['notebook'],
  'mdast-util-from-markdown': ['notebook'],
  '@noble/hashes': ['versions'],
  valibot: ['reference', 'store'],
  'idb-keyval': ['store'],
  'browser-fs-access': ['store', 'ui'],
  lit: ['ui'],
};

/** Their types may be named anywhere: a type makes no number and sets no precision. */
const TYPES_ANYWHERE = ['decimal.js', 'fraction.js'];

/** Names of mathjs that read text, bring everything in, or calculate with units while running. */
const NEVER_FROM_MATHJS =
  /^(create)?(all|parse|evaluate|compile|parser|chain|help|\*|default)(Class|Dependencies)?$/i;
const NOT_IN_ENGINE = /^(create)?Unit(Function|Dependencies)?$/i;
const NOT_IN_QUANTITY = /Node/;

const OUTSIDE = (
  'Date performance Math.random crypto setTimeout setInterval window document navigator location ' +
  'self globalThis localStorage sessionStorage indexedDB fetch process require console'
).split(' ');

const NOWHERE = ['eval', 'Function'];

/** What is wrong with a file of src, as sentences; `file` is its path from the project's folder. */
export function floorFaults(file: string, source: string): readonly string[] {
  const [, folder = '', rest] = file.split('/');
  const globals = globalsOf(file, source);
  const faults = NOWHERE.filter((name) => globals.has(name)).map((name) => `${file} uses ${name}`);
  if (rest === undefined) {
    if (!['main.ts', 'figure.ts', 'core.d.ts'].includes(folder))
      faults.push(`${file} is on no floor`);
    return faults;
  }
  if (!isFloor(folder)) return [...faults, `${file} is on no floor`];
  for (const asked of importsOf(file, source)) {
    faults.push(...importFaults(file, folder, asked).map((fault) => `${file} ${fault}`));
  }
  if (FLOORS.indexOf(folder) < FIRST_OUTSIDE) {
    for (const name of OUTSIDE) {
      if (globals.has(name))
        faults.push(`${file} uses ${name}: time, chance and the world are handed in`);
    }
  }
  return faults;
}

function importFaults(file: string, floor: Floor, asked: Import): readonly string[] {
  if (asked.from.startsWith('.')) return neighbourFaults(file, floor, asked.from);
  const name = packageOf(asked.from);
  if (asked.typesOnly && TYPES_ANYWHERE.includes(name)) return [];
  const door = DOORS[name];
  if (!door) return [`imports ${name}, which has no door on any floor`];
  if (!door.includes(floor))
    return [`imports ${name}, which comes in only through ${door.join(' and ')}`];
  return name === 'mathjs' ? mathjsFaults(floor, asked) : [];
}

function neighbourFaults(file: string, floor: Floor, from: string): readonly string[] {
  const [place = '', query] = posix.join(posix.dirname(file), from).split('?');
  const [top, folder = ''] = place.split('/');
  // Templates and trade tables are data: read as text or JSON, never run.
  if (top === 'templates' || top === 'shared') {
    return query === 'raw' || place.endsWith('.json') ? [] : [`imports ${from} as code`];
  }
  if (top !== 'src' || !isFloor(folder)) return [`imports ${from}, which is on no floor`];
  if (FLOORS.indexOf(folder) > FLOORS.indexOf(floor))
    return [`imports from ${folder}, a floor above ${floor}`];
  return [];
}

function mathjsFaults(floor: Floor, { names }: Import): readonly string[] {
  const barred = floor === 'engine' ? NOT_IN_ENGINE : NOT_IN_QUANTITY;
  return names
    .filter((name) => NEVER_FROM_MATHJS.test(name) || barred.test(name))
    .map((name) => `takes ${name} from mathjs, which is not for ${floor}`);
}

function packageOf(from: string): string {
  return from.split('/', from.startsWith('@') ? 2 : 1).join('/');
}

function isFloor(folder: string): folder is Floor {
  return (FLOORS as readonly string[]).includes(folder);
}
