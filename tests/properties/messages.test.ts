// Formulas that were right until a finger slipped: each is told calmly, at a spot in its own text, and every mend that
// is offered changes something and does away with what it was offered for.
import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/notebook/document.ts';
import { type Draft, Estimate } from '../../src/notebook/estimate.ts';
import type { Report } from '../../src/words/report.ts';
import { GIVENS, mutants } from './mutants.ts';

const COUNT = Number(process.env['MUTANTS'] ?? 3000);
const SEED = Number(process.env['MUTANTS_SEED'] ?? 1);
/** Words of programmers, and words that blame. */
const NEVER =
  /undefined|\bnull\b|NaN|token|operand|dimension|expected|invalid|illegal|oops|failed|!|\[object/i;
/** Where something else stands in the way as well, an `otherwise` at the end can't be read yet. */
const MENDS_ONLY_PART = new Set(['missing-otherwise']);

const notebook = (lines: readonly string[]): string =>
  `## Landing\n\n${lines.map((l) => `- ${l}\n`).join('')}`;
const estimate = new Estimate(notebook([...GIVENS, 'Answer: 1']));
const answer = cellsOf(estimate).find((c) => c.name === 'Answer')?.id ?? -1;

function cellsOf(e: Estimate): readonly Cell[] {
  return e.notebook.parts
    .flatMap((p) => p.blocks)
    .flatMap((b) => (b.kind === 'cell' ? [b.cell] : []));
}

/** Everything that is wrong with it. */
function reportsOf({ reading, outcome }: Draft): readonly Report[] {
  const worked = outcome.kind === 'fault' ? [outcome.report] : [];
  return [...new Set([...reading.problems, ...worked])];
}

/** What is said, without the person's own words. */
function ours(text: string): string {
  return text.replaceAll(/"[^"]*"/g, '""');
}

function wordsOf(report: Report): string {
  return ours([report.headline, report.explanation, ...report.fixes.map((f) => f.say)].join(' '));
}

/** Code and spots with the words that stand there. */
function placed(report: Report, formula: string): string {
  return [report.code, ...report.spots.map((s) => `${s.from} ${formula.slice(s.from, s.to)}`)].join(
    '|',
  );
}

const told = mutants(SEED, COUNT).map((formula) => ({
  formula,
  reports: reportsOf(estimate.draft(answer, formula)),
}));
const faulty = told.filter(({ reports }) => reports.length > 0);

/** The formulas of which a report breaks the rule, with that report. */
function breaking(rule: (report: Report, formula: string) => boolean): readonly string[] {
  return faulty.flatMap(({ formula, reports }) =>
    reports
      .filter((r) => rule(r, formula))
      .map((r) => `${formula} → ${r.code}: ${r.headline} ${r.explanation}`),
  );
}

describe(`of ${COUNT} formulas with a slip in them`, () => {
  it('most are told to have one, in many different ways', () => {
    expect(faulty.length).toBeGreaterThan(COUNT / 2);
    expect(
      new Set(faulty.flatMap(({ reports }) => reports.map((r) => r.code))).size,
    ).toBeGreaterThan(20);
  });

  it('every spot lies in the formula and marks something', () => {
    const inside = (r: Report, f: string): boolean =>
      r.spots.every(
        (s) =>
          s.from >= 0 &&
          s.from < Math.max(1, s.to) &&
          s.to <= f.length &&
          (s.from < s.to || f === ''),
      );
    expect(breaking((r, f) => r.spots.length === 0 || !inside(r, f))).toEqual([]);
  });

  it('every headline is short, and something is said below it', () => {
    expect(
      breaking((r) => r.headline.length >= 60 || r.headline === '' || r.explanation === ''),
    ).toEqual([]);
  });

  it('no message has a word of programmers or of blame', () => {
    expect(breaking((r) => NEVER.test(wordsOf(r)))).toEqual([]);
  });

  it('every mend is another formula', () => {
    expect(breaking((r, f) => r.fixes.some((x) => x.formula === f))).toEqual([]);
  });

  it('no mend leaves the same fault in the same words at the same spot', () => {
    const again = (r: Report, f: string): boolean =>
      !MENDS_ONLY_PART.has(r.code) &&
      r.fixes.some((x) =>
        reportsOf(estimate.draft(answer, x.formula)).some(
          (z) => placed(z, x.formula) === placed(r, f),
        ),
      );
    expect(breaking(again)).toEqual([]);
  });

  it('what is pointed out about the whole notebook is said in the same manner', () => {
    const formulas = mutants(SEED + 1, 250);
    const e = new Estimate(notebook([...GIVENS, ...formulas.map((f, i) => `Answer ${i}: ${f}`)]));
    const findings = e.findings();
    expect(findings.length).toBeGreaterThan(100);
    expect(findings.filter((f) => f.message === '' || NEVER.test(ours(f.message)))).toEqual([]);
  });
});
