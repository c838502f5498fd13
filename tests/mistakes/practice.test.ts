// Numbers to practise on: fresh ones inside the limits, the same for the same seed, and nothing at fault.
import { describe, expect, test, vi } from 'vitest';
import { practiceOf } from '../../src/mistakes/practice.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { outsideLimits, readLimits } from '../../src/notebook/sensible.ts';
import { Dec } from '../../src/quantity/decimal.ts';
import { cellsOf, opened } from '../published/opened.ts';
import { remarkOf } from '../templates/remarks.ts';
import { templateFiles, templateText } from '../templates/texts.ts';

// Many notebooks are opened: slow only where many are at work on one machine.
vi.setConfig({ testTimeout: 120_000 });

const SLAB = `# Kestrel Court

## Slab

- Length: 12 ft
  - sensible: 6 ft up to 20 ft
- Thickness: 4 in
  - sensible: 3 1/2 in up to 8 in
- Waste: 10%
- Finish: broom
  - choices: broom, trowel, salt
- Sealed: no
- Posts: 3 posts
  - sensible: 2 posts up to 6 posts
- Bag price: $6.48 per bag
- Yield: 0.45 cubic feet per bag
- Volume: length by 4 ft by thickness, plus waste
- Bags: volume divided by yield, rounded up
- Extra: 2 bags where finish is trowel, otherwise 0 bags
- More: 1 bag where sealed, otherwise 0 bags
- Concrete: (bags plus extra plus more plus (posts times (1 bag per post))) at bag price
- Fixed: 3 ft
`;

const idOf = (estimate: Estimate, name: string): number => {
  const found = cellsOf(estimate).find(({ cell }) => cell.name === name);
  if (!found) throw new Error(`no cell is called ${name}`);
  return found.cell.id;
};

function made(name: string, seed: number, text = SLAB) {
  const from = new Estimate(text);
  const practice = practiceOf(from.notebook, idOf(from, name), seed);
  if (!practice) throw new Error(`nothing to practise in ${name}`);
  return { from, practice };
}

describe('a practice', () => {
  test('of the same seed has the same numbers, of another others', () => {
    const numbers = (seed: number) => made('Concrete', seed).practice.fresh;
    expect(numbers(7)).toEqual(numbers(7));
    expect(numbers(8)).not.toEqual(numbers(7));
  });

  test('changes nothing of the notebook that it is made from', () => {
    const { from, practice } = made('Concrete', 7);
    expect(from.notebook.text).toBe(SLAB);
    expect(from.canUndo()).toBeNull();
    expect(practice.estimate.notebook.text).not.toBe(SLAB);
  });

  test('writes as a builder does: fractions of an inch, whole things whole, prices to the cent', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const fresh = new Map(
        made('Concrete', seed).practice.fresh.map((one) => [one.name, one.now]),
      );
      const written = (name: string): string => fresh.get(name) ?? '';
      expect(written('Length')).toMatch(/^(\d+ ft( \d+( 1\/2)? in)?)?$/);
      expect(written('Thickness')).toMatch(/^([3-8]( [13]\/[24])? in)?$/);
      expect(written('Waste')).toMatch(/^(\d+%)?$/);
      expect(written('Posts')).toMatch(/^([2-6] posts)?$/);
      expect(written('Bag price')).toMatch(/^(\$\d\.\d\d per bag)?$/);
      expect(['', 'broom', 'trowel', 'salt']).toContain(written('Finish'));
      expect(['', 'yes', 'no']).toContain(written('Sealed'));
      expect(fresh.has('Fixed')).toBe(false);
    }
  });

  test('reaches every choice and most of what is sensible in the end', () => {
    const met = new Map<string, Set<string>>();
    for (let seed = 1; seed <= 60; seed++) {
      for (const { name, now } of made('Concrete', seed).practice.fresh) {
        met.set(name, (met.get(name) ?? new Set()).add(now));
      }
    }
    expect([...(met.get('Finish') ?? [])].sort()).toEqual(['salt', 'trowel']);
    expect(met.get('Posts')?.size).toBeGreaterThan(1);
    expect(met.get('Length')?.size).toBeGreaterThan(20);
  });

  test('takes no numbers at which something is at fault or less than nothing', () => {
    const text =
      '# K\n\n## P\n\n- Long: 10 ft\n  - sensible: 1 ft up to 12 ft\n- Off: 9 ft\n  - sensible: 1 ft up to 12 ft\n- Rest: long minus off\n- Each: 24 ft divided by rest\n';
    for (let seed = 1; seed <= 60; seed++) {
      const { practice } = made('Each', seed, text);
      const { outcome } = practice.estimate.state(practice.cell);
      expect(outcome.kind).toBe('value');
      expect(outcome.kind === 'value' && outcome.value instanceof Dec && outcome.value.gt(0)).toBe(
        true,
      );
    }
  });

  test('keeps limits that hang on another number', () => {
    const text =
      '# K\n\n## P\n\n- Whole: 10 ft\n- Half: 4 ft\n  - sensible: 1 ft up to whole\n- Rest: whole minus half\n';
    for (let seed = 1; seed <= 40; seed++) {
      const { practice } = made('Rest', seed, text);
      expect(practice.estimate.findings().map(({ code }) => code)).not.toContain(
        'outside-sensible',
      );
    }
  });

  test('there is none of a given, a text, or what rests on nothing that moves', () => {
    const from = new Estimate(`${SLAB}- Twice: 2 times 3 ft\n- Said: finish\n`);
    for (const name of ['Finish', 'Said', 'Twice', 'Length']) {
      expect(practiceOf(from.notebook, idOf(from, name), 1)).toBeNull();
    }
  });
});

const EACH = Number(process.env['PRACTICE_EACH'] ?? 9);

describe.each(templateFiles)('a practice out of %s', (file) => {
  test('has every number inside its limits, and a result', () => {
    const { estimate } = opened(templateText(file));
    const results = cellsOf(estimate).filter(({ cell }) => {
      const { kind, outcome } = estimate.state(cell.id);
      return kind === 'worked' && outcome.kind === 'value' && outcome.value instanceof Dec;
    });
    let many = 0;
    for (const [place, { cell }] of results.entries()) {
      // Some of each part are enough; a long run takes them all.
      if (place % EACH !== 0 && place !== results.length - 1) continue;
      const seed = place + 1;
      const practice = practiceOf(estimate.notebook, cell.id, seed);
      if (!practice) continue;
      many++;
      const on = practice.estimate;
      const what = { file, result: cell.name, seed, fresh: practice.fresh };
      expect({ ...what, kind: on.state(practice.cell).outcome.kind }).toEqual({
        ...what,
        kind: 'value',
      });
      const outside = cellsOf(on).flatMap(({ cell: one }) => {
        const text = remarkOf(one, 'sensible');
        const isFresh = practice.fresh.some((each) => each.cell === one.id);
        const limits =
          text !== null && isFresh ? readLimits(text, (t) => on.draft(one.id, t)) : null;
        const where = limits && outsideLimits(on.state(one.id), limits);
        return where === null ? [] : [`${one.name} ${one.formula}: ${where}`];
      });
      expect({ ...what, outside }).toEqual({ ...what, outside: [] });
    }
    // There every given is still to come, and nothing can be moved.
    expect(many > 0).toBe(file !== 'often-forgotten.md');
  });
});
