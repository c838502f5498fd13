// The frame of a deck from above: the house at the top, joists running away from it, beams, posts and footings below.
// Everything stands where the cells put it; posts that overlap or a joist past the rim are drawn so.
import { type Chain, type Drawing, type KeyItem, type Shape, rectangle } from './drawing.ts';
import { type Given, MOST_DRAWN, type Size, everyAlong, many, together } from './given.ts';

const UNSEEN = 1 / 32;
const THICK = 1.5;

export function framingPlan(given: Given): Drawing {
  const length = given.size('length');
  const depth = given.size('depth');
  const spacing = given.size('joists');
  const thick = given.inches('joist', THICK);
  // A ledger of no thickness is none: the deck stands free.
  const ledger = given.inches('ledger', 0) > 0 ? given.size('ledger') : null;
  const rim = given.inches('rim', thick);
  const house = Math.max(length.inches, depth.inches) / 45;
  const shapes: Shape[] = [];
  const key: KeyItem[] = [];
  const wrong: string[] = [];
  if (ledger) {
    shapes.push(rectangle(0, -house, length.inches, house, 'outline', 'house'));
    key.push({ line: 'outline', fill: 'house', text: 'house' });
  }
  addBelow(given, length.inches, shapes, key);
  const top = ledger?.inches ?? rim;
  const joists = joistsOf(given, length.inches, thick);
  for (const x of joists) {
    const past = x + thick > length.inches + UNSEEN;
    shapes.push(
      rectangle(
        x,
        top,
        thick,
        depth.inches - top - rim,
        past ? 'wrong' : 'outline',
        past ? 'wrong' : 'wood',
      ),
    );
  }
  const most = joists.at(-1) ?? 0;
  if (most + thick > length.inches + UNSEEN) wrong.push('The last joist stands past the rim.');
  else if (length.inches - most - thick > spacing.inches + UNSEEN) {
    wrong.push(`${given.say(length.inches - most - thick)} at the end has no joist.`);
  }
  shapes.push(rectangle(0, depth.inches - rim, length.inches, rim, 'cut', 'wood'));
  shapes.push(rectangle(0, 0, length.inches, top, 'cut', 'wood'));
  const rows = given.sizes('blocking');
  for (const { inches } of rows) {
    shapes.push(rectangle(0, inches - thick / 2, length.inches, thick, 'light', 'none'));
  }
  addPosts(given, length.inches, shapes, key, wrong);
  key.push({
    line: 'outline',
    fill: 'wood',
    text: `${many(joists.length, 'joist')}, every ${spacing.said}`,
  });
  if (ledger)
    key.push({ line: 'cut', fill: 'wood', text: 'ledger at the house, rim at the free edge' });
  if (rows.length > 0)
    key.push({ line: 'light', fill: 'none', text: many(rows.length, 'row') + ' of blocking' });
  const beams = beamsOf(given);
  const held =
    beams.length === 0
      ? ''
      : `; ${beams.length === 1 ? 'a beam' : `${beams.length} beams`} ${together(beams.map(({ said }) => said))} from the house`;
  const posts = postsOf(given, length.inches).length;
  const onPosts =
    posts > 0 && beams.length > 0
      ? ` on ${many(posts, 'post')}${beams.length > 1 ? ' each' : ''}`
      : '';
  return {
    name: 'framing plan',
    shapes,
    chains: chainsOf(given, joists),
    words: [],
    key,
    alt: `Deck frame from above, ${ledger ? 'house at the top' : 'free-standing'}: ${length.said} by ${depth.said}, ${many(joists.length, 'joist')} every ${spacing.said}${held}${onPosts}.${wrong
      .map((each) => ` ${each}`)
      .join('')}`,
    wrong,
  };
}

/** The left face of each joist. The last one closes the frame where no count says otherwise. */
function joistsOf(given: Given, length: number, thick: number): readonly number[] {
  const spacing = given.size('joists').inches;
  const count = given.count('joist count');
  if (count === null) {
    const at = everyAlong(spacing, length - thick - UNSEEN);
    return [...at, length - thick];
  }
  const most = Math.min(count, MOST_DRAWN);
  // Counted from one end at the spacing; the last one stands at the far end where that is nearer than its spacing.
  return Array.from({ length: most }, (_, i) => {
    const place = i * spacing;
    const isLast = i === most - 1;
    const far = length - thick;
    return isLast && place > far && place - far < spacing ? far : place;
  });
}

/** From the house outwards; two at one place are one. */
function beamsOf(given: Given): readonly Size[] {
  return given
    .sizes('beams')
    .toSorted((a, b) => a.inches - b.inches)
    .filter(({ inches }, i, all) => i === 0 || inches - (all[i - 1]?.inches ?? 0) > UNSEEN);
}

/** Middles of the posts from the left end. */
function postsOf(given: Given, length: number): readonly number[] {
  const places = given.sizes('post places').map(({ inches }) => inches);
  if (places.length > 0) return places;
  const count = Math.min(given.count('posts') ?? 0, MOST_DRAWN);
  const inset = given.inches('post inset', given.inches('post', 5.5) / 2);
  if (count === 1) return [length / 2];
  return Array.from({ length: count }, (_, i) => inset + ((length - inset * 2) * i) / (count - 1));
}

function addBelow(given: Given, length: number, shapes: Shape[], key: KeyItem[]): void {
  const beams = beamsOf(given);
  const beam = given.maybe('beam');
  const wide = beam?.inches ?? 3;
  const footing = given.maybe('footing');
  const posts = postsOf(given, length);
  const square = given.word('footing shape') === 'square';
  if (footing) {
    for (const { inches: y } of beams) {
      for (const x of posts) {
        const half = footing.inches / 2;
        shapes.push(
          square
            ? rectangle(x - half, y - half, half * 2, half * 2, 'hidden', 'none')
            : { kind: 'round', centre: { x, y }, radius: half, line: 'hidden', fill: 'none' },
        );
      }
    }
    key.push({
      line: 'hidden',
      fill: 'none',
      text: `footings, ${footing.said} ${square ? 'square' : 'across'}`,
    });
  }
  for (const { inches: y } of beams) {
    shapes.push(rectangle(0, y - wide / 2, length, wide, 'outline', 'paper'));
  }
  if (beams.length > 0) {
    key.push({
      line: 'outline',
      fill: 'paper',
      text: `${many(beams.length, 'beam')}${beam ? `, ${beam.said} wide` : ''}`,
    });
  }
}

/** Over the joists that hide them, as such plans have it: where the posts are is what is looked for. */
function addPosts(
  given: Given,
  length: number,
  shapes: Shape[],
  key: KeyItem[],
  wrong: string[],
): void {
  const beams = beamsOf(given);
  const posts = postsOf(given, length);
  const post = given.maybe('post');
  const side = post?.inches ?? 5.5;
  const overlap = posts.some((x, i) => i > 0 && x - (posts[i - 1] ?? 0) < side - UNSEEN);
  for (const { inches: y } of beams) {
    for (const x of posts) {
      const where = rectangle(
        x - side / 2,
        y - side / 2,
        side,
        side,
        overlap ? 'wrong' : 'cut',
        overlap ? 'wrong' : 'solid',
      );
      shapes.push(where);
    }
  }
  if (posts.length > 0 && beams.length > 0) {
    key.push({
      line: 'cut',
      fill: 'solid',
      text: `${many(posts.length * beams.length, 'post')}${post ? `, ${post.said}` : ''}`,
    });
  }
  if (overlap) wrong.push('Posts stand one over the other.');
}

function chainsOf(given: Given, joists: readonly number[]): readonly Chain[] {
  const length = given.size('length');
  const depth = given.size('depth');
  const spacing = given.size('joists');
  const beams = beamsOf(given);
  const posts = postsOf(given, length.inches);
  const chains: Chain[] = [];
  if (beams.length > 0) {
    const ys = [0, ...beams.map(({ inches }) => inches), depth.inches];
    chains.push({
      side: 'left',
      stops: ys,
      says: ys.slice(1).map((y, i) => {
        const [only] = beams;
        // The first piece is the cell's own; the others lie between cells.
        return i === 0 && only ? only.said : given.say(y - (ys[i] ?? 0));
      }),
    });
  }
  chains.push({ side: 'left', stops: [0, depth.inches], says: [depth.said] });
  if (joists.length > 1) {
    chains.push({
      side: 'top',
      stops: [0, joists[1] ?? 0],
      says: [joists.length > 2 ? spacing.said : null],
    });
  }
  if (posts.length > 1 && beams.length > 0) {
    chains.push({ side: 'bottom', stops: posts, says: gapsSaid(given, posts) });
  }
  chains.push({ side: 'bottom', stops: [0, length.inches], says: [length.said] });
  return chains;
}

/** Equal gaps are said once. */
function gapsSaid(given: Given, stops: readonly number[]): readonly (string | null)[] {
  const said = stops.slice(1).map((x, i) => given.say(x - (stops[i] ?? 0)));
  const same = said.every((text) => text === said[0]);
  return said.map((text, i) => (same && i > 0 && said.length > 3 ? null : text));
}
