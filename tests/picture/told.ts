// For the tests of pictures: a picture told in the words of its remark, worked in a notebook and drawn.
import { expect } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { draw, sheetOf, wideOf } from '../../src/picture/draw.ts';
import type { Drawing, Shape } from '../../src/picture/drawing.ts';
import type { Sheet } from '../../src/picture/sheet.ts';

/** The drawing of a remark; `cells` are further lines of its part. */
export function drawn(remark: string, cells = ''): Drawing {
  const estimate = new Estimate(`## Yard\n\n${cells}- Drawn: 1 ft\n  - picture: ${remark}\n`);
  const cell = estimate.notebook.parts
    .flatMap(({ blocks }) => blocks)
    .flatMap((block) => (block.kind === 'cell' ? [block.cell] : []))
    .find(({ name }) => name === 'Drawn');
  const [picture] = cell ? estimate.picturesOf(cell.id) : [];
  if (picture?.kind !== 'drawn') throw new Error(`not drawn: ${JSON.stringify(picture)}`);
  return draw(picture.name, picture.given);
}

/** What the chains of a side say, one list a chain; what says nothing is left out. */
export function said({ chains }: Drawing, side: Drawing['chains'][number]['side']) {
  return chains
    .filter((chain) => chain.side === side)
    .map(({ says }) => says.filter((text) => text !== null));
}

/** Filled shapes of a line and a fill, as boxes: left, top, width, height. */
export function boxes({ shapes }: Drawing, line: string, fill: string) {
  return shapes
    .filter((shape) => shape.kind === 'path' && shape.line === line && shape.fill === fill)
    .map(boxOf);
}

function boxOf(shape: Shape): readonly number[] {
  if (shape.kind !== 'path') throw new Error('only paths have boxes here');
  const xs = shape.points.map(({ x }) => x);
  const ys = shape.points.map(({ y }) => y);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return [left, top, Math.max(...xs) - left, Math.max(...ys) - top];
}

export const SIZES = [350, 480, 620] as const;

/** Every number is one, no words lie over others, and nothing stands beyond the sheet. */
export function expectTidy(sheet: Sheet): void {
  const places = sheet.letters.map(({ x, y, text, anchor }) => {
    const wide = wideOf(text);
    const left = anchor === 'start' ? x : anchor === 'end' ? x - wide : x - wide / 2;
    return { text, left, right: left + wide, top: y - 9, bottom: y + 2 };
  });
  for (const [i, a] of places.entries()) {
    expect(Object.values(a).every((v) => typeof v === 'string' || Number.isFinite(v))).toBe(true);
    expect(a.left, `"${a.text}" is cut off`).toBeGreaterThanOrEqual(-1);
    expect(a.right, `"${a.text}" is cut off`).toBeLessThanOrEqual(sheet.width + 1);
    expect(a.top, `"${a.text}" is cut off`).toBeGreaterThanOrEqual(-1);
    expect(a.bottom, `"${a.text}" is cut off`).toBeLessThanOrEqual(sheet.height + 1);
    for (const b of places.slice(i + 1)) {
      const over = a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
      expect(over, `"${a.text}" lies over "${b.text}"`).toBe(false);
    }
  }
  const numbers = [
    ...sheet.shapes.flatMap((s) =>
      s.kind === 'path'
        ? s.points.flatMap(({ x, y }) => [x, y])
        : [s.centre.x, s.centre.y, s.radius],
    ),
    ...sheet.strokes.flatMap(({ from, to }) => [from.x, from.y, to.x, to.y]),
  ];
  expect(numbers.filter((n) => !Number.isFinite(n))).toEqual([]);
}

export { sheetOf };
