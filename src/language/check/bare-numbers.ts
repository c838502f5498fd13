// A bare number written in its place takes a unit from its neighbour, and says so; beside a length it asks.
import { formMeasure, formOf } from '../../quantity/amount.ts';
import {
  LENGTH,
  MONEY,
  TIME,
  hardPart,
  isHard,
  withoutNounsAbove,
} from '../../quantity/dimension.ts';
import type { Form } from '../../quantity/form.ts';
import { type Fraction, NUMBER } from '../../quantity/measure.ts';
import { type Unit, unitByKey } from '../../quantity/units.ts';
import type { Fix } from '../../words/report.ts';
import type { Checked } from '../plan.ts';
import type { Formula } from '../tree.ts';
import { type Checking, mended, noted, refuse, typedAmount } from './checking.ts';
import { EACH, belowPart, countedNoun, labelsAreFree } from './counted.ts';
import { nounForm, unitForm, writtenIn } from './forms.ts';
import { capital, fact, headline } from './saying.ts';

/** The number, if this is one that was written bare in this formula and has taken no unit. */
export function bareNumber(checked: Checked): Fraction | null {
  if (checked.holds.measure !== NUMBER || checked.plan.op !== 'constant') return null;
  let formula: Formula = checked.formula;
  while (formula.kind === 'bracket' || formula.kind === 'negative') formula = formula.of;
  return formula.kind === 'amount' && formula.bare ? checked.plan.value : null;
}

/** A bare number as typed, without the brackets around it. */
export function bareWords(bare: Checked, checking: Checking): string {
  return typedAmount(checking, bare.formula);
}

/** A written zero needs no unit. */
export function isBareZero(checked: Checked): boolean {
  return bareNumber(checked)?.n === 0n;
}

/** The bare number with the unit of what stands beside it, or null after asking which. */
export function takeUnit(bare: Checked, beside: Checked, checking: Checking): Checked | null {
  const form = formTaken(beside);
  if (!form) return askWhichUnit(bare, beside, checking);
  return inForm(bare, form, checking);
}

/** The bare number read in a form, with the note that says so. */
export function inForm(bare: Checked, form: Form, checking: Checking): Checked {
  const number = bareWords(bare, checking);
  const read = writtenIn(number, form, checking.nouns);
  const note = noted(checking, `${number} is read as ${read}.`);
  const keys = form.over.concat(form.under).flatMap((t) => (t.kind === 'unit' ? [t.unit.key] : []));
  const written = keys.filter((key) => key !== '$' && key !== 'cent').toSorted();
  return {
    ...bare,
    holds: {
      measure: formMeasure(form),
      showIn: form.under.length > 0 ? form : null,
      written: written.length > 0 ? written : bare.holds.written,
    },
    note,
  };
}

/** The form a bare number takes without asking: a count, hours, money, or a unit written in this formula. */
function formTaken(beside: Checked): Form | null {
  const { measure } = beside.holds;
  if (measure.kind !== 'amount') return null;
  const kept = withoutNounsAbove(measure.dimension);
  const noun = countedNoun(kept);
  if (noun !== null && noun !== EACH) {
    return nounForm(noun);
  }
  if (kept === MONEY) return unitForm(unitByKey('$'));
  if (kept === TIME) return unitForm(onlyUnitOf(beside) ?? unitByKey('hour'));
  if (!isHard(kept) || hardPart(kept) === LENGTH) return null;
  return formWrittenHere(beside);
}

/** The form in which an amount that measures the same was written in this very formula; nearest first. */
function formWrittenHere(beside: Checked): Form | null {
  const wanted = beside.holds.measure;
  if (wanted.kind !== 'amount') return null;
  const open: Checked[] = [beside];
  for (let next = open.pop(); next; next = open.pop()) {
    const { measure } = next.holds;
    if (next.formula.kind === 'amount' && measure.kind === 'amount') {
      const same = withoutNounsAbove(measure.dimension) === withoutNounsAbove(wanted.dimension);
      const unit = same ? onlyUnitOf(next) : null;
      if (same && next.holds.showIn) return next.holds.showIn;
      if (unit) return unitForm(unit);
    }
    open.push(...next.parts);
  }
  return null;
}

/** The one unit in which all of it was written that measures the same. */
function onlyUnitOf(checked: Checked): Unit | null {
  const { measure, showIn, written } = checked.holds;
  if (measure.kind !== 'amount') return null;
  const hard = hardPart(measure.dimension);
  const asked = showIn?.over[0];
  if (showIn?.over.length === 1 && showIn.under.length === 0 && asked?.kind === 'unit') {
    return asked.unit;
  }
  const units = written.map(unitByKey).filter((unit) => unit.dimension === hard);
  return units.length === 1 ? (units[0] ?? null) : null;
}

function askWhichUnit(bare: Checked, beside: Checked, checking: Checking): null {
  const number = bareWords(bare, checking);
  const forms = formsToAsk(beside);
  const choices = forms.map((form) => writtenIn(number, form, checking.nouns));
  return refuse(checking, {
    code: 'bare-number',
    headline: headline(
      choices.length > 0 ? `Is that ${choices.join(' or ')}?` : `${number} of what?`,
      'This number needs its unit.',
    ),
    spots: [bare.formula.spot],
    explanation: `${capital(fact(checking, beside))}. Beside it the number ${number} needs its unit.`,
    fixes: choices.map((choice) =>
      mended(checking, `Write ${choice}`, { spot: bare.formula.spot, by: choice }),
    ),
  });
}

/** The forms one would expect beside it: feet or inches, square feet, the form of a rate. */
export function formsToAsk(beside: Checked): readonly Form[] {
  const { measure, showIn } = beside.holds;
  if (measure.kind !== 'amount') return [];
  if (showIn && showIn.under.length > 0) return [showIn];
  const hard = hardPart(measure.dimension);
  const metric = isMetric(beside);
  if (hard === LENGTH)
    return (metric ? ['m', 'mm'] : ['ft', 'in']).map((k) => unitForm(unitByKey(k)));
  const unit = usualUnit(beside);
  if (!unit || unit.dimension !== hard) return [];
  if (labelsAreFree(hard)) return [unitForm(unit)];
  const below = belowPart(measure.dimension).nouns;
  return [
    formOf(
      [unit],
      below.flatMap((n) => Array.from({ length: n.power }, () => n.noun)),
    ),
  ];
}

/** The unit that one would say it in: the one it was written in, or the usual one. */
export function usualUnit(checked: Checked): Unit | null {
  const { measure } = checked.holds;
  if (measure.kind !== 'amount') return null;
  const own = onlyUnitOf(checked);
  if (own) return own;
  const hard = hardPart(measure.dimension);
  const keys = isMetric(checked)
    ? ['m', 'sq m', 'cubic m', 'kg', 'hour', '$']
    : ['ft', 'sq ft', 'cubic ft', 'lb', 'hour', '$'];
  return keys.map(unitByKey).find((unit) => unit.dimension === hard) ?? null;
}

function isMetric(checked: Checked): boolean {
  const units = checked.holds.written.map(unitByKey).filter((u) => u.measures !== 'both');
  return units.length > 0 && units.every((u) => u.measures === 'metric');
}

/** `5 ft` where it is asked how many: the number of it alone, as a fix. */
export function asHowMany(amount: Checked, checking: Checking): readonly Fix[] {
  if (amount.formula.kind !== 'amount') return [];
  const number = /^[\d,]+(?=\s|[a-z'"])/i.exec(typedAmount(checking, amount.formula))?.[0];
  if (number === undefined) return [];
  return [mended(checking, `Write ${number}`, { spot: amount.formula.spot, by: number })];
}
