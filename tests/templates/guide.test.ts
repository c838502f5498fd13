// The guide is a notebook that works, says nothing that is not so, and meets everything the language can say.
import { describe, expect, test } from 'vitest';
import { UNITS, unitPhrases } from '../../src/quantity/units.ts';
import { cellsOf, opened } from '../published/opened.ts';
import { remarkWords, variantsIn, variantsOfTree, wordings } from './met.ts';
import { INDEX, templateText } from './texts.ts';

const text = templateText(INDEX.guide);
const { estimate } = opened(text);
const cells = cellsOf(estimate).map(({ part, cell }) => ({
  part,
  cell,
  state: estimate.state(cell.id),
}));
const prose = estimate.notebook.parts.flatMap((part) =>
  part.blocks.flatMap((b) => (b.kind === 'prose' ? [{ part: part.name, text: b.markdown }] : [])),
);
/** Still to come on purpose, and what waits for it. */
const OPEN = ['Gravel', 'Gravel path', 'Still to come'];
const REFERENCE = 'Everything you can say';
const ASKED = 'When it asks';

const remarks = cells.flatMap(({ part, cell }) => cell.remarks.map((r) => ({ part, ...r })));
/** What stands between grave accents: words to write. */
function said(texts: readonly string[]): readonly string[] {
  return texts.flatMap((one) => [...one.matchAll(/`([^`]+)`/g)].map(([, words = '']) => words));
}
const notesOfReference = remarks.filter((r) => r.part === REFERENCE && r.kind === 'note');
const columns = cells.flatMap(({ cell }) => cell.table?.columns.map((c) => c.formula ?? '') ?? []);
/** All that a reader meets as words to write. */
const met = [
  ...cells.map(({ cell }) => cell.formula),
  ...columns,
  ...said([...prose.map((p) => p.text), ...remarks.map((r) => r.text)]),
  ...notesOfReference.map((r) => r.text.replace(/[`*]/g, '')),
].map((one) => ` ${one.toLowerCase().replace(/([(),]|"|[.;:](?!\d))/g, ' $1 ').replace(/\s+/g, ' ')} `);

test('every line works, but for what is still to come on purpose', () => {
  const without = cells.filter(({ state }) => state.outcome.kind !== 'value');
  expect(without.map(({ cell }) => cell.name)).toEqual(OPEN);
  for (const { cell } of cells) {
    for (const id of estimate.rows(cell.id)?.flat() ?? []) {
      expect(estimate.state(id).outcome.kind).toBe('value');
    }
  }
});

test('what it points out is what it shows on purpose, and examples that stand for themselves', () => {
  const other = estimate.findings().filter((found) => {
    const place = cells.find(({ cell }) => cell.id === found.cell);
    return place?.part !== REFERENCE && !OPEN.includes(place?.cell.name ?? '');
  });
  expect(other.map(({ code }) => code)).toEqual(['set-by-hand', 'set-in-row']);
  const inReference = new Set(
    estimate
      .findings()
      .filter((f) => cells.find(({ cell }) => cell.id === f.cell)?.part === REFERENCE)
      .map(({ code }) => code),
  );
  expect(inReference).toEqual(
    new Set(['assumed-amount', 'given-without-source', 'not-yet-known']),
  );
});

test('every number in bold is one that its part or the words before it come to', () => {
  let count = 0;
  for (const { part, text: paragraph } of prose) {
    const shown = cells
      .filter((c) => c.part === part)
      .map(({ cell }) => estimate.shown(cell.id)?.text ?? '');
    for (const { 0: bold, 1: value = '', index } of paragraph.matchAll(/\*\*([^*]+)\*\*/g)) {
      const before = said([paragraph.slice(0, index)]).at(-1);
      const here = cells.find((c) => c.part === part)?.cell.id ?? -1;
      const own = before === undefined ? null : estimate.draft(here, before).shown?.text;
      expect([...shown, own], bold).toContain(value);
      count++;
    }
  }
  expect(count).toBeGreaterThan(4);
});

test('words to write are either read, or are words of the language', () => {
  const words = new Set([
    ...wordings(),
    ...remarkWords(),
    ...unitPhrases.keys(),
    ...['currency', 'counted things', 'fractions', 'measures'],
  ]);
  const texts = [
    ...prose.filter((p) => p.part !== ASKED).map((p) => p.text),
    ...remarks.map((r) => r.text),
  ];
  const last = cells.at(-1)?.cell.id ?? -1;
  const odd = said(texts).filter((one) => {
    if (words.has(one.toLowerCase().replace(/^, /, ''))) return false;
    return estimate.draft(last, one).reading.problems.length > 0;
  });
  // What is left are pieces of what can be said: each stands in a formula of the guide, or in one of these.
  const formulas = [...cells.map(({ cell }) => cell.formula), ...said(texts)]
    .filter((one) => estimate.draft(last, one).reading.problems.length === 0)
    .concat(Object.values(SAID_SO));
  expect(
    Object.values(SAID_SO).map((one) => estimate.draft(last, one).reading.problems),
  ).toEqual(Object.values(SAID_SO).map(() => []));
  const nowhere = odd.filter((one) => !(one in SAID_SO) && !formulas.some((f) => f.includes(one)));
  expect(nowhere).toEqual([]);
});

test('all that it says is asked about is asked about, each with a way to go on', () => {
  const here = cells.find((c) => c.part === ASKED)?.cell.id ?? -1;
  const asked = said(prose.filter((p) => p.part === ASKED).map((p) => p.text));
  let offered = 0;
  expect(asked.length).toBeGreaterThan(6);
  for (const formula of asked) {
    const { problems } = estimate.draft(here, formula).reading;
    expect(problems, formula).toHaveLength(1);
    expect(problems[0]?.explanation.length, formula).toBeGreaterThan(30);
    if ((problems[0]?.fixes.length ?? 0) > 0) offered++;
    for (const fix of problems[0]?.fixes ?? []) {
      const mended = estimate.draft(here, fix.formula).reading.problems;
      expect([fix.formula, mended]).toEqual([fix.formula, []]);
    }
  }
  expect(offered).toBe(asked.length);
});

describe('it meets everything the language can say', () => {
  const reached = new Set<string>();
  for (const { cell, state } of cells) {
    variantsIn(state.reading.tree, reached);
    for (const id of estimate.rows(cell.id)?.flat() ?? []) {
      variantsIn(estimate.state(id).reading.tree, reached);
    }
  }
  test('every kind of node in the tree, with every choice in it, is in a line that works', () => {
    const all = variantsOfTree();
    expect(all.length).toBeGreaterThan(60);
    expect(all.filter((one) => !reached.has(one))).toEqual([]);
  });

  test('every opening of a phrase, every clause, comparison, operator and label of a share', () => {
    const missing = wordings().filter((words) => !met.some((one) => one.includes(` ${words} `)));
    expect(new Set(missing)).toEqual(new Set());
  });

  test('every remark stands under a line or is explained, and what costs and prices may say', () => {
    const stand = new Set(remarks.map((r) => r.kind));
    const explained = new Set(said(prose.map((p) => p.text)));
    expect(remarkWords().filter((w) => !stand.has(w as never) && !explained.has(w))).toEqual([]);
  });

  test('every unit has one of its names in it', () => {
    const names = [...unitPhrases].filter(([name]) =>
      met.some((one) => one.includes(` ${name.toLowerCase()} `)),
    );
    const named = new Set(names.map(([, unit]) => unit));
    // "so with every length": squares and cubes are said once, and money has its sign.
    const missing = UNITS.filter(
      (unit) => !named.has(unit) && !/^(sq|cubic) (?!ft$)|^\$$/.test(unit.key),
    );
    expect(missing.map(({ key }) => key)).toEqual([]);
  });
});

test('each line of the reference says its phrase with its places, and no phrase twice', () => {
  const lines = cells.filter((c) => c.part === REFERENCE);
  const silent = lines.filter(({ cell }) => !cell.remarks.some((r) => r.kind === 'note'));
  expect(silent.map(({ cell }) => cell.name)).toEqual([]);
  const notes = notesOfReference.map((r) => r.text);
  expect(new Set(notes).size).toBe(notes.length);
});

test('it is read in ten minutes: at most 1,800 words of prose', () => {
  const words = prose.flatMap((p) => p.text.split(/\s+/)).filter((word) => /\w/.test(word));
  expect(words.length).toBeLessThanOrEqual(1800);
});

test('prices and paces say that they are invented, and limits defer to the place', () => {
  const priced = cells.filter(
    (c) => c.part !== REFERENCE && /\$[1-9]|per hour/.test(c.cell.formula),
  );
  expect(priced.length).toBeGreaterThan(8);
  const silent = priced.filter(
    ({ cell }) => !cell.remarks.some((r) => r.kind === 'from' && /invented/.test(r.text)),
  );
  expect(silent.map(({ cell }) => cell.name)).toEqual([]);
  for (const { cell } of cells) {
    const legal = cell.remarks.some((r) => r.kind === 'from' && /^International/.test(r.text));
    const caution = cell.remarks.find((r) => r.kind === 'caution')?.text;
    if (legal && caution) expect(caution).toMatch(/ask the local/i);
  }
});

/** Words of the guide that stand in none of its formulas, and one in which they would. */
const SAID_SO: Readonly<Record<string, string>> = {
  oc: 'joists @ 16" oc along 12 ft',
  'on center': 'joists @ 16" on center along 12 ft',
  'on centre': 'joists @ 16" on centre along 12 ft',
  centers: 'joists @ 16" centers along 12 ft',
  centres: 'joists @ 16" centres along 12 ft',
  roundup: '7.2 boards roundup',
  'rnd up': '7.2 boards rnd up',
  'round up': '7.2 boards round up',
  'up to the next half yard': '3.2 yd up to the next half yard',
  '+': '3 ft + 2 ft',
  'multiplied by': '3 times 2 multiplied by 4',
  ', but at least': '$28, but at least $45',
  'this part': 'total of material in this part',
  when: '6 in when thickness is over 4 in, otherwise 4 in',
};
