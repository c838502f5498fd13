import { it } from 'vitest';
import { readNotebook } from '../../src/notebook/read-notebook.ts';
const rep = (s: string, n: number) => s.repeat(n);
const cases: [string, (n: number) => string][] = [
  ['defs', (n) => rep('[a]: x\n', n)],
  ['defs uniq', (n) => Array.from({ length: n }, (_, i) => `[a${i}]: x\n`).join('')],
  ['defs sep', (n) => rep('[a]: x\n\n', n)],
  ['defs multi', (n) => rep('[a]:\n', n)],
  ['setext', (n) => rep('a\n---\n', n)],
  ['h3', (n) => rep('### a #\n', n)],
  ['items [', (n) => rep('- [a: 3\n', n)],
  ['items', (n) => rep('- #\n', n)],
  ['empty items', (n) => rep('-\n', n)],
  ['nested', (n) => rep('- - a\n', n)],
  ['nest8', (n) => rep('- - - - - - - - a\n', n)],
  ['quotes', (n) => rep('> a\n', n)],
  ['quote blank', (n) => rep('> a\n\n', n)],
  ['quote8', (n) => rep('> > > > > > > > a\n\n', n)],
  ['quotelazy', (n) => '> > > > > > > > a\n' + rep('a\n', n)],
  ['rules', (n) => rep('---\n', n)],
  ['rules*', (n) => rep('***\n', n)],
  ['fences', (n) => rep('```\n', n)],
  ['html', (n) => rep('<a>\n\n', n)],
  ['code', (n) => rep('    a\n\n', n)],
  ['blank', (n) => '#\n' + rep('\n', n)],
  ['item blank', (n) => '- a\n' + rep('\n', n) + '\n  b'],
  ['para', (n) => '|x\n' + rep('a\n', n)],
  ['para ind', (n) => '|x\n' + rep('   a\n', n)],
  ['def title', (n) => rep('[a]: x "\n', n)],
  ['[[[', (n) => rep('[', n * 5) + '\n'],
  ['def [ lines', (n) => rep('[a\n', n)],
  ['tabs', (n) => rep('-\ta\n', n)],
  ['list deep para', (n) => '- - - - - - a\n' + rep('a\n', n)],
  ['list def', (n) => rep('- [a]: x\n', n)],
  ['crs', (n) => rep('- a: 1\r', n)],
];
it('x', () => {
  for (const [name, make] of cases) {
    const out: string[] = [];
    for (const n of [2500, 10000]) {
      const t = make(n);
      const s = performance.now();
      readNotebook(t);
      const ms = performance.now() - s;
      out.push(`${ms.toFixed(0)}ms (${((ms / t.length) * 1000).toFixed(0)} us/kchar.. ${((ms / n) * 1000).toFixed(0)} us/line)`);
    }
    console.log(name.padEnd(16), out.join('   '));
  }
}, 300000);
