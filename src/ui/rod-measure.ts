// Where every row of the page stands, for the rod. A stretch of rows is measured again only when it has
// changed, or has become higher or lower; one that is out of sight and not laid out is taken as even.
import type { RodMark } from './rod-scale.ts';
import type { StoryCell } from './story-cell.ts';
import type { StoryPart } from './story-part.ts';

/** Half the height of a row's first line: marks are level with the words. */
const HALF_LINE = 15;

interface Measured {
  readonly height: number;
  readonly skipped: boolean;
  readonly rows: readonly StoryCell[];
  /** From the top of the stretch. */
  readonly downs: readonly number[];
}

export class RodMeasure {
  readonly #known = new WeakMap<Element, Measured>();

  /** All marks in order; `top` is where the page's content begins on the screen, `placeOf` the place of a part. */
  marks(
    parts: Iterable<StoryPart>,
    top: number,
    placeOf: (key: string) => number,
  ): readonly RodMark[] {
    const marks: RodMark[] = [];
    for (const part of parts) {
      const heading = part.renderRoot.querySelector('header');
      if (heading) {
        const y = heading.getBoundingClientRect().bottom - top - 1;
        marks.push({ kind: 'part', id: placeOf(part.content.key), y: Math.round(y) });
      }
      for (const stretch of part.renderRoot.querySelectorAll('.stretch')) {
        const box = stretch.getBoundingClientRect();
        const { rows, downs } = this.#measured(stretch, box);
        for (const [place, { cell }] of rows.entries()) {
          const y = Math.round(box.top - top + (downs[place] ?? 0));
          marks.push({ kind: cell.money ? 'cost' : 'cell', id: cell.id, y });
        }
      }
    }
    return marks;
  }

  #measured(stretch: Element, { top, height }: DOMRect): Measured {
    const skipped = stretch.hasAttribute('skipped');
    const rows = [...stretch.querySelectorAll<StoryCell>('story-cell')];
    const known = this.#known.get(stretch);
    if (
      known?.height === height &&
      known.skipped === skipped &&
      known.rows.length === rows.length &&
      known.rows.every((row, place) => row === rows[place])
    ) {
      return known;
    }
    const downs = rows.map((row, place) =>
      skipped
        ? ((place + 0.5) / rows.length) * height
        : row.getBoundingClientRect().top - top + HALF_LINE,
    );
    const measured = { height, skipped, rows, downs };
    this.#known.set(stretch, measured);
    return measured;
  }
}

export function sameMarks(a: readonly RodMark[], b: readonly RodMark[]): boolean {
  return (
    a.length === b.length &&
    a.every((mark, i) => mark.id === b[i]?.id && mark.y === b[i].y && mark.kind === b[i].kind)
  );
}
