// Clauses that change how a value is shown or counted: `in cubic yards`, `, as boards`.
import { formMeasure } from '../../quantity/amount.ts';
import {
  AREA,
  LENGTH,
  PLAIN,
  VOLUME,
  countOf,
  hardPart,
  isHard,
  withoutNounsAbove,
} from '../../quantity/dimension.ts';
import type { Form, Term } from '../../quantity/form.ts';
import { amountMeasure } from '../../quantity/measure.ts';
import { type Unit, unitByKey } from '../../quantity/units.ts';
import type { Checked } from '../plan.ts';
import type { AsNoun, InUnits } from '../tree.ts';
import { countsOrNumber } from './agreeing.ts';
import { bareNumber, bareWords, usualUnit } from './bare-numbers.ts';
import { type Checking, inOrder, mended, refuse, typed } from './checking.ts';
import { asFix, notAnAmount } from './clashes.ts';
import { countedNoun, fitEach, labelsAreFree } from './counted.ts';
import { unitForm, writtenIn } from './forms.ts';
import { inScale, made } from './holding.ts';
import { sizedInUnits } from './sized.ts';
import { capital, fact, headline, whatItIs } from './saying.ts';

/** `in cubic yards`: the same amount, shown otherwise. */
export function checkInUnits(formula: InUnits, all: Checked, checking: Checking): Checked | null {
  const of = sizedInUnits(all, formula.form, checking);
  if (!of) return null;
  const { measure } = of.holds;
  if (measure.kind !== 'amount') {
    return refuse(checking, notAnAmount(of, 'shown in a unit', checking));
  }
  const kept = withoutNounsAbove(measure.dimension);
  const showIn = readings(formula.form)
    .map((form) => fittingForm(form, kept))
    .find((form) => form !== null);
  if (!showIn) return refuseForm(formula, of, checking);
  const result = kept === measure.dimension ? measure : amountMeasure(kept, measure.scale);
  return made(formula, [of], result, of.plan, { showIn, written: of.holds.written });
}

/** The form, and the same with its loose yards read as square and as cubic yards. */
function readings(form: Form): readonly Form[] {
  const yard = unitByKey('yd');
  const terms = [...form.over, ...form.under];
  if (!terms.some((t) => t.kind === 'unit' && t.unit === yard)) return [form];
  const as = (unit: Unit): Form => {
    const changed = (t: Term): Term => (t.kind === 'unit' && t.unit === yard ? { ...t, unit } : t);
    return { over: form.over.map(changed), under: form.under.map(changed) };
  };
  return [form, as(unitByKey('sq yd')), as(unitByKey('cubic yd'))];
}

/** The form if it measures the same; what is counted below the line goes on below it. */
function fittingForm(form: Form, kept: ReturnType<typeof hardPart>): Form | null {
  const asked = formMeasure(form).dimension;
  if (asked === kept || fitEach(asked, kept) === fitEach(kept, asked)) return form;
  const labelled = labelsAreFree(kept) && asked === hardPart(kept);
  if (!labelled) return null;
  const labels = kept.nouns.flatMap((n): Term[] =>
    Array.from({ length: -n.power }, () => ({ kind: 'noun', noun: n.noun, count: null })),
  );
  return { over: form.over, under: [...form.under, ...labels] };
}

function refuseForm(formula: InUnits, of: Checked, checking: Checking): null {
  const words = typed(checking, formula).slice(
    formula.formSpot.from - formula.spot.from,
    formula.formSpot.to - formula.spot.from,
  );
  const asked = formMeasure(formula.form);
  const only = formula.form.over[0];
  const noun = countedNoun(asked.dimension);
  const { measure } = of.holds;
  const counted = measure.kind === 'amount' && countsOrNumber(measure);
  const number = bareNumber(of) === null ? null : bareWords(of, checking);
  const fixes =
    noun !== null && counted
      ? [asFix(of, noun, checking)]
      : number !== null
        ? [
            mended(checking, 'Give the number that unit', {
              spot: of.formula.spot,
              by: writtenIn(number, formula.form, checking.nouns),
            }),
          ]
        : unitsInstead(of, only?.kind === 'unit' ? only.unit : null).map((unit) =>
            mended(checking, `In ${unit.many}`, { spot: formula.formSpot, by: unit.many }),
          );
  return refuse(checking, {
    code: 'wrong-unit-asked',
    headline: headline(
      `${whatItIs(of)} can't be shown in ${words}.`,
      `It can't be shown in ${words}.`,
      "It can't be shown in that unit.",
    ),
    spots: inOrder(of.formula.spot, formula.formSpot),
    explanation: `${capital(fact(checking, of))}. ${capital(words)} measure something else.`,
    fixes,
  });
}

/** `in feet` on an area: square feet; else what it would usually be shown in. */
function unitsInstead(of: Checked, asked: Unit | null): readonly Unit[] {
  const { measure } = of.holds;
  if (measure.kind !== 'amount') return [];
  const hard = hardPart(measure.dimension);
  if (withoutNounsAbove(measure.dimension) !== hard && !labelsAreFree(measure.dimension)) return [];
  const power = hard === AREA ? 'sq ' : hard === VOLUME ? 'cubic ' : '';
  const base = asked?.key.replace(/^(sq|cubic) /, '');
  const known = ['ft', 'in', 'yd', 'm', 'cm', 'mm'];
  if ((hard === AREA || hard === VOLUME || hard === LENGTH) && base && known.includes(base)) {
    return [unitByKey(power + base)];
  }
  const usual = usualUnit(of);
  return usual && usual.dimension === hard && usual.key !== '$' ? [usual] : [];
}

/** `, as boards`: a count of another thing, or a number, counted as this one. */
export function checkAsNoun(formula: AsNoun, of: Checked, checking: Checking): Checked | null {
  const { measure } = of.holds;
  const { noun } = formula;
  if (measure.kind !== 'amount') return refuse(checking, notAnAmount(of, 'counted', checking));
  const { dimension } = measure;
  const single = countedNoun(dimension) !== null;
  const number = dimension === PLAIN && measure.rate === null;
  if (single || number) {
    const counted = amountMeasure(countOf(noun));
    return made(formula, [of], counted, inScale(of, counted), { written: of.holds.written });
  }
  const things = checking.nouns.many(noun);
  const unit = usualUnit(of);
  const pack =
    unit && isHard(dimension) && labelsAreFree(dimension)
      ? writtenIn('1', unitForm(unit), checking.nouns)
      : null;
  return refuse(checking, {
    code: 'not-a-count',
    headline: headline(`${whatItIs(of)} can't count ${things}.`, 'This is no count.'),
    spots: inOrder(of.formula.spot, formula.nounSpot),
    explanation: `${capital(fact(checking, of))}. Only a count or a plain number can be counted as ${things}.${pack ? ` To buy it in ${things}, say how much one holds.` : ''}`,
    fixes: pack
      ? [
          mended(checking, `In ${things} of so much`, {
            spot: formula.spot,
            by: `${typed(checking, of.formula)}, in ${things} of ${pack}`,
          }),
        ]
      : [],
  });
}
