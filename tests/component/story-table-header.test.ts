// The header of a table: columns named, given what they work, added, moved and removed, by keyboard and by mouse.
import { beforeEach, describe, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
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
  settled,
  shownOf,
  wordsOf,
} from './drawn.ts';

const BAYS = `# Kestrel Court

## Landing

- Thickness: 4 in
  - from: chosen
- Slab bays:

  | bay   | length | width | volume: length by width by thickness |
  |-------|--------|-------|--------------------------------------|
  | north | 6 ft   | 4 ft  |                                      |
  | south | 6 ft   | 3 ft  |                                      |

  - from: drawing 2, invented
- Total: total of volume in slab bays
`;

let session: Session;
let part: HTMLElementTagNameMap['story-part'];

function head(column: number): HTMLElement {
  const cells = everyElement(part).filter((one) => one.matches('thead th'));
  return cells[column] as HTMLElement;
}

const columns = (): readonly (string | undefined)[] =>
  cellOf(session, 'Slab bays').table?.columns.map(({ name }) => name) ?? [];

const formulaOf = (column: number): string | null | undefined =>
  cellOf(session, 'Slab bays').table?.columns[column]?.formula;

async function press(keys: string): Promise<void> {
  await userEvent.keyboard(keys);
  await framesOf(part);
}

beforeEach(async () => {
  session = sessionOn(BAYS);
  const content = session.door.notebook.parts.find(({ name }) => name === 'Landing');
  if (!content) throw new Error('no part called Landing');
  part = await drawn('story-part', { session, content });
  session.listen(() => {
    part.content = session.part(part.content.key) ?? part.content;
  });
});

describe('the header of a table', () => {
  test('is reached from the rows with an arrow, is accessible, and says what can be done with a column', async () => {
    found(part, 'tbody td').focus();
    await press('{ArrowUp}');
    expect(focusedElement()).toBe(head(1));
    expect(wordsOf(found(part, '.under'))).toContain('Rename bay');
    expect(await axeFindings(part)).toEqual([]);
    await press('{Insert}');
    expect(await axeFindings(part)).toEqual([]);
  });

  test('a column is renamed, what names it follows, and undo comes back to it', async () => {
    head(4).focus();
    await press('{F2}');
    await press('room{Enter}');
    expect(columns()).toEqual(['bay', 'length', 'width', 'room']);
    expect(session.cell(idOf(session, 'Total'))?.formula).toBe('total of room in slab bays');
    expect(focusedElement()).toBe(head(4));
    found(part, 'tbody td').focus();
    session.undo();
    await framesOf(part);
    expect(columns()).toEqual(['bay', 'length', 'width', 'volume']);
    expect(focusedElement()).toBe(head(4));
    expect(session.door.notebook.text).toBe(BAYS);
  });

  test('what had to be written anew for a name is told', async () => {
    head(1).focus();
    await press('{F2}');
    await press('thickness{Enter}');
    expect(session.notice?.text).toBe(
      'Renamed bay in Slab bays to thickness; now written "Landing thickness" in Slab bays',
    );
    expect(shownOf(session, 'Total')).toBe('14 cubic feet');
  });

  test('a name that is taken is refused, and stays to be mended', async () => {
    head(1).focus();
    await press('{F2}');
    await press('Width{Enter}');
    expect(session.notice?.text).toBe('"Slab bays" already has a column called "width".');
    expect(focusedElement()?.getAttribute('aria-label')).toBe('Name of the column');
    await press('{Escape}');
    expect(focusedElement()).toBe(head(1));
    expect(session.door.notebook.text).toBe(BAYS);
  });

  test('a name that is being written is kept when another cell is pressed', async () => {
    head(1).focus();
    await press('{F2}');
    await press('slab');
    const cell = everyElement(part).find((one) => one.matches('tbody td')) as HTMLElement;
    await userEvent.click(cell);
    await framesOf(part);
    expect(columns()[0]).toBe('slab');
    expect(focusedElement()?.getAttribute('aria-label')).toBe('slab, row 1');
  });

  test('what a column works is read while it is written, mended with one key, and changes every row', async () => {
    head(4).focus();
    await press('{Enter}');
    const line = found(part, 'table-line');
    expect(focusedElement()?.getAttribute('aria-label')).toBe('What volume works in every row');
    await userEvent.keyboard('{End} times 2');
    await settled(part);
    expect(wordsOf(found(line, '.said'))).toContain('16 cubic feet in the first row');
    await userEvent.keyboard(' plus');
    await settled(part);
    expect(wordsOf(found(line, '.problem'))).toContain('Something is missing here.');
    await press('{Alt>}1{/Alt}');
    await press('{Enter}');
    expect(formulaOf(3)).toBe('length by width by thickness times 2');
    expect(shownOf(session, 'Total')).toBe('28 cubic feet');
    expect(focusedElement()).toBe(head(4));
  });

  test('a column comes in after this one or before it, with what it works', async () => {
    head(2).focus();
    await press('{Insert}');
    await press('area: length by width{Enter}');
    expect(columns()).toEqual(['bay', 'length', 'area', 'width', 'volume']);
    expect(formulaOf(2)).toBe('length by width');
    expect(focusedElement()).toBe(head(3));
    await press('{Shift>}{Insert}{/Shift}');
    await press('pour{Enter}');
    expect(columns()).toEqual(['bay', 'length', 'pour', 'area', 'width', 'volume']);
    button(part, 'Add one before it').click();
    await framesOf(part);
    await press('{Escape}');
    expect(columns()).toHaveLength(6);
    session.undo();
    session.undo();
    expect(session.door.notebook.text).toBe(BAYS);
  });

  test('a column moves with Alt and the arrows, and with the buttons, and the keyboard goes along', async () => {
    head(4).focus();
    await press('{Alt>}{ArrowLeft}{/Alt}');
    expect(columns()).toEqual(['bay', 'length', 'volume', 'width']);
    expect(focusedElement()).toBe(head(3));
    button(part, 'Move it right').click();
    await framesOf(part);
    expect(columns()).toEqual(['bay', 'length', 'width', 'volume']);
    expect(session.door.notebook.text).toBe(BAYS);
    session.undo();
    await framesOf(part);
    expect(columns()).toEqual(['bay', 'length', 'volume', 'width']);
  });

  test('a column is removed on a sheet of its own that the page lays out', async () => {
    const asked: unknown[] = [];
    part.addEventListener('about', ({ detail }: CustomEventInit) => asked.push(detail));
    head(2).focus();
    await press('{Control>}{Delete}{/Control}');
    button(part, 'Remove length').click();
    const about = { sheet: 'removing-column', cell: idOf(session, 'Slab bays'), column: 1 };
    expect(asked).toEqual([about, about]);
    expect(session.door.notebook.text).toBe(BAYS);
  });
});

describe('a row’s line', () => {
  const at = (row: number, column: number): HTMLElement =>
    everyElement(part).filter((one) => one.matches(`tr[data-row="${row}"] td`))[
      column
    ] as HTMLElement;

  test('offers the row’s own columns with their values there, then names of the notebook', async () => {
    at(1, 3).focus();
    await press('le');
    const options = everyElement(part).filter((one) => one.matches('[role="option"]'));
    expect(wordsOf(options[0])).toBe('length 6 ft · this row');
    await press('{ArrowDown}{Enter}');
    await press(' by thic');
    await press('{ArrowDown}{Enter}');
    expect((focusedElement() as HTMLInputElement).value).toBe('length by thickness');
    expect(wordsOf(found(found(part, 'table-line'), '.said'))).toContain('2 sq ft');
    await press('{Escape}');
    expect(session.door.notebook.text).toBe(BAYS);
  });

  test('in a column of words they are words, and those that stand there are offered', async () => {
    at(1, 0).focus();
    await press('no');
    expect(wordsOf(found(part, '[role="option"]'))).toBe('north');
    expect(everyElement(part).some((one) => one.matches('.problem'))).toBe(false);
    await press('{ArrowDown}{Enter}');
    await press('{Enter}');
    expect(cellOf(session, 'Slab bays').table?.rows[1]?.texts[0]).toBe('north');
  });

  test('what can’t be read is mended with one key', async () => {
    at(0, 1).focus();
    await press('6 ftt');
    const [mend] = everyElement(part).filter((one) => one.matches('.problem button'));
    expect(wordsOf(mend)).toContain('Alt 1');
    const mended = mend?.getAttribute('title');
    await press('{Alt>}1{/Alt}');
    expect((focusedElement() as HTMLInputElement).value).toBe(mended);
    expect(everyElement(part).some((one) => one.matches('.problem'))).toBe(false);
  });

  test('Tab and Shift Tab go on to the next cell and back, Ctrl Enter to the row below, and to a new one at the end', async () => {
    at(0, 1).focus();
    await press('{Enter}');
    await press('7 ft{Tab}');
    expect(focusedElement()?.getAttribute('aria-label')).toBe('width, row 1');
    await press('{Shift>}{Tab}{/Shift}');
    expect(focusedElement()?.getAttribute('aria-label')).toBe('length, row 1');
    await press('{Control>}{Enter}{/Control}');
    expect(focusedElement()?.getAttribute('aria-label')).toBe('length, row 2');
    await press('{Control>}{Enter}{/Control}');
    expect(focusedElement()?.getAttribute('aria-label')).toBe('length, row 3');
    await press('5 ft{Enter}');
    expect(cellOf(session, 'Slab bays').table?.rows.map(({ texts }) => texts[1])).toEqual([
      '7 ft',
      '6 ft',
      '5 ft',
    ]);
    expect(focusedElement()).toBe(at(2, 1));
  });

  test('the cell that has the keyboard is the one that is worked, wherever its row goes', async () => {
    at(0, 3).focus();
    await settled(part);
    expect(session.chosen).toBe(idOf(session, 'Slab bays'));
    const id = session.within?.id;
    expect(session.door.state(id ?? 0).input.name).toBe('Slab bays: north: volume');
    await press('{Alt>}{ArrowDown}{/Alt}');
    expect(session.within).toMatchObject({ id, row: 1, column: 3 });
    session.choose(idOf(session, 'Slab bays'));
    expect(session.within).toBeNull();
  });
});
