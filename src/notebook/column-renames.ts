// Renaming a column: its header, the formulas of its own table, and every phrase elsewhere that asks about it.
import { nameWords, tokensOf } from '../language/lexer.ts';
import { marks } from '../language/marks.ts';
import type { CellId } from '../language/tree.ts';
import { type Vocabulary, plainName } from '../language/vocabulary.ts';
import type { Spot } from '../words/spot.ts';
import type { Cell, Splice } from './document.ts';
import { type Edits, type MeantCell, NOTHING, refused } from './edits.ts';
import type { Rewritten } from './kept-readings.ts';
import { oneLine } from './lines.ts';
import { type Saying, inPlaceOf, mayName, said, sayingsOf, scanOf } from './mentions.ts';
import { type Known, withTexts } from './renames.ts';
import { columnRefusal, meantOf, tableOf } from './table-edits.ts';
import { asTableCell } from './table-text.ts';

export function renameColumnEdit(known: Known, cell: Cell, index: number, name: string): Edits {
  const clean = oneLine(name);
  const refusal = columnRefusal(cell, clean, index);
  if (refusal) return refusal;
  const { notebook, vocabulary } = known;
  const shape = vocabulary.table(cell.id);
  const table = tableOf(cell);
  const column = table.columns[index];
  const id = shape?.columns[index]?.id;
  if (!shape || !column || id === undefined)
    throw new Error(`"${cell.name}" has no column ${index}`);
  const before: { saying: Saying; text: string; named: string }[] = [];
  for (const saying of sayingsOf(notebook)) {
    if (!mayName(saying.text, column.name) && !mayName(saying.text, clean)) continue;
    const splices = spotsOf(saying, vocabulary, id).map((spot): Splice => ({
      ...spot,
      insert: inPlaceOf(saying.text.slice(spot.from, spot.to), clean),
    }));
    before.push({ saying, text: said(saying.text, splices), named: namedIn(saying, vocabulary) });
  }
  const columns = shape.columns.map((c, k) => (k === index ? { ...c, name: clean } : c));
  vocabulary.putTable({ ...shape, columns });
  let odd: Saying | undefined;
  try {
    odd = before.find(
      ({ saying, text, named }) =>
        !known.atFault(saying.cell) && namedIn({ ...saying, text }, vocabulary) !== named,
    )?.saying;
  } finally {
    vocabulary.putTable(shape);
  }
  if (odd) {
    const where = vocabulary.cell(odd.cell)?.name ?? '';
    return refused(
      'name-changes-reading',
      `With this name "${odd.text}" in "${where}" would read differently. Try another name.`,
      odd.part,
      odd.cell,
    );
  }
  const texts = before.flatMap(({ saying, text }): readonly Rewritten[] =>
    text === saying.text ? [] : [{ saying, text, mended: [] }],
  );
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
function spotsOf(saying: Saying, vocabulary: Vocabulary, column: CellId): readonly Spot[] {
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

function namedIn(saying: Saying, vocabulary: Vocabulary): string {
  const found = scanOf(saying.text, saying, vocabulary);
  const names = marks(found).flatMap((m) => m.cell ?? m.column ?? []);
  return JSON.stringify([names, found.mentions, found.columns, found.recaps]);
}
