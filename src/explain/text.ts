// The whole working as plain text that reads aloud: answer first, steps going down, what stands
// below a step further in, down to the givens with their sources, and what the number goes into.
import type { Step, Working } from './step.ts';

/** As many steps as one text holds; what is folded away beyond them is named. */
export const STEPS_IN_TEXT = 300;

/** Characters; steps further in than this stand no further in: a page is only so wide. */
const FURTHEST_IN = 24;

export function workingText(working: Working): string {
  const into = goesIntoSentence(working);
  const lines = [
    `Working of ${working.name}: ${working.shown}`,
    '',
    ...linesOf(
      working.steps.map((step) => (step.cell === working.cell ? { ...step, name: null } : step)),
    ),
    '',
    into,
  ];
  return `${lines.join('\n')}\n`;
}

export function goesIntoSentence(working: Working): string {
  const names = working.goesInto.map((into) => into.name);
  if (names.length === 0) return `${working.name} goes into nothing else yet.`;
  const last = names.slice(-1).join('');
  return names.length === 1
    ? `${working.name} goes into ${last}.`
    : `${working.name} goes into ${names.slice(0, -1).join(', ')} and ${last}.`;
}

/** A step of the whole working as it is read from top to bottom, and how far in it stands. */
export interface ToldStep {
  readonly step: Step;
  readonly indent: string;
}

/** Depth first, without recursion; folded steps are opened as long as there is room. */
export function toldSteps(steps: readonly Step[]): readonly ToldStep[] {
  const told: ToldStep[] = [];
  const waiting: ToldStep[] = steps.toReversed().map((step) => ({ step, indent: '' }));
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const { indent } = next;
    const step = told.length < STEPS_IN_TEXT ? (next.step.open?.() ?? next.step) : next.step;
    told.push({ step, indent });
    const further = indent.length < FURTHEST_IN ? `${indent}  ` : indent;
    waiting.push(...step.parts.map((part) => ({ step: part, indent: further })).toReversed());
  }
  return told;
}

function linesOf(steps: readonly Step[]): readonly string[] {
  return toldSteps(steps).flatMap(({ step, indent }) => [
    ...stepLines(step).map((line) => `${indent}${line}`),
    ...(step.open ? [`${indent}  ${unfinished(step)}`] : []),
  ]);
}

/** Where the text ends before the working does. */
export function unfinished(step: Step): string {
  return step.name === null
    ? 'The working goes on from here.'
    : `The working goes on from here: ask for that of ${step.name}.`;
}

function stepLines(step: Step): readonly string[] {
  if (step.name !== null && step.words === 'given') return given(step, step.name);
  const head = step.name === null ? capital(step.words) : `${capital(step.name)}: ${step.words}`;
  const body = step.numbers === '' ? shownAfter(head, step) : [head, `  ${step.numbers}`];
  const isBareGiven = step.words === 'given' && step.source === null;
  return [...body, ...(isBareGiven ? ['  No source is written.'] : []), ...remarks(step)];
}

/** A step without a line of numbers says what it comes to after its words. */
function shownAfter(head: string, step: Step): readonly string[] {
  const isSentence = /[.?!]$/.test(step.words);
  if (step.result === '' || step.words === step.result || isSentence) return [head];
  return [
    step.referredTo && step.name !== null
      ? `${capital(step.name)}, ${step.result}, ${step.words}`
      : `${head}: ${step.result}`,
  ];
}

function given(step: Step, name: string): readonly string[] {
  const from = step.source ?? 'no source is written';
  const head = `${capital(name)}, ${step.result}: ${from}`;
  return [head, ...remarks({ ...step, source: null })];
}

function remarks(step: Step): readonly string[] {
  return [
    ...(step.numbers !== '' && !step.numbers.endsWith(step.result)
      ? [`  ${capital(step.result)}`]
      : []),
    ...(step.source === null ? [] : [`  From: ${step.source}`]),
    ...(step.note === null ? [] : [`  ${step.note}`]),
    ...(step.caution === null ? [] : [`  Caution: ${step.caution}`]),
  ];
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}
