// Totals that stopped a row short, numbers typed over formulas, blanks that turned into zero.
import { describe, expect, test } from 'vitest';
import { cellsOf, opened } from '../published/opened.ts';

describe('PC-15: a line that is added joins the total, wherever it is put', () => {
  const text =
    '# Quote\n## Work\n' +
    [1200, 850, 430].map((sum, n) => `- Line ${n + 1}: $${sum}\n  - cost: material\n`).join('') +
    '- Whole: total cost of this part\n';

  test.each([
    ['at the end', null],
    ['in the middle', 'Line 1'],
    ['below the total', 'Whole'],
  ])('%s', (_where, after) => {
    const notebook = opened(text);
    const { estimate } = notebook;
    const work = estimate.notebook.parts.find((p) => p.name === 'Work')?.key ?? '';
    expect(estimate.costs().total).toMatchObject({ lines: 3, direct: '2480.00' });
    estimate.addCell(work, after === null ? null : notebook.cell(after).id, 'Late line', '$675');
    estimate.setRemark(notebook.cell('Late line').id, 'cost', 'material');
    expect(estimate.costs().total).toMatchObject({ lines: 4, direct: '3155.00' });
    expect(estimate.costs().parts.find((p) => p.part === 'Work')).toMatchObject({
      lines: 4,
      material: '3155.00',
    });
    expect(notebook.shown('Whole')).toBe('$3,155.00');
  });
});

describe('PC-17: a number typed over a formula', () => {
  const text =
    '# Quote\n## Work\n- Board price: $6.20 per board\n  - from: invented\n' +
    '- Material: 40 boards at board price\n  - cost: material\n  - from: counted off the drawing\n';

  test('it stands beside the formula, is listed, and goes away again', () => {
    const notebook = opened(text);
    const { estimate } = notebook;
    const material = notebook.cell('Material').id;
    expect(notebook.shown('Material')).toBe('$248.00');

    estimate.setByHand(material, '$250', 'rounded for the client, 2026-03-03');
    expect(notebook.shown('Material')).toBe('$250.00');
    expect(notebook.cell('Material').formula).toBe('40 boards at board price');
    expect(estimate.findings().filter((f) => f.cell === material)).not.toEqual([]);
    expect(estimate.costs().total.direct).toBe('250.00');

    estimate.setFormula(notebook.cell('Board price').id, '$7.00 per board');
    expect(notebook.shown('Material')).toBe('$250.00');
    const { worked } = notebook.state('Material');
    expect(worked.kind === 'value' && String(worked.value)).toBe('280');

    estimate.setByHand(material, null, null);
    expect(notebook.shown('Material')).toBe('$280.00');
    expect(estimate.findings().filter((f) => f.cell === material)).toEqual([]);
  });
});

describe('PC-19: a blank is not zero', () => {
  const text =
    '# Quote\n## Work\n- Hours: ? hours\n- Cost: $1,200\n  - cost: labour\n' +
    '- Hour cost: cost divided by hours\n- Extra: $?\n  - cost: material\n' +
    '- So far: total cost of this part\n- Dear: hour cost is more than $60 per hour\n';

  test('what needs it waits for it by name', () => {
    const notebook = opened(text);
    expect(notebook.shown('Hour cost')).toBe('waits for Hours');
    expect(notebook.estimate.shown(notebook.cell('Hour cost').id)).toBe(null);
    expect(notebook.shown('Dear')).toBe('waits for Hours');
    expect(notebook.estimate.findings().map((f) => f.cell)).toContain(notebook.cell('Hours').id);
  });

  test('a total leaves it out and says so', () => {
    const notebook = opened(text);
    expect(notebook.shown('So far')).toMatch(/^\$1,200\.00 so far/);
    expect(notebook.estimate.costs().total.incomplete).toEqual([notebook.cell('Extra').id]);
  });

  test('it is worked as soon as it is known', () => {
    const notebook = opened(text);
    notebook.estimate.setFormula(notebook.cell('Hours').id, '24 hours');
    expect(notebook.figure('Hour cost')).toEqual(['$ per hour', 50]);
    expect(notebook.holds('Dear')).toBe(false);
  });

  test('hours that are truly none are a fault, not a price', () => {
    const notebook = opened(text);
    notebook.estimate.setFormula(notebook.cell('Hours').id, '0 hours');
    expect(notebook.state('Hour cost').outcome.kind).toBe('fault');
    expect(cellsOf(notebook.estimate).length).toBe(6);
  });
});
