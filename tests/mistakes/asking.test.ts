// Asking before showing: what counts as an answer, and how a step comes out.
import { describe, expect, test } from 'vitest';
import { afterAnswer, afterShown, askable, howAsked, untried } from '../../src/mistakes/asking.ts';
import { diagnose } from '../../src/mistakes/diagnose.ts';
import { HINTS } from '../../src/mistakes/mistake.ts';
import { MISTAKES_SAID } from '../../src/mistakes/named.ts';
import { Dec } from '../../src/quantity/decimal.ts';
import { opened } from '../moves-it/opened.ts';
import { cellsOf, opened as templateOpened } from '../published/opened.ts';
import { templateFiles, templateText } from '../templates/texts.ts';

const on = opened(
  'Length: 14 ft 3 in',
  'Width: 3 ft 9 in',
  'Thickness: 4 in',
  'Area: length by width',
  'Volume: area by thickness',
  'Rise: 19 in divided by 3 risers',
  'Diagonal: diagonal of length and width',
  'Bags: volume in bags of 0.45 cubic feet, rounded up',
  'Cost: bags at $6.48 per bag',
  'Hour: $72,811.44 divided by 1,625 hours',
  'Wide: width is at least 3 ft',
  'Set: area',
  '  - by hand: 50 sq ft',
);

function asked(name: string) {
  const step = askable(on.estimate, on.cell(name));
  if (!step) throw new Error(`${name} is not asked`);
  return step;
}

function answer(name: string, text: string) {
  const step = asked(name);
  return diagnose(on.estimate, step, text, howAsked(on.estimate, step).half);
}

test('givens, checks and what is set by hand are not asked', () => {
  for (const name of ['Length', 'Wide', 'Set'])
    expect(askable(on.estimate, on.cell(name))).toBeNull();
});

test.for([
  ['Area', 'to three digits', 'sq ft'],
  ['Diagonal', 'to a sixteenth of an inch', 'ft'],
  ['Rise', 'to a sixteenth of an inch', 'in per riser'],
  ['Volume', 'to three digits', 'cubic feet'],
  ['Bags', 'as a whole number', 'bags'],
  ['Cost', 'to the cent', '$'],
  ['Hour', 'to the cent', '$ per hour'],
] as const)('%s is asked for %s, a bare number in %s', ([name, exact, bare]) => {
  expect(howAsked(on.estimate, asked(name))).toMatchObject({ exact, bare });
});

// 53.4375 sq ft, 17.8125 cubic feet, 6 1/3 in per riser, 14 ft 8 13/16 in.
test.for([
  ['Area', '53.4'],
  ['Area', '53.44 sq ft'],
  ['Area', '7695 square inches'],
  ['Area', '4.96 m²'],
  ['Volume', '17.8'],
  ['Volume', '0.66 cubic yards'],
  ['Rise', '6 5/16'],
  ['Rise', '6.33 in'],
  ['Diagonal', '14 ft 8 13/16 in'],
  ['Diagonal', '176 13/16 in'],
  ['Bags', '40'],
  ['Cost', '259.20'],
  ['Hour', '44.81'],
] as const)('%s may be %s', ([name, text]) => {
  expect(answer(name, text)).toEqual({ kind: 'right' });
});

test.for([
  ['Area', '53.5'],
  ['Area', '53'],
  ['Rise', '6 1/4'],
  ['Diagonal', '14 ft 8 3/4 in'],
  ['Bags', '39.6'],
  ['Hour', '44.8'],
] as const)('%s is not %s: half of the last digit asked for, and no more', ([name, text]) => {
  expect(answer(name, text).kind).toBe('wrong');
});

describe('a step that is asked', () => {
  const first = untried(on.cell('Volume'));
  const wrong = afterAnswer(first, '213.75', answer('Volume', '213.75'));

  test('is right at first', () => {
    const right = afterAnswer(first, '17.8', answer('Volume', '17.8'));
    expect(right).toMatchObject({ cameOut: 'first', mistakes: [], answers: ['17.8'] });
  });

  test('is right after a hint, and what was wrong is kept, once', () => {
    // Two mistakes give the same number: both are named.
    const both = ['inches-for-feet', 'square-for-cubic'];
    expect(wrong).toMatchObject({ cameOut: null, mistakes: both });
    const again = afterAnswer(wrong, '213.75', answer('Volume', '213.75'));
    expect(again.mistakes).toEqual(both);
    expect(afterAnswer(again, '17.8', answer('Volume', '17.8')).cameOut).toBe('after-hint');
  });

  test('is shown, and stays right where it was', () => {
    expect(afterShown(wrong).cameOut).toBe('shown');
    const right = afterAnswer(first, '17.8', answer('Volume', '17.8'));
    expect(afterShown(right).cameOut).toBe('first');
    expect(afterAnswer(right, '1', answer('Volume', '1'))).toBe(right);
  });

  test('is not tried by what can not be read', () => {
    expect(afterAnswer(first, 'some', answer('Volume', 'some'))).toEqual(first);
  });
});

test('every mistake that is hinted at has a name', () => {
  expect(Object.keys(MISTAKES_SAID).sort()).toEqual(Object.keys(HINTS).sort());
});

describe.each(templateFiles)('every step of %s', (file) => {
  test('takes for right what it shows, and that rounded to what is asked for, with and without its unit', () => {
    const { estimate } = templateOpened(templateText(file));
    let many = 0;
    for (const { cell } of cellsOf(estimate)) {
      const step = cell.table ? null : askable(estimate, cell.id);
      const { outcome } = estimate.state(cell.id);
      if (!step || outcome.kind !== 'value' || !(outcome.value instanceof Dec)) continue;
      // A cost line is asked as its formula comes out, to the cent.
      const worked = estimate.evaluate(step.node.plan);
      if (worked.kind !== 'value' || !(worked.value instanceof Dec)) continue;
      const { half, bare } = howAsked(estimate, step);
      const shown = estimate.say(worked.value, step.node.holds);
      const exact = new Dec(shown.exact === '' ? worked.value : shown.exact);
      const rounded = half.isZero()
        ? exact.toFixed()
        : exact.div(half.times(2)).round().times(half.times(2)).toFixed(8);
      const coin = /^[$]/.exec(shown.unit);
      const withUnit = coin
        ? `${exact.isNegative() ? '-' : ''}$${new Dec(rounded).abs().toFixed()}${shown.unit.slice(1)}`
        : `${rounded}${shown.unit === '%' ? '' : ' '}${shown.unit}`;
      const texts = [shown.text.replace(/, a hair (?:shy|over)$/, ''), rounded, withUnit.trim()];
      for (const text of texts) {
        const told = { name: cell.name, text, bare, is: diagnose(estimate, step, text, half).kind };
        expect(told).toEqual({ ...told, is: 'right' });
        many++;
      }
    }
    expect(many).toBeGreaterThan(2);
  });
});
