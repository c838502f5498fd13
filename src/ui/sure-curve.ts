// The curve of many trials as a drawing: the ground that is covered up to the chosen certainty hatched, upright lines where
// it stands now and at the budget, and below it chains of dimensions for eight and for nine trials in ten.
import { nothing, svg, type TemplateResult } from 'lit';
import { type Sample, curveOf, quantile } from '../moves-it/curve.ts';

export interface CurveMarks {
  readonly now: number;
  /** Up to here the ground is hatched. */
  readonly enough: number;
  readonly budget: number | null;
  /** A number of the result in words. */
  readonly say: (value: number) => string;
}

/** Heights in pixels: the ground line, and the two chains under it. */
const GROUND = 150;
const CHAINS = [172, 202];
export const CURVE_HEIGHT = 226;
const MARGIN = 8;
const BARS = 40;

export function sureCurve(sample: Sample, width: number, marks: CurveMarks): TemplateResult {
  const { sorted } = sample;
  const bars = curveOf(sample, BARS);
  const [low, high] = [
    Math.min(sorted[0], marks.now, marks.budget ?? Infinity),
    Math.max(sorted[sorted.length - 1], marks.now, marks.budget ?? -Infinity),
  ];
  const x = (value: number): number =>
    high === low
      ? width / 2
      : Math.round((MARGIN + ((value - low) / (high - low)) * (width - 2 * MARGIN)) * 10) / 10;
  const most = Math.max(...bars.map(({ share }) => share));
  const y = (share: number): number => Math.round((GROUND - (share / most) * 118) * 10) / 10;
  // Through the middle of each bar: the curve of what is likely.
  const points = [
    { at: sorted[0], y: bars.length === 1 ? y(most) : GROUND },
    ...bars.map(({ from, to, share }) => ({ at: (from + to) / 2, y: y(share) })),
    { at: sorted[sorted.length - 1], y: bars.length === 1 ? y(most) : GROUND },
  ];
  const line = points.map((point, k) => `${k === 0 ? 'M' : 'L'}${x(point.at)} ${point.y}`).join('');
  return svg`
    <path class="hatch" d=${ground(points, x, marks.enough)} />
    <path class="curve" d=${line} />
    <path class="base" d=${`M0 ${GROUND + 0.5}H${width}`} />
    ${upright(x(marks.now), width, `now ${marks.say(marks.now)}`, 'plumb', 12)}
    ${
      marks.budget === null
        ? nothing
        : upright(x(marks.budget), width, `budget ${marks.say(marks.budget)}`, 'budget', 27)
    }
    ${chain(sample, [0.1, 0.9], '8 in 10', CHAINS[0], x, width, marks.say)}
    ${chain(sample, [0.05, 0.95], '9 in 10', CHAINS[1], x, width, marks.say)}
  `;
}

/** Upright pencil strokes under the curve, as far as it is enough. */
function ground(
  points: readonly { readonly at: number; readonly y: number }[],
  x: (value: number) => number,
  enough: number,
): string {
  const strokes: string[] = [];
  const [from, to] = [x(points[0].at), Math.min(x(enough), x(points[points.length - 1].at))];
  let k = 0;
  for (let at = from + 3; at <= to; at += 4) {
    while (k < points.length - 2 && x(points[k + 1].at) < at) k++;
    const [a, b] = [points[k], points[k + 1]];
    const part = x(b.at) === x(a.at) ? 0 : (at - x(a.at)) / (x(b.at) - x(a.at));
    const top = a.y + (b.y - a.y) * part;
    if (GROUND - top > 1) strokes.push(`M${near(at)} ${GROUND}V${near(top)}`);
  }
  return strokes.join('');
}

function upright(x: number, width: number, says: string, kind: string, y: number): TemplateResult {
  const anchor = x < width * 0.25 ? 'start' : x > width * 0.75 ? 'end' : 'middle';
  return svg`<path class=${kind} d=${`M${x} ${y + 4}V${GROUND}`} />
    <text class=${kind} x=${x} y=${y} text-anchor=${anchor}>${says}</text>`;
}

/** A line with a slanted stroke at each end, as drawings give a length. */
function chain(
  sample: Sample,
  shares: readonly [number, number],
  says: string,
  y: number,
  x: (value: number) => number,
  width: number,
  say: (value: number) => string,
): TemplateResult {
  const [low, high] = shares.map((share) => quantile(sample, share));
  const [from, to] = [x(low), x(high)];
  const tick = (at: number): string => `M${near(at - 4)} ${y + 4}L${near(at + 4)} ${y - 4}`;
  const text = `${says}: ${say(low)} to ${say(high)}`;
  // About so wide: where the chain is near an edge its words stay on the sheet.
  const half = Math.min(width / 2, text.length * 3.3 + 4);
  const middle = Math.min(width - half, Math.max(half, (from + to) / 2));
  return svg`<path class="chain" d=${`M${from - 6} ${y}H${to + 6}${tick(from)}${tick(to)}`} />
    <text x=${near(middle)} y=${y + 15} text-anchor="middle">${text}</text>`;
}

function near(pixels: number): number {
  return Math.round(pixels * 10) / 10;
}
