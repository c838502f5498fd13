// A flight from the side, climbing to the right, drawn to its finished surfaces as the cells have them: unequal risers
// are drawn unequal, and where the risers don't reach the floor above, they end beside it.
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
import { type Given, type Size, many, total } from './given.ts';

/** Less than this nobody can lay out or measure. */
const UNSEEN = 1 / 32;

interface Flight {
  readonly risers: readonly Size[];
  readonly run: Size;
  /** Finished height above the floor below after each riser. */
  readonly heights: readonly number[];
  /** Where the floor above is. */
  readonly floor: number;
  /** How far the floor above goes on beyond the last riser, and the one below before the first. */
  readonly beyond: number;
}

export function stairSection(given: Given): Drawing {
  const flight = flightOf(given);
  const shapes: Shape[] = [];
  const key: KeyItem[] = [];
  addGround(given, flight, shapes, key);
  const concrete = given.word('made of') === 'concrete';
  if (concrete) addConcrete(given, flight, shapes, key);
  else addWood(given, flight, shapes, key);
  addRail(given, flight, shapes, key);
  const wrong = wrongIn(given, flight);
  const { risers, run, floor } = flight;
  const treads = risers.length - 1;
  const sum = total(risers);
  if (Math.abs(floor - sum) > UNSEEN) {
    const x = run.inches * treads;
    shapes.push(straight(x, -sum, x + flight.beyond, -sum, 'wrong'));
    key.push({ line: 'wrong', fill: 'none', text: `where the risers reach: ${given.say(sum)}` });
  }
  const equal = spread(risers) <= UNSEEN;
  const rises = equal
    ? `${many(risers.length, 'riser')} of ${risers[0].said}`
    : `${many(risers.length, 'riser')} from ${least(risers).said} to ${greatest(risers).said}`;
  const runs =
    treads > 0
      ? `, ${many(treads, 'tread')} of ${run.said}, ${given.say(treads * run.inches)} of run`
      : '';
  const told = given.maybe('total')?.said ?? given.say(floor);
  return {
    name: 'stair section',
    shapes,
    chains: chainsOf(given, flight),
    words: [],
    key,
    alt: `${concrete ? 'Concrete' : 'Wood'} flight from the side: ${rises}${runs}, ${told} of total rise.${wrong
      .map((each) => ` ${each}`)
      .join('')}`,
    wrong,
  };
}

function flightOf(given: Given): Flight {
  const run = given.size('run');
  const rise = given.maybe('rise');
  const count = given.count('risers');
  let risers = given.sizes('heights');
  if (risers.length === 0 && rise) risers = Array.from({ length: count ?? 1 }, () => rise);
  const first = given.maybe('first');
  const last = given.maybe('last');
  risers = risers.map((each, i) =>
    i === 0 && first ? first : i === risers.length - 1 && last ? last : each,
  );
  let height = 0;
  const heights = risers.map(({ inches }) => (height += inches));
  const floor = given.maybe('total')?.inches ?? height;
  return { risers, run, heights, floor, beyond: run.inches * 1.5 };
}

function wrongIn(given: Given, { risers, floor }: Flight): readonly string[] {
  const wrong: string[] = [];
  const sum = total(risers);
  if (spread(risers) > UNSEEN) {
    wrong.push(
      `The risers are not equal: ${given.say(spread(risers))} between the least and the greatest.`,
    );
  }
  if (Math.abs(floor - sum) > UNSEEN) {
    const way = sum < floor ? 'short of' : 'above';
    wrong.push(`The risers end ${given.say(Math.abs(floor - sum))} ${way} the floor.`);
  }
  return wrong;
}

/** Which risers stand out: those off the middle one by more than a sixteenth, where any differ at all. */
function oddRisers(risers: readonly Size[]): readonly number[] {
  if (spread(risers) <= UNSEEN) return [];
  const sorted = risers.map(({ inches }) => inches).toSorted((a, b) => a - b);
  const middle = sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
  const odd = risers.flatMap(({ inches }, i) =>
    Math.abs(inches - middle) > 1 / 16 + 1e-9 ? [i] : [],
  );
  return risers.length === 2 ? [0, 1] : odd;
}

function chainsOf(given: Given, { risers, run, heights, floor }: Flight): readonly Chain[] {
  const treads = risers.length - 1;
  const ups = [0, ...heights].map((h) => -h).toReversed();
  const odd = oddRisers(risers);
  const chains: Chain[] = [
    {
      side: 'left',
      stops: ups,
      says: risers.map(({ said }) => said).toReversed(),
      wrong: odd.map((i) => risers.length - 1 - i),
    },
    {
      side: 'right',
      stops: [-floor, 0],
      says: [given.maybe('total')?.said ?? given.say(floor)],
    },
  ];
  if (treads > 0) {
    const stops = Array.from({ length: treads + 1 }, (_, i) => i * run.inches);
    chains.push({
      side: 'bottom',
      stops,
      says: stops.slice(1).map((_, i) => (i === 0 ? run.said : null)),
    });
    if (treads > 1) {
      chains.push({
        side: 'bottom',
        stops: [0, treads * run.inches],
        says: [given.say(treads * run.inches)],
      });
    }
  }
  return chains;
}

function addGround(
  given: Given,
  { run, beyond, risers }: Flight,
  shapes: Shape[],
  key: KeyItem[],
): void {
  const landing = given.maybe('landing');
  const base = given.maybe('base');
  const right = run.inches * Math.max(risers.length - 1, 1) + beyond;
  const thick = landing?.inches ?? 0;
  const stone = base?.inches ?? 0;
  const foot = run.inches * 1.3;
  const depth = Math.max(run.inches * 0.35, (thick + stone) * 0.5);
  shapes.push(rectangle(-beyond, 0, right + beyond, thick + stone + depth, 'none', 'earth'));
  if (base && stone > 0) {
    shapes.push(rectangle(-beyond, thick, beyond + foot, stone, 'outline', 'stone'));
    key.push({ line: 'outline', fill: 'stone', text: `stone, ${base.said}` });
  }
  if (landing && thick > 0) {
    shapes.push(rectangle(-beyond, 0, beyond + foot, thick, 'cut', 'concrete'));
    key.push({ line: 'cut', fill: 'concrete', text: `landing, ${landing.said}` });
    shapes.push(straight(foot, 0, right, 0, 'cut'));
  } else shapes.push(straight(-beyond, 0, right, 0, 'cut'));
  key.push({ line: 'none', fill: 'earth', text: 'ground' });
}

function addWood(given: Given, flight: Flight, shapes: Shape[], key: KeyItem[]): void {
  const { risers, run, heights, floor, beyond } = flight;
  const tread = given.maybe('tread');
  const board = tread?.inches ?? 1;
  const riser = given.maybe('riser');
  const back = riser?.inches ?? 0;
  const nosing = given.inches('nosing', 0);
  const faces = risers.map((_, i) => i * run.inches + nosing);
  addStringer(given, { flight, board, face: (i) => faces[i] + back, shapes, key });
  for (const [i, x] of faces.entries()) {
    const low = i === 0 ? 0 : heights[i - 1];
    const isLast = i === risers.length - 1;
    const deck = given.inches('deck', board);
    const high = isLast ? floor - deck : heights[i] - board;
    if (riser && back > 0) {
      shapes.push(rectangle(x, -high, back, high - low, 'outline', 'wood'));
    }
    if (isLast) continue;
    const end = faces[i + 1] ?? x + run.inches;
    shapes.push(
      rectangle(i * run.inches, -heights[i], end - i * run.inches, board, 'cut', 'end-grain'),
    );
  }
  const deck = given.maybe('deck') ?? tread;
  const thick = deck?.inches ?? board;
  const left = (risers.length - 1) * run.inches;
  // A short piece of the frame above, cut through.
  const frame = Math.min(Math.max(run.inches * 0.7, 5.5), Math.max(floor - thick, 1));
  shapes.push(
    rectangle(
      left + nosing + back,
      -floor + thick,
      beyond - nosing - back,
      frame,
      'outline',
      'none',
    ),
  );
  shapes.push(rectangle(left, -floor, beyond, thick, 'cut', 'end-grain'));
  if (tread)
    key.push({
      line: 'cut',
      fill: 'end-grain',
      text: `treads, ${tread.said}${deck && deck !== tread ? `; boards above, ${deck.said}` : ''}`,
    });
  if (riser && back > 0)
    key.push({ line: 'outline', fill: 'wood', text: `riser boards, ${riser.said}` });
}

function addStringer(
  given: Given,
  on: {
    readonly flight: Flight;
    readonly board: number;
    /** Where the notch stands upright under each riser. */
    readonly face: (riser: number) => number;
    readonly shapes: Shape[];
    readonly key: KeyItem[];
  },
): void {
  const { flight, board, face, shapes, key } = on;
  const { risers, run, heights } = flight;
  const stock = given.maybe('stringer');
  const treads = risers.length - 1;
  if (!stock || treads < 1) return;
  const notches: Point[] = [];
  for (let i = 0; i < treads; i++) {
    const y = -(heights[i] - board);
    notches.push({ x: face(i), y }, { x: face(i + 1), y });
  }
  const slope =
    treads > 1
      ? (heights[treads - 1] - heights[0]) / ((treads - 1) * run.inches)
      : risers[0].inches / run.inches;
  // The lower edge runs along the slope, as deep below the notches' corners as the stock is wide.
  const drop = stock.inches * Math.hypot(1, slope);
  const corner = notches[0];
  const lowerAt = (x: number): number => corner.y - (x - corner.x) * slope + drop;
  const [left, right] = [face(0), face(treads)];
  const meets = left + (lowerAt(left) - 0) / slope;
  const below: Point[] =
    lowerAt(left) <= 0
      ? [
          { x: right, y: lowerAt(right) },
          { x: left, y: lowerAt(left) },
        ]
      : meets >= right
        ? [
            { x: right, y: 0 },
            { x: left, y: 0 },
          ]
        : [
            { x: right, y: lowerAt(right) },
            { x: meets, y: 0 },
            { x: left, y: 0 },
          ];
  shapes.push(area([...notches, ...below], 'outline', 'wood'));
  key.push({ line: 'outline', fill: 'wood', text: `stringer, cut from ${stock.said} stock` });
}

function addConcrete(given: Given, flight: Flight, shapes: Shape[], key: KeyItem[]): void {
  const { risers, run, heights, floor, beyond } = flight;
  const waist = given.maybe('waist');
  const treads = risers.length - 1;
  const left = treads * run.inches;
  const steps: Point[] = [{ x: 0, y: 0 }];
  for (let i = 0; i < treads; i++) {
    steps.push({ x: i * run.inches, y: -heights[i] }, { x: (i + 1) * run.inches, y: -heights[i] });
  }
  const thick = given.inches('deck', waist?.inches ?? 4);
  steps.push({ x: left, y: -floor }, { x: left + beyond, y: -floor });
  const end = left + beyond;
  if (!waist) {
    shapes.push(area([...steps, { x: end, y: 0 }], 'cut', 'concrete'));
  } else {
    // Its underside runs along the slope of the inner corners, and turns level under the floor above.
    const slope = (heights.at(-1) ?? 1) / (risers.length * run.inches);
    const drop = waist.inches * Math.hypot(1, slope);
    const turn = (floor - thick + drop) / slope;
    const soffit =
      turn < end
        ? [
            { x: end, y: -floor + thick },
            { x: turn, y: -floor + thick },
          ]
        : [{ x: end, y: drop - end * slope }];
    shapes.push(area([...steps, ...soffit, { x: drop / slope, y: 0 }], 'cut', 'concrete'));
  }
  key.push({
    line: 'cut',
    fill: 'concrete',
    text: waist ? `concrete, ${waist.said} at the waist` : 'concrete, solid to the ground',
  });
}

function addRail(
  given: Given,
  { risers, run, heights, floor }: Flight,
  shapes: Shape[],
  key: KeyItem[],
): void {
  const rail = given.maybe('rail');
  if (!rail) return;
  const up = rail.inches;
  const nosings = risers.map((_, i) => ({
    x: i * run.inches,
    y: -(i === risers.length - 1 ? floor : heights[i]) - up,
  }));
  const line = nosings.length > 1 ? nosings : [{ x: -run.inches, y: -up }, ...nosings];
  const thin = 1.5;
  shapes.push(
    area(
      [...line, ...line.toReversed().map(({ x, y }) => ({ x, y: y + thin }))],
      'outline',
      'paper',
    ),
    stroke([line[0], { x: line[0].x, y: line[0].y + up }], 'light'),
    stroke(
      [line.at(-1) ?? line[0], { x: line.at(-1)?.x ?? 0, y: (line.at(-1)?.y ?? 0) + up }],
      'light',
    ),
  );
  key.push({
    line: 'outline',
    fill: 'paper',
    text: `handrail, top ${rail.said} above the nosings`,
  });
}

function spread(risers: readonly Size[]): number {
  return greatest(risers).inches - least(risers).inches;
}

function least(sizes: readonly Size[]): Size {
  return sizes.reduce((best, each) => (each.inches < best.inches ? each : best));
}

function greatest(sizes: readonly Size[]): Size {
  return sizes.reduce((best, each) => (each.inches > best.inches ? each : best));
}
