// A railing from outside: posts, rails and balusters where the cells put them. A gap too wide is marked, and what the
// balusters leave over at the end of a bay stays in sight. A stair run climbs to the right, its balusters plumb.
import { type Chain, type Drawing, type KeyItem, type Shape, area, straight } from './drawing.ts';
import { type Given, MOST_DRAWN, many } from './given.ts';

const UNSEEN = 1 / 32;
const POST = 3.5;
const RAIL = 1.5;
const BALUSTER = 1.5;

interface Bay {
  readonly from: number;
  readonly to: number;
  readonly said: string;
}

interface Run {
  readonly posts: readonly number[];
  readonly wide: number;
  readonly bays: readonly Bay[];
  readonly length: number;
  /** How far the ground under it lies above the left end, up is negative. */
  readonly liftAt: (x: number) => number;
}

export function railingElevation(given: Given): Drawing {
  const height = given.size('height');
  const run = runOf(given);
  const shapes: Shape[] = [];
  const key: KeyItem[] = [];
  const wrong: string[] = [];
  const deck = given.maybe('deck');
  const thick = deck?.inches ?? 1;
  const { liftAt, length } = run;
  const out = Math.max(length * 0.03, run.wide);
  shapes.push(slanted(run, -out, length + out, -thick, thick, 'cut', 'wood'));
  key.push({
    line: 'cut',
    fill: 'wood',
    text:
      given.inches('rise', 0) > 0
        ? 'line of the nosings'
        : `deck${deck ? `, boards ${deck.said}` : ''}`,
  });
  const bottomGap = given.inches('bottom gap', 3);
  const topRail = given.inches('top rail', RAIL);
  const bottomRail = given.inches('bottom rail', RAIL);
  const low = bottomGap + bottomRail;
  const high = height.inches - topRail;
  addBalusters(given, run, { low, high, shapes, key, wrong });
  for (const { from, to } of run.bays) {
    shapes.push(slanted(run, from, to, bottomGap, bottomRail, 'outline', 'paper'));
  }
  const [first, last] = [run.posts[0] ?? 0, (run.posts.at(-1) ?? 0) + run.wide];
  const overlap = run.posts.some(
    (x, i) => i > 0 && x - (run.posts[i - 1] ?? 0) < run.wide - UNSEEN,
  );
  const tall = given.inches('post height', height.inches);
  for (const x of run.posts) {
    shapes.push(
      area(
        [
          { x, y: liftAt(x) - tall },
          { x: x + run.wide, y: liftAt(x) - tall },
          { x: x + run.wide, y: liftAt(x + run.wide) },
          { x, y: liftAt(x) },
        ],
        overlap ? 'wrong' : 'cut',
        overlap ? 'wrong' : 'paper',
      ),
    );
  }
  if (overlap) wrong.push('Posts stand one over the other.');
  if (tall <= height.inches + UNSEEN) {
    shapes.push(slanted(run, first, last, high, topRail, 'cut', 'paper'));
  } else {
    for (const { from, to } of run.bays) {
      shapes.push(slanted(run, from, to, high, topRail, 'cut', 'paper'));
    }
  }
  const post = given.maybe('post');
  key.push({
    line: 'cut',
    fill: 'paper',
    text: `${many(run.posts.length, 'post')}${post ? `, ${post.said}` : ''}`,
  });
  if (run.bays.some(({ from, to }) => to - from < -UNSEEN) && !overlap)
    wrong.push('Posts stand one over the other.');
  const balusters = given.sizes('baluster')[0];
  const gap = given.maybe('gap');
  const filled = given.counts('balusters');
  const all = run.bays.reduce((sum, _, i) => sum + (filled[i] ?? filled[0] ?? 0), 0);
  const between =
    all === 0
      ? ''
      : `, ${many(all, 'baluster')}${balusters ? ` of ${balusters.said}` : ''}${gap ? `, ${gap.said} apart` : ''}`;
  const whole = given.maybe('run')?.said ?? given.say(length);
  const climbs = given.inches('rise', 0) > 0 ? given.maybe('rise') : null;
  return {
    name: 'railing elevation',
    shapes,
    chains: chainsOf(given, run, { bottomGap, whole }),
    words: [],
    key,
    alt: `Railing from outside: ${whole} long${climbs ? `, climbing ${climbs.said}` : ''}, ${height.said} high, ${many(run.posts.length, 'post')}${between}.${wrong
      .map((each) => ` ${each}`)
      .join('')}`,
    wrong,
  };
}

function runOf(given: Given): Run {
  const wide = given.inches('post', POST);
  const clear = given.sizes('bays');
  const count = Math.min(given.count('posts') ?? clear.length + 1, MOST_DRAWN);
  const posts: number[] = [];
  if (clear.length > 0) {
    let x = 0;
    for (const { inches } of clear) {
      posts.push(x);
      x += wide + inches;
    }
    posts.push(x);
  } else {
    const whole = given.size('run').inches;
    const step = count > 1 ? (whole - wide) / (count - 1) : 0;
    for (let i = 0; i < count; i++) posts.push(i * step);
  }
  const length = clear.length > 0 ? (posts.at(-1) ?? 0) + wide : given.size('run').inches;
  const bays = posts.slice(1).map((to, i): Bay => {
    const from = (posts[i] ?? 0) + wide;
    return { from, to, said: clear[i]?.said ?? given.say(to - from) };
  });
  const rise = given.inches('rise', 0);
  return { posts, wide, bays, length, liftAt: (x) => (length > 0 ? (-rise * x) / length : 0) };
}

/** A stretch of a rail: level, or along the slope. */
function slanted(
  { liftAt }: Run,
  from: number,
  to: number,
  up: number,
  thick: number,
  line: 'cut' | 'outline',
  fill: 'paper' | 'wood',
): Shape {
  return area(
    [
      { x: from, y: liftAt(from) - up - thick },
      { x: to, y: liftAt(to) - up - thick },
      { x: to, y: liftAt(to) - up },
      { x: from, y: liftAt(from) - up },
    ],
    line,
    fill,
  );
}

function addBalusters(
  given: Given,
  run: Run,
  on: {
    readonly low: number;
    readonly high: number;
    readonly shapes: Shape[];
    readonly key: KeyItem[];
    readonly wrong: string[];
  },
): void {
  const counts = given.counts('balusters');
  if (counts.length === 0) return;
  const { low, high, shapes, key, wrong } = on;
  const { liftAt } = run;
  const wide = given.inches('baluster', BALUSTER);
  const gap = given.maybe('gap');
  const most = given.maybe('largest gap');
  let widest = 0;
  for (const [i, { from, to }] of run.bays.entries()) {
    const count = Math.min(counts[i] ?? counts[0] ?? 0, MOST_DRAWN);
    const even = (to - from - count * wide) / (count + 1);
    const step = gap?.inches ?? even;
    let x = from + step;
    let end = from;
    const gaps: [number, number][] = [];
    for (let k = 0; k < count; k++) {
      const past = x + wide > to + UNSEEN || step < -UNSEEN;
      shapes.push(
        area(
          [
            { x, y: liftAt(x) - high },
            { x: x + wide, y: liftAt(x + wide) - high },
            { x: x + wide, y: liftAt(x + wide) - low },
            { x, y: liftAt(x) - low },
          ],
          past ? 'wrong' : 'outline',
          past ? 'wrong' : 'paper',
        ),
      );
      if (past && !wrong.includes(TOO_MANY)) wrong.push(TOO_MANY);
      gaps.push([end, x]);
      end = x + wide;
      x = end + step;
    }
    gaps.push([end, to]);
    for (const [a, b] of gaps) {
      widest = Math.max(widest, b - a);
      if (!most || b - a < most.inches - 1e-6) continue;
      const middle = (a + b) / 2;
      const y = liftAt(middle) - (low + high) / 2;
      shapes.push(straight(a, y, b, y, 'wrong'));
    }
  }
  const all = run.bays.reduce((sum, _, i) => sum + (counts[i] ?? counts[0] ?? 0), 0);
  const one = given.maybe('baluster');
  key.push({
    line: 'outline',
    fill: 'paper',
    text: `${many(all, 'baluster')}${one ? `, ${one.said}` : ''}${gap ? `, ${gap.said} apart` : ''}`,
  });
  if (most && widest >= most.inches - 1e-6) {
    key.push({ line: 'wrong', fill: 'none', text: `gaps that are not under ${most.said}` });
    wrong.push(`A gap of ${given.say(widest)} is not under ${most.said}.`);
  }
}

const TOO_MANY = 'The balusters do not fit between the posts.';

function chainsOf(
  given: Given,
  run: Run,
  on: { readonly bottomGap: number; readonly whole: string },
): readonly Chain[] {
  const height = given.size('height');
  const under = given.maybe('bottom gap');
  const chains: Chain[] = [];
  const ends = run.bays.flatMap(({ from, to }) => [from, to]);
  if (run.bays.length > 1 || given.sizes('bays').length > 0) {
    const same = run.bays.every(({ said }) => said === run.bays[0]?.said);
    chains.push({
      side: 'bottom',
      stops: ends,
      says: ends.slice(1).map((_, i) => {
        if (i % 2 === 1) return null;
        return same && i > 0 && run.bays.length > 3 ? null : (run.bays[i / 2]?.said ?? null);
      }),
    });
  }
  chains.push({ side: 'bottom', stops: [0, run.length], says: [on.whole] });
  if (under && under.inches > 0) {
    chains.push({ side: 'left', stops: [-under.inches, 0], says: [under.said] });
  }
  chains.push({ side: 'left', stops: [-height.inches, 0], says: [height.said] });
  const climbs = given.maybe('rise');
  if (climbs && climbs.inches > 0) {
    chains.push({ side: 'right', stops: [-climbs.inches, 0], says: [climbs.said] });
  }
  return chains;
}
