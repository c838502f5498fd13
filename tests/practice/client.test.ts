// What leaves the house: a copy that holds nothing but what it shows.
import { describe, expect, test } from 'vitest';
import {
  CLIENT_LEVELS,
  type ClientLevel,
  clientCopy,
  clientText,
} from '../../src/notebook/client-copy.ts';
import { Chance } from '../properties/chance.ts';
import { opened } from '../published/opened.ts';
import { INDEX, templateText } from '../templates/texts.ts';
import { toCents } from '../templates/remarks.ts';

const KINDS = ['material', 'labour', 'equipment', 'subcontract', 'fee'] as const;

function handed(notebook: ReturnType<typeof opened>, level: ClientLevel) {
  const { estimate } = notebook;
  return clientCopy(
    {
      title: estimate.notebook.title,
      costs: () => estimate.costs(),
      state: (id) => estimate.state(id),
    },
    level,
  );
}

describe('PC-27: the client asks for labour and material apart', () => {
  const notebook = opened(templateText(INDEX.demo));
  const { id, formula } = notebook.cell('Handrail');

  test('and gets nothing while a line of the job has no price', () => {
    expect(notebook.estimate.setFormula(id, '$?')).toHaveProperty('change');
    for (const level of CLIENT_LEVELS) {
      const copy = handed(notebook, level);
      expect(copy).toMatchObject({ kind: 'not-yet' });
      expect(copy.kind === 'not-yet' && copy.message).toContain('"Handrail" without a value');
    }
    expect(notebook.estimate.setFormula(id, formula)).toHaveProperty('change');
  });

  test('each view holds its own lines and the price, and adds up to the one inside', () => {
    const { total, parts } = notebook.estimate.costs();
    const views = CLIENT_LEVELS.map((level) => handed(notebook, level));
    const lines = views.map((copy) => (copy.kind === 'copy' ? copy.lines : []));
    expect(lines.map((each) => each.length)).toEqual([
      0,
      parts.filter((p) => p.lines > 0).length,
      2,
    ]);
    for (const [i, copy] of views.entries()) {
      if (copy.kind !== 'copy') throw new Error('no copy');
      expect(copy.price).toBe(total.price);
      const sum = (lines[i] ?? []).reduce((all, { amount }) => all + toCents(amount), 0n);
      expect(sum).toBe(i === 0 ? 0n : toCents(total.price));
    }
  });

  test('no quantity, rate or cost is in it: only names of parts, and prices', () => {
    const { total, parts } = notebook.estimate.costs();
    const inside = [total, ...parts].flatMap((row) => [
      row.direct,
      ...KINDS.map((kind) => row[kind]),
    ]);
    for (const level of CLIENT_LEVELS) {
      const copy = handed(notebook, level);
      if (copy.kind !== 'copy') throw new Error('no copy');
      const text = clientText(copy, '$');
      const amounts = (text.match(/[\d,.]*\d/g) ?? []).map((n) => n.replaceAll(',', ''));
      // Every number in it is the price or a share of it.
      expect(amounts.toSorted()).toEqual(
        [...copy.lines.map((l) => l.amount), copy.price].toSorted(),
      );
      expect(amounts.filter((n) => inside.includes(n) && n !== '0.00')).toEqual([]);
      const words = text.replace(/[$\d,.-]+/g, ' ');
      expect(words).not.toMatch(/\b(?:per|hours?|boards?|bags?|sq|ft|each|margin|overhead)\b/);
      expect(Object.keys(copy)).toEqual(['kind', 'title', 'lines', 'price']);
    }
  });

  test('whatever the lines cost, the cents of each view are the price', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const chance = new Chance(seed);
      const many = chance.whole(1, 7);
      const text = Array.from({ length: many }, (_, i) => {
        const cost = (chance.whole(1, 400_000) / 100).toFixed(2);
        return `## Part ${i + 1}\n- Line: $${cost}\n  - cost: ${chance.of(KINDS)}\n`;
      });
      const own = opened(
        `# Job\n${text.join('')}## Summary\n- Gain: ${chance.whole(0, 60)}% of total cost of every part\n  - price: markup\n`,
      );
      for (const level of ['parts', 'work'] as const) {
        const copy = handed(own, level);
        if (copy.kind !== 'copy') throw new Error(`seed ${seed}: no copy`);
        const sum = copy.lines.reduce((all, { amount }) => all + toCents(amount), 0n);
        expect([seed, level, sum]).toEqual([
          seed,
          level,
          toCents(own.estimate.costs().total.price),
        ]);
      }
    }
  });
});
