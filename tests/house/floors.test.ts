// The floors of the house hold: each leans only on those below it.
import { describe, expect, test } from 'vitest';
import { committedFiles, contentOf } from './committed.ts';
import { floorFaults } from './floors.ts';

const sources = committedFiles().filter(
  (file) => file.startsWith('src/') && file.endsWith('.ts') && !file.startsWith('src/tools/'),
);

test('every source file imports only from its own floor and from those before it', () => {
  expect(sources.length).toBeGreaterThan(5);
  expect(sources.flatMap((file) => floorFaults(file, contentOf(file).toString()))).toEqual([]);
});

describe('a planted fault is found', () => {
  test.for([
    ['src/words/a.ts', `import { x } from '../quantity/b.ts';`, 'a floor above words'],
    ['src/words/a.ts', `import type { X } from '../quantity/b.ts';`, 'a floor above words'],
    ['src/words/a.ts', `export * from '../ui/b.ts';`, 'a floor above words'],
    ['src/words/a.ts', `export { x } from '../ui/b.ts';`, 'a floor above words'],
    ['src/words/a.ts', `type X = import('../ui/b.ts').X;`, 'a floor above words'],
    ['src/words/a.ts', `const x = await import('../ui/b.ts');`, 'a floor above words'],
    ['src/words/a.ts', `const x = await import(place);`, 'worked out while running'],
    ['src/explain/deep/a.ts', `import '../../store/b.ts';`, 'a floor above explain'],
    ['src/ui/a.ts', `import '../main.ts';`, 'on no floor'],
    ['src/ui/a.ts', `import '../../tests/house/floors.ts';`, 'on no floor'],
    ['src/ui/a.ts', `import '../../templates/a.ts';`, 'as code'],
    ['src/attic/a.ts', `export const x = 1;`, 'on no floor'],
    ['src/other.ts', `export const x = 1;`, 'on no floor'],
    ['src/engine/a.ts', `import { Decimal } from 'decimal.js';`, 'only through quantity'],
    ['src/engine/a.ts', `import Fraction, { type X } from 'fraction.js';`, 'only through quantity'],
    [
      'src/language/a.ts',
      `import { createNode } from 'mathjs';`,
      'only through quantity and engine',
    ],
    ['src/engine/a.ts', `import { parse } from 'mathjs';`, 'takes parse from mathjs'],
    [
      'src/engine/a.ts',
      `import { evaluateDependencies } from 'mathjs';`,
      'takes evaluateDependencies',
    ],
    ['src/engine/a.ts', `import * as all from 'mathjs';`, 'takes * from mathjs'],
    ['src/engine/a.ts', `import { unit } from 'mathjs';`, 'takes unit from mathjs'],
    [
      'src/quantity/a.ts',
      `import { createOperatorNode } from 'mathjs';`,
      'takes createOperatorNode',
    ],
    [
      'src/engine/a.ts',
      `import { fromMarkdown } from 'mdast-util-from-markdown';`,
      'only through notebook',
    ],
    ['src/ui/a.ts', `import { get } from 'idb-keyval';`, 'only through store'],
    ['src/store/a.ts', `import { html } from 'lit';`, 'only through ui'],
    ['src/store/a.ts', `import { map } from 'lit/directives/map.js';`, 'only through ui'],
    [
      'src/ui/a.ts',
      `import x from '@someone/something/deep';`,
      '@someone/something, which has no door',
    ],
    ['src/notebook/a.ts', `import fs from 'node:fs';`, 'has no door'],
    ['src/notebook/a.ts', `const now = Date.now();`, 'uses Date'],
    ['src/notebook/a.ts', `const now = new Date();`, 'uses Date'],
    ['src/notebook/a.ts', `const roll = Math.random();`, 'uses Math.random'],
    ['src/notebook/a.ts', `const t = performance.now();`, 'uses performance'],
    ['src/notebook/a.ts', `const id = globalThis.crypto.randomUUID();`, 'uses globalThis'],
    ['src/notebook/a.ts', `const all = { window };`, 'uses window'],
    ['src/notebook/a.ts', `const page = document.body as Body;`, 'uses document'],
    ['src/ui/a.ts', `const x = eval('1');`, 'uses eval'],
    ['src/main.ts', `const x = new Function('return 1');`, 'uses Function'],
  ] as const)('%s: %s', ([file, source, fault]) => {
    expect(floorFaults(file, source).join('\n')).toContain(fault);
  });
});

describe('what is allowed stays allowed', () => {
  test.for([
    ['src/quantity/a.ts', `import { x } from './b.ts'; import { y } from '../words/c.ts';`],
    [
      'src/quantity/a.ts',
      `import { Decimal } from 'decimal.js'; import Fraction from 'fraction.js';`,
    ],
    ['src/quantity/a.ts', `import { create, createUnitClass } from 'mathjs';`],
    ['src/engine/a.ts', `import { createOperatorNode, createAddScalar } from 'mathjs';`],
    ['src/engine/a.ts', `import type Decimal from 'decimal.js';`],
    ['src/reference/a.ts', `import table from '../../shared/lumber.json';`],
    ['src/notebook/a.ts', `import text from '../../templates/slab.md?raw';`],
    ['src/notebook/a.ts', `// import { x } from '../ui/b.ts';\nconst text = "from '../ui/b.ts'";`],
    ['src/notebook/a.ts', `export const cells = (document: Document) => document.cells;`],
    [
      'src/notebook/a.ts',
      `export const f = ({ window: wide, self }: X) => [wide, self, x.document];`,
    ],
    [
      'src/notebook/a.ts',
      `export type Day = Date; export interface A { window: Window; document(): void }`,
    ],
    ['src/ui/a.ts', `import { html } from 'lit'; const now = Date.now(); document.title = 'x';`],
    ['src/main.ts', `import './ui/page.ts'; import { create } from './store/b.ts';`],
  ] as const)('%s: %s', ([file, source]) => {
    expect(floorFaults(file, source)).toEqual([]);
  });
});
