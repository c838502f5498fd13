// Notebooks of the invented Kestrel Court to explain numbers of, and the way to ask for a working.
import { type Working, type Step } from '../../src/explain/step.ts';
import { workingText } from '../../src/explain/text.ts';
import { workingOf } from '../../src/explain/working.ts';
import type { CellId } from '../../src/language/tree.ts';
import { Estimate } from '../../src/notebook/estimate.ts';

/** The cells that language.md's examples stand on; invented sizes and prices. */
export const GIVENS = [
  'Slab length: 12 ft\n  - from: measured on site',
  'Slab width: 4 ft\n  - from: width of the stair it continues',
  'Thickness: 4 in\n  - from: code minimum 3 1/2 in for slabs on ground',
  'Bag yield: 0.45 cubic feet per bag\n  - from: bag label, 60 lb mix',
  'Bag price: $6.48 per bag\n  - from: invented price',
  'Waste: 10%\n  - from: rule of thumb, uneven stone',
  'Deck width: 14 ft',
  'Total rise: 52 1/2 in',
  'Direct cost: $7,500',
] as const;

export interface Explained {
  readonly estimate: Estimate;
  /** Of every cell. */
  readonly names: readonly string[];
  idOf(name: string): CellId;
  working(name: string): Working;
  text(name: string): string;
}

export function notebook(text: string): Explained {
  const estimate = new Estimate(text);
  const cells = estimate.notebook.parts
    .flatMap((part) => part.blocks)
    .flatMap((block) => (block.kind === 'cell' ? [block.cell] : []));
  const ids = new Map(cells.map((cell) => [cell.name, cell.id]));
  const idOf = (name: string): CellId => {
    const id = ids.get(name);
    if (id === undefined) throw new Error(`no cell is called ${name}`);
    return id;
  };
  return {
    estimate,
    names: [...ids.keys()],
    idOf,
    working: (name) => workingOf(estimate, idOf(name)),
    text: (name) => workingText(workingOf(estimate, idOf(name))),
  };
}

/** The working of a formula that stands as the cell Answer below the givens. */
export function workingFor(formula: string, before: readonly string[] = GIVENS): Working {
  return landing(...before, `Answer: ${formula}`).working('Answer');
}

/** A notebook with one part, Landing, of these cells. */
export function landing(...cells: readonly string[]): Explained {
  return notebook(`# Kestrel Court\n\n## Landing\n\n${cells.map((c) => `- ${c}`).join('\n')}\n`);
}

/** Every step of a working, in reading order, folded ones as they are. */
export function stepsIn(steps: readonly Step[]): readonly Step[] {
  return steps.flatMap((step) => [step, ...stepsIn(step.parts)]);
}

/** The lines of numbers, in reading order. */
export function numbersIn(working: Working): readonly string[] {
  return stepsIn(working.steps).flatMap((step) => (step.numbers === '' ? [] : [step.numbers]));
}

/** A line with its struck units between tildes. */
export function marked(step: Step | undefined): string {
  return (step?.pieces ?? [])
    .map((piece) => (piece.struck ? `~${piece.text}~` : piece.text))
    .join('');
}
