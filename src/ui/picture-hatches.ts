// The hatches by which drawings tell what is cut through, as patterns: concrete with its stones, gravel, ground,
// lumber across and along the grain, laid units, the house that stands there already.
import { type TemplateResult, svg } from 'lit';
import type { Fill } from '../picture/drawing.ts';

/** The fills that are hatched, with the size of their pattern in pixels. */
const HATCHES: Readonly<Partial<Record<Fill, readonly [number, number, TemplateResult]>>> = {
  concrete: [
    34,
    30,
    svg`<path d="M5 8l5-3 1 5zM22 20l6 1-4 4z"></path>
      <path class="grain" d="M16 4h1.3v1.3h-1.3zM28 8h1.3v1.3h-1.3zM3 18h1.3v1.3h-1.3zM13 24h1.3v1.3h-1.3zM19 13h1.3v1.3h-1.3zM31 27h1.3v1.3h-1.3zM8 27h1.3v1.3h-1.3zM25 1h1.3v1.3h-1.3z"></path>`,
  ],
  stone: [
    22,
    16,
    svg`<path d="M3 6q0-4 4-4t4 3-4 4-4-3zM13 12q0-3 4-4t4 3-4 4-4-3zM13 3q1-2 4-2t3 3-4 2-3-3zM2 13q0-2 3-2t4 2-4 2-3-2z"></path>`,
  ],
  earth: [26, 26, svg`<path d="M2 11l9-9M5 13l9-9M8 15l9-9M15 24l9-9M18 26l8-8M12 22l9-9"></path>`],
  wood: [16, 9, svg`<path d="M0 2.5h16M0 7h7q3-2 9 0"></path>`],
  'end-grain': [12, 12, svg`<path d="M0 12q1-11 12-12M0 6q3-5 6-6M6 12q2-5 6-6"></path>`],
  unit: [8, 8, svg`<path d="M-1 9l10-10M-1 1l2-2M7 9l2-2"></path>`],
  house: [5, 5, svg`<path d="M-1 -1l7 7M-1 4l2 2M4 -1l2 2"></path>`],
};

export const HATCHED: readonly Fill[] = Object.keys(HATCHES) as Fill[];

export function hatchPatterns(): TemplateResult {
  return svg`<defs>${HATCHED.map((fill) => {
    const [width, height, marks] = HATCHES[fill] ?? [1, 1, svg``];
    return svg`<pattern id="hatch-${fill}" width=${width} height=${height} patternUnits="userSpaceOnUse">${marks}</pattern>`;
  })}</defs>`;
}
