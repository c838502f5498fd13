// Deck boards from above, laid out as the cells say, running from left to right: the last one as it is ripped, however narrow, a row too many
// over the edge, a butt joint beside its joist.
import {
  type Chain,
  type Drawing,
  type KeyItem,
  type Shape,
  rectangle,
  straight,
} from './drawing.ts';
import { type Given, MOST_DRAWN, type Size, everyAlong, many } from './given.ts';

const UNSEEN = 1 / 32;
/** The part of a joist that a butt joint may miss by: half of 1 1/2 in. */
const HALF_JOIST = 0.75;

interface Course {
  readonly y: number;
  readonly width: number;
}

interface Field {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function boardPlan(given: Given): Drawing {
  const along = given.size('along');
  const across = given.size('across');
  const board = given.size('board');
  const gap = given.size('gap');
  const over = given.inches('overhang', 0);
  const border = given.inches('border', 0);
  const sides = border > 0 ? (given.count('border sides') ?? 3) : 0;
  const outer: Field = { left: 0, right: along.inches, top: 0, bottom: across.inches };
  const strip = sides > 0 ? border + gap.inches : 0;
  const at = given.word('house at') === 'left' ? 'left' : 'top';
  const isLeft = at === 'left';
  /** The border leaves the house free unless it goes all round. */
  const atHouse = sides > 3 ? strip : 0;
  const field: Field = {
    left: outer.left + (isLeft ? atHouse : strip),
    right: outer.right - strip,
    top: outer.top + (isLeft ? strip : atHouse),
    bottom: outer.bottom - strip,
  };
  const courses = coursesOf(given, field);
  const shapes: Shape[] = [];
  const house = Math.max(along.inches, across.inches) / 45;
  shapes.push(
    isLeft
      ? rectangle(-house, 0, house, across.inches, 'outline', 'house')
      : rectangle(0, -house, along.inches, house, 'outline', 'house'),
  );
  const breakers = given
    .sizes('breaker')
    .map(({ inches }) => inches)
    .filter((inches) => inches > 0);
  const stretches = stretchesOf(field, breakers, board.inches, gap.inches);
  for (const { y, width } of courses) {
    for (const { from, to } of stretches) {
      shapes.push(rectangle(from, y, to - from, width, 'outline', 'paper'));
    }
  }
  for (const x of breakers) {
    const tall = (courses.at(-1)?.y ?? 0) + (courses.at(-1)?.width ?? 0) - field.top;
    shapes.push(rectangle(x - board.inches / 2, field.top, board.inches, tall, 'outline', 'wood'));
  }
  if (sides > 0) shapes.push(...borderOf(outer, border, gap.inches, { sides, at }));
  const key: KeyItem[] = [{ line: 'outline', fill: 'house', text: 'house' }];
  const last = courses.at(-1);
  const lastSize = given.maybe('last') ?? given.sized(last?.width ?? 0);
  const wrong = wrongIn(given, { field, courses, last: lastSize });
  if (last && wrong.length > 0) {
    shapes.push(
      rectangle(field.left, last.y, field.right - field.left, last.width, 'wrong', 'wrong'),
    );
  }
  key.push({ line: 'outline', fill: 'paper', text: saidBoards(courses, board, gap) });
  if (sides > 0)
    key.push({
      line: 'outline',
      fill: 'wood',
      text: `border, ${given.maybe('border')?.said ?? ''}`,
    });
  if (breakers.length > 0)
    key.push({ line: 'outline', fill: 'wood', text: many(breakers.length, 'breaker board') });
  // Boards stand past the frame at the three sides that are free.
  const frame = isLeft
    ? { x: 0, y: over, wide: along.inches - over, deep: across.inches - over * 2 }
    : { x: over, y: 0, wide: along.inches - over * 2, deep: across.inches - over };
  if (frame.wide > 0 && frame.deep > 0) {
    shapes.push(rectangle(frame.x, frame.y, frame.wide, frame.deep, 'hidden', 'none'));
  }
  const past = over > 0 ? `; boards ${given.maybe('overhang')?.said ?? ''} past it` : '';
  key.push({ line: 'hidden', fill: 'none', text: `frame below${past}` });
  if (last && Math.abs(last.width - board.inches) > UNSEEN) {
    key.push({ line: 'none', fill: 'none', text: `last board ripped to ${lastSize.said}` });
  }
  addJoists(given, { frame, shapes, key });
  addJoints(given, { field, courses, start: frame.x, shapes, key, wrong });
  return {
    name: 'board plan',
    shapes,
    chains: chainsOf(given, { outer, field, courses, last: lastSize, isWrong: wrong.length > 0 }),
    words: [],
    key,
    alt: `Deck boards from above, house at the ${at}: ${along.said} along the boards, ${across.said} across them; ${saidBoards(courses, board, gap)}, the last one ${lastSize.said}.${wrong
      .map((each) => ` ${each}`)
      .join('')}`,
    wrong,
  };
}

function saidBoards(courses: readonly Course[], board: Size, gap: Size): string {
  const apart = gap.inches > 0 ? `, ${gap.said} apart` : '';
  return `${many(courses.length, 'board')} of ${board.said}${apart}`;
}

/** From the house outwards. Without a count boards are laid until the field is full. */
function coursesOf(given: Given, { top, bottom }: Field): readonly Course[] {
  const board = given.size('board').inches;
  const gap = given.size('gap').inches;
  const first = given.maybe('first')?.inches ?? board;
  const last = given.maybe('last')?.inches ?? null;
  const count = given.count('boards');
  const courses: Course[] = [];
  let y = top;
  const most = Math.min(count ?? MOST_DRAWN, MOST_DRAWN);
  while (courses.length < most) {
    const full = courses.length === 0 ? first : board;
    const isLast = count === null ? bottom - y - full < gap + UNSEEN : courses.length === most - 1;
    const width = isLast ? (last ?? (count === null ? Math.max(bottom - y, 0) : full)) : full;
    if (count === null && bottom - y < UNSEEN) break;
    courses.push({
      y,
      width:
        isLast && last === null && count !== null ? Math.min(full, Math.max(bottom - y, 0)) : width,
    });
    if (isLast) break;
    y += full + gap;
  }
  return courses.filter(({ width }) => width > 0);
}

function wrongIn(
  given: Given,
  {
    field,
    courses,
    last,
  }: { readonly field: Field; readonly courses: readonly Course[]; readonly last: Size },
): readonly string[] {
  const end = courses.at(-1);
  if (!end) return [];
  const wrong: string[] = [];
  if (end.width < given.size('board').inches / 3 - UNSEEN) {
    wrong.push(`The last board is ripped to a sliver of ${last.said}.`);
  }
  const rest = field.bottom - (end.y + end.width);
  if (rest > Math.max(given.size('gap').inches, 1 / 8) + UNSEEN) {
    wrong.push(`${given.say(rest)} at the edge stays bare.`);
  } else if (rest < -UNSEEN - (given.inches('border', 0) > 0 ? given.size('gap').inches : 0)) {
    wrong.push(`The boards run ${given.say(-rest)} past the edge.`);
  }
  return wrong;
}

/** Between the breaker boards. */
function stretchesOf(
  { left, right }: Field,
  breakers: readonly number[],
  board: number,
  gap: number,
): readonly { readonly from: number; readonly to: number }[] {
  const half = board / 2 + gap;
  const cuts = [...breakers].toSorted((a, b) => a - b);
  const ends = [left, ...cuts.flatMap((x) => [x - half, x + half]), right];
  return Array.from({ length: ends.length / 2 }, (_, i) => ({
    from: ends[i * 2],
    to: ends[i * 2 + 1],
  })).filter(({ from, to }) => to > from);
}

function borderOf(
  { left, right, top, bottom }: Field,
  wide: number,
  gap: number,
  { sides, at }: { readonly sides: number; readonly at: 'top' | 'left' },
): readonly Shape[] {
  const strip = (x: number, y: number, w: number, h: number): Shape =>
    rectangle(x, y, w, h, 'outline', 'wood');
  // The side at the house comes last: it is there only where the border goes all round.
  if (at === 'left') {
    const inner = right - left - wide - gap;
    const turned = [
      strip(right - wide, top, wide, bottom - top),
      strip(left, top, inner, wide),
      strip(left, bottom - wide, inner, wide),
      strip(left, top + wide + gap, wide, bottom - top - (wide + gap) * 2),
    ];
    return turned.slice(0, sides);
  }
  const all = [
    strip(left, bottom - wide, right - left, wide),
    strip(left, top, wide, bottom - wide - gap - top),
    strip(right - wide, top, wide, bottom - wide - gap - top),
    strip(left + wide + gap, top, right - left - (wide + gap) * 2, wide),
  ];
  return all.slice(0, sides);
}

function addJoists(
  given: Given,
  on: {
    readonly frame: {
      readonly x: number;
      readonly y: number;
      readonly wide: number;
      readonly deep: number;
    };
    readonly shapes: Shape[];
    readonly key: KeyItem[];
  },
): void {
  const spacing = given.maybe('joists');
  if (!spacing) return;
  const { x: from, y, wide, deep } = on.frame;
  for (const at of everyAlong(spacing.inches, Math.max(wide, 0))) {
    on.shapes.push(straight(from + at, y, from + at, y + deep, 'centre'));
  }
  on.key.push({ line: 'centre', fill: 'none', text: `joists every ${spacing.said}` });
}

function addJoints(
  given: Given,
  on: {
    readonly field: Field;
    readonly courses: readonly Course[];
    /** Where the first joist stands. */
    readonly start: number;
    readonly shapes: Shape[];
    readonly key: KeyItem[];
    readonly wrong: readonly string[];
  },
): void {
  const { field, courses, start, shapes, key } = on;
  const joists = given.maybe('joists')?.inches ?? null;
  const places = given
    .sizes('joints')
    .map(({ inches }) => inches)
    .filter((inches) => inches > 0);
  const step = given.inches('joint step', 0);
  const each = Math.min(step > 0 ? (given.count('joints in a row') ?? 1) : 1, MOST_DRAWN);
  const stock = given.maybe('stock');
  let off = 0;
  for (const [row, { y, width }] of courses.entries()) {
    const [turn] = places.length > 0 ? [places[row % places.length] ?? 0] : [];
    const cuts =
      turn !== undefined
        ? Array.from({ length: each }, (_, i) => turn + i * step)
        : stock
          ? cutsOf(stock.inches, field, row)
          : [];
    for (const x of cuts) {
      const isOff =
        joists !== null &&
        Math.abs(x - start - Math.round((x - start) / joists) * joists) > HALF_JOIST;
      if (isOff) off++;
      shapes.push(straight(x, y, x, y + width, isOff ? 'wrong' : 'cut'));
    }
  }
  if (stock) key.push({ line: 'cut', fill: 'none', text: `butt joints; boards of ${stock.said}` });
  else if (places.length > 0) key.push({ line: 'cut', fill: 'none', text: 'butt joints' });
  if (off > 0)
    key.push({ line: 'wrong', fill: 'none', text: `${many(off, 'butt joint')} beside a joist` });
}

/** Whole lengths from the left end, and in every second row from the right. */
function cutsOf(stock: number, { left, right }: Field, row: number): readonly number[] {
  const cuts = everyAlong(stock, right - left)
    .slice(1)
    .filter((at) => at < right - left - UNSEEN);
  return row % 2 === 0 ? cuts.map((at) => left + at) : cuts.map((at) => right - at);
}

function chainsOf(
  given: Given,
  at: {
    readonly outer: Field;
    readonly field: Field;
    readonly courses: readonly Course[];
    readonly last: Size;
    readonly isWrong: boolean;
  },
): readonly Chain[] {
  const { courses, last } = at;
  const along = given.size('along');
  const across = given.size('across');
  const end = courses.at(-1);
  const first = given.maybe('first');
  const chains: Chain[] = [];
  if (end) {
    const stops = [end.y, end.y + end.width];
    const isRipped = Math.abs(end.width - given.size('board').inches) > UNSEEN;
    if (isRipped || at.isWrong) {
      const lead =
        first && courses.length > 1 ? [courses[0].y, courses[0].y + courses[0].width] : [];
      chains.push({
        side: 'right',
        stops: [...lead, ...stops],
        says: [...(first && lead.length > 0 ? [first.said, null] : []), last.said],
        wrong: at.isWrong ? [lead.length > 0 ? 2 : 0] : [],
      });
    }
  }
  chains.push({ side: 'left', stops: [0, across.inches], says: [across.said] });
  chains.push({ side: 'bottom', stops: [0, along.inches], says: [along.said] });
  return chains;
}
