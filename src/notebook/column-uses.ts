// What names a column, told before it goes: the columns and rows of its own table, formulas elsewhere, choices.
import type { CellId } from '../language/tree.ts';
import { columnSpots, shapeOf } from './column-renames.ts';
import { columnAt } from './column-edits.ts';
import type { Cell } from './document.ts';
import { type Named, type Saying, mayName, namesIn, sayingsOf } from './mentions.ts';
import { nameKey } from './names.ts';
import type { Known } from './renames.ts';

export interface ColumnUse {
  /** The cell that names it: the table's own, or another. */
  readonly cell: CellId;
  readonly where: 'formula' | 'by hand' | 'picture' | 'choices' | 'column' | 'row';
  /** Of a column of its own table, or of another: its name. Null elsewhere. */
  readonly column: string | null;
  readonly text: string;
  /** Another cell of its name that the text would read in its place, as it is called; null: the name is missing then. */
  readonly then: string | null;
}

export function columnUses(known: Known, cell: Cell, index: number): readonly ColumnUse[] {
  const { notebook, vocabulary } = known;
  const shape = shapeOf(vocabulary, cell);
  const { name } = columnAt(cell, index);
  const id = shape.columns[index]?.id ?? 0;
  const found: { readonly saying: Saying; readonly names: Named }[] = [];
  for (const saying of sayingsOf(notebook)) {
    const own = saying.cell === cell.id && saying.at?.column === index;
    if (own || !mayName(saying.text, name)) continue;
    if (columnSpots(saying, vocabulary, id).length === 0) continue;
    found.push({ saying, names: namesIn(saying.text, saying, vocabulary) });
  }
  const uses: ColumnUse[] = [];
  vocabulary.putTable({ ...shape, columns: shape.columns.filter((_, k) => k !== index) });
  try {
    for (const { saying, names } of found) {
      const now = namesIn(saying.text, without(saying, cell.id, index), vocabulary);
      const other = now.names.find((one) => !names.names.includes(one));
      uses.push({
        ...useOf(known, saying),
        then: other === undefined ? null : sayCell(known, other),
      });
    }
  } finally {
    vocabulary.putTable(shape);
  }
  return [...uses, ...choicesOf(known, cell, name)];
}

/** Where the text stands once the column is gone. */
function without(saying: Saying, table: CellId, index: number): Saying {
  const { at, cell } = saying;
  if (!at || cell !== table || at.column < index) return saying;
  return { ...saying, at: { ...at, column: at.column - 1 } };
}

function useOf({ notebook }: Known, { cell, at, where, text }: Saying): Omit<ColumnUse, 'then'> {
  if (!at) return { cell, where: where === 'table' ? 'formula' : where, column: null, text };
  const column = notebook.cell(cell)?.table?.columns[at.column]?.name ?? '';
  return { cell, where: at.row === null ? 'column' : 'row', column, text };
}

/** `Landing thickness` */
function sayCell({ vocabulary }: Known, id: CellId): string {
  const cell = vocabulary.cell(id);
  if (!cell) return '';
  return `${vocabulary.partName(cell.part)} ${cell.name.toLowerCase()}`.trim();
}

function choicesOf(
  { notebook, vocabulary }: Known,
  table: Cell,
  name: string,
): readonly ColumnUse[] {
  return notebook.sections.flatMap((section) =>
    section.cells.flatMap((cell): readonly ColumnUse[] => {
      const found = vocabulary.choiceColumn(cell.id);
      const text = cell.remarks.find((r) => r.kind === 'choices')?.text;
      if (found?.from !== table.id || text === undefined) return [];
      const { column } = found.spots;
      if (nameKey(text.slice(column.from, column.to)) !== nameKey(name)) return [];
      return [{ cell: cell.id, where: 'choices', column: null, text, then: null }];
    }),
  );
}
