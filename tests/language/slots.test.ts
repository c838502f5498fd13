// Which slot the caret stands in: the caret is written as a bar.
import { describe, expect, test } from 'vitest';
import { PHRASE_SHAPES } from '../../src/language/phrase-shapes.ts';
import { slotAt } from '../../src/language/slots.ts';
import { Estimate } from '../../src/notebook/estimate.ts';

function slotIn(marked: string): string | null {
  const caret = marked.indexOf('|');
  const found = slotAt(marked.replace('|', ''), caret);
  return found && `${found.shape.say} / ${found.slot.say}`;
}

describe('the slot under the caret', () => {
  test.each([
    ['fewest |', 'what is set side by side: balusters, pickets, boards'],
    ['fewest balusters of |', 'how wide one of them is'],
    ['fewest balusters of 1 1/2 in| across', 'how wide one of them is'],
    ['fewest balusters of 1 1/2 in across |', 'the clear opening that they fill'],
    [
      'fewest balusters of 1 1/2 in across (rail length minus |',
      'the clear opening that they fill',
    ],
    ['fewest balusters of 1 1/2 in across 72 in with |', 'the clear opening that they fill'],
    [
      'fewest balusters of 1 1/2 in across 72 in with gaps under |4 in',
      'the gap that none may reach',
    ],
    ['joists every |', 'the spacing from one to the next'],
    ['joists every 16 in along |', 'the run along which they stand, one at both ends'],
    ['posts every 8 ft around |', 'the whole way around, back to the first'],
    ['5 pieces of |', 'how long each piece is'],
    ['5 pieces of 9 ft from |', 'the stock they are cut from: 16 ft boards'],
    ['slab volume in bags of |', 'what one bag holds or yields; whole bags are counted'],
    ['slab volume, rounded up to the next |', 'the step: one whole unit or a part of one'],
    ['bags at |', 'what one costs, how much an hour does, or how much there is in each'],
    ['joists every 16 in along diagonal of |', 'one side'],
    ['(joists every |) times 2', 'the spacing from one to the next'],
    ['read |', 'the column whose figure is wanted'],
    ['read span off |', 'the table'],
    ['read span off joist spans for |', 'a column and what must stand in it; more after commas'],
    ['6 in where |', 'when this holds: thickness is less than 4 in'],
    ['6 in where thickness is less than 4 in, otherwise |', 'what it is else'],
    ['total of $5, |', 'another amount that measures the same'],
  ])('of %s', (marked, say) => {
    expect(slotIn(marked)?.split(' / ').at(-1)).toBe(say);
  });

  test.each([
    ['|'],
    ['slab length by |'],
    ['fewest|'],
    ['(joists every 16 in along 12 ft) |'],
    ['joists every 16 in along 12 ft times |'],
    ['bags at bag price plus |'],
    ['12 |'],
  ])('of %s there is none', (marked) => {
    expect(slotIn(marked)).toBeNull();
  });
});

describe('the phrases', () => {
  const estimate = new Estimate('# Job\n\n## Part\n\n- Cell: 1\n');
  const cell = estimate.notebook.parts.flatMap((p) => p.blocks).find((b) => b.kind === 'cell');

  test.each(PHRASE_SHAPES.filter(({ example }) => example !== null).map((s) => [s.say, s.example]))(
    '%s is worked in its example: %s',
    (_, example) => {
      const draft = estimate.draft(cell?.kind === 'cell' ? cell.cell.id : -1, example ?? '');
      expect(draft.reading.problems).toEqual([]);
      expect(draft.outcome.kind).toBe('value');
    },
  );

  test.each(PHRASE_SHAPES.map((s) => [s.say, s] as const))(
    'of %s every slot has its words',
    (say, { slots, example, like }) => {
      expect(say.split('…')).toHaveLength(slots.length + 1);
      expect(example ?? like).toBeTruthy();
    },
  );
});
