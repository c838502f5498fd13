// The language by example: every line of conformance/*.md comes to what stands beside it, read on its own and in a headless run.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import type { Figures } from '../../src/notebook/figures.ts';
import { worked } from './worked.ts';

// Each headless run is a process of its own.
vi.setConfig({ testTimeout: 60_000 });

const here = path.join(import.meta.dirname, 'conformance');
const project = path.resolve(import.meta.dirname, '../..');
const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'conformance-'));
afterAll(() => fs.rmSync(folder, { recursive: true }));

const LINE = /^\| `(.+)` \| (.+) \|$/;
const REFUSED = /^refused(?:; write `(.+)`)?$/;

interface Line {
  readonly formula: string;
  readonly comesTo: string;
}

const sections = fs.readdirSync(here).map((file) => {
  const text = fs.readFileSync(path.join(here, file), 'utf8').split('\n');
  const givens = text.filter((l) => l.startsWith('- ')).map((l) => l.slice(2));
  const lines = text.flatMap((l): Line[] => {
    const [, formula, comesTo] = LINE.exec(l) ?? [];
    return formula && comesTo ? [{ formula, comesTo }] : [];
  });
  return { file, givens, lines, rows: text.filter((l) => l.startsWith('| `')).length };
});

it('the set holds over five hundred lines, no section fewer than thirty, and every line is taken up', () => {
  const short = sections.filter((s) => s.lines.length < 30 || s.lines.length !== s.rows);
  expect(short.map((s) => s.file)).toEqual([]);
  expect(sections.flatMap((s) => s.lines).length).toBeGreaterThan(500);
});

describe.each(sections)('$file', ({ file, givens, lines }) => {
  it.each(lines)('$formula → $comesTo', ({ formula, comesTo }) => {
    const answer = worked(formula, givens);
    const refused = REFUSED.exec(comesTo);
    if (!refused) {
      const notYet = comesTo === 'not yet known';
      expect([answer.message, notYet ? 'not yet known' : answer.shown]).toEqual(['', comesTo]);
      if (notYet) expect(answer.exact).toBeNull();
      return;
    }
    expect([answer.shown, answer.code !== null]).toEqual([null, true]);
    if (refused[1]) expect(answer.fixes).toContain(refused[1]);
  });

  it('comes to the same in a headless run', () => {
    const cells = [...givens, ...lines.map((l, i) => `Line ${i + 1}: ${l.formula}`)];
    const job = path.join(folder, file);
    fs.writeFileSync(
      job,
      `# Kestrel Court\n\n## Lines\n\n${cells.map((c) => `- ${c}`).join('\n')}\n`,
    );
    const run = spawnSync(process.execPath, ['src/tools/run.mjs', 'src/figure.ts', job, '--json'], {
      cwd: project,
      encoding: 'utf8',
    });
    const figures = JSON.parse(run.stdout) as Figures;
    const got = figures.cells
      .filter((c) => c.name.startsWith('Line '))
      .map((c) =>
        c.error ? 'refused' : c.holds === null && c.exact === null ? 'not yet known' : c.shown,
      );
    const meant = lines.map((l) => (REFUSED.test(l.comesTo) ? 'refused' : l.comesTo));
    expect(got.length).toBe(lines.length);
    expect(
      lines.flatMap((l, i) => (got[i] === meant[i] ? [] : [[l.formula, got[i], meant[i]]])),
    ).toEqual([]);
  });
});
