// A wrong layout looks wrong: nothing is put right on the way to the drawing, and what does not agree is told and marked.
import { describe, expect, it } from 'vitest';
import { boxes, drawn, said } from './told.ts';

describe('boards', () => {
  const boards = 'board plan for along 16 ft, across 12 ft, board 5 1/2 in, gap 1/8 in';

  it('a last board ripped to a sliver is drawn as narrow as it is, and marked', () => {
    const plan = drawn(`${boards}, boards 26, last 3/4 in`);
    const laid = boxes(plan, 'outline', 'paper');
    expect(laid).toHaveLength(26);
    expect(laid.at(-1)?.[3]).toBeCloseTo(0.75);
    expect(boxes(plan, 'wrong', 'wrong')[0]?.[3]).toBeCloseTo(0.75);
    expect(plan.wrong).toContain('The last board is ripped to a sliver of 3/4 in.');
    expect(plan.alt).toContain('sliver');
  });

  it('boards too few leave the edge bare', () => {
    // 22 × 5 1/2 in and 21 gaps of 1/8 in are 123 5/8 in of 144 in.
    expect(drawn(`${boards}, boards 22`).wrong).toEqual(['1 ft 8 3/8 in at the edge stays bare.']);
  });

  it('boards too many with a given last one run past the edge', () => {
    const plan = drawn(`${boards}, boards 27, last 5 1/2 in`);
    expect(plan.wrong).toEqual(['The boards run 7 3/4 in past the edge.']);
    const last = boxes(plan, 'wrong', 'wrong')[0] ?? [];
    expect((last[1] ?? 0) + (last[3] ?? 0)).toBeCloseTo(151.75);
  });

  it('a layout that comes out even is not marked', () => {
    const plan = drawn('board plan for along 8 ft, across 67 3/8 in, board 5 1/2 in, gap 1/8 in');
    expect(plan.wrong).toEqual([]);
    expect(boxes(plan, 'outline', 'paper')).toHaveLength(12);
  });

  it('a butt joint beside its joist is marked', () => {
    const plan = drawn(`${boards}, joists 16 in, joints 8 ft and 7 ft`);
    expect(plan.key.some(({ text }) => text === '13 butt joints beside a joist')).toBe(true);
  });
});

describe('stairs', () => {
  it('one 2x8 and a 1 in board under a 15 in drop leave 8 1/4 in and 6 3/4 in, drawn so and marked', () => {
    const flight = drawn(
      'stair section for heights rise and drop minus rise, run 11 in, tread 1 in, total drop',
      '- Drop: 15 in\n- Rise: actual depth of 2x8 plus 1 in\n',
    );
    expect(said(flight, 'left')).toEqual([['6 3/4 in', '8 1/4 in']]);
    expect(flight.chains.find(({ side }) => side === 'left')?.stops).toEqual([-15, -8.25, -0]);
    expect(flight.chains.find(({ side }) => side === 'left')?.wrong).toEqual([1, 0]);
    expect(flight.wrong).toEqual([
      'The risers are not equal: 1 1/2 in between the least and the greatest.',
    ]);
  });

  it('a floor found higher than the risers reach shows the gap', () => {
    const flight = drawn('stair section for risers 4, rise 7 1/2 in, run 11 in, total 31 1/4 in');
    expect(flight.wrong).toEqual(['The risers end 1 1/4 in short of the floor.']);
    expect(boxes(flight, 'wrong', 'none')[0]?.[1]).toBe(-30);
    expect(said(flight, 'right')).toEqual([['31 1/4 in']]);
  });

  it('one bottom riser of another height stands out, and the others do not', () => {
    const flight = drawn('stair section for risers 5, rise 7 in, first 6 1/4 in, run 11 in');
    // Counted from the top: the bottom riser is the last of five.
    expect(flight.chains.find(({ side }) => side === 'left')?.wrong).toEqual([4]);
  });
});

describe('frames, rails and walls', () => {
  it('posts that overlap are drawn one over the other', () => {
    const plan = drawn(
      'framing plan for length 6 ft, depth 4 ft, joists 16 in, beams 3 ft, post places 3 in and 6 in and 5 ft, post 5 1/2 in',
    );
    expect(boxes(plan, 'wrong', 'wrong').map(([x]) => x)).toEqual([0.25, 3.25, 57.25]);
    expect(plan.wrong).toEqual(['Posts stand one over the other.']);
  });

  it('a joist too many stands past the rim, one too few leaves a bay', () => {
    const frame = 'framing plan for length 6 ft, depth 4 ft, joists 16 in';
    expect(drawn(`${frame}, joist count 8`).wrong).toEqual(['The last joist stands past the rim.']);
    expect(drawn(`${frame}, joist count 4`).wrong).toEqual([
      '1 ft 10 1/2 in at the end has no joist.',
    ]);
    expect(drawn(`${frame}, joist count 6`).wrong).toEqual([]);
  });

  it('gaps that a ball goes through are marked, the one left over at the end too', () => {
    const railing = drawn(
      'railing elevation for bays 6 ft, height 36 in, balusters 12, baluster 1 1/2 in, gap 4 in, largest gap 4 in',
    );
    expect(railing.wrong).toEqual(['A gap of 6 in is not under 4 in.']);
    const even = drawn(
      'railing elevation for bays 6 ft, height 36 in, balusters 13, baluster 1 1/2 in, largest gap 4 in',
    );
    expect(even.wrong).toEqual([]);
  });

  it('balusters that do not fit run over the post', () => {
    const railing = drawn(
      'railing elevation for bays 5 ft, height 36 in, balusters 12, baluster 1 1/2 in, gap 4 in',
    );
    expect(railing.wrong).toEqual(['The balusters do not fit between the posts.']);
    expect(boxes(railing, 'wrong', 'wrong')).toHaveLength(2);
  });

  it('a wall without a buried course says so', () => {
    const wall = 'wall section for courses 4, unit height 6 in, unit depth 12 in';
    expect(drawn(`${wall}, buried 0`).wrong).toEqual([
      'No course stands below the ground in front.',
    ]);
    expect(drawn(`${wall}, buried 1`).wrong).toEqual([]);
    expect(drawn(`${wall}, buried 4`).wrong).toEqual([
      'Every course lies below the ground in front.',
    ]);
  });
});
