// Trials as plain values for machines: what `figure --trials N --seed S --json` adds, and what a worker hands back.
import type { CellId } from '../language/tree.ts';
import { cellsOf } from '../notebook/lines.ts';
import type { Notebook } from '../notebook/document.ts';
import { tiesOf } from './ties.ts';
import { type TrialFigure, type TrialsAsked, figureOf, runTrials } from './trials.ts';
import type { Asked } from './web.ts';

/** A notebook that is worked: an `Estimate`. */
export interface Job extends Asked {
  readonly notebook: Notebook;
  rows(cell: CellId): readonly (readonly CellId[])[] | null;
}

export interface CellTrialFigure extends TrialFigure {
  readonly part: string;
  readonly name: string;
  readonly unit: string;
  /** In how many trials it has no value; left away where it always has one. */
  readonly none?: number;
}

export interface TrialFigures {
  readonly seed: number;
  readonly trials: number;
  readonly cells: readonly CellTrialFigure[];
}

/** Every cell of a notebook in its order, those in rows after the table they stand in. */
export function everyCell(job: Job): readonly { readonly cell: CellId; readonly part: string }[] {
  return job.notebook.parts.flatMap((part) =>
    cellsOf(part).flatMap(({ id }) =>
      [id, ...(job.rows(id)?.flat() ?? [])].map((cell) => ({ cell, part: part.name })),
    ),
  );
}

/** Every cell that depends on a range and is a number, the givens with the ranges among them; tied ones move together. */
export function trialFigures(job: Job, wish: Pick<TrialsAsked, 'trials' | 'seed'>): TrialFigures {
  const all = everyCell(job);
  const parts = new Map(all.map(({ cell, part }) => [cell, part]));
  const told = runTrials(
    job,
    all.map(({ cell }) => cell),
    { ...wish, ties: tiesOf(job) },
  );
  return {
    seed: wish.seed,
    trials: wish.trials,
    cells: told.flatMap(({ cell, unit, ...sample }) => {
      // In no trial a value: there is nothing to tell of it.
      if (sample.sorted.length === 0) return [];
      const { name } = job.state(cell).input;
      const figure: CellTrialFigure = {
        part: parts.get(cell) ?? '',
        name,
        unit,
        ...tidied(figureOf(sample)),
      };
      return [sample.none === 0 ? figure : { ...figure, none: sample.none }];
    }),
  };
}

/** The same for a person to read in a terminal. */
export function trialsText({ seed, trials, cells }: TrialFigures): string {
  const begins = `\nHow sure: ${trials} trials, seed ${seed}\n`;
  if (cells.length === 0)
    return `${begins}  No given has a range, so every value stays as it is.\n`;
  const number = (value: number): string => String(Number(value.toPrecision(5)));
  const lines = cells.map(({ part, name, unit, p5, p10, p50, p90, p95 }) => {
    const named = part === '' ? name : `${part}: ${name}`;
    const inUnit = unit === '' ? '' : ` (${unit})`;
    return `  ${named}${inUnit}: median ${number(p50)}, 80% between ${number(p10)} and ${number(p90)}, 90% between ${number(p5)} and ${number(p95)}`;
  });
  return `${begins}${lines.join('\n')}\n`;
}

/** Without the last digits of doubles, which are noise. */
function tidied(figure: TrialFigure): TrialFigure {
  const tidy = (value: number): number => Number(value.toPrecision(12));
  const { mean, sd, p5, p10, p50, p80, p90, p95 } = figure;
  return {
    mean: tidy(mean),
    sd: tidy(sd),
    p5: tidy(p5),
    p10: tidy(p10),
    p50: tidy(p50),
    p80: tidy(p80),
    p90: tidy(p90),
    p95: tidy(p95),
  };
}
