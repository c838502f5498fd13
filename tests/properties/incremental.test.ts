// Whatever was done to an estimate, it stands as if its text had just been opened; and all of it can be taken back.
// For a long run: EDIT_RUNS=5000 EDIT_SEED=2 npx vitest run --project unit tests/properties/incremental.test.ts
import fs from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CellId } from '../../src/language/tree.ts';
import type { Cell } from '../../src/notebook/document.ts';
import { type Applied, Estimate } from '../../src/notebook/estimate.ts';
import { Chance } from './chance.ts';
import { casesOf } from './spoken-notebook.ts';

const RUNS = Number(process.env['EDIT_RUNS'] ?? 8);
const SEED = Number(process.env['EDIT_SEED'] ?? 1);

const TEMPLATES = ['slab', 'landing', 'steps'].map((name) =>
  fs.readFileSync(`${import.meta.dirname}/../../templates/${name}.md`, 'utf8'),
);

/** Small, with names that run into one another, a circle, a `?`, a value by hand, cost and price lines and recaps. */
const TANGLED = `# Kestrel Court

- Counted things: sleeper

## Landing

- Slab length: 12 ft
- Slab width: 4 ft
- Slab: slab length by slab width
- Thickness: ? in
- Bags: slab by thickness in bags of 0.45 cubic feet
  - by hand: 42 bags
  - from: counted
- Concrete: bags at $6.48 per bag
  - cost: material
- Round: round trip times 2
- Round trip: round plus 1

Prose between.

## Steps

- Rise: 52 1/2 in
- Riser: rise divided by risers
- Risers: rise divided by 7 3/4 in, rounded up, as risers
- Waste: 10%, 8 at best, 15 at worst
- Stringers: 3 boards plus waste, rounded up
- Lumber: stringers at $31.20 per board
  - cost: material
- Work: risers at 1 1/2 hours per riser, at $50 per hour
  - cost: labour
- Odd: lenght plus (

## Summary

- Material: total of material in every part
- Direct: total cost of every part
- Overhead: 12% of direct
  - price: overhead
- Steps only: total cost of Steps
- Check: direct is more than $100
`;

const FORMULAS = [
  '12 ft',
  '4 in',
  '?',
  '? hours',
  '13 hours, 12 at best, 16 at worst',
  '12 to 16 ft',
  '$40, $50 at best, $60 at worst',
  '? hours, 12 at best, 16 at worst',
  '',
  '10%',
  '$6.48 per bag',
  '40 bags',
  'yes',
  'slab length by',
  'slab times 2',
  'waste',
  'riser times risers',
  'rise plus slab length',
  'total cost of Landing',
  'total of labour in this part',
  '5 sleepers',
  'steps rise times 2',
  'thickness',
  'round',
  'direct',
  'bags at $3',
  'new cell plus 1 ft',
  'slab length where check, otherwise 3 ft',
  'nothing at all',
  '$5 divided by 0',
  'concrete plus lumber',
  'slab by thickness',
];
const NAMES = [
  'Slab',
  'Slab length',
  'Width',
  'Rise',
  'Run of the stair',
  'Slab length plus',
  'Bags',
  'Bag',
  'Total',
  'New cell',
  'constructor',
  '__proto__',
  '12 ft',
  'a: b',
  '',
  'at',
  'Waste on site',
  '# of posts',
  'Steps rise',
  'Thickness',
  'Slab in front of it all',
  'times',
];
const REMARKS = [
  ['cost', 'material'],
  ['cost', 'labour'],
  ['cost', 'nonsense'],
  ['price', 'markup'],
  ['price', 'discount'],
  ['from', 'measured'],
  ['sensible', '3 ft up to 8 ft'],
  ['sensible', 'what'],
  ['note', 'see the drawing'],
  ['bogus', 'whatever'],
  ['by hand', '7 ft'],
] as const;
const PIECES = [
  '',
  '\n',
  '- New cell: 3 ft\n',
  '## Yard\n',
  '  - cost: fee\n',
  '?',
  'x',
  '# ',
  '\n\n',
  '- Currency: pounds\n',
];

type Act =
  | 'formula'
  | 'rename'
  | 'add'
  | 'remove'
  | 'remark'
  | 'no-remark'
  | 'by-hand'
  | 'worked-again'
  | 'add-part'
  | 'rename-part'
  | 'text'
  | 'template'
  | 'move'
  | 'move-part'
  | 'duplicate'
  | 'duplicate-part'
  | 'undo'
  | 'redo';

const step = fc.record({
  act: fc.constantFrom<Act>(
    'formula',
    'formula',
    'formula',
    'rename',
    'rename',
    'add',
    'remove',
    'remark',
    'no-remark',
    'by-hand',
    'worked-again',
    'add-part',
    'rename-part',
    'text',
    'template',
    'move',
    'move',
    'move-part',
    'duplicate',
    'duplicate-part',
    'undo',
    'undo',
    'redo',
  ),
  which: fc.nat(),
  what: fc.nat(),
  more: fc.nat(),
});
type Step = typeof step extends fc.Arbitrary<infer S> ? S : never;

const start = fc.oneof(
  { weight: 3, arbitrary: fc.constant(TANGLED) },
  { weight: 1, arbitrary: fc.constantFrom(...TEMPLATES) },
  {
    weight: 2,
    arbitrary: fc.nat(5000).map((seed) => {
      const cases = casesOf(seed, 8);
      const cells = cases.map(
        (k) => `- ${k.name}: ${k.text}\n${k.isCost ? '  - cost: material\n' : ''}`,
      );
      return `# Kestrel Court\n\n## Yard\n\n${cells.slice(0, 4).join('')}\n## North wall\n\n${cells.slice(4).join('')}`;
    }),
  },
);

describe('after any edits', () => {
  test(
    'the estimate is what it would be had its text just been opened',
    { timeout: 3_600_000 },
    () => {
      fc.assert(
        fc.property(start, fc.array(step, { minLength: 1, maxLength: 14 }), (text, steps) => {
          const estimate = new Estimate(text);
          for (const each of steps) {
            const before = estimate.notebook.text;
            const done = acted(estimate, each);
            if (done === null || 'code' in done) expect(estimate.notebook.text).toBe(before);
            expectSame(standing(estimate), standing(new Estimate(estimate.notebook.text)));
          }
        }),
        { numRuns: RUNS, seed: SEED },
      );
    },
  );

  test(
    'undoing all of it brings back the text that was opened, redoing it the text that was left',
    { timeout: 3_600_000 },
    () => {
      fc.assert(
        fc.property(start, fc.array(step, { minLength: 1, maxLength: 14 }), (text, steps) => {
          const estimate = new Estimate(text);
          for (const each of steps) acted(estimate, each);
          while (estimate.canRedo() !== null) estimate.redo();
          const left = estimate.notebook.text;
          const stood = standing(estimate);
          while (estimate.canUndo() !== null) estimate.undo();
          expect(estimate.notebook.text).toBe(text);
          expectSame(standing(estimate), standing(new Estimate(text)));
          while (estimate.canRedo() !== null) estimate.redo();
          expect(estimate.notebook.text).toBe(left);
          expectSame(standing(estimate), stood);
        }),
        { numRuns: RUNS, seed: SEED },
      );
    },
  );
});

describe('five hundred edits', () => {
  test('are undone one by one, each to the very text before it', { timeout: 600_000 }, () => {
    const chance = new Chance(SEED * 31);
    const estimate = new Estimate(TANGLED);
    const texts = [TANGLED];
    while (texts.length <= 500) {
      const { text } = estimate.notebook;
      const act = chance.of(text.length > 3500 ? SHRINKING : GROWING);
      const [which, what, more] = [0, 0, 0].map(() => chance.whole(0, 10_000)) as [
        number,
        number,
        number,
      ];
      const done = acted(estimate, { act, which, what, more });
      // Every change that was made is one step, also one that left the text as it was.
      if (done !== null && 'change' in done) texts.push(estimate.notebook.text);
    }
    const left = standing(estimate);
    for (let step = 500; step > 0; step--) {
      expect(estimate.notebook.text).toBe(texts[step]);
      estimate.undo();
    }
    expect(estimate.notebook.text).toBe(TANGLED);
    expect(estimate.canUndo()).toBeNull();
    expectSame(standing(estimate), standing(new Estimate(TANGLED)));
    for (let step = 1; step <= 500; step++) {
      estimate.redo();
      expect(estimate.notebook.text).toBe(texts[step]);
    }
    expectSame(standing(estimate), left);
  });
});

const GROWING: readonly Act[] = [
  'formula',
  'rename',
  'add',
  'remove',
  'remark',
  'no-remark',
  'by-hand',
  'worked-again',
  'add-part',
  'rename-part',
  'text',
  'template',
  'move',
  'move',
  'move-part',
  'duplicate',
  'duplicate-part',
];
const SHRINKING: readonly Act[] = ['remove', 'remove', 'move', 'move-part', 'no-remark', 'formula'];

/** As texts first: comparing the values one by one takes ten times as long and is needed only to say what differs. */
function expectSame(now: unknown, wanted: unknown): void {
  if (JSON.stringify(now) !== JSON.stringify(wanted)) expect(now).toEqual(wanted);
}

function pick<T>(list: readonly T[], at: number): T {
  const found = list[at % list.length];
  if (found === undefined) throw new Error('nothing to pick from');
  return found;
}

/** Does one step; null where there is nothing to do it to, a finding where it was refused. */
function acted(e: Estimate, { act, which, what, more }: Step): Applied | object | null {
  const cells = cellsOf(e);
  const parts = e.notebook.parts;
  const cell = cells.length > 0 ? pick(cells, which) : null;
  const part = pick(parts, which);
  switch (act) {
    case 'formula':
      return (
        cell &&
        e.setFormula(cell.id, more % 3 === 0 ? pick(cells, what).formula : pick(FORMULAS, what))
      );
    case 'rename':
      return cell && e.rename(cell.id, pick(NAMES, what));
    case 'add': {
      const after = cells.find((c) => c.part === part.key && more % 2 === 0) ?? null;
      return e.addCell(part.key, after?.id ?? null, pick(NAMES, what), pick(FORMULAS, more));
    }
    case 'remove':
      return cell && e.removeCell(cell.id);
    case 'remark': {
      const [word, text] = pick(REMARKS, what);
      return cell && e.setRemark(cell.id, word, text);
    }
    case 'no-remark':
      return cell && cell.remarks.length > 0
        ? e.removeRemark(cell.id, pick(cell.remarks, what).word)
        : null;
    case 'by-hand':
      return (
        cell &&
        e.setByHand(cell.id, pick(FORMULAS, what), more % 2 === 0 ? 'the owner said so' : null)
      );
    case 'worked-again':
      return cell && e.setByHand(cell.id, null, null);
    case 'add-part':
      return e.addPart(pick(NAMES, what), more % 2 === 0 ? null : part.key);
    case 'rename-part':
      return e.renamePart(part.key, pick(NAMES, what));
    case 'text': {
      const { text } = e.notebook;
      const from = which % (text.length + 1);
      const to = Math.min(text.length, from + (more % 30));
      return e.replaceText({ say: 'Text', splices: [{ from, to, insert: pick(PIECES, what) }] });
    }
    case 'template':
      return e.insertTemplate(pick(TEMPLATES, what));
    case 'move': {
      const to = { part: pick(parts, what).key, place: more % 8 };
      return cell && e.moveCell(cell.id, to, more % 3 === 0 ? 'may-change' : 'kept');
    }
    case 'move-part':
      return e.movePart(part.key, what % parts.length, more % 3 === 0 ? 'may-change' : 'kept');
    case 'duplicate':
      return cell && e.duplicateCell(cell.id);
    case 'duplicate-part':
      return e.duplicatePart(part.key);
    case 'undo':
      return e.undo();
    case 'redo':
      return e.redo();
  }
}

function cellsOf(e: Estimate): readonly Cell[] {
  return e.notebook.parts
    .flatMap((p) => p.blocks)
    .flatMap((b) => (b.kind === 'cell' ? [b.cell] : []));
}

/** All that the page shows, with places for ids, which differ. */
function standing(e: Estimate): unknown {
  const cells = cellsOf(e);
  const places = new Map(cells.map((c, i) => [c.id, i]));
  const place = (id: CellId): number => places.get(id) ?? -1;
  const partPlaces = new Map(e.notebook.parts.map((p, i) => [p.key, i]));
  const costs = e.costs();
  return {
    cells: cells.map((cell) => {
      const { outcome, worked, kind, reading, needs, goesInto } = e.state(cell.id);
      return {
        name: cell.name,
        formula: cell.formula,
        kind,
        outcome: outcome.kind,
        report: outcome.kind === 'fault' ? outcome.report : null,
        for: outcome.kind === 'waiting' || outcome.kind === 'unknown' ? outcome.for.map(place) : [],
        leftOut: outcome.kind === 'value' ? outcome.leftOut.map(place) : [],
        worked: worked.kind,
        shown: e.shown(cell.id),
        shownWorked: e.shownWorked(cell.id),
        range: e.shownRange(cell.id),
        readAs: reading.sentence,
        notes: reading.notes,
        problems: reading.problems,
        waitsFor: reading.waitsFor.map(place),
        needs: needs.map(place),
        goesInto: goesInto.map(place).toSorted((a, b) => a - b),
      };
    }),
    costs: {
      total: { ...costs.total, incomplete: costs.total.incomplete.map(place) },
      parts: costs.parts.map((p) => ({
        ...p,
        key: partPlaces.get(p.key),
        incomplete: p.incomplete.map(place),
      })),
      shares: costs.shares,
    },
    findings: e.findings().map((f) => ({
      ...f,
      part: f.part === null ? null : partPlaces.get(f.part),
      cell: f.cell === null ? null : place(f.cell),
    })),
  };
}
