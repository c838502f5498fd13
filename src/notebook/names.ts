// What can be a name: a cell's, a part's, and how two of them are compared.
import { OPERATOR_WORDS } from '../language/words.ts';

/** Two names are the same when these are: case and blanks don't tell them apart. */
export function nameKey(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase();
}

export type NameProblem =
  | 'empty'
  | 'too-long'
  | 'starts-with-amount'
  | 'operator-word'
  | 'colon'
  | 'line-break';

/** Why this can't be a cell's name, or null when it can. */
export function nameProblem(name: string): NameProblem | null {
  if (/[\r\n\u2028\u2029\0]/.test(name)) return 'line-break';
  const key = nameKey(name);
  if (key === '') return 'empty';
  if (/:(\s|$)/.test(key)) return 'colon';
  if (startsWithAmount(key)) return 'starts-with-amount';
  if (OPERATOR_WORDS.has(key)) return 'operator-word';
  if (key.split(' ').length > 8) return 'too-long';
  return null;
}

/** In words, for the person who chose the name. */
export function sayNameProblem(name: string, problem: NameProblem): string {
  switch (problem) {
    case 'empty':
      return 'A cell needs a name of one to eight words.';
    case 'too-long':
      return `"${name}" is longer than eight words, too long to be a name.`;
    case 'starts-with-amount':
      return `"${name}" starts with an amount, so it can't be a name. Put a word first.`;
    case 'operator-word':
      return `"${name}" is a word that formulas work with, so it can't stand alone as a name.`;
    case 'colon':
      return `"${name}" has a colon in it; the name ends at the colon. Leave the colon out.`;
    case 'line-break':
      return 'A name stands on one line.';
  }
}

/** `4 in`, `$5`, `1/2`, `?`; but `2x8 joists` and `1st step` start with a word. */
function startsWithAmount(key: string): boolean {
  if (key.startsWith('?')) return true;
  if (!/^[-−+]?[$€£]?\s?(\d|\.\d|[¼½¾⅐-⅞])/u.test(key)) return false;
  return !/^\d+(x\d+|st|nd|rd|th)\b/.test(key);
}
