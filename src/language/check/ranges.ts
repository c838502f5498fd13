// A range: its amounts measure the same, both ends are known, and the plain value lies between them.
import { describe } from '../../quantity/describe.ts';
import { bothWritten } from '../../quantity/form.ts';
import { OPEN } from '../../quantity/measure.ts';
import type { Report } from '../../words/report.ts';
import type { Checked } from '../plan.ts';
import { type Signed, isAlike, middleOf, standing, valueOf, wordsOf } from '../range-ends.ts';
import type { Range } from '../tree.ts';
import { type Checking, mended, noted, refuse } from './checking.ts';
import { constant, made, sameForm } from './holding.ts';

/** `parts` are the first value, where there is one, the best and the worst. */
export function checkRange(
  formula: Range,
  parts: readonly Checked[],
  checking: Checking,
): Checked | null {
  const first = formula.first ? (parts[0] ?? null) : null;
  const [best, worst] = parts.slice(-2);
  if (!best || !worst) throw new Error('A range without its ends');
  const open = [formula.best, formula.worst].find((end) => valueOf(end) === null);
  if (open) return refuse(checking, openEnd(formula, open, checking));
  const firm = first && first.holds.measure !== OPEN ? first : best;
  const odd = [best, worst].find((end) => !isAlike(end.holds.measure, firm.holds.measure));
  if (odd) return refuse(checking, unlike(formula, firm, odd, checking));
  if (isOutside(formula)) return refuse(checking, outside(formula, checking));
  tell(formula, checking);
  if (first) return { ...first, ...(firm === first ? {} : { holds: best.holds }), formula, parts };
  return inTheMiddle(formula, parts, best, worst);
}

function inTheMiddle(
  formula: Range,
  parts: readonly Checked[],
  best: Checked,
  worst: Checked,
): Checked {
  const { value, measure } = middleOf(endOf(formula.best, best), endOf(formula.worst, worst));
  const [a, b] = [best.holds, worst.holds];
  return made(formula, parts, measure, constant(value), {
    showIn: sameForm(a.showIn, b.showIn) ? a.showIn : null,
    written: bothWritten(a.written, b.written),
  });
}

function endOf(end: Signed, { holds }: Checked): Parameters<typeof middleOf>[0] {
  const value = valueOf(end);
  if (!value) throw new Error('An open end in the middle of a range');
  return { value, measure: holds.measure };
}

function isOutside({ first, best, worst }: Range): boolean {
  if (!first) return false;
  const [toBest, toWorst] = [standing(first, best), standing(first, worst)];
  return toBest !== null && toWorst !== null && toBest * toWorst > 0;
}

/** What the reader decided, and what looks like an oversight. */
function tell({ best, worst, first }: Range, checking: Checking): void {
  const order = standing(best, worst);
  if (order === 0) {
    const same = first && standing(first, best) === 0 ? 'All three are' : 'Best and worst are';
    noted(checking, `${same} ${wordsOf(best)}: nothing is left open.`);
  } else if (!/\b(?:best|worst)\b/i.test(checking.text)) {
    const more = (order ?? 0) > 0;
    noted(
      checking,
      more
        ? `More in the time is taken as best: ${wordsOf(best)}.`
        : `The lesser is taken as best: ${wordsOf(best)}.`,
    );
  }
}

function openEnd({ spot, first }: Range, end: Signed, checking: Checking): Report {
  const kept = first ? wordsOf(first) : wordsOf(end);
  return {
    code: 'range-end-open',
    headline: 'Both ends of a range have to be known.',
    spots: [end.spot],
    explanation: 'Write what it is at best and at worst, or leave both away until they are known.',
    fixes: [mended(checking, `Only ${kept}`, { spot, by: kept })],
  };
}

function unlike(
  { spot, first, best }: Range,
  firm: Checked,
  odd: Checked,
  checking: Checking,
): Report {
  const kept = wordsOf(first ?? best);
  const [a, b] = [firm, odd].map(({ formula }) => formula);
  const words = [a, b].map((each) =>
    each ? checking.text.slice(each.spot.from, each.spot.to) : '',
  );
  return {
    code: 'range-unlike',
    headline: 'These measure different things.',
    spots: [a, b].flatMap((each) => (each ? [each.spot] : [])),
    explanation: `"${words[0]}" is ${describe(firm.holds.measure)}; "${words[1]}" is ${describe(odd.holds.measure)}. What a range is at best and at worst measures the same as its value.`,
    fixes: [mended(checking, `Only ${kept}`, { spot, by: kept })],
  };
}

function outside({ spot, first, best, worst }: Range, checking: Checking): Report {
  if (!first) throw new Error('Outside without a first value');
  const [plain, low, high] = [wordsOf(first), wordsOf(best), wordsOf(worst)];
  const nearBest = isNearer(first, best, worst);
  const end = nearBest ? `${plain} at best, ${high} at worst` : `${low} at best, ${plain} at worst`;
  return {
    code: 'range-outside',
    headline: 'The value lies outside its own range.',
    spots: [first.spot],
    explanation: `${plain} is not between ${low} at best and ${high} at worst. Move the value, or the end beside it.`,
    fixes: [
      mended(checking, nearBest ? 'Move the best to it' : 'Move the worst to it', {
        spot,
        by: `${plain}, ${end}`,
      }),
      mended(checking, 'Take the middle of the two', {
        spot,
        by: `${low} at best, ${high} at worst`,
      }),
      mended(checking, `Only ${plain}`, { spot, by: plain }),
    ],
  };
}

/** Is the value beyond the best end, and not beyond the worst? */
function isNearer(first: Signed, best: Signed, worst: Signed): boolean {
  const order = standing(best, worst) ?? 0;
  const side = standing(first, best) ?? 0;
  return order === 0 || side * order > 0;
}
