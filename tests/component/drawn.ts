// Draws a component on the real page's paper, with a real estimate behind it, and looks at it for accessibility.
import axe from 'axe-core';
import { afterEach, beforeEach } from 'vitest';
import { page } from 'vitest/browser';
import type { LitElement } from 'lit';
import { Estimate } from '../../src/notebook/estimate.ts';
import { asidesOf, explaining } from '../../src/ui/asides.ts';
import { allCells } from '../../src/ui/reading-order.ts';
import { Session } from '../../src/ui/session.ts';
import '../../src/ui/page.css';

/** A small job with a given of each kind, a cost line, a check and something worked from something worked. */
export const SMALL_JOB = `# Back step

Two lines of prose that were broken
to fit a file.

## Landing

- Slab length: 12 ft
  - from: measured on site, 2026-03-03
  - sensible: 6 ft up to 20 ft
- Slab width: 4 ft
  - from: measured on site, 2026-03-03
- Thickness: 4 in
  - from: chosen
  - sensible: 3 1/2 in up to 8 in
- Slab volume: slab length by slab width by thickness
- Waste: 10%
  - from: rule of thumb
- Bag yield: 0.45 cubic feet per bag
  - from: bag label
- Bags to buy: slab volume plus waste, divided by bag yield, rounded up
- Bag price: $6.48 per bag
  - from: an invented price
- Concrete: bags to buy at bag price
  - cost: material
- Thickness check: thickness is at least 3 1/2 in
  - caution: Too thin for a slab on the ground; ask the local building department.
`;

// Workings are part of what is drawn from the first moment on.
await explaining;

export function sessionOn(text: string): Session {
  const door = new Estimate(text);
  return new Session(door, asidesOf(door));
}

/** The id of the cell of this name. */
export function idOf(session: Session, name: string): number {
  const cell = allCells(session.door.notebook).find((one) => one.name === name);
  if (!cell) throw new Error(`no cell called ${name}`);
  return cell.id;
}

export function cellOf(session: Session, name: string) {
  const cell = session.cell(idOf(session, name));
  if (!cell) throw new Error(`no cell called ${name}`);
  return cell;
}

/** What the cell shows now. */
export function shownOf(session: Session, name: string): string | null {
  return session.door.shown(idOf(session, name))?.text ?? null;
}

/** Puts an element with these properties on the page and waits until it is drawn. */
export async function drawn<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  properties: Partial<HTMLElementTagNameMap[K]>,
): Promise<HTMLElementTagNameMap[K]> {
  const element = Object.assign(document.createElement(tag), properties);
  document.body.append(element);
  await settled(element);
  return element;
}

/** Until nothing in it waits to be drawn. */
export async function settled(element: Element): Promise<void> {
  for (let round = 0; round < 4; round++) {
    for (const inner of everyElement(element)) {
      if ('updateComplete' in inner) await (inner as LitElement).updateComplete;
    }
  }
}

/** Until two more frames were drawn and nothing waits any more: what is put off to the next frame is done. */
export async function framesOf(element: Element): Promise<void> {
  await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
  await settled(element);
}

/** The element and all below it, through open shadow roots. */
export function everyElement(root: Element): readonly Element[] {
  const inside = [...(root.shadowRoot?.children ?? []), ...root.children];
  return [root, ...inside.flatMap(everyElement)];
}

/** All of an element's words, as they would be read, through shadow roots. */
export function wordsOf(root: Element): string {
  const words: string[] = [];
  const visit = (node: Node): void => {
    if (node instanceof Text) words.push(node.data);
    if (node instanceof HTMLStyleElement) return;
    if (node instanceof Element) {
      for (const child of node.shadowRoot?.childNodes ?? []) visit(child);
    }
    for (const child of node.childNodes) visit(child);
  };
  visit(root);
  return words.join(' ').replace(/\s+/g, ' ').trim();
}

/** The one element that matches, wherever in shadow roots it stands. */
export function found<T extends HTMLElement = HTMLElement>(root: Element, selector: string): T {
  const all = everyElement(root).filter((one) => one.matches(selector));
  const [first] = all;
  if (!first) throw new Error(`nothing matches ${selector} in: ${wordsOf(root)}`);
  return first as T;
}

/** The button that says this. */
export function button(root: Element, says: string): HTMLButtonElement {
  const match = everyElement(root).find(
    (one) =>
      one instanceof HTMLButtonElement &&
      (one.getAttribute('aria-label') ?? one.textContent ?? '').replace(/\s+/g, ' ').includes(says),
  );
  if (!match) throw new Error(`no button says ${says} in: ${wordsOf(root)}`);
  return match as HTMLButtonElement;
}

/** What axe finds, as sentences; the page rules that need a whole page are left to the whole page. */
export async function axeFindings(element: Element): Promise<readonly string[]> {
  const { violations } = await axe.run(element, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    rules: { region: { enabled: false }, 'page-has-heading-one': { enabled: false } },
  });
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.html).join(' | ')}`,
  );
}

/** Presses a key on whatever has the keyboard, through shadow roots. */
export function focusedElement(): Element | null {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  return at;
}

beforeEach(async () => {
  await page.viewport(1280, 800);
});

afterEach(() => {
  document.body.replaceChildren();
});
