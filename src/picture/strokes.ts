// What lies on a sheet beside the shapes: strokes of dimensions and the letters of words, in pixels.
import type { Point } from './drawing.ts';

/** Of the words, in pixels. */
export const FONT = 12;

export interface Stroke {
  readonly from: Point;
  readonly to: Point;
  readonly line: 'dimension' | 'extension' | 'tick' | 'leader' | 'bar';
  readonly wrong: boolean;
}

export interface Lettering {
  readonly x: number;
  /** Of the line on which the letters stand. */
  readonly y: number;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly wrong: boolean;
}

/** How wide these words are at most; the face is the reader's own. */
export function wideOf(text: string): number {
  let wide = 0;
  for (const letter of text) {
    wide +=
      letter === ' ' ? 0.31 : /[/.,:il'|]/.test(letter) ? 0.34 : /[mwMW]/.test(letter) ? 0.9 : 0.6;
  }
  return wide * FONT;
}

export function line(
  kind: Stroke['line'],
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  wrong = false,
): Stroke {
  return { line: kind, from: { x: x1, y: y1 }, to: { x: x2, y: y2 }, wrong };
}
