// How exact an answer has to be: to half of the last digit that is asked for it is right, in any unit that fits and without
// one; just outside of that it is wrong. Every worked number of every template.
import fs from 'node:fs';
import { describe, expect, it, test, vi } from 'vitest';
import { type AskedStep, diagnose, stepOfCell } from '../../src/mistakes/diagnose.ts';
import { LENGTH, MONEY, TIME, VOLUME, isHard } from '../../src/quantity/dimension.ts';
import { Dec } from '../../src/quantity/decimal.ts';
import type { Measure } from '../../src/quantity/measure.ts';
import { type Opened, opened, openedText } from '../moves-it/opened.ts';
import { Chance } from '../properties/chance.ts';
import { amountWritten } from './amount-written.ts';

vi.setConfig({ testTimeout: 120_000 });

const folder = `${import.meta.dirname}/../../templates`;
const files = fs.readdirSync(folder).filter((file) => file.endsWith('.md'));

interface Asked {
  readonly step: AskedStep;
  readonly name: string;
  readonly exact: Dec;
  readonly unit: string;
  readonly half: Dec;
  readonly measure: Measure;
}

describe('to half of the last digit that is asked for', () => {
  test.for(files)('in %s', (file) => {
    const open = openedText(fs.readFileSync(`${folder}/${file}`, 'utf8'));
    const chance = new Chance(file.length);
    const wrong: string[] = [];
    for (const asked of numbersOf(open)) {
      const { exact, half, step, name } = asked;
      const told = (off: Dec, answers: readonly string[], kind: 'right' | 'wrong'): void => {
        for (const answer of answers) {
          const said = diagnose(open.estimate, step, answer).kind;
          if (said !== kind)
            wrong.push(
              `${name}: ${answer} for ${exact.toFixed()} ± ${half.toFixed()}, off by ${off.toFixed()}, is ${said}`,
            );
        }
      };
      const part = 0.2 + 0.75 * chance.next();
      for (const sign of [1, -1]) {
        const inside = half.times(part * sign);
        told(inside, answersFor(asked, exact.plus(inside)), 'right');
        // What counts whole things is off by one of them at least.
        const outside = half.isZero() ? new Dec(sign) : half.times((1.1 + part) * sign);
        told(outside, answersFor(asked, exact.plus(outside)), 'wrong');
      }
    }
    expect(wrong.join('\n')).toBe('');
  });
});

describe('the digits that are typed count', () => {
  const open = opened(
    'Length: 5 1/2 in',
    'Width: 12 ft',
    'Board: length times 1',
    'Run: width plus length',
    'Task: 2 hours ÷ 3',
    'Volume: width by width by length',
    'Cost: 7 boards at $3.333 per board',
  );
  const kind = (name: string, answer: string): string => {
    const step = stepOfCell(open.estimate, open.cell(name));
    if (!step) throw new Error(`${name} is not read`);
    return diagnose(open.estimate, step, answer).kind;
  };

  it.each([
    ['Board', '0.458 ft'],
    ['Board', '5.5'],
    ['Board', '140 mm'],
    ['Run', '12 ft 5 1/2 in'],
    ['Run', '149 1/2 in'],
    ['Run', '12.46 ft'],
    ['Run', '3.797 m'],
    ['Task', '40 min'],
    ['Task', '0.667 hours'],
    ['Volume', '2.44 cubic yards'],
    ['Volume', '66'],
    ['Cost', '23.33'],
  ])('%s may be %s', (name, answer) => {
    expect(kind(name, answer)).toBe('right');
  });

  it.each([
    ['Board', '0.5 ft'],
    ['Board', '5.6'],
    ['Run', '12 ft 5 in'],
    ['Run', '12 ft 6 in'],
    ['Run', '12.4 ft'],
    ['Task', '41 min'],
    ['Task', '0.6 hours'],
    ['Volume', '2 cubic yards'],
    ['Volume', '66.5'],
    ['Cost', '23.34'],
    ['Cost', '23'],
  ])('%s may not be %s', (name, answer) => {
    expect(kind(name, answer)).toBe('wrong');
  });
});

function numbersOf(open: Opened): readonly Asked[] {
  const { estimate } = open;
  return open.cells().flatMap((cell): readonly Asked[] => {
    const { kind, input } = estimate.state(cell);
    const step = stepOfCell(estimate, cell);
    if (kind !== 'worked' || !step || input.byHand !== null) return [];
    const outcome = estimate.evaluate(step.node.plan);
    if (outcome.kind !== 'value' || !(outcome.value instanceof Dec)) return [];
    const { exact, unit, text } = estimate.say(outcome.value, step.node.holds);
    if (exact === '' || unit.includes('×')) return [];
    const { measure } = step.node.holds;
    const number = new Dec(exact);
    return [
      {
        step,
        name: input.name,
        exact: number,
        unit,
        measure,
        half: halfOf(number, unit, text, measure),
      },
    ];
  });
}

/** Whole things are whole, money is to the cent, a length to a sixteenth; others as shown, and to three digits at least. */
function halfOf(exact: Dec, unit: string, text: string, measure: Measure): Dec {
  if (measure.kind === 'amount') {
    if (measure.dimension === MONEY) return new Dec('0.005');
    if (measure.dimension === LENGTH && unit === 'in') return new Dec(1).div(32);
    if (measure.dimension === LENGTH && unit === 'ft') return new Dec(1).div(32 * 12);
    if (!isHard(measure.dimension) && exact.isInteger()) return new Dec(0);
  }
  const places = /\d\.(\d+)/.exec(text)?.[1]?.length ?? 0;
  const three = exact.isZero() ? 2 : 2 - exact.e;
  return new Dec(10).pow(-Math.max(places, three)).div(2);
}

/** Bare, in its unit, and in another that fits; with so many digits that they do not count. */
function answersFor({ unit, measure }: Asked, number: Dec): readonly string[] {
  if (number.isNegative()) return [];
  const typed = (of: Dec): string => of.toSignificantDigits(14).toFixed();
  const answers = [typed(number), amountWritten(typed(number), unit)];
  const others = measure.kind === 'amount' ? (OTHERS.get(measure.dimension) ?? {}) : {};
  const [from, ...to] = Object.entries(others).toSorted(([a]) => (a === unit ? -1 : 1));
  if (from?.[0] !== unit) return answers;
  return [
    ...answers,
    ...to.map(([other, size]) => `${typed(number.times(from[1]).div(size))} ${other}`),
  ];
}

const OTHERS = new Map<unknown, Readonly<Record<string, number>>>([
  [LENGTH, { in: 1, ft: 12, yd: 36 }],
  [TIME, { min: 1, hour: 60 }],
  [VOLUME, { 'cubic in': 1, 'cubic ft': 1728, 'cubic yd': 46_656 }],
]);
