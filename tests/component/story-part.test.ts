// A part: its recap, its prose, cells added and drawn.
import { beforeEach, describe, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/ui/story-part.ts';
import type { Session } from '../../src/ui/session.ts';
import {
  SMALL_JOB,
  axeFindings,
  button,
  cellOf,
  drawn,
  everyElement,
  found,
  idOf,
  sessionOn,
  settled,
  shownOf,
  wordsOf,
} from './drawn.ts';

let session: Session;
let part: HTMLElementTagNameMap['story-part'];

async function open(name: string, text = SMALL_JOB): Promise<void> {
  document.body.replaceChildren();
  session = sessionOn(text);
  part = await drawn('story-part', { session, content: named(name) });
  session.listen(() => {
    part.content = session.part(part.content.key) ?? part.content;
  });
}

function named(name: string) {
  const content = session.door.notebook.parts.find((one) => one.name === name);
  if (!content) throw new Error(`no part called ${name}`);
  return content;
}

describe('a part', () => {
  beforeEach(() => open('Landing'));

  test('is accessible', async () => {
    expect(await axeFindings(part)).toEqual([]);
    await open('');
    expect(await axeFindings(part)).toEqual([]);
  });

  test('carries its recap in the heading: lines, shares and sum', () => {
    expect(wordsOf(found(part, 'header'))).toBe('Landing 1 line · material 100% $259.20');
  });

  test('says what the sum leaves out', async () => {
    session.apply((door) => door.setFormula(idOf(session, 'Bag price'), '?'));
    await settled(part);
    expect(wordsOf(found(part, 'header'))).toContain('$0.00 so far; 1 line not yet known');
  });

  test('draws one row a cell, and only as many blocks as it is told to', async () => {
    const rows = (): number => everyElement(part).filter((one) => one.matches('story-cell')).length;
    expect(rows()).toBe(10);
    part.limit = 4;
    await settled(part);
    expect(rows()).toBe(4);
  });

  test('draws again only the rows that a change reaches', async () => {
    const rows = everyElement(part).filter((one) => one.matches('story-cell'));
    const drawnAgain: string[] = [];
    for (const row of rows) {
      Object.assign(row, { updated: () => drawnAgain.push(row.cell.name) });
    }
    session.apply((door) => door.setFormula(idOf(session, 'Bag price'), '$7 per bag'));
    await settled(part);
    expect([...new Set(drawnAgain)]).toEqual(['Bag price', 'Concrete']);
  });

  test('adds a cell where one asks for it and goes on to its formula', async () => {
    session.write({ kind: 'new-cell', part: part.content.key, after: idOf(session, 'Slab width') });
    await settled(part);
    await userEvent.keyboard('Slab edge{Enter}');
    expect(cellOf(session, 'Slab edge').formula).toBe('?');
    expect(session.writing).toEqual({ kind: 'formula', cell: idOf(session, 'Slab edge') });
    expect(session.neighbour(idOf(session, 'Slab edge'), -1)).toBe(idOf(session, 'Slab width'));
    await settled(part);
    await userEvent.keyboard('slab length plus slab width{Enter}');
    expect(shownOf(session, 'Slab edge')).toBe('16 ft');
  });

  test('a name that can’t be one is told, and what was written stays', async () => {
    button(part, 'Add a cell to Landing').click();
    await settled(part);
    await userEvent.keyboard('4 in{Enter}');
    await settled(part);
    expect(session.notice?.text).toContain('starts with an amount');
    expect(found<HTMLInputElement>(part, 'input').value).toBe('4 in');
  });

  test('is renamed in place', async () => {
    button(part, 'Landing, rename this part').click();
    await settled(part);
    await userEvent.keyboard('Front landing{Enter}');
    expect(part.content.name).toBe('Front landing');
  });

  test('shows prose as it flows and edits its source in place', async () => {
    await open('');
    const prose = found(part, 'story-prose');
    expect(wordsOf(prose)).toBe('Two lines of prose that were broken to fit a file.');
    found(prose, '.read').click();
    await settled(part);
    await userEvent.fill(found(prose, 'textarea'), 'One line of **prose** <b>now</b>.');
    button(prose, 'Keep').click();
    await settled(part);
    expect(wordsOf(prose)).toBe('One line of **prose** <b>now</b>.');
    expect(session.door.notebook.text).toContain(
      '# Back step\n\nOne line of **prose** <b>now</b>.\n',
    );
  });

  test('Esc leaves prose as it was', async () => {
    await open('');
    found(part, '.read').click();
    await settled(part);
    await userEvent.keyboard('nothing of this{Escape}');
    expect(session.door.notebook.text).toBe(SMALL_JOB);
    expect(session.writing).toBeNull();
  });

  test('takes a note below the chosen row, or at its end, as a paragraph of its own', async () => {
    session.choose(idOf(session, 'Waste'));
    button(part, 'Write a note').click();
    await settled(part);
    await userEvent.keyboard('Pour early.{Control>}{Enter}{/Control}');
    await settled(part);
    const { text } = session.door.notebook;
    expect(text).toContain('- from: rule of thumb\n\nPour early.\n\n- Bag yield');
    expect(wordsOf(part)).toMatch(/rule of thumb Pour early\. 0\.45 cubic feet per bag Bag yield/);
    session.choose(null);
    button(part, 'Write a note').click();
    await settled(part);
    await userEvent.keyboard('Cure for a week.{Control>}{Enter}{/Control}');
    expect(session.door.notebook.text.endsWith('department.\n\nCure for a week.\n')).toBe(true);
    expect(session.door.notebook.parts.at(-1)?.blocks.at(-1)?.kind).toBe('prose');
  });

  test('shows the settings as one quiet line that is written without dashes', async () => {
    const settings = '- Currency: US dollars\n- Counted things: row';
    await open('', `# Job\n\n${settings}\n\n## Deck\n\n- Rows: 3 rows\n`);
    expect(wordsOf(found(part, '.settings'))).toBe('Currency US dollars Counted things row');
    expect(await axeFindings(part)).toEqual([]);
    found(part, '.read').click();
    await settled(part);
    const area = found<HTMLTextAreaElement>(part, 'textarea');
    expect(area.value).toBe('Currency: US dollars\nCounted things: row');
    await userEvent.fill(area, 'Currency: euros\nCounted things: row');
    button(part, 'Keep').click();
    expect(session.door.notebook.settings.currency).toBe('€');
    expect(session.door.notebook.text).toContain('\n- Currency: euros\n- Counted things: row\n');
  });
});
