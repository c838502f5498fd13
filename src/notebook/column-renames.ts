// Renaming a column: its header, the formulas of its own table, and every phrase elsewhere that asks about it;
// and the name of a new one, which leaves every formula reading as it did.
import { nameWords, tokensOf } from '../language/lexer.ts';
import { marks } from '../language/marks.ts';
import type { TableShape } from '../language/table-shape.ts';
import type { CellId } from '../language/tree.ts';
import { plainName, type Vocabulary } from '../language/vocabulary.ts';
import type { Spot } from '../words/spot.ts';
import type { Cell, Splice } from './document.ts';
import { columnAt, columnRefusal } from './column-edits.ts';
import { type Edits, type MeantCell, NOTHING, isRefused } from './edits.ts';
import { keptReadings } from './kept-readings.ts';
import { oneLine } from './lines.ts';
import { type Saying, inPlaceOf, mayName, said, scanOf } from './mentions.ts';
import { type Known, withTexts } from './renames.ts';
import { meantOf, tableOf } from './table-edits.ts';
import { asTableCell } from './table-text.ts';

export function renameColumnEdit(known: Known, cell: Cell, index: number, name: string): Edits {
  const clean = oneLine(name);
  const refusal = columnRefusal(cell, clean, index);
  if (refusal) return refusal;
  const { notebook, vocabulary } = known;
  const shape = shapeOf(vocabulary, cell);
  const table = tableOf(cell);
  const column = columnAt(cell, index);
  const id = shape.columns[index]?.id ?? 0;
  const columns = shape.columns.map((c, k) => (k === index ? { ...c, name: clean } : c));
  const texts = keptReadings({
    notebook,
    vocabulary,
    bring: () => vocabulary.putTable({ ...shape, columns }),
    takeBack: () => vocabulary.putTable(shape),
    names: [clean],
    atFault: (saying) => known.atFault(saying),
    rewrite(saying) {
      if (!mayName(saying.text, column.name)) return null;
      const splices = columnSpots(saying, vocabulary, id).map((spot): Splice => ({
        ...spot,
        insert: inPlaceOf(saying.text.slice(spot.from, spot.to), clean),
      }));
      return splices.length > 0 ? said(saying.text, splices) : null;
    },
  });
  if (isRefused(texts)) return texts;
  const meant = meantOf(table);
  meant.columns[index] = [clean, column.formula];
  const base = cell.spot.from;
  const spot = { from: base + column.nameSpot.from, to: base + column.nameSpot.to };
  const choices = choicesFrom(known, cell.id, (found) => found.column, column.name, clean);
  return [
    withTexts(known, texts, {
      ...NOTHING,
      say: `Rename ${column.name} in ${cell.name} to ${clean}`,
      splices: [{ ...spot, insert: asTableCell(clean) }, ...choices.splices],
      cells: new Map<CellId, MeantCell>([[cell.id, { table: meant }], ...choices.cells]),
    }),
  ];
}

/** The edits that add a column, with every text that its name would have made read otherwise. */
export function withNewColumn(
  known: Known,
  cell: Cell,
  after: number | null,
  name: string,
  edits: Edits,
): Edits {
  if (isRefused(edits)) return edits;
  const { notebook, vocabulary } = known;
  const shape = shapeOf(vocabulary, cell);
  const at = after === null ? shape.columns.length : after + 1;
  const clean = oneLine(name);
  const fresh = { id: NOT_YET, name: clean, cells: [], blanks: [], texts: null };
  const columns = shape.columns.toSpliced(at, 0, fresh);
  const later = (column: number): number => (column < at ? column : column + 1);
  const texts = keptReadings({
    notebook,
    vocabulary,
    bring: () => vocabulary.putTable({ ...shape, columns }),
    takeBack: () => vocabulary.putTable(shape),
    names: [clean],
    atFault: (saying) => known.atFault(saying),
    rewrite: () => null,
    later: (saying) =>
      saying.at && saying.cell === cell.id && saying.at.column >= at
        ? { ...saying, at: { ...saying.at, column: later(saying.at.column) } }
        : saying,
  });
  if (isRefused(texts)) return texts;
  return edits.map((edit) =>
    withTexts(known, texts, edit, (id) => (id === cell.id ? later : same)),
  );
}

/** A column that is only thought of has the id of no cell. */
const NOT_YET = Number.MIN_SAFE_INTEGER;

const same = (column: number): number => column;

/** Remarks that take their choices from a table, said anew where one of their words has another name. */
export function choicesFrom(
  { notebook, vocabulary }: Known,
  table: CellId,
  spotOf: (found: { readonly column: Spot; readonly table: Spot }) => Spot,
  from: string,
  to: string,
): {
  readonly splices: readonly Splice[];
  readonly cells: readonly (readonly [CellId, { readonly remarks: readonly [string, string][] }])[];
} {
  const splices: Splice[] = [];
  const cells: [CellId, { readonly remarks: readonly [string, string][] }][] = [];
  for (const section of notebook.sections) {
    for (const { id } of section.cells) {
      const found = vocabulary.choiceColumn(id);
      const cell = found?.from === table ? notebook.cell(id) : undefined;
      const place = cell?.remarks.findIndex((r) => r.kind === 'choices') ?? -1;
      const remark = cell?.remarks[place];
      if (!found || !cell || !remark) continue;
      const spot = spotOf(found.spots);
      if (!sameWords(remark.text.slice(spot.from, spot.to), from)) continue;
      const text = said(remark.text, [{ ...spot, insert: plainName(to) }]);
      splices.push({ from: remark.textSpot.from, to: remark.textSpot.to, insert: text });
      const remarks = cell.remarks.map((r, i): [string, string] => [
        r.word,
        i === place ? text : r.text,
      ]);
      cells.push([id, { remarks }]);
    }
  }
  return { splices, cells };
}

function sameWords(text: string, name: string): boolean {
  return nameWords(text).slice(-nameWords(name).length).join(' ') === nameWords(name).join(' ');
}

/** Where a text names this column: in a row of its table by name, elsewhere in a phrase. */
export function columnSpots(
  saying: Saying,
  vocabulary: Vocabulary,
  column: CellId,
): readonly Spot[] {
  const found = marks(scanOf(saying.text, saying, vocabulary));
  return found
    .filter((mark) => mark.cell === column || mark.column === column)
    .map(({ from, to }) => {
      // An article before the name is not part of it.
      const tokens = tokensOf(saying.text.slice(from, to)).slice(0, -1);
      const skip = tokens.length > 1 && /^(the|a|an)$/.test(tokens[0].text) ? tokens[1].from : 0;
      return { from: from + skip, to };
    });
}

export function shapeOf(vocabulary: Vocabulary, cell: Cell): TableShape {
  const shape = vocabulary.table(cell.id);
  if (!shape) throw new Error(`"${cell.name}" holds no table`);
  return shape;
}
