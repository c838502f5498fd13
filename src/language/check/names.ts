// The leaves of a formula: names of cells, written amounts, texts, yes and no.
import type { Holds } from '../../quantity/form.ts';
import { NUMBER, TEXT, YES_NO } from '../../quantity/measure.ts';
import type { Checked } from '../plan.ts';
import type { Amount, Name, Pi, Words, YesNo } from '../tree.ts';
import type { Checking } from './checking.ts';
import { madeLeaf } from './holding.ts';

const NOTHING: readonly string[] = [];
export const HOLDS_TEXT: Holds = { measure: TEXT, showIn: null, written: NOTHING };
const HOLDS_YES_NO: Holds = { measure: YES_NO, showIn: null, written: NOTHING };
const HOLDS_NUMBER: Holds = { measure: NUMBER, showIn: null, written: NOTHING };

/** A cell holds what it holds; one that can't be told is waited for. */
export function checkName(formula: Name, checking: Checking): Checked | null {
  const holds = checking.surroundings.holdsOf(formula.cell);
  if (!holds) {
    if (!checking.waitsFor.includes(formula.cell)) checking.waitsFor.push(formula.cell);
    return null;
  }
  return madeLeaf(formula, holds, { op: 'cell', cell: formula.cell });
}

export function checkAmount(formula: Amount): Checked {
  const { value, holds } = formula;
  return madeLeaf(formula, holds, value ? { op: 'constant', value } : { op: 'unknown' });
}

export function checkWords(formula: Words): Checked {
  return madeLeaf(formula, HOLDS_TEXT, { op: 'text', value: formula.text });
}

export function checkYesNo(formula: YesNo): Checked {
  return madeLeaf(formula, HOLDS_YES_NO, { op: 'yes-no', value: formula.value });
}

export function checkPi(formula: Pi): Checked {
  return madeLeaf(formula, HOLDS_NUMBER, { op: 'pi' });
}
