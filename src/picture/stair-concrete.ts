// A flight in concrete: solid to the ground, or with a waist along its slope.
import { type KeyItem, type Point, type Shape, area } from './drawing.ts';
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
    shapes.push(area([...steps, { x: end, y: 0 }], 'cut', 'concrete'));
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
