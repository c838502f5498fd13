// Every template of the project, edited cell by cell: spans, readings and numbers hold.
import fs from 'node:fs';
import path from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { cellNamed, cellsIn, done, saidBy } from './cells.ts';
import { readNotebook } from '../../src/notebook/read-notebook.ts';

// Many random cases: slow only where many are at work on one machine.
vi.setConfig({ testTimeout: 60_000 });

const folder = path.resolve(import.meta.dirname, '../../templates');
// The guide is no part to insert.
const templates = fs
  .readdirSync(folder)
  .filter((file) => file.endsWith('.md') && file !== 'guide.md');
const textOf = (file: string): string => fs.readFileSync(path.join(folder, file), 'utf8');
const values = (estimate: Estimate): readonly (string | undefined)[] =>
  cellsIn(estimate.notebook).map((cell) => estimate.shown(cell.id)?.text);

test('there are templates', () => {
  expect(templates.length).toBeGreaterThan(0);
});

describe.for(templates)('%s', (file) => {
  const text = textOf(file);

  test('is read without a finding about its text', () => {
    expect(readNotebook(text).findings).toEqual([]);
  });

  test('changes one formula at a time, in its own span alone', () => {
    const estimate = new Estimate(text);
    // A table is no formula to change.
    const formulas = cellsIn(estimate.notebook).filter((cell) => !cell.table);
    for (const { id, formula, formulaSpot } of formulas) {
      done(estimate.setFormula(id, '123 ft'));
      const { from, to } = formulaSpot;
      expect(estimate.notebook.text).toBe(`${text.slice(0, from)}123 ft${text.slice(to)}`);
      done(estimate.setFormula(id, formula));
      expect(estimate.notebook.text).toBe(text);
    }
    expect(saidBy(estimate.notebook)).toEqual(saidBy(readNotebook(text)));
    expect(values(estimate)).toEqual(values(new Estimate(text)));
  });

  test('renames one cell at a time without changing a number', () => {
    const estimate = new Estimate(text);
    const before = values(estimate);
    for (const { id, name } of cellsIn(estimate.notebook)) {
      done(estimate.rename(id, 'Kingbolt tally'));
      expect(values(estimate), name).toEqual(before);
      estimate.undo();
    }
    expect(estimate.notebook.text).toBe(text);
  });

  test('renames one part at a time without changing a number', () => {
    const estimate = new Estimate(text);
    const before = values(estimate);
    for (const { key, name } of estimate.notebook.parts.slice(1)) {
      done(estimate.renamePart(key, 'Kingbolt yard'));
      expect(values(estimate), name).toEqual(before);
      estimate.undo();
    }
    expect(estimate.notebook.text).toBe(text);
  });

  test('goes into a notebook twice, and both copies come to the same', () => {
    const once = new Estimate('# Kestrel Court\n');
    expect(cellsIn(readNotebook(text)).filter((cell) => cell.part === '')).toEqual([]);
    done(once.insertTemplate(text));
    const first = values(once);
    done(once.insertTemplate(text));
    const all = values(once);
    expect(all).toHaveLength(2 * first.length);
    for (const part of once.notebook.parts.slice(1)) {
      const copy = once.notebook.parts.find((p) => p.name === `${part.name} 2`);
      if (!copy) continue;
      for (const block of part.blocks) {
        if (block.kind !== 'cell') continue;
        const twin = cellNamed(once.notebook, `${copy.name} / ${block.cell.name}`);
        // What asks for every part has more parts to ask for now.
        if (/every part/.test(twin.formula)) continue;
        expect(once.shown(twin.id)?.unit, twin.name).toBe(once.shown(block.cell.id)?.unit);
      }
    }
  });
});
