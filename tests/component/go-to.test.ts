// Going to a place by some of its name: what is found, in which order, and where the keys lead.
import { beforeEach, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/ui/go-to.ts';
import type { Happening } from '../../src/ui/happening.ts';
import type { Session } from '../../src/ui/session.ts';
import { SMALL_JOB, axeFindings, drawn, found, idOf, sessionOn, settled } from './drawn.ts';

let session: Session;
let element: HTMLElementTagNameMap['go-to'];
let happened: Happening[];

beforeEach(async () => {
  document.body.replaceChildren();
  session = sessionOn(SMALL_JOB);
  happened = [];
  session.listen((happening) => happened.push(happening));
  element = await drawn('go-to', { session });
});

const names = (): string[] =>
  [...(element.shadowRoot?.querySelectorAll('[role=option] b') ?? [])].map(
    (b) => b.textContent ?? '',
  );

async function type(text: string): Promise<void> {
  await userEvent.fill(found(element, 'input'), text);
  await settled(element);
}

test('is accessible, and begins with everything', async () => {
  expect(names()[0]).toBe('Landing');
  expect(names()).toHaveLength(11);
  expect(await axeFindings(element)).toEqual([]);
});

test('finds by the beginnings of words, in any order; names that begin so first', async () => {
  await type('ba');
  expect(names()).toEqual(['Bag yield', 'Bags to buy', 'Bag price']);
  await type('yield ba');
  expect(names()).toEqual(['Bag yield']);
  await type('nothing like it');
  expect(names()).toEqual([]);
  expect(element.shadowRoot?.textContent).toContain('Nothing here is called so.');
});

test('Enter goes to the one that is marked, which arrows move', async () => {
  await type('slab');
  await userEvent.keyboard('{ArrowDown}{Enter}');
  expect(session.chosen).toBe(idOf(session, 'Slab width'));
  expect(happened.at(-1)).toMatchObject({ kind: 'bring', keyboard: 'goes' });
});

test('a part is gone to as well', async () => {
  await type('landing');
  await userEvent.keyboard('{Enter}');
  expect(happened.at(-1)?.kind).toBe('bring-part');
});
