// The record as it is saved: it comes back as it was; what nobody can read is kept as it is and told.
import { describe, expect, test } from 'vitest';
import type { Recorded } from '../../src/record/entry.ts';
import { MOST_BYTES, receiptProblem } from '../../src/record/receipt.ts';
import { openJobFile, writeJobFile } from '../../src/store/job-file.ts';
import { plainRecord, takenRecords } from '../../src/store/record-shapes.ts';
import type { Plain } from '../../src/versions/canonical.ts';
import { LANDING, correction, entry, progress, said } from './records.ts';

const PNG = 'data:image/png;base64,iVBORw0KGgoAAAAN';
const RECORDS: readonly Recorded[] = [
  entry('a', said('259.20', { receipt: { name: 'receipt.png', url: PNG } })),
  entry('b', said(['7.5', '62.00'])),
  correction('c', 'a', { ...said('-12.00'), receipt: 'same' }),
  correction('d', 'b', null),
  progress('e', LANDING, 'labour', '62.5'),
  { v: 1, id: 'f', entered: '2026-05-04', record: 'watch', budget: null, over: '100.00' },
];

function job(records: readonly Plain[]) {
  const opened = openJobFile('# K\n\n## Landing\n\n- A: 1 ft\n', { id: 'k', stem: 'k-' });
  if (opened.kind === 'refused') throw new Error(opened.message);
  return openJobFile(writeJobFile({ ...opened.job, records }), { id: 'x', stem: 'x-' });
}

describe('in a job file', () => {
  test('the whole record comes back as it was', () => {
    const back = job(RECORDS.map(plainRecord));
    if (back.kind === 'refused') throw new Error(back.message);
    expect(back.mismatches).toEqual([]);
    expect(takenRecords(back.job.records)).toEqual({ records: RECORDS, newer: 0, unreadable: [] });
  });

  test('what is newer, unreadable or points at nothing is kept, told and in no sum', () => {
    const odd: readonly Plain[] = [
      { v: 2, record: 'entry', id: 'n' },
      { v: 1, record: 'entry', id: 'u', entered: '', says: null },
      plainRecord(correction('s', 'nowhere', null)),
    ];
    const back = job(odd);
    if (back.kind === 'refused') throw new Error(back.message);
    expect(back.job.records).toEqual(odd);
    expect(back.mismatches.map(({ message }) => message)).toEqual([
      'One line of the job record was written by a later version of Storyrod: kept as it is, and in no sum.',
      'One line of the job record can’t be read: kept as it is, and in no sum.',
      'One line of the job record points at nothing that is here: kept as it is, and in no sum.',
    ]);
  });
});

const broken = (change: (says: Record<string, Plain>) => void): readonly Plain[] => {
  const copy = JSON.parse(JSON.stringify(RECORDS[0])) as { says: Record<string, Plain> };
  change(copy.says);
  return [copy];
};

describe('a saved entry is refused', () => {
  test.for([
    ['a day that is none', 'date', '2026-02-30'],
    ['a day with more behind it', 'date', '2026-02-03T10'],
    ['a cost that is not known', 'kind', 'misc'],
    ['money as a number', 'cost', { by: 'amount', amount: 12 }],
    ['money without an end', 'cost', { by: 'amount', amount: `${'9'.repeat(400)}.00` }],
    ['hours that are none', 'cost', { by: 'time', minutes: '1e9', rate: '60.00' }],
    ['hours that are less than nothing', 'cost', { by: 'time', minutes: '-60', rate: '60.00' }],
    ['a picture that is a page', 'receipt', { name: 'x', url: 'data:text/html;base64,AAAA' }],
    ['a picture elsewhere', 'receipt', { name: 'x', url: 'https://example.org/a.png' }],
    ['more than belongs there', 'more', 1],
  ] as const)('with %s', ([, member, value]) => {
    const { records, unreadable } = takenRecords(
      broken((says) => {
        says[member] = value;
      }),
    );
    expect(records).toEqual([]);
    expect(unreadable).toHaveLength(1);
  });
});

describe('a picture of a receipt', () => {
  test('is a JPEG, PNG or WebP by its name and by what stands in it', () => {
    expect(receiptProblem({ name: 'a', url: PNG })).toBeNull();
    expect(receiptProblem({ name: 'a', url: 'data:image/jpeg;base64,/9j/4AAQ' })).toBeNull();
    for (const url of [
      'data:image/svg+xml;base64,PHN2Zz4=',
      'data:image/png;base64,PHN2Zz4=',
      'data:image/png;base64,iVBORw0KGgo<b>A',
      'data:image/png,iVBORw0KGgo=',
    ])
      expect(receiptProblem({ name: 'a', url })).toContain('no picture');
  });

  test('has at most the bytes that are said', () => {
    const of = (bytes: number) => `data:image/jpeg;base64,/9j/${'A'.repeat((bytes / 3) * 4 - 4)}`;
    expect(receiptProblem({ name: 'a', url: of(MOST_BYTES) })).toBeNull();
    expect(receiptProblem({ name: 'scan.jpg', url: of(MOST_BYTES + 3) })).toBe(
      '"scan.jpg" has 301 kB; a receipt may have 300 kB.',
    );
  });
});
