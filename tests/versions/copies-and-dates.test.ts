// Copies that go their own way, and prices past their date.
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { compare } from '../../src/versions/compare.ts';
import { dayNumber, dayText, datedBy } from '../../src/versions/days.ts';
import { newIdentities, readIdentities } from '../../src/versions/identities.ts';
import { askAgain } from '../../src/versions/asked-again.ts';
import { pastDates, sayPast, validity } from '../../src/versions/past-dates.ts';
import { ifMoved } from '../../src/versions/moved-prices.ts';
import { verify } from '../../src/versions/snapshot.ts';
import { takenOut } from '../../src/versions/taken-out.ts';
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
        const text = date.toISOString().slice(0, 10);
        const number = dayNumber(text);
        expect(dayText(number ?? 0)).toBe(text);
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
    expect(past.map((one) => [one.name, sayPast(one), one.daysPast, one.way.kind])).toEqual([
      ['Delivery', 'quoted 151 days ago, good for 14', 137, 'by-hand'],
      ['Board price', 'quoted 94 days ago, good for 30', 64, 'ask'],
      ['Rail price', 'no longer good since 1 day', 1, 'ask'],
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

  it('are told beside when all of them were good, with the one quoted first and the one that runs out first', () => {
    expect(validity(estimate())).toEqual({
      oldest: { name: 'Delivery', day: '2026-01-05' },
      first: { name: 'Delivery', until: '2026-01-19' },
    });
    expect(validity(new Estimate('# K\n\n## P\n\n- A: $1\n  - from: a guess\n'))).toBeNull();
    const open = new Estimate('# K\n\n## P\n\n- A: $1\n  - from: good until 2026-04-02\n');
    expect(validity(open)).toEqual({ oldest: null, first: { name: 'A', until: '2026-04-02' } });
  });

  it('of a snapshot are those of its own text', () => {
    expect(pastDates(versionOf(frozen(opened(TEXT))).estimate, '2026-06-05')).toHaveLength(3);
  });
});

const INSIDE = `# K

## Gone before

- Old: 1 ft

## Work

- Trips: 3 trips
- Delivery price: $1
- Delivery: trips at $20 per trip
  - cost: equipment
  - from: quoted 2026-01-05, good for 14 days
  - note: twice a week
- Both: $5 plus $7
  - cost: fee
  - from: quoted 2026-01-05, good for 14 days
- Named: delivery price by 2
  - from: quoted 2026-01-05, good for 14 days
`;

describe('a price past its date inside a formula', () => {
  const today = '2026-06-05';
  const edited = () => {
    const e = new Estimate(INSIDE);
    // From here on the ids are others than a text read anew would give.
    done(e.removeCell(cellNamed(e.notebook, 'Old').id));
    return e;
  };

  it('is told with what can be done about it', () => {
    const ways = pastDates(edited(), today).map(({ name, way }) => [name, way]);
    expect(ways).toEqual([
      ['Delivery', { kind: 'take-out', prices: ['$20 per trip'] }],
      ['Both', { kind: 'take-out', prices: ['$5', '$7'] }],
      ['Named', { kind: 'formula' }],
    ]);
  });

  it('gets a cell of its own with its source, in one edit that undo takes back; then it can be asked for', () => {
    const e = edited();
    const before = e.notebook.text;
    const change = takenOut(e, cellNamed(e.notebook, 'Delivery').id);
    if (!change || 'code' in change) throw new Error('not taken out');
    expect(change.say).toBe('Give $20 per trip a cell of its own: Delivery price 2');
    done(e.replaceText(change));
    expect(e.notebook.text).toContain(`- Delivery: trips at Delivery price 2
  - cost: equipment
  - note: twice a week
- Delivery price 2: $20 per trip
  - from: quoted 2026-01-05, good for 14 days
`);
    expect(e.costs().total.price).toBe('72.00');
    const ways = pastDates(e, today).map(({ name, way }) => [name, way.kind]);
    expect(ways).toEqual([
      ['Delivery price 2', 'ask'],
      ['Both', 'take-out'],
      ['Named', 'formula'],
    ]);
    done(e.undo());
    expect(e.notebook.text).toBe(before);
  });

  it('has one for each of several prices', () => {
    const e = edited();
    const change = takenOut(e, cellNamed(e.notebook, 'Both').id);
    if (!change || 'code' in change) throw new Error('not taken out');
    expect(change.say).toBe('Give $5 and $7 cells of their own: Both price and Both price 2');
    done(e.replaceText(change));
    expect(e.notebook.text).toContain(`- Both: Both price plus Both price 2
  - cost: fee
- Both price: $5
  - from: quoted 2026-01-05, good for 14 days
- Both price 2: $7
  - from: quoted 2026-01-05, good for 14 days
`);
    expect(e.costs().total.price).toBe('72.00');
  });

  it('is asked for with all the others in one edit, which undo takes back', () => {
    const e = edited();
    const before = e.notebook.text;
    const ids = e.notebook.parts.flatMap(({ key }) => key);
    const change = askAgain(e, pastDates(e, today));
    if (!change) throw new Error('nothing to ask for');
    expect(change.say).toBe('Ask again for 2 prices past their date');
    done(e.replaceText(change));
    expect(e.notebook.text).toContain(`- Delivery: trips at Delivery price 2
  - cost: equipment
  - note: twice a week
- Delivery price 2: ?
  - from: quoted 2026-01-05, good for 14 days; was $20 per trip
- Both: Both price plus Both price 2
  - cost: fee
- Both price: ?
  - from: quoted 2026-01-05, good for 14 days; was $5
- Both price 2: ?
  - from: quoted 2026-01-05, good for 14 days; was $7
`);
    expect(e.notebook.parts.flatMap(({ key }) => key)).toEqual(ids);
    expect(pastDates(e, today).map(({ name }) => name)).toEqual(['Named']);
    done(e.undo());
    expect(e.notebook.text).toBe(before);
  });

  it('that is finer than a cent is no rounder in a cell of its own', () => {
    const half = '# K\n\n## P\n\n- Sand: 3 times $1.005\n  - cost: material\n';
    const dated = `${half}  - from: quoted 2026-01-05, good for 14 days\n`;
    const e = new Estimate(dated);
    const change = takenOut(e, cellNamed(e.notebook, 'Sand').id);
    if (!change || 'code' in change) throw new Error('not taken out');
    done(e.replaceText(change));
    // 3 × $1.005 is $3.02 either way: a price is no line and is not rounded by itself.
    expect(e.costs().total.price).toBe('3.02');
  });
});

describe('prices past their date, had they moved', () => {
  it('give what the job would come to, and change nothing', () => {
    const e = new Estimate(TEXT);
    const past = pastDates(e, '2026-06-05');
    // 40 boards at $14.25 is $570; a tenth more is $57. What was set by hand stays.
    expect(ifMoved(e, past, '10')).toEqual({ before: '570.00', after: '627.00', count: 2 });
    expect(ifMoved(e, past, '-10')).toMatchObject({ after: '513.00' });
    expect(e.notebook.text).toBe(TEXT);
    expect(ifMoved(e, [], '10')).toBeNull();
  });

  it('that stand inside a formula move there', () => {
    const e = new Estimate(INSIDE);
    done(e.removeCell(cellNamed(e.notebook, 'Old').id));
    const past = pastDates(e, '2026-06-05');
    // Half of 3 × $20, of $5 and of $7 comes to it; what names a price moves with nothing here.
    expect(ifMoved(e, past, '50')).toEqual({ before: '72.00', after: '108.00', count: 2 });
  });
});
