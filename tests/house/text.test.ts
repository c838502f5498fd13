// What is committed could have been written on any machine, and leaves nothing for later.
import { describe, expect, test } from 'vitest';
import { committedFiles, contentOf } from './committed.ts';
import { textFaults } from './text.ts';

const files = committedFiles();

test('no committed text holds a path of one machine, a registry, work for later or a test left out', () => {
  expect(files).toContain('package-lock.json');
  const faults = files.flatMap((file) => {
    const content = contentOf(file);
    return content.includes(0) ? [] : textFaults(file, content.toString());
  });
  expect(faults).toEqual([]);
});

test('the top of the project holds what a newcomer needs and nothing more', () => {
  const top = new Set(files.map((file) => file.split('/')[0] ?? file));
  const known = ['README.md', 'DEVELOPERS.md', 'package.json', 'package-lock.json'];
  const more = ['vite.config.ts', 'src', 'templates', 'tests', 'shared'];
  const other = [...top].filter(
    (name) => !name.startsWith('.') && ![...known, ...more].includes(name),
  );
  expect(other).toEqual([]);
});

// Put together from pieces, so that this file does not break the rules it tests.
const path = (...names: string[]) => ['', ...names].join('/');
const dotted = (...names: string[]) => names.join('.');

describe('a planted fault is found', () => {
  test.for([
    ['README.md', `see ${path('home', 'ada', 'storyrod')}`, 'a path of one machine'],
    ['src/a.ts', `'${path('work', 'main', 'src')}'`, 'a path of one machine'],
    ['src/a.ts', `"file:/${path('', 'Users', 'ada')}"`, 'a path of one machine'],
    ['src/a.ts', `'${path('tmp', 'x')}'`, 'a path of one machine'],
    ['src/a.ts', ['C:', 'Users', 'ada'].join('\\'), 'a path of one machine'],
    [
      '.npmrc',
      `registry=https://${dotted('registry', 'npmjs', 'org')}/`,
      'the address of a registry',
    ],
    ['package-lock.json', `{"${'resol'}${'ved'}":"x"}`, 'says where packages were fetched'],
    ['src/a.ts', `// ${'TO' + 'DO'}: later`, 'src/a.ts:1 holds work left for later'],
    ['src/a.ts', `\n/* ${'FIX' + 'ME'} */`, 'src/a.ts:2 holds work left for later'],
    ['README.md', `closes ${'issue'} 12`, 'a note about how it came to be'],
    ['tests/a.test.ts', `${dotted('test', 'only')}('x', f)`, 'left out or run alone'],
    ['tests/a.test.ts', `${dotted('describe', 'skip')}('x', f)`, 'left out or run alone'],
    ['tests/a.test.ts', `${dotted('it', 'concurrent', 'todo')}('x')`, 'left out or run alone'],
    ['tests/a.test.ts', `${dotted('test', 'skipIf')}(true)('x', f)`, 'left out or run alone'],
    ['tests/a.test.ts', `x${'it'}('x', f)`, 'left out or run alone'],
    [
      'src/words/a.ts',
      `import x from '${'../'.repeat(3)}shared/a.json'`,
      'leads out of the project',
    ],
    ['vite.config.ts', `open('${'../'}shared/a.json')`, 'leads out of the project'],
  ] as const)('%s: %s', ([file, text, fault]) => {
    expect(textFaults(file, text).join('\n')).toContain(fault);
  });
});

describe('what is allowed stays allowed', () => {
  test.for([
    ['src/words/a.ts', `import x from '../../shared/a.json'`],
    ['src/ui/a.ts', `location.href = 'https://example.org/home/page'; skip(only);`],
    ['README.md', 'labour/work/waste; things to do; an issue to settle; /usr/share/fonts'],
    ['src/a.ts', `${dotted('test', 'only')}('not a test file')`],
  ] as const)('%s: %s', ([file, text]) => {
    expect(textFaults(file, text)).toEqual([]);
  });
});
