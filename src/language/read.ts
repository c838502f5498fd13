// One formula, read and checked: tokens, tree, what everything measures, and the sentence said back.
import type { Fix } from '../words/report.ts';
import type { Spot } from '../words/spot.ts';
import { check } from './check/index.ts';
import { formulaTokens } from './lexer.ts';
import { parseTokens } from './parse.ts';
import { LEAVE_OUT, type ReadingProblem, wordProblem } from './problems.ts';
import type { Reading, Scan, Surroundings } from './reading.ts';
import type { ScanInner } from './scan.ts';
import { sentence } from './sentence.ts';
import type { Vocabulary } from './vocabulary.ts';

/** Reads a scanned formula, now that what its names hold can be asked. */
export function read(found: Scan, vocabulary: Vocabulary, surroundings: Surroundings): Reading {
  const inner = found.inner as ScanInner;
  const parsed = inner.tree
    ? { tree: inner.tree, problem: null }
    : parseTokens(found.text, inner.tokens, vocabulary, found.part, found.self, surroundings);
  if (parsed.problem) {
    const report = wordProblem(parsed.problem);
    const fixes = report.fixes
      .filter((fix) => fix.say !== LEAVE_OUT || canBeRead(fix.formula, found, vocabulary))
      .flatMap((fix) => {
        if (SLIPS.has(report.code)) return [mendedOn(fix, found, vocabulary)];
        return report.code === 'other-currency' ? askedNext(fix, found, vocabulary) : [fix];
      });
    const spots = report.spots.map((s) => inside(s, found.text));
    return {
      tree: parsed.tree,
      checked: null,
      sentence: '',
      notes: [],
      problems: [{ ...report, fixes, spots }],
      waitsFor: [],
    };
  }
  const checked = check(
    parsed.tree,
    surroundings,
    vocabulary.nouns,
    found.text,
    vocabulary.sizeTables,
  );
  return {
    tree: parsed.tree,
    checked: checked.checked,
    sentence: sentence(parsed.tree, vocabulary.nouns),
    notes: checked.notes,
    problems: checked.problems,
    waitsFor: checked.waitsFor,
  };
}

/** Slips that are mended with one name or unit for another. */
const SLIPS: ReadonlySet<string> = new Set(['unknown-name', 'unknown-unit']);

/** A second slip in the same formula is mended with the first, where it has a near name: two presses would be one too many. */
function mendedOn(fix: Fix, found: Scan, vocabulary: Vocabulary): Fix {
  let { say, formula } = fix;
  for (let slips = 0; slips < 3; slips++) {
    const problem = problemIn(formula, found, vocabulary);
    if (!problem) return { say, formula };
    const next = SLIPS.has(problem.code) ? wordProblem(problem).fixes[0] : undefined;
    const named = /^Use (".*")$/.exec(next?.say ?? '')?.[1];
    if (!next || !named || !say.startsWith('Use ')) return fix;
    formula = next.formula;
    say = `${say} and ${named}`;
  }
  return fix;
}

/** What is asked once the sign is right is offered at once, each way of it. */
function askedNext(fix: Fix, found: Scan, vocabulary: Vocabulary): readonly Fix[] {
  const problem = problemIn(fix.formula, found, vocabulary);
  const next = problem && problem.code !== 'other-currency' ? wordProblem(problem).fixes : [];
  if (next.length === 0) return [fix];
  return next.map(({ say, formula }) => ({ say: `${fix.say}: ${say}`, formula }));
}

/** Leaving words out is only offered where what is left can be read. */
function canBeRead(formula: string, found: Scan, vocabulary: Vocabulary): boolean {
  return problemIn(formula, found, vocabulary) === null;
}

function problemIn(formula: string, found: Scan, vocabulary: Vocabulary): ReadingProblem | null {
  const { part, self } = found;
  const tokens = formulaTokens(formula);
  return vocabulary.trying(
    () => parseTokens(formula, tokens, vocabulary, part, self, null).problem,
  );
}

/** A spot that lies inside the text and marks at least one character where there is one. */
function inside(spot: Spot, text: string): Spot {
  const from = Math.max(0, Math.min(spot.from, Math.max(0, text.length - 1)));
  const to = Math.max(Math.min(spot.to, text.length), Math.min(from + 1, text.length));
  return { from, to };
}
