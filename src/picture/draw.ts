// Draws any picture from what it was told. Fetched when the first picture comes into view.
import { boardPlan } from './board-plan.ts';
import type { Drawing } from './drawing.ts';
import { framingPlan } from './framing-plan.ts';
import type { Given } from './given.ts';
import { railingElevation } from './railing-elevation.ts';
import { slabPlan } from './slab-plan.ts';
import { slabSection } from './slab-section.ts';
import { stairSection } from './stair-section.ts';
import { wallSection } from './wall-section.ts';

const DRAWN: Readonly<Record<string, (given: Given) => Drawing>> = {
  'slab plan': slabPlan,
  'slab section': slabSection,
  'stair section': stairSection,
  'board plan': boardPlan,
  'framing plan': framingPlan,
  'railing elevation': railingElevation,
  'wall section': wallSection,
};

/** `name` is one of `PICTURES`. */
export function draw(name: string, given: Given): Drawing {
  const drawn = DRAWN[name];
  if (!drawn) throw new Error(`no picture is called ${name}`);
  return drawn(given);
}

export { hatchOf } from './hatch.ts';
export { sheetOf } from './sheet.ts';
export { FONT, wideOf } from './strokes.ts';
