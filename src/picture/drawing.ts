// A drawing before it has a size on paper: shapes in inches (y runs down), chains of dimensions along its sides,
// the key of what is drawn how, and the sentence that says it to whoever can't see it.

/** `cut`: what the section passes through; `outline`: what is seen; `light`: laid on or in it; `hidden`: below it. */
export type Line = 'none' | 'cut' | 'outline' | 'light' | 'hidden' | 'centre' | 'strong' | 'wrong';

/** Hatches as drawings have them. `paper` covers what lies below. */
export type Fill =
  | 'none'
  | 'paper'
  | 'concrete'
  | 'stone'
  | 'earth'
  | 'wood'
  | 'end-grain'
  | 'unit'
  | 'house'
  | 'solid'
  | 'wrong';

export interface Point {
  readonly x: number;
  readonly y: number;
}

export type Shape =
  | {
      readonly kind: 'path';
      readonly points: readonly Point[];
      readonly closed: boolean;
      readonly line: Line;
      readonly fill: Fill;
    }
  | {
      readonly kind: 'round';
      readonly centre: Point;
      readonly radius: number;
      readonly line: Line;
      readonly fill: Fill;
    }
  /** An arrow keeps the size of its head whatever the scale. */
  | { readonly kind: 'arrow'; readonly from: Point; readonly to: Point }
  /** A dot that is seen at any scale: a bar cut through. */
  | { readonly kind: 'dot'; readonly at: Point };

/** Dimensions one after the other along a side; the first chain told of a side stands nearest to the drawing. */
export interface Chain {
  readonly side: 'top' | 'bottom' | 'left' | 'right';
  /** Where its ticks are, from low to high: x for top and bottom, y for left and right. */
  readonly stops: readonly number[];
  /** What each piece between two ticks says; null: nothing. */
  readonly says: readonly (string | null)[];
  /** Pieces that don't agree with the others. */
  readonly wrong?: readonly number[];
}

export interface Word {
  readonly at: Point;
  readonly text: string;
}

export interface KeyItem {
  readonly line: Line;
  readonly fill: Fill;
  readonly text: string;
}

export interface Drawing {
  readonly name: string;
  readonly shapes: readonly Shape[];
  readonly chains: readonly Chain[];
  readonly words: readonly Word[];
  readonly key: readonly KeyItem[];
  /** One or two sentences with the main dimensions. */
  readonly alt: string;
  /** What does not agree, in sentences; also in `alt`. */
  readonly wrong: readonly string[];
}

export function rectangle(
  x: number,
  y: number,
  width: number,
  height: number,
  line: Line,
  fill: Fill,
): Shape {
  return area(
    [
      { x, y },
      { x: x + width, y },
      { x: x + width, y: y + height },
      { x, y: y + height },
    ],
    line,
    fill,
  );
}

export function area(points: readonly Point[], line: Line, fill: Fill): Shape {
  return { kind: 'path', points, closed: true, line, fill };
}

export function stroke(points: readonly Point[], line: Line): Shape {
  return { kind: 'path', points, closed: false, line, fill: 'none' };
}

export function straight(x1: number, y1: number, x2: number, y2: number, line: Line): Shape {
  return stroke(
    [
      { x: x1, y: y1 },
      { x: x2, y: y2 },
    ],
    line,
  );
}

/** The smallest box around all shapes and what is dimensioned. */
export function boundsOf({ shapes, chains }: Pick<Drawing, 'shapes' | 'chains'>): {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
} {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = (x: number, y: number): void => {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  };
  for (const { side, stops } of chains) {
    const isLevel = side === 'top' || side === 'bottom';
    for (const stop of stops) {
      if (isLevel) {
        left = Math.min(left, stop);
        right = Math.max(right, stop);
      } else {
        top = Math.min(top, stop);
        bottom = Math.max(bottom, stop);
      }
    }
  }
  for (const shape of shapes) {
    if (shape.kind === 'path') for (const { x, y } of shape.points) take(x, y);
    else if (shape.kind === 'round') {
      const { centre, radius } = shape;
      take(centre.x - radius, centre.y - radius);
      take(centre.x + radius, centre.y + radius);
    } else if (shape.kind === 'dot') take(shape.at.x, shape.at.y);
    else {
      take(shape.from.x, shape.from.y);
      take(shape.to.x, shape.to.y);
    }
  }
  return { left, top, right, bottom };
}
