// Look-ups worked for row after row come to what each of them comes to when it is tried alone, whatever stands in the
// table: what is tried alone goes through the rows one by one.
import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/engine/outcome.ts';
import type { CellId } from '../../src/language/tree.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { cellsOf } from '../../src/notebook/lines.ts';
import { Chance } from '../properties/chance.ts';

function idOf(estimate: Estimate, name: string): CellId {
  const cell = estimate.notebook.parts.flatMap(cellsOf).find((c) => c.name === name);
  if (!cell) throw new Error(`no cell ${name}`);
  return cell.id;
}

function told(outcome: Outcome): string {
  switch (outcome.kind) {
    case 'value':
      return String(outcome.value);
    case 'fault':
      return `${outcome.report.code}: ${outcome.report.explanation}`;
    case 'waiting':
    case 'unknown':
      return `${outcome.kind}: ${outcome.for.join(', ')}`;
  }
}

const CLEAN = ['2 in', '4 in', '0.5 ft', '6 in', '1 ft ÷ 3', '1/2 ft', '8 in', ''];
const SIZES = ['2 in', '4 in', '0.5 ft', '6 in', '1 ft ÷ 3', '?', '', '2 in ÷ 0'];

/** A list with what goes wrong in lists: blanks, figures to come, doubles, a row at fault. */
function listOf(chance: Chance, rows: number): string {
  const sizes = chance.in(0.5) ? SIZES : CLEAN;
  const lines = Array.from({ length: rows }, () => {
    const wood = chance.of(['fir', 'hem-fir', 'pine', 'oak', 'ash', '']);
    return `  | ${wood} | ${chance.of(sizes)} | ${chance.whole(1, 40)} ft |`;
  });
  return ['  | wood | size | span |', '  |---|---|---|', ...lines].join('\n');
}

const ASKS = [
  'read span off list for wood timber, size depth',
  'read span off list for size depth, wood timber',
  'read span off list for wood timber',
  'read span off list for size depth',
  'read span off list for size at least depth, wood timber',
  'read span off list for wood is not timber, size depth',
];

function openedWith(ask: string, chance: Chance): Estimate {
  const rows = Array.from({ length: 25 }, () => {
    const depth = chance.of(['2 in', '4 in', '6 in', '12 in', '?', '7 in']);
    return `  | ${chance.of(['fir', 'hem-fir', 'pine', 'oak', 'elm'])} | ${depth} | |`;
  });
  return new Estimate(
    `# Court\n\n## Wood\n\n- List:\n\n${listOf(chance, 40)}\n- Asked:\n\n  | timber | depth | answer: ${ask} |\n  |---|---|---|\n${rows.join('\n')}\n`,
  );
}

describe.each(ASKS)('%s', (ask) => {
  it.each([1, 2, 3, 4, 5, 6])('comes to the same in a row as alone (list %i)', (seed) => {
    const chance = new Chance(seed);
    const estimate = openedWith(ask, chance);
    const [list, asked] = [idOf(estimate, 'List'), idOf(estimate, 'Asked')];
    const inRows = (): readonly string[] =>
      (estimate.rows(asked) ?? []).map((row) => told(estimate.state(row[2] ?? 0).outcome));
    const alone = (): readonly string[] =>
      Array.from({ length: 25 }, (_, row) => told(estimate.draftInRow(asked, row, 2, ask).outcome));
    expect(inRows()).toEqual(alone());
    for (let edits = 0; edits < 5; edits++) {
      estimate.setRowCell(list, chance.whole(0, 39), 1, chance.of(['4 in', '6 in', '?', '1 in']));
      expect(inRows()).toEqual(alone());
      estimate.setRowCell(asked, chance.whole(0, 24), 1, chance.of(['4 in', '6 in', '?', '1 in']));
      expect(inRows()).toEqual(alone());
    }
  });
});

it('a list without faults answers most rows', () => {
  const chance = new Chance(9);
  const rows = Array.from({ length: 40 }, (_, i) => `  | w${i} | ${i + 1} ft |`).join('\n');
  const wants = Array.from({ length: 30 }, () => `  | w${chance.whole(0, 44)} | |`).join('\n');
  const estimate = new Estimate(
    `# Court\n\n## Wood\n\n- List:\n\n  | wood | span |\n  |---|---|\n${rows}\n- Asked:\n\n  | timber | answer: read span off list for wood timber |\n  |---|---|\n${wants}\n`,
  );
  for (const [timber, answer] of estimate.rows(idOf(estimate, 'Asked')) ?? []) {
    const number = Number(estimate.shown(timber ?? 0)?.text.slice(1));
    const { outcome } = estimate.state(answer ?? 0);
    if (number < 40) expect(estimate.shown(answer ?? 0)?.text).toBe(`${number + 1} ft`);
    else expect(outcome).toMatchObject({ kind: 'fault', report: { code: 'no-row' } });
  }
});
