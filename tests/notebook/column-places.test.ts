// A column that goes moves the places of those to its right: what the rows work from them moves along.
import { expect, it } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { figuresOf } from '../../src/notebook/figures.ts';
import { cellsOf } from '../../src/notebook/lines.ts';

const JOB = `# Kestrel Court

## Landing

- Length: 4 in
- Slab bays:

  | bay  | length | width | volume: length by width by Landing length | cost: volume at $140 per cubic yard |
  |------|--------|-------|-------------------------------------------|-------------------------------------|
  | pine | 12 ft  | 4 ft  |                                           |                                     |
`;

it('a column of which a cell outside has the name can go, and every row reads on from its own places', () => {
  const estimate = new Estimate(JOB);
  const bays = estimate.notebook.parts.flatMap(cellsOf).find((c) => c.table !== null);
  if (!bays) throw new Error('there is no table');
  const row = (): readonly (string | null)[] =>
    figuresOf(estimate).tables[0]?.rows[0]?.map((cell) => cell.shown) ?? [];
  // 12 ft × 4 ft × 4 in is 16 cubic feet; ÷ 27 × $140.
  expect(row()).toEqual(['pine', '12 ft', '4 ft', '16 cubic feet', '$82.96']);
  estimate.removeColumn(bays.id, 1);
  // 4 in × 4 ft × 4 in is 4/9 cubic feet; ÷ 27 × $140.
  expect(row()).toEqual(['pine', '4 ft', '0.4444 cubic feet', '$2.30']);
  estimate.undo();
  expect(row()).toEqual(['pine', '12 ft', '4 ft', '16 cubic feet', '$82.96']);
});
