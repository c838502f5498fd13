// Where dimension lines and their words stand on a sheet, so that no words lie over others: those beside the drawing are
// spread a line apart, those above and below it go onto levels further out.
import { type Chain, type Drawing, type Point, boundsOf } from './drawing.ts';
import { FONT, type Lettering, type Stroke, line, wideOf } from './strokes.ts';

/** Lines of words one above the other. */
const LEADING = 14;
/** Between the drawing and its first dimension line, and from one such line to the next. */
export const OFF = 12;
export const BETWEEN = 8;
export const TICK = 3.5;
/** Between the outermost words and the sheet's edge. */
export const EDGE = 6;

export function widestOf({ says }: Chain): number {
  return Math.max(0, ...says.map((text) => (text === null ? 0 : wideOf(text))));
}

/** What the upright chains of one side need beside the drawing. */
export function besideWidth({ chains }: Drawing, side: 'left' | 'right'): number {
  const own = chains.filter((chain) => chain.side === side);
  const wide = own.reduce((sum, chain) => sum + widestOf(chain) + TICK * 2 + BETWEEN * 2, 0);
  return own.length === 0 ? 0 : wide + OFF - BETWEEN;
}

/** How far the words of upright chains reach above and below the drawing where they have to be spread. */
export function upright(
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

export function placeUpright(
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
export function rowsOf(drawing: Drawing, side: 'top' | 'bottom', scale: number): readonly Row[] {
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

export function placeLevel(
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
