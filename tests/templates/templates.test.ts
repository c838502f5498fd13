// Every template is a notebook that a builder could stand behind: it opens without a problem,
// every figure has its source, every check its caution, and the money adds up.
import { describe, expect, test } from 'vitest';
import { cellsOf, opened } from '../published/opened.ts';
import { INDEX, templateFiles, templateText } from './texts.ts';
import { remarkOf, toCents } from './remarks.ts';

test('the index lists every template once, the demo and the guide apart from the parts', () => {
  expect([INDEX.demo, INDEX.guide, ...INDEX.parts].toSorted()).toEqual(templateFiles);
});

/** What prices the work of others, or nothing. */
const WITHOUT_MATERIAL = new Set(['labour-rates.md', 'often-forgotten.md', 'summary.md']);

// The guide's examples are no estimate to stand behind: its own test reads it.
describe.each(templateFiles.filter((file) => file !== INDEX.guide))('%s', (file) => {
  const text = templateText(file);
  const notebook = opened(text);
  const { estimate } = notebook;
  const cells = cellsOf(estimate).map(({ part, cell }) => ({ part, cell, state: estimate.state(cell.id) }));
  const of = (kind: 'given' | 'worked' | 'check') => cells.filter((c) => c.state.kind === kind);

  test('it is listed by its title and first paragraph', () => {
    const [title, paragraph] = text.split(/\n{2,}/);
    expect(title).toMatch(/^# [^\n]+$/);
    expect(estimate.notebook.title).toBe(title?.slice(2));
    expect(paragraph).toMatch(/^[A-Z][^\n]{40,}\.$/);
  });

  // Only a list of questions opens with questions: they are all that it points out, and all that it waits for.
  const asks = file === 'often-forgotten.md';
  const open = cells.filter((c) => /^\$?\?$/.test(c.cell.formula)).map((c) => c.cell.id);

  test('it opens with nothing to point out and a value in every cell', () => {
    if (file === INDEX.demo) expect(open).toEqual([notebook.cell('Arbor').id]);
    else expect([file, open.length > 0]).toEqual([file, asks]);
    const amiss = cells.filter(({ state: { outcome } }) => {
      if (outcome.kind === 'value') return false;
      return outcome.kind === 'fault' || outcome.for.some((id) => !open.includes(id));
    });
    expect(amiss.map((c) => c.cell.name)).toEqual([]);
    const pointed = estimate.findings().map(({ code, cell }) => [code, cell]);
    // The demo shows as well what it looks like when the owner knows better than a formula.
    const byHand = file === INDEX.demo ? [['set-by-hand', notebook.cell('Baluster order').id]] : [];
    expect(pointed).toEqual([...byHand, ...open.map((id) => ['not-yet-known', id])]);
  });

  test('every given says where it comes from', () => {
    expect(of('given').filter((c) => remarkOf(c.cell, 'from') === null)).toEqual([]);
  });

  test('every check holds, says what is at stake and names its source', () => {
    // The checks of a list of questions wait for the answers.
    expect([file, of('check').length > 0]).toEqual([file, !asks]);
    for (const { cell } of of('check')) {
      expect([cell.name, notebook.holds(cell.name)]).toEqual([cell.name, true]);
      expect(remarkOf(cell, 'caution')).not.toBe(null);
      expect(remarkOf(cell, 'from')).not.toBe(null);
    }
  });

  test('a check on a legal limit defers to the place', () => {
    const legal = of('check').filter((c) => /^International/.test(remarkOf(c.cell, 'from') ?? ''));
    const firm = legal.filter((c) => !/ask the local/i.test(remarkOf(c.cell, 'caution') ?? ''));
    expect(firm.map((c) => c.cell.name)).toEqual([]);
  });

  test('every price says that it is invented', () => {
    const priced = cells.filter((c) => /\$\d/.test(c.cell.formula) && !/\$[01]\b/.test(c.cell.formula));
    const silent = priced.filter((c) => !/invented/.test(remarkOf(c.cell, 'from') ?? ''));
    expect(silent.map((c) => c.cell.name)).toEqual([]);
  });

  test('every material says what to buy', () => {
    const material = cells.filter((c) => remarkOf(c.cell, 'cost') === 'material');
    expect([file, material.length > 3]).toEqual([file, !WITHOUT_MATERIAL.has(file)]);
    expect(material.filter((c) => remarkOf(c.cell, 'buy') === null)).toEqual([]);
  });

  test('every given lies within the limits that are called sensible', () => {
    for (const { part, cell } of cells) {
      const limits = remarkOf(cell, 'sensible');
      if (limits === null) continue;
      const [low, high] = limits.split(' up to ');
      const asker = cells.find((c) => c.part === part && c.cell.id !== cell.id);
      const { outcome } = estimate.draft(asker?.cell.id ?? cell.id, `${cell.name} is between ${low} and ${high}`);
      expect([cell.name, limits, outcome]).toMatchObject([cell.name, limits, { kind: 'value', value: true }]);
    }
  });

  test('every formula said back reads as the same formula and comes to the same', () => {
    for (const { cell, state } of cells) {
      if (cell.table) continue;
      const { reading, outcome } = estimate.draft(cell.id, state.reading.sentence);
      expect([cell.name, reading.problems, reading.sentence]).toEqual([cell.name, [], state.reading.sentence]);
      expect([cell.name, outcome]).toEqual([cell.name, state.worked]);
    }
  });

  test('in a wide table what is typed comes first, so that it stands in sight', () => {
    for (const { cell } of cells) {
      const columns = cell.table?.columns ?? [];
      if (columns.length <= 8) continue;
      const worked = columns.findIndex(({ formula }) => formula !== null);
      expect([cell.name, columns.slice(worked).filter(({ formula }) => formula === null)]).toEqual([cell.name, []]);
    }
  });

  test('names are short, plain and used once in a part', () => {
    const names = cells.map((c) => `${c.part}: ${c.cell.name}`);
    expect(new Set(names).size).toBe(names.length);
    expect(cells.filter((c) => c.cell.name.split(' ').length > 5)).toEqual([]);
    expect(cells.filter((c) => /[#$%@]/.test(c.cell.name) || /#(?!\d)/.test(c.cell.formula))).toEqual([]);
  });

  test('costs add up to the cent, line by line, kind by kind and part by part', () => {
    const { parts, total } = estimate.costs();
    const lines = cells.filter((c) => c.cell.money?.line === 'cost');
    const sums = new Map<string, bigint>();
    for (const { part, cell } of lines) {
      const cents = toCents(estimate.shown(cell.id)?.exact ?? '');
      const kind = cell.money?.kind ?? '';
      for (const key of ['', part, kind]) sums.set(key, (sums.get(key) ?? 0n) + cents);
    }
    expect(total.lines).toBe(lines.length);
    expect(toCents(total.direct)).toBe(sums.get('') ?? 0n);
    for (const kind of ['material', 'labour', 'equipment', 'subcontract', 'fee'] as const) {
      expect([kind, toCents(total[kind])]).toEqual([kind, sums.get(kind) ?? 0n]);
    }
    for (const row of parts) {
      expect([row.part, toCents(row.direct)]).toEqual([row.part, sums.get(row.part) ?? 0n]);
      expect(row.incomplete.toSorted((a, b) => a - b)).toEqual(asks ? open : []);
    }
  });
});
