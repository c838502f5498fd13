// A range stays with its given: what it is at best and at worst is kept, and no other cell sees anything of it.
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import type { Report } from '../../src/words/report.ts';
import { cellNamed, shownIn } from '../notebook/cells.ts';

function estimate(...lines: readonly string[]): Estimate {
  return new Estimate(
    `# Kestrel Court\n\n## Landing\n\n${lines.map((l) => `- ${l}`).join('\n')}\n`,
  );
}

describe('a range', () => {
  test('is kept with its given in exact amounts', () => {
    const e = estimate('Digging: 13 hours, 12 1/3 at best, 16 at worst');
    const { range, kind } = e.state(cellNamed(e.notebook, 'Digging').id);
    expect(kind).toBe('given');
    expect(range?.plain).toBe('first');
    // Hours are held in minutes.
    expect([range?.best.value.toString(), range?.worst.value.toString()]).toEqual(['740', '960']);
    expect(e.shownRange(cellNamed(e.notebook, 'Digging').id)?.worst.text).toBe('16 hours');
  });

  test('without a first value is told from one with it', () => {
    const e = estimate('Digging: 12 to 16 hours', 'Hauling: 14 hours, 12 at best, 16 at worst');
    const plain = (name: string) => e.state(cellNamed(e.notebook, name).id).range?.plain;
    expect([plain('Digging'), plain('Hauling')]).toEqual(['middle', 'first']);
    expect([shownIn(e, 'Digging'), shownIn(e, 'Hauling')]).toEqual(['14 hours', '14 hours']);
  });

  test('is of no other cell: a formula that names the given has none', () => {
    const e = estimate(
      'Digging: 12 to 16 hours',
      'Same: digging',
      'Labour: digging at $50 per hour',
    );
    expect(e.state(cellNamed(e.notebook, 'Same').id).range).toBeNull();
    expect(shownIn(e, 'Labour')).toBe('$700.00');
  });

  test('that changes at its ends alone works nothing but its own cell', () => {
    const e = estimate(
      'Digging: 13 hours, 12 at best, 16 at worst',
      'Labour: digging at $50 per hour',
    );
    const { id } = cellNamed(e.notebook, 'Digging');
    const done = e.setFormula(id, '13 hours, 11 at best, 20 at worst');
    expect('ran' in done && done.ran).toEqual([id]);
    expect(e.shownRange(id)?.text).toBe('11 hours at best, 20 hours at worst');
  });

  test('on a cost line leaves the line its plain amount', () => {
    const e = estimate('Permit: $450.005, $400 at best, $520 at worst\n  - cost: fee');
    expect(e.costs().total.direct).toBe('450.01');
    expect(e.state(cellNamed(e.notebook, 'Permit').id).range?.best.value.toString()).toBe('400');
  });

  test('at fault keeps the last good value and has no ends', () => {
    const e = estimate('Digging: 13 hours, 12 at best, 16 at worst');
    const { id } = cellNamed(e.notebook, 'Digging');
    e.setFormula(id, '17 hours, 12 at best, 16 at worst');
    expect(e.state(id).outcome.kind).toBe('fault');
    expect(e.lastShown(id)?.text).toBe('13 hours');
    expect(e.state(id).range).toBeNull();
  });

  test('of a given still to come is known before its value is', () => {
    const e = estimate(
      'Digging: ? hours, 12 at best, 16 at worst',
      'Labour: digging at $50 per hour',
    );
    const { id } = cellNamed(e.notebook, 'Digging');
    expect(e.state(id).outcome.kind).toBe('unknown');
    expect(e.shownRange(id)?.text).toBe('12 hours at best, 16 hours at worst');
    expect(e.state(cellNamed(e.notebook, 'Labour').id).outcome.kind).toBe('unknown');
  });
});

describe('a range is refused', () => {
  test('as a value set by hand, and the worked one stays beside it', () => {
    const e = estimate('Length: 12 ft', 'Twice: length times 2\n  - by hand: 20 to 30 ft');
    const { id } = cellNamed(e.notebook, 'Twice');
    const { outcome } = e.state(id);
    expect(outcome.kind === 'fault' && outcome.report.explanation).toContain(
      'A value set by hand is one amount.',
    );
    expect(e.shownWorked(id)?.text).toBe('24 ft');
  });

  test('while it is written as a value by hand, with its plain value to take', () => {
    const e = estimate('Length: 12 ft', 'Twice: length times 2');
    const { id } = cellNamed(e.notebook, 'Twice');
    const [problem] = e.draft(id, '20 to 30 ft', 'by hand').reading.problems;
    expect([problem?.code, problem?.fixes.map((f) => f.formula)]).toEqual([
      'range-not-here',
      ['25 ft'],
    ]);
    expect(e.draft(id, '25 ft', 'by hand').reading.problems).toEqual([]);
  });

  test("on a given that is set by hand, whose ends are then nobody's", () => {
    const e = estimate('Digging: 12 to 16 hours\n  - by hand: 20 hours');
    const { id } = cellNamed(e.notebook, 'Digging');
    expect([e.shown(id)?.text, e.state(id).range]).toEqual(['20 hours', null]);
  });

  test('as the formula of a column, in every row that it works', () => {
    const e = bays('bay | run: 12 to 16 ft', 'A | ', 'B | 3 ft');
    const reports = inColumn(e, 1).map((cell) => faultOf(e, cell));
    expect(reports.map((r) => r?.code)).toEqual(['range-not-here', undefined]);
    expect(reports[0]?.fixes.map((f) => f.formula)).toEqual(['14 ft']);
    const inWords = bays('bay | run: 12 ft at best, 16 ft at worst', 'A | ');
    expect(faultOf(inWords, inColumn(inWords, 1)[0])?.code).toBe('range-not-here');
  });
});

/** A table called Bays in a notebook of its own, its heads and rows as texts. */
function bays(heads: string, ...rows: readonly string[]): Estimate {
  const marks = heads.replaceAll(/[^|]+/g, '---');
  const lines = [heads, marks, ...rows].map((line) => `  | ${line} |`);
  return estimate(`Bays:\n${lines.join('\n')}`, 'All: total of run in bays');
}

function inColumn(e: Estimate, column: number): readonly number[] {
  const rows = e.rows(cellNamed(e.notebook, 'Bays').id) ?? [];
  return rows.map((row) => row[column] ?? -1);
}

function faultOf(e: Estimate, cell = -1): Report | null {
  const { outcome } = e.state(cell);
  return outcome.kind === 'fault' ? outcome.report : null;
}

describe('a range in a row of a table', () => {
  const HEADS = 'bay | run | twice: run times 2';

  test('is kept with the row; its column, its row and its table work with the plain value', () => {
    const e = bays(HEADS, 'A | 13 ft, 12 at best, 16 at worst | ', 'B | 3 ft | ');
    const [a, b] = inColumn(e, 1);
    expect(e.shownRange(a ?? -1)?.text).toBe('12 ft at best, 16 ft at worst');
    expect(e.state(b ?? -1).range).toBeNull();
    const twice = inColumn(e, 2);
    expect(twice.map((cell) => [e.shown(cell)?.text, e.state(cell).range])).toEqual([
      ['26 ft', null],
      ['6 ft', null],
    ]);
    expect(shownIn(e, 'All')).toBe('16 ft');
  });

  test('changes nothing but its ends where its plain value stays', () => {
    const e = bays(HEADS, 'A | 14 ft | ', 'B | 12 ft at best, 16 ft at worst | ');
    const [a = -1, b = -1] = inColumn(e, 1);
    expect([e.shown(a)?.text, e.shown(b)?.text]).toEqual(['14 ft', '14 ft']);
    const { id } = cellNamed(e.notebook, 'Bays');
    const done = e.setRowCell(id, 0, 1, '14 ft, 13 at best, 20 at worst');
    expect('ran' in done && done.ran.includes(cellNamed(e.notebook, 'All').id)).toBe(false);
    expect(e.shownRange(inColumn(e, 1)[0] ?? -1)?.text).toBe('13 ft at best, 20 ft at worst');
    e.undo();
    expect(e.state(inColumn(e, 1)[0] ?? -1).range).toBeNull();
  });

  test('goes with its row, and comes back with it', () => {
    const e = bays(HEADS, 'A | 13 ft, 12 at best, 16 at worst | ', 'B | 3 ft | ');
    const { id } = cellNamed(e.notebook, 'Bays');
    const ends = (): readonly (string | undefined)[] =>
      inColumn(e, 1).map((cell) => e.shownRange(cell)?.text);
    e.moveRow(id, 0, 1);
    expect(ends()).toEqual([undefined, '12 ft at best, 16 ft at worst']);
    e.removeRow(id, 1);
    expect(ends()).toEqual([undefined]);
    e.undo();
    expect(ends()).toEqual([undefined, '12 ft at best, 16 ft at worst']);
  });

  test('says in words which end is best: what may be a size or a date is not taken for a range', () => {
    const e = bays(HEADS, 'A | 12 to 16 ft | ', 'B | 4-5 ft | ');
    const reports = inColumn(e, 1).map((cell) => faultOf(e, cell));
    expect(reports.map((r) => r?.code)).toEqual(['range-in-row', 'range-in-row']);
    expect(reports.map((r) => r?.fixes.map((f) => f.formula))).toEqual([
      ['12 ft at best, 16 ft at worst', '14 ft'],
      ['4 ft at best, 5 ft at worst', '4.5 ft'],
    ]);
    e.setRowCell(cellNamed(e.notebook, 'Bays').id, 0, 1, '12 ft at best, 16 ft at worst');
    expect(e.shown(inColumn(e, 2)[0] ?? -1)?.text).toBe('28 ft');
  });

  test('that is pasted is taken in words and refused without', () => {
    const e = bays(HEADS, 'A | 3 ft | ');
    const { id } = cellNamed(e.notebook, 'Bays');
    const done = e.pasteRows(id, 0, 0, 'A\t13 ft, 12 at best, 16 at worst');
    expect('refused' in done && done.refused).toEqual([]);
    expect(e.shownRange(inColumn(e, 1)[0] ?? -1)?.text).toBe('12 ft at best, 16 ft at worst');
    const again = e.pasteRows(id, 0, 1, '10-12 ft\n4 ft');
    const refused = 'refused' in again ? again.refused : [];
    expect(refused.map((each) => [each.row, each.text])).toEqual([[0, '10-12 ft']]);
    expect(refused[0]?.why).toContain('A range in a row says which end is best.');
  });
});
