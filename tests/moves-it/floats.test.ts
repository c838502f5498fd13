// Plain doubles beside the exact engine: with the values that the notebook has, every cell that moves with any given
// comes to what is shown. Notebooks are those of the oracle, of the templates and of random answers.
// For a long run: FLOAT_NOTEBOOKS=5000 npx vitest run --project unit tests/moves-it/floats.test.ts (FLOAT_SEED=… goes on elsewhere)
import fs from 'node:fs';
import { describe, expect, test } from 'vitest';
import { Dec } from '../../src/quantity/decimal.ts';
import { ExactWork } from '../../src/moves-it/exactly.ts';
import { FloatWork } from '../../src/moves-it/floats.ts';
import { webOf } from '../../src/moves-it/web.ts';
import { casesOf, textOf } from '../properties/spoken-notebook.ts';
import { type Opened, openedText } from './opened.ts';

const NOTEBOOKS = Number(process.env['FLOAT_NOTEBOOKS'] ?? 100);
const SEED = Number(process.env['FLOAT_SEED'] ?? 1);

/** Of more than a thousand million the last cents are beyond a double. */
const LARGE = 1e9;

interface Compared {
  readonly wrong: readonly string[];
  readonly compared: number;
}

/** Works all that any given moves, with the values as they are, and says what comes to something else. */
function compare({ estimate, cells }: Opened): Compared {
  const moved = cells().filter((id) => {
    const { kind, outcome } = estimate.state(id);
    return kind === 'given' && outcome.kind === 'value' && outcome.value instanceof Dec;
  });
  const web = webOf(estimate, moved, null);
  const floats = new FloatWork(estimate, web, 'kept');
  const exact = new ExactWork(estimate, web);
  for (const id of moved) floats.lane(id)[0] = numberIn(estimate.state(id).outcome);
  floats.run(1);
  exact.run(new Map());
  const wrong: string[] = [];
  for (const { cell } of web.steps) {
    const { outcome, holds, input } = estimate.state(cell);
    if (outcome.kind !== 'value' || !holds) continue;
    const [got] = floats.lane(cell);
    const wanted = numberIn(outcome);
    const told = `${input.name}: ${input.formula}`;
    if (typeof outcome.value !== 'string' && !isClose(got, wanted)) {
      wrong.push(`${told}\n   ${wanted} wanted, ${got} given`);
    } else if (outcome.value instanceof Dec && Math.abs(wanted) < LARGE) {
      // As it is shown: the last digits of a double are none of its value.
      const shown = estimate.say(new Dec(got.toPrecision(14)), holds).text;
      const asked = estimate.say(new Dec(wanted.toPrecision(14)), holds).text;
      if (shown !== asked) wrong.push(`${told}\n   ${asked} wanted, ${shown} shown`);
    }
    const again = exact.value(cell);
    const same =
      again instanceof Dec && outcome.value instanceof Dec
        ? again.eq(outcome.value)
        : again === outcome.value;
    if (!same) wrong.push(`${told}\n   worked beside the notebook it is ${String(again)}`);
  }
  return { wrong, compared: web.steps.length };
}

function numberIn(outcome: ReturnType<Opened['estimate']['state']>['outcome']): number {
  const value = outcome.kind === 'value' ? outcome.value : NaN;
  return value instanceof Dec ? value.toNumber() : Number(value);
}

function isClose(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b));
}

describe('trials at the plain values', () => {
  test(
    `come to what the engine comes to, in ${NOTEBOOKS} random notebooks`,
    { timeout: 1_800_000 },
    () => {
      const wrong: string[] = [];
      let compared = 0;
      for (let seed = SEED; seed < SEED + NOTEBOOKS && wrong.length < 20; seed++) {
        const found = compare(openedText(textOf(casesOf(seed, 14))));
        wrong.push(...found.wrong.map((each) => `seed ${seed}: ${each}`));
        compared += found.compared;
      }
      expect(wrong.join('\n')).toBe('');
      expect(compared).toBeGreaterThan(NOTEBOOKS);
    },
  );

  const folder = `${import.meta.dirname}/../../templates`;
  const files = fs.readdirSync(folder).filter((file) => file.endsWith('.md'));
  test.for(files)('come to what the engine comes to in %s', (file) => {
    const { wrong, compared } = compare(openedText(fs.readFileSync(`${folder}/${file}`, 'utf8')));
    expect(wrong.join('\n')).toBe('');
    expect(compared).toBeGreaterThan(0);
  });
});
