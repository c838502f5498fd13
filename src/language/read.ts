// One formula, read and checked: tokens, tree, what everything measures, and the sentence said back.
import type { Fix, Report } from '../words/report.ts';
import type { Spot } from '../words/spot.ts';
import { isQuestion, questionReport, sumsIn } from './asked-about.ts';
import { check } from './check/index.ts';
import { formulaTokens } from './lexer.ts';
import { giveOrTake } from './give-or-take.ts';
import { meantBy } from './meant.ts';
import { parseTokens } from './parse.ts';
import { LEAVE_OPEN, LEAVE_OUT, MULTIPLY, type ReadingProblem, wordProblem } from './problems.ts';
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
  const offers = (formula: string): boolean => works(formula, found, vocabulary, surroundings);
  const before = vocabulary.tried;
  const mayTry = (): boolean => vocabulary.tried - before < MOST_TRIED_IN_ALL;
  const further = (fix: Fix): Fix =>
    mayTry() ? goneOn(fix, found, vocabulary, surroundings) : fix;
  const onward = (fix: Fix): Fix | null => {
    const gone = further(fix);
    return mayTry() && offers(gone.formula) ? gone : null;
  };
  if (parsed.problem) {
    const report = wordProblem(parsed.problem);
    const unread = report.code === 'unread';
    const fixes = report.fixes
      .filter((fix) => {
        if (unread) return offers(fix.formula);
        return (
          (fix.say !== LEAVE_OUT && fix.say !== MULTIPLY) ||
          canBeRead(fix.formula, found, vocabulary)
        );
      })
      .flatMap((fix) => {
        if (SLIPS.has(report.code)) return [mendedOn(fix, found, vocabulary)];
        return report.code === 'other-currency' ? askedNext(fix, found, vocabulary) : [fix];
      });
    const spots = report.spots.map((s) => inside(s, found.text));
    const range = giveOrTake(found.text, (words) =>
      shownBy(words, found, vocabulary, surroundings),
    );
    const gone = fixes.map(further);
    const said = { ...report, fixes: range ? [range, ...gone] : gone, spots };
    return {
      tree: parsed.tree,
      checked: null,
      sentence: '',
      notes: [],
      problems: [withMeant(asked(said, found.text, offers) ?? said, found.text, onward)],
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
    problems: checked.problems.map((report) => {
      const fixes = report.fixes.map(further);
      return withMeant({ ...report, fixes }, found.text, onward);
    }),
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
    if (!next || !named || !say.startsWith('Use ')) return { say, formula };
    formula = next.formula;
    say = `${say} and ${named}`;
  }
  return fix;
}

/**
 * A mend after which one more thing is asked goes on with the answer, where only one works: two presses would be one too many.
 * Else it stays, and what is next is asked then.
 */
function goneOn(fix: Fix, found: Scan, vocabulary: Vocabulary, surroundings: Surroundings): Fix {
  if (vocabulary.offers === 'nothing') return fix;
  const next = fixesOf(fix.formula, found, vocabulary, surroundings)
    .slice(0, MOST_TRIED)
    .filter(
      ({ say, formula }) =>
        !formula.includes('?') &&
        !NO_ANSWER.has(say) &&
        formula.length >= fix.formula.length - 2 &&
        works(formula, found, vocabulary, surroundings),
    );
  // Between several the person chooses, once it is asked.
  const [only, ...more] = next;
  if (!only || more.length > 0) return fix;
  return { say: `${fix.say}. ${only.say}`, formula: only.formula };
}

/** Answers that leave out what was typed are for the person to give. */
const NO_ANSWER: ReadonlySet<string> = new Set([LEAVE_OUT, LEAVE_OPEN, 'Leave it out']);

const MOST_TRIED = 4;

/** So that a notebook full of faults opens as fast as it is long. */
const MOST_TRIED_IN_ALL = 24;

/** Slips of the pen: what is otherwise asked is for the person to answer. */
const GOES_ON_FROM: ReadonlySet<string> = new Set([...SLIPS, 'other-currency', 'unread']);

/** What would be offered for a formula with one more slip in it. */
function fixesOf(
  formula: string,
  { part, self }: Scan,
  vocabulary: Vocabulary,
  surroundings: Surroundings,
): readonly Fix[] {
  return vocabulary.trying(() => {
    const tokens = formulaTokens(formula);
    const { tree, problem } = parseTokens(formula, tokens, vocabulary, part, self, surroundings);
    if (problem) return GOES_ON_FROM.has(problem.code) ? wordProblem(problem).fixes : [];
    const { nouns, sizeTables } = vocabulary;
    const [asked] = check(tree, surroundings, nouns, formula, sizeTables).problems;
    return asked?.code === 'per-which-yard' ? asked.fixes : [];
  });
}

/** What is asked once the sign is right is offered at once, each way of it. */
function askedNext(fix: Fix, found: Scan, vocabulary: Vocabulary): readonly Fix[] {
  const problem = problemIn(fix.formula, found, vocabulary);
  const next = problem && problem.code !== 'other-currency' ? wordProblem(problem).fixes : [];
  if (next.length === 0) return [fix];
  return next.map(({ say, formula }) => ({ say: `${fix.say}: ${say}`, formula }));
}

/** The report with what was most likely meant before all else that is offered. */
function withMeant(report: Report, text: string, onward: (fix: Fix) => Fix | null): Report {
  if (KEPT.has(report.code)) return report;
  const known = new Set(report.fixes.map(({ formula }) => formula));
  const meant = meantBy(text).flatMap((fix) => {
    const gone = known.has(fix.formula) ? null : onward(fix);
    if (!gone || known.has(gone.formula)) return [];
    known.add(gone.formula);
    return [gone];
  });
  const says = new Set(meant.map(({ say }) => say));
  const rest = report.fixes.filter(({ say }) => !says.has(say));
  const alike = meant.filter(({ say }, i) => meant.findIndex((fix) => fix.say === say) === i);
  return alike.length === 0 ? report : { ...report, fixes: [...alike, ...rest] };
}

/** Problems whose mends are all there can be. */
const KEPT: ReadonlySet<string> = new Set([
  'empty',
  'too-long',
  'too-deep',
  'other-currency',
  'half-a-range',
]);

/** A whole question is said to be one, once, unless what is offered already reads. */
function asked(report: Report, text: string, works: (formula: string) => boolean): Report | null {
  if (!isQuestion(text, report)) return null;
  const sums = sumsIn(text).filter(works);
  // A name near the asking itself is no slip.
  const [asking = ''] = report.code === 'unknown-name' ? (/^\S+/.exec(text.trim()) ?? []) : [];
  const slip = report.fixes.some(({ formula }) => formula.startsWith(asking) && works(formula));
  if (sums.length === 0 && slip) return null;
  const fixes = sums.map((formula) => ({ say: `Write "${formula}"`, formula }));
  return questionReport(text, fixes);
}

/** What the cell shows that these words name; null where they name none. */
function shownBy(
  words: string,
  { part, self }: Scan,
  vocabulary: Vocabulary,
  surroundings: Surroundings,
): string | null {
  const tokens = formulaTokens(words);
  const name = vocabulary.nameAt(tokens, 0, part, self);
  const [cell] = name?.cells ?? [];
  const whole = name?.length === tokens.length - 1 && name.cells.length === 1;
  return whole && cell !== undefined ? surroundings.shownOf(cell) : null;
}

/** Would it be read, and come to something? */
function works(
  formula: string,
  found: Scan,
  vocabulary: Vocabulary,
  surroundings: Surroundings,
): boolean {
  const { part, self } = found;
  return vocabulary.trying(() => {
    const { tree, problem } = parseTokens(
      formula,
      formulaTokens(formula),
      vocabulary,
      part,
      self,
      surroundings,
    );
    if (problem) return false;
    const { nouns, sizeTables } = vocabulary;
    return check(tree, surroundings, nouns, formula, sizeTables).problems.length === 0;
  });
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
