// Which pictures there are, and what each can be told: the words before its values and what these measure.

/** What a slot takes. A list of words: one of them. */
export type SlotTakes = 'length' | 'lengths' | 'count' | 'counts' | 'slope' | readonly string[];

export interface Picture {
  readonly name: string;
  readonly slots: Readonly<Record<string, SlotTakes>>;
  /** Every way in which it is told enough: the slots of one of these have to be there. */
  readonly needs: readonly (readonly string[])[];
  /** Lists of which the second has as many values as the first, or one for all. */
  readonly alike?: readonly (readonly [string, string])[];
  readonly like: string;
}

const BARS = { bars: 'length', mesh: 'length', cover: 'length' } as const;
const JOINTS = { 'joint spacing': 'length', isolation: 'length' } as const;
/** What the slab's near side lies against. */
const SIDE = { side: ['house', 'wall', 'steps', 'nothing'] } as const;
const SLEEPERS = { sleepers: 'length', sleeper: 'length' } as const;

export const PICTURES: readonly Picture[] = [
  {
    name: 'slab plan',
    slots: {
      lengths: 'lengths',
      widths: 'lengths',
      'panels along': 'count',
      'panels across': 'count',
      'panels long': 'counts',
      'panels wide': 'counts',
      walls: 'lengths',
      steps: 'length',
      fall: 'slope',
      ...SIDE,
      ...JOINTS,
      ...BARS,
      ...SLEEPERS,
    },
    needs: [['lengths', 'widths']],
    alike: [
      ['lengths', 'widths'],
      ['lengths', 'walls'],
      ['lengths', 'panels long'],
      ['lengths', 'panels wide'],
    ],
    like: 'slab plan for lengths 6 ft and 6 ft, widths 4 ft',
  },
  {
    name: 'slab section',
    slots: {
      width: 'length',
      thickness: 'length',
      base: 'length',
      edge: 'length',
      'edge width': 'length',
      'edge at': ['far', 'near'],
      joint: 'length',
      fall: 'slope',
      'above ground': 'length',
      boards: 'length',
      ...SIDE,
      ...JOINTS,
      ...BARS,
      ...SLEEPERS,
    },
    needs: [['width', 'thickness']],
    like: 'slab section for width 4 ft, thickness 4 in, base 4 in',
  },
  {
    name: 'stair section',
    slots: {
      risers: 'count',
      rise: 'length',
      heights: 'lengths',
      first: 'length',
      last: 'length',
      total: 'length',
      run: 'length',
      tread: 'length',
      riser: 'length',
      nosing: 'length',
      stringer: 'length',
      deck: 'length',
      landing: 'length',
      platform: 'length',
      'set in': 'length',
      footing: 'length',
      'footing width': 'length',
      base: 'length',
      rail: 'length',
      'made of': ['wood', 'boxes', 'concrete'],
      waist: 'length',
    },
    needs: [
      ['run', 'risers', 'rise'],
      ['run', 'heights'],
    ],
    like: 'stair section for risers 4, rise 7 1/2 in, run 11 in',
  },
  {
    name: 'board plan',
    slots: {
      along: 'length',
      across: 'length',
      board: 'length',
      gap: 'length',
      boards: 'count',
      first: 'length',
      last: 'length',
      overhang: 'length',
      border: 'length',
      'border sides': 'count',
      breaker: 'lengths',
      stock: 'length',
      joints: 'lengths',
      'joint step': 'length',
      'joints in a row': 'count',
      'house at': ['top', 'left'],
      joists: 'length',
    },
    needs: [['along', 'across', 'board', 'gap']],
    like: 'board plan for along 16 ft, across 14 ft, board 5 1/2 in, gap 1/8 in',
  },
  {
    name: 'framing plan',
    slots: {
      length: 'length',
      depth: 'length',
      joists: 'length',
      'joist count': 'count',
      joist: 'length',
      ledger: 'length',
      rim: 'length',
      blocking: 'lengths',
      beams: 'lengths',
      beam: 'length',
      posts: 'count',
      'post inset': 'length',
      'post places': 'lengths',
      post: 'length',
      footing: 'length',
      'footing shape': ['round', 'square'],
    },
    needs: [['length', 'depth', 'joists']],
    like: 'framing plan for length 16 ft, depth 14 ft, joists 16 in',
  },
  {
    name: 'railing elevation',
    slots: {
      height: 'length',
      bays: 'lengths',
      run: 'length',
      posts: 'count',
      post: 'length',
      'post height': 'length',
      balusters: 'counts',
      baluster: 'length',
      gap: 'length',
      'largest gap': 'length',
      'top rail': 'length',
      'bottom rail': 'length',
      'bottom gap': 'length',
      rise: 'length',
      deck: 'length',
    },
    needs: [
      ['height', 'run', 'posts'],
      ['height', 'bays'],
    ],
    alike: [['bays', 'balusters']],
    like: 'railing elevation for run 12 ft, posts 3, height 36 in',
  },
  {
    name: 'wall section',
    slots: {
      courses: 'count',
      'unit height': 'length',
      'unit depth': 'length',
      buried: 'count',
      setback: 'length',
      cap: 'length',
      'cap depth': 'length',
      base: 'length',
      'base width': 'length',
      drain: 'length',
      pipe: 'length',
      fabric: ['yes', 'no'],
      'slope above': 'slope',
      fill: 'length',
    },
    needs: [['courses', 'unit height', 'unit depth']],
    like: 'wall section for courses 5, unit height 6 in, unit depth 12 in, buried 1',
  },
];

/** Sizes that may be nothing; every other one has to be there to be drawn. */
const MAY_BE_NOTHING: ReadonlySet<string> = new Set([
  'gap',
  'first',
  'last',
  'overhang',
  'border',
  'border sides',
  'nosing',
  'setback',
  'post inset',
  'bottom gap',
  'above ground',
  'riser',
  'cover',
  // As where a cell says which of two there is.
  'bars',
  'mesh',
  'sleepers',
  'sleeper',
  'boards',
  'isolation',
  'fill',
  'edge',
  'edge width',
  'buried',
  'base',
  'drain',
  'cap',
  'landing',
  'platform',
  'steps',
  'breaker',
  'joints',
  'joint step',
  'joints in a row',
  'set in',
  'footing',
  'walls',
  'ledger',
  'joint',
  'balusters',
]);

export function mayBeNothing(slot: string): boolean {
  return MAY_BE_NOTHING.has(slot);
}

/** What a slot takes, in words. */
export function takesSaid(takes: SlotTakes): string {
  switch (takes) {
    case 'length':
      return 'a length';
    case 'lengths':
      return 'lengths: a column of a table, or some joined by "and"';
    case 'count':
      return 'a whole number';
    case 'counts':
      return 'whole numbers: a column of a table, or some joined by "and"';
    case 'slope':
      return 'a slope, so much for each foot';
    default:
      return takes.join(' or ');
  }
}

export function isList(takes: SlotTakes): boolean {
  return takes === 'lengths' || takes === 'counts';
}
