// Showing how a number comes about: step by step by keys, clicker and finger, heard and printed; asked first; with fresh numbers.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { page as browserPage, userEvent } from 'vitest/browser';
import '../../src/ui/show-how.ts';
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
  - picture: slab plan for lengths slab length, widths slab width
- Slab width: 4 ft
  - from: measured on site, 2026-03-03
- Thickness: 4 in
  - from: chosen
- Slab volume: slab length by slab width by thickness
- Waste: 10%
  - from: rule of thumb
- Bag yield: 0.45 cubic feet per bag
  - from: bag label
- Bags to buy: slab volume plus waste, divided by bag yield, rounded up
  - caution: Lift a bag with two people.
- Bag price: $6.48 per bag
- Concrete: bags to buy at bag price
  - cost: material
- Paces:

  | work | pace |
  | --- | --- |
  | forms | 12 ft per hour |

- Pace: read pace off paces for work "forms"
- Edge: slab width plus 6 in
  - picture: slab plan for lengths slab length, widths edge
- Thickness check: thickness is at least 3 1/2 in
`;

let desk: Desk;
let page: HTMLElementTagNameMap['story-page'];

const sheet = () => found<HTMLElementTagNameMap['show-how']>(page, 'show-how');
const has = (selector: string) => everyElement(page).some((one) => one.matches(selector));
const at = () => wordsOf(found(sheet(), '.progress'));
const stage = () => wordsOf(found(sheet(), '.now'));

async function key(keys: string): Promise<void> {
  await userEvent.keyboard(keys);
  await framesOf(page);
}

async function press(says: string): Promise<void> {
  button(sheet(), says).click();
  await framesOf(page);
}

async function lay(name: string): Promise<void> {
  desk.session.bring(idOf(desk.session, name));
  await framesOf(page);
  await key('k');
  await expect.poll(() => has('dialog[aria-label="Show how"]')).toBe(true);
  await expect.poll(() => has('article')).toBe(true);
  await framesOf(page);
}

async function askFirst(): Promise<void> {
  found<HTMLInputElement>(sheet(), '.ask input').click();
  await framesOf(page);
}

async function answer(text: string): Promise<void> {
  const field = found<HTMLInputElement>(sheet(), '#answer');
  field.value = text;
  found<HTMLFormElement>(found(sheet(), 'ask-step'), 'form').requestSubmit();
  await framesOf(page);
}

async function kept() {
  return (await (await desk.practice()).list()).sittings;
}

beforeEach(async () => {
  desk = await browserOf(JOB).page();
  page = await drawn('story-page', { desk });
  await framesOf(page);
});

describe('the sheet', () => {
  test('has nothing that keeps anybody out, asked or shown, light or dark', async () => {
    await lay('Concrete');
    expect(await axeFindings(sheet())).toEqual([]);
    await askFirst();
    await answer('192');
    expect(await axeFindings(sheet())).toEqual([]);
    await press('Results');
    expect(await axeFindings(sheet())).toEqual([]);
  });

  test('fits a phone', async () => {
    await browserPage.viewport(390, 844);
    await lay('Bags to buy');
    const dialog = found(sheet(), 'dialog');
    expect(dialog.getBoundingClientRect().width).toBeLessThanOrEqual(390);
    expect(found(sheet(), '.stage').scrollWidth).toBeLessThanOrEqual(390);
    expect(await axeFindings(sheet())).toEqual([]);
  });

  test('opens at the first step from the working and a key, and takes the keyboard', async () => {
    await lay('Concrete');
    expect(at()).toBe('Step 1 of 3');
    expect(focusedElement()?.tagName).toBe('ARTICLE');
    await key('{Escape}');
    await expect.poll(() => found<HTMLDialogElement>(sheet(), 'dialog').open).toBe(false);
    button(found(page, 'story-working'), 'Show how').click();
    await framesOf(page);
    expect(at()).toBe('Step 1 of 3');
    await press('Put away');
    expect(has('dialog[open]')).toBe(false);
  });

  test('says the sentence, what goes in and where from, the working, and the caution', async () => {
    await lay('Bags to buy');
    await key('{End}');
    expect(stage()).toContain('( slab volume plus waste ) divided by bag yield , rounded up');
    expect(stage()).toContain('10% Waste rule of thumb');
    expect(stage()).toContain('16 cubic feet Slab volume as worked before');
    expect(stage()).toContain('39.11 bags → 40 bags');
    expect(stage()).toContain('Caution. Lift a bag with two people.');
    const struck = everyElement(found(sheet(), '.now')).filter((one) => one.tagName === 'S');
    expect(struck.map((one) => one.textContent)).toEqual(['cubic feet', 'cubic feet']);
  });

  test('has the picture of the part with the measures of the step ringed', async () => {
    await lay('Slab volume');
    await expect.poll(() => has('svg.sheet')).toBe(true);
    expect(
      everyElement(found(sheet(), 'story-picture')).filter((one) => one.matches('ellipse.ring')),
    ).toHaveLength(2);
  });

  test('shows a given that is chosen as one step with its source', async () => {
    await lay('Waste');
    expect(at()).toBe('Step 1 of 1');
    expect(stage()).toContain('From: rule of thumb');
  });
});

describe('going on and back', () => {
  test.for([
    ['arrows', '{ArrowRight}', '{ArrowLeft}'],
    ['up and down', '{ArrowDown}', '{ArrowUp}'],
    ['space', ' ', '{Shift>} {/Shift}'],
    ['a clicker', '{PageDown}', '{PageUp}'],
  ] as const)('by %s', async ([, on, back]) => {
    await lay('Concrete');
    await key(on);
    expect(at()).toBe('Step 2 of 3');
    await key(on);
    await key(on);
    expect(at()).toBe('Step 3 of 3');
    await key(back);
    expect(at()).toBe('Step 2 of 3');
    await key('{Home}');
    expect(at()).toBe('Step 1 of 3');
    await key('{End}');
    expect(at()).toBe('Step 3 of 3');
  });

  test('by a clicker only after a step that is longer than the screen was read to its end', async () => {
    await browserPage.viewport(900, 420);
    await lay('Bags to buy');
    const seen = () => {
      const end = found(sheet(), '.comes').getBoundingClientRect().bottom;
      return end <= found(sheet(), '.stage').getBoundingClientRect().bottom + 1;
    };
    await key('{End}');
    await key('{PageUp}');
    expect(at()).toBe('Step 1 of 2');
    for (let pressed = 0; !seen() && pressed < 9; pressed++) await key('{PageDown}');
    expect(at()).toBe('Step 1 of 2');
    await key('{PageDown}');
    expect(at()).toBe('Step 2 of 2');
    expect(seen()).toBe(false);
  });

  test('by a finger across the sheet, and not by one that scrolls', async () => {
    await lay('Concrete');
    const swipe = async (x: number, y: number): Promise<void> => {
      const dialog = found(sheet(), 'dialog');
      const touch = (clientX: number, clientY: number) =>
        new Touch({ identifier: 1, target: dialog, clientX, clientY });
      dialog.dispatchEvent(new TouchEvent('touchstart', { touches: [touch(300, 300)] }));
      dialog.dispatchEvent(new TouchEvent('touchend', { changedTouches: [touch(x, y)] }));
      await framesOf(page);
    };
    await swipe(150, 310);
    expect(at()).toBe('Step 2 of 3');
    await swipe(290, 100);
    expect(at()).toBe('Step 2 of 3');
    await swipe(450, 300);
    expect(at()).toBe('Step 1 of 3');
  });

  test('each step is heard as a whole', async () => {
    await lay('Concrete');
    const heard = () => wordsOf(found(sheet(), '.heard[role="status"]'));
    expect(heard()).toMatch(/^Step 1 of 3\. Slab volume: .* Slab volume is 16 cubic feet\.$/);
    await key('{ArrowRight}');
    expect(heard()).toMatch(/^Step 2 of 3\. Bags to buy: .* Bags to buy is 40 bags\./);
    await askFirst();
    expect(heard()).not.toContain('40 bags');
    expect(heard()).toMatch(/What does Bags to buy come to\?$/);
  });

  test('a mark on the rod leads back to its step', async () => {
    await lay('Concrete');
    await key('{End}');
    await press('16 cubic feet');
    expect(at()).toBe('Step 1 of 3');
  });

  test('may begin a few steps before the result', async () => {
    await lay('Concrete');
    const begins = [
      ...found<HTMLSelectElement>(sheet(), '.tools label:nth-of-type(3) select').options,
    ];
    expect(begins.map(({ text }) => text.trim())).toEqual([
      'from the givens, 3 steps',
      'with the last step',
      '1 before the last, 2 steps',
    ]);
    const select = begins[0]?.parentElement as HTMLSelectElement;
    select.value = '1';
    select.dispatchEvent(new Event('change'));
    await framesOf(page);
    expect(at()).toBe('Step 1 of 2');
    expect(stage()).toContain('16 cubic feet Slab volume worked, and not shown here');
  });

  test('what is known is left out from there on, and comes back', async () => {
    await lay('Concrete');
    await press('We know this one');
    expect(at()).toBe('Step 1 of 2');
    expect(stage()).toContain('Bags to buy');
    await press('Known: leave Waste out');
    expect(stage()).toContain('Known: Slab volume 16 cubic feet; Waste 10%');
    expect(stage()).not.toContain('rule of thumb');
    await press('2 left out; bring them back');
    expect(at()).toBe('Step 2 of 3');
  });
});

describe('asked first', () => {
  test('a step shows no result, nor a picture from which it could be read', async () => {
    await lay('Concrete');
    await askFirst();
    expect(stage()).not.toContain('16 cubic feet');
    await key('{PageDown}');
    expect(stage()).toContain('This is how:');
    expect(stage()).toContain('= 16 cubic feet');
  });

  test('a step that reads off a table shows no row that is the answer, seen or heard', async () => {
    await lay('Pace');
    expect(stage()).toContain('12 ft per hour');
    await askFirst();
    expect(stage()).not.toContain('12 ft per hour');
    expect(wordsOf(found(sheet(), '.heard[role="status"]'))).not.toContain('12 ft per hour');
  });

  test('a picture on which the answer stands comes when it is shown', async () => {
    await lay('Edge');
    expect(has('svg.sheet')).toBe(true);
    await askFirst();
    expect(wordsOf(found(sheet(), '.now'))).not.toContain('4 ft 6 in');
    await key('{PageDown}');
    expect(
      everyElement(found(sheet(), 'story-picture')).some((one) => one.matches('ellipse.ring')),
    ).toBe(true);
  });

  test('a wrong answer is named and hinted, never told; right after it is a hint well used', async () => {
    await lay('Concrete');
    await askFirst();
    await answer('192');
    const told = () => wordsOf(found(found(sheet(), 'ask-step'), '[role="alert"]'));
    expect(told()).toMatch(/Not yet\./);
    expect(told()).toMatch(/inches taken for feet/i);
    expect(told()).toContain('There are 12 inches in a foot.');
    expect(wordsOf(found(sheet(), '.stage'))).not.toContain('16 cubic feet');
    await answer('0.593 cubic yards');
    expect(stage()).toContain('Right now.');
    expect(stage()).toContain('= 16 cubic feet');
    expect(focusedElement()?.textContent?.trim()).toBe('Go on');
  });

  test('two mistakes that give the same number are both named', async () => {
    await lay('Slab volume');
    await askFirst();
    // 4 in taken for 4 ft, and an area that was taken for a volume, come to the same.
    await answer('192');
    const items = everyElement(found(found(sheet(), 'ask-step'), '[role="alert"] ul'));
    expect(items.filter((one) => one.tagName === 'LI')).toHaveLength(2);
    expect(stage()).toContain('Two mistakes come to “ 192 ”');
  });

  test('what can not be read is no try', async () => {
    await lay('Slab volume');
    await askFirst();
    await answer('some');
    expect(stage()).toContain('can’t be read as an amount');
    await answer('16');
    expect(stage()).toContain('Right.');
  });

  test('at the end it is said what was right at first, after a hint, shown; and kept on this machine', async () => {
    await lay('Concrete');
    await askFirst();
    await answer('16');
    await key('{Enter}');
    await answer('39');
    await answer('40');
    await key('{Enter}');
    await press('Show it');
    await key('{PageDown}');
    expect(stage()).toMatch(
      /Right at first: 1 16 cubic feet Slab volume Right after a hint: 1 40 bags Bags to buy .* Shown: 1 \$259.20 Concrete/,
    );
    await expect.poll(async () => (await kept())[0]?.steps.length).toBe(3);
    expect((await kept())[0]).toMatchObject({
      result: 'Concrete',
      seed: null,
      notebook: 'Kestrel Court',
    });
    await press('Results');
    await expect.poll(() => wordsOf(sheet())).toContain('1 at first, 1 after a hint, 1 shown');
    await press('Clear all results');
    await press('Clear them for good');
    await expect.poll(() => wordsOf(sheet())).toContain('Nothing was asked here yet.');
    expect(await kept()).toEqual([]);
  });

  test('a check is shown and not asked', async () => {
    await lay('Thickness check');
    await askFirst();
    expect(has('ask-step')).toBe(false);
    expect(stage()).toContain('holds');
  });
});

describe('fresh numbers', () => {
  async function practise(seed: string): Promise<void> {
    const field = found<HTMLInputElement>(sheet(), 'input[name="seed"]');
    field.value = seed;
    found<HTMLFormElement>(sheet(), 'form.fresh').requestSubmit();
    await framesOf(page);
  }

  test('are asked, are the same for the same number, and leave the notebook as it is', async () => {
    const { text } = desk.session.door.notebook;
    await lay('Concrete');
    await practise('7');
    expect(has('ask-step')).toBe(true);
    const first = stage();
    expect(first).toContain('a fresh number, for practice');
    await practise('8');
    expect(stage()).not.toBe(first);
    await practise('7');
    expect(stage()).toBe(first);
    await press('Back to the notebook’s own');
    expect(stage()).toContain('12 ft Slab length measured on site');
    expect(desk.session.door.notebook.text).toBe(text);
    expect(desk.session.door.canUndo()).toBeNull();
  });

  test('come from chance where no number is written, and it is shown', async () => {
    await lay('Concrete');
    sheet().chance = () => 42;
    await practise('');
    expect(found<HTMLInputElement>(sheet(), 'input[name="seed"]').value).toBe('42');
  });

  test('leave out what the group knows already', async () => {
    await lay('Concrete');
    await press('We know this one');
    await practise('7');
    expect(at()).toBe('Step 1 of 2');
    expect(stage()).toContain('Bags to buy');
  });

  test('are refused in words where the number is none', async () => {
    await lay('Concrete');
    await practise('seven');
    expect(wordsOf(found(sheet(), '.said'))).toContain('a whole number');
  });
});

test('on paper the sheet is the whole working with notebook, part and day', async () => {
  await lay('Concrete');
  const paper = wordsOf(found(sheet(), '.paper'));
  expect(paper).toMatch(
    /^Kestrel Court, Slab Working of Concrete : \$259\.20 As the notebook stood on /,
  );
  for (const said of ['2026', 'bag label', 'Lift a bag with two people.', '39.11 bags → 40 bags'])
    expect(paper).toContain(said);
});

describe('the working as text', () => {
  const copies = (writeText: (text: string) => Promise<void>) =>
    Object.defineProperty(navigator, 'clipboard', { value: { writeText }, configurable: true });
  afterEach(() => {
    Reflect.deleteProperty(navigator, 'clipboard');
  });

  test('is copied with notebook, part, day, sources and cautions', async () => {
    const copied: string[] = [];
    copies((text) => Promise.resolve(void copied.push(text)));
    await lay('Concrete');
    await press('Copy the working');
    expect(copied).toHaveLength(1);
    expect(copied[0]).toMatch(
      /^Kestrel Court, Slab\nAs the notebook stood on .*2026\n\nWorking of Concrete: \$259\.20\n/,
    );
    for (const said of [
      'bag label',
      'Caution: Lift a bag with two people.',
      '39.11 bags → 40 bags',
    ])
      expect(copied[0]).toContain(said);
    expect(wordsOf(found(sheet(), '.said'))).toBe('The working is copied as text.');
  });

  test('stands there to be copied by hand where the browser lets no button do it', async () => {
    copies(() => Promise.reject(new Error('not allowed')));
    await lay('Concrete');
    await press('Copy the working');
    const text = found<HTMLTextAreaElement>(sheet(), '.to-copy textarea');
    expect(text.value).toContain('Working of Concrete');
    expect(text.selectionEnd).toBe(text.value.length);
    expect(await axeFindings(sheet())).toEqual([]);
  });
});
