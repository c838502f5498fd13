// One given as a bar on the scale of the result: where the result goes smoothly a strip, open where the given is less than
// it is now and hatched where it is more; where it jumps by whole packs a thin line with a cross stroke at each level.
import { svg, type TemplateResult } from 'lit';
import type { Matter } from '../moves-it/matters.ts';

/** From the least to the greatest number that any bar reaches, over so many pixels. */
export interface Scale {
  readonly low: number;
  readonly high: number;
  readonly width: number;
}

export const BAR_HEIGHT = 24;

type Side = 'less' | 'more';

export interface Stretch {
  readonly how: 'smooth' | 'jump';
  /** Is the given less than it is now, or more? */
  readonly side: Side;
  readonly from: number;
  readonly to: number;
}

export function placeOn({ low, high, width }: Scale, value: number): number {
  return high === low ? width / 2 : 1 + ((value - low) / (high - low)) * (width - 2);
}

/** `now`: what the given is as the notebook stands. */
export function matterBar(matter: Matter, now: number, scale: Scale): TemplateResult {
  const all = stretchesOf(matter, now).map(({ from, to, ...stretch }) => {
    const ends = [placeOn(scale, from), placeOn(scale, to)].sort((a, b) => a - b);
    return { ...stretch, from: ends[0], to: ends[1] };
  });
  const smooth = (['less', 'more'] as const).flatMap((side) =>
    joined(all.filter((each) => each.how === 'smooth' && each.side === side)),
  );
  const jumps = all.filter(({ how }) => how === 'jump');
  return svg`${smooth.map((strip) => drawn(strip))}${jumps.map(
    ({ from, to }) =>
      svg`<path class="jump" d=${`M${near(from)} 12H${near(to)}M${near(from)} 6V18M${near(to)} 6V18`} />`,
  )}`;
}

/** Along the given: where the result goes smoothly, and where it jumps. */
export function stretchesOf(matter: Matter, now: number): readonly Stretch[] {
  const { points, jumps, by } = matter;
  const found: Stretch[] = [];
  const add = (how: Stretch['how'], at: number, from: number, to: number): void => {
    if (Number.isFinite(from) && Number.isFinite(to))
      found.push({ how, side: at < now ? 'less' : 'more', from, to });
  };
  for (const [k, next] of points.entries()) {
    const last = points[k - 1];
    if (!last) continue;
    const middle = (last.at + next.at) / 2;
    if (by === 'whole' || isCounted(matter)) {
      add('jump', middle, last.result, next.result);
      continue;
    }
    let { result } = last;
    for (const { at, before, after } of jumps) {
      if (at <= last.at || at > next.at) continue;
      add('smooth', middle, result, before);
      add('jump', at, before, after);
      result = after;
    }
    add('smooth', middle, result, next.result);
  }
  return found;
}

/** A range of whole things: there is nothing between two of its points. */
function isCounted({ points, jumps, more }: Matter): boolean {
  const whole = points.every(({ at }) => Number.isInteger(at));
  return (
    jumps.length === 0 && !more && whole && points.every(({ at }, k) => isNext(points[k - 1], at))
  );
}

function isNext(last: { readonly at: number } | undefined, at: number): boolean {
  return !last || at === last.at + 1;
}

type Strip = Omit<Stretch, 'how'>;

/** Strips that touch become one. */
function joined(strips: readonly Strip[]): readonly Strip[] {
  const all: Strip[] = [];
  for (const strip of [...strips].sort((a, b) => a.from - b.from)) {
    const last = all.at(-1);
    if (last && strip.from <= last.to + 0.5)
      all[all.length - 1] = { ...last, to: Math.max(last.to, strip.to) };
    else all.push(strip);
  }
  return all;
}

function drawn({ from, to, side }: Strip): TemplateResult {
  // A level where the result stays.
  if (to - from < 1) return svg`<path class="level" d=${`M${near(from)} 5V19`} />`;
  return svg`<path class=${side} d=${`M${near(from)} 6H${near(to)}V18H${near(from)}Z`} />${
    side === 'more' ? svg`<path class="hatch" d=${hatched(from, to)} />` : ''
  }`;
}

/** Strokes that slant up to the right, cut off at the ends of the strip. */
function hatched(from: number, to: number): string {
  const strokes: string[] = [];
  for (let x = from - 12 + 5; x < to; x += 5) {
    const start = Math.max(from, x);
    const end = Math.min(to, x + 12);
    strokes.push(`M${near(start)} ${near(18 - (start - x))}L${near(end)} ${near(18 - (end - x))}`);
  }
  return strokes.join('');
}

function near(pixels: number): number {
  return Math.round(pixels * 100) / 100;
}
