// A wall of laid units cut through: open ground in front at the left, the ground it holds at the right, its base,
// the stone behind it and the pipe at its foot.
import {
  type Chain,
  type Drawing,
  type KeyItem,
  type Point,
  type Shape,
  area,
  rectangle,
  stroke,
} from './drawing.ts';
import { type Given, MOST_DRAWN, many } from './given.ts';

export function wallSection(given: Given): Drawing {
  const high = given.size('unit height');
  const deep = given.size('unit depth');
  const courses = Math.min(given.count('courses') ?? 1, MOST_DRAWN);
  const buried = given.count('buried') ?? 0;
  const setback = given.maybe('setback');
  const back = setback?.inches ?? 0;
  const cap = given.maybe('cap');
  const base = given.maybe('base');
  const drain = given.maybe('drain');
  const wall = courses * high.inches;
  const top = wall + (cap?.inches ?? 0);
  /** The ground in front, measured up from the foot of the lowest course. */
  const grade = buried * high.inches;
  const stone = drain?.inches ?? 0;
  const right = deep.inches + back * (courses - 1) + stone + Math.max(top * 0.8, deep.inches);
  const left = -Math.max(top * 0.5, deep.inches * 0.8);
  const under = base?.inches ?? 0;
  const bottom = under + Math.max(top * 0.18, 4);
  const rises = given.slope('slope above');
  const behind = deep.inches + back * (courses - 1);
  const surface = wall;
  const farTop = -surface - (rises?.ratio ?? 0) * (right - behind);
  const shapes: Shape[] = [
    area(
      [
        { x: left, y: -grade },
        { x: 0, y: -grade },
        { x: 0, y: 0 },
        { x: behind, y: 0 },
        { x: behind, y: -surface },
        { x: right, y: farTop },
        { x: right, y: bottom },
        { x: left, y: bottom },
      ],
      'none',
      'earth',
    ),
    stroke(
      [
        { x: left, y: -grade },
        { x: 0, y: -grade },
      ],
      'cut',
    ),
    stroke(
      [
        { x: behind, y: -surface },
        { x: right, y: farTop },
      ],
      'cut',
    ),
  ];
  const key: KeyItem[] = [];
  const wrong: string[] = [];
  addStone(given, { courses, surface, behind, shapes, key });
  for (let i = 0; i < courses; i++) {
    shapes.push(
      rectangle(back * i, -high.inches * (i + 1), deep.inches, high.inches, 'cut', 'unit'),
    );
  }
  if (cap && cap.inches > 0) {
    const capDeep = given.maybe('cap depth') ?? deep;
    const x = back * (courses - 1) + (deep.inches - capDeep.inches) / 2;
    shapes.push(rectangle(x, -top, capDeep.inches, cap.inches, 'cut', 'concrete'));
  }
  key.unshift({
    line: 'cut',
    fill: 'unit',
    text: `${many(courses, 'course')} of ${high.said}${buried > 0 ? `, ${buried} below the ground in front` : ''}`,
  });
  if (cap && cap.inches > 0) key.push({ line: 'cut', fill: 'concrete', text: `cap, ${cap.said}` });
  if (setback && back > 0)
    key.push({ line: 'none', fill: 'none', text: `each course set back ${setback.said}` });
  key.push({
    line: 'none',
    fill: 'earth',
    text: rises ? `ground, rising ${rises.said} behind the wall` : 'ground',
  });
  const shows = top - grade;
  if (buried >= courses) wrong.push('Every course lies below the ground in front.');
  if (given.count('buried') === 0) wrong.push('No course stands below the ground in front.');
  const lean = behind - deep.inches;
  if (lean >= deep.inches && courses > 1 && back >= deep.inches) {
    wrong.push('Each course is set back past the one below.');
  }
  return {
    name: 'wall section',
    shapes,
    chains: chainsOf(given, { courses, grade, top, wall }),
    words: [],
    key,
    alt: `Low wall cut through: ${many(courses, 'course')} of ${high.said}, ${buried} of them buried, ${given.say(shows)} in sight, ${deep.said} deep${base ? `, on a base of ${base.said}` : ''}${drain ? `, ${drain.said} of drain stone behind` : ''}.${wrong
      .map((each) => ` ${each}`)
      .join('')}`,
    wrong,
  };
}

function addStone(
  given: Given,
  on: {
    readonly courses: number;
    readonly surface: number;
    readonly behind: number;
    readonly shapes: Shape[];
    readonly key: KeyItem[];
  },
): void {
  const { courses, surface, behind, shapes, key } = on;
  const deep = given.size('unit depth').inches;
  const high = given.size('unit height').inches;
  const back = given.inches('setback', 0);
  const base = given.maybe('base');
  const drain = given.maybe('drain');
  const pipe = given.maybe('pipe');
  const fill = given.inches('fill', 0);
  if (base && base.inches > 0) {
    const wide = given.maybe('base width') ?? given.size('unit depth');
    shapes.push(
      rectangle((deep - wide.inches) / 2, 0, wide.inches, base.inches, 'outline', 'stone'),
    );
    key.push({
      line: 'outline',
      fill: 'stone',
      text: `base, ${base.said} of stone${given.maybe('base width') ? `, ${wide.said} wide` : ''}`,
    });
  }
  if (drain && drain.inches > 0) {
    const face = Array.from({ length: courses }, (_, i) => [
      { x: deep + back * i, y: -high * i },
      { x: deep + back * i, y: -Math.min(high * (i + 1), surface - fill) },
    ])
      .flat()
      .filter(({ y }) => -y <= surface - fill + 1e-9);
    const x = behind + drain.inches;
    const upTo = -(surface - fill);
    const { foot, low } = beside(given, x);
    const fabric = given.word('fabric') === 'yes';
    const down =
      low > 0
        ? [
            { x, y: low },
            { x: foot, y: low },
            { x: foot, y: 0 },
          ]
        : [{ x, y: 0 }];
    shapes.push(area([...face, { x, y: upTo }, ...down], fabric ? 'none' : 'outline', 'stone'));
    key.push({
      line: 'outline',
      fill: 'stone',
      text: `drain stone, ${drain.said} behind the wall`,
    });
    if (fabric) {
      shapes.push(
        stroke(
          [
            { x: low > 0 ? foot : deep, y: low },
            { x, y: low },
            { x, y: upTo },
            { x: behind, y: upTo },
          ],
          'hidden',
        ),
      );
      key.push({ line: 'hidden', fill: 'none', text: 'fabric between stone and soil' });
    }
  }
  if (pipe && pipe.inches > 0) {
    const radius = pipe.inches / 2;
    shapes.push({
      kind: 'round',
      centre: pipeAt(given, radius),
      radius,
      line: 'cut',
      fill: 'paper',
    });
    key.push({ line: 'cut', fill: 'paper', text: `drain pipe, ${pipe.said}` });
  }
}

/** Behind the base, where the drain stone reaches past it and down to its underside; nothing deep where it doesn't. */
function beside(given: Given, far: number): { readonly foot: number; readonly low: number } {
  const deep = given.size('unit depth').inches;
  const wide = given.inches('base width', deep);
  const base = given.inches('base', 0);
  const foot = (deep + wide) / 2;
  return far - foot > 1 && base > 0 ? { foot, low: base } : { foot, low: 0 };
}

/** At the lowest place where the pipe lies in stone. */
function pipeAt(given: Given, radius: number): Point {
  const deep = given.size('unit depth').inches;
  const back = given.inches('setback', 0) * ((given.count('courses') ?? 1) - 1);
  const far = deep + back + given.inches('drain', 0);
  const { foot, low } = beside(given, far);
  const hasRoom = low > 0 && far - foot >= radius * 2 + 1;
  return hasRoom
    ? { x: foot + radius + 0.5, y: low - radius - 0.5 }
    : { x: deep + radius + 1, y: -radius - 0.5 };
}

function chainsOf(
  given: Given,
  at: {
    readonly courses: number;
    readonly grade: number;
    readonly top: number;
    readonly wall: number;
  },
): readonly Chain[] {
  const { courses, grade, top, wall } = at;
  const high = given.size('unit height');
  const deep = given.size('unit depth');
  const cap = given.maybe('cap');
  const base = given.maybe('base');
  const back = given.inches('setback', 0);
  const drain = given.maybe('drain');
  const left: number[] = [
    -wall,
    ...Array.from({ length: courses }, (_, i) => -high.inches * (courses - 1 - i)),
  ];
  const says: string[] = Array.from({ length: courses }, () => high.said);
  if (cap && cap.inches > 0) {
    left.unshift(-top);
    says.unshift(cap.said);
  }
  if (base && base.inches > 0) {
    left.push(base.inches);
    says.push(base.said);
  }
  const chains: Chain[] = [{ side: 'left', stops: left, says }];
  if (top - grade > 0)
    chains.push({ side: 'left', stops: [-top, -grade], says: [given.say(top - grade)] });
  const behind = deep.inches + back * (courses - 1);
  const bottom = [0, deep.inches];
  chains.push({ side: 'bottom', stops: bottom, says: [deep.said] });
  if (drain && drain.inches > 0) {
    chains.push({ side: 'top', stops: [behind, behind + drain.inches], says: [drain.said] });
  }
  const wide = given.maybe('base width');
  if (wide && base) {
    const from = (deep.inches - wide.inches) / 2;
    chains.push({ side: 'bottom', stops: [from, from + wide.inches], says: [wide.said] });
  }
  return chains;
}
