// A template can be put into any notebook, twice, and works there as it does alone.
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { cellsOf } from '../published/opened.ts';
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
    const others = estimate.notebook.parts.map((p) => p.name).filter((name) => name !== 'Summary');
    const before = others.map((name) => values(estimate, name));
    const own = others.includes(part) ? `${part} 2` : part;
    expect(estimate.insertTemplate(text)).toHaveProperty('change');
    expect(estimate.notebook.parts.at(-1)?.name).toBe(own);
    expect(values(estimate, own)).toEqual(values(alone, part));
    expect(others.map((name) => values(estimate, name))).toEqual(before);
  });

  test('a second copy has a name of its own and changes apart from the first', () => {
    const estimate = new Estimate(text);
    estimate.insertTemplate(text);
    expect(estimate.notebook.parts.at(-1)?.name).toBe(`${part} 2`);
    expect(values(estimate, `${part} 2`)).toEqual(values(estimate, part));
    expect(estimate.findings()).toEqual([]);
    const given = cellsOf(estimate).find((c) => c.part === `${part} 2` && c.cell.name === 'Hour rate');
    estimate.setFormula(given?.cell.id ?? 0, '$90 per hour');
    const [first, second] = estimate.costs().parts.filter((row) => row.lines > 0);
    expect(Number(second?.labour)).toBeGreaterThan(Number(first?.labour));
    expect(values(estimate, part)).toEqual(values(alone, part));
  });
});
