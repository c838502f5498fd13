// The rod: marks for all cells at once, notches for what the chosen cell rests on, and scrolling.
import { describe, expect, test } from 'vitest';
import '../../src/ui/story-rod.ts';
import type { RodMark } from '../../src/ui/rod-scale.ts';
import {
  SMALL_JOB,
  axeFindings,
  drawn,
  everyElement,
  found,
  idOf,
  sessionOn,
  settled,
  wordsOf,
} from './drawn.ts';

const HEIGHT = 600;

async function rod() {
  const session = sessionOn(SMALL_JOB);
  const names = [
    'Slab length',
    'Slab width',
    'Thickness',
    'Slab volume',
    'Waste',
    'Bag yield',
    'Bags to buy',
  ];
  const marks: RodMark[] = [
    {
      kind: 'part',
      id: session.door.notebook.parts.findIndex(({ name }) => name === 'Landing'),
      y: 50,
    },
    ...names.map((name, place): RodMark => ({
      kind: 'cell',
      id: idOf(session, name),
      y: 100 + place * 30,
    })),
    { kind: 'cost', id: idOf(session, 'Concrete'), y: 1500 },
  ];
  const element = await drawn('story-rod', {
    session,
    marks,
    view: { height: HEIGHT, scroll: 0, total: 2000 },
  });
  element.setAttribute('role', 'scrollbar');
  element.setAttribute('aria-label', 'The rod');
  element.setAttribute('aria-controls', 'page');
  element.setAttribute('aria-valuenow', '0');
  element.setAttribute('aria-orientation', 'vertical');
  element.style.height = `${HEIGHT}px`;
  const page = document.createElement('div');
  page.id = 'page';
  document.body.append(page);
  return { session, element };
}

const cuts = (element: Element, side: string): number =>
  everyElement(element).filter((one) => one.matches(`.saw.${side}`)).length;

describe('the rod', () => {
  test('is accessible', async () => {
    const { session, element } = await rod();
    session.choose(idOf(session, 'Bags to buy'));
    await settled(element);
    expect(await axeFindings(document.body)).toEqual([]);
  });

  test('has one mark a cell, a longer one for a cost and a full one for a part', async () => {
    const { element } = await rod();
    const marks = [...(element.shadowRoot?.querySelectorAll('path.marks') ?? [])]
      .map((path) => path.getAttribute('d') ?? '')
      .filter((d) => d !== '');
    expect(marks.join('').match(/M/g)).toHaveLength(9);
    expect(wordsOf(element)).toContain('Landing to here $259.20');
  });

  test('is notched on the left by what the chosen cell was worked from, with name and value', async () => {
    const { session, element } = await rod();
    session.choose(idOf(session, 'Bags to buy'));
    await settled(element);
    expect(cuts(element, 'left')).toBe(3);
    expect(wordsOf(element)).toContain(
      'Slab volume 16 cubic feet Waste 10% Bag yield 0.45 cubic feet per bag',
    );
  });

  test('is notched on the right by what it goes into, also out of sight', async () => {
    const { session, element } = await rod();
    session.choose(idOf(session, 'Bags to buy'));
    await settled(element);
    expect(cuts(element, 'right')).toBe(1);
    const d = found(element, '.saw.right').getAttribute('d') ?? '';
    expect(Number(/M\d+ ([\d.]+)/.exec(d)?.[1])).toBeGreaterThan(HEIGHT - 90);
  });

  test('has a crow’s-foot at the chosen cell, level with its row', async () => {
    const { session, element } = await rod();
    session.choose(idOf(session, 'Waste'));
    await settled(element);
    expect(found(element, '.foot').getAttribute('d')).toMatch(/L\d+ 220L/);
  });

  test('a press on its folded end travels there', async () => {
    const { element } = await rod();
    const gone: number[] = [];
    element.addEventListener('travel', (event) => gone.push((event as CustomEvent<number>).detail));
    element.setPointerCapture = () => undefined;
    const box = element.getBoundingClientRect();
    element.dispatchEvent(
      new PointerEvent('pointerdown', {
        clientX: box.right - 20,
        clientY: box.top + HEIGHT - 1,
        button: 0,
      }),
    );
    expect(gone).toHaveLength(1);
    expect(gone[0]).toBeGreaterThan(1500);
  });

  test('on a narrow screen stands without labels', async () => {
    const { session, element } = await rod();
    element.narrow = true;
    session.choose(idOf(session, 'Bags to buy'));
    await settled(element);
    expect(wordsOf(element)).toBe('');
    expect(cuts(element, 'left')).toBe(3);
  });
});
