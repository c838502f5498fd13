// The saved shapes of the job record, one for each thing that may stand in it. As every saved shape they are never
// edited once shipped. What a later version wrote, or nobody can read, is kept as it is and told.
import * as v from 'valibot';
import type { Recorded } from '../record/entry.ts';
import { receiptProblem } from '../record/receipt.ts';
import { standingOf } from '../record/standing.ts';
import type { Plain } from '../versions/canonical.ts';
import type { JobMismatch } from '../versions/job.ts';
import { dayNumber } from '../versions/days.ts';
import { taken } from './shapes.ts';

const MONEY = v.pipe(v.string(), v.regex(/^-?\d{1,12}\.\d\d$/, 'no money with two places'));
const DAY = v.pipe(
  v.string(),
  v.check((text) => text.length === 10 && dayNumber(text) !== null, 'no day'),
);
const KIND = v.picklist(['material', 'labour', 'equipment', 'subcontract', 'fee']);
const PART = v.strictObject({ key: v.nullable(v.string()), name: v.string() });

const COST = v.variant('by', [
  v.strictObject({ by: v.literal('amount'), amount: MONEY }),
  v.strictObject({
    by: v.literal('time'),
    minutes: v.pipe(v.string(), v.regex(/^\d{1,7}(\.\d{1,8})?$/, 'no minutes')),
    rate: v.pipe(v.string(), v.regex(/^\d{1,12}\.\d{2,4}$/, 'no money an hour')),
  }),
]);

const RECEIPT = v.pipe(
  v.strictObject({ name: v.string(), url: v.string() }),
  v.check((receipt) => receiptProblem(receipt) === null, 'no picture that is kept'),
);

const SAID = {
  date: DAY,
  part: PART,
  kind: KIND,
  what: v.string(),
  cost: COST,
  note: v.string(),
  currency: v.string(),
};

const KEPT = { v: v.literal(1), id: v.string(), entered: v.string() };

const RECORDED_1 = v.variant('record', [
  v.strictObject({
    ...KEPT,
    record: v.literal('entry'),
    says: v.strictObject({ ...SAID, receipt: v.nullable(RECEIPT) }),
  }),
  v.strictObject({
    ...KEPT,
    record: v.literal('correction'),
    corrects: v.string(),
    why: v.string(),
    says: v.nullable(
      v.strictObject({ ...SAID, receipt: v.nullable(v.union([v.literal('same'), RECEIPT])) }),
    ),
  }),
  v.strictObject({
    ...KEPT,
    record: v.literal('progress'),
    date: DAY,
    part: PART,
    kind: v.nullable(KIND),
    done: v.pipe(v.string(), v.regex(/^(100|\d{1,2}(\.\d{1,2})?)$/, 'no percent')),
  }),
  v.strictObject({
    ...KEPT,
    record: v.literal('watch'),
    budget: v.nullable(v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, 'no hash'))),
    over: v.pipe(MONEY, v.regex(/^\d/, 'less than nothing')),
  }),
]);

export interface TakenRecords {
  readonly records: readonly Recorded[];
  /** They stay in what is kept; nothing here counts them. */
  readonly newer: number;
  readonly unreadable: readonly string[];
}

export function takenRecords(raw: readonly Plain[]): TakenRecords {
  const records: Recorded[] = [];
  const unreadable: string[] = [];
  let newer = 0;
  for (const one of raw) {
    const read = taken<Recorded>(RECORDED_1, 1, one);
    switch (read.kind) {
      case 'taken':
        records.push(read.value);
        break;
      case 'newer':
        newer++;
        break;
      case 'unreadable':
        unreadable.push(read.why);
        break;
      case 'absent':
        unreadable.push('nothing stands in it');
        break;
    }
  }
  return { records, newer, unreadable };
}

/** What of the record of a job that is opened doesn't count here, in words. */
export function recordMismatches(raw: readonly Plain[]): readonly JobMismatch[] {
  const { records, newer, unreadable } = takenRecords(raw);
  const { strays } = standingOf(records);
  return [
    ...told(newer, 'was written by a later version of Storyrod', 'were written by a later version'),
    ...told(unreadable.length, 'can’t be read', 'can’t be read'),
    ...told(strays.length, 'points at nothing that is here', 'point at nothing that is here'),
  ];
}

function told(many: number, one: string, more: string): readonly JobMismatch[] {
  if (many === 0) return [];
  const said =
    many === 1 ? `One line of the job record ${one}` : `${many} lines of the job record ${more}`;
  const message = `${said}: kept as it is, and in no sum.`;
  return [{ about: 'record', snapshot: null, message }];
}

/** As it is kept. */
export function plainRecord(record: Recorded): Plain {
  return record as unknown as Plain;
}
