// Figures from outside the project come out of the templates themselves: a template is given what the source was
// given, and its cells come to what the source says. One file a template in `through-templates/`.
import fs from 'node:fs';
import { describe, expect, test } from 'vitest';
import { INDEX } from '../templates/texts.ts';
import { openedWith } from '../templates/warns.ts';

interface Check {
  readonly cell: string;
  /** A number in `unit`, yes or no, or the value as it is shown. */
  readonly value: number | boolean | string;
  readonly unit?: string;
  /** How far the published figure may be off; the very number where nothing is said. */
  readonly tolerance?: number;
}

interface Case {
  readonly id: string;
  readonly basis: 'published' | 'common practice' | 'from memory';
  readonly source: string;
  readonly where: string;
  /** By the name of the given, or `Table: column` for every row of it. */
  readonly givens: Readonly<Record<string, string>>;
  readonly checks: readonly Check[];
}

const folder = new URL('./through-templates/', import.meta.url);
const files = fs.readdirSync(folder).toSorted();
const casesOf = (file: string): readonly Case[] =>
  JSON.parse(fs.readFileSync(new URL(file, folder), 'utf8'));

test('every template has at least five cases, and together they are far more than 150', () => {
  expect(files).toEqual(INDEX.parts.map((file) => file.replace(/\.md$/, '.json')).toSorted());
  const counts = Object.fromEntries(files.map((file) => [file, casesOf(file).length]));
  expect(Object.entries(counts).filter(([, many]) => many < 5)).toEqual([]);
  const cases = files.flatMap(casesOf);
  expect(cases.length).toBeGreaterThanOrEqual(150);
  // Most stand in print; what does not says so.
  const printed = cases.filter(({ basis }) => basis === 'published').length;
  expect(printed).toBeGreaterThanOrEqual(150);
});

describe.each(files)('%s', (file) => {
  test.each(
    casesOf(file).map(
      (one) => [`${one.id} (${one.basis}: ${one.source}, ${one.where})`, one] as const,
    ),
  )('%s', (_title, { givens, checks }) => {
    const notebook = openedWith(file.replace(/\.json$/, '.md'), givens);
    expect(checks.length).toBeGreaterThan(0);
    for (const { cell, value, unit, tolerance = 0 } of checks) {
      if (typeof value === 'boolean') expect([cell, notebook.holds(cell)]).toEqual([cell, value]);
      else if (typeof value === 'string')
        expect([cell, notebook.shown(cell)]).toEqual([cell, value]);
      else {
        const [shown, number] = notebook.figure(cell);
        const near = Math.abs(number - value) <= tolerance;
        expect([cell, shown, near ? value : number]).toEqual([cell, unit ?? '', value]);
      }
    }
  });

  test('every case names its source, where it stands in it, and an id of its own', () => {
    const cases = casesOf(file);
    expect(new Set(cases.map((c) => c.id)).size).toBe(cases.length);
    expect(cases.filter((c) => c.source.length < 3 || c.where === '')).toEqual([]);
    const bases = ['published', 'common practice', 'from memory'];
    expect(cases.filter((c) => !bases.includes(c.basis))).toEqual([]);
  });
});
