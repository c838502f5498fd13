// A right answer is never marked wrong: every worked number of every template, in each unit that fits, to as many digits as are
// asked for or more.
import fs from 'node:fs';
import { describe, expect, test } from 'vitest';
import { diagnose, stepOfCell } from '../../src/mistakes/diagnose.ts';
import { AREA, LENGTH, MASS, TIME, VOLUME } from '../../src/quantity/dimension.ts';
import { Dec, scaled } from '../../src/quantity/decimal.ts';
import type { Fraction } from '../../src/quantity/measure.ts';
import { unitByKey } from '../../src/quantity/units.ts';
import { openedText } from '../moves-it/opened.ts';

const folder = `${import.meta.dirname}/../../templates`;

const UNITS = new Map([
  [LENGTH, ['in', 'ft', 'yd', 'mm', 'm']],
  [AREA, ['sq in', 'sq ft', 'sq yd', 'sq m']],
  [VOLUME, ['cubic in', 'cubic ft', 'cubic yd', 'cubic m']],
  [MASS, ['lb', 'ton', 'kg']],
  [TIME, ['min', 'hour']],
]);

/** How many inches, pounds or minutes one of the unit is, to its power. */
function sizeOf(unit: string): Fraction {
  const [, power = '', key = ''] = /^(sq |cubic )?(.+)$/.exec(unit) ?? [];
  const { scale } = unitByKey(key);
  if (power === '') return scale;
  return power === 'sq ' ? scale.mul(scale) : scale.mul(scale).mul(scale);
}

describe('a right answer is never marked wrong', () => {
  const files = fs.readdirSync(folder).filter((file) => file.endsWith('.md'));
  test.for(files)('in %s', (file) => {
    const open = openedText(fs.readFileSync(`${folder}/${file}`, 'utf8'));
    const { estimate } = open;
    const wrong: string[] = [];
    let asked = 0;
    for (const cell of open.cells()) {
      const { kind, outcome, holds, input } = estimate.state(cell);
      const step = stepOfCell(estimate, cell);
      if (kind !== 'worked' || !step || !holds || input.byHand !== null) continue;
      if (outcome.kind !== 'value' || !(outcome.value instanceof Dec)) continue;
      const worked = estimate.evaluate(step.node.plan);
      if (worked.kind !== 'value' || !(worked.value instanceof Dec)) continue;
      const { exact, unit } = estimate.say(worked.value, step.node.holds);
      const answers = [new Dec(exact).toSignificantDigits(12).toFixed()];
      const { measure } = step.node.holds;
      const units = measure.kind === 'amount' ? (UNITS.get(measure.dimension) ?? []) : [];
      for (const other of units) {
        if (measure.kind !== 'amount') continue;
        const number = scaled(worked.value, measure.scale.div(sizeOf(other)));
        answers.push(`${number.toSignificantDigits(9).toFixed()} ${other}`);
      }
      for (const answer of answers) {
        asked += 1;
        const told = diagnose(estimate, step, answer);
        if (told.kind !== 'right') {
          wrong.push(`${input.name}: ${answer} for ${exact} ${unit} is ${JSON.stringify(told)}`);
        }
      }
    }
    expect(wrong.join('\n')).toBe('');
    expect(asked).toBeGreaterThan(0);
  });
});
