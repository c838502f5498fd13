// The check of units that is made before anything is worked agrees with mathjs's own unit arithmetic, which knows units
// only while it works: on random trees of lengths, areas, volumes, weights, times, money and counts.
// Every run tries 1,500. For a long run: UNIT_TREES=50000 npx vitest run --project unit tests/properties/units-against-mathjs.test.ts
import { expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { Chance } from './chance.ts';
import { type Tree, type Worked, compared, inBase, tree } from './typed-trees.ts';

const TREES = Number(process.env['UNIT_TREES'] ?? 1500);
const SEED = Number(process.env['UNIT_SEED'] ?? 1);

/** Refused because what two amounts measure does not go together: mathjs has to throw as well. */
const CLASHES = new Set([
  'unit-clash',
  'price-per-wrong-thing',
  'wrong-unit-asked',
  'bare-number',
  'price-per-what',
]);

/** Refused for a reason that mathjs's units know nothing of, and what that reason is. */
const OTHERWISE: ReadonlyMap<string, string> = new Map([
  ['too-many-lengths', 'nothing on a site measures square pounds or feet to the fifth'],
  ['noun-clash', 'bags are no boards; to mathjs both are bare numbers'],
  ['noun-by-noun', 'bags times boards; to mathjs both are bare numbers'],
  ['count-over-rate', 'a count over a price for each; to mathjs a count is a bare number'],
  ['two-readings', 'a bare number times a length with "by" could be a size without its unit'],
]);

/** The same up to the last digits of a double, against the size of what was added up. */
const CLOSE = 1e-9;

const estimate = new Estimate('# Kestrel Court\n\n## Yard\n\n- Answer: 1\n');
const cell = estimate.notebook.parts.flatMap((part) =>
  part.blocks.flatMap((block) => (block.kind === 'cell' ? [block.cell.id] : [])),
)[0];

/** What was found of one tree: a word for what it was, and what is wrong with it or null. */
interface Found {
  readonly was: string;
  readonly wrong: string | null;
}

function found(each: Tree): Found {
  const { reading, outcome } = estimate.draft(cell ?? -1, each.text);
  const [problem] = reading.problems;
  const theirs = workedBy(each.work);
  if (problem) {
    if (OTHERWISE.has(problem.code)) return { was: problem.code, wrong: null };
    if (!CLASHES.has(problem.code)) return { was: problem.code, wrong: 'refused for this' };
    if (theirs instanceof Error) return { was: 'refused by both', wrong: null };
    if (each.bare.has('count')) return { was: 'refused for what is counted', wrong: null };
    // Ounces per pound beside a bare number: ounces per pound as well, or a number?
    if (each.bare.has('slope') && problem.code === 'bare-number') {
      return { was: 'asked beside a slope', wrong: null };
    }
    return { was: problem.code, wrong: `mathjs works ${String(theirs)}` };
  }
  // A number beside hours or money is that many of them: said, and nothing that mathjs would do.
  if (reading.notes.some((note) => note.includes('is read as')))
    return { was: 'noted', wrong: null };
  if (theirs instanceof Error) return { was: 'worked', wrong: `mathjs: ${theirs.message}` };
  if (outcome.kind === 'fault') {
    return { was: outcome.report.code, wrong: null };
  }
  const measure = reading.checked?.holds.measure;
  if (outcome.kind !== 'value' || !measure) return { was: outcome.kind, wrong: 'no value' };
  if (typeof outcome.value === 'boolean') {
    return { was: 'worked by both', wrong: outcome.value === theirs ? null : String(theirs) };
  }
  if (measure.kind !== 'amount' || typeof outcome.value === 'string') {
    return { was: measure.kind, wrong: 'no amount' };
  }
  const ours = Number(outcome.value) * Number(measure.scale.valueOf());
  const other = workedBy(() => inBase(theirs, measure.dimension));
  const reach = workedBy(() => inBase(each.reach(), measure.dimension));
  if (other instanceof Error) return { was: 'worked', wrong: other.message };
  const far = Math.abs(ours - Number(other));
  const most = reach instanceof Error ? 0 : Math.abs(Number(reach));
  if (far <= CLOSE * Math.max(most, Math.abs(ours))) return { was: 'worked by both', wrong: null };
  return { was: 'worked', wrong: `${ours} and not ${String(other)}` };
}

function workedBy<T extends Worked>(work: () => T): T | Error {
  try {
    return work();
  } catch (error) {
    if (error instanceof Error) return error;
    throw error;
  }
}

test(
  `what is accepted comes to the same in mathjs, and what clashes throws there, on ${TREES} trees`,
  { timeout: 1_800_000 },
  () => {
    const many = new Map<string, number>();
    const wrong: string[] = [];
    for (let seed = SEED; seed < SEED + TREES && wrong.length < 40; seed++) {
      const c = new Chance(seed);
      const among = seed % 2 === 0 ? 'counts' : 'hard';
      const one = tree(c, c.whole(1, 3), among);
      const each = c.in(0.1) ? compared(c, one, tree(c, 2, among)) : one;
      const { was, wrong: fault } = found(each);
      many.set(was, (many.get(was) ?? 0) + 1);
      if (fault) wrong.push(`seed ${seed}: ${each.text}\n   ${was}: ${fault}`);
    }
    expect(wrong.join('\n')).toBe('');
    expect(many.get('worked by both') ?? 0).toBeGreaterThan(TREES / 5);
    expect(many.get('refused by both') ?? 0).toBeGreaterThan(TREES / 5);
  },
);
