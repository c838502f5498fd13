// Edits change their own span of the text and nothing else, and what is read back is what was meant.
import fc from 'fast-check';
import { describe, expect, it, test, vi } from 'vitest';
import type { Applied } from '../../src/notebook/estimate.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import type { Finding } from '../../src/notebook/document.ts';
import { readNotebook } from '../../src/notebook/read-notebook.ts';
import { cellNamed, cellsIn, done, linesOf, refusal, saidBy } from './cells.ts';
import { oddText, tidyText } from './random-text.ts';

// Many random cases: slow only where many are at work on one machine.
vi.setConfig({ testTimeout: 60_000 });

const LANDING = `# Kestrel Court

## Landing
- Slab length: 12 ft
  - from: tape
- Slab width: 4 ft
- Slab area: slab length by slab width

## Summary
`;

function edited(
  text: string,
  edit: (estimate: Estimate, id: (name: string) => number) => Applied | Finding,
): string {
  const estimate = new Estimate(text);
  done(edit(estimate, (name) => cellNamed(estimate.notebook, name).id));
  return estimate.notebook.text;
}

describe('an edit writes as its neighbours are written', () => {
  test.for<
    [string, string, (e: Estimate, id: (name: string) => number) => Applied | Finding, string]
  >([
    [
      'a formula',
      LANDING,
      (e, id) => e.setFormula(id('Slab width'), ' 5 ft '),
      LANDING.replace('4 ft', '5 ft'),
    ],
    [
      'a formula with a line break',
      LANDING,
      (e, id) => e.setFormula(id('Slab width'), '5 ft\n- X: 1'),
      LANDING.replace('4 ft', '5 ft - X: 1'),
    ],
    [
      'an emptied formula',
      '- A: 1\n- B: 2\n',
      (e, id) => e.setFormula(id('A'), ''),
      '- A: \n- B: 2\n',
    ],
    [
      'a first formula',
      '- A:\n- B: 2\n',
      (e, id) => e.setFormula(id('A'), '3'),
      '- A: 3\n- B: 2\n',
    ],
    [
      'a cell after another',
      LANDING,
      (e, id) => e.addCell('part-1', id('Slab length'), 'Depth', '4 in'),
      LANDING.replace('- Slab width', '- Depth: 4 in\n- Slab width'),
    ],
    [
      'a cell at the end of a part',
      LANDING,
      (e) => e.addCell('part-1', null, 'Depth', '4 in'),
      LANDING.replace('\n\n## Summary', '\n- Depth: 4 in\n\n## Summary'),
    ],
    [
      'a cell in an empty part',
      LANDING,
      (e) => e.addCell('part-2', null, 'Fee', '$5'),
      `${LANDING.trimEnd()}\n\n- Fee: $5\n`,
    ],
    [
      'a cell above the first part',
      LANDING,
      (e) => e.addCell('', null, 'Fee', '$5'),
      LANDING.replace('\n\n## Landing', '\n\n- Fee: $5\n\n## Landing'),
    ],
    ['a cell in an empty text', '', (e) => e.addCell('', null, 'Fee', '$5'), '- Fee: $5'],
    [
      'a cell with stars',
      '* A: 1\n* B: 2',
      (e) => e.addCell('', null, 'C', '3'),
      '* A: 1\n* B: 2\n* C: 3',
    ],
    [
      'a cell with numbers',
      '8. A: 1\n9. B: 2\n',
      (e) => e.addCell('', null, 'C', '3'),
      '8. A: 1\n9. B: 2\n10. C: 3\n',
    ],
    [
      'a cell on Windows',
      '- A: 1\r\n- B: 2\r\n',
      (e, id) => e.addCell('', id('A'), 'C', '3'),
      '- A: 1\r\n- C: 3\r\n- B: 2\r\n',
    ],
    [
      'a first remark',
      LANDING,
      (e, id) => e.setRemark(id('Slab width'), 'from', 'plan'),
      LANDING.replace('4 ft\n', '4 ft\n  - from: plan\n'),
    ],
    [
      'a further remark',
      LANDING,
      (e, id) => e.setRemark(id('Slab length'), 'note', 'wet'),
      LANDING.replace('tape\n', 'tape\n  - note: wet\n'),
    ],
    [
      'a remark again',
      LANDING,
      (e, id) => e.setRemark(id('Slab length'), 'from', 'plan'),
      LANDING.replace('tape', 'plan'),
    ],
    [
      'a remark as others are set in',
      '- A: 1\n    * from: x\n- B: 2\n',
      (e, id) => e.setRemark(id('B'), 'from', 'y'),
      '- A: 1\n    * from: x\n- B: 2\n    * from: y\n',
    ],
    [
      'a remark under a number',
      '10. A: 1\n',
      (e, id) => e.setRemark(id('A'), 'from', 'y'),
      '10. A: 1\n    - from: y\n',
    ],
    [
      'a remark without a last line end',
      '- A: 1',
      (e, id) => e.setRemark(id('A'), 'from', 'y'),
      '- A: 1\n  - from: y',
    ],
    [
      'a remark below lines that go on',
      '- A: 1\n  and on\n- B: 2\n',
      (e, id) => e.setRemark(id('A'), 'from', 'y'),
      '- A: 1\n  and on\n  - from: y\n- B: 2\n',
    ],
    [
      'a remark taken out',
      LANDING,
      (e, id) => e.removeRemark(id('Slab length'), 'from'),
      LANDING.replace('  - from: tape\n', ''),
    ],
    [
      'a cell taken out with its remarks',
      LANDING,
      (e, id) => e.removeCell(id('Slab length')),
      LANDING.replace('- Slab length: 12 ft\n  - from: tape\n', ''),
    ],
    [
      'a cell taken out where its neighbours would run together',
      'Word\n1. A: 1\n2. B: 2\n',
      (e, id) => e.removeCell(id('A')),
      'Word\n\n2. B: 2\n',
    ],
    [
      'a value by hand',
      LANDING,
      (e, id) => e.setByHand(id('Slab area'), '50 sq ft', 'as built'),
      LANDING.replace('slab width\n', 'slab width\n  - by hand: 50 sq ft\n  - from: as built\n'),
    ],
    [
      'a part at the end',
      LANDING,
      (e) => e.addPart('Steps', null),
      `${LANDING.trimEnd()}\n\n## Steps\n`,
    ],
    [
      'a part between',
      LANDING,
      (e) => e.addPart('Steps', 'part-1'),
      LANDING.replace('## Summary', '## Steps\n\n## Summary'),
    ],
    ['a part in an empty text', '', (e) => e.addPart('Steps', null), '## Steps'],
  ])('%s', ([, text, edit, expected]) => {
    expect(edited(text, edit)).toBe(expected);
  });
});

test('a value by hand is taken back with its reason, and the formula was never lost', () => {
  const estimate = new Estimate(LANDING);
  const { id } = cellNamed(estimate.notebook, 'Slab area');
  done(estimate.setByHand(id, '50 sq ft', 'as built'));
  expect(estimate.shown(id)?.text).toBe('50 sq ft');
  expect(estimate.shownWorked(id)?.text).toBe('48 sq ft');
  done(estimate.setByHand(id, '51 sq ft', 'measured again'));
  expect(
    cellNamed(estimate.notebook, 'Slab area').remarks.map((r) => `${r.word}: ${r.text}`),
  ).toEqual(['by hand: 51 sq ft', 'from: measured again']);
  done(estimate.setByHand(id, null, null));
  expect(estimate.notebook.text).toBe(LANDING);
  expect(estimate.shown(id)?.text).toBe('48 sq ft');
});

describe('an edit that could not be read back is refused, and nothing changes', () => {
  test.for<[string, (e: Estimate, id: number) => Applied | Finding, string]>([
    ['an empty name', (e, id) => e.rename(id, ' '), 'not-a-name'],
    ['a name with a colon', (e, id) => e.rename(id, 'Slab: length'), 'not-a-name'],
    ['a name with a line break', (e, id) => e.rename(id, 'Slab\n# length'), 'not-a-name'],
    ['a name that starts with an amount', (e, id) => e.rename(id, '4 in slab'), 'not-a-name'],
    ['a name of nine words', (e, id) => e.rename(id, 'a b c d e f g h i'), 'not-a-name'],
    ['an operator for a name', (e) => e.addCell('part-1', null, 'Times', '3'), 'not-a-name'],
    ['a name that is taken', (e, id) => e.rename(id, 'slab WIDTH'), 'same-name'],
    [
      'a name that Markdown takes for a quote',
      (e, id) => e.rename(id, '> length'),
      'not-read-back',
    ],
    ['a name that Markdown takes for a list', (e, id) => e.rename(id, '- length'), 'not-read-back'],
    ['a name that hides what follows', (e, id) => e.rename(id, '<!-- length'), 'not-read-back'],
    ['a name that opens a fence', (e) => e.addCell('part-1', null, '```', '3'), 'not-read-back'],
    ['a remark without a word', (e, id) => e.setRemark(id, ' ', 'x'), 'not-a-remark'],
    ['a remark that is not there', (e, id) => e.removeRemark(id, 'note'), 'no-such-remark'],
    ['taking back what was not set', (e, id) => e.setByHand(id, null, null), 'not-by-hand'],
    ['an empty value by hand', (e, id) => e.setByHand(id, ' ', null), 'empty-by-hand'],
    ['a part without a name', (e) => e.addPart('', null), 'not-a-name'],
    ['a part of a name that is taken', (e) => e.addPart('landing', null), 'same-part-name'],
    ['a part whose name would lose its end', (e) => e.addPart('Steps #', null), 'not-read-back'],
    ['renaming what is no part', (e) => e.renamePart('', 'Front'), 'not-a-part'],
    [
      'a formula past the limit',
      (e, id) => e.setFormula(id, 'x'.repeat(2_000_001)),
      'text-too-long',
    ],
    [
      'a text past the limit',
      (e) =>
        e.replaceText({
          say: 'Paste',
          splices: [{ from: 0, to: 0, insert: 'x'.repeat(2_000_001) }],
        }),
      'text-too-long',
    ],
  ])('%s', ([, edit, code]) => {
    const estimate = new Estimate(LANDING);
    const before = estimate.notebook;
    expect(refusal(edit(estimate, cellNamed(before, 'Slab length').id)).code).toBe(code);
    expect(estimate.notebook).toBe(before);
    expect(estimate.canUndo()).toBeNull();
  });
});

test('names that programs trip over are names like any other', () => {
  const estimate = new Estimate(
    '## __proto__\n- __proto__: 3 ft\n- constructor: __proto__ times 2\n- toString: constructor plus 1 ft\n',
  );
  expect(linesOf(estimate.notebook)).toHaveLength(3);
  expect(estimate.shown(cellNamed(estimate.notebook, 'toString').id)?.text).toBe('7 ft');
  done(estimate.rename(cellNamed(estimate.notebook, '__proto__').id, 'hasOwnProperty'));
  expect(cellNamed(estimate.notebook, 'constructor').formula).toBe('hasOwnProperty times 2');
  expect(estimate.costs().parts[0].part).toBe('__proto__');
});

const words = fc.constantFrom(
  'gable',
  'truss',
  '# of posts',
  'ridge',
  'lf of decking',
  'Bags/post',
);
const formulas = fc.constantFrom(
  '3 ft',
  '?',
  '12 in plus 4 in',
  'slab length',
  '(',
  '- 4',
  '$5\n$6',
  '` * _',
  '',
);
const act = fc.oneof(
  fc.record({ kind: fc.constant('formula' as const), at: fc.nat(), text: formulas }),
  fc.record({ kind: fc.constant('rename' as const), at: fc.nat(), text: words }),
  fc.record({ kind: fc.constant('add' as const), at: fc.nat(), text: words }),
  fc.record({ kind: fc.constant('remove' as const), at: fc.nat(), text: words }),
  fc.record({ kind: fc.constant('remark' as const), at: fc.nat(), text: formulas }),
  fc.record({ kind: fc.constant('by hand' as const), at: fc.nat(), text: formulas }),
  fc.record({ kind: fc.constant('part' as const), at: fc.nat(), text: words }),
);
type Act = typeof act extends fc.Arbitrary<infer T> ? T : never;

function perform(estimate: Estimate, { kind, at, text }: Act): Applied | Finding | null {
  const cells = cellsIn(estimate.notebook);
  const cell = cells[at % Math.max(1, cells.length)];
  const parts = estimate.notebook.parts;
  const part = parts[at % parts.length];
  switch (kind) {
    case 'add':
      return estimate.addCell(part.key, null, text, '3 ft');
    case 'part':
      return part.key === '' ? estimate.addPart(text, null) : estimate.renamePart(part.key, text);
    default:
      if (!cell) return null;
  }
  switch (kind) {
    case 'formula':
      return estimate.setFormula(cell.id, text);
    case 'rename':
      return estimate.rename(cell.id, text);
    case 'remove':
      return estimate.removeCell(cell.id);
    case 'remark':
      return estimate.setRemark(cell.id, 'note', text);
    case 'by hand':
      return estimate.setByHand(cell.id, text, 'because');
  }
}

describe('whatever is done to whatever notebook', () => {
  test.for([
    ['tidy', tidyText],
    ['odd', oddText],
  ] as const)(
    'the text changes in the spans of the change alone, undo brings it back, redo again (%s)',
    ([, texts]) => {
      let made = 0;
      fc.assert(
        fc.property(texts, fc.array(act, { minLength: 1, maxLength: 5 }), (text, acts) => {
          const estimate = new Estimate(text);
          const states = [text];
          for (const one of acts) {
            const before = estimate.notebook;
            const result = perform(estimate, one);
            if (result === null || 'code' in result) {
              expect(estimate.notebook).toBe(before);
              continue;
            }
            made++;
            let rest = '';
            let at = 0;
            for (const splice of result.change.splices) {
              rest += before.text.slice(at, splice.from) + splice.insert;
              at = splice.to;
            }
            expect(estimate.notebook.text).toBe(rest + before.text.slice(at));
            expect(saidBy(estimate.notebook)).toEqual(saidBy(readNotebook(estimate.notebook.text)));
            const changedCells = cellsIn(estimate.notebook).filter(
              (c) =>
                !cellsIn(before).some(
                  (o) => o.id === c.id && o.name === c.name && o.formula === c.formula,
                ),
            );
            if (one.kind === 'formula') expect(changedCells.length).toBeLessThanOrEqual(1);
            states.push(estimate.notebook.text);
          }
          for (const state of states.slice(0, -1).toReversed()) {
            expect(estimate.undo()).not.toBeNull();
            expect(estimate.notebook.text).toBe(state);
          }
          expect(estimate.undo()).toBeNull();
          for (const state of states.slice(1)) {
            expect(estimate.redo()).not.toBeNull();
            expect(estimate.notebook.text).toBe(state);
          }
          expect(estimate.redo()).toBeNull();
        }),
        { numRuns: 60 },
      );
      expect(made).toBeGreaterThan(40);
    },
  );

  it('comes to the same numbers as the text read from nothing', () => {
    fc.assert(
      fc.property(tidyText, fc.array(act, { minLength: 1, maxLength: 5 }), (text, acts) => {
        const estimate = new Estimate(text);
        for (const one of acts) perform(estimate, one);
        const fresh = new Estimate(estimate.notebook.text);
        const shown = (e: Estimate): unknown =>
          cellsIn(e.notebook).map((c) => [c.name, e.shown(c.id)?.text, e.state(c.id).outcome.kind]);
        expect(shown(estimate)).toEqual(shown(fresh));
        expect(estimate.costs().total.direct).toBe(fresh.costs().total.direct);
        expect(estimate.findings().map((f) => f.message)).toEqual(
          fresh.findings().map((f) => f.message),
        );
      }),
      { numRuns: 50 },
    );
  });
});

test('a step undone is gone once something else is done', () => {
  const estimate = new Estimate('- A: 1\n');
  const { id } = cellNamed(estimate.notebook, 'A');
  done(estimate.setFormula(id, '2'));
  expect([estimate.canUndo(), estimate.canRedo()]).toEqual(['A: 2', null]);
  estimate.undo();
  expect([estimate.canUndo(), estimate.canRedo()]).toEqual([null, 'A: 2']);
  done(estimate.setFormula(id, '3'));
  expect([estimate.canUndo(), estimate.canRedo()]).toEqual(['A: 3', null]);
  expect(estimate.notebook.text).toBe('- A: 3\n');
});

test('an edit works what it reaches and nothing else', () => {
  const estimate = new Estimate(LANDING);
  const id = (name: string): number => cellNamed(estimate.notebook, name).id;
  expect(done(estimate.setFormula(id('Slab width'), '5 ft')).ran).toEqual([
    id('Slab width'),
    id('Slab area'),
  ]);
  expect(done(estimate.setRemark(id('Slab width'), 'note', 'wet')).ran).toEqual([]);
  expect(done(estimate.undo()).ran).toEqual([]);
  expect(done(estimate.undo()).ran).toEqual([id('Slab width'), id('Slab area')]);
});
