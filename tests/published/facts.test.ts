// Figures from codes, standards, manuals and textbooks come out of formulas as they are printed,
// or as they ought to have been: `left-for-later.json` lists what is not worked here, and why.
import { describe, expect, test } from 'vitest';
import { FACTS, type Check, type Fact, notebookOf } from './facts.ts';
import { type Opened, opened } from './opened.ts';

const notebooks = new Map<string, Opened>();

/** One notebook a fact, worked when the first of its checks is. */
function worked(fact: Fact): Opened {
  const notebook = notebooks.get(fact.id) ?? opened(notebookOf(fact));
  notebooks.set(fact.id, notebook);
  return notebook;
}

/** What a check comes to, in a form that reads well when it is not what was published. */
function cameTo(check: Check, notebook: Opened): unknown {
  if (typeof check.value === 'boolean') return notebook.holds(check.name);
  if (typeof check.value === 'string') return notebook.shown(check.name);
  const [unit, number] = notebook.figure(check.name);
  const near = Math.abs(number - check.value) <= (check.tolerance ?? 0);
  return { unit, number: near ? check.value : number };
}

function published(check: Check): unknown {
  return typeof check.value === 'number'
    ? { unit: check.unit ?? '', number: check.value }
    : check.value;
}

describe.each(Object.entries(FACTS))('%s', (_topic, facts) => {
  test.each(facts.flatMap((fact) => fact.checks.map((check) => ({ fact, check }))))(
    '$fact.id $check.name is $check.value $check.unit ($fact.source)',
    ({ fact, check }) => {
      expect(cameTo(check, worked(fact))).toEqual(published(check));
    },
  );
});
