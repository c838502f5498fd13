// What leaves the house: a copy that holds nothing but what it shows.
import { describe, expect, test } from 'vitest';
import { CLIENT_LEVELS, type ClientLevel, clientCopy } from '../../src/client/client-copy.ts';
import { clientSheet } from '../../src/client/client-sheet.ts';
import { clientText } from '../../src/client/client-text.ts';
import { cellsOf } from '../../src/notebook/lines.ts';
import { Chance } from '../properties/chance.ts';
import { opened } from '../published/opened.ts';
import { INDEX, templateText } from '../templates/texts.ts';
import { toCents } from '../templates/remarks.ts';

const KINDS = ['material', 'labour', 'equipment', 'subcontract', 'fee'] as const;

function handed({ estimate }: ReturnType<typeof opened>, level: ClientLevel) {
  return clientCopy(estimate, level);
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
    const own = parts.filter((p) => p.lines > 0).length;
    expect(lines.map((each) => each.length)).toEqual([0, own, own, 2]);
    for (const [i, copy] of views.entries()) {
      if (copy.kind !== 'copy') throw new Error('no copy');
      expect(copy.price).toBe(total.price);
      const sum = (lines[i] ?? []).reduce((all, { amount }) => all + toCents(amount), 0n);
      expect(sum).toBe(i === 0 ? 0n : toCents(total.price));
    }
  });

  test('no quantity, rate or cost is in it: only names of parts, prices, and what was written for the client', () => {
    const { notebook: text } = notebook.estimate;
    const { total, parts } = notebook.estimate.costs();
    const inside = [total, ...parts].flatMap((row) => [
      row.direct,
      ...KINDS.map((kind) => row[kind]),
    ]);
    const cells = text.parts.flatMap(cellsOf);
    const forClient = new Set(
      cells.flatMap(({ remarks }) => remarks.flatMap((r) => (r.kind === 'client' ? [r.text] : []))),
    );
    expect(forClient.size).toBeGreaterThan(8);
    for (const level of CLIENT_LEVELS) {
      const handing = clientSheet(notebook.estimate, level, '2026-03-12');
      if (handing.kind !== 'sheet') throw new Error(handing.message);
      const { copy, payments, until } = handing.sheet;
      let out = clientText(handing.sheet);
      for (const told of forClient) out = out.replaceAll(told, '');
      const amounts = (out.match(/\$[\d,.]*\d/g) ?? []).map((n) => n.replace(/[$,]/g, ''));
      // Every amount in it is the price, a share of it or a payment; every other number a day or the call to 811.
      expect(amounts.toSorted()).toEqual(
        [...copy.lines, ...payments, { amount: copy.price }].map((l) => l.amount).toSorted(),
      );
      expect(amounts.filter((n) => inside.includes(n) && n !== '0.00')).toEqual([]);
      const others = out.replace(/\$[\d,.]*\d/g, '').match(/\d[\d-]*/g) ?? [];
      expect(others.filter((n) => n !== until && n !== '811')).toEqual([]);
      expect(out).not.toMatch(
        /\b(?:per|hours?|boards?|bags?|sq|ft|each|margin|markup|overhead|wage|profit|quoted|invented)\b/i,
      );
      // No name of a cell but of the payments; one that a part has too is the part's.
      const shown = new Set(['Price', ...[...payments, ...copy.lines].map(({ name }) => name)]);
      const lines = out.split('\n').map((line) => line.replace(/ {2,}\$.*/, '').trim());
      expect(cells.filter(({ name }) => lines.includes(name) && !shown.has(name))).toEqual([]);
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
      for (const level of ['parts', 'described', 'work'] as const) {
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
