// A flight in wood: treads, riser boards, the frame it comes up to and the stringer they stand on.
import { type KeyItem, type Point, type Shape, area, rectangle } from './drawing.ts';
import type { Given } from './given.ts';
import type { Flight } from './stair-flight.ts';

export function addWood(given: Given, flight: Flight, shapes: Shape[], key: KeyItem[]): void {
  const { risers, run, heights, floor, beyond } = flight;
  const tread = given.maybe('tread');
  const board = tread?.inches ?? 1;
  const riser = given.maybe('riser');
  const back = riser?.inches ?? 0;
  const nosing = given.inches('nosing', 0);
  const faces = risers.map((_, i) => i * run.inches + nosing);
  if (given.word('made of') === 'boxes') addBoxes(flight, { board, faces, back, shapes, key });
  else addStringer(given, { flight, board, face: (i) => faces[i] + back, shapes, key });
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

/** A frame under each tread that reaches back under all those above it. */
function addBoxes(
  { risers, run, heights }: Flight,
  on: {
    readonly board: number;
    readonly faces: readonly number[];
    readonly back: number;
    readonly shapes: Shape[];
    readonly key: KeyItem[];
  },
): void {
  const { board, faces, back, shapes, key } = on;
  const treads = risers.length - 1;
  const end = treads * run.inches + back;
  for (let i = 0; i < treads; i++) {
    const low = i === 0 ? 0 : heights[i - 1];
    const high = heights[i] - board - low;
    const x = faces[i] + back;
    if (high > 0) shapes.push(rectangle(x, -low - high, end - x, high, 'outline', 'wood'));
  }
  if (treads > 0) key.push({ line: 'outline', fill: 'wood', text: 'boxes, one on the other' });
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
