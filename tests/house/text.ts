// House rules for the text of every committed file, whatever its language.
// The words looked for are put together here, so that this file does not hold them itself.
import { posix } from 'node:path';

/** What a pattern finds is wrong wherever it stands. */
const NOWHERE: readonly (readonly [string, RegExp])[] = [
  [
    'a path of one machine',
    /(?<![\w.@:/-])(?:file:\/\/)?\/(?:home|root|Users|work|tmp|private|mnt)\/\w/,
  ],
  ['a path of one machine', /\b[A-Z]:\\+Users\\/],
  ['the address of a registry', new RegExp(['registry', 'npmjs|yarnpkg'].join('\\.(?:') + ')')],
  ['work left for later', new RegExp(`\\b(?:${['TO', 'FIX', 'XX'].map(later).join('|')})\\b`)],
  ['a note about how it came to be', new RegExp(['\\bissue', '#?\\d'].join(' '), 'i')],
];

const UNDER_TESTS: readonly (readonly [string, RegExp])[] = [
  [
    'a test left out or run alone',
    /\b(?:test|it|describe|suite)(?:\.\w+)*\.(?:only|skip|skipIf|runIf|todo|fails)\b/,
  ],
  ['a test left out or run alone', /^\s*(?:fit|xit|xtest|fdescribe|xdescribe)\(/m],
];

function later(start: string): string {
  return start + { TO: 'DO', FIX: 'ME', XX: 'X' }[start];
}

/** What is wrong with the text of a file, as sentences with the line. */
export function textFaults(file: string, text: string): readonly string[] {
  const patterns = file.startsWith('tests/') ? [...NOWHERE, ...UNDER_TESTS] : NOWHERE;
  const faults = patterns.flatMap(([what, pattern]) => {
    const found = pattern.exec(text);
    return found ? [`${file}:${lineOf(text, found.index)} holds ${what}: ${found[0].trim()}`] : [];
  });
  if (posix.basename(file) === 'package-lock.json' && text.includes('"resolved"')) {
    faults.push(`${file} says where packages were fetched; install with this project's .npmrc`);
  }
  return [...faults, ...strayPaths(file, text)];
}

/** Quoted relative paths that lead out of the project. */
function strayPaths(file: string, text: string): readonly string[] {
  return [...text.matchAll(/['"`(]((?:\.\.\/)+[\w./-]*)/g)]
    .filter(([, to = '']) => posix.join(posix.dirname(file), to).startsWith('..'))
    .map(
      (found) => `${file}:${lineOf(text, found.index)} leads out of the project: ${found[1] ?? ''}`,
    );
}

function lineOf(text: string, index: number): number {
  return text.slice(0, index).split('\n').length;
}
