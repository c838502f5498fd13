// The headless run as a person starts it: arguments in, text and exit code out.
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it, test, vi } from 'vitest';
import type { CellFigure, Figures } from '../../src/notebook/figures.ts';
import schema from '../../src/figure.schema.json' with { type: 'json' };
import { trialFigures, type TrialFigures } from '../../src/moves-it/figures.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { type Headless, headless } from './headless.ts';
import { schemaFaults } from './schema.ts';

// Each run is a process of its own.
vi.setConfig({ testTimeout: 60_000 });

let folder = '';

const JOB = `# Kestrel Court garden

- Counted things: bay

## Landing
- Slab length: 12 ft
  - from: measured on site
- Slab width: 4 ft
  - from: measured on site
- Thickness: 4 in
  - from: drawing
- Waste: 10%
  - from: rule of thumb
- Bag yield: 0.45 cubic feet per bag
  - from: bag label
- Bag price: $6.48 per bag
  - from: invented
- Slab volume: slab length by slab width by thickness
- Bags: slab volume plus waste, in bags of bag yield
- Concrete: bags at bag price
  - cost: material
- Screed: $?
  - cost: labour
- Thick enough: thickness is at least 4 in
  - from: local practice
- Rise each: 52 1/2 in divided by 7 risers
  - from: measured on site
- Sealer: concrete divided by 10
  - by hand: $30
  - from: quoted
  - cost: material

## Summary
- Direct: total cost of Landing
- Price: direct marked up 20%
  - from: house rule
`;

const BROKEN = `${JOB}- Lost: slab lenght by 2
- Next: lost times 2
- Both: bag price plus slab length
`;

const RANGES = `# Kestrel Court ground

## Ground
- Digging: 13 hours, 12 at best, 16 at worst
  - from: own hours
  - moves with: the crew
- Hauling: 3 to 5 hours
  - from: guess
  - moves with: the crew
- Pace: ? sq ft per hour, 50 at best, 30 at worst
- Labour: digging plus hauling, at $50 per hour
  - cost: labour
- Bays:

  | bay | run | twice: run times 2 |
  |---|---|---|
  | A | 13 ft, 12 at best, 16 at worst | |
  | B | 3 ft | |
`;

beforeAll(() => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'figure-'));
  fs.writeFileSync(path.join(folder, 'job.md'), JOB);
  fs.writeFileSync(path.join(folder, 'broken.md'), BROKEN);
  fs.writeFileSync(path.join(folder, 'ranges.md'), RANGES);
  fs.writeFileSync(path.join(folder, 'empty.md'), '');
  fs.writeFileSync(
    path.join(folder, 'bytes.md'),
    Buffer.from([0x89, 0x50, 0xff, 0xfe, 0x00, 0x01]),
  );
  fs.writeFileSync(path.join(folder, 'long.md'), '- Slab length: 12 ft\n'.repeat(250_000));
  fs.writeFileSync(
    path.join(folder, 'hostile.md'),
    `# <script>alert(1)</script>\n\n## __proto__\n- constructor: 3 ft\n- Deep: ${'('.repeat(5000)}\n- Long: ${'x '.repeat(50_000)}\n`,
  );
  run('empty.md');
}, 60_000);

/** What `--trials` adds, of a notebook in the folder. */
function trialsOf(...args: readonly string[]): TrialFigures {
  const { out } = run(...args, '--json');
  const found = JSON.parse(out) as Figures & { readonly trials: TrialFigures };
  expect(schemaFaults(schema, found)).toEqual([]);
  return found.trials;
}

afterAll(() => {
  fs.rmSync(folder, { recursive: true });
});

const run = (...args: readonly string[]): Headless => headless(folder, ...args);

function figures(...args: readonly string[]): Figures & { readonly code: number | null } {
  const { code, out } = run(...args, '--json');
  return { ...(JSON.parse(out) as Figures), code };
}

function cellIn(found: Figures, name: string): CellFigure {
  const cell = found.cells.find((c) => c.name === name);
  if (!cell) throw new Error(`no cell ${name}`);
  return cell;
}

describe('figure --json', () => {
  it('prints what the schema says, of a whole notebook, a broken one, an empty one and a hostile one', () => {
    for (const file of ['job.md', 'broken.md', 'ranges.md', 'empty.md', 'hostile.md']) {
      const { out } = run(file, '--json');
      expect(schemaFaults(schema, JSON.parse(out)), file).toEqual([]);
    }
  });

  it('gives every cell with its value, plainly and exactly', () => {
    const found = figures('job.md');
    expect([found.code, found.title, found.cells.length]).toEqual([0, 'Kestrel Court garden', 15]);
    expect(cellIn(found, 'Slab length')).toEqual({
      part: 'Landing',
      name: 'Slab length',
      kind: 'given',
      formula: '12 ft',
      readAs: '12 ft',
      shown: '12 ft',
      exact: '12',
      unit: 'ft',
      holds: null,
      byHand: false,
      from: 'measured on site',
      incomplete: false,
      error: null,
      range: null,
      waitsFor: [],
    });
    const exact = (name: string): unknown[] => {
      const { kind, shown, exact: number, unit, holds } = cellIn(found, name);
      return [kind, shown, number, unit, holds];
    };
    expect(exact('Waste')).toEqual(['given', '10%', '10', '%', null]);
    expect(exact('Slab volume')).toEqual(['worked', '16 cubic feet', '16', 'cubic ft', null]);
    expect(exact('Bags')).toEqual(['worked', '40 bags', '40', 'bag', null]);
    expect(exact('Bag price')).toEqual(['given', '$6.48 per bag', '6.48', '$ per bag', null]);
    expect(exact('Concrete')).toEqual(['worked', '$259.20', '259.2', '$', null]);
    expect(exact('Rise each')).toEqual([
      'worked',
      '7 1/2 in per riser',
      '7.5',
      'in per riser',
      null,
    ]);
    expect(exact('Thick enough')).toEqual(['check', 'yes', null, '', true]);
    expect(exact('Screed')).toEqual(['given', null, null, null, null]);
    expect(cellIn(found, 'Sealer')).toMatchObject({
      shown: '$30.00',
      byHand: true,
      from: 'quoted',
    });
    expect(cellIn(found, 'Direct')).toMatchObject({
      shown: '$289.20 so far; 1 line not yet known',
      incomplete: true,
    });
    expect(cellIn(found, 'Price')).toMatchObject({ exact: '347.04', incomplete: true });
  });

  it('gives what a given is at best and at worst, exactly, and no worked cell any such thing', () => {
    const found = figures('ranges.md');
    expect([found.code, found.costs.total.labour]).toEqual([0, '850.00']);
    const end = (shown: string, exact: string, unit: string): unknown => ({ shown, exact, unit });
    expect(cellIn(found, 'Digging')).toMatchObject({ shown: '13 hours', exact: '13' });
    expect(found.cells.map(({ name, range }) => [name, range])).toEqual([
      [
        'Digging',
        {
          plain: 'first',
          best: end('12 hours', '12', 'hour'),
          worst: end('16 hours', '16', 'hour'),
        },
      ],
      [
        'Hauling',
        { plain: 'middle', best: end('3 hours', '3', 'hour'), worst: end('5 hours', '5', 'hour') },
      ],
      [
        'Pace',
        {
          plain: 'first',
          best: end('50 sq ft per hour', '50', 'sq ft per hour'),
          worst: end('30 sq ft per hour', '30', 'sq ft per hour'),
        },
      ],
      ['Labour', null],
    ]);
    const rows = found.tables[0]?.rows.map((row) => row.map(({ range }) => range?.worst.shown));
    expect(rows).toEqual([
      [undefined, '16 ft', undefined],
      [undefined, undefined, undefined],
    ]);
  });

  it('gives what the job costs, and where the owner should look', () => {
    const { costs, problems } = figures('job.md');
    const row = {
      lines: 3,
      material: '289.20',
      labour: '0.00',
      equipment: '0.00',
      subcontract: '0.00',
      fee: '0.00',
    };
    const landing = { ...row, direct: '289.20', price: '289.20', incomplete: true };
    expect(costs.total).toEqual(landing);
    expect(costs.parts[0]).toEqual({ part: 'Landing', ...landing });
    expect(costs.parts[1]).toMatchObject({
      part: 'Summary',
      lines: 0,
      direct: '0.00',
      incomplete: false,
    });
    expect(problems.map((p) => [p.code, p.part, p.cell])).toEqual([
      ['not-yet-known', 'Landing', 'Screed'],
      ['set-by-hand', 'Landing', 'Sealer'],
    ]);
  });

  it('gives an error with its spots and fixes, and what waits with no error of its own', () => {
    const found = figures('broken.md');
    expect(found.code).toBe(1);
    const lost = cellIn(found, 'Lost');
    expect(lost.error?.code).toBe('unknown-name');
    const [spot] = lost.error?.spots ?? [];
    expect(lost.formula.slice(spot?.from, spot?.to)).toBe('slab lenght');
    expect(lost.error?.fixes).toContain('slab length by 2');
    expect(lost).toMatchObject({ shown: null, exact: null, unit: null, waitsFor: [] });
    expect(cellIn(found, 'Next')).toMatchObject({ error: null, shown: null, waitsFor: ['Lost'] });
    expect(cellIn(found, 'Both').error).not.toBeNull();
    expect(cellIn(found, 'Concrete').shown).toBe('$259.20');
    expect(found.problems.filter((p) => p.part === 'Summary').map((p) => p.cell)).toEqual([
      'Lost',
      'Both',
    ]);
  });
});

describe('figure --set', () => {
  it('puts a formula in, by part and name or by a name that only one cell has', () => {
    const found = figures('job.md', '--set', 'Landing: Slab length=24 ft', '--set', 'screed=$100');
    expect(cellIn(found, 'Bags').shown).toBe('79 bags');
    expect(cellIn(found, 'Screed').shown).toBe('$100.00');
    expect(cellIn(found, 'Direct').incomplete).toBe(false);
    expect(fs.readFileSync(path.join(folder, 'job.md'), 'utf8')).toBe(JOB);
  });

  it('takes the first = as the end of the name', () => {
    const found = figures('job.md', '--set', 'Thick enough=thickness = 5 in');
    expect(cellIn(found, 'Thick enough')).toMatchObject({
      formula: 'thickness = 5 in',
      holds: false,
    });
  });

  it('that cannot be read is an error of that cell', () => {
    const found = figures('job.md', '--set', 'Waste=10 wugs');
    expect([found.code, cellIn(found, 'Waste').error === null]).toEqual([1, false]);
  });
});

describe('figure without --json', () => {
  it('lists value, name and how, part by part, with the recap', () => {
    const { code, out } = run('job.md');
    expect(code).toBe(0);
    expect(out).toMatch(
      /^Kestrel Court garden\n\nLanding\n +12 ft +Slab length: 12 ft \(measured on site\)\n/,
    );
    expect(out).toMatch(/\$259\.20 +Concrete: bags at bag price\n/);
    expect(out).toMatch(
      /\$30\.00 +Sealer: set by hand; worked from concrete divided by 10 \(quoted\)\n/,
    );
    expect(out).toContain(
      'Whole job: 3 cost lines, direct cost $289.20 so far, all material; 1 line not yet known',
    );
    expect(out).toMatch(/Worth a look\n {2}Landing: "Screed" is not yet known\.\n/);
  });

  it('rings the words of a formula that cannot be read, and says what to try', () => {
    const { code, out } = run('broken.md');
    expect(code).toBe(1);
    expect(out).toMatch(
      /\n( +)slab lenght by 2\n\1~{11}\n\1No cell is called "slab lenght"\.[^\n]*\n\1Try: slab length by 2\n/,
    );
    expect(out).toMatch(/waiting +Next: [^\n]*; waiting for Lost\n/);
  });

  it('explains a cell from its answer down to its sources', () => {
    const { code, out } = run('job.md', '--explain', 'Landing: Concrete');
    expect(code).toBe(0);
    expect(out).toMatch(/^Working of Concrete: \$259\.20\n/);
    expect(out).toContain('bag label');
  });
});

describe('figure ends with 2 and one line that says why', () => {
  test.for([
    ['no file', [], /^No notebook was named\. Usage: /],
    [
      'a file that is not there',
      ['nowhere.md'],
      /^nowhere\.md can't be opened: there is no such file\.$/,
    ],
    ['a folder', ['.'], /^\. can't be opened: it is a folder\.$/],
    ['a file that is no text', ['bytes.md'], /^bytes\.md does not look like a text file\.$/],
    [
      'a file of 5 MB',
      ['long.md'],
      /^long\.md: This text has 5\.3 million characters; up to 2 million can be read\./,
    ],
    ['two files', ['job.md', 'broken.md'], /^One notebook at a time: /],
    ['an unknown option', ['job.md', '--josn'], /^There is no option --josn\. /],
    ['--set without a cell', ['job.md', '--set'], /^--set wants a cell after it\. /],
    ['--set without a formula', ['job.md', '--set', 'Waste'], /^--set wants a cell and a formula/],
    ['--set of no cell', ['job.md', '--set', 'Wate=1'], /^--set: no cell is called "Wate"\.$/],
    [
      '--set in the wrong part',
      ['job.md', '--set', 'Summary: Waste=1'],
      /^--set: no cell is called "Summary: Waste"\.$/,
    ],
    [
      '--explain of no cell',
      ['job.md', '--explain', 'Nobody'],
      /^--explain: no cell is called "Nobody"\.$/,
    ],
  ] as const)('%s', ([, args, reason]) => {
    const { code, out, err } = run(...args);
    expect([code, out]).toEqual([2, '']);
    expect(err.trimEnd()).toMatch(reason);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });

  it('for a name that two parts have', () => {
    fs.writeFileSync(
      path.join(folder, 'twins.md'),
      '## Deck\n- Depth: 1 in\n## Yard\n- Depth: 2 in\n',
    );
    const { code, err } = run('twins.md', '--set', 'Depth=3 in');
    expect([code, err]).toEqual([2, '--set: "Depth" could be "Deck: Depth" or "Yard: Depth".\n']);
  });
});

test('an empty notebook is worked like any other', () => {
  expect(run('empty.md')).toEqual({
    code: 0,
    out: 'Whole job: 0 cost lines, direct cost $0.00\n',
    err: '',
  });
});

test('a hostile notebook is worked as text: faults are told, nothing runs, the rest stands', () => {
  const found = figures('hostile.md');
  expect([found.code, found.title, found.cells[0]?.part]).toEqual([
    1,
    '<script>alert(1)</script>',
    '__proto__',
  ]);
  expect(cellIn(found, 'constructor').shown).toBe('3 ft');
  expect(found.cells.filter((c) => c.error !== null).map((c) => c.name)).toEqual(['Deep', 'Long']);
});

describe('figure --trials', () => {
  it('adds every cell that depends on a range, and the same for the same seed', () => {
    const trials = trialsOf('ranges.md', '--trials', '2000', '--seed', '7');
    expect([trials.seed, trials.trials]).toEqual([7, 2000]);
    expect(trials.cells.map(({ part, name, unit }) => [part, name, unit])).toEqual([
      ['Ground', 'Digging', 'hour'],
      ['Ground', 'Hauling', 'hour'],
      ['Ground', 'Labour', '$'],
      ['Ground', 'Bays: A: run', 'ft'],
      ['Ground', 'Bays: A: twice', 'ft'],
    ]);
    const [digging, hauling, labour] = trials.cells;
    // They move with the same crew: the deviations add, all but for how the two lean.
    expect(labour.sd / (50 * (digging.sd + hauling.sd))).toBeGreaterThan(0.97);
    const { p5, p10, p50, p80, p90, p95, mean } = labour;
    // 12 over 13 to 16 hours and 3 to 5 hours, at $50 per hour.
    expect(Math.abs(mean - 50 * (41 / 3 + 4))).toBeLessThan(5);
    expect([p5, p10, p50, p80, p90, p95].toSorted((a, b) => a - b)).toEqual([
      p5,
      p10,
      p50,
      p80,
      p90,
      p95,
    ]);
    expect(trialsOf('ranges.md', '--trials', '2000', '--seed', '7')).toEqual(trials);
    expect(trialsOf('ranges.md', '--trials', '2000', '--seed', '8')).not.toEqual(trials);
  });

  it('gives what the same notebook gives in this process, as a worker has it', () => {
    const wish = { trials: 1500, seed: 3 };
    const here = trialFigures(new Estimate(RANGES), wish);
    const there = trialsOf('ranges.md', '--trials', '1500', '--seed', '3');
    expect(there).toEqual(JSON.parse(JSON.stringify(here)));
  });

  it('follows what --set puts in, and adds nothing where no given has a range', () => {
    const set = ['--set', 'Ground: Hauling=4 hours', '--set', 'Ground: Digging=13 hours'];
    const { cells } = trialsOf('ranges.md', ...set, '--trials', '100', '--seed', '1');
    expect(cells.map(({ name }) => name)).toEqual(['Bays: A: run', 'Bays: A: twice']);
    expect(trialsOf('job.md', '--trials', '100').cells).toEqual([]);
    expect(JSON.parse(run('ranges.md', '--json').out)).not.toHaveProperty('trials');
  });

  it('is told in words without --json', () => {
    const { out, code } = run('ranges.md', '--trials', '500', '--seed', '2');
    expect(code).toBe(0);
    expect(out).toContain('How sure: 500 trials, seed 2\n');
    expect(out).toMatch(/ {2}Ground: Labour \(\$\): median \d+/);
    expect(run('job.md', '--trials', '500').out).toContain('No given has a range');
  });

  test.for([
    [['--trials']],
    [['--trials', '0']],
    [['--trials', '1.5']],
    [['--trials', '2000000']],
    [['--trials', 'many']],
    [['--trials', '5', '--seed', '-1']],
    [['--trials', '5', '--seed', 'x']],
    [['--seed', '5']],
  ] as const)('refuses %j in one line', ([args]) => {
    const { code, err, out } = run('ranges.md', ...args);
    expect([code, out]).toEqual([2, '']);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(err).toContain('--trials');
  });
});

describe('a copy for the client', () => {
  const PERMIT =
    'Before work begins\n' +
    '  No permit is in this price. Ask the local building department whether one is needed before work begins.\n';

  it('is printed alone, and adds up to the price', () => {
    const asked = ['job.md', '--set', 'Screed=$40'] as const;
    const { code, out, err } = run(...asked, '--client', 'work');
    expect([code, err]).toEqual([0, '']);
    // Concrete is 40 bags at $6.48, the sealer $30 by hand, the screed $40; nothing stands between cost and price.
    expect(out).toBe(
      'Kestrel Court garden\n\n' +
        'Material                        $289.20\n' +
        'Labour, equipment and services   $40.00\n' +
        '---------------------------------------\n' +
        'Price                           $329.20\n\n' +
        PERMIT,
    );
    expect(run(...asked, '--client', 'price').out).toBe(
      `Kestrel Court garden\n\nPrice  $329.20\n\n${PERMIT}`,
    );
  });

  it('is not printed while a line has no value, nor beside figures of the owner', () => {
    const { code, out, err } = run('job.md', '--client', 'parts');
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain('"Screed" without a value');
    for (const more of [['--json'], ['--explain', 'Bags'], ['--trials', '10']]) {
      const beside = run('job.md', '--client', 'price', ...more);
      expect([beside.code, beside.out]).toEqual([2, '']);
    }
    expect(run('job.md', '--client', 'all').code).toBe(2);
  });
});
