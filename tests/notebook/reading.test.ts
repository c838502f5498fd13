// What a notebook's text is read as.
import { describe, expect, it, test } from 'vitest';
import { readNotebook } from '../../src/notebook/read-notebook.ts';
import { cellNamed, cellsIn, codesOf, linesOf } from './cells.ts';

const GARDEN = `# Kestrel Court garden
Prose is a note. It can say why.

## Landing
- Slab length: 12 ft
  - from: measured on site, 2026-03-03
- Thickness: 4 in
  - sensible: 3 1/2 in up to 8 in
- Slab volume: slab length by slab width by thickness

### Buying
- Concrete: bags to buy at bag price
  - cost: material
  - buy: 60 lb concrete mix

## Summary
- Overhead: 10% of total cost of Landing
  - price: overhead
`;

test('a notebook is read as title, parts, headings, prose and cells, each where it stands', () => {
  const notebook = readNotebook(GARDEN);
  expect(notebook.title).toBe('Kestrel Court garden');
  expect(notebook.parts.map((p) => p.name)).toEqual(['', 'Landing', 'Summary']);
  expect(notebook.parts[1].blocks.map((b) => b.kind)).toEqual([
    'cell',
    'cell',
    'cell',
    'heading',
    'cell',
  ]);
  expect(notebook.parts[0].blocks).toEqual([
    { kind: 'prose', markdown: 'Prose is a note. It can say why.', spot: { from: 23, to: 55 } },
  ]);
  expect(notebook.findings).toEqual([]);
  for (const cell of cellsIn(notebook)) {
    expect(GARDEN.slice(cell.nameSpot.from, cell.nameSpot.to)).toBe(cell.name);
    expect(GARDEN.slice(cell.formulaSpot.from, cell.formulaSpot.to)).toBe(cell.formula);
    expect(GARDEN.slice(cell.spot.from, cell.spot.to)).toMatch(/^- [^]*\n$/);
    for (const remark of cell.remarks) {
      expect(GARDEN.slice(remark.textSpot.from, remark.textSpot.to)).toBe(remark.text);
    }
  }
  expect(cellNamed(notebook, 'Concrete').money).toEqual({ line: 'cost', kind: 'material' });
  expect(cellNamed(notebook, 'Overhead').money).toEqual({ line: 'price', kind: 'overhead' });
  expect(cellNamed(notebook, 'Thickness').remarks[0]).toMatchObject({
    kind: 'sensible',
    text: '3 1/2 in up to 8 in',
  });
});

describe('an item is a cell when it begins with a name and a colon', () => {
  test.for([
    ['- Slab length: 12 ft', ['Slab length: 12 ft']],
    ['* Slab length: 12 ft', ['Slab length: 12 ft']],
    ['+ Slab length: 12 ft', ['Slab length: 12 ft']],
    ['3. Slab length: 12 ft', ['Slab length: 12 ft']],
    ['4) Slab length: 12 ft', ['Slab length: 12 ft']],
    ['- # of posts: 4 posts', ['# of posts: 4 posts']],
    ['- [x]: 3 ft', ['[x]: 3 ft']],
    ['- <b>Bold</b>: 3 ft', ['<b>Bold</b>: 3 ft']],
    ['-      Far off: 3 ft', ['Far off: 3 ft']],
    ['-\tTabbed: 3 ft', ['Tabbed: 3 ft']],
    ['- a_b: x*y*z', ['a_b: x*y*z']],
    ['- Ratio 1:80 fall: 2%', ['Ratio 1:80 fall: 2%']],
    ['- Length of run: 10 in', ['Length of run: 10 in']],
    ['- 2x8 joists: 12 boards', ['2x8 joists: 12 boards']],
    ['- Slab length:', ['Slab length: ']],
    ['- Slab length:  12 ft  ', ['Slab length: 12 ft']],
    ['   - Set in: 12 ft', ['Set in: 12 ft']],
    [
      '- one two three four five six seven eight: 1',
      ['one two three four five six seven eight: 1'],
    ],
    ['- __proto__: 3 ft\n- constructor: 4 ft', ['__proto__: 3 ft', 'constructor: 4 ft']],
    ['- 4 in', []],
    ['- no colon', []],
    ['- 11:30 is when they come', []],
    ['> - Quoted: 3 ft', []],
    ['```\n- Fenced: 3 ft\n```', []],
    ['Slab length: 12 ft', []],
    ['- Tools needed:\n  - saw\n  - level', []],
    ['- Slab bays:\n\n  | length | width |\n  |---|---|\n  | 12 ft | 4 ft |', ['Slab bays: ']],
    ['- Slab bays:\n  | length | width |\n  |---|---|', ['Slab bays: ']],
  ] as const)('%j', ([text, lines]) => {
    const notebook = readNotebook(`${text}\n`);
    expect(linesOf(notebook)).toEqual(lines);
    expect(notebook.findings).toEqual([]);
  });
});

describe('what may have been meant as a cell is pointed out', () => {
  test.for([
    ['- Slab volume: length by width\n  by thickness', ['formula-goes-on']],
    ['- Slab volume: length by width\nby thickness', ['formula-goes-on']],
    ['- Prose\n  - Slab length: 12 ft', ['cell-under-prose']],
    ['- - Nested at once: 3 ft', ['cell-under-prose']],
    ['- A: 1\n- a: 2', ['same-name']],
    ['## P\n- A: 1\n## Q\n- A: 2', []],
    ['## P\n## p', ['same-part-name']],
    ['- A: 1\n  - bogus: 2', ['remark-not-known']],
    ['- A: $1\n  - cost: timber', ['money-not-known']],
    ['- A: $1\n  - price: extra', ['money-not-known']],
    ['- A: $1\n  - cost: material\n  - price: tax', ['cost-and-price']],
    ['- A: $1\n  - cost: material\n  - cost: labour', ['remark-twice']],
    ['- Currency: pebbles', ['setting-not-read']],
    ['- Fractions: 1/7 in', ['setting-not-read']],
    ['- A: 1\n\n  | a table | kept |\n  |---|---|', ['table-beside-formula']],
    ['- A:\n\n  | no marks | below |\n  | 1 | 2 |', ['table-not-read']],
    ['- A:\n\n  | three | names | here |\n  |---|---|', ['table-not-read']],
    ['- A:\n\n  | a | 4 in |\n  |---|---|', ['not-a-name']],
    ['- A:\n\n  | a | |\n  |---|---|', ['column-without-name']],
    ['- A:\n\n  | a | A |\n  |---|---|', ['same-name']],
    ['- A:\n\n  | a |\n  |---|\n  | 1 | 2 |', ['row-too-long']],
    ['- A:\n\n  | a |\n  |---|\n\n  - cost: material', ['money-on-table']],
  ] as const)('%j', ([text, codes]) => {
    expect(codesOf(readNotebook(`${text}\n`).findings)).toEqual(codes);
  });
});

test('settings stand above the first part and make no cells', () => {
  const notebook = readNotebook(
    '# T\n\n- Currency: euros\n- Counted things: bay, Sleeper\n- Fractions: 1/8 in\n- Measures: metric\n\n## P\n- Currency: 3\n',
  );
  expect(notebook.settings).toEqual({
    currency: '€',
    counted: ['bay', 'sleeper'],
    fractions: 8,
    measures: 'metric',
  });
  expect(linesOf(notebook)).toEqual(['P / Currency: 3']);
});

test('a remark may go on over lines, and one without a word is a note', () => {
  const [cell] = cellsIn(
    readNotebook('- A: 1\n  - from: the label\n    of the bag\n  - just so\n'),
  );
  expect(cell.remarks.map((r) => [r.kind, r.word, r.text])).toEqual([
    ['from', 'from', 'the label of the bag'],
    ['note', '', 'just so'],
  ]);
});

test('words of cost are understood in the plural and as spelt in America', () => {
  const [a, b] = cellsIn(readNotebook('- A: $1\n  - cost: Materials\n- B: $1\n  - cost: labor\n'));
  expect([a.money, b.money]).toEqual([
    { line: 'cost', kind: 'material' },
    { line: 'cost', kind: 'labour' },
  ]);
});

test.for([
  ['Windows line ends', GARDEN.replaceAll('\n', '\r\n')],
  ['old line ends', GARDEN.replaceAll('\n', '\r')],
  ['a byte order mark', `\uFEFF${GARDEN}`],
  ['no last line end', GARDEN.trimEnd()],
  ['headings that are closed', GARDEN.replace('## Landing', '## Landing ##')],
  ['headings that are underlined', GARDEN.replace('## Landing', 'Landing\n-------')],
  ['remarks four columns in', GARDEN.replaceAll('  - ', '    - ')],
  ['remarks set in by tabs', GARDEN.replaceAll('  - ', '\t- ')],
] as const)('%s changes nothing of what is read', ([, text]) => {
  const notebook = readNotebook(text);
  const plain = readNotebook(GARDEN);
  expect(notebook.text).toBe(text);
  expect(notebook.title).toBe(plain.title);
  expect(linesOf(notebook)).toEqual(linesOf(plain));
  expect(cellsIn(notebook).map((c) => c.remarks.map((r) => [r.kind, r.text]))).toEqual(
    cellsIn(plain).map((c) => c.remarks.map((r) => [r.kind, r.text])),
  );
  for (const cell of cellsIn(notebook)) {
    expect(text.slice(cell.nameSpot.from, cell.nameSpot.to)).toBe(cell.name);
    expect(text.slice(cell.formulaSpot.from, cell.formulaSpot.to)).toBe(cell.formula);
  }
});

describe('hostile text', () => {
  it('that is empty is an empty notebook', () => {
    const notebook = readNotebook('');
    expect([notebook.title, notebook.parts.length, notebook.findings]).toEqual(['', 1, []]);
  });

  it('of 5 MB is kept and says that it is too long', () => {
    const text = '- Slab length: 12 ft\n'.repeat(250_000);
    const notebook = readNotebook(text);
    expect(notebook.text).toBe(text);
    expect(codesOf(notebook.findings)).toEqual(['text-too-long']);
    expect(cellsIn(notebook)).toEqual([]);
  });

  it('that is no text says so and is kept', () => {
    const bytes = '\0PNG\r\n\u001A\n- A: 1\n';
    const notebook = readNotebook(bytes);
    expect(notebook.text).toBe(bytes);
    expect(codesOf(notebook.findings)).toEqual(['not-text']);
  });

  test.for([
    ['quotes', `${'> '.repeat(5000)}deep\n`],
    ['lists', `${'- '.repeat(5000)}deep\n`],
    ['quotes in lists', `${'- > '.repeat(2500)}deep\n`],
    ['indents', Array.from({ length: 300 }, (_, i) => `${' '.repeat(2 * i)}- a`).join('\n')],
  ] as const)(
    'nested thousands deep in %s is kept unread, and the next part is read',
    ([, deep]) => {
      const notebook = readNotebook(`## A\n${deep}\n## B\n- Slab length: 12 ft\n`);
      expect(codesOf(notebook.findings)).toEqual(['too-deep']);
      expect(linesOf(notebook)).toEqual(['B / Slab length: 12 ft']);
      expect(notebook.parts[1].blocks).toHaveLength(1);
    },
  );

  it('of involved Markdown without end is given up with a word, part by part', () => {
    const text = `## A\n${'[a]: b\n'.repeat(40_000)}## B\n- Slab length: 12 ft\n`;
    const notebook = readNotebook(text);
    expect(codesOf(notebook.findings)).toEqual(['too-involved']);
    expect(linesOf(notebook)).toEqual(['B / Slab length: 12 ft']);
  });

  it('with HTML and script in it is text and nothing else', () => {
    const script = '<script>alert(1)</script>';
    const notebook = readNotebook(
      `# ${script}\n\n${script}\n\n## ${script}\n- ${script}: 3 ft\n  - from: ${script}\n`,
    );
    expect(notebook.title).toBe(script);
    expect(notebook.parts[1].name).toBe(script);
    expect(notebook.parts[0].blocks).toMatchObject([{ kind: 'prose', markdown: script }]);
    const cell = cellNamed(notebook, script);
    expect([cell.formula, cell.remarks[0].text]).toEqual(['3 ft', script]);
  });

  it('with an open fence hides what stands in it, and only that', () => {
    const notebook = readNotebook('- A: 1\n\n```\n## No part\n- B: 2\n```\n\n## Part\n- C: 3\n');
    expect(linesOf(notebook)).toEqual(['A: 1', 'Part / C: 3']);
    expect(linesOf(readNotebook('- A: 1\n\n```\n## No part\n- B: 2\n'))).toEqual(['A: 1']);
  });
});

test.for([
  ['link definitions', (many: number) => '[a]: x\n'.repeat(many), 12_000],
  ['lists in lists', (many: number) => '- - - - - - - - a\n'.repeat(many), 600],
  ['quotes in quotes', (many: number) => '> > > > > > > > a\n\n'.repeat(many), 600],
  ['underlined headings', (many: number) => 'a\n===\n'.repeat(many), 8000],
] as const)(
  'a part of nothing but %s is kept unread where it would take long',
  ([, make, many]) => {
    const few = readNotebook(`## P\n${make(5)}\n## Q\n- A: 1 ft\n`);
    expect(codesOf(few.findings)).not.toContain('too-involved');
    const notebook = readNotebook(`## P\n${make(many)}\n## Q\n- A: 1 ft\n`);
    expect(codesOf(notebook.findings)).toEqual(['too-involved']);
    expect(linesOf(notebook)).toEqual(['Q / A: 1 ft']);
  },
);
