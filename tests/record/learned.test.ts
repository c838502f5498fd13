// The hours that a unit took are written back as a given with its source: one change, undone as one.
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { sourceOf } from '../../src/notebook/remarks.ts';
import { type Into, builtAmount, learn, learnedChange } from '../../src/record/learned.ts';
import { cellNamed } from '../notebook/cells.ts';
import { said } from './records.ts';

const TEXT = `# Kestrel Court

## Landing

- Slab area: 12 ft by 4 ft
- Hours per foot: 0.3 hours per sq ft
  - from: rule of thumb
- Pour: slab area times hours per foot

## Railing
`;

const DAYS = [
  said(['7.5', '60.00'], { date: '2026-05-04' }),
  said(['4', '60.00'], { date: '2026-05-06' }),
  said('99.00'),
];

function learned(text = '48 sq ft', unit = 'sq ft', exact = '48', days = DAYS) {
  const made = learn(days, { text, unit, exact }, 'Kestrel Court');
  return made.kind === 'learned' ? made.learned : made.why;
}

function written(into: (estimate: Estimate) => Into) {
  const estimate = new Estimate(TEXT);
  const given = learned();
  if (typeof given === 'string') throw new Error(given);
  const change = learnedChange(estimate.notebook, into(estimate), given);
  return { estimate, change };
}

describe('hours per unit as built', () => {
  test('are all hours by what was built, to four digits, with their source', () => {
    // 11.5 hours ÷ 48 sq ft = 0.239583…
    expect(learned()).toEqual({
      hours: '11.5',
      entries: 2,
      formula: '0.2396 hours per sq ft',
      from: 'learned on Kestrel Court: 11.5 hours for 48 sq ft by its job record, up to 2026-05-06',
    });
    expect(learned('40 balusters', 'baluster', '40')).toMatchObject({
      formula: '0.2875 hours per baluster',
    });
  });

  test('come from nothing but hours and a quantity that is there', () => {
    expect(learned('48 sq ft', 'sq ft', '48', [said('99.00')])).toContain('No hours');
    expect(learned('0 sq ft', 'sq ft', '0')).toContain('Nothing was built');
    for (const unit of ['', '%', '$', '$ per bag', 'hour per sq ft'])
      expect(learned('x', unit, '4')).toContain('counts and measures nothing');
  });
});

test('what was built is read as a cell of the part would read it', () => {
  const said = (formula: string) => {
    const built = builtAmount(new Estimate(TEXT).notebook, 'part-1', formula);
    return built.kind === 'amount' ? built.shown.text : `no: ${built.why}`;
  };
  expect(['slab area', 'slab area less 8 sq ft', '40 balusters', '?', 'blue'].map(said)).toEqual([
    '48 sq ft',
    '40 sq ft',
    '40 balusters',
    'no: What was built has no value yet.',
    'no: No cell is called "blue".',
  ]);
});

describe('written back', () => {
  test('over a given it changes amount and source in one change, and what is worked from it follows', () => {
    const { estimate, change } = written(({ notebook }) => ({
      kind: 'given',
      cell: cellNamed(notebook, 'Hours per foot').id,
    }));
    if ('code' in change) throw new Error(change.message);
    const done = estimate.replaceText(change);
    expect('change' in done).toBe(true);
    const cell = cellNamed(estimate.notebook, 'Hours per foot');
    expect(cell.formula).toBe('0.2396 hours per sq ft');
    expect(sourceOf(cell.remarks)).toContain('11.5 hours for 48 sq ft');
    expect(estimate.shown(cellNamed(estimate.notebook, 'Pour').id)?.exact).toBe('11.5008');
    expect(estimate.canUndo()).toBe('Hours per foot: 0.2396 hours per sq ft');
    estimate.undo();
    expect(estimate.notebook.text).toBe(TEXT);
  });

  test('as a new given it comes to the end of a part, an empty one too', () => {
    for (const name of ['Landing', 'Railing']) {
      const { estimate, change } = written(({ notebook }) => ({
        kind: 'new',
        part: notebook.parts.find((part) => part.name === name)?.key ?? '',
        name: 'Pour, as built',
      }));
      if ('code' in change) throw new Error(change.message);
      estimate.replaceText(change);
      const cell = cellNamed(estimate.notebook, 'Pour, as built');
      expect(estimate.state(cell.id).kind).toBe('given');
      expect(estimate.findings().filter((finding) => finding.cell === cell.id)).toEqual([]);
      expect(sourceOf(cell.remarks)).toContain('learned on Kestrel Court');
    }
  });

  test('under a name that is taken, or is none, it is refused as any cell is', () => {
    const taken = written(({ notebook }) => ({
      kind: 'new',
      part: notebook.parts[1].key,
      name: 'slab AREA',
    }));
    expect(taken.change).toMatchObject({ code: 'same-name' });
    const none = written(({ notebook }) => ({
      kind: 'new',
      part: notebook.parts[1].key,
      name: '',
    }));
    expect(none.change).toMatchObject({ code: 'not-a-name' });
  });

  test('goes where it was meant in a notebook from which cells and parts are gone, too', () => {
    const estimate = new Estimate(TEXT);
    const [first] = estimate.notebook.parts.filter(({ name }) => name !== '');
    const [block] = first.blocks.filter(({ kind }) => kind === 'cell');
    if (block.kind !== 'cell') throw new Error('no cell');
    expect('change' in estimate.removeCell(block.cell.id)).toBe(true);
    const cell = cellNamed(estimate.notebook, 'Hours per foot').id;
    const given = learned();
    if (typeof given === 'string') throw new Error(given);
    const change = learnedChange(estimate.notebook, { kind: 'given', cell }, given);
    if ('code' in change) throw new Error(change.message);
    estimate.replaceText(change);
    expect(cellNamed(estimate.notebook, 'Hours per foot').formula).toBe('0.2396 hours per sq ft');
  });
});
