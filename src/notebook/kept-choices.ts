// Choices that are taken from a column are taken from it still after names have moved or come in: where the words
// of the remark would find another table or none, the part's name goes before the table's.
import type { CellId } from '../language/tree.ts';
import { plainName } from '../language/vocabulary.ts';
import type { Splice } from './document.ts';
import { said } from './mentions.ts';
import type { Known } from './renames.ts';

export interface ChoicesSaid {
  readonly cell: CellId;
  readonly splice: Splice;
  /** All remarks of the cell as they have to be read back. */
  readonly remarks: readonly (readonly [string, string])[];
}

export function keptChoices(
  { notebook, vocabulary }: Known,
  names: { bring(): void; takeBack(): void },
): readonly ChoicesSaid[] {
  const before = notebook.sections
    .flatMap((section) => section.cells)
    .flatMap(({ id }) => {
      const found = vocabulary.choiceColumn(id);
      return found ? [{ id, found }] : [];
    });
  if (before.length === 0) return [];
  names.bring();
  try {
    return before.flatMap(({ id, found }): readonly ChoicesSaid[] => {
      if (vocabulary.choiceColumn(id)?.from === found.from) return [];
      const cell = notebook.cell(id);
      const table = vocabulary.cell(found.from);
      const index = cell?.remarks.findIndex((r) => r.kind === 'choices') ?? -1;
      const remark = cell?.remarks[index];
      if (!cell || !remark || !table) return [];
      const insert = `${vocabulary.partName(table.part)} ${plainName(table.name)}`.trim();
      const text = said(remark.text, [{ ...found.spots.table, insert }]);
      const { from, to } = remark.textSpot;
      const remarks = cell.remarks.map((r, i) => [r.word, i === index ? text : r.text] as const);
      return [{ cell: id, splice: { from, to, insert: text }, remarks }];
    });
  } finally {
    names.takeBack();
  }
}
