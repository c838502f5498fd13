// What it would take, in every template: its last money answers, for the givens that move them, come to an amount that they
// come to somewhere within what is sensible; every answer put back into the notebook gives that amount.
// For a long run: SOLVE_GIVENS=40 npx vitest run --project unit tests/moves-it/would-take-templates.test.ts
import fs from 'node:fs';
import { expect, test, vi } from 'vitest';
import { whatWouldItTake } from '../../src/moves-it/would-take.ts';
import type { CellId } from '../../src/language/tree.ts';
import { MONEY } from '../../src/quantity/dimension.ts';
import { Chance } from '../properties/chance.ts';
import { freshGiven } from '../explain/fresh-givens.ts';
import { type Opened, openedText } from './opened.ts';

/** Of each template so many givens are asked for. */
const GIVENS = Number(process.env['SOLVE_GIVENS'] ?? 2);
/** Of each template the last answers in money: its price, its cost, what a square foot of it costs. */
const RESULTS = 2;

vi.setConfig({ testTimeout: 600_000 });

const folder = `${import.meta.dirname}/../../templates`;
const files = fs.readdirSync(folder).filter((file) => file.endsWith('.md'));

test.for(files)('in %s', (file) => {
  const open = openedText(fs.readFileSync(`${folder}/${file}`, 'utf8'));
  const { estimate } = open;
  const chance = new Chance(file.length * 31);
  const wrong: string[] = [];
  let asked = 0;
  for (const result of moneyOf(open).slice(-RESULTS)) {
    let left = GIVENS;
    for (const given of shuffled(open.cells(), chance)) {
      if (left === 0) break;
      const before = shownOf(open, result);
      const formula = freshGiven(estimate, given, chance);
      if (formula === null) continue;
      estimate.setFormula(given, formula);
      const target = shownOf(open, result);
      const isAfterAll = estimate.state(given).outcome.kind === 'value';
      estimate.takeBack();
      if (target === null || before === null || target === before || !isAfterAll) continue;
      left -= 1;
      asked += 1;
      const name = `${estimate.state(given).input.name} for ${estimate.state(result).input.name} to be ${target}`;
      const taken = whatWouldItTake(estimate, { given, result, target });
      if (taken.kind !== 'met') {
        wrong.push(`${name}: ${formula} does it, but it is ${JSON.stringify(taken)}`);
        continue;
      }
      for (const { from, to } of taken.answers) {
        for (const end of [from, to]) {
          if (end.formula === null) continue;
          estimate.setFormula(given, end.formula);
          const back = shownOf(open, result);
          estimate.takeBack();
          if (back !== target) wrong.push(`${name}: ${end.formula} put back is ${back}`);
        }
      }
    }
  }
  expect(wrong.join('\n')).toBe('');
  // Where there is nothing in money that a given moves there is nothing to ask.
  expect(asked === 0 ? moneyMoved(file) : file).toBe(asked === 0 ? false : file);
});

/** Templates in which no given with limits moves an amount of money. */
function moneyMoved(file: string): boolean {
  return !['often-forgotten.md', 'summary.md'].includes(file);
}

function moneyOf(open: Opened): readonly CellId[] {
  return open.cells().filter((cell) => {
    const { kind, holds, outcome, input } = open.estimate.state(cell);
    const { inTable, byHand } = input;
    if (kind !== 'worked' || inTable !== undefined || byHand !== null) return false;
    const isMoney = holds?.measure.kind === 'amount' && holds.measure.dimension === MONEY;
    return isMoney && outcome.kind === 'value';
  });
}

/** As it is written for a target; null where there is no value. */
function shownOf({ estimate }: Opened, cell: CellId): string | null {
  return estimate.state(cell).outcome.kind === 'value'
    ? (estimate.shown(cell)?.text ?? null)
    : null;
}

function shuffled<T>(all: readonly T[], chance: Chance): readonly T[] {
  return all
    .map((one) => ({ one, at: chance.next() }))
    .toSorted((a, b) => a.at - b.at)
    .map(({ one }) => one);
}
