// Often forgotten: every item has to be answered, in one of three ways, and what has no answer stands in the totals of the job.
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { type Opened, cellsOf, opened } from '../published/opened.ts';
import { remarkOf } from './remarks.ts';
import { templateText } from './texts.ts';
import { openedWith } from './warns.ts';

const FILE = 'often-forgotten.md';
const ANSWERS = ['included', 'not needed', 'by others'] as const;

const items = cellsOf(opened(templateText(FILE)).estimate)
  .filter(({ cell }) => cell.formula === '?')
  .map(({ cell }) => cell.name);

const answered = (answer: (item: string) => string, but: readonly string[] = []) =>
  openedWith(FILE, Object.fromEntries(items.filter((item) => !but.includes(item)).map((item) => [item, answer(item)])));

const lacking = (notebook: Opened) =>
  notebook.estimate.costs().total.incomplete.map((id) => notebook.estimate.state(id).input.name);

describe('the list', () => {
  test('asks for what the trade forgets, each with the same three answers', () => {
    const asked = ['Sales tax', 'Delivery', 'Disposal', 'Permit fees', 'Clean-up', 'Travel', 'Rental', 'Protection', 'Fasteners', 'Utility marking'];
    expect(asked.filter((item) => !items.includes(item))).toEqual([]);
    const notebook = opened(templateText(FILE));
    for (const item of items) {
      expect([item, remarkOf(notebook.cell(item), 'choices')]).toEqual([item, ANSWERS.join(', ')]);
      expect([item, remarkOf(notebook.cell(item), 'note')?.length]).not.toEqual([item, undefined]);
    }
  });

  test('opens without an answer, and the total of the job names every item', () => {
    expect(lacking(opened(templateText(FILE))).toSorted()).toEqual(items.toSorted());
  });

  test.each(ANSWERS)('answered "%s" throughout lacks nothing and costs nothing', (answer) => {
    const notebook = answered(() => answer);
    expect(lacking(notebook)).toEqual([]);
    expect(notebook.estimate.costs().total).toMatchObject({ direct: '0.00', price: '0.00' });
    expect(notebook.figure('Items included')[1]).toBe(answer === 'included' ? items.length : 0);
  });

  test.each(items)('%s alone without an answer is all that the total lacks', (item) => {
    expect(lacking(answered(() => 'not needed', [item]))).toEqual([item]);
  });

  test('takes no other answer', () => {
    const notebook = answered(() => 'included');
    notebook.estimate.setFormula(notebook.cell('Delivery').id, 'maybe');
    expect(notebook.state('Delivery').outcome.kind).toBe('fault');
    expect(notebook.shown('Delivery')).toContain('maybe');
    expect(lacking(notebook)).toContain('Questions open');
  });

  test('counts the items that are included', () => {
    const notebook = answered((item) => (items.indexOf(item) % 2 === 0 ? 'included' : 'by others'));
    expect(notebook.figure('Items included')).toEqual(['', Math.ceil(items.length / 2)]);
  });

  test('never lets the marking of lines be not needed', () => {
    expect(answered(() => 'by others').holds('Marking check')).toBe(true);
    const notebook = answered((item) => (item === 'Utility marking' ? 'not needed' : 'included'));
    expect(notebook.holds('Marking check')).toBe(false);
    const { id } = notebook.cell('Marking check');
    expect(notebook.estimate.findings().find((f) => f.cell === id)?.message).toContain('811');
  });
});

describe('beside a summary', () => {
  const both = () => {
    const estimate = new Estimate(templateText('landing.md'));
    estimate.insertTemplate(templateText('summary.md'));
    const without = estimate.costs().total;
    estimate.insertTemplate(templateText(FILE));
    return { without, notebook: opened(estimate.notebook.text) };
  };

  test('the price stays what it was and says what it lacks', () => {
    const { without, notebook } = both();
    expect(notebook.estimate.costs().total).toMatchObject({ direct: without.direct, price: without.price });
    for (const name of ['Direct cost', 'Price', 'Last payment']) {
      const { outcome } = notebook.state(name);
      expect([name, outcome.kind === 'value' && outcome.leftOut.length]).toEqual([name, items.length]);
    }
  });

  test('work that is named and has no price stands in the price as lacking until it has one', () => {
    const { notebook } = both();
    for (const item of items) notebook.estimate.setFormula(notebook.cell(item).id, 'by others');
    const [, before] = notebook.figure('Price');
    const named = notebook.cell('Named work');
    notebook.estimate.setRowCell(named.id, 0, 0, 'railing at the steps');
    notebook.estimate.setRowCell(named.id, 0, 1, '$?');
    const { outcome } = notebook.state('Named work cost');
    expect(outcome.kind).not.toBe('value');
    expect(lacking(notebook)).not.toEqual([]);
    notebook.estimate.setRowCell(named.id, 0, 1, '$900');
    expect(lacking(notebook)).toEqual([]);
    expect(notebook.figure('Price')[1]).toBeGreaterThan(before + 900);
  });
});
