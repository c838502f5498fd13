// Opens the text of a notebook through the doorway of the notebook floor and looks at its cells by name.
import { Estimate } from '../../src/notebook/estimate.ts';
import type { Cell } from '../../src/notebook/document.ts';
import type { CellState } from '../../src/engine/outcome.ts';

export interface Opened {
  readonly estimate: Estimate;
  /** The cell of this name, or of `Part: Name`. */
  cell(name: string): Cell;
  state(name: string): CellState;
  /** As a person reads it, `40 bags`; or the headline of what is wrong, or what it waits for. */
  shown(name: string): string;
  /** The unit shown and the exact number in it: `['bag', 40]`. */
  figure(name: string): readonly [unit: string, number: number];
  /** Of a yes/no cell. */
  holds(name: string): boolean;
}

export function opened(text: string): Opened {
  const estimate = new Estimate(text);
  const cell = (name: string): Cell => {
    const found = cellsOf(estimate).filter(({ part, cell: c }) =>
      name.includes(': ') ? name === `${part}: ${c.name}` : name === c.name,
    );
    const [first, ...more] = found;
    if (!first || more.length > 0) throw new Error(`${found.length} cells are called "${name}"`);
    return first.cell;
  };
  const state = (name: string): CellState => estimate.state(cell(name).id);
  return {
    estimate,
    cell,
    state,
    shown(name) {
      const { outcome } = state(name);
      switch (outcome.kind) {
        case 'value':
          return estimate.shown(cell(name).id)?.text ?? '';
        case 'fault':
          return outcome.report.headline;
        case 'waiting':
        case 'unknown':
          return `waits for ${outcome.for.map((id) => estimate.state(id).input.name).join(', ')}`;
      }
    },
    figure(name) {
      const { outcome } = state(name);
      const shown = estimate.shown(cell(name).id);
      if (outcome.kind !== 'value' || !shown) throw new Error(`${name}: ${this.shown(name)}`);
      return [shown.unit, Number(shown.exact)];
    },
    holds(name) {
      const { outcome } = state(name);
      if (outcome.kind !== 'value' || typeof outcome.value !== 'boolean') {
        throw new Error(`${name} is no yes or no: ${this.shown(name)}`);
      }
      return outcome.value;
    },
  };
}

/** Every cell of a notebook with the name of its part, in order. */
export function cellsOf(estimate: Estimate): readonly { part: string; cell: Cell }[] {
  return estimate.notebook.parts.flatMap((part) =>
    part.blocks.flatMap((block) =>
      block.kind === 'cell' ? [{ part: part.name, cell: block.cell }] : [],
    ),
  );
}
