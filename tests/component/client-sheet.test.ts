// The client's sheet: what stands on it and nothing else in the document, refused while something has no value, kept per notebook.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { page as browserPage, userEvent } from 'vitest/browser';
import '../../src/ui/client-sheet.ts';
import '../../src/ui/story-page.ts';
import type { Desk } from '../../src/ui/desk.ts';
import { browserOf } from './desk.ts';
import {
  axeFindings,
  button,
  drawn,
  everyElement,
  focusedElement,
  found,
  framesOf,
  idOf,
  wordsOf,
} from './drawn.ts';

const JOB = `# Kestrel Court

## Slab

- Slab length: 12 ft
  - from: measured on site, 2026-03-03
- Concrete: $259.20
  - cost: material
  - client: a slab beside the shed
  - from: quoted by the yard, 2026-03-01, good until 2026-03-20
- Pour it: 4 hours at $50 per hour
  - cost: labour
- Water: by others
  - choices: included, not needed, by others
- Gain: 10% of total cost of every part
  - price: markup
- Price: total cost of every part plus gain

### Payments

- Deposit: 10% of price, rounded to the nearest cent
  - client: with the signature
- Rest: price minus deposit
`;

let browser: ReturnType<typeof browserOf>;
let desk: Desk;
let page: HTMLElementTagNameMap['story-page'];

const sheet = () => found<HTMLElementTagNameMap['client-sheet']>(page, 'client-sheet');
const has = (selector: string) => everyElement(page).some((one) => one.matches(selector));
const paper = () => wordsOf(found(sheet(), '.paper'));

async function open(text = JOB): Promise<void> {
  browser = browserOf(text);
  desk = await browser.page();
  page = await drawn('story-page', { desk });
  await framesOf(page);
}

async function lay(): Promise<void> {
  await userEvent.keyboard('c');
  await expect.poll(() => has('dialog[aria-label="Client sheet"][open]')).toBe(true);
  await framesOf(page);
}

async function view(words: string): Promise<void> {
  const label = everyElement(sheet()).find(
    (one) => one.localName === 'label' && wordsOf(one) === words,
  );
  label?.querySelector('input')?.click();
  await framesOf(page);
}

async function write(label: string, text: string): Promise<void> {
  const field = everyElement(sheet()).find(
    (one) => one.localName === 'label' && wordsOf(one) === label,
  );
  const input = field?.querySelector('input');
  if (!input) throw new Error(`no field ${label}`);
  input.value = text;
  input.dispatchEvent(new InputEvent('input'));
  input.dispatchEvent(new Event('change'));
  await framesOf(page);
}

beforeEach(() => open());
afterEach(() => browserPage.viewport(1440, 900));

describe('the sheet', () => {
  test('has nothing that keeps anybody out, in each view, refused, and on a phone', async () => {
    await lay();
    for (const words of ['The price alone', 'With the work described', 'Work and material']) {
      await view(words);
      expect(await axeFindings(sheet())).toEqual([]);
    }
    await browserPage.viewport(390, 844);
    await framesOf(page);
    expect(found(sheet(), 'dialog').scrollWidth).toBeLessThanOrEqual(390);
    expect(found(sheet(), '.desk').scrollWidth).toBeLessThanOrEqual(390);
    expect(await axeFindings(sheet())).toEqual([]);
    desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Concrete'), '$?'));
    await framesOf(page);
    expect(await axeFindings(sheet())).toEqual([]);
  });

  test('says the job, the days, the price by part, answers, what to know, payments, where to sign', async () => {
    await lay();
    expect(paper()).toMatch(
      /^Kestrel Court Handed in .*2026 Valid until .*20.*2026 What it costs Slab \$505\.12 Price \$505\.12 By others Water Before work begins No permit is in this price\..* Payments Deposit with the signature \$50\.51 Rest \$454\.61 for the client date for the builder date$/,
    );
    expect(focusedElement()?.localName).toBe('h1');
  });

  test('tells as much as is chosen, and always the same price', async () => {
    await lay();
    await view('The price alone');
    expect(paper()).toContain('What it costs Price $505.12 By others');
    await view('With the work described');
    expect(paper()).toContain('Slab a slab beside the shed $505.12 Price $505.12');
    await view('Work and material');
    expect(paper()).toContain(
      'Material $285.12 Labour, equipment and services $220.00 Price $505.12',
    );
  });

  test('says from and for whom, and until when its owner says', async () => {
    await lay();
    await write('From', 'Two Sticks Decks');
    await write('For', 'the house at the end');
    await write('Valid until', '2026-03-30');
    expect(paper()).toContain('From Two Sticks Decks For the house at the end Handed in');
    expect(paper()).toMatch(/Valid until .*30/);
  });

  test('refuses while a line has no value, and names it', async () => {
    desk.session.apply((door) => door.setFormula(idOf(desk.session, 'Concrete'), '$?'));
    await lay();
    expect(wordsOf(found(sheet(), '.not-yet'))).toBe(
      'This price is not complete: "Concrete" without a value. Nothing goes to a client before.',
    );
    expect(has('.paper')).toBe(false);
    expect(focusedElement()?.className).toBe('not-yet');
  });
});

describe('while a client looks on', () => {
  test('nothing of the notebook stands in the document but what the sheet shows', async () => {
    expect(wordsOf(page)).toContain('$259.20');
    await lay();
    for (const view_ of ['The price alone', 'Part by part', 'With the work described']) {
      await view(view_);
      const words = wordsOf(page);
      for (const hidden of [
        '259.20',
        '200.00',
        'Concrete',
        'Pour it',
        '$50 per hour',
        'yard',
        '10%',
        'Look here',
      ])
        expect(words).not.toContain(hidden);
      for (const hidden of everyElement(page).flatMap((one) => [...one.attributes]))
        expect(hidden.value).not.toMatch(/Concrete|259\.20|Pour it/);
    }
  });

  test('keys of the page rest: nothing is undone and nothing comes up beside', async () => {
    const id = idOf(desk.session, 'Slab length');
    desk.session.apply((door) => door.setFormula(id, '13 ft'));
    await lay();
    await userEvent.keyboard('{Control>}z{/Control}');
    await userEvent.keyboard('h');
    await userEvent.keyboard('a');
    await framesOf(page);
    expect(desk.session.door.shown(id)?.text).toBe('13 ft');
    await userEvent.keyboard('{Escape}');
    await framesOf(page);
    expect(has('guide-page')).toBe(false);
    expect(has('alternatives-sheet')).toBe(false);
  });

  test('Esc asks nothing: the page stands as it stood, with the keyboard on its row', async () => {
    desk.session.bring(idOf(desk.session, 'Deposit'));
    await framesOf(page);
    await lay();
    await userEvent.keyboard('{Escape}');
    await expect.poll(() => has('job-footing')).toBe(true);
    await framesOf(page);
    await expect.poll(() => wordsOf(focusedElement() ?? page)).toBe('Deposit');
    expect(wordsOf(page)).toContain('$259.20');
    expect(has('client-sheet')).toBe(false);
    await lay();
    expect(paper()).toContain('Price $505.12');
  });

  test('does not come while something is being written or tried on a tape', async () => {
    const header = () => button(found(page, 'job-header'), 'Client sheet');
    expect(header().disabled).toBe(false);
    desk.session.write({ kind: 'formula', cell: idOf(desk.session, 'Concrete') });
    await framesOf(page);
    expect(header().disabled).toBe(true);
    desk.session.write(null);
    await framesOf(page);
    header().click();
    await expect.poll(() => has('dialog[aria-label="Client sheet"][open]')).toBe(true);
  });
});

test('view and names come back with the notebook', async () => {
  await lay();
  await view('Work and material');
  await write('For', 'the house at the end');
  await expect
    .poll(() => desk.handed())
    .toMatchObject({ level: 'work', whom: 'the house at the end' });
  page.remove();
  desk = await browser.page();
  page = await drawn('story-page', { desk });
  await framesOf(page);
  await lay();
  await expect.poll(paper).toContain('For the house at the end');
  expect(paper()).toContain('Material $285.12');
});
