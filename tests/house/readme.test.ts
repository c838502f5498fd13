// What README shows is so: its notebook comes to what it says, its commands run, what it points at is there.
import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { allCells } from '../../src/ui/reading-order.ts';
import { headless } from '../figure/headless.ts';

const project = path.resolve(import.meta.dirname, '../..');
const readme = fs.readFileSync(path.join(project, 'README.md'), 'utf8');

/** A block of README that stands four spaces in, under this heading. */
function blockUnder(heading: string): string {
  const section = readme.split(/^## /m).find((text) => text.startsWith(heading)) ?? '';
  const lines = section.split('\n').filter((line) => line === '' || line.startsWith('    '));
  return lines.map((line) => line.slice(4)).join('\n');
}

test('the notebook in README is worked to the bags and the money it says', () => {
  const estimate = new Estimate(blockUnder('A notebook is text'));
  const cells = allCells(estimate.notebook);
  const shown = (name: string): string | undefined => {
    const cell = cells.find((one) => one.name === name);
    return cell && estimate.shown(cell.id)?.text;
  };
  expect(cells).toHaveLength(9);
  expect(readme).toContain(`${shown('Bags to buy')}, ${shown('Concrete')}.`);
  expect([shown('Bags to buy'), shown('Concrete')]).toEqual(['40 bags', '$259.20']);
  expect(estimate.findings()).toEqual([]);
  expect(estimate.costs().total.material).toBe('259.20');
});

test('every headless command in README runs and ends with 0', () => {
  const commands = [...readme.matchAll(/^ {4}npm run -s figure -- (.+)$/gm)];
  expect(commands).toHaveLength(5);
  for (const [, said = ''] of commands) {
    const args = [...said.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare);
    const { code, out, err } = headless(project, ...args.map(String));
    expect([said, code, err]).toEqual([said, 0, '']);
    expect(out.length).toBeGreaterThan(100);
  }
}, 60_000);

test('every command README names is one, and every file it points at is there', () => {
  const { scripts } = JSON.parse(fs.readFileSync(path.join(project, 'package.json'), 'utf8')) as {
    scripts: Record<string, string>;
  };
  const named = [...readme.matchAll(/npm (?:run (?:-s )?)?(\w+)/g)].map(([, name]) => name);
  expect(new Set(named)).toEqual(new Set(['start', 'test', 'build', 'bench', 'figure']));
  for (const name of named) expect(Object.keys(scripts)).toContain(name);
  const links = [...readme.matchAll(/\]\(([^)]+)\)/g)].map(([, to = '']) => to);
  for (const file of [...links, 'src/figure.schema.json', 'templates/kestrel-court.md']) {
    expect(readme).toContain(file);
    expect(fs.existsSync(path.join(project, file))).toBe(true);
  }
});
