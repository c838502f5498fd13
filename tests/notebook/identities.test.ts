// No identity is ever had by two: what comes back from memory is in use nowhere else in the notebook.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { readNotebook } from '../../src/notebook/read-notebook.ts';
import { cellNamed, cellsIn, done, shownIn } from './cells.ts';

const keyOf = (e: Estimate, name: string): string => {
  const part = e.notebook.parts.find((p) => p.name === name);
  if (!part) throw new Error(`no part ${name}`);
  return part.key;
};

describe('an identity that came back', () => {
  it('is forgotten under the name it had: a cell that moves on leaves no twin behind', () => {
    const e = new Estimate('## P\n\n- A: 1 ft\n- B: 2 ft\n\n## Q\n\n- C: 3 ft\n');
    done(e.removeCell(cellNamed(e.notebook, 'A').id));
    done(e.undo());
    const { text } = e.notebook;
    const at = text.indexOf('- A: 1 ft\n');
    const move = [
      { from: at, to: at + 10, insert: '' },
      { from: text.length, to: text.length, insert: '- A: 1 ft\n' },
    ];
    done(e.replaceText({ say: 'Move', splices: move }));
    done(e.addCell(keyOf(e, 'P'), null, 'A', '9 ft'));
    expect(shownIn(e, 'P / A')).toBe('9 ft');
    expect(shownIn(e, 'Q / A')).toBe('1 ft');
    expect(cellNamed(e.notebook, 'P / A').id).not.toBe(cellNamed(e.notebook, 'Q / A').id);
  });

  it('is forgotten under the name it had: a part renamed since is not taken for a new one', () => {
    const e = new Estimate(
      '## Landing\n\n- Fee: $5\n  - cost: fee\n\n## Summary\n\n- Direct: total cost of every part\n',
    );
    done(e.addPart('Steps', null));
    done(e.addPart('Slab', null));
    for (const step of [e.undo(), e.undo(), e.redo(), e.redo()]) done(step);
    done(e.renamePart(keyOf(e, 'Steps'), 'Stair'));
    done(e.insertTemplate('# Steps\n\n## Steps\n\n- Paint: $7\n  - cost: fee\n'));
    expect(keyOf(e, 'Steps')).not.toBe(keyOf(e, 'Stair'));
    expect(shownIn(e, 'Direct')).toBe('$12.00');
    expect(e.costs().total.direct).toBe('12.00');
  });
});

describe('whatever is moved, taken out and put back', () => {
  const line = fc.constantFrom('## P', '## Q', '## R', '- A: 1 ft', '- B: 2 ft', '- C: 3 ft');
  const move = fc.record({ take: fc.nat(11), put: fc.nat(11), line: fc.option(line) });

  it('no two cells and no two parts have one identity', () => {
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 4, maxLength: 10 }),
        fc.array(move, { minLength: 4, maxLength: 14 }),
        (start, moves) => {
          const lines = [...start];
          let notebook = readNotebook(`# T\n\n${lines.join('\n')}\n`);
          for (const { take, put, line } of moves) {
            const [taken = '- A: 1 ft'] = lines.splice(take % lines.length, 1);
            if (line) lines.splice(put % (lines.length + 1), 0, line);
            else if (put % 3 > 0) lines.splice(put % (lines.length + 1), 0, taken);
            if (lines.length === 0) lines.push(taken);
            notebook = readNotebook(`# T\n\n${lines.join('\n')}\n`, notebook);
            const ids = cellsIn(notebook).map((c) => c.id);
            expect(new Set(ids).size).toBe(ids.length);
            const keys = notebook.parts.map((p) => p.key);
            expect(new Set(keys).size).toBe(keys.length);
          }
        },
      ),
      { numRuns: 600 },
    );
  });
});
