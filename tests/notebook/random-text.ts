// Random notebooks for property tests: tidy ones, and lines thrown together as nobody would write them.
import fc from 'fast-check';

const ODD_LINES = [
  '',
  '',
  '## Landing',
  '##',
  '# Kestrel Court',
  '### Forms',
  '   ## Steps',
  '## Steps ##',
  'Underlined part',
  '---',
  '===',
  'Prose about the yard.',
  '- Slab length: 12 ft',
  '- Thickness: 4 in',
  '* Bag price: $6.48 per bag',
  '+ Waste: 10%',
  '1. Rise: 52 1/2 in',
  '2) Run: 10 in',
  '  - from: measured on site',
  '    - sensible: 3 in up to 8 in',
  '   - cost: material',
  '\t- note: a tab before it',
  '-\tTab: 3 ft',
  '  by thickness',
  '  # of posts: 4',
  '- # of posts: 4',
  '- [x]: 3 ft',
  '- <script>alert(1)</script>: 4 in',
  '-      Far off: 4 in',
  '- - nested at once: 2',
  '-',
  '> quoted: 3 ft',
  '```',
  '~~~',
  '<!-- a comment',
  '-->',
  '<div>',
  '[ref]: http://x "y"',
  '| length | width |',
  '|---|---|',
  '- 4 in',
  '- no colon here',
  '- __proto__: 3 ft',
  '- constructor: 4 ft',
  '***',
  '    indented code',
  'x',
];

const ends = fc.constantFrom('\n', '\n', '\n', '\r\n', '\r');

/** Lines from a hat, with any mix of line ends. */
export const oddText: fc.Arbitrary<string> = fc
  .tuple(
    fc.constantFrom('', '', '\uFEFF'),
    fc.array(fc.tuple(fc.constantFrom(...ODD_LINES), ends), { maxLength: 25 }),
    fc.constantFrom('', 'last line without an end', '- Last: 1 ft'),
  )
  .map(([mark, lines, last]) => mark + lines.map(([line, end]) => line + end).join('') + last);

const word = fc.constantFrom(
  'slab',
  'stair',
  'rail',
  'deck',
  'gate',
  'wall',
  'step',
  'post',
  'bay',
  'form',
);
const cellName = fc
  .tuple(word, fc.constantFrom('length', 'width', 'price', 'count', 'rise', 'plan'), fc.nat(99))
  .map(([a, b, n]) => `${a[0].toUpperCase()}${a.slice(1)} ${b} ${n}`);
const given = fc.constantFrom(
  '12 ft',
  '4 in',
  '$6.48 per bag',
  '10%',
  '?',
  '40 bags',
  '3 1/2 in',
  '13 hours, 12 at best, 16 at worst',
  '12 to 16 ft',
);
const remark = fc.constantFrom(
  'from: measured on site',
  'sensible: 3 in up to 8 in',
  'cost: material',
  'cost: labour',
  'buy: 60 lb mix',
  'note: see the drawing',
  'bogus: whatever',
);

/** Rows of a table below a cell's line; `apart`: after a blank line. */
const table = fc.record({
  apart: fc.boolean(),
  rows: fc.array(fc.constantFrom('| 12 ft | 4 ft |', '| | x |  ', '|a|b|c|', '| \\| | 2'), {
    maxLength: 3,
  }),
});

interface RandomCell {
  readonly table: { readonly apart: boolean; readonly rows: readonly string[] } | null;
  readonly name: string;
  readonly formula: string;
  readonly remarks: readonly string[];
}

const randomCell: fc.Arbitrary<RandomCell> = fc.record({
  table: fc.option(table, { nil: null, freq: 3 }),
  name: cellName,
  formula: given,
  remarks: fc.array(remark, { maxLength: 3 }),
});

/** A tidy notebook with one line end, one bullet and one indent, names unlike within a part. */
export const tidyText: fc.Arbitrary<string> = fc
  .record({
    end: fc.constantFrom('\n', '\r\n'),
    bullet: fc.constantFrom('-', '*', '+', '1.'),
    blank: fc.constantFrom('', 'Prose in between.'),
    final: fc.constantFrom('last end', 'no last end'),
    parts: fc.array(
      fc.record({
        name: cellName,
        cells: fc.uniqueArray(randomCell, { maxLength: 6, selector: (c) => c.name }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
  })
  .map(({ end, bullet, blank, final, parts }) => {
    const indent = ' '.repeat(bullet.length + 1);
    const lines = ['# Kestrel Court', '', 'A yard to be built.', ''];
    for (const part of parts) {
      lines.push(`## ${part.name}`, ...(blank ? ['', blank, ''] : []));
      for (const cell of part.cells) {
        lines.push(`${bullet} ${cell.name}:${cell.table ? '' : ` ${cell.formula}`}`);
        if (cell.table) {
          if (cell.table.apart) lines.push('');
          lines.push(`${indent}| length | width: length |`, `${indent}|---|:--|`);
          for (const row of cell.table.rows) lines.push(`${indent}${row}`);
          if (cell.table.apart) lines.push('');
        }
        for (const text of cell.remarks) lines.push(`${indent}${bullet} ${text}`);
      }
      lines.push('');
    }
    const text = lines.join(end);
    return final === 'last end' ? text : text.trimEnd();
  });
