// A range never leaks: whatever names a ranged given, in any phrase of the language, comes to what it comes to with the
// plain amount, and says so in the same words.
import fs from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CellId } from '../../src/language/tree.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { worked } from '../language/worked.ts';
import { cellNamed, cellsIn } from '../notebook/cells.ts';
import { templateFiles, templateText } from '../templates/texts.ts';

function estimate(...lines: readonly string[]): Estimate {
  return new Estimate(
    `# Kestrel Court\n\n## Landing\n\n${lines.map((l) => `- ${l}`).join('\n')}\n`,
  );
}

/** All that can be seen of the cells of a notebook and of the rows of its tables, but what its givens say of themselves. */
function seen(e: Estimate): unknown {
  const one = (id: CellId): unknown => {
    const { outcome, holds, reading, kind, input } = e.state(id);
    if (kind === 'given' && outcome.kind !== 'value') return [input.name, outcome.kind];
    if (kind === 'given') return [input.name, outcome, e.shown(id)];
    const { sentence, notes, problems } = reading;
    return [input.name, outcome, holds, sentence, notes, problems, e.shown(id)];
  };
  const cells = cellsIn(e.notebook).map(({ id }) => [one(id), (e.rows(id) ?? []).flat().map(one)]);
  return [cells, e.costs()];
}

/** A range around this amount with the same plain value; null where it is no amount. */
function around(amount: string): string | null {
  const twice = amount.replace(/\d[\d,]*(?:\.\d+)?/, (n) =>
    String(Number(n.replaceAll(',', '')) * 2),
  );
  const ranges = [twice, amount].map((end) => `${amount}, ${amount} at best, ${end} at worst`);
  return ranges.find((range) => worked(range, []).code === null) ?? null;
}

/** A ranged amount, the same as a plain one, and formulas that name it. */
const FAMILIES = [
  {
    ranges: [
      ['13 hours, 12 at best, 16 at worst', '13 hours'],
      ['12 to 16 hours', '14 hours'],
      ['12-15 hours', '13.5 hours'],
    ],
    formulas: [
      'given at $50 per hour',
      'given plus 3',
      'crew times given',
      'given rounded up to the next 4 hours',
      'given is at least 13 hours',
    ],
  },
  {
    ranges: [
      ['$450, $400 at best, $520 at worst', '$450'],
      ['$400 to $521', '$460.50'],
    ],
    formulas: [
      'given marked up 15%',
      'given for a 20% margin',
      '$1,000 minus given',
      'given divided by 3',
      'total of given, $5 and given',
    ],
  },
  {
    ranges: [
      ['40 sq ft per hour, 50 at best, 30 at worst', '40 sq ft per hour'],
      ['30 to 50 sq ft per hour', '40 sq ft per hour'],
    ],
    formulas: [
      '640 sq ft at given',
      'given times 2',
      'given is more than 35 sq ft per hour',
      '3 hours times given',
    ],
  },
  {
    ranges: [
      ['12 ft, 11 at best, 14 at worst', '12 ft'],
      ['11–14 ft', '12.5 ft'],
      // Written in both units, as the two ends are.
      ['10 in to 1 ft', '0 ft 11 in'],
    ],
    formulas: [
      'joists every 16 in along given',
      'given by 4 ft by 4 in, in cubic yards',
      'given in 16 ft boards',
      '(given) squared',
      'given minus 7 1/2 in',
    ],
  },
  {
    ranges: [
      ['10%, 8 at best, 15 at worst', '10%'],
      ['8 to 10%', '9%'],
    ],
    formulas: [
      '$100 plus given',
      'given of 60 sq ft',
      '$1,000 ÷ (1 − given)',
      '100 bags plus given, rounded up',
    ],
  },
  {
    ranges: [
      ['12 bags, 10 at best, 13 at worst', '12 bags'],
      ['2 to 3 bags', '2.5 bags'],
      ['10 bags to 10 bags', '10 bags'],
    ],
    formulas: [
      'given at $6.48 per bag',
      'given rounded up',
      '600 lb divided by given',
      'given in pallets of 5 bags',
    ],
  },
] as const;

describe('nothing leaks', () => {
  it('replacing a ranged given by its plain value changes no other cell', () => {
    const family = fc
      .constantFrom(...FAMILIES)
      .chain(({ ranges, formulas }) =>
        fc.tuple(
          fc.constantFrom(...ranges),
          fc.array(fc.constantFrom(...formulas), { minLength: 1, maxLength: 4 }),
        ),
      );
    fc.assert(
      fc.property(family, ([[range, plain], formulas]) => {
        const rest = ['Crew: 3 people', ...formulas.map((f, i) => `Cell ${'abcd'[i]}: ${f}`)];
        const ranged = estimate(`Given: ${range}`, ...rest);
        expect(seen(ranged)).toEqual(seen(estimate(`Given: ${plain}`, ...rest)));
        // And so does an edit from the one to the other.
        ranged.setFormula(cellNamed(ranged.notebook, 'Given').id, plain);
        expect(seen(ranged)).toEqual(seen(estimate(`Given: ${plain}`, ...rest)));
      }),
      { numRuns: 150 },
    );
  });

  it('the families are all worked', () => {
    for (const { ranges, formulas } of FAMILIES) {
      for (const [range] of ranges) {
        for (const formula of formulas) {
          const e = estimate(`Given: ${range}`, 'Crew: 3 people', `Answer: ${formula}`);
          const { outcome } = e.state(cellNamed(e.notebook, 'Answer').id);
          expect(outcome.kind, `${range} in ${formula}`).toBe('value');
        }
      }
    }
  });

  const folder = path.join(import.meta.dirname, '../language/conformance');
  it.each(fs.readdirSync(folder))('in the lines of %s', (file) => {
    const text = fs.readFileSync(path.join(folder, file), 'utf8').split('\n');
    const givens = text.filter((l) => l.startsWith('- ')).map((l) => l.slice(2));
    let ranged = 0;
    const inRanges = givens.map((line) => {
      const [, name = '', amount = ''] = /^([^:]+): (.*)$/.exec(line) ?? [];
      const range = around(amount);
      if (range === null) return line;
      ranged++;
      return `${name}: ${range}`;
    });
    expect(ranged).toBeGreaterThan(givens.length / 2);
    const formulas = text.flatMap((l) => /^\| `(.+)` \| .+ \|$/.exec(l)?.[1] ?? []);
    for (const formula of formulas) {
      expect(worked(formula, inRanges), formula).toEqual(worked(formula, givens));
    }
  });

  it.each(templateFiles)(
    'in %s, which with the guide meets everything that can be said',
    (file) => {
      const text = templateText(file);
      const e = new Estimate(text);
      let ranged = 0;
      for (const { id, formula } of cellsIn(e.notebook)) {
        const { kind, input, outcome } = e.state(id);
        const isAmount = kind === 'given' && outcome.kind === 'value' && input.byHand === null;
        const range = isAmount && !e.rows(id) ? around(formula) : null;
        if (range === null) continue;
        e.setFormula(id, range);
        if (e.state(id).range) ranged++;
      }
      expect(ranged).toBeGreaterThan(4);
      const plain = seen(new Estimate(text));
      expect(seen(e)).toEqual(plain);
      // And from the text that the ranges made.
      expect(seen(new Estimate(e.notebook.text))).toEqual(plain);
    },
  );
});
