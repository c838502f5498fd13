// What nobody should put into a table or paste into one: all of it is kept or refused with a reason, none of it runs.
import { afterEach, describe, expect, it, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { figuresOf } from '../../src/notebook/figures.ts';
import { cellsOf } from '../../src/notebook/lines.ts';
import { Chance } from './chance.ts';

const SCRIPT = '<script>globalThis.ran = 1</script>';
const IMAGE = '<img src=x onerror="globalThis.ran = 1">';

/** A notebook in which Slab bays holds these lines. */
const withTable = (...lines: readonly string[]): string =>
  `# Kestrel Court\n\n- Slab bays:\n\n${lines.map((l) => `  ${l}\n`).join('')}\n- Long: total of length in slab bays\n`;
const HEAD = ['| bay | length |', '|---|---|'];

const TEXTS: Readonly<Record<string, string>> = {
  'a header alone': withTable('| bay | length |'),
  'no rows': withTable(...HEAD),
  'no columns': withTable('|', '|', '|'),
  'marks for other columns than there are': withTable('| bay | length |', '|---|'),
  'rows of any length': withTable(
    ...HEAD,
    '|',
    '||',
    '| a |',
    '| a | 1 ft | 2 ft | 3 ft |',
    '|a|1 ft',
  ),
  'HTML everywhere': withTable(`| ${SCRIPT} | length |`, '|---|---|', `| ${IMAGE} | ${SCRIPT} |`),
  'names of the machinery': withTable(
    '| __proto__ | length | constructor: length times 2 |',
    '|---|---|---|',
    '| toString | 3 ft | |',
    '| __proto__ | hasOwnProperty | |',
  ),
  'columns of one name': withTable('| length | length |', '|---|---|', '| 1 ft | 2 ft |'),
  'columns in a circle': withTable('| length: width | width: length |', '|---|---|', '| | |'),
  'bars and backslashes': withTable(
    ...HEAD,
    String.raw`| a \| b \\ | 3 ft \|`,
    String.raw`| \ | \\\|`,
  ),
  'marks that turn the text around': withTable(
    ...HEAD,
    '| \u202Ea | \u202E3 ft |',
    '| \uD800 | \uDC00 |',
    '| a\0 | 3\0 ft |',
  ),
  '400 columns': withTable(
    `|${' length |'.repeat(400)}`,
    `|${'---|'.repeat(400)}`,
    `|${' 1 ft |'.repeat(400)}`,
  ),
  'a cell of 50,000 characters': withTable(...HEAD, `| a | ${'x'.repeat(50_000)} |`),
  'brackets 3,000 deep': withTable(...HEAD, `| a | ${'('.repeat(3000)} |`),
  'Windows line ends': withTable(...HEAD, '| a | 3 ft |').replaceAll('\n', '\r\n'),
};

const PASTED: Readonly<Record<string, string>> = {
  nothing: '',
  'line ends': '\n\r\n\r\r\n',
  'tabs alone': '\t\t\t\n\t',
  'a quote that never closes': '"a\t3 ft\nb\t4 ft',
  'quotes in quotes': '"a ""b"" c",3 ft\n"d\ne",4 ft',
  'commas in numbers': 'a,"1,250 ft"\nb,1,250 ft',
  HTML: `${SCRIPT}\t${IMAGE}`,
  'bars, backslashes and heads of lists': 'a | b\t\\|\n- x: 1\t## y\n|---|---|\t```',
  'names of the machinery': '__proto__\tconstructor\ntoString\t1 ft',
  'formulas of another program': '=1+1\t=cmd|calc\n@x\t+1',
  'marks that turn the text around': '\u202Ea\t\uD8003 ft\n\0\t\uFEFF4 ft',
  'words that are no number': 'a\tabout twelve\nb\tN/A\nc\t#REF!',
  'a row of 2,000 cells': 'a\t'.repeat(2000),
  'a cell of 50,000 characters': `a\t${'x'.repeat(50_000)}`,
};

function lookedOver(e: Estimate): void {
  e.costs();
  for (const finding of e.findings()) {
    expect(finding.message).not.toMatch(/undefined|\bnull\b|NaN|\[object|function|native code/);
    expect(finding.message).not.toBe('');
  }
  expect(figuresOf(e)).toEqual(figuresOf(new Estimate(e.notebook.text)));
}

afterEach(() => {
  // Thrown rather than expected, because it holds for every test here.
  if ('ran' in globalThis) throw new Error('something in the text was run');
  if (Object.keys(Object.prototype).length > 0) throw new Error('every object was changed');
});

const tableOf = (e: Estimate): number =>
  e.notebook.parts.flatMap(cellsOf).find((c) => c.table !== null)?.id ?? -1;

describe('a hostile table', () => {
  test.for(Object.entries(TEXTS))(
    'is kept to the last character and runs nothing: %s',
    ([, text]) => {
      const e = new Estimate(text);
      lookedOver(e);
      expect(e.notebook.text).toBe(text);
    },
  );

  it('of random characters is kept whatever they are', () => {
    const c = new Chance(21);
    const marks = [
      ...'|||--:\\"\'`<>()\t $%½,.'.split(''),
      ' ft',
      '12',
      'length',
      '\n  |',
      '\n  | a | ',
      '\uD83C',
    ];
    for (let i = 0; i < 60; i++) {
      const text = withTable(
        ...HEAD,
        `| ${Array.from({ length: 120 }, () => c.of(marks)).join('')}`,
      );
      const e = new Estimate(text);
      lookedOver(e);
      expect(e.notebook.text).toBe(text);
    }
  });
});

describe('a hostile paste', () => {
  const START = withTable(...HEAD, '| a | 3 ft |', '| b | 4 ft |');

  test.for(Object.entries(PASTED))(
    'is taken or refused with reasons, and taken back: %s',
    ([, pasted]) => {
      const e = new Estimate(START);
      const done = e.pasteRows(tableOf(e), 1, 0, pasted);
      lookedOver(e);
      expect(e.notebook.parts.flatMap(cellsOf).map((c) => c.name)).toEqual(['Slab bays', 'Long']);
      if ('refused' in done)
        for (const no of done.refused)
          expect(JSON.stringify(no)).not.toMatch(/undefined|NaN|\[object/);
      while (e.canUndo() !== null) e.undo();
      expect(e.notebook.text).toBe(START);
    },
  );

  it('of random characters never leaves the table, and is taken back', () => {
    const c = new Chance(22);
    const marks = [
      ...'\t\t\n\r",|\\-:#>*`<>()$%½'.split(''),
      ' ft',
      '12',
      'a',
      '3 ft',
      '\u202E',
      '\uD83C',
    ];
    for (let i = 0; i < 100; i++) {
      const e = new Estimate(START);
      e.pasteRows(
        tableOf(e),
        c.whole(0, 1),
        c.whole(0, 1),
        Array.from({ length: 60 }, () => c.of(marks)).join(''),
      );
      lookedOver(e);
      expect(e.notebook.parts.flatMap(cellsOf).map((x) => x.name)).toEqual(['Slab bays', 'Long']);
      while (e.canUndo() !== null) e.undo();
      expect(e.notebook.text).toBe(START);
    }
  });
});
