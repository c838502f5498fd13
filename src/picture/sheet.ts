// A drawing laid on a sheet so many pixels wide: the scale, where dimension lines and their words stand so that none
// lies over another, and a bar that tells the scale. Pure numbers; whoever draws it only turns them into lines.
import { type Chain, type Drawing, type Fill, type Line, type Point, boundsOf } from './drawing.ts';

/** Of the words, in pixels. */
export const FONT = 12;
/** Lines of words one above the other. */
const LEADING = 14;
/** Between the drawing and its first dimension line, and from one such line to the next. */
const OFF = 12;
const BETWEEN = 8;
const TICK = 3.5;
const EDGE = 6;
/** No picture is taller than this beside its width unless its margins need it. */
const TALLEST = 380;
const BAR = 22;
const BAR_ROOM = 150;
const DOT = 1.8;
const HEAD = 7;

export interface Stroke {
  readonly from: Point;
  readonly to: Point;
  readonly line: 'dimension' | 'extension' | 'tick' | 'leader' | 'bar';
  readonly wrong: boolean;
}

export interface Lettering {
  readonly x: number;
  /** Of the line on which the letters stand. */
  readonly y: number;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly wrong: boolean;
}

export type Placed =
  | {
      readonly kind: 'path';
      readonly points: readonly Point[];
      readonly closed: boolean;
      readonly line: Line;
      readonly fill: Fill;
    }
  | {
      readonly kind: 'round';
      readonly centre: Point;
      readonly radius: number;
      readonly line: Line;
      readonly fill: Fill;
    };

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

/** How wide these words are at most; the face is the reader's own. */
export function wideOf(text: string): number {
  let wide = 0;
  for (const letter of text) {
    wide +=
      letter === ' ' ? 0.31 : /[/.,:il'|]/.test(letter) ? 0.34 : /[mwMW]/.test(letter) ? 0.9 : 0.6;
  }
  return wide * FONT;
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

function widestOf({ says }: Chain): number {
  return Math.max(0, ...says.map((text) => (text === null ? 0 : wideOf(text))));
}

/** What the upright chains of one side need beside the drawing. */
function besideWidth({ chains }: Drawing, side: 'left' | 'right'): number {
  const own = chains.filter((chain) => chain.side === side);
  const wide = own.reduce((sum, chain) => sum + widestOf(chain) + TICK * 2 + BETWEEN * 2, 0);
  return own.length === 0 ? 0 : wide + OFF - BETWEEN;
}

/** How far the words of upright chains reach above and below the drawing where they have to be spread. */
function upright(
  drawing: Drawing,
  scale: number,
): { readonly above: number; readonly below: number } {
  let [above, below] = [0, 0];
  const { top, bottom } = boundsOf(drawing);
  for (const chain of drawing.chains) {
    if (chain.side === 'top' || chain.side === 'bottom') continue;
    const wishes = middlesOf(chain).map(({ at }) => (at - top) * scale);
    const spread = apart(wishes);
    above = Math.max(above, LEADING - (spread[0] ?? LEADING));
    below = Math.max(below, (spread.at(-1) ?? 0) - (bottom - top) * scale + LEADING / 2);
  }
  return { above: above + EDGE, below };
}

interface Middle {
  readonly at: number;
  readonly long: number;
  readonly text: string;
  readonly wrong: boolean;
}

function middlesOf({ stops, says, wrong = [] }: Chain): readonly Middle[] {
  return says.flatMap((text, i) => {
    const [from, to] = [stops[i], stops[i + 1]];
    return text === null
      ? []
      : [{ at: (from + to) / 2, long: to - from, text, wrong: wrong.includes(i) }];
  });
}

/** Places in order, moved as little as keeps them a line of words apart. */
function apart(wishes: readonly number[]): readonly number[] {
  // Runs that touch are spread around their common middle.
  const runs: { sum: number; many: number }[] = [];
  const startOf = ({ sum, many }: { sum: number; many: number }): number =>
    sum / many - ((many - 1) * LEADING) / 2;
  for (const wish of wishes) {
    let run = { sum: wish, many: 1 };
    for (let last = runs.at(-1); last; last = runs.at(-1)) {
      if (startOf(run) - (startOf(last) + (last.many - 1) * LEADING) >= LEADING) break;
      run = { sum: last.sum + run.sum, many: last.many + run.many };
      runs.pop();
    }
    runs.push(run);
  }
  return runs.flatMap((run) =>
    Array.from({ length: run.many }, (_, i) => startOf(run) + i * LEADING),
  );
}

function placeUpright(
  chain: Chain,
  on: {
    readonly x: number;
    readonly edge: number;
    readonly put: (point: Point) => Point;
    readonly strokes: Stroke[];
    readonly letters: Lettering[];
  },
): void {
  const { x, edge, put, strokes, letters } = on;
  const out = chain.side === 'left' ? -1 : 1;
  const ys = chain.stops.map((y) => put({ x: 0, y }).y);
  const [low = 0] = ys;
  strokes.push(line('dimension', x, low, x, ys.at(-1) ?? low));
  for (const y of new Set(ys)) {
    strokes.push(line('extension', edge + out * 3, y, x + out * 3, y));
    strokes.push(line('tick', x - TICK, y + TICK, x + TICK, y - TICK));
  }
  const middles = middlesOf(chain);
  const wishes = middles.map(({ at }) => put({ x: 0, y: at }).y);
  for (const [i, y] of apart(wishes).entries()) {
    const { text, wrong } = middles[i];
    const wish = wishes[i] ?? y;
    const away = x + out * (TICK + BETWEEN);
    if (Math.abs(y - wish) > 2) strokes.push(line('leader', x, wish, away - out * 2, y, wrong));
    letters.push({ x: away, y: y + FONT * 0.36, text, anchor: out < 0 ? 'end' : 'start', wrong });
  }
}

interface Row {
  readonly chain: Chain;
  /** For each piece that says something: where its words stand in pixels from x = 0, and on which level. */
  readonly words: readonly (Middle & {
    readonly x: number;
    readonly level: number;
    readonly middle: number;
  })[];
  readonly tall: number;
}

/** The level chains of a side with their words: those that are too narrow for theirs have them on a level further out. */
function rowsOf(drawing: Drawing, side: 'top' | 'bottom', scale: number): readonly Row[] {
  const { chains } = drawing;
  const bounds = boundsOf(drawing);
  const [least, most] = [bounds.left * scale, bounds.right * scale];
  return chains
    .filter((chain) => chain.side === side)
    .map((chain) => {
      const words: Row['words'][number][] = [];
      const levels: [number, number][][] = [];
      const middles = middlesOf(chain).map((each) => ({
        ...each,
        middle: each.at * scale,
        wide: wideOf(each.text),
      }));
      const fits = (each: { readonly long: number; readonly wide: number }): boolean =>
        each.long * scale >= each.wide + 6;
      for (const each of [...middles.filter(fits), ...middles.filter((m) => !fits(m))]) {
        const { middle, wide } = each;
        const half = wide / 2;
        // Kept over the drawing where it can be, so that nothing is cut off at the sheet's edge.
        const x = Math.min(
          Math.max(middle, least + Math.min(half, (most - least) / 2)),
          most - Math.min(half, (most - least) / 2),
        );
        let level = fits(each) ? 0 : 1;
        const taken = (at: number): boolean =>
          (levels[at] ?? []).some(([a, b]) => x - half < b + 6 && x + half > a - 6);
        while (taken(level)) level++;
        (levels[level] ??= []).push([x - half, x + half]);
        words.push({ ...each, x: fits(each) ? middle : x, level });
      }
      const highest = words.reduce((up, { level }) => Math.max(up, level), 0);
      return { chain, words, tall: TICK + 4 + LEADING * (highest + 1) + BETWEEN };
    });
}

function placeLevel(
  { chain, words }: Row,
  on: {
    readonly y: number;
    readonly edge: number;
    /** -1: words stand above the line, away from the drawing; 1: below it. */
    readonly up: 1 | -1;
    readonly origin: number;
    readonly scale: number;
    readonly strokes: Stroke[];
    readonly letters: Lettering[];
  },
): void {
  const { y, edge, up, origin, scale, strokes, letters } = on;
  const xs = chain.stops.map((x) => origin + x * scale);
  strokes.push(line('dimension', xs[0] ?? 0, y, xs.at(-1) ?? 0, y));
  for (const x of new Set(xs)) {
    strokes.push(line('extension', x, edge + up * 3, x, y + up * 3));
    strokes.push(line('tick', x - TICK, y + TICK, x + TICK, y - TICK));
  }
  for (const { text, x, middle, level, wrong } of words) {
    const near = y + up * (TICK + 3 + level * LEADING);
    if (level > 0)
      strokes.push(line('leader', origin + middle, y, origin + x, near - up * 1, wrong));
    const base = up < 0 ? near : near + FONT * 0.8;
    letters.push({ x: origin + x, y: base, text, anchor: 'middle', wrong });
  }
}

function line(
  kind: Stroke['line'],
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  wrong = false,
): Stroke {
  return { line: kind, from: { x: x1, y: y1 }, to: { x: x2, y: y2 }, wrong };
}

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
function scaleBar(on: {
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
