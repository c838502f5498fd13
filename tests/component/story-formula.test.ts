// Writing a formula in place: what is read, offered, kept and left.
import { beforeEach, describe, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/ui/story-formula.ts';
import type { Session } from '../../src/ui/session.ts';
import {
  SMALL_JOB,
  axeFindings,
  button,
  cellOf,
  drawn,
  found,
  idOf,
  sessionOn,
  settled,
  shownOf,
  wordsOf,
} from './drawn.ts';

let session: Session;
let editor: HTMLElementTagNameMap['story-formula'];

async function open(name: string): Promise<void> {
  document.body.replaceChildren();
  session = sessionOn(SMALL_JOB);
  session.write({ kind: 'formula', cell: idOf(session, name) });
  editor = await drawn('story-formula', { session, cell: cellOf(session, name) });
}

async function write(text: string): Promise<void> {
  await userEvent.fill(found(editor, 'input'), text);
  await settled(editor);
}

const list = (): string[] =>
  [...(editor.shadowRoot?.querySelectorAll('[role=option] span:first-child') ?? [])].map(
    (one) => one.textContent ?? '',
  );

describe('writing a formula', () => {
  beforeEach(() => open('Bags to buy'));

  test('is accessible, with the list closed and open, with problems', async () => {
    expect(await axeFindings(editor)).toEqual([]);
    await write('slab');
    expect(list().length).toBeGreaterThan(1);
    expect(await axeFindings(editor)).toEqual([]);
    await write('slab volume plus bag price');
    expect(await axeFindings(editor)).toEqual([]);
  });

  test('throws nothing when another notebook is opened meanwhile', async () => {
    const other = sessionOn('# Other\n\n## Gate\n\n- Width: 3 ft\n');
    expect(other.cell(cellOf(session, 'Bags to buy').id)).toBe(null);
    session.open(other.door, other.asides);
    editor.requestUpdate();
    await expect(editor.updateComplete).resolves.toBe(true);
    expect(session.writing).toBe(null);
  });

  test('says how it is read and what it comes to while it is typed', async () => {
    await write('slab volume plus 20% waste, in bags of bag yield');
    const said = wordsOf(found(editor, '.said'));
    expect(said).toMatch(/^read as .*slab volume.* 43 bags$/);
    expect(shownOf(session, 'Bags to buy')).toBe('40 bags');
  });

  test('ties names and amounts under the words, and the mirror says what the line says', async () => {
    await write('slab volume plus 20% waste');
    const mirror = found(editor, '.mirror');
    expect(mirror.textContent).toBe('slab volume plus 20% waste');
    expect(found(mirror, '.name').textContent).toBe('slab volume');
    expect(found(mirror, '.amount').textContent).toMatch(/^20%/);
  });

  test('echoes a length in the other notation', async () => {
    await open('Slab length');
    await write('10.8 ft');
    expect(wordsOf(found(editor, '.said'))).toContain('10 ft 9 5/8 in, a hair shy');
  });

  test('offers names that go on from what is typed, the own part first', async () => {
    await write('slab v');
    expect(list()).toEqual(['slab volume']);
    await userEvent.keyboard('{ArrowDown}{Enter}');
    expect(found<HTMLInputElement>(editor, 'input').value).toBe('slab volume');
    expect(list()).toEqual([]);
  });

  test('offers units after a number', async () => {
    await write('12 sq');
    expect(list()).toContain('sq ft');
  });

  test('offers nothing once a word is whole, until one asks', async () => {
    await open('Slab length');
    await write('12 in');
    expect(list()).toEqual([]);
    await userEvent.keyboard('{ArrowDown}');
    await settled(editor);
    expect(list()).toContain('sq in');
    await userEvent.keyboard('{Escape}');
    await settled(editor);
    expect(list()).toEqual([]);
    expect(session.writing).not.toBeNull();
  });

  test('lays the list clear of what was read and of Keep and Leave', async () => {
    await write('slab');
    const box = found(editor, '.list').getBoundingClientRect();
    for (const part of ['.field', '.said', '.acts']) {
      const { top, bottom } = found(editor, part).getBoundingClientRect();
      expect(bottom <= box.top || box.bottom <= top).toBe(true);
    }
  });

  test('begins with what was typed to open it', async () => {
    document.body.replaceChildren();
    const cell = cellOf(session, 'Slab length');
    session.write({ kind: 'formula', cell: cell.id, typed: '9' });
    editor = await drawn('story-formula', { session, cell, typed: '9' });
    await userEvent.keyboard(' ft{Enter}');
    expect(shownOf(session, 'Slab length')).toBe('9 ft');
  });

  test('keeps the ends of a range beside an amount that is typed over it', async () => {
    document.body.replaceChildren();
    session = sessionOn('## Ground\n\n- Digging: 13 hours, 12 at best, 16 at worst\n');
    const cell = cellOf(session, 'Digging');
    session.write({ kind: 'formula', cell: cell.id, typed: '1' });
    editor = await drawn('story-formula', { session, cell, typed: '1' });
    await userEvent.keyboard('4 hours{Enter}');
    expect(session.door.state(cell.id).input.formula).toBe(
      '14 hours, 12 hours at best, 16 hours at worst',
    );
    expect(shownOf(session, 'Digging')).toBe('14 hours');
  });

  test('keeps a range that is typed short in words', async () => {
    document.body.replaceChildren();
    session = sessionOn('## Ground\n\n- Digging: 13 hours\n');
    const cell = cellOf(session, 'Digging');
    session.write({ kind: 'formula', cell: cell.id, typed: '1' });
    editor = await drawn('story-formula', { session, cell, typed: '1' });
    await userEvent.keyboard('2 to 16 hours{Enter}');
    expect(session.door.state(cell.id).input.formula).toBe('12 hours at best, 16 hours at worst');
  });

  test('marks the option that Enter takes for a screen reader', async () => {
    await write('slab');
    await userEvent.keyboard('{ArrowDown}{ArrowDown}');
    await settled(editor);
    const input = found(editor, 'input');
    const marked = input.getAttribute('aria-activedescendant') ?? '';
    expect(editor.shadowRoot?.getElementById(marked)?.getAttribute('aria-selected')).toBe('true');
  });

  test('Enter keeps', async () => {
    await write('slab volume plus 20% waste, in bags of bag yield');
    await userEvent.keyboard('{Enter}');
    expect(shownOf(session, 'Bags to buy')).toBe('43 bags');
    expect(session.writing).toBeNull();
  });

  test('Esc leaves it as it was', async () => {
    await write('12');
    await userEvent.keyboard('{Escape}');
    expect(cellOf(session, 'Bags to buy').formula).toMatch(/^slab volume plus waste/);
    expect(session.writing).toBeNull();
    expect(session.door.canUndo()).toBeNull();
  });

  test('Tab keeps and goes on to the next cell, Shift Tab to the one before', async () => {
    await open('Slab length');
    await write('14 ft');
    await userEvent.keyboard('{Tab}');
    expect(shownOf(session, 'Slab length')).toBe('14 ft');
    expect(session.writing).toEqual({ kind: 'formula', cell: idOf(session, 'Slab width') });
    await open('Slab width');
    await userEvent.keyboard('{Shift>}{Tab}{/Shift}');
    expect(session.writing).toEqual({ kind: 'formula', cell: idOf(session, 'Slab length') });
  });

  test('words a problem and mends it with a button or a key', async () => {
    await write('slab volum plus waste');
    expect(wordsOf(found(editor, '.problem'))).toMatch(/slab volum.*slab volume/);
    await userEvent.keyboard('{Alt>}1{/Alt}');
    expect(found<HTMLInputElement>(editor, 'input').value).toBe('slab volume plus waste');
    await write('slab volum plus waste');
    button(editor, 'slab volume').click();
    await settled(editor);
    expect(found<HTMLInputElement>(editor, 'input').value).toBe('slab volume plus waste');
  });

  test('an amount over a formula is set by hand and the formula stays', async () => {
    await write('45 bags');
    expect(wordsOf(found(editor, '.acts'))).toContain('Set by hand, keep the formula');
    await userEvent.keyboard('{Enter}');
    expect(shownOf(session, 'Bags to buy')).toBe('45 bags');
    expect(cellOf(session, 'Bags to buy').formula).toMatch(/^slab volume plus waste/);
  });

  test('an amount replaces the formula only when that is chosen', async () => {
    await write('45 bags');
    button(editor, 'Replace the formula').click();
    expect(cellOf(session, 'Bags to buy').formula).toBe('45 bags');
  });

  test('an amount over a given is simply the new amount', async () => {
    await open('Slab length');
    await write('14 ft');
    expect(wordsOf(found(editor, '.acts'))).not.toContain('Set by hand');
  });

  test('going on to something else on the page keeps what was written', async () => {
    const other = document.createElement('button');
    document.body.append(other);
    await write('slab volume in bags of bag yield');
    other.focus();
    await expect.poll(() => session.writing).toBeNull();
    expect(shownOf(session, 'Bags to buy')).toBe('36 bags');
  });

  test('nothing is offered or kept in the middle of a composition', async () => {
    const input = found<HTMLInputElement>(editor, 'input');
    input.value = 'slab v';
    input.dispatchEvent(new InputEvent('input', { isComposing: true, bubbles: true }));
    await settled(editor);
    expect(list()).toEqual([]);
    input.dispatchEvent(
      new KeyboardEvent('keydown', { key: 'Enter', isComposing: true, bubbles: true }),
    );
    expect(session.writing).not.toBeNull();
    input.dispatchEvent(new CompositionEvent('compositionend'));
    await settled(editor);
    expect(list()).toEqual(['slab volume']);
  });

  test('a pasted line break becomes a blank', async () => {
    const input = found<HTMLInputElement>(editor, 'input');
    input.select();
    document.execCommand('insertText', false, 'slab volume\nplus waste');
    await settled(editor);
    expect(input.value).not.toContain('\n');
    expect(input.value).toMatch(/^slab volume\s*plus waste$/);
  });
});

describe('while the caret stands in a phrase', () => {
  beforeEach(() => open('Bags to buy'));

  const slot = (): string => wordsOf(found(editor, '.slot'));

  test('one line says what the slot needs, with an example, and follows the caret', async () => {
    await write('joists every ');
    expect(slot()).toContain(
      'the spacing from one to the next as in joists every 16 in along 12 ft',
    );
    await write('joists every 16 in along 12 ft');
    expect(slot()).toContain('the run along which they stand');
    found<HTMLInputElement>(editor, 'input').setSelectionRange(14, 14);
    await userEvent.keyboard('{ArrowRight}');
    await settled(editor);
    expect(slot()).toContain('the spacing from one to the next');
    expect(await axeFindings(editor)).toEqual([]);
    await write('slab length');
    expect(slot()).toBe('');
  });

  test('it is read out: a live region whose words alone are heard', async () => {
    await write('diagonal of 3 ft and ');
    const line = found(editor, '.slot');
    expect(line.getAttribute('aria-live')).toBe('polite');
    expect(found(line, '.shape').getAttribute('aria-hidden')).toBe('true');
  });

  test('lengths are offered first where a length is needed, and Enter still keeps', async () => {
    await write('joists every 16 in along ');
    expect(list()).toEqual(['slab length', 'slab width', 'thickness']);
    await write('joists every 16 in along slab length');
    await userEvent.keyboard('{Enter}');
    expect(shownOf(session, 'Bags to buy')).toBe('10 joists');
  });

  test('an open list takes no Enter that nobody gave it', async () => {
    await write('slab volume plus waste');
    await write('slab volume plus ');
    expect(list()).toContain('waste');
    await write('slab volume plus waste, in bags of bag yield');
    await userEvent.keyboard('{Enter}');
    expect(session.writing).toBeNull();
  });

  test('a clause that was begun is taken with its first slot open', async () => {
    await write('slab volume in b');
    expect(list()).toContain('in bags of …');
    await userEvent.keyboard('{ArrowDown}{Enter}');
    await settled(editor);
    expect(found<HTMLInputElement>(editor, 'input').value).toBe('slab volume in bags of ');
    await expect.poll(list).toEqual(['bag yield', 'slab volume']);
    await userEvent.click(found(editor, '[role=option]'));
    await settled(editor);
    expect(found<HTMLInputElement>(editor, 'input').value).toBe('slab volume in bags of bag yield');
  });

  test('clauses come with what they give', async () => {
    await write('slab volume ');
    await userEvent.keyboard('{ArrowDown}');
    await settled(editor);
    const said = wordsOf(found(editor, '.list'));
    expect(said).toContain('in cubic yards gives 0.5926 cubic yards');
    expect(said).toContain('16 cubic feet in bags of 0.45 cubic feet: 36 bags');
    expect(await axeFindings(editor)).toEqual([]);
  });
});
