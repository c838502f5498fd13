// A slab from above: what it lies against at the top, the house where nothing else is said, its bays one after the other along it, joints, steel and fall.
import {
  type Chain,
  type Drawing,
  type KeyItem,
  type Shape,
  type Word,
  rectangle,
  straight,
} from './drawing.ts';
import { type Given, type Size, everyAlong, many, together, total } from './given.ts';
import { away, nearSide } from './slab-side.ts';

/** A sleeper is a 2×4 on its flat where nothing else is said. */
const SLEEPER = 3.5;
const COVER = 2;

interface Bay {
  readonly x: number;
  readonly length: Size;
  readonly width: Size;
}

export function slabPlan(given: Given): Drawing {
  const bays = baysOf(given);
  const along = given.sized(total(given.sizes('lengths')));
  const widest = bays.reduce(
    (most, { width }) => (width.inches > most.inches ? width : most),
    bays[0].width,
  );
  const near = nearSide(given);
  const against = againstOf(given, near, bays);
  const thick = Math.max(widest.inches, along.inches) / 40;
  const shapes: Shape[] = [];
  const key: KeyItem[] = [];
  const fill = near === 'steps' ? 'wood' : 'house';
  for (const { x, y, level, upright } of against) {
    if (level > 0) shapes.push(rectangle(x, y - thick, level, thick, 'outline', fill));
    if (upright > 0) {
      const left = x === 0 ? -thick : along.inches;
      shapes.push(rectangle(left, y - thick, thick, upright + thick, 'outline', fill));
    }
  }
  if (near !== null && against.length > 0) key.push({ line: 'outline', fill, text: near });
  for (const { x, length, width } of bays) {
    shapes.push(rectangle(x, 0, length.inches, width.inches, 'cut', 'paper'));
  }
  addSteel(given, bays, shapes, key);
  addSleepers(given, bays, shapes, key);
  const joints = jointsOf(given, bays, along.inches, widest.inches);
  shapes.push(...joints);
  if (joints.length > 0)
    key.push({ line: 'hidden', fill: 'none', text: `${many(joints.length, 'sawn joint')}` });
  const isolation = given.maybe('isolation');
  if (isolation && isolation.inches > 0 && against.length > 0) {
    for (const { x, y, level, upright } of against) {
      if (level > 0) shapes.push(straight(x, y, x + level, y, 'strong'));
      const side = x === 0 ? 0 : along.inches;
      if (upright > 0) shapes.push(straight(side, y, side, y + upright, 'strong'));
    }
    key.push({ line: 'strong', fill: 'none', text: `isolation joint, ${isolation.said}` });
  }
  const fall = given.slope('fall');
  if (fall) {
    const bay = bays.at(-1) ?? bays[0];
    const x = bay.x + bay.length.inches * 0.72;
    shapes.push({
      kind: 'arrow',
      from: { x, y: bay.width.inches * 0.3 },
      to: { x, y: bay.width.inches * 0.75 },
    });
    key.push({
      line: 'light',
      fill: 'none',
      text: `arrow: falls ${fall.said}${away(near)}`,
    });
  }
  const sized = bays.map(({ length, width }) => `${length.said} by ${width.said}`);
  const what =
    bays.length === 1 ? sized[0] : `${bays.length} bays, ${together(sized)}, ${along.said} in all`;
  const sawn = joints.length > 0 ? `, ${many(joints.length, 'sawn joint')}` : '';
  const slope = fall ? `; it falls ${fall.said}${away(near) || ' down the drawing'}` : '';
  return {
    name: 'slab plan',
    shapes,
    chains: chainsOf(bays, along, widest),
    words:
      bays.length < 2
        ? []
        : bays.map(({ x, length, width }, i): Word => ({
            // In the corner, where no joint runs.
            at: {
              x: x + Math.min(length.inches, width.inches) * 0.12,
              y: width.inches * 0.15,
            },
            text: `${i + 1}`,
          })),
    key,
    alt: `Slab from above${near === null ? '' : `, ${near} at the top`}: ${what}${sawn}${slope}.`,
    wrong: [],
  };
}

interface Against {
  readonly x: number;
  readonly y: number;
  /** How much of the near side, and how much of the outer side of the first or the last bay. */
  readonly level: number;
  readonly upright: number;
}

/** All of the near side, steps as wide as told from its left end on; or bay by bay as much as is told, what is longer than a bay going down its outer side. */
function againstOf(given: Given, near: string | null, bays: readonly Bay[]): readonly Against[] {
  if (near === null) return [];
  const steps = given.some('steps');
  if (near === 'steps' && steps) return [{ x: 0, y: 0, level: steps.inches, upright: 0 }];
  const walls = given.sizes('walls');
  const ends = [0, bays.length - 1];
  if (walls.length === 0) {
    return bays.map(({ x, length }) => ({ x, y: 0, level: length.inches, upright: 0 }));
  }
  return bays.flatMap(({ x, length, width }, i) => {
    const wall = (walls[i] ?? walls[0])?.inches ?? 0;
    const level = Math.min(wall, length.inches);
    const upright = ends.includes(i) ? Math.min(wall - level, width.inches) : 0;
    return wall > 0 ? [{ x, y: 0, level, upright }] : [];
  });
}

function baysOf(given: Given): readonly Bay[] {
  const widths = given.sizes('widths');
  let x = 0;
  return given.sizes('lengths').map((length, i) => {
    const bay = { x, length, width: widths[i] ?? widths[0] ?? length };
    x += length.inches;
    return bay;
  });
}

function chainsOf(bays: readonly Bay[], along: Size, widest: Size): readonly Chain[] {
  const last = bays.at(-1) ?? bays[0];
  const chains: Chain[] = [];
  if (bays.length > 1) {
    chains.push({
      side: 'bottom',
      stops: [...bays.map(({ x }) => x), along.inches],
      says: bays.map(({ length }) => length.said),
    });
  }
  const alone = bays.length === 1 ? last.length : along;
  chains.push({ side: 'bottom', stops: [0, along.inches], says: [alone.said] });
  chains.push({ side: 'left', stops: [0, bays[0].width.inches], says: [bays[0].width.said] });
  if (last.width.inches !== bays[0].width.inches) {
    chains.push({ side: 'right', stops: [0, last.width.inches], says: [last.width.said] });
  }
  const ends = [bays[0].width.inches, last.width.inches];
  if (!ends.includes(widest.inches)) {
    chains.push({ side: 'right', stops: [0, widest.inches], says: [widest.said] });
  }
  return chains;
}

function jointsOf(
  given: Given,
  bays: readonly Bay[],
  along: number,
  widest: number,
): readonly Shape[] {
  const joints: Shape[] = [];
  const widthAt = (x: number): number =>
    bays.find((bay) => x >= bay.x && x <= bay.x + bay.length.inches)?.width.inches ?? widest;
  for (const x of within(given.count('panels along') ?? 1, along)) {
    joints.push(straight(x, 0, x, widthAt(x), 'hidden'));
  }
  for (const y of within(given.count('panels across') ?? 1, widest)) {
    joints.push(straight(0, y, along, y, 'hidden'));
  }
  const spacing = given.maybe('joint spacing')?.inches ?? null;
  const own = { long: given.counts('panels long'), wide: given.counts('panels wide') };
  /** What its own row says goes before a spacing that holds for all. */
  const panels = (counts: readonly number[], bay: number, inches: number): number => {
    const told = counts[bay] ?? counts[0];
    return told ?? (spacing === null ? 1 : Math.ceil(inches / spacing - 1e-9));
  };
  for (const [i, { x, length, width }] of bays.entries()) {
    for (const at of within(panels(own.long, i, length.inches), length.inches)) {
      joints.push(straight(x + at, 0, x + at, width.inches, 'hidden'));
    }
    for (const at of within(panels(own.wide, i, width.inches), width.inches)) {
      joints.push(straight(x, at, x + length.inches, at, 'hidden'));
    }
  }
  return joints;
}

/** Where lines stand that cut a length into so many even pieces. */
function within(pieces: number, length: number): readonly number[] {
  return everyAlong(length / pieces, length).slice(1, pieces);
}

function addSteel(given: Given, bays: readonly Bay[], shapes: Shape[], key: KeyItem[]): void {
  const cover = given.inches('cover', COVER);
  const bars = given.some('bars');
  const mesh = given.some('mesh');
  for (const { x, length, width } of bays) {
    if (bars)
      shapes.push(
        ...grid(x + cover, cover, length.inches - cover * 2, width.inches - cover * 2, bars.inches),
      );
    if (mesh) {
      // A corner is enough to tell that it lies everywhere.
      const across = Math.min(length.inches, width.inches) * 0.4;
      const y = width.inches - cover - across;
      shapes.push(...grid(x + cover, y, across, across, mesh.inches));
    }
  }
  if (bars) key.push({ line: 'light', fill: 'none', text: `bars every ${bars.said}, both ways` });
  if (mesh)
    key.push({ line: 'light', fill: 'none', text: `mesh, ${mesh.said} squares, over all of it` });
}

function grid(x: number, y: number, width: number, height: number, step: number): readonly Shape[] {
  if (width <= 0 || height <= 0) return [];
  return [
    ...everyAlong(step, width).map((at) => straight(x + at, y, x + at, y + height, 'light')),
    ...everyAlong(step, height).map((at) => straight(x, y + at, x + width, y + at, 'light')),
  ];
}

function addSleepers(given: Given, bays: readonly Bay[], shapes: Shape[], key: KeyItem[]): void {
  const spacing = given.some('sleepers');
  if (!spacing) return;
  const wide = given.inches('sleeper', SLEEPER);
  for (const { x, length, width } of bays) {
    for (const at of everyAlong(spacing.inches, length.inches - wide)) {
      shapes.push(rectangle(x + at, 0, wide, width.inches, 'outline', 'wood'));
    }
  }
  key.push({ line: 'outline', fill: 'wood', text: `sleepers every ${spacing.said}` });
}
