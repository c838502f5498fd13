// A table under its row: what it shows, written in place, rows added, moved and removed, text pasted.
import { beforeEach, describe, expect, test } from 'vitest';
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
  framesOf,
  found,
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
  | south | 6 ft   | 3 ft  | 7 cubic feet                         |
  | steps | 3 ft   | ?     |                                      |

  - from: drawing 2, invented
- Total: total of volume in slab bays
`;

let session: Session;
let part: HTMLElementTagNameMap['story-part'];

async function open(text = BAYS): Promise<void> {
  document.body.replaceChildren();
  session = sessionOn(text);
  const content = session.door.notebook.parts.find(({ name }) => name === 'Landing');
  if (!content) throw new Error('no part called Landing');
  part = await drawn('story-part', { session, content });
  session.listen(() => {
    part.content = session.part(part.content.key) ?? part.content;
  });
}

/** The cell in this row and column, counted from 1 as they are read. */
function at(row: number, column: number): HTMLElement {
  const line = everyElement(part).filter((one) => one.matches('tbody tr'))[row - 1];
  const cell = line?.querySelectorAll('td')[column - 1];
  if (!cell) throw new Error(`no cell at ${row}, ${column}`);
  return cell;
}

const lines = (): readonly Element[] =>
  everyElement(part).filter((one) => one.matches('tr[data-row]'));

async function openLong(): Promise<void> {
  const rows = Array.from({ length: 5000 }, (_, i) => `  | ${i + 1} ft |  |`).join('\n');
  await open(
    `# Long\n\n## Landing\n\n- Boards:\n\n  | run | twice: run times 2 |\n  |--|--|\n${rows}\n`,
  );
  await framesOf(part);
}

const bays = (): readonly (string | undefined)[] =>
  cellOf(session, 'Slab bays').table?.rows.map((row) => row.texts[0]) ?? [];

async function pasted(row: number, column: number, text: string): Promise<void> {
  at(row, column).focus();
  const clipboardData = new DataTransfer();
  clipboardData.setData('text/plain', text);
  at(row, column).dispatchEvent(
    new ClipboardEvent('paste', { clipboardData, bubbles: true, composed: true, cancelable: true }),
  );
  await settled(part);
}

describe('a range in a row', () => {
  beforeEach(() => open());

  test('is pasted whole, and shows its plain value with its two ends below it', async () => {
    await pasted(1, 2, '6 ft, 5 at best, 8 at worst');
    expect(at(1, 2).innerText.split(/\s*\n\s*/)).toEqual(['6 ft', '5 ft at best, 8 ft at worst']);
    expect(await axeFindings(part)).toEqual([]);
    expect(at(1, 4).innerText).toBe('8 cubic feet');
  });
});

describe('a table', () => {
  beforeEach(() => open());

  test('is accessible, also while a cell is written and on a phone', async () => {
    expect(await axeFindings(part)).toEqual([]);
    at(1, 2).focus();
    await userEvent.keyboard('{Enter}');
    await settled(part);
    expect(await axeFindings(part)).toEqual([]);
    await userEvent.keyboard('6 fff{Enter}');
    await pasted(3, 2, '3 ft\t4 ft\t\tmore');
    await page.viewport(390, 800);
    expect(await axeFindings(part)).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
  });

  test('shows values, the formula of a column, what is open, and what was set in a row', () => {
    expect(wordsOf(found(part, 'thead'))).toBe(
      'Row bay length width volume length by width by thickness',
    );
    expect(wordsOf(at(1, 4))).toBe('8 cubic feet');
    expect(wordsOf(at(2, 4))).toBe('7 cubic feet set in this row; its column: 6 cubic feet');
    expect(wordsOf(at(3, 3))).toBe('?');
    expect(getComputedStyle(at(1, 2)).textAlign).toBe('right');
    expect(getComputedStyle(at(1, 1)).textAlign).toBe('left');
  });

  test('a value is read while it is written, and the total that asks its column follows', async () => {
    const before = shownOf(session, 'Total');
    await userEvent.click(at(1, 2));
    await userEvent.keyboard('9 ft');
    await settled(part);
    expect(wordsOf(found(found(part, 'table-line'), '.said'))).toContain('9 ft');
    await userEvent.keyboard('{Enter}');
    await settled(part);
    expect(wordsOf(at(1, 4))).toBe('12 cubic feet');
    expect(before).toContain('15 cubic feet');
    expect(shownOf(session, 'Total')).toContain('19 cubic feet');
    expect(focusedElement()).toBe(at(1, 2));
    session.undo();
    await settled(part);
    expect(wordsOf(at(1, 4))).toBe('8 cubic feet');
    expect(session.door.notebook.text).toBe(BAYS);
  });

  test('follows a given outside it', async () => {
    session.apply((door) => door.setFormula(idOf(session, 'Thickness'), '6 in'));
    await settled(part);
    expect(wordsOf(at(1, 4))).toBe('12 cubic feet');
    expect(wordsOf(at(2, 4))).toContain('its column: 9 cubic feet');
  });

  test('Esc leaves, Tab goes on, arrow keys go from cell to cell', async () => {
    at(1, 2).focus();
    await userEvent.keyboard('5');
    await settled(part);
    await userEvent.keyboard(' ft{Escape}');
    await settled(part);
    expect(session.door.notebook.text).toBe(BAYS);
    await userEvent.keyboard('{ArrowDown}');
    await settled(part);
    await userEvent.keyboard('{ArrowRight}');
    await settled(part);
    expect(focusedElement()).toBe(at(2, 3));
    await userEvent.keyboard('{Enter}');
    await settled(part);
    await userEvent.keyboard('5 ft{Tab}');
    await settled(part);
    expect(focusedElement()?.getAttribute('aria-label')).toBe('volume, row 2');
    await userEvent.keyboard('{Delete}');
    await settled(part);
    expect(wordsOf(found(found(part, 'table-line'), '.said'))).toBe(
      'Left to its column: 10 cubic feet',
    );
    await userEvent.keyboard('{Enter}');
    await settled(part);
    expect(wordsOf(at(2, 4))).toBe('10 cubic feet');
  });

  test('what can’t be read is kept, ringed, and said', async () => {
    at(1, 2).focus();
    await userEvent.keyboard('{Enter}');
    await settled(part);
    await userEvent.keyboard('6 ftt{Enter}');
    await settled(part);
    expect(wordsOf(found(at(1, 2), '.ringed'))).toBe('6 ftt');
    expect(wordsOf(found(at(1, 2), '.why'))).not.toBe('');
    expect(wordsOf(at(1, 4))).toContain('8 cubic feet');
  });

  test('what is wrong with a column is said at length once and ringed in every row', async () => {
    session.apply((door) => door.setColumnFormula(idOf(session, 'Slab bays'), 3, 'length plus $4'));
    await settled(part);
    const headline = "A length and money can't be added.";
    expect(wordsOf(found(at(1, 4), '.why'))).toMatch(
      /^A length and money can't be added\. Length is 6 ft/,
    );
    expect(wordsOf(found(at(3, 4), '.why'))).toBe(headline);
    expect(found(at(3, 4), '.ringed').checkVisibility()).toBe(true);
  });

  test('rows are added, moved and removed, each as one change', async () => {
    at(1, 1).focus();
    await settled(part);
    button(part, 'Add a row below row 1').click();
    await settled(part);
    expect(focusedElement()).toBe(at(2, 1));
    await userEvent.keyboard('ramp{Enter}');
    await settled(part);
    expect(bays()).toEqual(['north', 'ramp', 'south', 'steps']);
    await userEvent.keyboard('{Alt>}{ArrowUp}{/Alt}');
    await settled(part);
    expect(bays()).toEqual(['ramp', 'north', 'south', 'steps']);
    button(part, 'Move row 1 down').click();
    await settled(part);
    button(part, 'Remove row 2').click();
    await settled(part);
    expect(bays()).toEqual(['north', 'south', 'steps']);
    expect(session.door.notebook.text).toBe(BAYS);
    session.undo();
    expect(bays()).toEqual(['north', 'ramp', 'south', 'steps']);
    for (let changes = 0; changes < 4; changes++) session.undo();
    expect(session.door.notebook.text).toBe(BAYS);
    expect(session.door.canUndo()).toBeNull();
  });

  test('pasted text fills and adds rows, and tells what was refused and why', async () => {
    await pasted(3, 1, 'steps\t3 ft\t2 ft\nramp\t5 kg\t4 ft');
    expect(bays()).toEqual(['north', 'south', 'steps', 'ramp']);
    expect(wordsOf(at(3, 4))).toBe('2 cubic feet');
    expect(wordsOf(found(part, '.refused'))).toMatch(
      /^1 cell was not taken Row 4, length: “5 kg”\. This column holds a length/,
    );
    expect(wordsOf(at(4, 2))).toBe('nothing yet');
    session.undo();
    await settled(part);
    expect(session.door.notebook.text).toBe(BAYS);
    await pasted(1, 2, '7 ft, 5 ft');
    expect(cellOf(session, 'Slab bays').table?.rows[0]?.texts.slice(1, 3)).toEqual([
      '7 ft',
      '5 ft',
    ]);
  });

  test('of many rows only those in sight are drawn, and every one of them is reached', async () => {
    await openLong();
    expect(lines().length).toBeLessThan(90);
    at(1, 1).focus();
    await userEvent.keyboard('{Enter}');
    await settled(part);
    await userEvent.keyboard('9 ft{Enter}');
    await settled(part);
    expect(wordsOf(at(1, 2))).toBe('18 ft');
    await userEvent.keyboard('{Control>}{End}{/Control}');
    await framesOf(part);
    expect(focusedElement()).toBe(found(part, 'tr[data-row="4999"] td:last-child'));
    expect(wordsOf(focusedElement() as Element)).toBe('10,000 ft');
    expect(lines().length).toBeLessThan(90);
    expect(found(part, 'table').getAttribute('aria-rowcount')).toBe('5001');
    expect(found(part, 'tr[data-row="4999"]').getAttribute('aria-rowindex')).toBe('5001');
    await userEvent.keyboard('{Control>}{Home}{/Control}');
    await framesOf(part);
    expect(focusedElement()).toBe(found(part, 'tr[data-row="0"] td'));
  });
});
