// For the tables of mends: a small notebook with something wrong in it, and what making each mend that is offered comes to.
import { expect } from 'vitest';
import type { Finding } from '../../src/notebook/document.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { type Mend, isToMend } from '../../src/notebook/mends.ts';
import { done } from './cells.ts';

export interface MendCase {
  readonly code: string;
  /** The whole notebook. */
  readonly text: string;
  /** The name of the cell that it is about; null: the text itself. */
  readonly cell: string | null;
  /** Codes that a mend may ask about next, because only the person can know. */
  readonly asks?: readonly string[];
  /** Why nothing can be offered. */
  readonly none?: string;
}

/** What an owner would have to answer after a mend, beside what is wrong. */
const QUESTIONS = new Set(['not-yet-known', 'check-fails', 'outside-limits']);

function nameOf(estimate: Estimate, { cell }: Finding): string | null {
  return cell === null ? null : estimate.state(cell).input.name;
}

/** Each thing pointed out, so that it can be looked for again. */
function said(estimate: Estimate): readonly string[] {
  return estimate
    .findings()
    .filter((f) => isToMend(f) || QUESTIONS.has(f.code))
    .map((f) => `${f.code}: ${nameOf(estimate, f) ?? ''}`);
}

/** The finding of a case in its notebook, with what is offered. */
export function found(each: MendCase): {
  readonly estimate: Estimate;
  readonly finding: Finding;
  readonly mends: readonly Mend[];
} {
  const estimate = new Estimate(each.text);
  const finding = estimate
    .findings()
    .find((f) => f.code === each.code && nameOf(estimate, f) === each.cell);
  if (!finding) throw new Error(`${each.code} is not found: ${said(estimate).join(', ')}`);
  return { estimate, finding, mends: estimate.mendsFor(finding) };
}

/** Every mend does away with what it is for, asks no more than it may, and is one step to take back. */
export function expectMended(each: MendCase): readonly Mend[] {
  const { mends } = found(each);
  for (const [index, { say }] of mends.entries()) {
    const { estimate, finding, mends: again } = found(each);
    const before = said(estimate);
    const mend = again[index];
    if (!mend) throw new Error('the same notebook offers the same mends');
    done(estimate.mend(mend));
    const left = estimate
      .findings()
      .filter((f) => f.code === each.code && f.message === finding.message);
    expect([say, left]).toEqual([say, []]);
    const asked = said(estimate).filter((one) => !before.includes(one));
    const allowed = new Set(each.asks ?? []);
    const other = asked.filter((one) => !allowed.has(one.slice(0, one.indexOf(':'))));
    expect([say, other]).toEqual([say, []]);
    const gone = !said(estimate).includes(`${each.code}: ${each.cell ?? ''}`);
    expect([say, gone || allowed.has(each.code)]).toEqual([say, true]);
    estimate.undo();
    expect([say, estimate.notebook.text, estimate.canUndo()]).toEqual([say, each.text, null]);
  }
  return mends;
}
