// Making checked nodes: what they hold, the exact scaling between them, and the units they rest on.
import { type Form, type Holds, NONE_WRITTEN, withUnit, bothWritten } from '../../quantity/form.ts';
import type { Unit } from '../../quantity/units.ts';
import {
  type AmountMeasure,
  Fraction,
  type Measure,
  ONE,
  conversion,
} from '../../quantity/measure.ts';
import type { Checked, Plan } from '../plan.ts';
import type { Formula } from '../tree.ts';

const NO_PARTS: readonly Checked[] = [];

/** What a rule may say beyond measure and plan. */
interface Besides {
  readonly showIn?: Form | null;
  readonly written?: readonly string[];
  readonly note?: string | null;
  readonly manner?: Checked['manner'];
}

/** A checked node. Unless said otherwise it rests on the units of its parts and shows by the rules. */
export function made(
  formula: Formula,
  parts: readonly Checked[],
  measure: Measure,
  plan: Plan,
  besides: Besides = {},
): Checked {
  const holds: Holds = {
    measure,
    showIn: besides.showIn ?? null,
    written: besides.written ?? restsOn(parts),
  };
  return {
    formula,
    holds,
    plan,
    parts,
    note: besides.note ?? null,
    manner: besides.manner ?? null,
  };
}

/** A node without parts that holds what is given. */
export function madeLeaf(formula: Formula, holds: Holds, plan: Plan): Checked {
  return { formula, holds, plan, parts: NO_PARTS, note: null, manner: null };
}

/** What it measures, where a rule has already made sure that it is an amount. */
export function amountOf(checked: Checked): AmountMeasure {
  const { measure } = checked.holds;
  if (measure.kind !== 'amount') throw new Error(`${measure.kind} taken for an amount`);
  return measure;
}

/** The plan of an amount (a share, a number) with its number in another scale. */
export function inScale(checked: Checked, to: AmountMeasure): Plan {
  const { measure } = checked.holds;
  if (measure.kind !== 'amount' || measure.scale === to.scale) return checked.plan;
  return scaled(checked.plan, conversion(measure, to));
}

/** A plan times an exact factor; constants and scalings are folded. */
export function scaled(plan: Plan, by: Fraction): Plan {
  if (by.equals(ONE)) return plan;
  if (plan.op === 'constant') return { op: 'constant', value: plan.value.mul(by) };
  if (plan.op === 'scale') return scaled(plan.of, plan.by.mul(by));
  return { op: 'scale', by, of: plan };
}

export function constant(value: Fraction | number): Plan {
  return { op: 'constant', value: new Fraction(value) };
}

/** The finest of some scales. */
export function finest(measures: readonly AmountMeasure[]): AmountMeasure {
  return measures.reduce((a, b) => (b.scale.compare(a.scale) < 0 ? b : a));
}

/** Every unit that was written among the amounts these rest on; a unit asked for by `in` counts as written. */
export function restsOn(parts: readonly Checked[]): readonly string[] {
  let written = NONE_WRITTEN;
  for (const { holds } of parts) {
    written = bothWritten(written, holds.written);
    const unit = onlyUnit(holds.showIn);
    if (unit) written = withUnit(written, unit);
  }
  return written;
}

/** The unit of a form that is one unit and nothing else. */
function onlyUnit(form: Form | null): Unit | null {
  const over = form?.over[0];
  const alone = form?.over.length === 1 && form.under.length === 0 && over?.kind === 'unit';
  return alone ? over.unit : null;
}

/** Do two forms read the same? */
export function sameForm(a: Form | null, b: Form | null): boolean {
  return a === b || (a !== null && b !== null && formKey(a) === formKey(b));
}

function formKey(form: Form): string {
  const side = (terms: Form['over']): string =>
    terms.map((t) => `${t.count ?? ''} ${t.kind === 'unit' ? t.unit.key : t.noun}`).join('·');
  return `${side(form.over)}/${side(form.under)}`;
}
