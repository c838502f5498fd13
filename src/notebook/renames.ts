// Renaming a cell or a part: the name where it stands, and every formula that mentions it.
import type { CellId } from '../language/tree.ts';
import type { Vocabulary } from '../language/vocabulary.ts';
import type { Cell, Part, Splice } from './document.ts';
import {
  type Edit,
  type Edits,
  type MeantCell,
  NOTHING,
  formulaSplice,
  isRefused,
  nameRefusal,
  partNameSplice,
  partRefusal,
} from './edits.ts';
import { type Rewritten, keptReadings } from './kept-readings.ts';
import {
  type Saying,
  cellOf,
  inPlaceOf,
  mentionsIn,
  nameWithin,
  partWithin,
  recapSpots,
  said,
} from './mentions.ts';
import { choicesFrom } from './column-renames.ts';
import { nameKey } from './names.ts';
import { meantOf, rowSplices, tableOf } from './table-edits.ts';
import { asTableCell } from './table-text.ts';
import type { NotebookText } from './notebook-text.ts';

/** Who knows the names of a notebook, and which of its formulas can't be read. */
export interface Known {
  readonly notebook: NotebookText;
  readonly vocabulary: Vocabulary;
  atFault(saying: Saying): boolean;
}

export function renameEdit(known: Known, part: Part, cell: Cell, name: string): Edits {
  const clean = name.trim();
  const refusal = nameRefusal(part, clean, cell.id);
  if (refusal) return refusal;
  const { notebook, vocabulary } = known;
  const swap = (to: string) => (): void => {
    vocabulary.remove(cell.id);
    vocabulary.add({ id: cell.id, name: to, part: cell.part });
  };
  const texts = keptReadings({
    ...known,
    notebook,
    vocabulary,
    bring: swap(clean),
    takeBack: swap(cell.name),
    names: [clean],
    atFault: (saying) => known.atFault(saying),
    rewrite(saying) {
      if (!saying.text.toLowerCase().includes(firstWord(cell.name))) return null;
      const splices = mentionsIn(saying.text, saying, vocabulary)
        .filter((m) => m.cell === cell.id)
        .map((m): Splice => {
          const spot = nameWithin(saying.text, m, cell.name);
          return { ...spot, insert: inPlaceOf(saying.text.slice(spot.from, spot.to), clean) };
        });
      return splices.length > 0 ? said(saying.text, splices) : null;
    },
  });
  if (isRefused(texts)) return texts;
  const choices = choicesFrom(known, cell.id, (found) => found.table, cell.name, clean);
  return [
    withTexts(known, texts, {
      ...NOTHING,
      say: `Rename ${cell.name} to ${clean}`,
      splices: [{ ...cell.nameSpot, insert: clean }, ...choices.splices],
      cells: new Map<CellId, MeantCell>([[cell.id, { name: clean }], ...choices.cells]),
    }),
  ];
}

export function renamePartEdit(known: Known, part: Part, name: string): Edits {
  const clean = name.trim();
  const { notebook, vocabulary } = known;
  const refusal = partRefusal(notebook, clean, part.key);
  if (refusal) return refusal;
  const parts = vocabulary.parts;
  const texts = keptReadings({
    notebook,
    vocabulary,
    bring: () =>
      vocabulary.setParts(parts.map((p) => (p.key === part.key ? { key: p.key, name: clean } : p))),
    takeBack: () => vocabulary.setParts(parts),
    names: [clean],
    atFault: (saying) => known.atFault(saying),
    rewrite(saying) {
      if (!saying.text.toLowerCase().includes(firstWord(part.name))) return null;
      const spots = mentionsIn(saying.text, saying, vocabulary)
        .filter((m) => vocabulary.cell(m.cell)?.part === part.key)
        .flatMap(
          (m) => partWithin(saying.text, m, vocabulary.cell(m.cell)?.name ?? '', part.name) ?? [],
        );
      spots.push(...recapSpots(saying.text, saying, vocabulary, part.name));
      if (spots.length === 0) return null;
      spots.sort((a, b) => a.from - b.from);
      return said(
        saying.text,
        spots.map((spot) => ({ from: spot.from, to: spot.to, insert: clean })),
      );
    },
  });
  if (isRefused(texts)) return texts;
  const names = notebook.sections
    .filter((s) => s.front === null)
    .map((s) => (s.key === part.key ? clean : s.name));
  return [
    withTexts(known, texts, {
      ...NOTHING,
      say: `Rename ${part.name} to ${clean}`,
      splices: [partNameSplice(part, clean)],
      parts: names,
    }),
  ];
}

/**
 * The edit with the texts that have to be written anew, and a word about those that were mended. `columnsOf` tells
 * where a column of a table stands afterwards.
 */
export function withTexts(
  known: Known,
  texts: readonly Rewritten[],
  edit: Edit,
  columnsOf: (table: CellId) => (column: number) => number = () => (column) => column,
): Edit {
  const splices = [...edit.splices];
  const cells = new Map<CellId, MeantCell>(edit.cells);
  const mended: string[] = [];
  const pictures = texts.filter(({ saying }) => saying.where === 'picture');
  for (const { saying, text, mended: words } of texts) {
    const cell = cellOf(known.notebook, saying.cell);
    const meant = cells.get(cell.id) ?? {};
    if (saying.at) {
      const table = tableOf(cell);
      const now = meant.table ?? meantOf(table);
      const { row, column } = saying.at;
      const later = columnsOf(cell.id)(column);
      const changed = { columns: now.columns.map((c) => [...c] as const), rows: [...now.rows] };
      if (row === null) {
        const { formulaSpot, name } = table.columns[column];
        const spot = {
          from: cell.spot.from + formulaSpot.from,
          to: cell.spot.from + formulaSpot.to,
        };
        splices.push({ ...spot, insert: asTableCell(text) });
        changed.columns[later] = [now.columns[later]?.[0] ?? name, text];
      } else {
        const wish = { row, column, text };
        splices.push(...rowSplices(known.notebook.text, cell, table, table.rows[row], [wish]));
        changed.rows[row] = (now.rows[row] ?? []).map((was, k) => (k === later ? text : was));
      }
      cells.set(cell.id, { ...meant, table: changed });
    } else if (saying.where === 'formula') {
      splices.push(formulaSplice(cell, text));
      cells.set(cell.id, { ...meant, formula: text });
    } else if (saying.where === 'by hand') {
      const index = cell.remarks.findIndex((r) => r.kind === 'by hand');
      cells.set(cell.id, { ...meant, remarks: remarkSaid(cell, meant, index, text, splices) });
    }
    for (const word of words) mended.push(`"${word}" in ${cell.name}`);
  }
  for (const place of new Set(pictures.map(placeOfPicture))) {
    const group = pictures.filter((each) => placeOfPicture(each) === place);
    const [id = 0, index = 0] = place.split(' ').map(Number);
    const cell = cellOf(known.notebook, id);
    const meant = cells.get(id) ?? {};
    const text = said(cell.remarks[index].text, group.flatMap(pictureSplice));
    cells.set(id, { ...meant, remarks: remarkSaid(cell, meant, index, text, splices) });
  }
  const say = mended.length > 0 ? `${edit.say}; now written ${mended.join(', ')}` : edit.say;
  return { ...edit, say, splices, cells };
}

/** All remarks of a cell as they are to be, this one said anew; adds the splice that says it. */
function remarkSaid(
  cell: Cell,
  { remarks }: MeantCell,
  index: number,
  text: string,
  splices: Splice[],
): readonly (readonly [string, string])[] {
  const { from, to } = cell.remarks[index].textSpot;
  splices.push({ from, to, insert: text });
  const before = remarks ?? cell.remarks.map((r) => [r.word, r.text] as const);
  return before.map(([word, was], i) => [word, i === index ? text : was] as const);
}

/** A picture's remark is written anew as one, however many of its values are. */
function placeOfPicture({ saying }: Rewritten): string {
  return `${saying.cell} ${saying.told?.remark ?? 0}`;
}

function pictureSplice({ saying, text }: Rewritten): readonly Splice[] {
  return saying.told ? [{ ...saying.told.spot, insert: text.slice(saying.told.lead.length) }] : [];
}

function firstWord(name: string): string {
  return nameKey(name).split(' ')[0];
}
