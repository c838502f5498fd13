// Which givens are drawn together: those whose `moves with` remarks say the same, as far as they have a range.
import type { CellId } from '../language/tree.ts';
import { cellsOf } from '../notebook/lines.ts';
import { tiesAmong } from '../notebook/ties.ts';
import type { Job } from './figures.ts';
import { spreadOf } from './spread.ts';

/** A table that is tied stands for the givens in its rows. */
export function tiesOf(job: Job): readonly (readonly CellId[])[] {
  return tiesAmong(job.notebook.parts.flatMap(cellsOf)).flatMap(({ cells }) => {
    const tied = cells
      .flatMap(({ id, table }) => (table ? (job.rows(id)?.flat() ?? []) : [id]))
      .filter((cell) => spreadOf(job.state(cell)) !== null);
    return tied.length > 1 ? [tied] : [];
  });
}
