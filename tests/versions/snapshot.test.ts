// A snapshot is what was frozen, to the last letter, or says what of it is not.
import fc from 'fast-check';
import { createHash } from 'node:crypto';
import { describe, expect, it, test } from 'vitest';
import { type Plain, canonical } from '../../src/versions/canonical.ts';
import { fingerprint, hashOf } from '../../src/versions/hash.ts';
import { type Snapshot, freeze, markOf, sayMismatch, verify } from '../../src/versions/snapshot.ts';
import { type Log, acceptedOf, logged, standingOf } from '../../src/versions/standing.ts';
import { versionOf } from '../../src/versions/version.ts';
import { frozen, opened } from './sides.ts';

const TEXT =
  '# Kestrel Court\n\n## Landing\n\n- Length: 12 ft\n  - from: measured\n- Price: $6.485 per ft\n' +
  '- Kerb: length at price\n  - cost: material\n- Steps:\n  | step | rise |\n  | --- | --- |\n  | first | 7 in |\n' +
  '- Wide: length is at least 10 ft\n- Lost: lenght by 2\n';

const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** Texts, numbers and lists as JSON can hold them. */
const plain = fc.jsonValue({ maxDepth: 3 }) as fc.Arbitrary<Plain>;

describe('the canonical form', () => {
  it('is the same whatever order the members were written in', () => {
    expect(canonical({ b: 1, a: ['x', null, true], c: undefined })).toBe(
      '{"a":["x",null,true],"b":1}',
    );
    fc.assert(
      fc.property(fc.dictionary(fc.string(), plain), (members) => {
        const turned = Object.fromEntries(Object.entries(members).reverse());
        expect(canonical(turned)).toBe(canonical(members));
        expect(JSON.parse(canonical(members))).toEqual(JSON.parse(JSON.stringify(members)));
      }),
    );
  });

  it('is hashed as any SHA-256 does', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => {
        expect(hashOf(text)).toBe(sha256(JSON.stringify(text)));
      }),
    );
    expect(fingerprint(hashOf(''))).toMatch(/^[0-9a-f]{4} [0-9a-f]{4} [0-9a-f]{4}$/);
  });
});

describe('freezing', () => {
  const snapshot = frozen(opened(TEXT));

  it('keeps text, exact values, sources and totals', () => {
    expect(snapshot.text).toBe(TEXT);
    expect(snapshot.values.cells).toContainEqual(
      expect.objectContaining({ name: 'Kerb', shown: '$77.82', exact: '77.82', unit: '$' }),
    );
    expect(snapshot.values.cells).toContainEqual(
      expect.objectContaining({ name: 'Length', from: 'measured', exact: '12', unit: 'ft' }),
    );
    expect(snapshot.values.cells).toContainEqual(
      expect.objectContaining({ name: 'Wide', holds: true }),
    );
    expect(snapshot.values.cells.find(({ name }) => name === 'Lost')?.error).not.toBeNull();
    expect(snapshot.values.tables[0]).toMatchObject({ name: 'Steps', columns: ['step', 'rise'] });
    expect(snapshot.values.total).toMatchObject({ lines: 1, material: '77.82', price: '77.82' });
  });

  it('gives the same hash to the same content, under whatever name and date', () => {
    const again = frozen(opened(TEXT), 'Another name');
    expect(again.hash).toBe(snapshot.hash);
    expect(again.seal).not.toBe(snapshot.seal);
  });

  it('hashes what the form says, written out here by hand as it was first shipped', () => {
    const text = '# K\n\n## P\n\n- A: $1\n  - cost: fee\n';
    const { hash, seal } = frozen(opened(text));
    const row =
      '"direct":"1.00","equipment":"0.00","fee":"1.00","incomplete":false,"labour":"0.00","lines":1,' +
      '"material":"0.00",';
    const content =
      '{"form":"snapshot content 1","text":"# K\\n\\n## P\\n\\n- A: $1\\n  - cost: fee\\n","tool":"0.1.0",' +
      '"values":{"cells":[{"byHand":false,"error":null,"exact":"1","formula":"$1","from":null,"holds":null,' +
      '"incomplete":false,"name":"A","part":"P","shown":"$1.00","unit":"$"}],"currency":"$",' +
      `"parts":[{${row}"part":"P","price":"1.00","subcontract":"0.00"}],` +
      `"tables":[],"total":{${row}"price":"1.00","subcontract":"0.00"}}}`;
    expect(hash).toBe(sha256(content));
    const label =
      `{"date":"2026-03-03","form":"snapshot label 1","hash":"${hash}","identities":{"next":3,"parts":` +
      '[{"cells":[],"key":"","name":""},{"cells":[["k2","A"]],"key":"k1","name":"P"}],"stem":"k"},' +
      '"name":"Bid 1","note":""}';
    expect(seal).toBe(sha256(label));
  });

  it('gives another hash to another tool', () => {
    const { estimate, identities } = opened(TEXT);
    const later = freeze(estimate, identities, {
      name: 'Bid 1',
      note: '',
      date: '2026-03-03',
      tool: '0.2.0',
    });
    expect(later.hash).not.toBe(snapshot.hash);
  });

  it('can not be edited', () => {
    expect(() => Object.assign(snapshot, { name: 'Bid 9' })).toThrow('read only');
    expect(() => Object.assign(snapshot.values.total, { price: '1.00' })).toThrow('read only');
    expect(() => (snapshot.identities.parts as unknown[]).push(1)).toThrow('not extensible');
  });

  it('is read again with the cells it had', () => {
    const version = versionOf(snapshot);
    expect([...version.identities.cells.values()]).toEqual(
      snapshot.identities.parts.flatMap(({ cells }) => cells.map(([key]) => key)),
    );
  });
});

describe('verifying', () => {
  const snapshot = JSON.parse(JSON.stringify(frozen(opened(TEXT)))) as Snapshot;

  it('finds nothing in what was written and read again', () => {
    expect(verify(snapshot)).toEqual([]);
  });

  test.for<readonly [string, (s: Snapshot) => Snapshot, readonly string[]]>([
    [
      'a letter of the text',
      (s) => ({ ...s, text: s.text.replace('12 ft', '13 ft') }),
      ['content'],
    ],
    ['a line break', (s) => ({ ...s, text: s.text.replaceAll('\n', '\r\n') }), ['content']],
    ['the version of the tool', (s) => ({ ...s, tool: '0.1.1' }), ['content']],
    ['the note', (s) => ({ ...s, note: 'agreed by phone' }), ['label']],
    ['the date', (s) => ({ ...s, date: '2026-03-01' }), ['label']],
    ['a new hash over a new text', (s) => ({ ...s, hash: hashOf('x') }), ['content', 'label']],
    [
      'a hash of a whole other snapshot',
      (s) => ({ ...s, hash: '0'.repeat(64), text: '' }),
      ['content', 'label'],
    ],
  ])('%s changed is found', ([_what, change, found]) => {
    expect(verify(change(snapshot))).toEqual(found);
  });

  it('finds a change of any value anywhere in it', () => {
    const places: (readonly (string | number)[])[] = [];
    const visit = (value: unknown, place: readonly (string | number)[]): void => {
      if (typeof value === 'object' && value !== null)
        for (const [name, inner] of Object.entries(value)) visit(inner, [...place, name]);
      else places.push(place);
    };
    visit(snapshot, []);
    expect(places.length).toBeGreaterThan(60);
    for (const place of places) {
      const copy = structuredClone(snapshot) as unknown as Record<string, unknown>;
      const last = place.at(-1) ?? '';
      const inner = place
        .slice(0, -1)
        .reduce((at, name) => at[name] as Record<string, unknown>, copy);
      inner[last] = typeof inner[last] === 'string' ? `${inner[last]} ` : 'x';
      expect([place, verify(copy as unknown as Snapshot).length > 0]).toEqual([place, true]);
    }
  });

  it('says which one it is about', () => {
    expect(sayMismatch(snapshot, 'content')).toContain('"Bid 1"');
    expect(sayMismatch(snapshot, 'label')).toContain('"Bid 1"');
    expect(markOf(snapshot)).toBe(`Bid 1, ${fingerprint(snapshot.seal)}`);
  });
});

describe('what happened to snapshots', () => {
  const [one, two] = [frozen(opened(TEXT), 'Bid 1'), frozen(opened(TEXT), 'Bid 2')];
  const log = (
    ...entries: readonly (readonly [Snapshot, 'sent' | 'accepted' | 'superseded'])[]
  ): Log =>
    entries.reduce<Log>(
      (before, [{ seal }, happened]) =>
        logged(before, { snapshot: seal, happened, date: '2026-03-04', note: '' }),
      [],
    );

  it('is added to the log and leaves what stood there', () => {
    const before = log([one, 'sent']);
    const after = logged(before, {
      snapshot: two.seal,
      happened: 'sent',
      date: '2026-03-05',
      note: '',
    });
    expect(before).toHaveLength(1);
    expect(after.slice(0, 1)).toEqual(before);
    expect(() => Object.assign(after[0] ?? {}, { happened: 'accepted' })).toThrow('read only');
  });

  it('tells which one is accepted', () => {
    expect(acceptedOf(log([one, 'sent']), [one, two])).toBeNull();
    expect(acceptedOf(log([one, 'sent'], [one, 'accepted']), [one, two])).toBe(one);
    expect(acceptedOf(log([one, 'accepted'], [two, 'accepted']), [one, two])).toBe(two);
    expect(acceptedOf(log([one, 'accepted'], [one, 'superseded']), [one, two])).toBeNull();
    expect(standingOf(log([one, 'sent'], [two, 'sent']), two)?.happened).toBe('sent');
    expect(standingOf([], one)).toBeNull();
  });
});
