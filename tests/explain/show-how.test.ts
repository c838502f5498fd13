// Showing how: one cell a step, from the givens up to the result, and what each step says.
import { describe, expect, it, test } from 'vitest';
import {
  shownStep,
  stepText,
  stepsBefore,
  stepsLeft,
  stepsUpTo,
} from '../../src/explain/show-how.ts';
import type { CellId } from '../../src/language/tree.ts';
import { opened } from '../published/opened.ts';
import { templateFiles, templateText } from '../templates/texts.ts';
import { type Explained, landing, notebook } from './kestrel.ts';

const SLAB = landing(
  'Slab length: 12 ft\n  - from: measured on site',
  'Slab width: 4 ft\n  - from: measured on site',
  'Thickness: 4 in\n  - from: chosen',
  'Bag yield: 0.45 cubic feet per bag\n  - from: bag label',
  'Waste: 10%\n  - from: rule of thumb',
  'Bag price: $6.48 per bag',
  'Slab area: slab length by slab width',
  'Slab volume: slab area by thickness',
  'Bags: slab volume plus waste, divided by bag yield, rounded up\n  - caution: Lift with two people.',
  'Concrete: bags at bag price\n  - cost: material',
  'Seal: slab area at $0.90 per sq ft',
  'Both: concrete plus seal',
);

function below(on: Explained, name: string): ReadonlySet<CellId> {
  return new Set(on.estimate.reach([on.idOf(name)], 'down').filter((id) => id >= 0));
}

function named(on: Explained, cells: readonly CellId[]): readonly string[] {
  return cells.map((id) => on.estimate.state(id).input.name);
}

describe('the steps up to a number', () => {
  test('go from what is worked from givens alone up to it', () => {
    expect(named(SLAB, stepsUpTo(SLAB.estimate, SLAB.idOf('Concrete')))).toEqual([
      'Slab area',
      'Slab volume',
      'Bags',
      'Concrete',
    ]);
  });

  test('name a cell once that is used twice, before both', () => {
    expect(named(SLAB, stepsUpTo(SLAB.estimate, SLAB.idOf('Both')))).toEqual([
      'Slab area',
      'Slab volume',
      'Bags',
      'Concrete',
      'Seal',
      'Both',
    ]);
  });

  test('are the given itself where it is one', () => {
    expect(named(SLAB, stepsUpTo(SLAB.estimate, SLAB.idOf('Waste')))).toEqual(['Waste']);
  });

  test('end with a cell of a circle, and do not run around in it', () => {
    const circle = landing('A: b plus 1', 'B: a plus 1');
    expect(named(circle, stepsUpTo(circle.estimate, circle.idOf('A')))).toContain('A');
  });

  test('pass over the cells of tables, which stand in the step that asks them', () => {
    const bays = notebook(
      '# K\n\n## P\n\n- Thick: 4 in\n- Depth: thick plus 2 in\n- Bays:\n\n  | bay | length | volume: length by 4 ft by depth |\n  |---|---|---|\n  | a | 6 ft | |\n  | b | 5 ft | |\n\n- All: total of volume in bays\n',
    );
    const steps = stepsUpTo(bays.estimate, bays.idOf('All'));
    expect(named(bays, steps)).toEqual(['Depth', 'All']);
    const all = shownStep(bays.estimate, bays.idOf('All'), below(bays, 'All'));
    expect(all.putIn.map(({ kind, name }) => [kind, name])).toEqual([
      ['row', 'Bays: a: volume'],
      ['row', 'Bays: b: volume'],
    ]);
  });

  test('say of a cell that a row works how, and not where its table was measured', () => {
    const bays = notebook(
      '# K\n\n## P\n\n- Bays:\n\n  | bay | length | width | area: length by width | edge: (length plus width) times 2 |\n  |---|---|---|---|---|\n  | a | 6 ft | 4 ft | | |\n  | b | 5 ft | 3 ft 6 in | | |\n\n  - from: measured with string lines\n- All: total of area in bays\n- Edges: total of edge in bays\n- Lengths: total of length in bays\n',
    );
    const sources = (name: string): readonly (string | null)[] =>
      shownStep(bays.estimate, bays.idOf(name), below(bays, name)).putIn.map((put) => put.source);
    expect(sources('All')).toEqual([
      'length by width, 6 ft × 4 ft = 24 sq ft',
      'length by width, 5 ft × 3 ft 6 in = 17.5 sq ft',
    ]);
    expect(sources('Edges')).toEqual([
      '(length plus width) times 2',
      '(length plus width) times 2',
    ]);
    expect(sources('Lengths')).toEqual([
      'measured with string lines',
      'measured with string lines',
    ]);
  });

  test('stand so far before the result as they are met first', () => {
    const order = stepsUpTo(SLAB.estimate, SLAB.idOf('Both'));
    expect(stepsBefore(SLAB.estimate, order).map((layer) => named(SLAB, layer))).toEqual([
      ['Both'],
      ['Concrete', 'Seal'],
      ['Bags', 'Slab area'],
      ['Slab volume'],
    ]);
  });

  test('leave out what is known and what only leads up to it', () => {
    const order = stepsUpTo(SLAB.estimate, SLAB.idOf('Both'));
    const left = (...known: readonly string[]): readonly string[] =>
      named(SLAB, stepsLeft(SLAB.estimate, order, new Set(known.map((name) => SLAB.idOf(name)))));
    expect(left()).toHaveLength(6);
    expect(left('Slab volume')).toEqual(['Slab area', 'Bags', 'Concrete', 'Seal', 'Both']);
    expect(left('Concrete', 'Seal')).toEqual(['Both']);
    expect(left('Waste')).toHaveLength(6);
    expect(left('Both')).toEqual(['Both']);
  });
});

describe('a step', () => {
  const bags = shownStep(SLAB.estimate, SLAB.idOf('Bags'), below(SLAB, 'Bags'));

  it('says the formula, and what goes in with where it comes from, as they are met in it', () => {
    expect(bags.sentence.map(({ text }) => text).join('')).toBe(
      '(slab volume plus waste) divided by bag yield, rounded up',
    );
    expect(bags.putIn.map(({ name, result, source }) => [name, result, source])).toEqual([
      ['Slab volume', '16 cubic feet', null],
      ['Waste', '10%', 'rule of thumb'],
      ['Bag yield', '0.45 cubic feet per bag', 'bag label'],
    ]);
  });

  it('works from the inside out, with units that cancel struck out', () => {
    expect(bags.lines.map(({ pieces }) => pieces.map(({ text }) => text).join(''))).toEqual([
      '16 cubic feet + 10% (1.6 cubic feet) = 17.6 cubic feet',
      '17.6 cubic feet ÷ 0.45 cubic feet per bag = 39.11 bags',
      '39.11 bags → 40 bags',
    ]);
    expect(bags.lines[1]?.pieces.filter(({ struck }) => struck)).toHaveLength(2);
  });

  it('has its caution, and reads as a text', () => {
    expect(bags.caution).toBe('Lift with two people.');
    expect(stepText(bags)).toMatch(
      /^Bags: \(slab volume plus waste\) .* Waste 10%, rule of thumb\. .* Bags is 40 bags\. Caution: Lift with two people\.$/,
    );
  });

  it('has the caution of a check that holds for where it does not', () => {
    const on = landing(
      'Rise: 7 in',
      'Flat: rise is at most 7 3/4 in\n  - caution: Too steep.',
      'Steep: rise is at most 6 in\n  - caution: Too steep.',
    );
    const told = (name: string) => stepText(shownStep(on.estimate, on.idOf(name), below(on, name)));
    expect(told('Flat')).toContain('Where it does not hold: Too steep.');
    expect(told('Steep')).toContain('Caution: Too steep.');
  });

  it('tells what is worked in brackets before what uses it', () => {
    const on = landing(
      'L: 16 ft',
      'J: 13',
      'W: 14 ft',
      'Cost: (l in 10 ft pieces at $18 per piece) plus ((j times w, in 65 ft rolls) at $19 per roll)',
    );
    const step = shownStep(on.estimate, on.idOf('Cost'), below(on, 'Cost'));
    const lines = step.lines.map(({ pieces }) => pieces.map(({ text }) => text).join(''));
    const place = (start: string): number => lines.findIndex((line) => line.startsWith(start));
    expect(place('182 ft ÷ 65 ft')).toBeGreaterThanOrEqual(0);
    expect(place('182 ft ÷ 65 ft')).toBeLessThan(place('2.8 rolls →'));
    expect(place('2.8 rolls →')).toBeLessThan(place('3 rolls ×'));
    expect(place('$36.00 +')).toBe(lines.length - 1);
  });

  it('says a long formula in full, and what is worked before it as worked above', () => {
    const names = 'abcdefghijklmnopq'.split('').map((letter) => `Side ${letter}`);
    const long = names.map((name) => `(${name} times 2)`).join(' plus ');
    const on = landing(...names.map((name) => `${name}: 2 ft`), `All: 99 ft minus (${long})`);
    const step = shownStep(on.estimate, on.idOf('All'), below(on, 'All'));
    expect(step.sentence.map(({ text }) => text).join('')).toContain('side q times 2');
    expect(step.sentence.filter(({ cell }) => cell !== null)).toHaveLength(names.length);
    expect(step.lines.at(-1)?.words).toContain('what is worked above');
    expect(step.lines.map(({ words }) => words).join()).not.toContain('below');
  });

  it('tells a term that is met twice once, before all that uses it', () => {
    const on = landing('A: 3 ft', 'B: 4 ft', 'C: 2', 'All: ((a by b) divided by c) plus (a by b)');
    const step = shownStep(on.estimate, on.idOf('All'), below(on, 'All'));
    expect(step.lines.map(({ pieces }) => pieces.map(({ text }) => text).join(''))).toEqual([
      '3 ft × 4 ft = 12 sq ft',
      '12 sq ft ÷ 2 = 6 sq ft',
      '6 sq ft + 12 sq ft = 18 sq ft',
    ]);
  });

  it('of a cell in a row is its own formula', () => {
    const on = notebook(
      '# K\n\n## P\n\n- Thick: 4 in\n- Bays:\n\n  | bay | length | volume: length by 4 ft by thick |\n  |---|---|---|\n  | a | 6 ft | |\n',
    );
    const id = on.estimate.rows(on.idOf('Bays'))?.[0]?.[2] ?? 0;
    expect(stepsUpTo(on.estimate, id)).toEqual([id]);
    const step = shownStep(on.estimate, id, new Set());
    expect(step).toMatchObject({ kind: 'worked', result: '8 cubic feet' });
    expect(step.putIn.map(({ name }) => name)).toContain('Thick');
  });

  it('that is given says so, where from, and nothing else', () => {
    const waste = shownStep(SLAB.estimate, SLAB.idOf('Waste'), new Set());
    expect(waste).toMatchObject({
      kind: 'given',
      result: '10%',
      source: 'rule of thumb',
      lines: [],
    });
  });
});

describe.each(templateFiles)('every cell of %s', (file) => {
  test('is shown after all that goes into it, and its last line comes to its result', () => {
    const { estimate } = opened(templateText(file));
    const cells = estimate.notebook.parts.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === 'cell' && !block.cell.table ? [block.cell] : [])),
    );
    for (const { id, name } of cells) {
      const state = estimate.state(id);
      if (state.kind === 'given') continue;
      const known = new Set(estimate.reach([id], 'down').filter((one) => one >= 0));
      const order = stepsUpTo(estimate, id);
      expect(order.at(-1)).toBe(id);
      const before = new Set(order);
      const step = shownStep(estimate, id, known);
      const missing = step.putIn.filter((each) => each.kind === 'worked' && !before.has(each.cell));
      expect({ name, missing }).toEqual({ name, missing: [] });
      const last = step.lines.at(-1);
      const ends = [last?.result, last?.pieces.map(({ text }) => text).join('')];
      if (state.outcome.kind === 'value') {
        const comes = ends.some((end) => end?.endsWith(step.result));
        expect({ name, step: step.lines, comes }).toEqual({ name, step: step.lines, comes: true });
      }
    }
  });
});
