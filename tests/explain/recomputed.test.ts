// The working of every worked cell of every template, with its own givens and with others: every line re-computes from what is
// printed in it, and what a step comes to is what the line above prints.
// For a long run: WORKING_GIVENS=20 npx vitest run --project unit tests/explain/recomputed.test.ts
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it, test, vi } from 'vitest';
import type { Step } from '../../src/explain/step.ts';
import { workingOf } from '../../src/explain/working.ts';
import { everyCell } from '../../src/moves-it/figures.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { Chance } from '../properties/chance.ts';
import { freshGivens } from './fresh-givens.ts';
import { stepsIn } from './kestrel.ts';
import { type Again, workedAgain } from './lines-again.ts';
import { punched } from './punched.ts';

const GIVENS = Number(process.env['WORKING_GIVENS'] ?? 1);
/** Of a notebook with other givens so many cells are followed down, those that come last among them. */
const FOLLOWED = 40;

// Thousands of lines: slow only where many are at work on one machine.
vi.setConfig({ testTimeout: 120_000 });

const folder = `${import.meta.dirname}/../../templates`;
const files = readdirSync(folder).filter((file) => file.endsWith('.md'));
const textOf = (file: string): string => readFileSync(`${folder}/${file}`, 'utf8');

/** Folded steps opened, all of them. */
function opened(steps: readonly Step[]): readonly Step[] {
  return steps.map((step) => {
    const whole = step.open?.() ?? step;
    return { ...whole, parts: opened(whole.parts) };
  });
}

interface Found {
  readonly wrong: readonly string[];
  readonly kinds: ReadonlyMap<Again['kind'], number>;
}

function followed(estimate: Estimate, cells: readonly number[]): Found {
  const wrong = new Set<string>();
  const kinds = new Map<Again['kind'], number>();
  for (const cell of cells) {
    for (const step of stepsIn(opened(workingOf(estimate, cell).steps))) {
      const again = workedAgain(step);
      kinds.set(again.kind, (kinds.get(again.kind) ?? 0) + 1);
      if (again.wrong !== null) wrong.add(`${estimate.state(cell).input.name}: ${again.wrong}`);
    }
  }
  return { wrong: [...wrong], kinds };
}

const workedCells = (estimate: Estimate): readonly number[] =>
  everyCell(estimate)
    .map(({ cell }) => cell)
    .filter((cell) => estimate.state(cell).kind === 'worked');

describe('every line of every working comes out from what is printed in it', () => {
  test.for(files)('in %s as it comes', (file) => {
    const estimate = new Estimate(textOf(file));
    const { wrong, kinds } = followed(estimate, workedCells(estimate));
    expect(wrong.join('\n')).toBe('');
    const lines = [...kinds].filter(([kind]) => kind !== 'none' && kind !== 'open');
    expect(lines.reduce((so, [, many]) => so + many, 0)).toBeGreaterThan(0);
  });

  test.for(files)('in %s with other givens', (file) => {
    for (let seed = 1; seed <= GIVENS; seed++) {
      const estimate = new Estimate(textOf(file));
      const chance = new Chance(seed);
      freshGivens(estimate, chance);
      const all = workedCells(estimate);
      const cells = all.filter(
        (_, at) => at >= all.length - FOLLOWED / 2 || chance.in(FOLLOWED / 2 / all.length),
      );
      const { wrong } = followed(estimate, cells);
      expect({ seed, wrong }).toEqual({ seed, wrong: [] });
    }
  });
});

describe('punched in', () => {
  it.each([
    ['12 ft × 4 ft × 4 in', 16 * 1728, 'length 3'],
    ['16 cubic feet ÷ 27 cubic feet per cubic yard', (16 / 27) * 46656, 'length 3'],
    ['40 bags × $6.48 per bag', 259.2, 'money 1'],
    ['120 min ÷ 60 min per hour × $45.00 per hour', 90, 'money 1'],
    ['9 ft 4 1/2 in', 112.5, 'length 1'],
    ['3 h 20 min × $45 per hour', 150, 'money 1'],
    ['√(3 ft × 3 ft + 4 ft × 4 ft)', 60, 'length 1'],
    ['⌈14 ft ÷ 16 in⌉ + 1', 12, ''],
    ['$1,000 ÷ (1 − 10% − 15%)', 1000 / 0.75, 'money 1'],
    ['16 cubic feet + 10% (1.6 cubic feet)', 17.6 * 1728, 'length 3'],
    ['0 in − (−3 7/8 in)', 3.875, 'length 1'],
    ['2 2/9 cubic yards × 1 1/2 hours per cubic yard', 200, 'time 1'],
    ['432 sq ft × 6 lb per 1000 sq ft', 2.592, 'mass 1'],
    ['20 ft × 1 in 60', 4, 'length 1'],
  ] as const)('%s is worked', (line, value, dimension) => {
    const all = punched(line);
    expect(all.value).toBeCloseTo(value, 9);
    expect(all.dimension).toBe(dimension);
  });

  it.each([
    ['12 ft + 4 sq ft', 'length 1 and length 2'],
    ['16 cubic feet + 10% (1.7 cubic feet)', 'is not'],
    ['12 ft ×', 'is left of'],
    ['no idea', 'no number'],
  ])('%s is refused: %s', (line, why) => {
    expect(() => punched(line)).toThrow(why);
  });
});
