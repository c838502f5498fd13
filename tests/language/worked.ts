// One formula worked in a small notebook: the doorway of the language tests, text in, text out.
import { Estimate } from '../../src/notebook/estimate.ts';

/** The cells that language.md's examples stand on; invented sizes. */
export const GIVENS = [
  'Slab length: 12 ft',
  'Slab width: 4 ft',
  'Thickness: 4 in',
  'Bag yield: 0.45 cubic feet per bag',
  'Bag price: $6.48 per bag',
  'Waste: 10%',
  'Deck width: 14 ft',
  'Total rise: 52 1/2 in',
  'Direct cost: $7,500',
] as const;

export interface WorkedOut {
  /** As shown, or null where there is no value. */
  readonly shown: string | null;
  readonly exact: string | null;
  readonly unit: string | null;
  readonly readAs: string;
  readonly code: string | null;
  readonly spots: readonly string[];
  /** Whole formulas. */
  readonly fixes: readonly string[];
  readonly message: string;
  readonly notes: readonly string[];
}

/** Works `formula` as the cell Answer in a part with these cells before it. */
export function worked(formula: string, givens: readonly string[] = GIVENS): WorkedOut {
  const lines = [...givens, `Answer: ${formula}`].map((line) => `- ${line}`);
  const estimate = new Estimate(`# Kestrel Court\n\n## Landing\n\n${lines.join('\n')}\n`);
  const cell = estimate.notebook.parts
    .flatMap((p) => p.blocks)
    .flatMap((b) => (b.kind === 'cell' && b.cell.name === 'Answer' ? [b.cell] : []))[0];
  if (!cell) throw new Error(`no cell Answer came of: ${formula}`);
  const state = estimate.state(cell.id);
  const shown = estimate.shown(cell.id);
  const report = state.outcome.kind === 'fault' ? state.outcome.report : null;
  return {
    shown: shown?.text ?? null,
    exact: shown?.exact ?? null,
    unit: shown?.unit ?? null,
    readAs: state.reading.sentence,
    code: report?.code ?? null,
    spots: (report?.spots ?? []).map((s) => formula.slice(s.from, s.to)),
    fixes: (report?.fixes ?? []).map((f) => f.formula),
    message: report ? `${report.headline} ${report.explanation}` : '',
    notes: state.reading.notes,
  };
}
