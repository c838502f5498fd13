// What each picture draws where: sizes in inches as the cells have them, to one scale, dimensioned in their words.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askedIn } from '../../src/picture/asking.ts';
import type { Drawing } from '../../src/picture/drawing.ts';
import { PICTURES } from '../../src/picture/pictures.ts';
import { SIZES, boxes, drawn, expectTidy, said, sheetOf } from './told.ts';

const FULL = [
  'slab plan for lengths 6 ft and 5 ft 6 in and 4 ft 3 1/2 in, widths 4 ft and 5 ft and 4 ft, joint spacing 3 ft, mesh 6 in, fall 1/4 in per ft, isolation 1/2 in',
  'slab plan for lengths 12 ft, widths 10 ft, panels along 2, panels across 2, bars 16 in, cover 3 in, sleepers 16 in, sleeper 3 1/2 in',
  'slab plan for lengths 12 ft and 8 ft, widths 10 ft and 6 ft, walls 22 ft and 0 ft, panels long 2 and 1, panels wide 3 and 1, isolation 1/2 in, fall 2%, side wall',
  'slab plan for lengths 12 ft, widths 10 ft, side steps, steps 4 ft',
  'slab section for width 4 ft, thickness 4 in, base 4 in, edge 10 in, edge width 12 in, edge at near, side steps, fall 2%, above ground 1 in',
  'slab section for width 4 ft, thickness 4 in, base 4 in, edge 10 in, edge width 8 in, joint 1 in, mesh 6 in, cover 2 in, fall 1/4 in per ft, isolation 1/2 in, above ground 2 in',
  'slab section for width 20 ft, thickness 4 in, base 4 in, bars 16 in, joint 1 in, joint spacing 8 ft, fall 2%, sleeper 1 1/2 in, sleepers 16 in, boards 1 in',
  'stair section for risers 4, rise 7 1/2 in, run 11 in, tread 1 1/2 in, riser 3/4 in, nosing 1 in, stringer 11 1/4 in, deck 1 in, landing 4 in, base 4 in, rail 36 in, total 30 in',
  'stair section for risers 16, rise 7 9/16 in, run 10 in, tread 1 1/2 in, stringer 11 1/4 in',
  'stair section for risers 6, rise 7 in, run 11 in, made of concrete, waist 5 in',
  'stair section for risers 1, rise 6 in, run 11 in, made of concrete',
  'stair section for risers 3, rise 7 in, run 11 in, made of concrete, platform 3 ft, set in 4 in, footing 12 in, footing width 12 in, base 4 in',
  'stair section for risers 1, rise 7 in, run 11 in, made of concrete, platform 3 ft',
  'board plan for along 16 ft, across 14 ft, board 5 1/2 in, gap 1/8 in, overhang 1 in, border 5 1/2 in, border sides 4, joists 16 in, breaker 8 ft, stock 12 ft',
  'board plan for along 3 ft, across 4 in, board 5 1/2 in, gap 1/8 in',
  'board plan for along 30 ft, across 8 ft, board 5 1/2 in, gap 1/8 in, joists 16 in, joints 12 ft and 8 ft, joint step 8 ft, joints in a row 3, house at left, border 5 1/2 in, overhang 1 in',
  'framing plan for length 16 ft, depth 14 ft, joists 16 in, ledger 1 1/2 in, beams 7 ft and 13 ft, beam 3 in, posts 3, post inset 1 ft, post 5 1/2 in, footing 16 in, blocking 6 ft 6 in',
  'railing elevation for run 16 ft, posts 3, height 36 in, post 3 1/2 in, balusters 17, baluster 1 1/2 in, bottom gap 3 in, deck 1 in, largest gap 4 in',
  'railing elevation for bays 5 ft and 6 ft 4 in, height 36 in, balusters 12 and 14, baluster 1 1/2 in, post height 42 in',
  'railing elevation for run 44 in, posts 2, height 34 in, rise 30 in, balusters 7, bottom gap 2 in',
  'wall section for courses 5, unit height 6 in, unit depth 12 in, buried 1, setback 3/4 in, cap 3 in, cap depth 13 in, base 6 in, base width 24 in, drain 12 in, pipe 4 in, fabric yes, fill 6 in, slope above 10%',
  'wall section for courses 1, unit height 200 mm, unit depth 300 mm, base 150 mm',
] as const;

describe('on the sheet', () => {
  it.each(FULL)('%s: no words over others, nothing cut off, at three widths', (remark) => {
    const drawing = drawn(remark);
    for (const width of SIZES) expectTidy(sheetOf(drawing, { width, measures: 'us' }));
  });

  it('every slot of every picture is in one of these', () => {
    for (const { name, slots } of PICTURES) {
      const told = FULL.filter((remark) => remark.startsWith(name))
        .flatMap((remark) => askedIn(remark).slots)
        .map(({ slot }) => slot);
      const left = Object.keys(slots).filter((slot) => !told.includes(slot));
      expect(left, name).toEqual(LEFT[name] ?? []);
    }
  });

  it('one scale holds for both ways, and the bar is as long as it says', () => {
    const plan = drawn('slab plan for lengths 12 ft, widths 10 ft');
    const sheet = sheetOf(plan, { width: 620, measures: 'us' });
    const slab = sheet.shapes.find((s) => s.kind === 'path' && s.line === 'cut');
    const points = slab?.kind === 'path' ? slab.points : [];
    const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(144 * sheet.scale);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(120 * sheet.scale);
    const bars = sheet.strokes.filter(({ line }) => line === 'bar');
    const long = Math.max(...bars.map(({ from, to }) => to.x - from.x));
    const text = sheet.letters.at(-1)?.text ?? '';
    expect(text).toMatch(/^\d+ ft$/);
    expect(long / sheet.scale / 12).toBeCloseTo(Number.parseInt(text, 10));
  });

  it('dimension lines are as long as what they say, to scale', () => {
    const sheet = sheetOf(drawn('slab plan for lengths 12 ft, widths 10 ft'), {
      width: 620,
      measures: 'us',
    });
    const [level] = sheet.strokes.filter(
      ({ line, from, to }) => line === 'dimension' && from.y === to.y,
    );
    expect((level?.to.x ?? 0) - (level?.from.x ?? 0)).toBeCloseTo(144 * sheet.scale);
  });

  it('whatever sizes it is told, every place is a number and no words collide', () => {
    const size = fc.integer({ min: 1, max: 4000 }).map((n) => `${n / 8} in`);
    const count = fc.integer({ min: 1, max: 40 }).map(String);
    const one = fc.constantFrom(...PICTURES).chain((picture) => {
      const entries = Object.entries(picture.slots);
      const needed = picture.needs[0] ?? [];
      return fc
        .tuple(
          ...entries.map(([slot, takes]) => {
            const value =
              typeof takes === 'object'
                ? fc.constantFrom(...takes)
                : takes === 'slope'
                  ? fc.constantFrom('1/4 in per ft', '5%', '0%')
                  : takes.startsWith('count')
                    ? count
                    : size;
            const told = value.map((text) => `${slot} ${text}`);
            return needed.includes(slot) ? told : fc.option(told);
          }),
        )
        .map((told) => `${picture.name} for ${told.filter((each) => each !== null).join(', ')}`);
    });
    fc.assert(
      fc.property(one, (remark) => {
        const drawing = drawn(remark);
        for (const width of [350, 620]) expectTidy(sheetOf(drawing, { width, measures: 'us' }));
      }),
      { numRuns: Number(process.env['PICTURE_CASES'] ?? 40), seed: 20261125 },
    );
  });
});

/** Slots that stand for another one told above. */
const LEFT: Readonly<Record<string, readonly string[]>> = {
  'stair section': ['heights', 'first', 'last'],
  'board plan': ['boards', 'first', 'last'],
  'framing plan': ['joist count', 'joist', 'rim', 'post places', 'footing shape'],
  'railing elevation': ['gap', 'top rail', 'bottom rail'],
};

describe('where things stand', () => {
  it('bays lie one after the other along the house, each as wide as its row says', () => {
    const plan = drawn(
      'slab plan for lengths length in bays, widths width in bays',
      '- Bays:\n\n  | what | length | width |\n  |---|---|---|\n  | a | 6 ft | 4 ft |\n  | b | 5 ft 6 in | 5 ft |\n\n',
    );
    expect(boxes(plan, 'cut', 'paper')).toEqual([
      [0, 0, 72, 48],
      [72, 0, 66, 60],
    ]);
    expect(said(plan, 'bottom')).toEqual([['6 ft', '5 ft 6 in'], ['11 ft 6 in']]);
    expect(said(plan, 'left')).toEqual([['4 ft']]);
    expect(said(plan, 'right')).toEqual([['5 ft']]);
    expect(plan.alt).toBe(
      'Slab from above, house at the top: 2 bays, 6 ft by 4 ft and 5 ft 6 in by 5 ft, 11 ft 6 in in all.',
    );
  });

  it('joints divide a bay evenly, never further apart than their spacing', () => {
    const plan = drawn('slab plan for lengths 10 ft, widths 4 ft, joint spacing 4 ft');
    expect(boxes(plan, 'hidden', 'none').map(([x]) => x)).toEqual([40, 80]);
  });

  it('each bay is cut into the panels of its own row', () => {
    const plan = drawn(
      'slab plan for lengths 12 ft and 9 ft, widths 2 ft, panels long 4 and 3, panels wide 1 and 1',
    );
    expect(boxes(plan, 'hidden', 'none').map(([x]) => x)).toEqual([36, 72, 108, 180, 216]);
  });

  it('a slab lies against the house only where its rows say so', () => {
    const lone = drawn('slab plan for lengths 12 ft and 8 ft, widths 6 ft, walls 12 ft and 0 ft');
    expect(boxes(lone, 'outline', 'house').map(([x, , wide]) => [x, wide])).toEqual([[0, 144]]);
    const corner = drawn('slab plan for lengths 12 ft, widths 10 ft, walls 22 ft');
    const [level, upright] = boxes(corner, 'outline', 'house');
    expect(level?.[2]).toBe(144);
    // The ten feet left go down its side, and around the corner above.
    expect((upright?.[1] ?? 0) + (upright?.[3] ?? 0)).toBe(120);
    expect(upright?.[0]).toBeLessThan(0);
  });

  it('a slab that lies free is drawn without a house, and its fall is not said of one', () => {
    const remark = 'lengths 12 ft, widths 4 ft, fall 1/4 in per ft';
    const free = drawn(`slab plan for ${remark}, side nothing`);
    expect(boxes(free, 'outline', 'house')).toEqual([]);
    expect(free.key.map(({ text }) => text)).toEqual(['arrow: falls 1/4 in per ft']);
    expect(free.alt).toBe(
      'Slab from above: 12 ft by 4 ft; it falls 1/4 in per ft down the drawing.',
    );
    const narrow = drawn(`slab plan for ${remark}, side steps, steps 4 ft`);
    expect(boxes(narrow, 'outline', 'wood').map(([x, , wide]) => [x, wide])).toEqual([[0, 48]]);
    const steps = drawn(`slab plan for ${remark}, side steps`);
    expect(steps.key.map(({ text }) => text)).toEqual([
      'steps',
      'arrow: falls 1/4 in per ft away from the steps',
    ]);
  });

  it('a near edge is thickened under the steps, and no house stands there', () => {
    const section = drawn(
      'slab section for width 4 ft, thickness 4 in, base 4 in, edge 10 in, edge width 12 in, edge at near, side steps',
    );
    expect(boxes(section, 'cut', 'house')).toEqual([]);
    const slab = section.shapes.find((s) => s.kind === 'path' && s.fill === 'concrete');
    const low = slab?.kind === 'path' ? slab.points.filter(({ y }) => y === 10) : [];
    expect(low.map(({ x }) => x).toSorted((a, b) => a - b)).toEqual([0, 12]);
    expect(said(section, 'left')).toEqual([['10 in']]);
    expect(said(section, 'right')).toEqual([['4 in', '4 in']]);
  });

  it('a platform is as long as told, and a footing goes down from what is set in', () => {
    const flight = drawn(
      'stair section for risers 3, rise 7 in, run 11 in, made of concrete, platform 3 ft, set in 4 in, footing 12 in, footing width 12 in, base 4 in',
    );
    expect(boxes(flight, 'cut', 'concrete')).toEqual([[0, -21, 58, 37]]);
    expect(boxes(flight, 'outline', 'stone')).toEqual([[0, 4, 58, 4]]);
    expect(said(flight, 'bottom')).toEqual([['11 in', '3 ft'], ['1 ft 10 in']]);
    expect(said(flight, 'right')).toEqual([['1 ft 9 in', '4 in', '12 in']]);
    expect(flight.alt).toContain(
      '1 ft 10 in of run, then 3 ft of platform, 1 ft 9 in of total rise',
    );
  });

  it('drain stone that reaches past the base goes down beside it, and the pipe lies there', () => {
    const wall =
      'wall section for courses 3, unit height 6 in, unit depth 10 in, base 6 in, pipe 4 in';
    const wide = drawn(`${wall}, base width 22 in, drain 12 in`);
    const round = (of: Drawing) => of.shapes.find((s) => s.kind === 'round');
    expect(round(wide)).toMatchObject({ centre: { x: 18.5, y: 3.5 } });
    const narrow = drawn(`${wall}, base width 22 in, drain 8 in`);
    expect(round(narrow)).toMatchObject({ centre: { x: 13, y: -2.5 } });
  });

  it('bars stand at their spacing from the cover on', () => {
    const plan = drawn('slab plan for lengths 4 ft, widths 3 ft, bars 1 ft, cover 2 in');
    const upright = boxes(plan, 'light', 'none').filter(([, , wide]) => wide === 0);
    expect(upright.map(([x]) => x)).toEqual([2, 14, 26, 38]);
  });

  it('a slab cut through is as thick as told, falls as told, and deepens at the free edge', () => {
    const section = drawn(
      'slab section for width 4 ft, thickness 4 in, base 4 in, edge 10 in, edge width 8 in, fall 1/4 in per ft',
    );
    // 4 ft at 1/4 in per ft fall 1 in; the edge is measured down from there.
    expect(boxes(section, 'cut', 'concrete')).toEqual([[0, 0, 48, 11]]);
    expect(said(section, 'left')).toEqual([['4 in', '4 in']]);
    expect(said(section, 'right')).toEqual([['10 in']]);
    expect(said(section, 'bottom')).toEqual([['8 in'], ['4 ft']]);
  });

  it('a wide slab is broken in the middle and still says its whole width', () => {
    const section = drawn('slab section for width 20 ft, thickness 4 in, base 4 in');
    expect(said(section, 'bottom')).toEqual([['20 ft']]);
    expect(section.alt).toContain('Drawn with a break in the middle.');
    const chain = section.chains.find(({ side }) => side === 'bottom');
    expect(chain?.stops[1]).toBeLessThan(240);
  });

  it('every riser is dimensioned, and treads stand at the finished heights', () => {
    const flight = drawn('stair section for risers 4, rise 7 1/2 in, run 11 in, tread 1 1/2 in');
    expect(said(flight, 'left')).toEqual([['7 1/2 in', '7 1/2 in', '7 1/2 in', '7 1/2 in']]);
    expect(said(flight, 'right')).toEqual([['30 in']]);
    expect(said(flight, 'bottom')).toEqual([['11 in'], ['33 in']]);
    const treads = boxes(flight, 'cut', 'end-grain');
    expect(treads.slice(0, 3)).toEqual([
      [0, -7.5, 11, 1.5],
      [11, -15, 11, 1.5],
      [22, -22.5, 11, 1.5],
    ]);
    expect(treads[3]?.slice(0, 2)).toEqual([33, -30]);
  });

  it('a stringer is as deep below its notches as its stock leaves', () => {
    const flight = drawn(
      'stair section for risers 5, rise 8 in, run 10 in, tread 1 in, stringer 11 1/4 in',
    );
    const [stringer] = flight.shapes.filter((s) => s.kind === 'path' && s.fill === 'wood');
    if (stringer?.kind !== 'path') throw new Error('no stringer');
    // The lower edge runs along the slope of 8 in 10; square to it lies the stock's depth up to the outer corners.
    const [corner, low] = [stringer.points[0], stringer.points[8]];
    const [dx, dy] = [(low?.x ?? 0) - (corner?.x ?? 0), (low?.y ?? 0) - (corner?.y ?? 0)];
    expect(Math.abs(dx * 8 + dy * 10) / Math.hypot(8, 10)).toBeCloseTo(11.25);
  });

  it('boxes stand one on the other, each under all treads above it', () => {
    const flight = drawn(
      'stair section for risers 3, rise 8 in, run 10 in, tread 1 in, stringer 11 1/4 in, made of boxes',
    );
    expect(boxes(flight, 'outline', 'wood')).toEqual([
      [0, -7, 20, 7],
      [10, -15, 10, 7],
    ]);
    expect(flight.key.map(({ text }) => text).join('; ')).not.toContain('stringer');
  });

  it('a concrete waist is measured square to the slope', () => {
    const flight = drawn(
      'stair section for risers 6, rise 6 in, run 8 in, made of concrete, waist 5 in',
    );
    const flightShape = flight.shapes.find((s) => s.kind === 'path' && s.fill === 'concrete');
    const foot = flightShape?.kind === 'path' ? flightShape.points.at(-1) : undefined;
    // From the foot of the soffit square to the line of the inner corners, which rises 6 in 8 from 0, 0.
    expect(((foot?.x ?? 0) * 6) / 10).toBeCloseTo(5);
  });

  it('boards are laid with their gaps, and what is left is the last one', () => {
    const plan = drawn('board plan for along 8 ft, across 2 ft, board 5 1/2 in, gap 1/4 in');
    expect(boxes(plan, 'outline', 'paper').map(([, y, , high]) => [y, high])).toEqual([
      [0, 5.5],
      [5.75, 5.5],
      [11.5, 5.5],
      [17.25, 5.5],
      [23, 1],
    ]);
    expect(said(plan, 'right')).toEqual([['1 in']]);
  });

  it('boards that run away from the house have it at their left, and a border that leaves it free', () => {
    const plan = drawn(
      'board plan for along 8 ft, across 6 ft, board 5 1/2 in, gap 0 in, border 5 1/2 in, overhang 1 in, joists 16 in, house at left',
    );
    const [house] = boxes(plan, 'outline', 'house');
    expect([house?.[1], house?.[3]]).toEqual([0, 72]);
    expect(boxes(plan, 'outline', 'wood')).toEqual([
      [90.5, 0, 5.5, 72],
      [0, 0, 90.5, 5.5],
      [0, 66.5, 90.5, 5.5],
    ]);
    // The frame ends at the house and lies an inch inside the three free sides; its joists start there.
    expect(boxes(plan, 'hidden', 'none')).toEqual([[0, 1, 95, 70]]);
    expect(boxes(plan, 'centre', 'none').map(([x]) => x)).toEqual([0, 16, 32, 48, 64, 80]);
    expect(boxes(plan, 'outline', 'paper')[0]).toEqual([0, 5.5, 90.5, 5.5]);
  });

  it('joints of a row go on at their step, rows taking turns with the first of them', () => {
    const plan = drawn(
      'board plan for along 30 ft, across 2 ft, board 5 1/2 in, gap 1/8 in, joints 12 ft and 8 ft, joint step 8 ft, joints in a row 2',
    );
    const cuts = boxes(plan, 'cut', 'none');
    expect(cuts.slice(0, 4).map(([x]) => x)).toEqual([144, 240, 96, 192]);
    const none = 'board plan for along 10 ft, across 2 ft, board 5 1/2 in, gap 1/8 in';
    expect(drawn(`${none}, joints 0 in and 0 in, breaker 0 in and 0 in`).shapes).toEqual(
      drawn(none).shapes,
    );
  });

  it('joists stand from one end at their spacing, the last one at the other end', () => {
    const plan = drawn('framing plan for length 6 ft, depth 4 ft, joists 16 in, ledger 1 1/2 in');
    const joists = boxes(plan, 'outline', 'wood');
    expect(joists.map(([x]) => x)).toEqual([0, 16, 32, 48, 64, 70.5]);
    expect(plan.alt).toContain('6 joists every 16 in');
  });

  it('posts stand evenly between their insets, footings around them', () => {
    const plan = drawn(
      'framing plan for length 16 ft, depth 10 ft, joists 16 in, beams 9 ft, posts 3, post inset 1 ft, post 5 1/2 in, footing 16 in',
    );
    expect(boxes(plan, 'cut', 'solid').map(([x]) => (x ?? 0) + 2.75)).toEqual([12, 96, 180]);
    const rounds = plan.shapes.flatMap((s) => (s.kind === 'round' ? [[s.centre.x, s.radius]] : []));
    expect(rounds).toEqual([
      [12, 8],
      [96, 8],
      [180, 8],
    ]);
    expect(said(plan, 'bottom')).toEqual([['7 ft', '7 ft'], ['16 ft']]);
    expect(said(plan, 'left')).toEqual([['9 ft', '1 ft'], ['10 ft']]);
  });

  it('balusters leave the even gap that the language works out', () => {
    const railing = drawn(
      'railing elevation for bays 72 in, height 36 in, balusters 13, baluster 1 1/2 in',
    );
    const at = boxes(railing, 'outline', 'paper').filter(([, , wide]) => wide === 1.5);
    expect(at).toHaveLength(13);
    // 3 3/4 in of gap after a post of 3 1/2 in.
    expect(at[0]?.[0]).toBeCloseTo(7.25);
    expect((at[1]?.[0] ?? 0) - (at[0]?.[0] ?? 0)).toBeCloseTo(5.25);
  });

  it('a stair run climbs, its balusters plumb', () => {
    const railing = drawn(
      'railing elevation for run 44 in, posts 2, height 34 in, rise 30 in, balusters 7, baluster 1 1/2 in',
    );
    const at = boxes(railing, 'outline', 'paper').filter(([, , wide]) => (wide ?? 0) === 1.5);
    expect(at).toHaveLength(7);
    expect((at[6]?.[1] ?? 0) - (at[0]?.[1] ?? 0)).toBeLessThan(-15);
    expect(said(railing, 'right')).toEqual([['30 in']]);
  });

  it('a climb and a ledger that come to nothing are none', () => {
    const level = 'railing elevation for run 6 ft, posts 2, height 36 in, deck 1 in';
    const told = (of: Drawing) => [of.alt, of.key.map(({ text }) => text)];
    expect(told(drawn(`${level}, rise 0 in`))).toEqual(told(drawn(level)));
    const free = 'framing plan for length 12 ft, depth 8 ft, joists 16 in, beams 2 ft and 6 ft';
    expect(told(drawn(`${free}, ledger 0 in`))).toEqual(told(drawn(free)));
    expect(drawn(`${free}, ledger 0 in`).shapes).toEqual(drawn(free).shapes);
  });

  it('courses are laid back each from the one below, the buried one under the ground', () => {
    const wall = drawn(
      'wall section for courses 3, unit height 6 in, unit depth 12 in, buried 1, setback 3/4 in, cap 3 in',
    );
    expect(boxes(wall, 'cut', 'unit')).toEqual([
      [0, -6, 12, 6],
      [0.75, -12, 12, 6],
      [1.5, -18, 12, 6],
    ]);
    expect(said(wall, 'left')).toEqual([['3 in', '6 in', '6 in', '6 in'], ['15 in']]);
  });

  it('a metric picture says metric sizes, its sums without noise', () => {
    const plan = drawn('slab plan for lengths 3.6 m and 2.4 m, widths 1.8 m');
    expect(said(plan, 'bottom')).toEqual([['3.6 m', '2.4 m'], ['6 m']]);
    const wall = drawn(
      'wall section for courses 4, unit height 200 mm, unit depth 300 mm, buried 1',
    );
    expect(said(wall, 'left')[1]).toEqual(['600 mm']);
  });
});
