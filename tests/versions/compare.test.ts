// Two versions side by side: what a person did is named, and told from what only follows.
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { type CellChange, type Way } from '../../src/versions/cell-change.ts';
import { type Comparison, compare } from '../../src/versions/compare.ts';
import { keptInOrder } from '../../src/versions/kept-in-order.ts';
import { type Run, wordsApart } from '../../src/versions/words-apart.ts';
import type { Estimate } from '../../src/notebook/estimate.ts';
import type { Cell } from '../../src/notebook/document.ts';
import { done } from '../notebook/cells.ts';
import { apart, edited } from './sides.ts';

const TEXT = `# Kestrel Court

## Landing

- Length: 12 ft
  - from: measured
- Width: 4 ft
- Waste: 10%
- Bag price: $6.48 per bag
  - from: quoted 2026-03-03
- Crew: 3 hours
- Posts: 4 posts
- Pace: 40 sq ft per hour
- Stain: cedar
  - choices: cedar, pine
- Rail: ?
- Area: length by width
- Bags: area plus waste, in bags of 2 sq ft per bag
- Concrete: bags at bag price
  - cost: material
- Broken: lenght by width

## Summary

- Whole: total cost of every part
`;

type Edit = (estimate: Estimate, cell: (name: string) => Cell) => void;

const comparing = (edit: Edit, text = TEXT): Comparison => compare(...edited(text, edit));

/** `Length: size`, in order. */
function waysIn({ parts }: Comparison): readonly string[] {
  return parts.flatMap(({ cells }) =>
    cells.map(({ before, after, ways }) => `${(after ?? before)?.name ?? ''}: ${ways.join(' ')}`),
  );
}

function onlyChange(comparison: Comparison): CellChange {
  const cells = comparison.parts.flatMap((part) => part.cells);
  expect(cells).toHaveLength(1);
  return cells[0];
}

const set =
  (name: string, formula: string): Edit =>
  (estimate, cell) =>
    done(estimate.setFormula(cell(name).id, formula));

describe('one change is told as what it is', () => {
  test.for<readonly [string, string, Way, CellChange['toward']]>([
    ['Bag price', '$6.92 per bag', 'price', 'more'],
    ['Bag price', '$6.48 per sq ft', 'price', null],
    ['Length', '14 ft', 'size', 'more'],
    ['Length', '3.5 m', 'size', 'less'],
    ['Length', '144 in', 'size', 'same'],
    ['Waste', '8%', 'share', 'less'],
    ['Crew', '4 hours', 'time', 'more'],
    ['Posts', '6 posts', 'count', 'more'],
    ['Pace', '35 sq ft per hour', 'rate', 'less'],
    ['Stain', 'pine', 'answer', null],
    ['Rail', '$40', 'known', null],
    ['Length', '?', 'unknown', null],
    ['Area', 'length by width plus 5%', 'formula', 'more'],
    ['Length', 'width times 3', 'formula', 'same'],
    ['Broken', 'length by width', 'mended', null],
    ['Area', 'lenght by width', 'broken', null],
  ])('%s set to %s: %s', ([name, formula, way, toward]) => {
    expect(onlyChange(comparing(set(name, formula)))).toMatchObject({ ways: [way], toward });
  });

  test('set by hand, another source, another remark, tied, another line of the costs', () => {
    const comparison = comparing((e, cell) => {
      done(e.setByHand(cell('Area').id, '50 sq ft', 'the client said so'));
      done(e.setRemark(cell('Length').id, 'from', 'measured again'));
      done(e.setRemark(cell('Width').id, 'note', 'to the fence'));
      done(e.setRemark(cell('Concrete').id, 'cost', 'subcontract'));
      done(e.tie([cell('Crew').id, cell('Pace').id], 'one crew'));
    });
    expect(waysIn(comparison)).toEqual([
      'Length: source',
      'Width: remarks',
      'Crew: remarks',
      'Pace: remarks',
      'Area: by-hand source',
      'Concrete: line',
    ]);
  });

  test('added and removed', () => {
    const comparison = comparing((e, cell) => {
      done(e.addCell(cell('Width').part, cell('Width').id, 'Thickness', '4 in'));
      done(e.removeCell(cell('Crew').id));
    });
    expect(waysIn(comparison)).toEqual(['Crew: removed', 'Thickness: added']);
  });
});

describe('a rename is not a loss', () => {
  test('of a cell: it is renamed, and formulas that say its new name are no changes', () => {
    const comparison = comparing((e, cell) => done(e.rename(cell('Length').id, 'Run of the slab')));
    expect(onlyChange(comparison)).toMatchObject({
      before: { name: 'Length' },
      after: { name: 'Run of the slab' },
      ways: ['renamed'],
    });
    expect(comparison.price.difference).toBe('0.00');
  });

  test('of a cell whose value changed with it, in a formula that changed with it', () => {
    const comparison = comparing((e, cell) => {
      done(e.rename(cell('Length').id, 'Run'));
      done(e.setFormula(cell('Run').id, '14 ft'));
      done(e.setFormula(cell('Area').id, 'run by width plus 5%'));
    });
    expect(waysIn(comparison)).toEqual(['Run: renamed size', 'Area: formula']);
    const area = comparison.parts[0]?.cells.find(({ after }) => after?.name === 'Area');
    expect(area?.words).toEqual([
      { kind: 'same', text: 'run by width' },
      { kind: 'new', text: ' plus 5%' },
    ]);
  });

  test('of a part', () => {
    const comparison = comparing((e, cell) => done(e.renamePart(cell('Length').part, 'Pad')));
    expect(comparison.parts).toMatchObject([
      { before: 'Landing', after: 'Pad', ways: ['renamed'], cells: [] },
    ]);
  });
});

describe('parts and places', () => {
  test('a cell that moved within its part, and one to another part', () => {
    const comparison = comparing((e, cell) => {
      const summary = cell('Whole').part;
      done(e.moveCell(cell('Waste').id, { part: cell('Waste').part, place: 0 }, 'kept'));
      done(e.moveCell(cell('Crew').id, { part: summary, place: 0 }, 'kept'));
    });
    expect(waysIn(comparison)).toEqual(['Waste: moved', 'Crew: moved']);
    expect(comparison.parts[1]?.cells[0]).toMatchObject({
      before: { part: 'Landing' },
      after: { part: 'Summary' },
    });
  });

  test('a part that was added, one that went, and what each cost', () => {
    const steps = '## Steps\n\n- Stone: $90\n  - cost: material\n';
    const [before, after] = apart(
      `${TEXT}\n${steps}`,
      `${TEXT}\n## Path\n\n- Gravel: $40\n  - cost: material\n`,
    );
    expect(compare(before, after).parts).toMatchObject([
      { before: 'Summary', after: 'Summary', ways: [], cells: [], follows: [{ toward: 'less' }] },
      { before: null, after: 'Path', ways: ['added'], direct: { difference: '40.00' } },
      { before: 'Steps', after: null, ways: ['removed'], direct: { difference: '-90.00' } },
    ]);
  });

  test('parts that changed places', () => {
    const text = '# K\n\n## A\n\n- X: 1\n\n## B\n\n- Y: 2\n\n## C\n\n- Z: 3\n';
    const comparison = comparing((e, cell) => done(e.movePart(cell('Z').part, 0, 'kept')), text);
    expect(comparison.parts).toMatchObject([{ after: 'C', ways: ['moved'], cells: [] }]);
  });

  it('keeps the most in order', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(30), { maxLength: 9 }), (places) => {
        const kept = keptInOrder(places).map((i) => places[i] ?? 0);
        expect(kept).toEqual(kept.toSorted((a, b) => a - b));
        let best = 0;
        for (let set = 0; set < 2 ** places.length; set++) {
          const some = places.filter((_, i) => set & (1 << i));
          if (some.every((place, i) => i === 0 || place > (some[i - 1] ?? 0)))
            best = Math.max(best, some.length);
        }
        expect(kept).toHaveLength(best);
      }),
    );
  });
});

describe('what follows', () => {
  it('is told beside what was done, with the totals', () => {
    const comparison = comparing(set('Bag price', '$7.48 per bag'));
    expect(waysIn(comparison)).toEqual(['Bag price: price']);
    const follows = comparison.parts.flatMap((part) => part.follows);
    expect(follows.map(({ before, after }) => [after.name, before.shown, after.shown])).toEqual([
      ['Concrete', '$174.96', '$201.96'],
      ['Whole', '$174.96', '$201.96'],
    ]);
    expect(comparison.price).toEqual({ before: '174.96', after: '201.96', difference: '27.00' });
    expect(comparison.parts[0]?.direct.difference).toBe('27.00');
  });

  it('is nothing where nothing changed', () => {
    expect(comparing(() => undefined).parts).toEqual([]);
  });
});

describe('tables row by row', () => {
  const table =
    '# K\n\n## P\n\n- Bays:\n  | bay | length | width: length by 2 |\n  | --- | --- | --- |\n' +
    '  | A | 4 ft | |\n  | B | 5 ft | |\n  | C | 6 ft | |\n';
  const rowsOf = (after: string) => {
    const change = onlyChange(compare(...apart(table, after))).table;
    return [
      change?.columns,
      change?.rows.map(({ before, after, cells }) => [
        before,
        after,
        cells.map(({ column, before: was, after: is }) => `${column}: ${was} → ${is}`),
      ]),
    ];
  };

  it('tells a row added, one removed and one changed', () => {
    const after = table
      .replace('  | A | 4 ft | |\n', '')
      .replace('| B | 5 ft | |', '| B | 5 ft 6 in | |')
      .replace('  | C | 6 ft | |\n', '  | C | 6 ft | |\n  | D | 7 ft | |\n');
    expect(rowsOf(after)).toEqual([
      [],
      [
        [0, null, ['bay: A → ', 'length: 4 ft → ']],
        [1, 0, ['length: 5 ft → 5 ft 6 in']],
        [null, 2, ['bay:  → D', 'length:  → 7 ft']],
      ],
    ]);
  });

  it('tells a column with another formula, one renamed and one added', () => {
    expect(rowsOf(table.replace('width: length by 2', 'width: length by 3'))).toEqual([
      [{ kind: 'formula', name: 'width', before: 'length by 2', after: 'length by 3' }],
      [],
    ]);
    const added = table
      .replace('| width: length by 2 |', '| width: length by 2 | note |')
      .replace('| --- |\n', '| --- | --- |\n')
      .replace('| A | 4 ft | |', '| A | 4 ft | | wet |');
    expect(rowsOf(added)).toEqual([[{ kind: 'added', name: 'note' }], [[0, 0, ['note:  → wet']]]]);
  });

  it('names a column that was renamed', () => {
    const comparison = comparing(
      (e, cell) => done(e.renameColumn(cell('Bays').id, 1, 'run')),
      table,
    );
    expect(onlyChange(comparison).table?.columns).toContainEqual({
      kind: 'renamed',
      name: 'run',
      was: 'length',
    });
  });
});

describe('formulas word by word', () => {
  const text = (runs: readonly Run[], gone: Run['kind']): string =>
    runs
      .filter(({ kind }) => kind !== gone)
      .map((run) => run.text)
      .join('');

  test.for<readonly [string, string, string]>([
    ['slab area at $5 per sq ft', 'slab area at $6 per sq ft', 'slab area at $[-5][+6] per sq ft'],
    ['length by width', 'length by width by 2', 'length by width[+ by 2]'],
    ['a b c d', 'a x y d', 'a [-b c][+x y] d'],
    ['7 1/4 in', '7 3/4 in', '7 [-1/4][+3/4] in'],
  ])('%s → %s', ([before, after, said]) => {
    const runs = wordsApart(before, after);
    const marks = {
      same: (t: string) => t,
      gone: (t: string) => `[-${t}]`,
      new: (t: string) => `[+${t}]`,
    };
    expect(runs.map((run) => marks[run.kind](run.text)).join('')).toBe(said);
  });

  it('puts both wordings together again', () => {
    const words = fc.array(
      fc.constantFrom('a', 'bags', ' ', '  ', '+', '1.5', '1/2', 'x', '$', '–', '\n'),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(words, words, (one, other) => {
        const [before, after] = [one.join(''), other.join('')];
        const runs = wordsApart(before, after);
        expect(text(runs, 'new')).toBe(before);
        expect(text(runs, 'gone')).toBe(after);
        if (before === after) expect(runs.every(({ kind }) => kind === 'same')).toBe(true);
      }),
    );
  });
});

describe('versions that share no keys', () => {
  it('match by name, and a cell in place that only has another name is renamed', () => {
    const [before, after] = apart(TEXT, TEXT.replace('- Crew: 3 hours', '- Mason: 3 hours'));
    expect(waysIn(compare(before, after))).toEqual(['Mason: renamed']);
  });

  it('give the same pairs whichever comes first', () => {
    const [before, after] = apart(TEXT, TEXT.replace('- Crew: 3 hours', '- Mason: 4 hours'));
    expect(waysIn(compare(before, after))).toEqual(['Crew: removed', 'Mason: added']);
    expect(waysIn(compare(after, before))).toEqual(['Mason: removed', 'Crew: added']);
  });
});
