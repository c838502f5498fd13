// A drawing laid on a sheet so many pixels wide: the scale, where dimension lines and their words stand so that none
// lies over another, and a bar that tells the scale. Pure numbers; whoever draws it only turns them into lines.
import {
  BETWEEN,
  EDGE,
  OFF,
  TICK,
  besideWidth,
  placeLevel,
  placeUpright,
  rowsOf,
  upright,
  widestOf,
} from './chains-placed.ts';
import { type Drawing, type Point, type Shape, boundsOf } from './drawing.ts';
import { scaleBar } from './scale-bar.ts';
import { FONT, type Lettering, type Stroke } from './strokes.ts';

/** No picture is taller than this beside its width unless its margins need it. */
const TALLEST = 380;
const BAR = 22;
const BAR_ROOM = 150;
const DOT = 1.8;
const HEAD = 7;

/** What is left once arrows and dots have been given their size: lines and rounds, in pixels. */
export type Placed = Extract<Shape, { readonly kind: 'path' | 'round' }>;

export interface Sheet {
  readonly width: number;
  readonly height: number;
  /** Pixels in an inch. */
  readonly scale: number;
  /** Where x = 0, y = 0 of the drawing lies. */
  readonly origin: Point;
  readonly shapes: readonly Placed[];
  readonly strokes: readonly Stroke[];
  readonly letters: readonly Lettering[];
}

export interface SheetWish {
  readonly width: number;
  readonly measures: 'us' | 'metric';
}

export function sheetOf(drawing: Drawing, { width, measures }: SheetWish): Sheet {
  const bounds = boundsOf(drawing);
  const size = {
    x: Math.max(bounds.right - bounds.left, 1e-6),
    y: Math.max(bounds.bottom - bounds.top, 1e-6),
  };
  const left = EDGE + besideWidth(drawing, 'left');
  const right = EDGE + besideWidth(drawing, 'right');
  const room = Math.max(width - left - right, 40);
  const scale = Math.min(room / size.x, TALLEST / size.y);
  const rows = {
    top: rowsOf(drawing, 'top', scale),
    bottom: rowsOf(drawing, 'bottom', scale),
  };
  const tops = rows.top.reduce((sum, row) => sum + row.tall, 0);
  const bottoms = rows.bottom.reduce((sum, row) => sum + row.tall, 0);
  const spill = upright(drawing, scale);
  const above = Math.max(EDGE + (tops > 0 ? tops + OFF : 0), spill.above);
  const drawn = { x: size.x * scale, y: size.y * scale };
  const corner = { x: left + (room - drawn.x) / 2, y: above };
  const origin = { x: corner.x - bounds.left * scale, y: corner.y - bounds.top * scale };
  const put = ({ x, y }: Point): Point => ({ x: origin.x + x * scale, y: origin.y + y * scale });
  const strokes: Stroke[] = [];
  const letters: Lettering[] = [];
  for (const side of ['left', 'right'] as const) {
    let x = side === 'left' ? corner.x - OFF : corner.x + drawn.x + OFF;
    const edge = side === 'left' ? corner.x : corner.x + drawn.x;
    for (const chain of drawing.chains.filter((each) => each.side === side)) {
      placeUpright(chain, { x, edge, put, strokes, letters });
      x += (side === 'left' ? -1 : 1) * (widestOf(chain) + TICK * 2 + BETWEEN * 2);
    }
  }
  let y = corner.y - OFF;
  for (const row of rows.top) {
    placeLevel(row, { y, edge: corner.y, up: -1, origin: origin.x, scale, strokes, letters });
    y -= row.tall;
  }
  const foot = corner.y + drawn.y;
  y = foot + OFF;
  for (const row of rows.bottom) {
    placeLevel(row, { y, edge: foot, up: 1, origin: origin.x, scale, strokes, letters });
    y += row.tall;
  }
  for (const { at, text } of drawing.words) {
    const { x, y: middle } = put(at);
    letters.push({ x, y: middle + FONT * 0.36, text, anchor: 'middle', wrong: false });
  }
  const below = Math.max(bottoms > 0 ? bottoms + OFF - BETWEEN : 0, spill.below) + EDGE;
  const height = foot + below + BAR;
  scaleBar({
    scale,
    measures,
    // Under the drawing, but never so far right that its words are cut off.
    x: Math.max(EDGE, Math.min(left, width - BAR_ROOM - 60)),
    y: height - BAR / 2,
    room: Math.min(room, BAR_ROOM),
    strokes,
    letters,
  });
  const shapes = drawing.shapes.flatMap((shape): readonly Placed[] => {
    switch (shape.kind) {
      case 'path':
        return [{ ...shape, points: shape.points.map(put) }];
      case 'round':
        return [{ ...shape, centre: put(shape.centre), radius: shape.radius * scale }];
      case 'dot':
        return [{ kind: 'round', centre: put(shape.at), radius: DOT, line: 'none', fill: 'solid' }];
      case 'arrow':
        return arrow(put(shape.from), put(shape.to));
    }
  });
  return { width, height: Math.ceil(height), scale, origin, shapes, strokes, letters };
}

function arrow(from: Point, to: Point): readonly Placed[] {
  const long = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [dx, dy] = [(to.x - from.x) / long, (to.y - from.y) / long];
  const wing = (side: number): Point => ({
    x: to.x - dx * HEAD - dy * side * HEAD * 0.4,
    y: to.y - dy * HEAD + dx * side * HEAD * 0.4,
  });
  return [
    { kind: 'path', points: [from, to], closed: false, line: 'outline', fill: 'none' },
    { kind: 'path', points: [to, wing(1), wing(-1)], closed: true, line: 'none', fill: 'solid' },
  ];
}
