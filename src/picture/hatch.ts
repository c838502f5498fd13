// The hatches by which drawings tell what is cut through, as strokes of their own inside each shape: concrete with its
// stones, gravel, ground, lumber along and across the grain, laid units, the house that stands there already.
// Strokes and no patterns: a pattern comes out of a printer as dots.
import type { Fill, Point } from './drawing.ts';

type Strokes = readonly (readonly Point[])[];

/** Strokes in pixels for a shape in pixels; none for what is not hatched. */
export function hatchOf(fill: Fill, shape: readonly Point[]): Strokes {
  switch (fill) {
    case 'concrete':
      return scattered(shape, CONCRETE, 12);
    case 'stone':
      return scattered(shape, STONES, 9);
    case 'earth': {
      const { top, bottom } = boxOf(shape);
      // A thin band of it has room for strokes side by side only.
      return bottom - top < 22 ? slanting(shape, 4, 1) : scattered(shape, EARTH, 17);
    }
    case 'wood':
      return alongGrain(shape);
    case 'end-grain':
      return rings(shape);
    case 'unit':
      return slanting(shape, 8, 1);
    case 'house':
      return slanting(shape, 4.5, -1);
    case 'none':
    case 'paper':
    case 'solid':
    case 'wrong':
      return [];
  }
}

/** No shape gets more strokes than this. */
const MOST = 3000;

const point = (x: number, y: number): Point => ({ x, y });

/** Little marks around their middle, used in turn. */
const CONCRETE: Strokes = [
  [point(-3, 2), point(2, -3), point(3, 2), point(-3, 2)],
  [point(0, 0), point(1.1, 0)],
  [point(0, 0), point(0, 1.1)],
  [point(-2, -2), point(3, -1), point(0, 3), point(-2, -2)],
  [point(0, 0), point(1.1, 0.4)],
  [point(0.6, 0), point(0, 0.9)],
  [point(0, 0), point(1, -0.4)],
];

const STONES: Strokes = [ovalOf(3.6, 2.6), ovalOf(3, 2), ovalOf(2.2, 2.6), ovalOf(4, 2.2)];

const EARTH: Strokes = [
  [point(-6, 3), point(1, -4)],
  [point(-3, 4), point(4, -3)],
  [point(0, 5), point(7, -2)],
];

function ovalOf(wide: number, high: number): readonly Point[] {
  return Array.from({ length: 9 }, (_, i) => {
    const turn = (i / 8) * Math.PI * 2;
    return point(Math.cos(turn) * wide, Math.sin(turn) * high);
  });
}

/** On a grid whose every second row is shifted, a little out of place but always in the same way. */
function scattered(shape: readonly Point[], marks: Strokes, usual: number): Strokes {
  const { left, top, right, bottom } = boxOf(shape);
  // Closer in what is thin, so that every piece shows what it is.
  const step = Math.max(Math.min(usual, (bottom - top) * 0.55), 6.5);
  const strokes: (readonly Point[])[] = [];
  let turn = 0;
  // Tufts of strokes are as wide as they are, however thin the ground.
  const along = marks === EARTH ? usual : step;
  for (let row = 0; top + row * step < bottom + step; row++) {
    for (let column = 0; left + column * along < right + along; column++) {
      turn++;
      const shift = row % 2 === 0 ? 0 : along / 2;
      const [dx, dy] = [((turn * 37) % 11) / 11 - 0.5, ((turn * 53) % 13) / 13 - 0.5];
      const x = left + column * along + shift + dx * step * 0.3;
      const y = top + row * step + step / 2 + dy * step * 0.3;
      const together = marks === EARTH ? EARTH : [marks[turn % marks.length] ?? []];
      // Ground lies every way: every second tuft of strokes leans to the other side.
      const lean = marks === EARTH && column % 2 === 1 ? -1 : 1;
      for (const mark of together) {
        const stroke = mark.map((p) => point(x + p.x * lean, y + p.y));
        if (stroke.every((p) => isInside(shape, p))) strokes.push(stroke);
      }
      if (strokes.length > MOST) return strokes;
    }
  }
  return strokes;
}

/** Lines along the longer way of a piece. */
function alongGrain(shape: readonly Point[]): Strokes {
  const { left, top, right, bottom } = boxOf(shape);
  const isLevel = right - left >= bottom - top;
  const step = 4.5;
  const turned = isLevel ? shape : shape.map(({ x, y }) => point(y, x));
  const [from, to] = isLevel ? [top, bottom] : [left, right];
  const strokes: (readonly Point[])[] = [];
  const rows = Math.floor((to - from) / step);
  // A thin piece has one line in its middle.
  const first = rows < 2 ? (to - from) / 2 : (to - from - (rows - 1) * step) / 2;
  for (let at = from + first, row = 0; at < to - 0.5 && strokes.length < MOST; at += step, row++) {
    for (const [a, b] of spansAt(turned, at)) {
      // Every second line is broken: grain runs out.
      const cut =
        row % 2 === 0
          ? [[a, b]]
          : [
              [a, a + (b - a) * 0.4],
              [a + (b - a) * 0.55, b],
            ];
      for (const [x1 = 0, x2 = 0] of cut) {
        strokes.push(isLevel ? [point(x1, at), point(x2, at)] : [point(at, x1), point(at, x2)]);
      }
    }
  }
  return strokes;
}

/** Rings of the tree around a corner below the piece. */
function rings(shape: readonly Point[]): Strokes {
  const { left, top, right, bottom } = boxOf(shape);
  const strokes: (readonly Point[])[] = [];
  const high = bottom - top;
  const pieces = Math.max(1, Math.round((right - left) / Math.max(high * 3, 26)));
  const wide = (right - left) / pieces;
  for (let piece = 0; piece < pieces; piece++) {
    const centre = point(left + piece * wide, bottom + high * 0.4);
    for (let radius = 5; radius < wide + high && strokes.length < MOST; radius += 5) {
      let run: Point[] = [];
      const close = (): void => {
        if (run.length > 1) strokes.push(run);
        run = [];
      };
      for (let turn = 0; turn <= 16; turn++) {
        const angle = (turn / 16) * (Math.PI / 2);
        const p = point(centre.x + Math.cos(angle) * radius, centre.y - Math.sin(angle) * radius);
        if (p.x < centre.x + wide && isInside(shape, p)) run.push(p);
        else close();
      }
      close();
    }
  }
  return strokes;
}

/** Lines at 45°: rising to the right where `way` is 1. */
function slanting(shape: readonly Point[], step: number, way: 1 | -1): Strokes {
  // Sheared so that the lines become level ones.
  const sheared = shape.map(({ x, y }) => point(x, y + x * way));
  const { top, bottom } = boxOf(sheared);
  const strokes: (readonly Point[])[] = [];
  for (let at = top + step / 2; at < bottom && strokes.length < MOST; at += step * Math.SQRT2) {
    for (const [a, b] of spansAt(sheared, at)) {
      strokes.push([point(a, at - a * way), point(b, at - b * way)]);
    }
  }
  return strokes;
}

/** Where a level line lies inside the shape, from left to right. */
function spansAt(shape: readonly Point[], y: number): readonly (readonly [number, number])[] {
  const crossings: number[] = [];
  for (const [i, a] of shape.entries()) {
    const b = shape[(i + 1) % shape.length] ?? a;
    if (a.y <= y === b.y <= y) continue;
    crossings.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
  }
  crossings.sort((one, other) => one - other);
  return Array.from({ length: Math.floor(crossings.length / 2) }, (_, i) => [
    crossings[i * 2] ?? 0,
    crossings[i * 2 + 1] ?? 0,
  ]);
}

function isInside(shape: readonly Point[], { x, y }: Point): boolean {
  return spansAt(shape, y).some(([from, to]) => x >= from && x <= to);
}

function boxOf(shape: readonly Point[]) {
  const xs = shape.map(({ x }) => x);
  const ys = shape.map(({ y }) => y);
  return {
    left: Math.min(...xs),
    top: Math.min(...ys),
    right: Math.max(...xs),
    bottom: Math.max(...ys),
  };
}
