// The tape: it slides, everything follows, and one change or none is left.
import { beforeEach, describe, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/ui/story-tape.ts';
import type { Session } from '../../src/ui/session.ts';
import {
  SMALL_JOB,
  axeFindings,
  button,
  cellOf,
  drawn,
  found,
  framesOf,
  idOf,
  sessionOn,
  shownOf,
  wordsOf,
} from './drawn.ts';

let session: Session;
let tape: HTMLElementTagNameMap['story-tape'];

const slider = (): HTMLElement => found(tape, '[role=slider]');
const price = (): string => session.door.costs().total.price;

async function open(name: string, text = SMALL_JOB): Promise<void> {
  document.body.replaceChildren();
  session = sessionOn(text);
  session.openTape(idOf(session, name));
  tape = await drawn('story-tape', { session, cell: cellOf(session, name) });
}

/** Moves are worked once a frame. */
const frames = (): Promise<void> => framesOf(tape);

describe('a tape', () => {
  beforeEach(() => open('Thickness'));

  test('is accessible', async () => {
    expect(await axeFindings(tape)).toEqual([]);
  });

  test('lies between the sensible limits and says where it stands', () => {
    expect(found(tape, '.low').textContent).toBe('3 1/2 in');
    expect(found(tape, '.high').textContent).toBe('8 in');
    expect(slider().getAttribute('aria-valuetext')).toMatch(/^4 in\. price \$259\.20, as it was/);
  });

  test('moves by keys, and totals follow with the difference from the start', async () => {
    expect(price()).toBe('259.20');
    for (let step = 0; step < 16; step++) await userEvent.keyboard('{ArrowRight}');
    await frames();
    expect(shownOf(session, 'Thickness')).toBe('5 in');
    expect(price()).toBe('317.52');
    expect(wordsOf(tape)).toContain('price $317.52, $58.32 more');
  });

  test('goes to its ends with Home and End and never past them', async () => {
    await userEvent.keyboard('{End}{ArrowRight}');
    await frames();
    expect(shownOf(session, 'Thickness')).toBe('8 in');
    await userEvent.keyboard('{Home}{ArrowLeft}');
    await frames();
    expect(shownOf(session, 'Thickness')).toBe('3 1/2 in');
  });

  test('Enter keeps one change, however far it slid', async () => {
    for (let step = 0; step < 5; step++) {
      await userEvent.keyboard('{ArrowRight}');
      await frames();
    }
    await userEvent.keyboard('{Enter}');
    expect(session.trial).toBeNull();
    expect(shownOf(session, 'Thickness')).toBe('4 5/16 in');
    session.undo();
    expect(shownOf(session, 'Thickness')).toBe('4 in');
    expect(session.door.canUndo()).toBeNull();
  });

  test('Enter right after a move keeps what the tape shows', async () => {
    await userEvent.keyboard('{ArrowRight}{Enter}');
    expect(shownOf(session, 'Thickness')).toBe('4 1/16 in');
  });

  test('Esc goes back to where it began and leaves nothing to undo', async () => {
    await userEvent.keyboard('{ArrowRight}{ArrowRight}');
    await frames();
    await userEvent.keyboard('{Escape}');
    expect(shownOf(session, 'Thickness')).toBe('4 in');
    expect(price()).toBe('259.20');
    expect(session.door.canUndo()).toBeNull();
    expect(session.door.notebook.text).toBe(SMALL_JOB);
  });

  test('is dragged, and the pencil tick stays where it began', async () => {
    const box = slider().getBoundingClientRect();
    const tick = found(tape, '.began').getAttribute('x1');
    const at = (share: number) => ({
      pointerId: 1,
      clientX: box.left + box.width * share,
      clientY: box.top + 20,
      bubbles: true,
    });
    // A pointer made by a test can't be captured, so only the press is tried here.
    slider().setPointerCapture = () => undefined;
    slider().dispatchEvent(new PointerEvent('pointerdown', at(0.98)));
    await frames();
    expect(shownOf(session, 'Thickness')).toBe('8 in');
    expect(found(tape, '.began').getAttribute('x1')).toBe(tick);
  });

  test('typing an amount goes back to the start and on in the line', async () => {
    await userEvent.keyboard('{ArrowRight}');
    await frames();
    await userEvent.keyboard('5');
    expect(shownOf(session, 'Thickness')).toBe('4 in');
    const cell = idOf(session, 'Thickness');
    expect(session.writing).toEqual({ kind: 'formula', cell, typed: '5' });
    expect(session.door.canUndo()).toBeNull();
  });

  test('has buttons for whoever has no keys', async () => {
    await userEvent.keyboard('{ArrowRight}');
    await frames();
    button(tape, 'Back to 4 in').click();
    expect(shownOf(session, 'Thickness')).toBe('4 in');
    expect(session.trial).toBeNull();
    await open('Thickness');
    button(tape, 'Type it').click();
    expect(session.writing).toEqual({ kind: 'formula', cell: idOf(session, 'Thickness') });
  });

  test.each([
    ['12 ft 6 in', '{ArrowRight}', '12 ft 7 in'],
    ['$6.48 per bag', '{ArrowRight}', '$6.50 per bag'],
    ['10%', '{ArrowRight}', '10.1%'],
    ['0.45 cubic feet per bag', '{ArrowRight}', '0.455 cubic feet per bag'],
    ['14 bags', '{ArrowLeft}', '13 bags'],
    ['40', '{ArrowRight}', '41'],
  ])('slides %s around itself where no limits are said', async (amount, key, after) => {
    await open('Size', `## P\n\n- Size: ${amount}\n  - from: a test\n`);
    await userEvent.keyboard(key);
    await frames();
    expect(shownOf(session, 'Size')).toBe(after);
    expect(cellOf(session, 'Size').formula).toBe(after);
    expect(wordsOf(tape)).toContain('no sensible limits said');
  });

  describe('of a range', () => {
    const RANGE = `## Ground

- Digging: 13 hours, 12 at best, 16 at worst
  - from: own hours
  - sensible: 8 hours up to 40 hours
- Labour: digging at $50 per hour
  - cost: labour
`;
    const formula = (): string => cellOf(session, 'Digging').formula;

    test('slides the plain value between its ends, which stay, and says so', async () => {
      await open('Digging', RANGE);
      expect(await axeFindings(tape)).toEqual([]);
      expect([found(tape, '.low').textContent, found(tape, '.high').textContent]).toEqual([
        '12 hours',
        '16 hours',
      ]);
      expect(wordsOf(tape)).toContain('between 12 hours at best and 16 hours at worst, which stay');
      await userEvent.keyboard('{End}{ArrowRight}');
      await frames();
      expect([shownOf(session, 'Digging'), price()]).toEqual(['16 hours', '800.00']);
      expect(formula()).toBe('16 hours, 12 hours at best, 16 hours at worst');
      await userEvent.keyboard('{Home}{ArrowLeft}{Enter}');
      expect(formula()).toBe('12 hours, 12 hours at best, 16 hours at worst');
      session.undo();
      expect(formula()).toBe('13 hours, 12 at best, 16 at worst');
      expect(session.door.canUndo()).toBeNull();
    });

    test('without a first value begins in the middle and comes back to it', async () => {
      await open('Digging', RANGE.replace('13 hours, 12 at best, 16 at worst', '12 to 16 hours'));
      expect(slider().getAttribute('aria-valuetext')).toMatch(/^14 hours\. price \$700\.00/);
      await userEvent.keyboard('{ArrowRight}');
      await frames();
      expect(formula()).toMatch(/^14\.\d+ hours, 12 hours at best, 16 hours at worst$/);
      await userEvent.keyboard('{ArrowLeft}{Enter}');
      expect(formula()).toBe('12 to 16 hours');
    });

    test('that leaves nothing open stays where it is', async () => {
      await open('Digging', RANGE.replace('12 at best, 16 at worst', '13 at best, 13 at worst'));
      await userEvent.keyboard('{ArrowRight}{ArrowRight}');
      await frames();
      expect(shownOf(session, 'Digging')).toBe('13 hours');
      expect(await axeFindings(tape)).toEqual([]);
    });
  });

  test('has nothing to slide for a given not yet known', async () => {
    await open('Size', '## P\n\n- Size: ?\n');
    expect(wordsOf(tape)).toContain('There is nothing to slide here yet');
  });
});
