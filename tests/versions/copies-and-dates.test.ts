// Copies that go their own way, and prices past their date.
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { compare } from '../../src/versions/compare.ts';
import { dayNumber, datedBy } from '../../src/versions/days.ts';
import { newIdentities, readIdentities } from '../../src/versions/identities.ts';
import { askAgain, pastDates, sayPast } from '../../src/versions/past-dates.ts';
import { verify } from '../../src/versions/snapshot.ts';
import { versionNow, versionOf } from '../../src/versions/version.ts';
import { copyOfSnapshot, duplicateOf, sayOrigin } from '../../src/versions/working-copy.ts';
import { cellNamed, done } from '../notebook/cells.ts';
import { frozen, opened } from './sides.ts';

const TEXT = `# Kestrel Court

## Boards

- Board price: $14.25 per board
  - from: quoted by the yard, 2026-03-03, good until 2026-04-02; invented
- Screw price: $29 per box
  - from: quoted 2026-05-20, good for 30 days
- Fee: $75
  - from: the town's list
- Cost: 40 boards at board price
  - cost: material
- Rail price: $9 per ft
  - from: quoted by the shop, good until 2026-06-04
- Delivery: 3 trips at $20 per trip
  - by hand: $65
  - from: quoted 2026-01-05, good for 14 days
`;

describe('a copy of a snapshot', () => {
  const job = opened(TEXT);
  const snapshot = frozen(job);

  it('says what it is a copy of, and a trial that it is not what was issued', () => {
    const naming = { stem: 'm', date: '2026-03-09' };
    const trial = copyOfSnapshot('trial', snapshot, naming);
    expect(trial).toMatchObject({
      title: 'Kestrel Court',
      text: TEXT,
      origin: { seal: snapshot.seal },
    });
    expect(sayOrigin(trial.origin)).toContain('not the estimate that was issued');
    expect(sayOrigin(copyOfSnapshot('restored', snapshot, naming).origin)).toContain('"Bid 1"');
  });

  it('keeps who the cells are, and gives no key that the original gives', () => {
    const copy = copyOfSnapshot('restored', snapshot, { stem: 'm', date: '2026-03-09' });
    const there = new Estimate(copy.text);
    const identities = readIdentities(copy.identities, there.notebook);
    done(there.rename(cellNamed(there.notebook, 'Fee').id, 'Permit'));
    done(there.addCell(cellNamed(there.notebook, 'Permit').part, null, 'Sand', '$10'));
    const { estimate } = job;
    done(estimate.addCell(cellNamed(estimate.notebook, 'Fee').part, null, 'Gravel', '$12'));
    const comparison = compare(
      versionNow('here', estimate, job.identities),
      versionNow('there', there, identities),
    );
    const cells = comparison.parts.flatMap((part) => part.cells);
    expect(cells.map(({ before, after, ways }) => [before?.name, after?.name, ways])).toEqual([
      ['Gravel', undefined, ['removed']],
      ['Fee', 'Permit', ['renamed']],
      [undefined, 'Sand', ['added']],
    ]);
    expect(verify(snapshot)).toEqual([]);
  });
});

describe('a notebook for the next client', () => {
  it('has a title of its own and the same estimate', () => {
    const { estimate, identities } = opened(TEXT);
    const copy = duplicateOf(estimate.notebook, identities, 'Heron\nLane', {
      stem: 'n',
      date: '2026-04-01',
    });
    expect(copy.title).toBe('Heron Lane');
    expect(copy.text).toBe(TEXT.replace('Kestrel Court', 'Heron Lane'));
    expect(sayOrigin(copy.origin)).toBe('Made from "Kestrel Court" on 2026-04-01.');
    expect(estimate.notebook.text).toBe(TEXT);
  });

  it('gets a title where there was none, and keeps the old one where none is given', () => {
    const none = new Estimate('## P\r\n\r\n- A: 1\r\n').notebook;
    const ids = newIdentities(none, 'k');
    const naming = { stem: 'n', date: '2026-04-01' };
    expect(duplicateOf(none, ids, 'Heron', naming).text).toBe(
      '# Heron\r\n\r\n## P\r\n\r\n- A: 1\r\n',
    );
    expect(duplicateOf(none, ids, ' ', naming).text).toBe(none.text);
  });
});

describe('days', () => {
  it('are counted as the calendar counts them', () => {
    const day = fc.date({
      min: new Date('1600-01-01'),
      max: new Date('2399-12-31'),
      noInvalidDate: true,
    });
    const start = dayNumber('1970-01-01') ?? 0;
    fc.assert(
      fc.property(day, (date) => {
        const number = dayNumber(date.toISOString().slice(0, 10));
        expect((number ?? 0) - start).toBe(Math.floor(date.getTime() / 86_400_000));
      }),
    );
  });

  test.for(['2026-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '2026-4-1', 'soon', ''])(
    '%s is none',
    (text) => expect(dayNumber(text)).toBeNull(),
  );

  test.for<readonly [string, string | null, string | null]>([
    ['quoted by the yard, 2026-02-24, good until 2026-03-31; invented', '2026-02-24', '2026-03-31'],
    ['quoted 2026-02-24, good for 30 days', '2026-02-24', '2026-03-26'],
    ['good for 7 days, quoted 2026-02-24', '2026-02-24', '2026-03-03'],
    ['Good till 2026-03-31', null, '2026-03-31'],
    ['quoted 2026-02-24', null, null],
    ['good until further notice', null, null],
    ['good for 30 days', null, null],
    ['quoted 2026-02-24, good until 2026-02-31', null, null],
  ])('%s', ([source, quoted, until]) => {
    const wanted = until && { quoted: quoted && dayNumber(quoted), until: dayNumber(until) };
    expect(datedBy(source)).toEqual(wanted);
  });
});

describe('prices past their date', () => {
  const estimate = () => new Estimate(TEXT);

  it('are pointed out on the day handed in, the longest past first', () => {
    const past = pastDates(estimate(), '2026-06-05');
    expect(past.map((one) => [one.name, sayPast(one), one.daysPast, one.canAsk])).toEqual([
      ['Delivery', 'quoted 151 days ago, good for 14', 137, false],
      ['Board price', 'quoted 94 days ago, good for 30', 64, true],
      ['Rail price', 'no longer good since 1 day', 1, true],
    ]);
    expect(pastDates(estimate(), '2026-04-02').map(({ name }) => name)).toEqual(['Delivery']);
    expect(pastDates(estimate(), '2026-04-03').map(({ name }) => name)).toEqual([
      'Delivery',
      'Board price',
    ]);
  });

  it('become ? in one edit that undo takes back, and what they were stays beside their source', () => {
    const e = estimate();
    const change = askAgain(e, pastDates(e, '2026-06-05'));
    if (!change) throw new Error('nothing to ask for');
    expect(change.say).toBe('Ask again for 2 prices past their date');
    done(e.replaceText(change));
    expect(cellNamed(e.notebook, 'Board price')).toMatchObject({
      formula: '?',
      remarks: [
        {
          text: 'quoted by the yard, 2026-03-03, good until 2026-04-02; invented; was $14.25 per board',
        },
      ],
    });
    expect(e.costs().total).toMatchObject({
      direct: '0.00',
      incomplete: [cellNamed(e.notebook, 'Cost').id],
    });
    expect(pastDates(e, '2026-06-05').map(({ name }) => name)).toEqual(['Delivery']);
    expect(askAgain(e, pastDates(e, '2026-06-05'))).toBeNull();
    done(e.undo());
    expect(e.notebook.text).toBe(TEXT);
  });

  it('of a snapshot are those of its own text', () => {
    expect(pastDates(versionOf(frozen(opened(TEXT))).estimate, '2026-06-05')).toHaveLength(3);
  });
});
