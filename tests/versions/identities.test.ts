// Cells and parts keep who they are from one visit to the next, through renames, moves and edits outside.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { readNotebook } from '../../src/notebook/read-notebook.ts';
import {
  type KeptIdentities,
  keptIdentities,
  newIdentities,
  readIdentities,
  withNew,
} from '../../src/versions/identities.ts';
import { cellNamed, cellsIn, done } from '../notebook/cells.ts';

const TEXT = '# K\n\n- Rate: $5\n\n## P\n\n- A: 1 ft\n- B: 2 ft\n\n## Q\n\n- A: 3 ft\n';

function visit(text: string, kept: KeptIdentities | null) {
  const estimate = new Estimate(text);
  const identities = kept
    ? readIdentities(kept, estimate.notebook)
    : newIdentities(estimate.notebook, 'k');
  const keyOf = (name: string): string | undefined =>
    withNew(identities, estimate.notebook).cells.get(cellNamed(estimate.notebook, name).id);
  const keep = (): KeptIdentities =>
    keptIdentities(withNew(identities, estimate.notebook), estimate.notebook);
  return { estimate, identities, keyOf, keep };
}

describe('identities', () => {
  it('are kept in the order of the text', () => {
    expect(visit(TEXT, null).keep()).toEqual({
      stem: 'k',
      next: 7,
      parts: [
        { key: '', name: '', cells: [['k1', 'Rate']] },
        {
          key: 'k2',
          name: 'P',
          cells: [
            ['k3', 'A'],
            ['k4', 'B'],
          ],
        },
        { key: 'k5', name: 'Q', cells: [['k6', 'A']] },
      ],
    });
  });

  it('are the same at the next visit, after a rename, a move and a rename of the part', () => {
    const first = visit(TEXT, null);
    const [a, b] = [first.keyOf('P / A'), first.keyOf('B')];
    const { estimate } = first;
    const q = estimate.notebook.parts.find(({ name }) => name === 'Q')?.key ?? '';
    done(estimate.rename(cellNamed(estimate.notebook, 'P / A').id, 'Edge'));
    done(estimate.moveCell(cellNamed(estimate.notebook, 'B').id, { part: q, place: 0 }, 'kept'));
    done(estimate.renamePart(q, 'Landing'));
    const second = visit(estimate.notebook.text, first.keep());
    expect(second.keyOf('Edge')).toBe(a);
    expect(second.keyOf('Landing / B')).toBe(b);
    expect(second.keep()).toEqual(first.keep());
  });

  it('are never given twice, not even after a cell is gone', () => {
    const first = visit(TEXT, null);
    const gone = first.keyOf('B');
    done(first.estimate.removeCell(cellNamed(first.estimate.notebook, 'B').id));
    const second = visit(first.estimate.notebook.text, first.keep());
    const part = cellNamed(second.estimate.notebook, 'P / A').part;
    done(second.estimate.addCell(part, null, 'C', '4 ft'));
    expect(second.keyOf('C')).toBe('k7');
    expect(second.keyOf('C')).not.toBe(gone);
  });

  it('come back when a removal is undone', () => {
    const { estimate, identities } = visit(TEXT, null);
    const { id } = cellNamed(estimate.notebook, 'B');
    done(estimate.removeCell(id));
    const between = withNew(identities, estimate.notebook);
    done(estimate.undo());
    const back = withNew(between, estimate.notebook);
    expect(back.cells.get(cellNamed(estimate.notebook, 'B').id)).toBe(identities.cells.get(id));
  });

  it('are found by name and place where the text was edited elsewhere', () => {
    const kept = visit(TEXT, null).keep();
    const edited = TEXT.replace('- B: 2 ft', '- Width: 2 ft').replace(
      '- A: 3 ft',
      '- A: 4 ft\n- New: 1',
    );
    const there = visit(edited, kept);
    expect(there.keyOf('Width')).toBe('k4');
    expect(there.keyOf('Q / A')).toBe('k6');
    expect(there.keyOf('New')).toBe('k7');
  });

  it('are had by one cell each, whatever is written into the list', () => {
    const key = fc.constantFrom('k1', 'k2', 'k3', 'k9', '', 'other');
    const cells = fc.array(fc.tuple(key, fc.constantFrom('A', 'B', 'C')), { maxLength: 5 });
    const parts = fc.array(fc.record({ key, name: fc.constantFrom('', 'P', 'Q'), cells }), {
      maxLength: 4,
    });
    fc.assert(
      fc.property(parts, fc.nat(3), (listed, next) => {
        const notebook = readNotebook(TEXT);
        const found = readIdentities({ stem: 'k', next, parts: listed }, notebook);
        const keys = [...found.cells.values()];
        expect(keys).toHaveLength(cellsIn(notebook).length);
        expect(new Set(keys).size).toBe(keys.length);
        const partKeys = [...found.parts.values()];
        expect(new Set(partKeys).size).toBe(partKeys.length);
      }),
    );
  });
});
