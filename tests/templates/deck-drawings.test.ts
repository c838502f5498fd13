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
