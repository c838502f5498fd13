// One formula, read and checked: tokens, tree, what everything measures, and the sentence said back.
import type { Spot } from '../words/spot.ts';
import { check } from './check/index.ts';
import { tokensOf } from './lexer.ts';
import { parseTokens } from './parse.ts';
import { LEAVE_OUT, wordProblem } from './problems.ts';
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
    const fixes = report.fixes.filter(
      (fix) => fix.say !== LEAVE_OUT || canBeRead(fix.formula, found, vocabulary),
    );
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

/** Leaving words out is only offered where what is left can be read. */
function canBeRead(formula: string, found: Scan, vocabulary: Vocabulary): boolean {
  const parsed = parseTokens(formula, tokensOf(formula), vocabulary, found.part, found.self, null);
  return parsed.problem === null;
}

/** A spot that lies inside the text and marks at least one character where there is one. */
function inside(spot: Spot, text: string): Spot {
  const from = Math.max(0, Math.min(spot.from, Math.max(0, text.length - 1)));
  const to = Math.max(Math.min(spot.to, text.length), Math.min(from + 1, text.length));
  return { from, to };
}
