// A slab cut across its width: what it lies against at the left, the house where nothing else is said, stone and ground below. A slab much wider than it is thick is
// drawn with a break in the middle, and its dimension says the whole width.
import {
  type Chain,
  type Drawing,
  type KeyItem,
  type Point,
  type Shape,
  area,
  rectangle,
  straight,
  stroke,
} from './drawing.ts';
import { type Given, everyAlong } from './given.ts';
import { away, nearSide } from './slab-side.ts';

/** So many times as wide as all of it is deep is drawn without a break; past that, so much stands at either side of one. */
const WIDEST = 13;
const SHOWN = 3.6;
const MESH_SHOWN = 6;

export function slabSection(given: Given): Drawing {
  const width = given.size('width');
  const thickness = given.size('thickness');
  const base = given.maybe('base');
  const edge = given.maybe('edge');
  const isolation = given.maybe('isolation');
  const fall = given.slope('fall');
  const deep = Math.max(thickness.inches, edge?.inches ?? 0) + (base?.inches ?? 0);
  const broken = width.inches > deep * WIDEST;
  const side = deep * SHOWN;
  const gap = deep * 0.5;
  const right = broken ? side * 2 + gap : width.inches;
  const drop = (fall?.ratio ?? 0) * width.inches;
  /** How far the top lies below the top at the house. */
  const fallAt = (x: number): number => {
    const true_ = broken && x > side ? x + width.inches - right : x;
    return (fall?.ratio ?? 0) * true_;
  };
  const edgeWide = Math.min(given.inches('edge width', (edge?.inches ?? 0) || 0), right / 2);
  const hasEdge = edge !== null && edge.inches > thickness.inches;
  const isNear = given.word('edge at') === 'near';
  const near = nearSide(given);
  // Steps stand on the slab: where they come down it ends as free as on its far side.
  const isFree = near === null || near === 'steps';
  const bottomAt = (x: number): number => fallAt(x) + thickness.inches;
  const under: Point[] =
    hasEdge && isNear
      ? [
          { x: 0, y: edge.inches },
          { x: edgeWide, y: fallAt(edgeWide) + edge.inches },
          { x: edgeWide + edge.inches - thickness.inches, y: bottomAt(edgeWide) },
          { x: right, y: bottomAt(right) },
        ]
      : hasEdge
        ? [
            { x: 0, y: bottomAt(0) },
            {
              x: right - edgeWide - (edge.inches - thickness.inches),
              y: bottomAt(right - edgeWide),
            },
            { x: right - edgeWide, y: drop + edge.inches },
            { x: right, y: drop + edge.inches },
          ]
        : [
            { x: 0, y: bottomAt(0) },
            { x: right, y: bottomAt(right) },
          ];
  const shapes: Shape[] = [];
  const key: KeyItem[] = [];
  const stone = base?.inches ?? 0;
  const ground = drop + (given.maybe('above ground')?.inches ?? 0);
  const below = Math.max(...under.map(({ y }) => y)) + stone;
  const earth = deep * 0.55;
  const outside = deep * 1.1;
  const nearGround = given.maybe('above ground')?.inches ?? thickness.inches;
  const groundAt = given.maybe('above ground') ? ground : Math.min(drop + thickness.inches, below);
  shapes.push(
    area(
      [
        { x: 0, y: under[0].y + stone },
        ...under.slice(1).map(({ x, y }) => ({ x, y: y + stone })),
        { x: right, y: groundAt },
        { x: right + outside, y: groundAt },
        { x: right + outside, y: below + earth },
        ...(isFree
          ? [
              { x: -outside, y: below + earth },
              { x: -outside, y: nearGround },
              { x: 0, y: nearGround },
            ]
          : [{ x: 0, y: below + earth }]),
      ],
      'none',
      'earth',
    ),
    straight(right, groundAt, right + outside, groundAt, 'cut'),
    ...(isFree ? [straight(-outside, nearGround, 0, nearGround, 'cut')] : []),
  );
  if (base && stone > 0) {
    const down = under.map(({ x, y }) => ({ x, y: y + stone }));
    shapes.push(area([...under, ...down.toReversed()], 'outline', 'stone'));
  }
  shapes.push(
    area([{ x: 0, y: 0 }, { x: right, y: drop }, ...under.toReversed()], 'cut', 'concrete'),
  );
  key.push({ line: 'cut', fill: 'concrete', text: `concrete, ${thickness.said}` });
  if (base && stone > 0) key.push({ line: 'outline', fill: 'stone', text: `stone, ${base.said}` });
  key.push({ line: 'none', fill: 'earth', text: 'ground' });
  const strip = Math.max(isolation?.inches ?? 0, 0);
  const wall = deep * 0.5;
  if (!isFree) {
    shapes.push(
      rectangle(-strip - wall, -deep * 0.7, wall, below + earth + deep * 0.7, 'cut', 'house'),
    );
    key.push({ line: 'cut', fill: 'house', text: near });
  }
  if (isolation && strip > 0 && !isFree) {
    shapes.push(rectangle(-strip, 0, strip, thickness.inches, 'outline', 'solid'));
    key.push({ line: 'outline', fill: 'solid', text: `isolation strip, ${isolation.said}` });
  }
  addSteel(given, { right, bottomAt, shapes, key, side: broken ? side : null, gap });
  addJoints(given, { right, whole: width.inches, fallAt, shapes, key, broken, side });
  const top = addSleepers(given, { right, fallAt, shapes, key });
  if (broken) shapes.push(...breakAt(side, gap, -top - deep * 0.25, below + earth));
  const says = [
    `Slab cut across: ${width.said} wide, ${thickness.said} thick`,
    base && stone > 0 ? ` on ${base.said} of stone` : '',
    hasEdge ? `, ${edge.said} deep at the ${isNear ? 'near' : 'free'} edge` : '',
    fall ? `; it falls ${fall.said}${away(near) || ' to the right'}` : '',
  ];
  if (fall)
    key.push({
      line: 'none',
      fill: 'none',
      text: `falls ${fall.said}${away(near)}, ${given.say(drop)} in all`,
    });
  return {
    name: 'slab section',
    shapes,
    chains: chainsOf(given, { right, drop, below, broken, edgeWide, hasEdge, isNear }),
    words: [],
    key,
    alt: `${says.join('')}${broken ? '. Drawn with a break in the middle' : ''}.`,
    wrong: [],
  };
}

function chainsOf(
  given: Given,
  at: {
    readonly right: number;
    readonly drop: number;
    readonly below: number;
    readonly broken: boolean;
    readonly edgeWide: number;
    readonly hasEdge: boolean;
    readonly isNear: boolean;
  },
): readonly Chain[] {
  const { right, drop, edgeWide, hasEdge, isNear } = at;
  const width = given.size('width');
  const thickness = given.size('thickness');
  const base = given.maybe('base');
  const edge = given.maybe('edge');
  const above = given.maybe('above ground');
  const nearEdge: Chain | null =
    hasEdge && isNear && edge ? { side: 'left', stops: [0, edge.inches], says: [edge.said] } : null;
  const left: Chain =
    base && base.inches > 0
      ? {
          side: 'left',
          stops: [0, thickness.inches, thickness.inches + base.inches],
          says: [thickness.said, base.said],
        }
      : { side: 'left', stops: [0, thickness.inches], says: [thickness.said] };
  const far = left.stops.map((y) => y + drop);
  const chains: Chain[] = nearEdge ? [nearEdge, { ...left, side: 'right', stops: far }] : [left];
  if (above && above.inches > 0) {
    // On the side on which less else is told.
    chains.push(
      nearEdge
        ? { side: 'left', stops: [0, above.inches], says: [above.said] }
        : { side: 'right', stops: [drop, drop + above.inches], says: [above.said] },
    );
  }
  if (hasEdge && edge) {
    if (!isNear)
      chains.push({ side: 'right', stops: [drop, drop + edge.inches], says: [edge.said] });
    const wide = given.maybe('edge width');
    const stops = isNear ? [0, edgeWide] : [right - edgeWide, right];
    if (wide) chains.push({ side: 'bottom', stops, says: [wide.said] });
  }
  chains.push({ side: 'bottom', stops: [0, right], says: [width.said] });
  return chains;
}

function addSteel(
  given: Given,
  on: {
    readonly right: number;
    readonly bottomAt: (x: number) => number;
    readonly shapes: Shape[];
    readonly key: KeyItem[];
    readonly side: number | null;
    readonly gap: number;
  },
): void {
  const { right, bottomAt, shapes, key } = on;
  const steel = given.some('bars') ?? given.some('mesh');
  if (!steel) return;
  const isMesh = given.some('bars') === null;
  const up = given.maybe('cover');
  const cover = up?.inches ?? given.size('thickness').inches / 2;
  const inset = Math.min(cover, right / 8);
  shapes.push(
    straight(
      inset,
      bottomAt(inset) - cover,
      right - inset,
      bottomAt(right - inset) - cover,
      'light',
    ),
  );
  const step = isMesh ? Math.max(steel.inches, right / 60, MESH_SHOWN / 4) : steel.inches;
  for (const x of everyAlong(step, right - inset * 2)) {
    const hidden = on.side !== null && x + inset > on.side && x + inset < on.side + on.gap;
    if (!hidden) shapes.push({ kind: 'dot', at: { x: x + inset, y: bottomAt(x + inset) - cover } });
  }
  const where = up ? `, ${up.said} up from the bottom` : '';
  key.push({
    line: 'light',
    fill: 'none',
    text: isMesh ? `mesh, ${steel.said} squares${where}` : `bars every ${steel.said}${where}`,
  });
}

function addJoints(
  given: Given,
  on: {
    readonly right: number;
    readonly whole: number;
    readonly fallAt: (x: number) => number;
    readonly shapes: Shape[];
    readonly key: KeyItem[];
    readonly broken: boolean;
    readonly side: number;
  },
): void {
  const joint = given.maybe('joint');
  if (!joint || joint.inches <= 0) return;
  const { right, whole, fallAt, shapes, key, broken, side } = on;
  const spacing = given.maybe('joint spacing')?.inches ?? whole / 2;
  const pieces = Math.ceil(whole / spacing - 1e-9);
  // Beside a break a joint can't stand where it is; one tells how deep they are.
  const places = broken ? [side * 0.6] : everyAlong(whole / pieces, whole).slice(1, pieces);
  for (const x of places) {
    shapes.push(straight(x, fallAt(x), x, fallAt(x) + joint.inches, 'strong'));
  }
  if (places.length > 0 && right > 0) {
    key.push({ line: 'strong', fill: 'none', text: `sawn joint, ${joint.said} deep` });
  }
}

/** Gives how high they and the boards on them stand. */
function addSleepers(
  given: Given,
  on: {
    readonly right: number;
    readonly fallAt: (x: number) => number;
    readonly shapes: Shape[];
    readonly key: KeyItem[];
  },
): number {
  const { right, fallAt, shapes, key } = on;
  const sleeper = given.maybe('sleeper');
  const boards = given.some('boards');
  const high = sleeper?.inches ?? 0;
  if (sleeper && high > 0) {
    const wide = Math.min(3.5, right / 3);
    const spacing = given.some('sleepers')?.inches ?? Math.max((right - wide) / 3, wide * 2);
    for (const x of everyAlong(spacing, right - wide)) {
      shapes.push(rectangle(x, fallAt(x) - high, wide, high, 'outline', 'end-grain'));
    }
    key.push({ line: 'outline', fill: 'end-grain', text: `sleepers, ${sleeper.said} high` });
  }
  if (!boards) return high;
  shapes.push(
    area(
      [
        { x: 0, y: -high - boards.inches },
        { x: right, y: fallAt(right) - high - boards.inches },
        { x: right, y: fallAt(right) - high },
        { x: 0, y: -high },
      ],
      'outline',
      'wood',
    ),
  );
  key.push({ line: 'outline', fill: 'wood', text: `boards, ${boards.said}` });
  return high + boards.inches;
}

/** Two torn lines with nothing between them: here a piece is left out. */
function breakAt(x: number, gap: number, top: number, bottom: number): readonly Shape[] {
  const torn = (at: number): readonly Point[] => {
    const middle = (top + bottom) / 2;
    const tooth = gap * 0.35;
    return [
      { x: at, y: top },
      { x: at, y: middle - tooth },
      { x: at - tooth / 2, y: middle - tooth / 3 },
      { x: at + tooth / 2, y: middle + tooth / 3 },
      { x: at, y: middle + tooth },
      { x: at, y: bottom },
    ];
  };
  const [left, right] = [torn(x), torn(x + gap)];
  return [
    area([...left, ...right.toReversed()], 'none', 'paper'),
    stroke(left, 'outline'),
    stroke(right, 'outline'),
  ];
}
