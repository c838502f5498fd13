// The job record on the page: written line by line, corrected, pasted, held against the estimate, and learned from.
import { beforeEach, describe, expect, test } from 'vitest';
import { page as browserPage, userEvent } from 'vitest/browser';
import '../../src/ui/record-sheet.ts';
import '../../src/ui/story-page.ts';
import { takenRecords } from '../../src/store/record-shapes.ts';
import { RecordBook } from '../../src/ui/record-book.ts';
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
  settled,
  wordsOf,
} from './drawn.ts';

const JOB = `# Kestrel Court

## Landing

- Slab area: 48 sq ft
  - from: a test
- Concrete: $259.20
  - cost: material
- Pour: $480
  - cost: labour

## Railing

- Posts: $610
  - cost: material
`;

let desk: Desk;
let browser: ReturnType<typeof browserOf>;
let page: HTMLElementTagNameMap['story-page'];

const sheet = () => found<HTMLElementTagNameMap['record-sheet']>(page, 'record-sheet');
const field = (id: string) => found<HTMLInputElement>(sheet(), `#${id}`);
const has = (selector: string) => everyElement(page).some((one) => one.matches(selector));

async function press(says: string): Promise<void> {
  button(sheet(), says).click();
  await framesOf(page);
}

async function choose(id: string, value: string): Promise<void> {
  const select = found<HTMLSelectElement>(sheet(), `#${id}`);
  select.value = value;
  select.dispatchEvent(new Event('change'));
  await settled(page);
}

async function fill(id: string, text: string): Promise<void> {
  const input = field(id);
  input.value = text;
  input.dispatchEvent(new InputEvent('input'));
  await settled(page);
}

async function kept(): Promise<ReturnType<typeof takenRecords>['records']> {
  const shelf = await desk.versions();
  const taken = await shelf.take(desk.openId);
  if (taken.kind !== 'taken') throw new Error(taken.kind);
  return takenRecords(taken.value.versions.records).records;
}

async function lay(): Promise<void> {
  button(page, 'Job record').click();
  await expect.poll(() => has('record-line')).toBe(true);
  await framesOf(page);
}

beforeEach(async () => {
  browser = browserOf(JOB);
  desk = await browser.page();
  page = await drawn('story-page', { desk });
  await lay();
});

/** One line by its fields; the keyboard is in the last of them. */
async function line(fields: Readonly<Record<string, string>>): Promise<void> {
  for (const [id, text] of Object.entries(fields)) {
    if (id === 'part' || id === 'kind') await choose(id, text);
    else await fill(id, text);
  }
  const before = (await kept()).length;
  field('what').focus();
  await userEvent.keyboard('{Enter}');
  await expect.poll(async () => (await kept()).length).toBe(before + 1);
  await framesOf(page);
}

describe('a line', () => {
  test('that is half written is still there when the record was put away and laid out again', async () => {
    await fill('what', 'Pour');
    field('what').focus();
    await userEvent.keyboard('{Escape}');
    await expect.poll(() => sheet().open).toBe(false);
    await lay();
    expect(field('what').value).toBe('Pour');
  });

  test('put in on two pages at once stands in both records', async () => {
    await line({ part: 'Landing', kind: 'fee', what: 'Permit', amount: '85' });
    const mine = await RecordBook.opened(desk);
    const says = mine?.stands.entries[0]?.says;
    if (!mine || !says) throw new Error('no record');
    const sameBook = await RecordBook.opened(desk);
    const entry = { record: 'entry', says } as const;
    expect(await Promise.all([mine.add([entry]), sameBook?.add([entry])])).toEqual([null, null]);
    expect(await kept()).toHaveLength(3);
  });

  test('is put in with Enter, kept at once with its notebook, and the keyboard is where the next begins', async () => {
    await line({ part: 'Landing', kind: 'material', what: '40 bags', amount: '259.20' });
    expect((await kept())[0]).toMatchObject({
      record: 'entry',
      says: { date: '2026-03-03', kind: 'material', cost: { by: 'amount', amount: '259.20' } },
    });
    expect(wordsOf(sheet())).toContain('40 bags is in the record, $259.20.');
    expect(focusedElement()?.id).toBe('what');
    expect([field('what').value, field('amount').value, field('part').value]).toEqual([
      '',
      '',
      'Landing',
    ]);
    const again = await browser.page();
    expect(again.openId).toBe(desk.openId);
    expect(again.session.door.notebook.title).toBe('Kestrel Court');
  });

  test('that lacks something says what at each field, keeps what was typed, and goes to the first', async () => {
    await fill('amount', '12,50');
    field('amount').focus();
    await userEvent.keyboard('{Enter}');
    await framesOf(page);
    expect(wordsOf(sheet())).toContain('Write 12.50 with a point.');
    expect(wordsOf(sheet())).toContain('What it was is missing.');
    expect(field('amount').value).toBe('12,50');
    expect(focusedElement()?.id).toBe('part');
    expect(await kept()).toEqual([]);
  });

  test('of hours at a rate says what it comes to while it is written', async () => {
    await fill('hours', '7:20');
    await fill('rate', '61');
    expect(wordsOf(found(sheet(), '.comes'))).toBe('comes to $447.33');
  });

  test('is corrected beside itself, and what stood there stays readable', async () => {
    await line({ part: 'Landing', kind: 'material', what: '40 bags', amount: '259.20' });
    await press('Correct 40 bags');
    expect(focusedElement()?.id).toBe('what');
    const own = found(sheet(), 'record-line[correcting]');
    const amount = found<HTMLInputElement>(own, '#amount');
    amount.value = '295.20';
    amount.dispatchEvent(new InputEvent('input'));
    const why = found<HTMLInputElement>(own, '#why');
    why.value = 'misread';
    why.dispatchEvent(new InputEvent('input'));
    button(own, 'Keep the correction').click();
    await expect
      .poll(() => wordsOf(sheet()))
      .toContain('was 2026-03-03, Landing, material, 40 bags, $259.20');
    expect(wordsOf(sheet())).toContain('misread');
    const [first, second] = await kept();
    expect(first).toMatchObject({ says: { cost: { amount: '259.20' } } });
    expect(second).toMatchObject({ record: 'correction', corrects: first.id });
    await press('Correct 40 bags');
    await press('Take it out');
    await expect.poll(() => wordsOf(sheet())).toContain('taken out');
    expect(await kept()).toHaveLength(3);
  });
});

test('rows of a sheet are looked through first; what can’t be read stays with its reasons', async () => {
  await press('From a sheet');
  const area = found<HTMLTextAreaElement>(sheet(), 'textarea');
  area.value =
    'Date\tPart\tKind\tWhat\tAmount\n2026-05-04\tLanding\tmaterial\tBags\t259.20\n2026-05-05\tLandng\tfee\tPermit\t85\n';
  area.dispatchEvent(new InputEvent('input'));
  await framesOf(page);
  expect(wordsOf(sheet())).toContain(
    'row 3 , part "Landng" is no part of this notebook. Nearest here: Landing.',
  );
  await press('Put in 1 line, $259.20');
  await expect.poll(async () => (await kept()).length).toBe(1);
  await framesOf(page);
  expect(area.value).toBe('Date\tPart\tKind\tWhat\tAmount\n2026-05-05\tLandng\tfee\tPermit\t85');
  area.value = '2026-05-04\tLanding\tmaterial\tBags\t259.20';
  area.dispatchEvent(new InputEvent('input'));
  await framesOf(page);
  expect(wordsOf(sheet())).toContain(
    '1 line with the same day, part, words and money is in the record already.',
  );
  await press('What happened');
  expect(wordsOf(found(sheet(), '.entries'))).toContain('Bags Landing , material $259.20');
});

test('rows that are not put in yet are there again at the next visit, which tells of them', async () => {
  await press('From a sheet');
  const rows = 'Date\tPart\tKind\tWhat\tAmount\n2026-05-05\tLandng\tfee\tPermit\t85';
  const area = found<HTMLTextAreaElement>(sheet(), 'textarea');
  area.value = rows;
  area.dispatchEvent(new InputEvent('input'));
  const { shelf } = browser.settings;
  await expect.poll(() => shelf.rows(desk.openId)).toBe(rows);
  // The page goes without a word; the next one is another.
  await desk.keepAnyway();
  page.remove();
  const next = await browser.page();
  expect(next.session.notice?.text).toContain(
    'Rows for the job record were not put in yet. They stand in it under From a sheet.',
  );
  page = await drawn('story-page', { desk: next });
  await lay();
  const again = found<HTMLTextAreaElement>(sheet(), 'textarea');
  await expect.poll(() => again.value).toBe(rows);
  again.value = rows.replace('Landng', 'Landing');
  again.dispatchEvent(new InputEvent('input'));
  await framesOf(page);
  await press('From a sheet');
  await press('Put in 1 line, $85.00');
  await expect.poll(() => shelf.rows(next.openId)).toBe('');
  // The button went; the keyboard is in the field.
  await expect.poll(() => focusedElement()).toBe(again);
});

test('what another page adds stands in the record that lies here already', async () => {
  await line({ part: 'Landing', kind: 'fee', what: 'Permit', amount: '85' });
  const other = await RecordBook.opened(await browser.page());
  const [permit] = other?.stands.entries ?? [];
  if (!other || !permit?.says) throw new Error('no record');
  await fill('what', 'Half written here');
  expect(await other.add([{ record: 'entry', says: { ...permit.says, what: 'Inspection' } }])).toBe(
    null,
  );
  await expect.poll(() => wordsOf(found(sheet(), '.entries'))).toContain('Inspection');
  expect(field('what').value).toBe('Half written here');
});

test('a rate goes on to the next line of hours, and stands in the way of no receipt', async () => {
  await line({ part: 'Landing', kind: 'labour', what: 'Pour', hours: '2', rate: '45' });
  expect(field('rate').value).toBe('45');
  await line({ what: 'Finish', hours: '1' });
  await line({ kind: 'material', what: 'Screws', amount: '96.40' });
  expect((await kept()).at(-1)).toMatchObject({ says: { what: 'Screws' } });
  // One that was written with an amount is meant, and is told.
  await fill('what', 'Nails');
  await fill('rate', '45');
  await fill('amount', '12');
  field('what').focus();
  await userEvent.keyboard('{Enter}');
  await framesOf(page);
  expect(wordsOf(sheet())).toContain('A rate stands here without hours.');
});

test('the estimate stands against it, with a warning past the chosen amount', async () => {
  await line({ part: 'Landing', kind: 'labour', what: 'Pour', hours: '9', rate: '60' });
  await press('Against the estimate');
  expect(wordsOf(sheet())).toContain(
    'The job comes to $1,409.20 , $60.00 over, 4.4 % of the estimate',
  );
  expect(wordsOf(sheet())).toContain('Over the estimate :');
  await fill('limit', '100');
  field('limit').dispatchEvent(new Event('change'));
  await expect.poll(async () => (await kept()).length).toBe(2);
  await framesOf(page);
  expect(wordsOf(sheet())).not.toMatch(/Over (by|the)/);
  const done = everyElement(sheet()).find(
    (one) => one.getAttribute('aria-label') === 'Percent done of Landing, labour',
  ) as HTMLInputElement;
  done.value = '75';
  done.dispatchEvent(new Event('change'));
  await expect
    .poll(() => wordsOf(sheet()))
    .toContain('Over by more than $100.00 : the whole job $240.00 , Landing $240.00');
  expect(has('svg[aria-label^="Landing: estimate $739.20, spent $540.00"]')).toBe(true);
});

test('hours per unit are written into the notebook as a given, and undo takes it back', async () => {
  await line({ part: 'Landing', kind: 'labour', what: 'Pour', hours: '11:30', rate: '60' });
  await press('Learned');
  await fill('built', 'slab area');
  expect(wordsOf(sheet())).toContain('0.2396 hours per sq ft');
  await fill('called', 'Pour as built');
  await press('Write it into the notebook');
  const { door } = desk.session;
  expect(door.notebook.text).toContain(
    '- Pour as built: 0.2396 hours per sq ft\n  - from: learned on Kestrel Court: 11.5 hours for 48 sq ft by its job record, up to 2026-03-03\n',
  );
  desk.session.undo();
  expect(door.notebook.text).toBe(JOB);
});

test.for([
  [1280, 800],
  [390, 800],
] as const)(
  'every leaf is accessible and nothing lies outside at %i by %i',
  async ([wide, high]) => {
    await browserPage.viewport(wide, high);
    await line({ part: 'Landing', kind: 'labour', what: 'Pour', hours: '9', rate: '60' });
    for (const leaf of ['What happened', 'Against the estimate', 'From a sheet', 'Learned']) {
      await press(leaf);
      expect(await axeFindings(sheet())).toEqual([]);
      const dialog = found(sheet(), 'dialog');
      expect(dialog.scrollWidth).toBeLessThanOrEqual(dialog.clientWidth);
    }
  },
);
