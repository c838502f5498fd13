// The saved shape of a whole job. As every saved shape it is never edited once shipped: a later one gets the next
// number and a step that makes the new out of the old. Nothing may stand in it that the shape doesn't know.
import * as v from 'valibot';
import { IDENTITIES_1 } from './identities-shape.ts';

const WHOLE = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
const MONEY = v.pipe(v.string(), v.regex(/^-?\d+\.\d\d$/, 'no money with two places'));
const HASH = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, 'no hash'));
const TEXT_OR_NONE = v.nullable(v.string());

const FROZEN_CELL = v.strictObject({
  part: v.string(),
  name: v.string(),
  formula: v.string(),
  shown: TEXT_OR_NONE,
  exact: TEXT_OR_NONE,
  unit: TEXT_OR_NONE,
  holds: v.nullable(v.boolean()),
  byHand: v.boolean(),
  from: TEXT_OR_NONE,
  incomplete: v.boolean(),
  error: TEXT_OR_NONE,
});

const ROW = {
  lines: WHOLE,
  material: MONEY,
  labour: MONEY,
  equipment: MONEY,
  subcontract: MONEY,
  fee: MONEY,
  direct: MONEY,
  price: MONEY,
  incomplete: v.boolean(),
};

const SNAPSHOT = v.strictObject({
  name: v.string(),
  note: v.string(),
  date: v.string(),
  tool: v.string(),
  text: v.string(),
  values: v.strictObject({
    cells: v.array(FROZEN_CELL),
    tables: v.array(
      v.strictObject({
        part: v.string(),
        name: v.string(),
        from: TEXT_OR_NONE,
        columns: v.array(v.string()),
        rows: v.array(v.array(FROZEN_CELL)),
      }),
    ),
    parts: v.array(v.strictObject({ part: v.string(), ...ROW })),
    total: v.strictObject(ROW),
    currency: v.string(),
  }),
  identities: IDENTITIES_1,
  hash: HASH,
  seal: HASH,
});

const VERSION_NAMED = v.strictObject({ name: v.string(), seal: v.nullable(HASH) });

const ORDER = v.strictObject({
  number: WHOLE,
  date: v.string(),
  reason: v.string(),
  from: VERSION_NAMED,
  to: VERSION_NAMED,
  currency: v.string(),
  lines: v.array(
    v.strictObject({
      kind: v.picklist(['added', 'dropped', 'changed']),
      part: v.string(),
      name: v.string(),
      line: v.picklist(['cost', 'price']),
      of: v.string(),
      workedBefore: TEXT_OR_NONE,
      workedAfter: TEXT_OR_NONE,
      before: v.nullable(MONEY),
      after: v.nullable(MONEY),
      difference: MONEY,
    }),
  ),
  before: MONEY,
  net: MONEY,
  after: MONEY,
  rest: MONEY,
  incomplete: v.boolean(),
});

/** What a job holds beside its notebook. */
const BESIDE = {
  origin: v.nullable(
    v.strictObject({
      kind: v.picklist(['restored', 'trial', 'duplicate']),
      name: v.string(),
      seal: v.nullable(HASH),
      date: v.string(),
    }),
  ),
  log: v.array(
    v.strictObject({
      snapshot: HASH,
      happened: v.picklist(['sent', 'accepted', 'superseded']),
      date: v.string(),
      note: v.string(),
    }),
  ),
  orders: v.array(ORDER),
  orderLog: v.array(
    v.strictObject({
      order: WHOLE,
      state: v.picklist(['asked', 'priced', 'approved', 'done', 'billed']),
      date: v.string(),
      note: v.string(),
    }),
  ),
  /** Entries of the job record, which have shapes of their own. */
  records: v.array(v.unknown()),
};

export const JOB_1 = v.strictObject({
  storyrod: v.literal('job'),
  v: v.literal(1),
  id: v.string(),
  title: v.string(),
  text: v.string(),
  identities: IDENTITIES_1,
  snapshots: v.array(SNAPSHOT),
  ...BESIDE,
  /** Over all that stands above: a file that was damaged or written into says so. */
  check: HASH,
});

/** The same in the browser, beside the notebook's own value: each snapshot is a value of its own, written once. */
export const VERSIONS_1 = v.strictObject({
  v: v.literal(1),
  id: v.string(),
  /** Goes up by one with every keeping. */
  revision: v.pipe(v.number(), v.safeInteger(), v.minValue(1)),
  /** The seals of its snapshots, in order. */
  snapshots: v.array(HASH),
  ...BESIDE,
});

export const SNAPSHOT_1 = v.strictObject({ v: v.literal(1), snapshot: SNAPSHOT });
