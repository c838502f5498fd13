// What a set of edits touches, while it is being found out.
import type { CellRecord } from './record.ts';

export class Change {
  readonly added: CellRecord[] = [];
  /** Names of cells that came or went, and of parts. */
  readonly names: string[] = [];
  readonly partNames: string[] = [];
  /** Cells whose names have to be found anew. */
  readonly scan = new Set<CellRecord>();
  /** Cells whose formulas have to be read anew. */
  readonly read = new Set<CellRecord>();
  readonly dropped = new Set<CellRecord>();
  /** Cost lines may have come, gone or moved. */
  lines = false;
  /** The order of the cells may have gaps or lack some. */
  order = false;
  /** Cells of rows whose own text changed: what their column shares still holds. */
  readonly ownText = new Set<CellRecord>();
  /** Columns whose cells are others than before. */
  readonly columns = new Set<CellRecord>();
  /** Texts that may be chosen may have come or gone. */
  choices = false;
}
