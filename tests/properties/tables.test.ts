// Whatever was done to a table, the estimate stands as if its text had just been opened; and all of it can be taken back.
// For a long run: TABLE_RUNS=2000 npx vitest run --project unit tests/properties/tables.test.ts
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Cell } from '../../src/notebook/document.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { figuresOf } from '../../src/notebook/figures.ts';
import { cellsOf } from '../../src/notebook/lines.ts';

const RUNS = Number(process.env['TABLE_RUNS'] ?? 60);

const texts = fc.constantFrom(
  '',
  '',
  '12 ft',
  '8 ft 6 in',
  '4 ft',
  '3 bags',
  '$5',
  '?',
  '? ft',
  '0 ft',
  '13 ft, 12 at best, 16 at worst',
  '12 to 16 ft',
  'hem-fir',
  'pine',
  '2x8',
  'thickness',
  'length times 2',
  'width',
  'lenght',
  '12 fet',
  'total of volume in slab bays',
  'a | b',
  '(thickness)',
  'yes',
);
const names = fc.constantFrom(
  'length',
  'width',
  'volume',
  'bay',
  'run',
  'Thickness',
  'cost',
  'depth',
);
const formulas = fc.constantFrom(
  'length by width by thickness',
  'length by width',
  'volume as a share of total of volume in slab bays',
  'width plus 1 ft',
  'volume',
  'length divided by width',
  'read width off slab bays for bay pine',
  'greatest of length in slab bays',
  'joist spacing',
);
const spot = fc.nat(7);
type Step =
  | { readonly kind: 'cell'; readonly row: number; readonly column: number; readonly text: string }
  | { readonly kind: 'add'; readonly row: number; readonly texts: readonly string[] }
  | { readonly kind: 'remove' | 'drop-column'; readonly at: number }
  | { readonly kind: 'move' | 'move-column'; readonly from: number; readonly to: number }
  | { readonly kind: 'formula'; readonly column: number; readonly text: string | null }
  | { readonly kind: 'rename'; readonly column: number; readonly name: string }
  | {
      readonly kind: 'column';
      readonly after: number;
      readonly name: string;
      readonly text: string | null;
    }
  | { readonly kind: 'paste'; readonly row: number; readonly column: number; readonly text: string }
  | { readonly kind: 'outside'; readonly name: string; readonly text: string }
  | { readonly kind: 'call'; readonly name: string; readonly text: string }
  | { readonly kind: 'undo' | 'redo' | 'drop-table' };

const step: fc.Arbitrary<Step> = fc.oneof(
  fc.record({ kind: fc.constant('cell' as const), row: spot, column: spot, text: texts }),
  fc.record({ kind: fc.constant('cell' as const), row: spot, column: spot, text: texts }),
  fc.record({
    kind: fc.constant('add' as const),
    row: spot,
    texts: fc.array(texts, { maxLength: 5 }),
  }),
  fc.record({ kind: fc.constantFrom('remove' as const, 'drop-column' as const), at: spot }),
  fc.record({
    kind: fc.constantFrom('move' as const, 'move-column' as const),
    from: spot,
    to: spot,
  }),
  fc.record({
    kind: fc.constant('formula' as const),
    column: spot,
    text: fc.option(formulas, { nil: null }),
  }),
  fc.record({ kind: fc.constant('rename' as const), column: spot, name: names }),
  fc.record({
    kind: fc.constant('column' as const),
    after: spot,
    name: names,
    text: fc.option(formulas, { nil: null }),
  }),
  fc.record({
    kind: fc.constant('paste' as const),
    row: spot,
    column: spot,
    text: fc
      .array(fc.array(texts, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 4 })
      .map((rows) => rows.map((row) => row.join('\t')).join('\n')),
  }),
  fc.record({
    kind: fc.constant('outside' as const),
    name: fc.constantFrom('Thickness', 'Concrete', 'Species', 'Looked up', 'Many'),
    text: fc.constantFrom(
      '4 in',
      '6 in',
      '?',
      'total of volume in slab bays',
      'total of run in slab bays, in ft',
      'how many slab bays',
      'pine',
      'oak',
      'read length off slab bays for bay pine, width at least 4 ft',
      'slab bays',
      'average of length in slab bays',
    ),
  }),
  fc.record({
    kind: fc.constant('call' as const),
    name: fc.constantFrom('Thickness', 'Slab bays', 'Species', 'Joist spacing'),
    text: fc.constantFrom('Depth', 'Bays', 'length', 'Thickness', 'Slab bays', 'Spacing'),
  }),
  fc.record({ kind: fc.constantFrom('undo' as const, 'redo' as const) }),
  fc.record({ kind: fc.constant('drop-table' as const) }),
);

const START = `# Kestrel Court

- Counted things: bay

## Landing

- Thickness: 4 in
- Joist spacing: 16 in
- Slab bays:

  | bay     | length    | width | volume: length by width by thickness | cost: volume at $140 per cubic yard |
  |---------|-----------|-------|--------------------------------------|-------------------------------------|
  | hem-fir | 12 ft     | 4 ft  |                                      |                                     |
  | pine    | 8 ft 6 in | 4 ft  | 9 cubic feet                         |                                     |
  | 2x8     | 6 ft      | ? ft  |                                      |                                     |

  - from: drawing
- Concrete: total of volume in slab bays, in cubic yards
- Species: pine
  - choices: bay of slab bays
- Looked up: read length off slab bays for bay species, width at least 3 ft
- Is pine: species is pine
- Many: how many slab bays
- Longest: greatest length in slab bays
- Price: total of cost in slab bays
  - cost: material
- Direct: total cost of this part
`;

function cellNamed(estimate: Estimate, name: string): Cell | undefined {
  return estimate.notebook.parts.flatMap(cellsOf).find((cell) => cell.name === name);
}

function take(estimate: Estimate, step: Step): void {
  if (step.kind === 'undo') estimate.undo();
  else if (step.kind === 'redo') estimate.redo();
  else if (step.kind === 'outside') {
    const cell = cellNamed(estimate, step.name);
    if (cell) estimate.setFormula(cell.id, step.text);
  } else if (step.kind === 'call') {
    const cell = cellNamed(estimate, step.name);
    if (cell) estimate.rename(cell.id, step.text);
  } else {
    const cell = estimate.notebook.parts.flatMap(cellsOf).find((c) => c.table !== null);
    if (!cell?.table) return;
    const { rows, columns } = cell.table;
    const row = (n: number): number => n % Math.max(1, rows.length);
    const column = (n: number): number => n % columns.length;
    switch (step.kind) {
      case 'cell':
        if (rows.length > 0) {
          estimate.setRowCell(cell.id, row(step.row), column(step.column), step.text);
        }
        return;
      case 'add':
        estimate.addRow(cell.id, rows.length === 0 ? null : row(step.row) - 1, step.texts);
        return;
      case 'remove':
        if (rows.length > 0) estimate.removeRow(cell.id, row(step.at));
        return;
      case 'drop-column':
        estimate.removeColumn(cell.id, column(step.at));
        return;
      case 'move':
        if (rows.length > 0) estimate.moveRow(cell.id, row(step.from), row(step.to));
        return;
      case 'move-column':
        estimate.moveColumn(cell.id, column(step.from), column(step.to));
        return;
      case 'formula':
        estimate.setColumnFormula(cell.id, column(step.column), step.text);
        return;
      case 'rename':
        estimate.renameColumn(cell.id, column(step.column), step.name);
        return;
      case 'column':
        estimate.addColumn(cell.id, column(step.after) - 1, step.name, step.text);
        return;
      case 'paste':
        estimate.pasteRows(cell.id, row(step.row), column(step.column), step.text);
        return;
      case 'drop-table':
        estimate.removeCell(cell.id);
    }
  }
}

test('a table that was worked on stands as if its text had just been opened', () => {
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 14 }), (steps) => {
      const estimate = new Estimate(START);
      for (const each of steps) {
        take(estimate, each);
        const fresh = new Estimate(estimate.notebook.text);
        expect(figuresOf(estimate), estimate.notebook.text).toEqual(figuresOf(fresh));
      }
      while (estimate.canUndo() !== null) estimate.undo();
      expect(estimate.notebook.text).toBe(START);
      expect(figuresOf(estimate)).toEqual(figuresOf(new Estimate(START)));
    }),
    { numRuns: RUNS },
  );
}, 120_000);

test('a size in a column of lengths is asked about, and all that stands after it is worked', () => {
  const { cells, tables } = figuresOf(
    new Estimate(START.replace('| 12 ft     |', '| 2x8       |')),
  );
  const volumes = tables[0]?.rows.map((row) => row[3]?.error?.code ?? row[3]?.shown);
  expect(volumes).toEqual(['which-dimension', '9 cubic feet', null]);
  expect(cells.find(({ name }) => name === 'Price')).toMatchObject({
    error: null,
    incomplete: true,
  });
});
