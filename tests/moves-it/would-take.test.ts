// What it would take, put back: the answer set in the notebook gives the target. On monotone and on stepped formulas with
// random numbers, where there is no answer, and where there are several.
// For a long run: SOLVE_RUNS=2000 npx vitest run --project unit tests/moves-it/would-take.test.ts
import { describe, expect, it, test } from 'vitest';
import { type Span, type Taken, whatWouldItTake } from '../../src/moves-it/would-take.ts';
import { Chance } from '../properties/chance.ts';
import { type Opened, opened } from './opened.ts';

const RUNS = Number(process.env['SOLVE_RUNS'] ?? 20);

const ask = (
  open: Opened,
  given: string,
  result: string,
  target: string,
  between?: readonly [string, string],
): Taken =>
  whatWouldItTake(open.estimate, {
    given: open.cell(given),
    result: open.cell(result),
    target,
    ...(between ? { between } : {}),
  });

function answersOf(taken: Taken): readonly Span[] {
  if (taken.kind !== 'met') throw new Error(`it is ${JSON.stringify(taken)}`);
  return taken.answers;
}

/** What the result shows once the formula of an answer stands in the notebook itself. */
function putBack(open: Opened, given: string, result: string, formula: string | null): string {
  const { estimate } = open;
  if (formula === null) throw new Error('the answer can not be written');
  expect(estimate.setFormula(open.cell(given), formula)).toHaveProperty('change');
  const shown = estimate.shown(open.cell(result))?.text ?? '';
  estimate.takeBack();
  return shown;
}

describe('what would it take', () => {
  const slab = [
    'Slab length: 12 ft',
    '  - sensible: 3 ft up to 30 ft',
    'Slab width: 12 1/2 ft',
    'Area: slab length by slab width',
    'Volume: area by 4 in',
    'Bags: volume in bags of 0.45 cubic feet per bag',
    'Concrete: bags at $6.48 per bag',
    '  - cost: material',
  ];

  it('is the one amount where the result passes through the target', () => {
    const open = opened(...slab);
    const [only, ...more] = answersOf(ask(open, 'Slab length', 'Area', '200 sq ft'));
    expect(more).toEqual([]);
    expect([only.from.shown, only.from.formula, only.to.shown, only.meets]).toEqual([
      '16 ft',
      '16 ft',
      '16 ft',
      'exactly',
    ]);
  });

  it('is told with all its digits where it has no end of them', () => {
    const open = opened(
      'Slab length: 12 ft',
      'Slab width: 7 ft',
      'Area: slab length by slab width',
    );
    const [only] = answersOf(ask(open, 'Slab length', 'Area', '100 sq ft'));
    expect(only.from.comesTo).toBe('100 sq ft');
    expect(only.from.value.toString().slice(0, 20)).toBe('171.4285714285714285');
  });

  it('is a stretch where whole packs are bought, each end of it on a mark of the tape', () => {
    const open = opened(...slab);
    // One bag is 0.45 cubic feet: 0.108 ft of the slab. 112 bags are from 111 to 112 of them: 11.988 to 12.096 ft.
    const [only, ...more] = answersOf(ask(open, 'Slab length', 'Bags', '112 bags'));
    expect(more).toEqual([]);
    expect([only.from.shown, only.to.shown]).toEqual(['11 ft 11 7/8 in', '12 ft 1 1/8 in']);
    for (const end of [only.from, only.to]) {
      expect(putBack(open, 'Slab length', 'Bags', end.formula)).toBe('112 bags');
    }
    // One mark further it is another bag.
    expect(putBack(open, 'Slab length', 'Bags', '11 ft 11 13/16 in')).toBe('111 bags');
    expect(putBack(open, 'Slab length', 'Bags', '12 ft 1 3/16 in')).toBe('113 bags');
  });

  it('is none where whole packs jump over the target, and tells the nearest to either side', () => {
    const open = opened(...slab);
    const taken = ask(open, 'Slab length', 'Concrete', '$700');
    expect(taken).toMatchObject({
      kind: 'none',
      under: { comesTo: '$699.84' },
      over: { comesTo: '$706.32' },
      looked: { low: '3 ft', high: '30 ft', because: 'sensible' },
    });
    if (taken.kind !== 'none') return;
    expect(putBack(open, 'Slab length', 'Concrete', taken.under?.formula ?? null)).toBe('$699.84');
    expect(putBack(open, 'Slab length', 'Concrete', taken.over?.formula ?? null)).toBe('$706.32');
  });

  it('is met as it is shown where a step has more digits than are shown', () => {
    const open = opened(
      'Hours: 173 hours ÷ 3',
      'Wage: $27 per hour',
      'Rate: wage rounded up to the next $1 per hour',
      'Work: hours times rate',
    );
    // 57.666… hours at $31 are $1,787.666…, which shows as $1,787.67.
    const [only, ...more] = answersOf(
      ask(open, 'Wage', 'Work', '$1,787.67', ['$20 per hour', '$40 per hour']),
    );
    expect(more).toEqual([]);
    expect([only.from.shown, only.to.shown, only.meets]).toEqual([
      '$30.01 per hour',
      '$31.00 per hour',
      'as shown',
    ]);
    for (const end of [only.from, only.to]) {
      expect(putBack(open, 'Wage', 'Work', end.formula)).toBe('$1,787.67');
    }
    expect(ask(open, 'Wage', 'Work', '$1,787.60', ['$20 per hour', '$40 per hour']).kind).toBe(
      'none',
    );
  });

  it('is none beyond what is sensible', () => {
    const open = opened(...slab);
    expect(ask(open, 'Slab length', 'Area', '1000 sq ft')).toMatchObject({
      kind: 'none',
      over: null,
    });
    expect(ask(open, 'Slab length', 'Area', '1000 sq ft', ['3 ft', '100 ft']).kind).toBe('met');
  });

  it('names nothing nearest beyond the limits: no board less than none, no pace that nobody keeps', () => {
    const open = opened(
      'Trips: 1 trip',
      'Fee: $35 per trip',
      'Pace: 20 sq ft per hour',
      '  - sensible: 10 sq ft per hour up to 40 sq ft per hour',
      'Driving: trips at fee',
      'Laying: 200 sq ft divided by pace, at $50 per hour',
      'All: $1000 plus driving plus laying',
    );
    for (const [given, over] of [
      ['Trips', '0 trips'],
      ['Fee', '$0.00 per trip'],
      ['Pace', '40 sq ft per hour'],
    ] as const)
      expect(ask(open, given, 'All', '$500')).toMatchObject({
        kind: 'none',
        under: null,
        over: { shown: over },
      });
  });

  it('tells the marks beside an amount that lies between two of them', () => {
    const open = opened('Price: $6.48 per bag', 'Bags: 40 bags', 'Concrete: bags at price');
    const [only] = answersOf(ask(open, 'Price', 'Concrete', '$250.50'));
    expect(only.from.formula).toBe('$6.2625 per bag');
    expect(only.beside.map(({ shown, comesTo }) => [shown, comesTo])).toEqual([
      ['$6.26 per bag', '$250.40'],
      ['$6.27 per bag', '$250.80'],
    ]);
    const [onMark] = answersOf(ask(open, 'Price', 'Concrete', '$252'));
    expect([onMark.from.formula, onMark.beside]).toEqual(['$6.30 per bag', []]);
  });

  it('is several amounts where the result turns back', () => {
    const open = opened(
      'Side: 2 ft',
      'Fence: 20 ft',
      'Area: side by (fence divided by 2 minus side)',
    );
    const spans = answersOf(ask(open, 'Side', 'Area', '21 sq ft'));
    expect(spans.map(({ from, to }) => [from.shown, to.shown])).toEqual([
      ['3 ft', '3 ft'],
      ['7 ft', '7 ft'],
    ]);
    const top = answersOf(ask(open, 'Side', 'Area', '25 sq ft'));
    expect(top).toHaveLength(1);
    expect(top[0].from.value.toNumber()).toBeCloseTo(60, 4);
    expect(ask(open, 'Side', 'Area', '25.1 sq ft')).toMatchObject({ kind: 'none', over: null });
  });

  it('is several stretches where steps come to the same again', () => {
    const open = opened(
      'Width: 5 ft',
      'Posts: 2 posts where width is less than 3 ft, 4 posts where width is less than 6 ft, otherwise 2 posts',
    );
    const spans = answersOf(ask(open, 'Width', 'Posts', '2 posts', ['1 ft', '8 ft']));
    expect(spans.map(({ from, to }) => [from.shown, to.shown])).toEqual([
      ['1 ft', '2 ft 11 15/16 in'],
      ['6 ft', '8 ft'],
    ]);
  });

  it('tries whole things only where whole things are counted', () => {
    const open = opened('Posts: 6 posts', 'Cost of posts: posts at $30 per post', 'Spare: $10');
    const [only] = answersOf(ask(open, 'Posts', 'Cost of posts', '$240'));
    expect([only.from.formula, only.to.formula]).toEqual(['8 posts', '8 posts']);
    expect(ask(open, 'Posts', 'Cost of posts', '$250')).toMatchObject({
      kind: 'none',
      under: { shown: '8 posts', comesTo: '$240.00' },
      over: { shown: '9 posts', comesTo: '$270.00' },
    });
  });

  it('finds the rate for a price and the share for a margin', () => {
    const open = opened(
      'Rate: $50 per hour',
      'Hours: 40 hours',
      'Margin: 15%',
      'Labour: rate times hours',
      '  - cost: labour',
      'Price: labour plus margin',
    );
    const [rate] = answersOf(ask(open, 'Rate', 'Price', '$2,530'));
    expect([rate.from.formula, rate.to.formula]).toEqual(['$55.00 per hour', '$55.00 per hour']);
    const [margin] = answersOf(ask(open, 'Margin', 'Price', '$2,500'));
    expect(putBack(open, 'Margin', 'Price', margin.from.formula)).toBe('$2,500.00');
    expect(margin.from.shown).toBe('25%');
  });

  test.for([
    ['Slab width', 'Area', '3 hours', 'Area holds an area'],
    ['Area', 'Bags', '3 bags', 'Area is no number that is given.'],
    ['Slab length', 'Slab width', '3 ft', 'Slab width does not depend on Slab length.'],
    ['Slab length', 'Bags', 'nothing at all', ''],
  ] as const)('refuses %s for %s to be %s', ([given, result, target, why]) => {
    const taken = ask(opened(...slab), given, result, target);
    expect(taken.kind).toBe('refused');
    if (taken.kind === 'refused') expect(taken.why).toContain(why);
  });

  it('leaves the notebook as it is', () => {
    const open = opened(...slab);
    const before = open.estimate.notebook.text;
    ask(open, 'Slab length', 'Bags', '112 bags');
    expect(open.estimate.notebook.text).toBe(before);
    expect(open.estimate.canUndo()).toBe(null);
  });
});

/** Formulas that rise with what they are worked from, smoothly and in steps; `x` stands for the given. */
const MONOTONE = [
  'x by 3 ft 4 in',
  'x by x',
  '(x plus 2 ft 6 in) by 7 ft',
  'x by 5 ft plus 10%',
  'x by 5 ft, not less than 40 sq ft',
];
const STEPPED = [
  'x divided by 16 in, rounded up',
  'x divided by 7 3/4 in, rounded down',
  '(x by 4 ft by 4 in) in bags of 0.6 cubic feet per bag',
  'x rounded up to the next 2 ft',
  'x by 12 ft plus 10%, rounded up to the next 5 sq ft',
];

describe('an answer put back', () => {
  const targets = (formula: string) => {
    // A target that is met: what the formula comes to somewhere between.
    const chance = new Chance(formula.length * 7 + 1);
    return Array.from({ length: RUNS }, () => `${chance.whole(4 * 16, 25 * 16) / 16} ft`);
  };

  test.for([...MONOTONE, ...STEPPED])('gives the target of %s', (formula) => {
    const wrong: string[] = [];
    for (const x of targets(formula)) {
      const open = opened('Run: 11 ft', `Got: ${formula.replaceAll(/\bx\b/g, 'run')}`);
      const { estimate } = open;
      estimate.setFormula(open.cell('Run'), x);
      const target = estimate.shown(open.cell('Got'));
      estimate.takeBack();
      const written = `${target?.exact} ${target?.unit}`;
      const taken = ask(open, 'Run', 'Got', written, ['4 ft', '25 ft']);
      if (taken.kind !== 'met') {
        wrong.push(`${written} at ${x}: ${JSON.stringify(taken)}`);
        continue;
      }
      const isIn = taken.answers.some(({ from, to }) => {
        const inches = Number(x.split(' ')[0]) * 12;
        return from.value.toNumber() <= inches + 1e-9 && to.value.toNumber() >= inches - 1e-9;
      });
      if (!isIn) wrong.push(`${written}: ${x} is in none of ${JSON.stringify(taken.answers)}`);
      for (const { from, to } of taken.answers) {
        for (const end of [from, to]) {
          if (end.comesTo !== target?.text)
            wrong.push(`${written}: ${end.shown} comes to ${end.comesTo}`);
          if (end.formula === null) continue;
          const back = putBack(open, 'Run', 'Got', end.formula);
          if (back !== target?.text) wrong.push(`${written}: ${end.formula} put back is ${back}`);
        }
      }
    }
    expect(wrong.join('\n')).toBe('');
  });
});
