// A flight in concrete: solid to the ground, or with a waist along its slope.
import { type KeyItem, type Point, type Shape, area, rectangle } from './drawing.ts';
import type { Given } from './given.ts';
import type { Flight } from './stair-flight.ts';

export function addConcrete(given: Given, flight: Flight, shapes: Shape[], key: KeyItem[]): void {
  const { risers, run, heights, floor, beyond } = flight;
  const waist = given.maybe('waist');
  const treads = risers.length - 1;
  const left = treads * run.inches;
  const steps: Point[] = [{ x: 0, y: 0 }];
  for (let i = 0; i < treads; i++) {
    steps.push({ x: i * run.inches, y: -heights[i] }, { x: (i + 1) * run.inches, y: -heights[i] });
  }
  const thick = given.inches('deck', waist?.inches ?? 4);
  steps.push({ x: left, y: -floor }, { x: left + beyond, y: -floor });
  const end = left + beyond;
  if (!waist) {
    addBase(given, end, shapes, key);
    shapes.push(area([...steps, ...footOf(given, end)], 'cut', 'concrete'));
  } else {
    // Its underside runs along the slope of the inner corners, and turns level under the floor above.
    const slope = (heights.at(-1) ?? 1) / (risers.length * run.inches);
    const drop = waist.inches * Math.hypot(1, slope);
    const turn = (floor - thick + drop) / slope;
    const soffit =
      turn < end
        ? [
            { x: end, y: -floor + thick },
            { x: turn, y: -floor + thick },
          ]
        : [{ x: end, y: drop - end * slope }];
    shapes.push(area([...steps, ...soffit, { x: drop / slope, y: 0 }], 'cut', 'concrete'));
  }
  key.push({
    line: 'cut',
    fill: 'concrete',
    text: waist ? `concrete, ${waist.said} at the waist` : 'concrete, solid to the ground',
  });
}

/** How deep it goes below the ground, piece by piece, each with where it ends. */
export function belowGround(
  given: Given,
): readonly { readonly to: number; readonly said: string }[] {
  if (given.maybe('waist')) return [];
  const [set, footing] = [given.some('set in'), given.some('footing')];
  const down = set?.inches ?? 0;
  return [
    ...(set ? [{ to: down, said: set.said }] : []),
    ...(footing ? [{ to: down + footing.inches, said: footing.said }] : []),
  ];
}

/** In inches, with the stone. */
export function underConcrete(given: Given): number {
  const stone = given.inches('set in', 0) + given.inches('base', 0);
  return Math.max(stone, belowGround(given).at(-1)?.to ?? 0);
}

/** From the back to the front of the underside: set into the ground, a footing along the foot and along the back. */
function footOf(given: Given, end: number): readonly Point[] {
  const set = given.inches('set in', 0);
  const footing = given.some('footing');
  if (!footing) {
    return [
      { x: end, y: set },
      { x: 0, y: set },
    ];
  }
  const low = set + footing.inches;
  const wide = Math.min(given.inches('footing width', 12), end / 2);
  return [
    { x: end, y: low },
    { x: end - wide, y: low },
    { x: end - wide, y: set },
    { x: wide, y: set },
    { x: wide, y: low },
    { x: 0, y: low },
  ];
}

function addBase(given: Given, end: number, shapes: Shape[], key: KeyItem[]): void {
  const base = given.some('base');
  if (!base) return;
  const set = given.inches('set in', 0);
  shapes.push(rectangle(0, set, end, base.inches, 'outline', 'stone'));
  key.push({ line: 'outline', fill: 'stone', text: `stone, ${base.said}` });
}
