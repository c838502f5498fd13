// Saying that two things can't go together because they measure or count different things.
import { MONEY, PLAIN, TIME, withoutNounsAbove } from '../../quantity/dimension.ts';
import { type Fraction, NUMBER } from '../../quantity/measure.ts';
import type { Fix, Report } from '../../words/report.ts';
import type { Spot } from '../../words/spot.ts';
import type { Checked } from '../plan.ts';
import type { Formula } from '../tree.ts';
import { bareNumber, bareWords } from './bare-numbers.ts';
import { type Checking, inOrder, mended, typed, typedAsOne } from './checking.ts';
import { EACH, abovePart, belowPart, countedNoun } from './counted.ts';
import { askWhichDimension, sizeAmong } from './which-dimension.ts';
import { called, capital, fact, facts, headline, whatItIs } from './saying.ts';

/** What is being done with them, for the message. */
export interface Task {
  /** After both: `can't be added`. */
  readonly cannot: string;
  /** Begins the sentence that says what would do: `Adding works`. */
  readonly works: string;
  /** Whether a share may stand beside a plain number, as in a comparison. */
  readonly sharesBesideNumbers: 'yes' | 'no';
}

export const ADDING: Task = {
  cannot: "can't be added",
  works: 'Adding works',
  sharesBesideNumbers: 'no',
};
export const TAKING_AWAY: Task = {
  cannot: "can't be subtracted",
  works: 'Taking one from the other works',
  sharesBesideNumbers: 'no',
};
export const COMPARING: Task = {
  cannot: "can't be compared",
  works: 'Comparing works',
  sharesBesideNumbers: 'yes',
};
export const CHOOSING: Task = {
  cannot: "can't both be the answer",
  works: 'A choice works',
  sharesBesideNumbers: 'no',
};
export const AVERAGING: Task = {
  cannot: "can't be averaged",
  works: 'An average works',
  sharesBesideNumbers: 'no',
};

/** The report for two values that do not go together in this task. */
export function clash(a: Checked, b: Checked, task: Task, checking: Checking): Report {
  return (
    sizeAmong([a, b], checking) ??
    differentCounts(a, b, task, checking) ??
    numberBesideCount(a, b, task, checking) ??
    pricePerSomething(a, b, task, checking) ??
    shareOfWhat(a, b, task, checking) ??
    plainClash(a, b, task, checking)
  );
}

function plainClash(a: Checked, b: Checked, task: Task, checking: Checking): Report {
  return {
    code: 'unit-clash',
    headline: headline(
      `${whatItIs(a)} and ${whatItIs(b)} ${task.cannot}.`,
      `These two ${task.cannot}.`,
    ),
    spots: bothSpots(a, b),
    explanation: `${facts(checking, a, b)} ${task.works} when both measure the same thing.`,
    fixes: oneOfThem(a, b, checking),
  };
}

/** Of a sum of two: one at the rate that the other is, or one of them left out. */
function oneOfThem(a: Checked, b: Checked, checking: Checking): readonly Fix[] {
  const [left, right] = [a.formula.spot, b.formula.spot];
  const between = { from: left.to, to: right.from };
  const word = checking.text.slice(left.to, right.from).trim().toLowerCase();
  if (!/^(plus|\+|and|minus|less|[-−–])$/.test(word)) return [];
  const at = mended(checking, 'Price one at the other', {
    spot: { from: left.from, to: right.to },
    by: isRateOf(b, a)
      ? `(${typedAsOne(checking, a.formula)} at ${typedAsOne(checking, b.formula)})`
      : `(${typedAsOne(checking, b.formula)} at ${typedAsOne(checking, a.formula)})`,
  });
  const without = (one: Checked, spot: Spot): Fix =>
    mended(checking, `Leave ${called(checking, one)} out`, { spot, by: '' });
  // Of a longer sum the others would clash again.
  const isAll =
    /(^|\()\s*$/.test(checking.text.slice(0, left.from)) &&
    /^\s*($|[),])/.test(checking.text.slice(right.to));
  const isSum = /^(plus|\+|and)$/.test(word);
  return [
    ...rootOfAll(a, b, checking),
    ...(isRateOf(a, b) || isRateOf(b, a) ? [at] : []),
    ...(isAll ? [without(b, { from: between.from, to: right.to })] : []),
    ...(isAll && isSum ? [without(a, { from: left.from, to: right.from })] : []),
  ];
}

/** `square root of A squared plus B squared`: as written it can't be added, so the root of the sum was meant. */
function rootOfAll(a: Checked, b: Checked, checking: Checking): readonly Fix[] {
  if (a.formula.kind !== 'square-root' || a.formula.of.kind === 'bracket') return [];
  const { from } = a.formula.of.spot;
  if (checking.text[from] === '(') return [];
  const spot = { from, to: b.formula.spot.to };
  const by = `(${checking.text.slice(spot.from, spot.to)})`;
  return [mended(checking, 'The root of the whole sum', { spot, by })];
}

/** Is the first so much per what the second measures? */
function isRateOf({ holds: { measure: rate } }: Checked, { holds: { measure } }: Checked): boolean {
  if (rate.kind !== 'amount' || measure.kind !== 'amount' || !rate.rate) return false;
  return rate.rate.under.dimension === withoutNounsAbove(measure.dimension);
}

/** 12 boards and 40 bags: one may be counted as the other on purpose. */
function differentCounts(a: Checked, b: Checked, task: Task, checking: Checking): Report | null {
  const [one, other] = [nounOf(a), nounOf(b)];
  if (one === null || other === null || one === EACH || other === EACH) return null;
  const { nouns } = checking;
  return {
    code: 'noun-clash',
    headline: headline(
      `${nouns.many(one)} and ${nouns.many(other)} ${task.cannot}.`,
      `Two different things ${task.cannot}.`,
    ),
    spots: bothSpots(a, b),
    explanation: `${facts(checking, a, b)} If one of them is meant to count as the other, say so.`,
    fixes: [asFix(b, one, checking), asFix(a, other, checking)],
  };
}

/** A plain number that was worked out beside a count: it takes no noun by itself. */
function numberBesideCount(a: Checked, b: Checked, task: Task, checking: Checking): Report | null {
  const plain = a.holds.measure === NUMBER ? a : b.holds.measure === NUMBER ? b : null;
  const noun = plain === a ? nounOf(b) : nounOf(a);
  if (!plain || noun === null || noun === EACH) return null;
  const things = checking.nouns.many(noun);
  return {
    code: 'unit-clash',
    headline: headline(
      `A plain number and a count of ${things} ${task.cannot}.`,
      `These two ${task.cannot}.`,
    ),
    spots: bothSpots(a, b),
    explanation: `${facts(checking, a, b)} If the number counts ${things}, say so.`,
    fixes: [asFix(plain, noun, checking)],
  };
}

/** A price per something never adds to money: how many of it? */
function pricePerSomething(a: Checked, b: Checked, task: Task, checking: Checking): Report | null {
  const rate = isMoney(a) ? b : isMoney(b) ? a : null;
  if (!rate || task === COMPARING) return null;
  const { measure } = rate.holds;
  if (measure.kind !== 'amount' || abovePart(measure.dimension) !== MONEY) return null;
  const per = belowPart(measure.dimension);
  const noun = countedNoun(per);
  if (per === PLAIN) return null;
  const price = typedAsOne(checking, rate.formula);
  const under = rate.holds.showIn?.under[0];
  const unit = under?.kind === 'unit' && !under.count ? under.unit.one : null;
  const one = per === TIME ? 'hour' : noun === EACH ? null : (noun ?? unit);
  const how = one === null ? null : `1 ${one} at ${price}`;
  return {
    code: 'price-per-wrong-thing',
    headline: headline(`${whatItIs(rate)} is not yet money.`, 'A price for one is not yet money.'),
    spots: bothSpots(a, b),
    explanation: `${capital(fact(checking, rate))}. Say how many of it are priced, then it ${task === ADDING ? 'adds to' : 'goes with'} money.`,
    fixes: how
      ? [mended(checking, `Price one: ${how}`, { spot: rate.formula.spot, by: `(${how})` })]
      : [],
  };
}

/** 10% plus $5: a share has to be of something. */
function shareOfWhat(a: Checked, b: Checked, task: Task, checking: Checking): Report | null {
  const share = a.holds.measure.kind === 'share' ? a : b.holds.measure.kind === 'share' ? b : null;
  const other = share === a ? b : a;
  if (!share || other.holds.measure.kind !== 'amount') return null;
  const number = bareNumber(other);
  if (number) return isItPercent(other, number, share, checking);
  if (task === CHOOSING) return null;
  const simple = share.formula.kind === 'amount' || share.formula.kind === 'name';
  const word = simple ? 'of' : 'times';
  const whole = `(${typedAsOne(checking, share.formula)} ${word} ${typedAsOne(checking, other.formula)})`;
  return {
    code: 'share-of-what',
    headline: headline(`${typed(checking, share.formula)} of what?`, 'A share of what?'),
    spots: bothSpots(a, b),
    explanation: `${facts(checking, a, b)} A share is of something: say of what, or put it after what it is a share of.`,
    // A share times a plain number is a share again, so that only "of" would help there.
    fixes:
      simple || other.holds.measure.dimension !== PLAIN
        ? [mended(checking, 'Take the share of it', { spot: share.formula.spot, by: whole })]
        : [],
  };
}

/** A bare number where a share is meant: in percent, or as a part of one. */
export function isItPercent(
  bare: Checked,
  number: Fraction,
  share: Checked | null,
  checking: Checking,
): Report {
  const words = bareWords(bare, checking);
  const asPart = number.abs().compare(1) < 0 ? [`${number.mul(100).toString()}%`] : [];
  const choices = /^[-−]?[\d.,]+$/.test(words) ? [`${words}%`, ...asPart] : asPart;
  return {
    code: 'not-a-share',
    headline: headline(
      choices.length > 0 ? `Is that ${choices.join(' or ')}?` : `${words} is not a share.`,
      'This number is not a share.',
    ),
    spots: [bare.formula.spot],
    explanation: `${share ? capital(fact(checking, share)) + '. ' : ''}A share is needed here, written with a percent sign or held by a cell.`,
    fixes: choices.map((by) => mended(checking, `Write ${by}`, { spot: bare.formula.spot, by })),
  };
}

/** The formula with one operand counted as another noun. */
export function asFix(checked: Checked, noun: string, checking: Checking): Report['fixes'][number] {
  const things = checking.nouns.many(noun);
  return mended(checking, `Count it as ${things}`, {
    spot: checked.formula.spot,
    by: `(${typed(checking, checked.formula)}, as ${things})`,
  });
}

/** Text or yes/no where an amount is needed. */
export function notAnAmount(checked: Checked, doing: string, checking: Checking): Report {
  const asked = askWhichDimension(checked, checking);
  if (asked) return asked;
  return {
    code: 'not-an-amount',
    headline: headline(`${whatItIs(checked)} can't be ${doing}.`, `This can't be ${doing}.`),
    spots: [checked.formula.spot],
    explanation: `${capital(fact(checking, checked))}. An amount is needed here.`,
    fixes: [],
  };
}

export function bothSpots(a: Checked, b: Checked): Report['spots'] {
  return inOrder(smallest(a.formula).spot, smallest(b.formula).spot);
}

/** The words without the brackets around them. */
function smallest(formula: Formula): Formula {
  let inner = formula;
  while (inner.kind === 'bracket') inner = inner.of;
  return inner;
}

function nounOf(checked: Checked): string | null {
  const { measure } = checked.holds;
  return measure.kind === 'amount' ? countedNoun(measure.dimension) : null;
}

function isMoney(checked: Checked): boolean {
  const { measure } = checked.holds;
  return measure.kind === 'amount' && withoutNounsAbove(measure.dimension) === MONEY;
}
