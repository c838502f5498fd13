// Tables in the document: edits as splices, what they leave alone, pasted text, and texts nobody would write.
import { describe, expect, it, vi } from 'vitest';
import type { Cell, Finding } from '../../src/notebook/document.ts';
import { type Applied, Estimate } from '../../src/notebook/estimate.ts';
import { cellsOf } from '../../src/notebook/lines.ts';

vi.setConfig({ testTimeout: 60_000 });

const TABLE = `- Slab bays:

  | bay | length    | width | volume: length by width by thickness |
  |:----|-----------|------:|--------------------------------------|
  | A   | 12 ft     | 4 ft  |                                      |
  | B   | 8 ft 6 in | 4 ft  | 9 cubic feet                         |

  - from: drawing 2
`;

const BEFORE = `# Kestrel Court

## Landing

- Thickness: 4 in
`;

const AFTER = `- Concrete: total of volume in slab bays, in cubic yards
- Long one: read bay off slab bays for length at least 10 ft
- Bay: A
  - choices: bay of slab bays
`;

const JOB = BEFORE + TABLE + AFTER;

function named(estimate: Estimate, name: string): Cell {
  const cell = estimate.notebook.parts.flatMap(cellsOf).find((c) => c.name === name);
  if (!cell) throw new Error(`no cell ${name}`);
  return cell;
}

const bays = (estimate: Estimate): number => named(estimate, 'Slab bays').id;

/** The lines of the text after an edit that are not as they were. */
function changed(estimate: Estimate, before = JOB): readonly string[] {
  const old = new Set(before.split('\n'));
  return estimate.notebook.text.split('\n').filter((line) => !old.has(line));
}

function done(result: Applied | Finding): Applied {
  if ('code' in result) throw new Error(result.message);
  return result;
}

describe('an edit of a table writes what it changes and nothing else', () => {
  it('sets a row cell and keeps the columns in line', () => {
    const estimate = new Estimate(JOB);
    done(estimate.setRowCell(bays(estimate), 0, 1, '14 ft'));
    expect(changed(estimate)).toEqual([
      '  | A   | 14 ft     | 4 ft  |                                      |',
    ]);
    done(estimate.setRowCell(bays(estimate), 0, 1, '14 ft 11 1/2 in'));
    expect(changed(estimate)).toEqual([
      '  | A   | 14 ft 11 1/2 in | 4 ft  |                                      |',
    ]);
  });

  it('gives a row back to its column', () => {
    const estimate = new Estimate(JOB);
    done(estimate.setRowCell(bays(estimate), 1, 3, ''));
    expect(estimate.notebook.text).toContain(
      '| B   | 8 ft 6 in | 4 ft  |                         ',
    );
    expect(estimate.shown(named(estimate, 'Concrete').id)?.text).toBe('1.01 cubic yards');
  });

  it('adds, removes and moves rows', () => {
    const estimate = new Estimate(JOB);
    done(estimate.addRow(bays(estimate), null, ['C', '6 ft', '3 ft']));
    expect(changed(estimate)).toEqual([
      '  | C   | 6 ft      | 3 ft  |                                      |',
    ]);
    done(estimate.addRow(bays(estimate), -1, ['Z']));
    const order = (): readonly (string | undefined)[] =>
      named(estimate, 'Slab bays').table?.rows.map((row) => row.texts[0]) ?? [];
    expect(order()).toEqual(['Z', 'A', 'B', 'C']);
    done(estimate.moveRow(bays(estimate), 0, 2));
    expect(order()).toEqual(['A', 'B', 'Z', 'C']);
    done(estimate.moveRow(bays(estimate), 3, 0));
    expect(order()).toEqual(['C', 'A', 'B', 'Z']);
    done(estimate.removeRow(bays(estimate), 3));
    done(estimate.removeRow(bays(estimate), 0));
    expect(estimate.notebook.text).toBe(JOB);
  });

  it('sets, changes and takes away the formula of a column', () => {
    const estimate = new Estimate(JOB);
    done(estimate.setColumnFormula(bays(estimate), 3, 'length by width by 6 in'));
    expect(estimate.notebook.text).toContain('| volume: length by width by 6 in |');
    done(estimate.setColumnFormula(bays(estimate), 3, null));
    expect(estimate.notebook.text).toContain('| width | volume |');
    done(estimate.setColumnFormula(bays(estimate), 3, 'length by width by thickness'));
    expect(estimate.notebook.text).toBe(JOB);
  });

  it('adds and takes away a column', () => {
    const estimate = new Estimate(JOB);
    done(estimate.addColumn(bays(estimate), null, 'area', 'length by width'));
    expect(estimate.notebook.text).toContain('thickness | area: length by width |');
    const rows = estimate.rows(bays(estimate)) ?? [];
    expect(rows.map((row) => estimate.shown(row[4])?.text)).toEqual(['48 sq ft', '34 sq ft']);
    done(estimate.removeColumn(bays(estimate), 4));
    expect(estimate.notebook.text).toBe(JOB);
    expect(estimate.addColumn(bays(estimate), null, 'Length', null)).toMatchObject({
      code: 'same-name',
    });
    expect(estimate.addColumn(bays(estimate), null, '4 ft', null)).toMatchObject({
      code: 'not-a-name',
    });
  });

  it('renames a column wherever it is named', () => {
    const estimate = new Estimate(JOB);
    done(estimate.renameColumn(bays(estimate), 1, 'run'));
    expect(estimate.notebook.text).toContain('| volume: run by width by thickness |');
    expect(named(estimate, 'Long one').formula).toBe(
      'read bay off slab bays for run at least 10 ft',
    );
    done(estimate.renameColumn(bays(estimate), 0, 'Piece'));
    expect(named(estimate, 'Long one').formula).toBe(
      'read piece off slab bays for run at least 10 ft',
    );
    expect(named(estimate, 'Bay').remarks[0]?.text).toBe('piece of slab bays');
    done(estimate.renameColumn(bays(estimate), 3, 'cubic'));
    expect(named(estimate, 'Concrete').formula).toBe('total of cubic in slab bays, in cubic yards');
    expect(estimate.findings().map((f) => f.code)).not.toContain('unknown-column');
  });

  it('a name that a row takes from outside is written with its part when a column is called so, and that is told', () => {
    const estimate = new Estimate(JOB);
    const { change } = done(estimate.renameColumn(bays(estimate), 0, 'thickness'));
    expect(change.say).toBe(
      'Rename bay in Slab bays to thickness; now written "Landing thickness" in Slab bays',
    );
    expect(estimate.notebook.text).toContain('| volume: length by width by Landing thickness |');
    expect(estimate.shown(named(estimate, 'Concrete').id)?.text).toBe('0.9259 cubic yards');
  });

  it('renames the table, and cells that its rows name', () => {
    const estimate = new Estimate(JOB);
    done(estimate.rename(bays(estimate), 'Pours'));
    expect(named(estimate, 'Concrete').formula).toBe('total of volume in pours, in cubic yards');
    expect(named(estimate, 'Bay').remarks[0]?.text).toBe('bay of pours');
    done(estimate.rename(named(estimate, 'Thickness').id, 'Depth of slab'));
    expect(estimate.notebook.text).toContain('volume: length by width by depth of slab');
    expect(estimate.shown(named(estimate, 'Concrete').id)?.text).toBe('0.9259 cubic yards');
  });

  it('writes a bar in a text so that it stays one', () => {
    const estimate = new Estimate(JOB);
    done(estimate.setRowCell(bays(estimate), 0, 0, 'A | left'));
    expect(estimate.notebook.text).toContain('| A \\| left | 12 ft');
    expect(named(estimate, 'Slab bays').table?.rows[0]?.texts[0]).toBe('A | left');
  });

  it('makes a new table', () => {
    const estimate = new Estimate(BEFORE);
    const columns = [
      { name: 'size', formula: null },
      { name: 'half', formula: 'size ÷ 2' },
    ];
    const part = named(estimate, 'Thickness').part;
    done(estimate.addTable(part, null, 'Posts', columns));
    expect(estimate.notebook.text).toBe(
      `${BEFORE}- Posts:\n\n  | size | half: size ÷ 2 |\n  |------|----------------|\n  |      |                |\n`,
    );
    done(estimate.setRowCell(named(estimate, 'Posts').id, 0, 0, '6 in'));
    const [row] = estimate.rows(named(estimate, 'Posts').id) ?? [];
    expect(estimate.shown(row?.[1] ?? 0)?.text).toBe('3 in');
  });

  it('takes remarks below the table', () => {
    const estimate = new Estimate(
      `${BEFORE}- T:\n\n  | a | b |\n  |---|---|\n  | 1 | 2 |\n- After: 2 ft\n`,
    );
    done(estimate.setRemark(named(estimate, 'T').id, 'from', 'counted'));
    expect(estimate.notebook.text).toContain('  | 1 | 2 |\n  - from: counted\n- After');
  });

  it.each([
    ['without a line end', `${BEFORE}- T:\n  | a | b |\n  |---|---|\n  | 1 | 2 |`],
    [
      'with line ends of two characters',
      `${BEFORE}- T:\n\n  | a | b |\n  |---|---|\n  | 1 | 2 |\n`.replaceAll('\n', '\r\n'),
    ],
    [
      'numbered',
      `${BEFORE.replace('- ', '1. ')}2. T:\n\n   | a | b |\n   |---|---|\n   | 1 | 2 |\n`,
    ],
    ['with short rows', `${BEFORE}- T:\n\n  | a | b |\n  |---|---|\n  | 1 |\n`],
    ['indented further', `${BEFORE}- T:\n\n    | a | b |\n    |---|---|\n    | 1 | 2 |\n`],
  ])('and is taken back whole, %s', (_, text) => {
    const estimate = new Estimate(text);
    const id = named(estimate, 'T').id;
    done(estimate.setRowCell(id, 0, 1, '5'));
    done(estimate.addRow(id, null, ['7', '8']));
    done(estimate.addRow(id, -1, ['9']));
    expect(named(estimate, 'T').table?.rows.map((row) => row.texts)).toEqual([
      ['9', ''],
      ['1', '5'],
      ['7', '8'],
    ]);
    while (estimate.canUndo() !== null) estimate.undo();
    expect(estimate.notebook.text).toBe(text);
  });
});

describe('pasted text', () => {
  it('fills cells from a place on and adds the rows it needs', () => {
    const estimate = new Estimate(JOB);
    const id = bays(estimate);
    const pasted = estimate.pasteRows(id, 1, 1, '9 ft\t5 ft\n10\' 6"\t4 ft\r\n"11 ft"\t3 ft\n');
    expect(pasted).toMatchObject({ refused: [] });
    expect(named(estimate, 'Slab bays').table?.rows.map((row) => row.texts.slice(0, 3))).toEqual([
      ['A', '12 ft', '4 ft'],
      ['B', '9 ft', '5 ft'],
      ['', '10\' 6"', '4 ft'],
      ['', '11 ft', '3 ft'],
    ]);
    estimate.undo();
    expect(estimate.notebook.text).toBe(JOB);
  });

  it('goes by its own headings, whatever their order', () => {
    const estimate = new Estimate(JOB);
    const pasted = estimate.pasteRows(
      bays(estimate),
      2,
      0,
      'Width,Length,Bay\n3 ft,"6 ft",C\n2 ft,5 ft,D',
    );
    expect(pasted).toMatchObject({ refused: [] });
    expect(
      named(estimate, 'Slab bays')
        .table?.rows.slice(2)
        .map((row) => row.texts),
    ).toEqual([
      ['C', '6 ft', '3 ft', ''],
      ['D', '5 ft', '2 ft', ''],
    ]);
  });

  it.each([
    ['12 fet', /12 of what/],
    ['$5', /holds a length, and this is money/],
    ['=B2*C2', /formula that points at places/],
    ['#REF!', /found an error/],
    ['(12.50)', /Brackets around a figure/],
    ['1.234,50', /other way round/],
    ['1.2E+05', /shortened this figure/],
    ['12', /holds a length, and this is a plain number/],
    ['12 ft; DROP', /./],
  ])('refuses %s with the reason, and takes the rest', (text, why) => {
    const estimate = new Estimate(JOB);
    const pasted = estimate.pasteRows(bays(estimate), 2, 0, `C\t${text}\t3 ft`);
    if ('code' in pasted) throw new Error(pasted.message);
    expect(pasted.refused).toMatchObject([{ row: 2, column: 1, text }]);
    expect(pasted.refused[0]?.why).toMatch(why);
    expect(named(estimate, 'Slab bays').table?.rows[2]?.texts).toEqual(['C', '', '3 ft', '']);
  });

  it('tells which cells have no column', () => {
    const estimate = new Estimate(JOB);
    const pasted = estimate.pasteRows(bays(estimate), 0, 2, '4 ft\t16 cubic feet\tnote');
    expect(pasted).toMatchObject({ refused: [{ row: 0, column: null, text: 'note' }] });
  });

  it('changes nothing where nothing can be taken', () => {
    const estimate = new Estimate(JOB);
    expect(estimate.pasteRows(bays(estimate), 0, 1, 'twelve foot or so')).toMatchObject({
      code: 'nothing-pasted',
    });
    expect(estimate.pasteRows(bays(estimate), 0, 1, ' \n\t\n')).toMatchObject({
      code: 'nothing-pasted',
    });
    expect(estimate.notebook.text).toBe(JOB);
  });
});

describe('what the owner is told of a table', () => {
  const codes = (text: string): readonly string[] =>
    new Estimate(`${BEFORE.replace('4 in', '4 in\n  - from: here')}${text}`)
      .findings()
      .map((f) => f.code);

  it.each([
    ['- T:\n  | a |\n  |---|\n  | 1 ft |', ['given-without-source']],
    ['- T:\n  | a | source |\n  |---|---|\n  | 1 ft | drawing |', []],
    ['- T:\n  | a |\n  |---|\n  | 1 ft |\n  | |\n  - from: x', ['blank-in-table']],
    ['- T:\n  | a |\n  |---|\n  | 1 ft |\n  | ? ft |\n  - from: x', ['not-yet-known']],
    ['- T:\n  | a |\n  |---|\n  | 1 ft |\n  | 3 lb |\n  - from: x', ['column-clash']],
    ['- T:\n  | a |\n  |---|\n  | 1 ft |\n  | 3 fet |\n  - from: x', ['unknown-unit']],
    ['- T:\n  | a: 2 ft |\n  |---|\n  | |\n  | 3 ft |\n  - from: x', ['set-in-row']],
    ['- T:\n  | a |\n  |---|\n  | thickness |\n  - from: x', ['text-or-name']],
    ['- T:\n  | a: thickness ÷ 0 |\n  |---|\n  | |\n  - from: x', ['division-by-zero']],
  ])('%j', (text, expected) => {
    expect(codes(`${text}\n`)).toEqual(expected);
  });

  it('counts a cost line twice that a table adds in', () => {
    const text =
      '- Work: $100\n  - cost: labour\n- T:\n  | what | cost |\n  |---|---|\n  | a | $5 |\n  | b | (work) |\n- All: total of cost in T\n  - cost: labour\n';
    expect(codes(text)).toContain('counted-twice');
  });
});

describe('texts nobody would write', () => {
  it.each([
    ['- T:\n  |\n  |-|', 0],
    ['- T:\n  ||\n  |-|', 0],
    ['- T:\n  | a |\n  |---|\n  |', 1],
    ['- T:\n  | a |\n  |---|\n  ||||||', 1],
    ['- T:\n  | \\| |\n  |---|\n  | \\ |', 1],
    ['- T:\n  | __proto__ | constructor |\n  |---|---|\n  | 1 ft | 2 ft |', 1],
    ['- T:\n  | a: ((((( |\n  |---|\n  | |', 1],
    [`- T:\n  | ${'a | '.repeat(300)}\n  |${'-|'.repeat(300)}\n  | 1 |`, 1],
    [`- T:\n  | a |\n  |---|\n  | ${'('.repeat(5000)} |`, 1],
    ['- T:\n  | <script>x</script> |\n  |---|\n  | <img src=x> |', 1],
  ])('%# are kept, and something is said of them', (text, rows) => {
    const estimate = new Estimate(`# X\n\n## P\n${text}\n- Sum: total of a in T\n`);
    const found = estimate.notebook.parts.flatMap(cellsOf).find((c) => c.name === 'T');
    expect(found?.table?.rows.length ?? 0).toBe(rows);
    expect(estimate.findings().length).toBeGreaterThan(0);
    expect(estimate.notebook.text).toContain(text);
  });

  it('five thousand rows are read, and an edit of one works one', () => {
    const rows = Array.from({ length: 5000 }, (_, i) => `  | B${i} | ${(i % 9) + 1} ft | |`);
    const text = `# X\n\n## P\n- T:\n\n  | bay | length | half: length ÷ 2 |\n  |---|---|---|\n${rows.join('\n')}\n- Sum: total of half in T\n`;
    const estimate = new Estimate(text);
    const id = named(estimate, 'T').id;
    expect(estimate.shown(named(estimate, 'Sum').id)?.text).toBe('12,495 ft');
    const ran = done(estimate.setRowCell(id, 4321, 1, '100 ft')).ran;
    expect(ran.map((cell) => estimate.state(cell).input.name)).toEqual([
      'T: B4321: length',
      'T: B4321: half',
      'Sum',
    ]);
  });

  it('a share of the total in each of five thousand rows adds up once', () => {
    const rows = Array.from({ length: 5000 }, () => '  | 2 ft | |');
    const text = `# X\n\n## P\n- T:\n\n  | length | share: what share length is of (total of length in T) |\n  |---|---|\n${rows.join('\n')}\n- Sum: total of share in T\n`;
    const estimate = new Estimate(text);
    expect(estimate.shown(named(estimate, 'Sum').id)?.text).toBe('100%');
  });
});
