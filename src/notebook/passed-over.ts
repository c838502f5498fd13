// Lines whose name can't be one, so that they stay prose: pointed out where what follows the colon is a formula.
// Whether it is one, the reader of formulas says: prose has words in it that are neither names nor amounts.
import type { Reading } from '../language/reading.ts';
import type { Finding } from './document.ts';
import type { Section } from './identified.ts';
import { type NameProblem, sayNameProblem } from './names.ts';

type Read = (part: string, text: string) => Reading;

export function passedOver(section: Section, start: number, read: Read): readonly Finding[] {
  return section.passedOver
    .filter(({ formula }) => isFormula(formula, read(section.key, formula)))
    .map(({ name, problem, spot }) => ({
      code: problem === 'operator-word' ? 'name-is-a-word' : 'not-a-name',
      message: `${sayNameProblem(name, problem)} The line is kept as prose and isn't worked. ${sayMend(problem)}`,
      part: section.key,
      cell: null,
      spot: { from: spot.from + start, to: spot.to + start },
    }));
}

/** It can be read; or all that is at fault is a name one slip away from a known one, beside an amount. */
function isFormula(text: string, { problems, tree }: Reading): boolean {
  if (text === '') return false;
  if (problems.length === 0) return tree.kind !== 'hole';
  return /\d/.test(text) && problems.every((p) => p.code === 'unknown-name' && p.fixes.length > 0);
}

function sayMend(problem: NameProblem): string {
  switch (problem) {
    case 'operator-word':
      return 'To have it worked, give it a name of two words or more.';
    case 'too-long':
      return 'To have it worked, shorten the name.';
    default:
      return 'To have it worked, give it another name.';
  }
}
