// What the deck boards, the frame and the railing draw: nothing wrong as they come, and a wrong layout looks wrong.
import { describe, expect, test } from 'vitest';
import { draw } from '../../src/picture/draw.ts';
import type { Drawing } from '../../src/picture/drawing.ts';
import { type Written, openedWith } from './warns.ts';

function drawn(file: string, cell: string, written: Written): Drawing {
  const notebook = openedWith(file, written);
  const [picture] = notebook.estimate.picturesOf(notebook.cell(cell).id);
  if (picture?.kind !== 'drawn') throw new Error(`not drawn: ${JSON.stringify(picture)}`);
  return draw(picture.name, picture.given);
}

describe('deck boards', () => {
  const of = (written: Written) => drawn('decking.md', 'Last row', written);

  test('rows, border and the ripped board fill the deck', () => {
    const plan = of({});
    expect(plan.wrong).toEqual([]);
    expect(plan.alt).toContain('25 boards of 5 1/2 in, 1/8 in apart, the last one 4 3/8 in');
  });

  test.each<Written>([
    { 'Border rows': '0 rows' },
    { 'Border at house': 'yes' },
    { 'Border rows': '2 rows', Overhang: '0 in' },
    { 'Boards run': 'away from the house', 'Frame length': '15 ft' },
    { 'Boards run': 'away from the house', 'Border rows': '0 rows' },
  ])('%j fills it as well', (written) => {
    expect(of(written).wrong.filter((said) => !said.includes('sliver'))).toEqual([]);
  });

  const joints = (plan: Drawing) =>
    plan.shapes.filter(
      (shape) => shape.kind === 'path' && shape.fill === 'none' && ['cut', 'wrong'].includes(shape.line),
    );

  test.each<[string, Written]>([
    ['two pieces', { 'Frame length': '20 ft' }],
    ['four pieces', { 'Frame length': '34 ft', 'Field stock': '10 ft' }],
    ['no border', { 'Frame length': '20 ft', 'Border rows': '0 rows' }],
    ['the other way', { 'Boards run': 'away from the house', 'Frame width': '22 ft', 'Field stock': '8 ft' }],
    ['the other way and no border', { 'Boards run': 'away from the house', 'Frame width': '22 ft', 'Border rows': '0 rows' }],
    ['a border all round', { 'Boards run': 'away from the house', 'Frame width': '22 ft', 'Border at house': 'yes' }],
  ])('%s: every joint is drawn, and each of them on a joist', (_, written) => {
    const plan = of(written);
    const many = openedWith('decking.md', written).figure('Joints')[1];
    expect(many).toBeGreaterThan(0);
    expect(joints(plan)).toHaveLength(many);
    expect(plan.key.map(({ text }) => text).join('; ')).not.toContain('beside a joist');
  });

  test('breakers part the rows where the panels end', () => {
    const written = { 'Frame length': '30 ft', Breakers: '2 rows' };
    const plan = of(written);
    expect(joints(plan)).toEqual([]);
    const panel = openedWith('decking.md', written).figure('Panel run');
    const wide = (panel[0] === 'ft' ? 12 : 1) * panel[1];
    const rows = plan.shapes.flatMap((shape) => {
      if (shape.kind !== 'path' || shape.line !== 'outline' || shape.fill !== 'paper') return [];
      const xs = shape.points.map(({ x }) => x);
      return [Math.max(...xs) - Math.min(...xs)];
    });
    expect(rows.length % 3).toBe(0);
    for (const row of rows) expect(row).toBeCloseTo(wide, 6);
  });

  test('boards that run away from the house have it at their left', () => {
    expect(of({ 'Boards run': 'away from the house' }).alt).toContain('house at the left');
  });

  test('a sliver and a row too few look wrong', () => {
    expect(of({ 'Frame width': '11 ft 9 in' }).wrong.join(' ')).toContain('sliver');
    expect(of({ Rows: '20 rows' }).wrong.join(' ')).toContain('bare');
  });
});

describe('the frame', () => {
  test('one beam on a ledger, two where it stands free', () => {
    expect(drawn('deck-framing.md', 'Posts', {})).toMatchObject({ wrong: [] });
    const free = drawn('deck-framing.md', 'Posts', { Attached: 'no' });
    expect(free.wrong).toEqual([]);
    expect(free.alt).toContain('free-standing');
    expect(free.alt).toContain('2 beams');
  });
});

describe('the railing', () => {
  test('a level run and a stair run', () => {
    expect(drawn('railing.md', 'Drawn gap', {})).toMatchObject({ wrong: [] });
    const stair = drawn('railing.md', 'Drawn gap', { 'Drawn run': 'stair left' });
    expect(stair.wrong).toEqual([]);
    expect(stair.alt).toContain('climbing 30 in');
  });

  test('a baluster too few looks wrong', () => {
    const few = drawn('railing.md', 'Drawn gap', { 'Runs: balusters': '11 balusters' });
    expect(few.wrong.join(' ')).toContain('is not under 4 in');
  });
});

describe('the flight', () => {
  const of = (written: Written) => drawn('steps.md', 'Total run', written);
  const left = (flight: Drawing) =>
    (flight.chains.find(({ side }) => side === 'left')?.stops ?? []).toSorted((a, b) => b - a).map((at) => -at);

  test.each<[string, Written]>([
    ['risers that are no whole sixteenths', { 'Frame height': '47 in', 'Finish below': '2 in' }],
    ['metres', { 'Frame height': '1.2 m', 'Finish below': '20 mm' }],
    ['one riser', { 'Frame height': '6 in', 'Finish below': '0 in' }],
  ])('%s, laid out by the marks, ends at the floor with nothing wrong', (_, written) => {
    const flight = of(written);
    expect(flight.wrong).toEqual([]);
    expect(flight.shapes.filter(({ kind }) => kind === 'path').filter((s) => 'line' in s && s.line === 'wrong')).toEqual([]);
  });

  test('three boxes are drawn as high as their boards, and the last as what is left', () => {
    const flight = of({ 'Built of': 'boxes', 'Frame height': '21 in', 'Finish below': '0 in' });
    expect(left(flight)).toEqual([0, 8.75, 17.5, 22]);
    expect(flight.wrong).toEqual(['The risers are not equal: 4 1/4 in between the least and the greatest.']);
  });

  test('boards of another thickness than the cuts were made for still look wrong', () => {
    const flight = of({ 'Tread board': '5/4x6' });
    expect(flight.wrong.join(' ')).toContain('The risers are not equal');
  });
});

test.each([
  ['slab.md', 'Slab area', { 'Bays: wall': '0 ft' }],
  ['landing.md', 'Landing area', { 'Bays: wall': '0 ft' }],
])('%s draws an isolation joint only where one is priced', (file, cell, written) => {
  const says = (given: Written) => drawn(file, cell, given).key.map(({ text }) => text).join('; ');
  expect(openedWith(file, written).shown('Isolation joint')).toBe('$0.00');
  expect(says(written)).not.toContain('isolation');
  expect(openedWith(file, {}).shown('Isolation joint')).not.toBe('$0.00');
  expect(says({})).toContain('isolation');
});
