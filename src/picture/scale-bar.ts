// A bar under the drawing that tells the scale.
import { FONT, type Lettering, type Stroke, line } from './strokes.ts';

const BARS = {
  us: [
    [3, '3 in'],
    [6, '6 in'],
    [12, '1 ft'],
    [24, '2 ft'],
    [48, '4 ft'],
    [96, '8 ft'],
    [240, '20 ft'],
    [600, '50 ft'],
  ],
  metric: [
    [50 / 25.4, '50 mm'],
    [100 / 25.4, '100 mm'],
    [250 / 25.4, '250 mm'],
    [500 / 25.4, '500 mm'],
    [1000 / 25.4, '1 m'],
    [2000 / 25.4, '2 m'],
    [5000 / 25.4, '5 m'],
    [10_000 / 25.4, '10 m'],
  ],
} as const;

/** The longest of the usual lengths that has room. */
export function scaleBar(on: {
  readonly scale: number;
  readonly measures: 'us' | 'metric';
  readonly x: number;
  readonly y: number;
  readonly room: number;
  readonly strokes: Stroke[];
  readonly letters: Lettering[];
}): void {
  const { scale, x, y, room, strokes, letters } = on;
  const found = BARS[on.measures].findLast(([inches]) => inches * scale <= room);
  if (!found) return;
  const [inches, text] = found;
  const long = inches * scale;
  strokes.push(line('bar', x, y, x + long, y));
  for (const at of [x, x + long / 2, x + long]) strokes.push(line('bar', at, y - 3, at, y + 3));
  letters.push({ x: x + long + 6, y: y + FONT * 0.36, text, anchor: 'start', wrong: false });
}
