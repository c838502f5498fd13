// After an edit only what the edit touches is read again, and it comes to the same as reading all of it.
import fc from 'fast-check';
import { describe, expect, it, test, vi } from 'vitest';
import type { NotebookText } from '../../src/notebook/notebook-text.ts';
import { readNotebook } from '../../src/notebook/read-notebook.ts';
import { cellNamed, cellsIn, saidBy } from './cells.ts';
import { oddText, tidyText } from './random-text.ts';

// Many random cases: slow only where many are at work on one machine.
vi.setConfig({ testTimeout: 60_000 });

const piece = fc.constantFrom(
  '',
  'x',
  '\n',
  '\r',
  '\r\n',
  ' ',
  '#',
  '## ',
  '## New\n',
  '- New: 1 ft\n',
  '  - from: there\n',
  '```\n',
  '<!--\n',
  '-->\n',
  '---\n',
  '> ',
  '   ',
  '\n\n',
  ':',
  '|',
  '\uFEFF',
);
const cut = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  take: fc.nat(12),
  put: piece,
});

function cutText(
  text: string,
  { at, take, put }: { at: number; take: number; put: string },
): string {
  const from = Math.floor(at * text.length);
  return text.slice(0, from) + put + text.slice(Math.min(text.length, from + take));
}

describe('reading again after an edit', () => {
  test.for([
    ['tidy notebooks', tidyText],
    ['odd ones', oddText],
  ] as const)('says what reading all of it says, on %s', ([, texts]) => {
    fc.assert(
      fc.property(texts, fc.array(cut, { minLength: 1, maxLength: 6 }), (start, cuts) => {
        let text = start;
        let notebook = readNotebook(text);
        for (const one of cuts) {
          text = cutText(text, one);
          notebook = readNotebook(text, notebook);
          expect(saidBy(notebook)).toEqual(saidBy(readNotebook(text)));
          const ids = cellsIn(notebook).map((c) => c.id);
          expect(new Set(ids).size).toBe(ids.length);
          const keys = notebook.parts.map((p) => p.key);
          expect(new Set(keys).size).toBe(keys.length);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('reads only the part that was edited', () => {
    const text = Array.from({ length: 40 }, (_, i) => `## Part ${i}\n- Length: ${i} ft\n`).join(
      '\n',
    );
    const before = readNotebook(text) as NotebookText;
    const now = readNotebook(
      text.replace('- Length: 20 ft', '- Length: 21 ft'),
      before,
    ) as NotebookText;
    const fresh = now.sections.filter((section) => !before.sections.includes(section));
    expect(fresh.map((section) => section.name)).toEqual(['Part 20']);
  });
});

describe('cells keep their ids', () => {
  const text =
    '## Landing\n- Length: 12 ft\n- Width: 4 ft\n  - from: tape\n- Depth: 4 in\n\n## Steps\n- Rise: 7 in\n- Run: 11 in\n';
  const before = readNotebook(text);
  const id = (name: string, notebook = before): number => cellNamed(notebook, name).id;

  test.for([
    ['when a formula changes', ['- Width: 4 ft', '- Width: 5 ft'], 'Width', 'Width'],
    ['when a name changes in place', ['- Width:', '- Breadth:'], 'Width', 'Breadth'],
    [
      'when name and formula change in place',
      ['- Width: 4 ft', '- Breadth: 9 ft'],
      'Width',
      'Breadth',
    ],
    [
      'when one is put before',
      ['- Width: 4 ft', '- Height: 1 ft\n- Width: 4 ft'],
      'Width',
      'Width',
    ],
    ['when one before is removed', ['- Length: 12 ft\n', ''], 'Depth', 'Depth'],
    ['when the part is renamed', ['## Steps', '## Flight'], 'Run', 'Run'],
    ['when a part is put before', ['## Steps', '## New\n- Rise: 1 in\n\n## Steps'], 'Run', 'Run'],
    ['when a remark changes', ['  - from: tape', '  - from: plan'], 'Width', 'Width'],
  ] as const)('%s', ([, [from, to], old, now]) => {
    const after = readNotebook(text.replace(from, to), before);
    expect(id(now, after)).toBe(id(old));
  });

  it('when one moves to another part', () => {
    const moved = text
      .replace('- Depth: 4 in\n', '')
      .replace('- Run: 11 in\n', '- Run: 11 in\n- Depth: 4 in\n');
    expect(id('Depth', readNotebook(moved, before))).toBe(id('Depth'));
  });

  it('when the order of two is swapped', () => {
    const swapped = text.replace('- Rise: 7 in\n- Run: 11 in', '- Run: 11 in\n- Rise: 7 in');
    const after = readNotebook(swapped, before);
    expect([id('Rise', after), id('Run', after)]).toEqual([id('Rise'), id('Run')]);
  });

  it('and have them back when they come back', () => {
    const without = readNotebook(text.replace('- Depth: 4 in\n', ''), before);
    const more = readNotebook(`${without.text}- Going: 3 ft\n`, without);
    const back = readNotebook(more.text.replace('\n## Steps', '- Depth: 4 in\n\n## Steps'), more);
    expect(id('Depth', back)).toBe(id('Depth'));
    expect(id('Going', back)).toBe(id('Going', more));
  });

  it('and parts keep their keys through renaming, moving and return', () => {
    const key = (name: string, notebook: typeof before): string | undefined =>
      notebook.parts.find((p) => p.name === name)?.key;
    const renamed = readNotebook(text.replace('## Steps', '## Flight'), before);
    expect(key('Flight', renamed)).toBe(key('Steps', before));
    const gone = readNotebook(text.slice(0, text.indexOf('## Steps')), before);
    expect(key('Steps', gone)).toBeUndefined();
    expect(key('Steps', readNotebook(text, gone))).toBe(key('Steps', before));
    expect(id('Run', readNotebook(text, gone))).toBe(id('Run'));
  });
});
