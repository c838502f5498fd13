// A template can be put into any notebook, twice, and works there as it does alone.
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { cellsOf } from '../published/opened.ts';
import { remarkOf } from './remarks.ts';
import { INDEX, templateText } from './texts.ts';

const values = (estimate: Estimate, part: string) =>
  cellsOf(estimate)
    .filter((c) => c.part === part)
    .map(({ cell }) => [cell.name, estimate.shown(cell.id)?.text ?? null]);

describe.each(INDEX.parts)('%s', (file) => {
  const text = templateText(file);
  const alone = new Estimate(text);
  const part = alone.notebook.parts.at(-1)?.name ?? '';

  test.each([
    ['an empty notebook', '# A new job\n'],
    ['the demo', templateText(INDEX.demo)],
  ])('in %s', (_where, host) => {
    const estimate = new Estimate(host);
    // The summary adds what every part costs: it is the one part that has to change.
    const names = estimate.notebook.parts.map((p) => p.name);
    const others = names.filter((name) => name !== 'Summary');
    const before = others.map((name) => values(estimate, name));
    const own = names.includes(part) ? `${part} 2` : part;
    expect(estimate.insertTemplate(text)).toHaveProperty('change');
    expect(estimate.notebook.parts.at(-1)?.name).toBe(own);
    expect(nameOnly(estimate, own)).toEqual(nameOnly(alone, part));
    if (!/every part/.test(text)) expect(values(estimate, own)).toEqual(values(alone, part));
    expect(others.map((name) => values(estimate, name))).toEqual(before);
  });

  test('a second copy has a name of its own and changes apart from the first', () => {
    const estimate = new Estimate(text);
    estimate.insertTemplate(text);
    const copy = `${part} 2`;
    expect(estimate.notebook.parts.at(-1)?.name).toBe(copy);
    expect(values(estimate, copy)).toEqual(values(estimate, part));
    const open = cellsOf(alone).filter(({ cell }) => cell.formula === '?').length;
    // Two copies pay a fee twice, and are told so.
    const fees = cellsOf(alone).filter(
      ({ cell }) => remarkOf(cell, 'cost') === 'fee' && !/^(\$0\.00|)$/.test(alone.shown(cell.id)?.text.replace(/ so far.*/, '') ?? ''),
    );
    expect(estimate.findings().map((found) => found.code)).toEqual([
      ...Array.from({ length: open * 2 }, () => 'not-yet-known'),
      ...fees.map(() => 'fee-twice'),
    ]);
    const [given, answer] = changeable(estimate, copy);
    estimate.setFormula(given, answer);
    expect(values(estimate, copy)).not.toEqual(values(alone, part));
    expect(values(estimate, part)).toEqual(values(alone, part));
    const labour = (name: string) =>
      Number(estimate.costs().parts.find((row) => row.part === name)?.labour);
    if (answer === DEARER) expect(labour(copy)).toBeGreaterThan(labour(part));
  });
});

const nameOnly = (estimate: Estimate, part: string) => values(estimate, part).map(([name]) => name);

const DEARER = '$90 per hour';

/** The hour rate where there is one, else the first given with limits, else the first that has no answer yet. */
function changeable(estimate: Estimate, part: string): readonly [cell: number, answer: string] {
  const cells = cellsOf(estimate).filter((c) => c.part === part);
  const rate = cells.find(({ cell }) => cell.name === 'Hour rate');
  if (rate) return [rate.cell.id, DEARER];
  for (const { cell } of cells) {
    const most = remarkOf(cell, 'sensible')?.split(' up to ')[1];
    if (most !== undefined && most !== cell.formula) return [cell.id, most];
  }
  const open = cells.find(({ cell }) => cell.formula === '?');
  return [open?.cell.id ?? 0, 'included'];
}
