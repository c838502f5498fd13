// Whatever is typed is read without failing, in steps bounded by its length, and told about within its own text.
// Every run throws 2,000 random strings and 2,000 mutated formulas. For a long run:
// FUZZ_CASES=200000 npx vitest run --project unit tests/properties/grammar-fuzz.test.ts (FUZZ_SEED=… goes on elsewhere)
import { describe, expect, test } from 'vitest';
import { tokensOf } from '../../src/language/lexer.ts';
import { cellsOf } from '../../src/notebook/lines.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { parsed } from '../language/parsed.ts';
import { Chance } from './chance.ts';
import { GIVENS, mutants, RIGHT } from './mutants.ts';

const CASES = Number(process.env['FUZZ_CASES'] ?? 2000);
const SEED = Number(process.env['FUZZ_SEED'] ?? 1);
/**
 * How many values the parser may read for every token. An amount is read once; beside a tight dash (`281-7%`) both are
 * read once more to see whether they are a range, and where nothing else was found wrong every amount is tried as the
 * first and the second end of one. Such an amount has two tokens or more, so that this comes to two a token and no more.
 */
const STEPS_A_TOKEN = 2;
/** The end's token is read by nobody. */
const STEPS_BESIDE = 0;
const UNSAYABLE = /undefined|\bnull\b|NaN|\[object/;

const MARKS =
  '0123456789.,:;/\\|-+*×÷=<>≥≤≠()[]{}%$£€¢#@&\'"’”“½¼²³?!~^_`−–— \t\u00A0\u200B\u202E\uD800'.split(
    '',
  );
const WORDS = [...new Set(RIGHT.flatMap((f) => f.match(/\w+|[^\s\w]/gu) ?? []))];

/** Marks alone, words of the language in any order, or any characters at all. */
function randomText(c: Chance): string {
  const kind = c.whole(0, 2);
  const one = (): string =>
    kind === 0
      ? c.of(MARKS)
      : kind === 1
        ? `${c.in(0.8) ? ' ' : ''}${c.in(0.85) ? c.of(WORDS) : c.of(MARKS)}`
        : c.in(0.5)
          ? String.fromCharCode(c.whole(32, 126))
          : String.fromCharCode(c.whole(1, 0xffff));
  return Array.from({ length: c.whole(0, 40) }, one)
    .join('')
    .replaceAll(/[\r\n]/g, ' ');
}

/** What is wrong with how `formula` was taken, or nothing; what stands in a person's own quotes is theirs. */
function faultsOf(e: Estimate, answer: number, formula: string): string | null {
  const { steps } = parsed(formula);
  const tokens = tokensOf(formula).length;
  if (steps > STEPS_A_TOKEN * tokens + STEPS_BESIDE) return `${steps} steps for ${tokens} tokens`;
  const { reading, outcome } = e.draft(answer, formula);
  const reports =
    outcome.kind === 'fault' ? [...reading.problems, outcome.report] : reading.problems;
  for (const r of reports) {
    if (r.spots.some((s) => s.from < 0 || s.to < s.from || s.to > formula.length))
      return `${r.code} marks ${JSON.stringify(r.spots)} of ${formula.length}`;
    const said = `${r.headline} ${r.explanation}`.replaceAll(/"[^"]*"/g, '""');
    if (UNSAYABLE.test(said) && !UNSAYABLE.test(formula)) return `${r.code} says: ${said}`;
  }
  return null;
}

describe('whatever is typed', () => {
  const e = new Estimate(
    `## Landing\n\n${[...GIVENS, 'Answer: 1'].map((l) => `- ${l}\n`).join('')}`,
  );
  const answer = e.notebook.parts.flatMap(cellsOf).find((cell) => cell.name === 'Answer')?.id ?? -1;

  function wrongOf(formulas: Iterable<string>): readonly string[] {
    const wrong: string[] = [];
    for (const formula of formulas) {
      let fault: string | null;
      try {
        fault = faultsOf(e, answer, formula);
      } catch (thrown) {
        fault = `throws ${String(thrown)}`;
      }
      if (fault !== null) wrong.push(`${JSON.stringify(formula)}: ${fault}`);
      if (wrong.length === 40) break;
    }
    return wrong;
  }

  test(
    `is read in bounded steps and told about in its own text: ${CASES} random strings`,
    { timeout: 1_800_000 },
    () => {
      const c = new Chance(SEED);
      expect(wrongOf(Array.from({ length: CASES }, () => randomText(c)))).toEqual([]);
    },
  );

  test(
    `is read in bounded steps and told about in its own text: ${CASES} mutated formulas`,
    { timeout: 1_800_000 },
    () => {
      expect(wrongOf(mutants(SEED, CASES))).toEqual([]);
    },
  );
});
