// A notebook of cells that stand in one part, and its cells by their names.
import type { CellId } from '../../src/language/tree.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { everyCell } from '../../src/moves-it/figures.ts';
import { type CellTrials, type TrialsAsked, runTrials } from '../../src/moves-it/trials.ts';

export interface Opened {
  readonly estimate: Estimate;
  /** The only cell of this name. */
  readonly cell: (name: string) => CellId;
  readonly cells: () => readonly CellId[];
  readonly trials: (name: string, wish?: Partial<TrialsAsked>) => CellTrials;
}

export const TRIALS = 20_000;

/** Lines are cells; a blank line, or one that begins with a blank, belongs to the cell above it. */
export function opened(...lines: readonly string[]): Opened {
  const items = lines.map((line) => (line === '' || line.startsWith(' ') ? line : `- ${line}`));
  return openedText(`# Kestrel Court\n\n## Ground\n\n${items.join('\n')}\n`);
}

export function openedText(text: string): Opened {
  const estimate = new Estimate(text);
  const cells = (): readonly CellId[] => everyCell(estimate).map((each) => each.cell);
  const cell = (name: string): CellId => {
    const found = cells().filter((id) => estimate.state(id).input.name === name);
    if (found.length !== 1) throw new Error(`${found.length} cells are called ${name}`);
    return found[0];
  };
  return {
    estimate,
    cell,
    cells,
    trials: (name, wish = {}) => {
      const asked = { trials: TRIALS, seed: 1, cells: [cell(name)], ...wish };
      const [told] = runTrials(estimate, cells(), asked);
      if (!told) throw new Error(`${name} does not depend on a range`);
      return told;
    },
  };
}
