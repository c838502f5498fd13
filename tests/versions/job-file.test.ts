// A whole job in one file: written, opened, tampered with, of older forms, of newer ones, and of none.
import fc from 'fast-check';
import fs from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { type JobFile, openJobFile, writeJobFile } from '../../src/store/job-file.ts';
import { keptIdentities } from '../../src/versions/identities.ts';
import type { Job } from '../../src/versions/job.ts';
import { acceptedOf } from '../../src/versions/standing.ts';
import { frozen, opened } from './sides.ts';

const FRESH = { id: 'fresh', stem: 'f' };

const file = (name: string): string =>
  fs.readFileSync(new URL(`files/${name}`, import.meta.url), 'utf8');

function jobIn(content: string): Extract<JobFile, { kind: 'opened' }> {
  const found = openJobFile(content, FRESH);
  if (found.kind !== 'opened') throw new Error(found.message);
  return found;
}

/** The first form as it was shipped, written into as somebody else would. */
function written(change: (job: Record<string, unknown>) => void): string {
  const raw = JSON.parse(file('job-1.json')) as Record<string, unknown>;
  change(raw);
  return JSON.stringify(raw);
}

const snapshotIn = (raw: Record<string, unknown>, i: number): Record<string, unknown> =>
  (raw['snapshots'] as Record<string, unknown>[])[i] ?? {};

const messages = (content: string): readonly string[] =>
  jobIn(content).mismatches.map(({ message }) => message);

it('names a change order in which an amount was changed', () => {
  const order = (raw: Record<string, unknown>) =>
    (raw['orders'] as Record<string, unknown>[])[0] ?? {};
  const wrong = 'Change order 1 does not add up: an amount in it was changed since it was made.';
  expect(messages(file('job-1.json'))).not.toContain(wrong);
  for (const field of ['net', 'before', 'after', 'rest'])
    expect(messages(written((raw) => (order(raw)[field] = '1234.56')))).toContain(wrong);
  const line = (raw: Record<string, unknown>) =>
    (order(raw)['lines'] as Record<string, unknown>[])[0] ?? {};
  expect(messages(written((raw) => (line(raw)['difference'] = '0.01')))).toContain(wrong);
});

describe('a job that is written and opened', () => {
  it('is the same', () => {
    const { estimate, identities } = opened('# K\n\n## P\n\n- A: $1\n  - cost: fee\n');
    const job: Job = {
      id: 'k',
      title: 'K',
      text: estimate.notebook.text,
      identities: keptIdentities(identities, estimate.notebook),
      origin: { kind: 'duplicate', name: 'Kestrel Court', seal: null, date: '2026-04-01' },
      snapshots: [frozen({ estimate, identities })],
      log: [],
      orders: [],
      orderLog: [],
      records: [
        {
          v: 1,
          record: 'progress',
          id: 'r-1',
          entered: '2026-03-05',
          date: '2026-03-04',
          part: { key: null, name: 'P' },
          kind: null,
          done: '12.5',
        },
      ],
    };
    expect(jobIn(writeJobFile(job))).toEqual({ kind: 'opened', job, mismatches: [], from: 'job' });
  });
});

describe('files of the first forms', () => {
  test('a job: every hash is right', () => {
    const { job, mismatches } = jobIn(file('job-1.json'));
    expect(mismatches).toEqual([]);
    expect(job.snapshots.map(({ name }) => name)).toEqual(['Bid 1', 'Bid 2']);
    expect(acceptedOf(job.log, job.snapshots)?.name).toBe('Bid 1');
    expect(job.orders[0]).toMatchObject({ number: 1, net: '59.61' });
    expect(JSON.parse(writeJobFile(job))).toEqual(JSON.parse(file('job-1.json')));
  });

  test.for<readonly [string, 'kept-notebook' | 'text', string]>([
    ['kept-notebook-1.json', 'kept-notebook', 'kestrel'],
    ['notebook.md', 'text', 'fresh'],
  ])('%s becomes a job', ([name, from, id]) => {
    const found = jobIn(file(name));
    expect(found).toMatchObject({ from, mismatches: [] });
    expect(found.job).toMatchObject({
      id,
      title: 'Kestrel Court',
      text: file('notebook.md'),
      snapshots: [],
    });
    expect(found.job.identities.parts.map((part) => part.name)).toEqual(['', 'Landing', 'Price']);
    expect(jobIn(writeJobFile(found.job)).job).toEqual(found.job);
  });
});

describe('what was changed since is found and named', () => {
  test('a text in a snapshot', () => {
    const content = written((raw) => {
      const bid = snapshotIn(raw, 1);
      bid['text'] = String(bid['text']).replace('14 ft', '15 ft');
    });
    expect(messages(content)).toEqual([
      'This file was damaged or written into since it was saved.',
      '"Bid 2" is not what was frozen: its text or values were changed since.',
    ]);
    expect(jobIn(content).mismatches[1]?.snapshot).toBe(jobIn(content).job.snapshots[1]?.seal);
  });

  test('a name, with the file saved again by somebody who knows how', () => {
    const content = written((raw) => (snapshotIn(raw, 0)['name'] = 'Bid 0'));
    const saved = writeJobFile(jobIn(content).job);
    expect(messages(saved)).toEqual([
      '"Bid 0" is not as it was sealed: its name, note, date or list of cells was changed since.',
    ]);
  });

  test('a log that speaks of what is not here', () => {
    const content = written((raw) => {
      raw['snapshots'] = [snapshotIn(raw, 1), snapshotIn(raw, 1)];
      raw['orders'] = [];
    });
    expect(messages(content).slice(1)).toEqual([
      'One snapshot is in this job more than once.',
      '"sent" on 2026-03-04 is about a snapshot that is not here.',
      '"accepted" on 2026-03-08 is about a snapshot that is not here.',
      '"approved" on 2026-03-11 is about change order 1, which is not here.',
    ]);
  });

  it('is the notebook itself too', () => {
    expect(messages(written((raw) => (raw['text'] = '# Other')))).toEqual([
      'This file was damaged or written into since it was saved.',
    ]);
  });
});

describe('what can not be opened is refused with the reason', () => {
  test.for<readonly [string, string, string]>([
    ['a later job', written((raw) => (raw['v'] = 2)), 'later version'],
    ['a later kept notebook', '{"v": 7, "id": "k"}', 'later version'],
    ['a file cut off', file('job-1.json').slice(0, 4000), 'cut off'],
    ['some other JSON', '{"a": 1}', 'neither a job nor a notebook'],
    ['a job without a text', written((raw) => delete raw['text']), 'text'],
    [
      'a price that is none',
      written((raw) => (((raw['orders'] as { net: string }[])[0] ?? { net: '' }).net = '12')),
      'orders.0.net',
    ],
    ['a member that nobody knows', written((raw) => (raw['more'] = 1)), 'more'],
    ['what nests without end', `{"a": ${'['.repeat(100_000)}`, 'nests deeper'],
    ['bytes', 'PK\0\0', 'text'],
  ])('%s', ([_what, content, why]) => {
    const found = openJobFile(content, FRESH);
    expect(found).toMatchObject({ kind: 'refused' });
    expect(found.kind === 'refused' && found.message).toContain(why);
  });

  it('never throws, whatever is in the file', () => {
    const start = file('job-1.json');
    fc.assert(
      fc.property(
        fc.nat(start.length),
        fc.nat(40),
        fc.string({ maxLength: 20 }),
        (at, out, put) => {
          const content = start.slice(0, at) + put + start.slice(at + out);
          const found = openJobFile(content, FRESH);
          if (found.kind === 'opened' && content.trim() !== start.trim() && found.from === 'job')
            expect([found.mismatches.length > 0, at, put]).toEqual([content !== start, at, put]);
        },
      ),
      { numRuns: 300 },
    );
    fc.assert(
      fc.property(fc.json(), (content) => {
        openJobFile(content, FRESH);
      }),
    );
  });
});
