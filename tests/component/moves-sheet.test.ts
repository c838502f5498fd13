// The sheet "What moves it": accessible, worked by a worker as by the page, tied and untied, put in and taken back.
import { beforeEach, describe, expect, test } from 'vitest';
import { userEvent, page as viewport } from 'vitest/browser';
import '../../src/ui/moves-sheet.ts';
import '../../src/ui/story-page.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { quantile } from '../../src/moves-it/curve.ts';
import { trialFigures } from '../../src/moves-it/figures.ts';
import { type Answer, placeIn } from '../../src/moves-it/questions.ts';
import { withTotals } from '../../src/moves-it/whole-job.ts';
import type { Desk } from '../../src/ui/desk.ts';
import { MovesAsked } from '../../src/ui/moves-asked.ts';
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
  settled,
  shownOf,
  wordsOf as wordsIn,
} from './drawn.ts';

const JOB = `# Kestrel Court

## Ground

- Slab length: 12 ft
  - from: a test
  - sensible: 6 ft up to 20 ft
- Bags to buy: slab length by 4 ft by 4 in, in bags of 0.45 cubic feet per bag
- Concrete: bags to buy at $6.48 per bag
  - cost: material
- Length check: slab length is at most 14 ft
  - caution: Beyond this it wants a joint.

## Work

- Hours: 40 hours, 30 at best, 60 at worst
  - from: a test
- Hauling: 10 hours, 8 at best, 15 at worst
  - from: a test
- Rate: $50 per hour
  - from: a test
- Labour: (hours plus hauling) at rate
  - cost: labour
`;

const WITHOUT = JOB.replaceAll(/, \d+ at best, \d+ at worst/g, '');

type Makes = HTMLElementTagNameMap['moves-sheet']['makesWorker'];

/** A worker that comes and breaks. */
const broken: Makes = () =>
  new Worker(URL.createObjectURL(new Blob(['throw new Error("none here")'])));

const longTitle = (spot: { readonly from: number; readonly to: number } | null) => ({
  ...(spot ?? { from: 0, to: 0 }),
  insert: 'Kestrel Court, the garden behind the house with all that was asked for',
});

const none: Makes = () => null;

const refusing: Makes = () => {
  throw new Error('refused');
};

let desk: Desk;
let sheet: HTMLElementTagNameMap['moves-sheet'];

async function lay(text = JOB, makesWorker?: Makes): Promise<void> {
  desk = await browserOf(text).page();
  sheet = await drawn('moves-sheet', { desk, open: true, ...(makesWorker ? { makesWorker } : {}) });
}

const leaf = async (says: string): Promise<void> => {
  button(sheet, says).click();
  await settled(sheet);
};

/** As it is read on one line: marks stand right after their words. */
const wordsOf = (element: Element): string =>
  wordsIn(element)
    .replace(/ (?=[,.;:)%])/g, '')
    .replaceAll('( ', '(');

const says = (): string => wordsOf(found(sheet, '.inside'));

async function type(id: string, text: string): Promise<void> {
  const input = found<HTMLInputElement>(sheet, `#${id}`);
  input.value = text;
  input.dispatchEvent(new InputEvent('input'));
  await settled(sheet);
}

async function choose(id: string, name: string): Promise<void> {
  const select = found<HTMLSelectElement>(sheet, `#${id}`);
  const option = [...select.options].find((one) => one.textContent?.trim() === name);
  select.value = option?.value ?? '';
  select.dispatchEvent(new Event('change'));
  await settled(sheet);
}

const rows = (): readonly string[] =>
  everyElement(sheet)
    .filter((one) => one.matches('.matters tbody tr'))
    .map(wordsOf);

const text = (): string => desk.session.door.notebook.text;

async function sure(): Promise<void> {
  await leaf('How sure');
  await expect.poll(says).toContain('Four times in five');
}

describe('each leaf is accessible', () => {
  test('what matters, how sure, what it would take', async () => {
    await lay();
    await expect.poll(() => rows().length).toBeGreaterThan(0);
    expect(await axeFindings(sheet)).toEqual([]);
    await sure();
    await type('budget', 'a thousand cats');
    await type('certainty', '120');
    found<HTMLDetailsElement>(sheet, '.figures').open = true;
    expect(await axeFindings(sheet)).toEqual([]);
    await leaf('What would it take');
    await type('target', '$3,000');
    button(sheet, 'Work it out').click();
    await settled(sheet);
    expect(await axeFindings(sheet)).toEqual([]);
  });

  test('and so is the sheet of a job without ranges, on a phone', async () => {
    await lay(WITHOUT);
    await leaf('How sure');
    expect(says()).toContain('No given that the price of the job rests on has a range.');
    expect(says()).toContain('12 hours, 10 at best, 16 at worst');
    expect(await axeFindings(sheet)).toEqual([]);
  });
});

describe('what matters', () => {
  test('is told with the greatest swing first, by range or by 10%, with jumps and whole packs', async () => {
    await lay();
    await expect.poll(() => rows().length).toBe(4);
    const [hours, rate, hauling, length] = rows();
    expect(hours).toContain('Hours Work, by its range: 30 hours to 60 hours');
    expect(hours).toContain('$2,233 $3,733 $1,500');
    expect(rate).toContain('Rate Work, by 10%: $45 per hour to $55 per hour');
    expect(hauling).toContain('$350');
    expect(length).toContain('Slab length Ground, by 10%: 10 ft 9 5/8 in to 13 ft 2 3/8 in');
    expect(length).toContain('in 8 jumps Bags to buy: 32 to 40 bags');
  });

  test('goes to the cell that is chosen, by its name and by its bar', async () => {
    for (const way of ['name', 'bar'] as const) {
      document.body.replaceChildren();
      desk = await browserOf(JOB).page();
      const page = await drawn('story-page', { desk });
      button(page, 'What moves it').click();
      await expect.poll(() => everyElement(page).some((one) => one.matches('.matters'))).toBe(true);
      const row = everyElement(page).find((one) => one.matches('.matters tbody tr'));
      if (!row) throw new Error('no row');
      if (way === 'name') button(row, 'Hours').click();
      else found(row, '.bar').click();
      await framesOf(page);
      expect(found<HTMLDialogElement>(found(page, 'moves-sheet'), 'dialog').open).toBe(false);
      expect(desk.session.chosen).toBe(idOf(desk.session, 'Hours'));
      await expect.poll(() => focusedElement()?.textContent?.trim()).toBe('Hours');
    }
  });

  test('is about another result once one is chosen', async () => {
    await lay();
    await choose('result', 'Bags to buy');
    await expect.poll(() => rows().length).toBe(1);
    expect(rows()[0]).toContain('Slab length');
  });
});

describe('a question', () => {
  const asked = async (make: Makes): Promise<Answer | null> => {
    const estimate = new Estimate(JOB);
    const job = withTotals(estimate);
    const cell = estimate.notebook.parts[2].blocks.flatMap((block) =>
      block.kind === 'cell' && block.cell.name === 'Labour' ? [block.cell.id] : [],
    )[0];
    const asking = new MovesAsked(make);
    const question = {
      kind: 'trials',
      result: placeIn(job, cell),
      trials: 20_000,
      seed: 7,
    } as const;
    const answer = await asking.ask(job, question, () => {});
    asking.stop();
    return answer;
  };
  /** What workers said, so that none answers from the page unseen. */
  let heard = 0;
  const real: Makes = () => {
    const worker = new Worker(new URL('../../src/ui/moves-worker.ts', import.meta.url), {
      type: 'module',
    });
    worker.addEventListener('message', () => heard++);
    return worker;
  };
  const headless = () => {
    const { cells } = trialFigures(new Estimate(JOB), { trials: 20_000, seed: 7 });
    return cells.find(({ name }) => name === 'Labour');
  };

  test.for([
    ['a worker', real],
    ['the page, where there are no workers', none],
    ['the page, where a worker breaks', broken],
    ['the page, where workers are refused', refusing],
  ] as const)('is answered by %s with the figures of the headless run', async ([, make]) => {
    heard = 0;
    const answer = await asked(make);
    if (answer?.kind !== 'trials') throw new Error('no answer');
    expect(heard > 0).toBe(make === real);
    const wanted = headless();
    expect(answer.sorted).toHaveLength(20_000);
    for (const [share, figure] of [
      [0.05, wanted?.p5],
      [0.1, wanted?.p10],
      [0.5, wanted?.p50],
      [0.8, wanted?.p80],
      [0.9, wanted?.p90],
      [0.95, wanted?.p95],
    ] as const)
      expect(quantile(answer, share)).toBeCloseTo(figure ?? NaN, 8);
  });

  test.for([
    ['a worker', real],
    ['the page', none],
  ] as const)('that another overtakes is not answered by %s', async ([, make]) => {
    const job = withTotals(new Estimate(JOB));
    const asking = new MovesAsked(make);
    const ask = (seed: number) =>
      asking.ask(job, { kind: 'trials', result: -1, trials: 5_000, seed }, () => {});
    const [first, second, third] = await Promise.all([ask(1), ask(2), ask(3)]);
    asking.stop();
    expect([first, second]).toEqual([null, null]);
    expect(third).toMatchObject({ kind: 'trials', none: 0 });
  });
});

describe('how sure', () => {
  test('says the same from a worker and without one', async () => {
    await lay();
    await sure();
    const byWorker = says();
    document.body.replaceChildren();
    await lay(JOB, () => null);
    await sure();
    expect(says()).toBe(byWorker);
    expect(byWorker).toContain('As it stands, $2,733.28, it is enough in');
  });

  test('answers a budget and a certainty that are typed, and says what is none', async () => {
    await lay();
    await sure();
    await type('budget', '2500');
    expect(wordsOf(found(sheet, '#budget-said'))).toMatch(/^is passed in \d\d% of the trials\.$/);
    await type('budget', '3 hours');
    expect(wordsOf(found(sheet, '#budget-said'))).toBe(
      'Price of the job holds money, and this is hours.',
    );
    await type('certainty', '95');
    const far = wordsOf(found(sheet, '#certainty-said'));
    await type('certainty', '90%');
    expect(wordsOf(found(sheet, '#certainty-said'))).not.toBe(far);
    await type('certainty', '10');
    expect(wordsOf(found(sheet, '#certainty-said'))).toContain('nothing has to be set aside');
    await type('certainty', '100');
    expect(wordsOf(found(sheet, '#certainty-said'))).toBe('A number from 1 to 99.');
  });

  test('gives other figures for another seed and the same for the same', async () => {
    await lay();
    await sure();
    const mean = (): string => wordsOf(found(sheet, '.figures'));
    const first = mean();
    await type('seed', '2');
    await expect.poll(mean).not.toBe(first);
    await type('seed', '1');
    await expect.poll(mean).toBe(first);
    await type('seed', 'x');
    expect(wordsOf(found(sheet, '#seed-said'))).toBe('A whole number from 0 on.');
  });

  test('has a curve with the same in words', async () => {
    await lay();
    await sure();
    const label = found(sheet, '.curve-paper svg[role=img]').getAttribute('aria-label');
    expect(label).toMatch(/^Curve of 20,000 trials from \$[\d,]+ to \$[\d,]+: one in ten under /);
  });
});

describe('what is left out of what matters', () => {
  test('is a given of nought, which is named; and with ties it is said that each goes alone', async () => {
    await lay(
      JOB.replaceAll('at worst\n', 'at worst\n  - moves with: one crew\n').replace(
        '- Labour:',
        '- Fuel: $0\n  - cost: material\n- Labour:',
      ),
    );
    await expect.poll(() => rows().length).toBe(4);
    expect(wordsOf(found(sheet, '.nought'))).toContain(
      'Not looked at, because 10% of nought is nought: Fuel.',
    );
    expect(wordsOf(found(sheet, '.tied'))).toContain('2 of them are tied to others');
  });

  test('is nothing where every given goes somewhere by itself', async () => {
    await lay();
    await expect.poll(() => rows().length).toBe(4);
    expect(everyElement(sheet).some((one) => one.matches('.nought, .tied'))).toBe(false);
  });
});

describe('ties', () => {
  const tick = async (name: string): Promise<void> => {
    const box = everyElement(sheet).find((one) => one.getAttribute('aria-label') === `Tie ${name}`);
    (box as HTMLInputElement).click();
    await settled(sheet);
  };

  test('are made in one step, widen the spread, and are undone', async () => {
    await lay();
    await sure();
    const spread = (): string => wordsOf(found(sheet, '.plain-list'));
    const before = spread();
    await tick('Hours');
    await tick('Hauling');
    await type('with', 'one crew');
    found(sheet, '#with').focus();
    await userEvent.keyboard('{Enter}');
    await settled(sheet);
    expect(text().match(/ {2}- moves with: one crew/g)).toHaveLength(2);
    await expect.poll(spread).not.toBe(before);
    expect(says()).toContain('moves with one crew');
    desk.session.undo();
    expect(text()).toBe(JOB);
    await expect.poll(spread).toBe(before);
  });

  test('of two are untied together; nobody is left tied to nothing', async () => {
    await lay(JOB.replaceAll('at worst\n', 'at worst\n  - moves with: one crew\n'));
    await sure();
    button(sheet, 'Untie Hours').click();
    await settled(sheet);
    expect(text()).toBe(JOB);
    expect(says()).not.toContain('moves with one crew');
  });

  test('want two of them and words for what moves them', async () => {
    await lay();
    await sure();
    await tick('Hours');
    button(sheet, 'Tie').click();
    await settled(sheet);
    const press = async (): Promise<string> => {
      const tie = everyElement(sheet).find(
        (one): one is HTMLButtonElement => one.matches('button') && wordsOf(one) === 'Tie',
      );
      tie?.click();
      await settled(sheet);
      return wordsOf(found(sheet, '#tie-told'));
    };
    expect(await press()).toBe('Say what moves them, as in "the lumber yard".');
    await type('with', 'one crew');
    expect(await press()).toBe('Tick the ones that move together, two of them or more.');
    expect(text()).toBe(JOB);
  });
});

describe('what would it take', () => {
  const work = async (given: string, target: string): Promise<string> => {
    await leaf('What would it take');
    await choose('given', given);
    await type('target', target);
    found(sheet, '#target').focus();
    await userEvent.keyboard('{Enter}');
    await settled(sheet);
    return wordsOf(found(sheet, '.found'));
  };

  test('gives the amount, puts it in and takes it back, with the keyboard where it is next needed', async () => {
    await lay();
    expect(await work('Rate', '$2,983.28')).toContain('Rate has to be $55.00 per hour.');
    expect(says()).toContain('Every check says what it says now.');
    button(sheet, 'Put in $55.00 per hour').click();
    await framesOf(sheet);
    expect(shownOf(desk.session, 'Rate')).toBe('$55.00 per hour');
    expect(says()).toContain(
      'Put in: Rate is $55.00 per hour, and the price of the job $2,983.28.',
    );
    expect(focusedElement()?.textContent?.trim()).toBe('Undo');
    await userEvent.keyboard('{Enter}');
    await settled(sheet);
    expect(text()).toBe(JOB);
    expect(focusedElement()?.id).toBe('target');
  });

  test('keeps the range of a given within it, and says where it goes', async () => {
    await lay();
    await work('Hours', '$2,983.28');
    button(sheet, 'Put in 45 hours').click();
    await framesOf(sheet);
    expect(text()).toContain('- Hours: 45 hours, 30 hours at best, 60 hours at worst\n');
    await leaf('What would it take');
    expect(await work('Hours', '$1,733.28')).toContain('No amount of Hours gives exactly');
    await type('low', '10 hours');
    await type('high', '60 hours');
    found(sheet, '#high').focus();
    await userEvent.keyboard('{Enter}');
    await settled(sheet);
    expect(says()).toContain('Hours has to be 20 hours.');
    expect(says()).toContain('It lies beyond its range, which goes with it.');
    button(sheet, 'Put in 20 hours').click();
    await framesOf(sheet);
    expect(text()).toContain('- Hours: 20 hours\n');
  });

  test('is a stretch where whole packs are bought, and says which check would not hold', async () => {
    await lay();
    await choose('result', 'Bags to buy');
    const told = await work('Slab length', '44 bags');
    expect(told).toMatch(/Slab length may be anything from 14 ft [\d/ ]+in to 14 ft [\d/ ]+in\./);
    expect(told).toContain('Length check would not hold. Beyond this it wants a joint.');
    expect(button(sheet, 'Put in 14 ft')).toBeTruthy();
  });

  test('is none where packs jump over the target: the nearest is put in, with what it comes to', async () => {
    await lay();
    const told = await work('Slab length', '2740');
    expect(told).toContain('No amount of Slab length gives exactly $2,740.00.');
    expect(told).toMatch(/comes to \$2,739\.76, less\..*comes to \$2,746\.24, more\./);
    const [, name = ''] = /(Put in [\d/ ]+ ft[\d/ ]*(?:in)?) /.exec(`${told} `) ?? [];
    button(sheet, name.trim()).click();
    await framesOf(sheet);
    expect(says()).toMatch(/Put in: Slab length is .*, and the price of the job \$2,739\.76\./);
    expect(shownOf(desk.session, 'Concrete')).toBe('$239.76');
  });

  test('is refused in words where the target is none, and asks for one where none is typed', async () => {
    await lay();
    expect(await work('Rate', '3 hours')).toBe('Price of the job holds money, and this is hours.');
    expect(await work('Rate', '')).toBe('Say what the price of the job is to come to.');
  });
});

describe('the page', () => {
  beforeEach(async () => {
    desk = await browserOf(JOB).page();
  });

  test('opens it with V and gives the keyboard back', async () => {
    const page = await drawn('story-page', { desk });
    desk.session.bring(idOf(desk.session, 'Rate'));
    await framesOf(page);
    await userEvent.keyboard('v');
    await expect
      .poll(() => everyElement(page).some((one) => one.matches('moves-sheet')))
      .toBe(true);
    const dialog = () => found<HTMLDialogElement>(found(page, 'moves-sheet'), 'dialog');
    await expect.poll(() => dialog().open).toBe(true);
    // A letter in its list of results goes to a result, not to the guide.
    found(page, '#result').focus();
    await userEvent.keyboard('h');
    expect(everyElement(page).some((one) => one.matches('guide-page'))).toBe(false);
    await userEvent.keyboard('{Escape}');
    await expect.poll(() => dialog().open).toBe(false);
    expect(focusedElement()?.textContent?.trim()).toBe('Rate');
  });

  test.for([1024, 1280, 1360, 1362, 1440, 1720, 1822])(
    'has its name in a header of one line that cuts nothing off, also once something was changed, %i pixels wide',
    async (width) => {
      await viewport.viewport(width, 800);
      const page = await drawn('story-page', { desk });
      desk.session.apply((door) =>
        door.replaceText({ say: 'A long title', splices: [longTitle(door.notebook.titleSpot)] }),
      );
      await expect.poll(() => wordsOf(found(page, 'job-header'))).toContain('kept here');
      const header = found(page, 'job-header');
      const isFolded = width <= 1360;
      const all = everyElement(header).filter((one) => one.matches('nav button'));
      const drawnOnes = all.filter((one) => one.getClientRects().length > 0);
      expect(drawnOnes).toHaveLength(isFolded ? 0 : all.length);
      const title = found(header, '.title').getBoundingClientRect();
      for (const one of drawnOnes) {
        const { left, top, bottom } = one.getBoundingClientRect();
        expect(left).toBeGreaterThanOrEqual(title.right);
        expect(top).toBeLessThan(title.bottom);
        expect(bottom).toBeGreaterThan(title.top);
      }
      const says = everyElement(header).find((one) => one.matches('.say'));
      if (says && says.getClientRects().length > 0)
        expect(says.getBoundingClientRect().width).toBeGreaterThan(60);
      expect(header.scrollWidth).toBeLessThanOrEqual(header.clientWidth);
    },
  );

  test('offers the tie among the remarks of a given with a range, and of no other', async () => {
    const page = await drawn('story-page', { desk });
    const offers = async (name: string): Promise<boolean> => {
      desk.session.choose(idOf(desk.session, name));
      await framesOf(page);
      return everyElement(page).some((one) => one.getAttribute('aria-label') === 'Add moves with');
    };
    expect([await offers('Hours'), await offers('Rate')]).toEqual([true, false]);
  });
});
