// An amount put into a given from a sheet: as it has to be written so that a range stays where it can, in its cell or row.
import type { CellId } from '../language/tree.ts';
import { withPlainValue } from '../notebook/ranges.ts';
import type { Answer } from '../moves-it/would-take.ts';
import { readFor } from '../moves-it/putting.ts';
import { Dec } from '../quantity/decimal.ts';
import { placeOf } from './row-places.ts';
import type { Door, Session } from './session.ts';

export interface Written {
  readonly formula: string;
  /** The given has a range that this amount lies beyond: it goes. */
  readonly losesRange: boolean;
}

/** Null where the amount can't be written so that it reads back. */
export function writtenIn(door: Door, given: CellId, { formula, value }: Answer): Written | null {
  if (formula === null) return null;
  const { reading, range } = door.state(given);
  if (!range) return { formula, losesRange: false };
  const kept = withPlainValue(reading, formula);
  const read = readFor(door, given, kept);
  const isSame = read.kind === 'value' && read.value instanceof Dec && read.value.eq(value);
  return isSame ? { formula: kept, losesRange: false } : { formula, losesRange: true };
}

/** One step that undo takes back; false where it was refused, as the session tells. */
export function putIn(session: Session, given: CellId, formula: string): boolean {
  const at = placeOf(session.door, given);
  return session.apply((door) =>
    at ? door.setRowCell(at.cell, at.row, at.column, formula) : door.setFormula(given, formula),
  );
}
