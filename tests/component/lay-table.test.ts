// Laying out a table: what is written or pasted, how it is read before it is kept, and where it comes to stand.
import { describe, expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../src/ui/story-part.ts';
import type { Session } from '../../src/ui/session.ts';
import {
  axeFindings,
  button,
  cellOf,
  drawn,
  everyElement,
  focusedElement,
  found,
  framesOf,
  idOf,
  sessionOn,
  wordsOf,
} from './drawn.ts';

const JOB = `# Kestrel Court

## Landing

- Thickness: 4 in
  - from: chosen
- Posts: ?
`;

let session: Session;
let part: HTMLElementTagNameMap['story-part'];

async function open(): Promise<void> {
  session = sessionOn(JOB);
  const content = session.door.notebook.parts.find(({ name }) => name === 'Landing');
  if (!content) throw new Error('no part called Landing');
  part = await drawn('story-part', { session, content });
  session.listen(() => {
    part.content = session.part(part.content.key) ?? part.content;
  });
}

async function press(keys: string): Promise<void> {
  await userEvent.keyboard(keys);
  await framesOf(part);
}

async function paste(text: string): Promise<void> {
  const clipboardData = new DataTransfer();
  clipboardData.setData('text/plain', text);
  focusedElement()?.dispatchEvent(
    new ClipboardEvent('paste', { clipboardData, bubbles: true, composed: true, cancelable: true }),
  );
  await framesOf(part);
}

describe('laying out a table', () => {
  test('is accessible, and works on a phone', async () => {
    await open();
    await page.viewport(390, 800);
    session.write({ kind: 'new-table', part: part.content.key, after: null });
    await framesOf(part);
    await press('Slab bays{Enter}bay, length{Enter}north, 6 ft');
    expect(await axeFindings(part)).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
  });

  test('goes by keyboard alone: a name, its columns, its rows; then the keyboard is in its first row', async () => {
    await open();
    session.write({ kind: 'new-table', part: part.content.key, after: idOf(session, 'Thickness') });
    await framesOf(part);
    await press('Slab bays{Enter}');
    await press('bay, length, width, area: length by width{Enter}north, 6 ft, 4 ft');
    expect(wordsOf(found(part, 'caption'))).toBe('4 columns, 1 row');
    await press('{Control>}{Enter}{/Control}');
    expect(wordsOf(focusedElement() as Element)).toBe('north');
    expect(session.door.notebook.text).toContain(
      '- Slab bays:\n\n  | bay   | length | width | area: length by width |\n',
    );
    expect(everyElement(part).some((one) => one.matches('lay-table'))).toBe(false);
    session.undo();
    expect(session.door.notebook.text).toBe(JOB);
  });

  test('says what keeps it from being laid out, and loses nothing of it', async () => {
    await open();
    session.write({ kind: 'new-table', part: part.content.key, after: null });
    await framesOf(part);
    button(part, 'Lay it out').click();
    await framesOf(part);
    expect(session.notice?.text).toContain('Name the columns in the first line');
    await press('Thickness{Enter}a, b');
    await press('{Control>}{Enter}{/Control}');
    expect(session.notice?.text).toBe('"Landing" already has a cell called "Thickness".');
    expect(found<HTMLTextAreaElement>(part, 'textarea').value).toBe('a, b');
    await press('{Escape}');
    expect(session.writing).toBeNull();
    expect(session.door.notebook.text).toBe(JOB);
  });

  test('rows of a sheet that are pasted where nothing stands yet are a table there', async () => {
    await open();
    session.write({ kind: 'formula', cell: idOf(session, 'Posts') });
    await framesOf(part);
    await paste('post\theight\ncorner\t4 ft\ngate\t5 kg\n');
    expect(wordsOf(found(part, 'caption'))).toBe('2 columns, 2 rows');
    await press('{Control>}{Enter}{/Control}');
    expect(cellOf(session, 'Posts').table?.rows.map(({ texts }) => texts)).toEqual([
      ['corner', '4 ft'],
      ['gate', ''],
    ]);
    expect(wordsOf(found(part, '.refused'))).toContain(
      '1 cell was not taken Row 2, height: “5 kg”. This column holds a length, and this is a weight.',
    );
    button(part, 'Put this away').click();
    await framesOf(part);
    expect(everyElement(part).some((one) => one.matches('.refused'))).toBe(false);
  });

  test('a cell that holds something is no place for one', async () => {
    await open();
    session.write({ kind: 'formula', cell: idOf(session, 'Thickness') });
    await framesOf(part);
    expect(() => button(part, 'Lay out a table here')).toThrow('no button says');
    session.write({ kind: 'formula', cell: idOf(session, 'Posts') });
    await framesOf(part);
    button(part, 'Lay out a table here').click();
    await framesOf(part);
    expect(focusedElement()?.tagName).toBe('TEXTAREA');
  });
});
