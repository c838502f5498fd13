// Pictures under their rows: drawn from the cells, redrawn as they change, said in words, greyed while they wait.
import { describe, expect, test } from 'vitest';
import { page } from 'vitest/browser';
import '../../src/ui/story-part.ts';
import '../../src/ui/story-picture.ts';
import {
  axeFindings,
  drawn,
  everyElement,
  found,
  framesOf,
  idOf,
  sessionOn,
  settled,
  wordsOf,
} from './drawn.ts';

const JOB = `## Steps

- Climb: 30 in
  - from: measured
- Risers: climb divided by 7 3/4 in per riser, rounded up
- Unit rise: climb divided by risers
- Tread depth: 11 in
  - from: chosen
- Total run: (risers minus 1) times tread depth, in inches
  - picture: stair section for risers risers, rise unit rise, run tread depth, tread 1 1/2 in, total climb
`;

async function picture(text = JOB, name = 'Total run') {
  const session = sessionOn(text);
  const list = document.createElement('div');
  list.setAttribute('role', 'list');
  document.body.append(list);
  const element = await drawn('story-picture', { session, cell: idOf(session, name) });
  element.setAttribute('role', 'listitem');
  list.append(element);
  await framesOf(element);
  return { session, element, list };
}

const altOf = (element: Element): string =>
  found(element, 'svg.sheet').getAttribute('aria-label') ?? '';

const lettersOf = (element: Element): readonly string[] =>
  everyElement(element)
    .filter((one) => one.localName === 'text')
    .map((one) => one.textContent ?? '');

describe('a picture', () => {
  test('is accessible, and says in words what it shows', async () => {
    const { element, list } = await picture();
    expect(await axeFindings(list)).toEqual([]);
    expect(found(element, 'svg.sheet').getAttribute('role')).toBe('img');
    expect(altOf(element)).toBe(
      'Wood flight from the side: 4 risers of 7 1/2 in, 3 treads of 11 in, 33 in of run, 30 in of total rise.',
    );
  });

  test('is drawn again as soon as a cell that it is told changes', async () => {
    const { session, element } = await picture();
    expect(lettersOf(element).filter((text) => text === '7 1/2 in')).toHaveLength(4);
    session.apply((door) => door.setFormula(idOf(session, 'Climb'), '36 1/4 in'));
    await settled(element);
    expect(lettersOf(element).filter((text) => text === '7 1/4 in')).toHaveLength(5);
    expect(altOf(element)).toContain('5 risers of 7 1/4 in');
    session.undo();
    await settled(element);
    expect(altOf(element)).toContain('4 risers of 7 1/2 in');
  });

  test('follows the tape while it slides', async () => {
    const { session, element } = await picture();
    session.openTape(idOf(session, 'Tread depth'));
    session.slideTape('12 in');
    await settled(element);
    expect(altOf(element)).toContain('3 treads of 12 in');
    session.leaveTape();
    await settled(element);
    expect(altOf(element)).toContain('3 treads of 11 in');
  });

  test('that waits is left as it last was, greyed, and says what it waits for', async () => {
    const { session, element } = await picture();
    session.apply((door) => door.setFormula(idOf(session, 'Climb'), '30 in plus $4'));
    await settled(element);
    expect(found(element, 'figure').className).toBe('last');
    expect(altOf(element)).toContain('4 risers of 7 1/2 in');
    expect(wordsOf(element)).toContain('As it last was: the stair section waits for');
    const link = found<HTMLAnchorElement>(element, 'p.waits a');
    link.click();
    expect(session.chosen).not.toBeNull();
    session.undo();
    await settled(element);
    expect(found(element, 'figure').className).toBe('now');
  });

  test('that was never drawn says what it waits for', async () => {
    const { element } = await picture(JOB.replace('30 in', '?'));
    expect(wordsOf(element)).toBe('The stair section waits for Climb .');
    expect(everyElement(element).some((one) => one.localName === 'figure')).toBe(false);
  });

  test('marks what does not agree, and says it', async () => {
    const { session, element } = await picture(
      JOB.replace('rise unit rise', 'rise unit rise, first 6 in'),
    );
    const marked = everyElement(element).filter(
      (one) => one.localName === 'text' && one.classList.contains('wrong'),
    );
    expect(marked.map((one) => one.textContent)).toEqual(['6 in']);
    expect(wordsOf(element)).toContain('The risers end 1 1/2 in short of the floor.');
    expect(session.door.findings().some(({ code }) => code.startsWith('picture'))).toBe(false);
  });

  test('is laid out anew for a narrow page, no words over others and none cut off', async () => {
    const { element } = await picture();
    for (const width of [390, 760, 1440]) {
      await page.viewport(width, 900);
      await framesOf(element);
      const sheet = found(element, 'svg.sheet').getBoundingClientRect();
      const places = everyElement(element)
        .filter((one) => one.localName === 'text')
        .map((one) => one.getBoundingClientRect());
      expect(places.length).toBeGreaterThan(6);
      for (const [i, a] of places.entries()) {
        expect(a.left).toBeGreaterThanOrEqual(sheet.left - 0.5);
        expect(a.right).toBeLessThanOrEqual(sheet.right + 0.5);
        for (const b of places.slice(i + 1)) {
          const over =
            a.left < b.right - 1 &&
            b.left < a.right - 1 &&
            a.top < b.bottom - 3 &&
            b.top < a.bottom - 3;
          expect(over).toBe(false);
        }
      }
    }
  });
});

test('a part draws the picture under the row, and nothing where no remark asks for one', async () => {
  const session = sessionOn(JOB);
  const [, part] = session.door.notebook.parts;
  if (!part) throw new Error('no part');
  const element = await drawn('story-part', { session, content: part, limit: 100 });
  element.setAttribute('role', 'list');
  await expect
    .poll(() => everyElement(element).filter((one) => one.localName === 'story-picture').length)
    .toBe(1);
  const before = found(element, 'story-picture').previousElementSibling;
  expect(before?.getAttribute('data-cell')).toBe(String(idOf(session, 'Total run')));
});

test('a remark that can not be drawn is pointed out in its row, and drawn once it is mended', async () => {
  const session = sessionOn(JOB.replace('run tread depth', 'run tread dept'));
  const id = idOf(session, 'Total run');
  const element = await drawn('story-picture', { session, cell: id });
  expect(everyElement(element).some((one) => one.localName === 'figure')).toBe(false);
  const [finding] = session.door.findings().filter(({ code }) => code.startsWith('picture'));
  const [mend] = finding ? session.door.mendsFor(finding) : [];
  expect(mend?.say).toBe('Write "tread depth"');
  if (mend) session.apply((door) => door.mend(mend));
  await settled(element);
  expect(altOf(element)).toContain('3 treads of 11 in');
});
