// Columns that come, go, move and take another name; text in, text out, and values that stay what they were.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cell, Finding } from '../../src/notebook/document.ts';
import { type Applied, Estimate } from '../../src/notebook/estimate.ts';
import { cellsOf } from '../../src/notebook/lines.ts';

const JOB = `# Kestrel Court

## Landing

- Thickness: 4 in
- Slab bays:

  | bay | length    | width | volume: length by width by thickness |
  |:----|-----------|------:|--------------------------------------|
  | A   | 12 ft     | 4 ft  |                                      |
  | B   | 8 ft 6 in | 4 ft  | 9 cubic feet                         |

- Concrete: total of volume in slab bays, in cubic yards
- Long one: read bay off slab bays for length at least 10 ft
- Bay: A
  - choices: bay of slab bays
`;

function named(estimate: Estimate, name: string): Cell {
  const cell = estimate.notebook.parts.flatMap(cellsOf).find((c) => c.name === name);
  if (!cell) throw new Error(`no cell ${name}`);
  return cell;
}

const bays = (estimate: Estimate): number => named(estimate, 'Slab bays').id;

function done(result: Applied | Finding): Applied {
  if ('code' in result) throw new Error(result.message);
  return result;
}

/** The table's lines as they stand in the text. */
function lines({ notebook }: Estimate): readonly string[] {
  return notebook.text.split('\n').filter((line) => line.trim().startsWith('|'));
}

/** What every cell shows: those of the table by row and column name, the others by name. */
function values(estimate: Estimate): ReadonlyMap<string, string | null> {
  const all = new Map<string, string | null>();
  for (const cell of estimate.notebook.parts.flatMap(cellsOf)) {
    all.set(cell.name, estimate.shown(cell.id)?.text ?? null);
    for (const [r, row] of (estimate.rows(cell.id) ?? []).entries()) {
      for (const [k, id] of row.entries()) {
        const column = cell.table?.columns[k]?.name ?? '';
        all.set(`${cell.name} ${r} ${column}`, estimate.shown(id)?.text ?? null);
      }
    }
  }
  return all;
}

describe('a column that comes in', () => {
  it('stands where it is asked for, and undo takes it back to the letter', () => {
    const estimate = new Estimate(JOB);
    done(estimate.addColumn(bays(estimate), 1, 'depth', null));
    expect(lines(estimate)).toEqual([
      '  | bay | length    | depth | width | volume: length by width by thickness |',
      '  |:----|-----------|-------|------:|--------------------------------------|',
      '  | A   | 12 ft     |       | 4 ft  |                                      |',
      '  | B   | 8 ft 6 in |       | 4 ft  | 9 cubic feet                         |',
    ]);
    done(estimate.addColumn(bays(estimate), -1, 'pour', null));
    expect(lines(estimate)[2]).toBe(
      '  |      | A   | 12 ft     |       | 4 ft  |                                      |',
    );
    estimate.undo();
    estimate.undo();
    expect(estimate.notebook.text).toBe(JOB);
  });

  it('called as a cell outside that its rows name, has that cell written with its part, and says so', () => {
    const estimate = new Estimate(JOB);
    const { change } = done(estimate.addColumn(bays(estimate), 0, 'thickness', null));
    expect(change.say).toBe(
      'Slab bays, column thickness; now written "Landing thickness" in Slab bays',
    );
    expect(lines(estimate)[0]).toContain('| volume: length by width by Landing thickness |');
    expect(estimate.shown(named(estimate, 'Concrete').id)?.text).toBe('0.9259 cubic yards');
    estimate.undo();
    expect(estimate.notebook.text).toBe(JOB);
  });

  it('called as a name that was missing in its rows is what those rows then name', () => {
    const estimate = new Estimate(JOB.replace('by thickness |', 'by depth |    '));
    const [row] = estimate.rows(bays(estimate)) ?? [];
    expect(estimate.state(row?.[3] ?? 0).outcome.kind).toBe('fault');
    done(estimate.addColumn(bays(estimate), 2, 'depth', '4 in'));
    const [now] = estimate.rows(bays(estimate)) ?? [];
    expect(estimate.shown(now?.[4] ?? 0)?.text).toBe('16 cubic feet');
  });

  it('leaves alone what stands beyond the last column, and rows that end early', () => {
    const odd = `# Kestrel Court\n\n## Landing\n\n- T:\n\n  | a | b |\n  |---|---|\n  | 1 | 2 | over |\n  | 3 |\n  | 4\n`;
    const estimate = new Estimate(odd);
    const id = named(estimate, 'T').id;
    done(estimate.addColumn(id, null, 'c', null));
    expect(named(estimate, 'T').table?.rows.map((row) => row.texts)).toEqual([
      ['1', '2', ''],
      ['3', '', ''],
      ['4', '', ''],
    ]);
    expect(estimate.notebook.text).toContain('over');
    done(estimate.addColumn(id, 0, 'd', null));
    done(estimate.moveColumn(id, 3, 0));
    expect(named(estimate, 'T').table?.columns.map((c) => c.name)).toEqual(['c', 'a', 'd', 'b']);
    expect(named(estimate, 'T').table?.rows.map((row) => row.texts)).toEqual([
      ['', '1', '', '2'],
      ['', '3', '', ''],
      ['', '4', '', ''],
    ]);
    for (let n = 0; n < 3; n++) estimate.undo();
    expect(estimate.notebook.text).toBe(odd);
  });
});

describe('a column that moves', () => {
  it('takes its marks, its formula and its texts along', () => {
    const estimate = new Estimate(JOB);
    done(estimate.moveColumn(bays(estimate), 3, 0));
    expect(lines(estimate)).toEqual([
      '  | volume: length by width by thickness | bay | length    | width |',
      '  |--------------------------------------|:----|-----------|------:|',
      '  |                                      | A   | 12 ft     | 4 ft  |',
      '  | 9 cubic feet                         | B   | 8 ft 6 in | 4 ft  |',
    ]);
    done(estimate.moveColumn(bays(estimate), 0, 3));
    expect(estimate.notebook.text).toBe(JOB);
  });

  it('does not pass another one of its name, which would then be the one that is meant', () => {
    const twins = JOB.replace('| bay |', '| width |').replace('|:----|', '|:------|');
    const estimate = new Estimate(twins);
    expect(estimate.moveColumn(bays(estimate), 0, 3)).toMatchObject({ code: 'same-name' });
    expect(estimate.notebook.text).toBe(twins);
  });
});

describe('a column that is to go', () => {
  it('tells beforehand what names it, and what that would read in its place', () => {
    const text = JOB.replace('- Thickness: 4 in\n', '- Thickness: 4 in\n- Length: 3 ft\n');
    const estimate = new Estimate(text);
    expect(estimate.columnUses(bays(estimate), 1)).toEqual([
      {
        cell: bays(estimate),
        where: 'column',
        column: 'volume',
        text: 'length by width by thickness',
        then: 'Landing length',
      },
      {
        cell: named(estimate, 'Long one').id,
        where: 'formula',
        column: null,
        text: 'read bay off slab bays for length at least 10 ft',
        then: null,
      },
    ]);
    expect(estimate.columnUses(bays(estimate), 0).map(({ where, then }) => [where, then])).toEqual([
      ['formula', null],
      ['choices', null],
    ]);
    expect(estimate.notebook.text).toBe(text);
  });

  it('leaves those saying that it is missing, until undo brings it back', () => {
    const estimate = new Estimate(JOB);
    const before = values(estimate);
    done(estimate.removeColumn(bays(estimate), 1));
    const { outcome } = estimate.state(named(estimate, 'Long one').id);
    expect(outcome).toMatchObject({ kind: 'fault' });
    const [row] = estimate.rows(bays(estimate)) ?? [];
    expect(estimate.state(row?.[2] ?? 0).outcome).toMatchObject({
      kind: 'fault',
      report: { code: 'unknown-name' },
    });
    estimate.undo();
    expect(values(estimate)).toEqual(before);
    expect(estimate.notebook.text).toBe(JOB);
  });
});

describe('a table laid out from text', () => {
  const lay = (text: string, before = '# Kestrel Court\n\n## Landing\n\n- Thickness: 4 in\n') => {
    const estimate = new Estimate(before);
    const { part } = named(estimate, 'Thickness');
    const done = estimate.layOutTable({ kind: 'new', part, after: null, name: 'Slab bays' }, text);
    return { estimate, done };
  };

  it('takes its columns from the first line and its rows from the others', () => {
    const { estimate, done } = lay(
      'bay\tlength\twidth\tvolume: length by width by thickness\nnorth\t6 ft\t4 ft\nsouth\t3 ft\t4 ft\n',
    );
    expect(done).toMatchObject({ refused: [] });
    expect(estimate.notebook.text).toBe(`# Kestrel Court

## Landing

- Thickness: 4 in
- Slab bays:

  | bay   | length | width | volume: length by width by thickness |
  |-------|--------|-------|--------------------------------------|
  | north | 6 ft   | 4 ft  |                                      |
  | south | 3 ft   | 4 ft  |                                      |
`);
    const volumes = (estimate.rows(bays(estimate)) ?? []).map((row) => row[3] ?? 0);
    expect(volumes.map((id) => estimate.shown(id)?.text)).toEqual(['8 cubic feet', '4 cubic feet']);
    estimate.undo();
    expect(estimate.notebook.text).toBe('# Kestrel Court\n\n## Landing\n\n- Thickness: 4 in\n');
    expect(estimate.canUndo()).toBeNull();
  });

  it('begins with a blank row where only the columns are named', () => {
    const { estimate } = lay('post, height');
    expect(named(estimate, 'Slab bays').table?.rows.map(({ texts }) => texts)).toEqual([['', '']]);
  });

  it('leaves blank what can’t be read and tells it with the reason, in one step to undo', () => {
    const { estimate, done } = lay(
      'bay,length\nnorth,6 ft\nsouth,5 kg\nsteps,6 fet\nramp,4 ft,more\n',
    );
    expect('code' in done ? done : done.refused).toEqual([
      {
        row: 1,
        column: 1,
        text: '5 kg',
        why: 'This column holds a length, and this is a weight.',
      },
      expect.objectContaining({ row: 2, column: 1, text: '6 fet' }),
      { row: 3, column: null, text: 'more', why: 'There is no column for it.' },
    ]);
    expect(named(estimate, 'Slab bays').table?.rows.map(({ texts }) => texts[1])).toEqual([
      '6 ft',
      '',
      '',
      '4 ft',
    ]);
    estimate.undo();
    expect(estimate.canUndo()).toBeNull();
  });

  it('reads plain numbers under a heading with a unit in that unit', () => {
    const { estimate } = lay(
      'Piece\tLength (ft)\tPrice ($)\nrail\t12\t8.50\npost\t8 ft 6 in\t11\n',
    );
    const { columns, rows } = named(estimate, 'Slab bays').table ?? { columns: [], rows: [] };
    expect(columns.map(({ name }) => name)).toEqual(['Piece', 'Length', 'Price']);
    expect(rows.map(({ texts }) => texts)).toEqual([
      ['rail', '12 ft', '$8.50'],
      ['post', '8 ft 6 in', '$11'],
    ]);
  });

  it('does not part a figure at its thousands where blanks follow the other commas', () => {
    const { estimate } = lay('what, price\nconcrete, $1,250\ngravel, $980\n');
    expect(named(estimate, 'Slab bays').table?.rows.map(({ texts }) => texts)).toEqual([
      ['concrete', '$1,250'],
      ['gravel', '$980'],
    ]);
  });

  it.each([
    ['', 'no-columns'],
    ['bay,,length\nA,1,2 ft\n', 'not-a-name'],
    ['bay,Bay\n', 'same-name'],
    ['4 ft,length\n', 'not-a-name'],
  ])('refuses %j with the reason and changes nothing', (text, code) => {
    const { estimate, done } = lay(text);
    expect(done).toMatchObject({ code });
    expect(estimate.canUndo()).toBeNull();
  });

  it('takes the place of a cell that holds nothing yet, above its remarks', () => {
    const text =
      '# Kestrel Court\n\n## Landing\n\n- Posts: ?\n  - from: counted\n- Thickness: 4 in\n';
    const estimate = new Estimate(text);
    const { id } = named(estimate, 'Posts');
    done(estimate.layOutTable({ kind: 'here', cell: id }, 'post,height\ncorner,4 ft\n'));
    expect(named(estimate, 'Posts')).toMatchObject({ id, formula: '' });
    expect(named(estimate, 'Posts').remarks[0]?.text).toBe('counted');
    expect(named(estimate, 'Posts').table?.rows.map(({ texts }) => texts)).toEqual([
      ['corner', '4 ft'],
    ]);
    estimate.undo();
    expect(estimate.notebook.text).toBe(text);
    const { id: other } = named(estimate, 'Thickness');
    expect(estimate.layOutTable({ kind: 'here', cell: other }, 'a,b')).toMatchObject({
      code: 'not-blank',
    });
  });
});

type Step =
  | { readonly kind: 'add'; readonly after: number; readonly name: string }
  | { readonly kind: 'rename'; readonly column: number; readonly name: string }
  | { readonly kind: 'move'; readonly from: number; readonly to: number };

const NAMES = fc.constantFrom(
  'thickness',
  'bay 2',
  'length',
  'run',
  'landing',
  'concrete',
  'depth',
);
const STEP: fc.Arbitrary<Step> = fc.oneof(
  fc.record({ kind: fc.constant('add' as const), after: fc.nat(9), name: NAMES }),
  fc.record({ kind: fc.constant('rename' as const), column: fc.nat(9), name: NAMES }),
  fc.record({ kind: fc.constant('move' as const), from: fc.nat(9), to: fc.nat(9) }),
);

it('whatever columns come in, move and are called, no cell comes to something else; all of it can be undone', () => {
  fc.assert(
    fc.property(fc.array(STEP, { minLength: 1, maxLength: 8 }), (steps) => {
      const estimate = new Estimate(JOB);
      for (const step of steps) {
        const before = values(estimate);
        const cell = named(estimate, 'Slab bays');
        const wide = cell.table?.columns.length ?? 1;
        const names = new Map<string, string>();
        if (step.kind === 'add') {
          estimate.addColumn(cell.id, (step.after % (wide + 1)) - 1, step.name, null);
        } else if (step.kind === 'move') {
          estimate.moveColumn(cell.id, step.from % wide, step.to % wide);
        } else {
          const k = step.column % wide;
          const renamed = estimate.renameColumn(cell.id, k, step.name);
          if ('change' in renamed) names.set(cell.table?.columns[k]?.name ?? '', step.name);
        }
        const now = values(estimate);
        for (const [place, shown] of before) {
          const [, table, column = ''] = /^(Slab bays \d+ )(.*)$/.exec(place) ?? [];
          const later = table === undefined ? place : table + (names.get(column) ?? column);
          expect(now.get(later), `${place}\n${estimate.notebook.text}`).toBe(shown);
        }
      }
      while (estimate.canUndo() !== null) estimate.undo();
      expect(estimate.notebook.text).toBe(JOB);
    }),
    { numRuns: Number(process.env['TABLE_RUNS'] ?? 60) },
  );
}, 120_000);
