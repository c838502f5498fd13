// What the guide does without a page: examples go with all they stand on, lines are put back, prose is told apart.
import { describe, expect, test } from 'vitest';
import type { CellId } from '../../src/language/tree.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { atFirst, exampleText, isChanged, numberNow } from '../../src/ui/guide-notebook.ts';
import { stretchesOfProse } from '../../src/ui/guide-words.ts';
import { allCells } from '../../src/ui/reading-order.ts';
import { INDEX, templateText } from '../templates/texts.ts';

const guide = new Estimate(templateText(INDEX.guide));
const cells = allCells(guide.notebook);
const idOf = (estimate: Estimate, name: string): CellId => {
  const found = allCells(estimate.notebook).find((cell) => cell.name === name);
  if (!found) throw new Error(`no line ${name}`);
  return found.id;
};

describe('an example', () => {
  const shared = cells.filter(
    ({ formula }) => !/whole job|the job|(every|all) parts?/.test(formula),
  );

  test('comes to the same in an empty notebook, whichever it is', () => {
    expect(shared.length).toBeGreaterThan(100);
    for (const cell of shared) {
      const own = new Estimate('# Mine\n');
      expect(own.insertTemplate(exampleText(guide, cell.id)), cell.name).toHaveProperty('change');
      const shown = own.shown(idOf(own, cell.name))?.text;
      expect([cell.name, shown]).toEqual([cell.name, guide.shown(cell.id)?.text]);
    }
  });

  test('brings the lines it stands on and no others, tables among them', () => {
    const names = (name: string): readonly string[] =>
      allCells(new Estimate(exampleText(guide, idOf(guide, name))).notebook).map((c) => c.name);
    expect(names('Slab volume')).toEqual(['Slab length', 'Slab width', 'Thickness', 'Slab volume']);
    expect(names('Wood to cut')).toEqual(['Cuts', 'Wood to cut']);
    expect(names('Both ends')).toEqual(['Both ends']);
  });

  test('keeps its sources and cautions, and leaves what is said to the reader of the guide', () => {
    expect(exampleText(guide, idOf(guide, 'Concrete'))).toContain(
      '  - caution: Wet concrete burns',
    );
    expect(exampleText(guide, idOf(guide, 'Both ends'))).toBe(
      '# From the guide\n\n## Everything you can say\n\n- Both ends: joists every 16 in along 12 ft\n',
    );
  });
});

test('a number of the prose follows the line that came to it, in its own part', () => {
  const estimate = new Estimate(
    '# G\n\n## A\n\n- Bags: 2 bags times 3\n\n## B\n\n- Other: 6 bags\n',
  );
  const first = atFirst(estimate);
  const [part] = allCells(estimate.notebook).map((cell) => cell.part);
  estimate.setFormula(idOf(estimate, 'Bags'), '2 bags times 4');
  expect(numberNow(estimate, first, part ?? '', '6 bags')).toBe('8 bags');
  expect(numberNow(estimate, first, part ?? '', '$1.00')).toBe('$1.00');
});

test.each([
  ['another formula', (e: Estimate, id: CellId) => e.setFormula(id, '3 ft')],
  ['another name', (e: Estimate, id: CellId) => e.rename(id, 'Breadth')],
])('a line with %s is told from what it was', (_, change) => {
  const estimate = new Estimate('# G\n\n## A\n\n- Width: 4 ft\n');
  const first = atFirst(estimate);
  const id = idOf(estimate, 'Width');
  const now = () => allCells(estimate.notebook).find((cell) => cell.id === id);
  expect(isChanged(now()!, first.cells.get(id))).toBe(false);
  change(estimate, id);
  expect(isChanged(now()!, first.cells.get(id))).toBe(true);
});

test('prose is told apart into words to write, places and numbers', () => {
  expect(stretchesOfProse('Say `at` *a price*: **$4.00**.')).toEqual([
    { look: 'plain', text: 'Say ' },
    { look: 'words', text: 'at' },
    { look: 'plain', text: ' ' },
    { look: 'place', text: 'a price' },
    { look: 'plain', text: ': ' },
    { look: 'number', text: '$4.00' },
    { look: 'plain', text: '.' },
  ]);
});
