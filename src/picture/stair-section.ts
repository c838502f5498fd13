// A flight from the side, climbing to the right, drawn to its finished surfaces as the cells have them: unequal risers
// are drawn unequal, and where the risers don't reach the floor above, they end beside it.
import {
  type Chain,
  type Drawing,
  type KeyItem,
  type Shape,
  area,
  rectangle,
  straight,
  stroke,
} from './drawing.ts';
import { type Given, type Size, many, total } from './given.ts';
import { addConcrete, belowGround, underConcrete } from './stair-concrete.ts';
import { type Flight, flightOf } from './stair-flight.ts';
import { addWood } from './stair-wood.ts';

/** Less than this nobody can lay out or measure. */
const UNSEEN = 1 / 32;
/** Marks are pencilled to a sixteenth, so risers laid out right differ by one, and a half more where a height lies between. */
const PENCILLED = 3 / 32 + 1e-9;

export function stairSection(given: Given): Drawing {
  const flight = flightOf(given);
  const shapes: Shape[] = [];
  const key: KeyItem[] = [];
  addGround(given, flight, shapes, key);
  const concrete = isConcrete(given);
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
  const platform = given.some('platform');
  const flat = platform ? `, then ${platform.said} of platform` : '';
  const told = given.maybe('total')?.said ?? given.say(floor);
  return {
    name: 'stair section',
    shapes,
    chains: chainsOf(given, flight),
    words: [],
    key,
    alt: `${concrete ? 'Concrete' : 'Wood'} flight from the side: ${rises}${runs}${flat}, ${told} of total rise.${wrong
      .map((each) => ` ${each}`)
      .join('')}`,
    wrong,
  };
}

function wrongIn(given: Given, { risers, floor }: Flight): readonly string[] {
  const wrong: string[] = [];
  const sum = total(risers);
  if (spread(risers) > PENCILLED) {
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
  if (spread(risers) <= PENCILLED) return [];
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
  const below = isConcrete(given) ? belowGround(given) : [];
  const chains: Chain[] = [
    {
      side: 'left',
      stops: ups,
      says: risers.map(({ said }) => said).toReversed(),
      wrong: odd.map((i) => risers.length - 1 - i),
    },
    {
      side: 'right',
      stops: [-floor, 0, ...below.map(({ to }) => to)],
      says: [given.maybe('total')?.said ?? given.say(floor), ...below.map(({ said }) => said)],
    },
  ];
  const platform = given.some('platform');
  if (treads > 0) {
    const stops = Array.from({ length: treads + 1 }, (_, i) => i * run.inches);
    chains.push({
      side: 'bottom',
      stops: platform ? [...stops, treads * run.inches + platform.inches] : stops,
      says: [
        ...stops.slice(1).map((_, i) => (i === 0 ? run.said : null)),
        ...(platform ? [platform.said] : []),
      ],
    });
    if (treads > 1) {
      chains.push({
        side: 'bottom',
        stops: [0, treads * run.inches],
        says: [given.say(treads * run.inches)],
      });
    }
  } else if (platform) {
    chains.push({ side: 'bottom', stops: [0, platform.inches], says: [platform.said] });
  }
  return chains;
}

function addGround(given: Given, flight: Flight, shapes: Shape[], key: KeyItem[]): void {
  const { run, beyond, before, risers } = flight;
  const landing = given.maybe('landing');
  // Under concrete steps the stone is theirs.
  const base = isConcrete(given) ? null : given.maybe('base');
  const right = run.inches * Math.max(risers.length - 1, 1) + beyond;
  const thick = landing?.inches ?? 0;
  const stone = base?.inches ?? 0;
  const foot = run.inches * 1.3;
  const under = isConcrete(given) ? underConcrete(given) : 0;
  const depth = Math.max(run.inches * 0.35, (thick + stone + under) * 0.5);
  const deep = Math.max(thick + stone, under) + depth;
  shapes.push(rectangle(-before, 0, right + before, deep, 'none', 'earth'));
  if (base && stone > 0) {
    shapes.push(rectangle(-before, thick, before + foot, stone, 'outline', 'stone'));
    key.push({ line: 'outline', fill: 'stone', text: `stone, ${base.said}` });
  }
  if (landing && thick > 0) {
    shapes.push(rectangle(-before, 0, before + foot, thick, 'cut', 'concrete'));
    key.push({ line: 'cut', fill: 'concrete', text: `landing, ${landing.said}` });
    shapes.push(straight(foot, 0, right, 0, 'cut'));
  } else shapes.push(straight(-before, 0, right, 0, 'cut'));
  key.push({ line: 'none', fill: 'earth', text: 'ground' });
}

function isConcrete(given: Given): boolean {
  return given.word('made of') === 'concrete';
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
