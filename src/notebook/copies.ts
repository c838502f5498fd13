// A second copy of a cell or of a part, right after the first, under a name of its own. In the copy of a part what
// named the part's own cells names their copies; whoever named the first one's cells from outside names them still.
import type { CellId } from '../language/tree.ts';
import type { TableShape } from '../language/table-shape.ts';
import type { Vocabulary } from '../language/vocabulary.ts';
import { changed, inOrder } from './change.ts';
import type { Cell, Part, Splice } from './document.ts';
import { type Edit, type Edits, type MeantCell, NOTHING, isRefused, nameRefusal } from './edits.ts';
import { keptChoices } from './kept-choices.ts';
import { keptReadings } from './kept-readings.ts';
import { cellsOf, lineBreak } from './lines.ts';
import { type Saying, mentionsIn, partWithin, recapSpots, said, sayingsOf } from './mentions.ts';
import { endedBy, placeOf, put, slotsFor } from './moves.ts';
import { nameKey } from './names.ts';
import { trimmed } from './outline.ts';
import { type Known, withTexts } from './renames.ts';

/** Added to an identity it gives that of the copy while readings are compared: one that no notebook gives out. */
const COPY = 1_000_000_000;
const COPIED_PART = 'copied part';

export function duplicateCellEdit(known: Known, part: Part, cell: Cell): Edits {
  const { notebook } = known;
  const taken = new Set(cellsOf(part).map((c) => nameKey(c.name)));
  const name = freeName(cell.name, (one) => taken.has(nameKey(one)));
  const refusal = nameRefusal(part, name, null);
  if (refusal) return refusal;
  const copies = new Copies(known, [{ ...cell, name }], part.key);
  const texts = copies.others();
  if (isRefused(texts)) return texts;
  const own = copies.own([...sayingsOf(notebook)].filter((s) => s.cell === cell.id));
  if (isRefused(own)) return own;
  const inside = withTexts(known, own, {
    ...NOTHING,
    say: `Duplicate ${cell.name} as ${name}`,
    splices: [{ ...cell.nameSpot, insert: name }],
  });
  const end = lineBreak(notebook.text);
  const source = endedBy(stretch(notebook.text, cell.spot, inside.splices), end);
  const place = placeOf(part, cell) + 1;
  const formula = inside.cells.get(cell.id)?.formula ?? cell.formula;
  return slotsFor(notebook, part, part.blocks, place).map((slot) =>
    copies.withChoices(
      withTexts(known, texts, {
        ...NOTHING,
        say: inside.say,
        splices: [put(notebook.text, slot, source, end)],
        adds: [{ part: part.name, name, formula }],
      }),
    ),
  );
}

export function duplicatePartEdit(known: Known, part: Part): Edits {
  const { notebook, vocabulary } = known;
  const taken = new Set(notebook.parts.map((p) => nameKey(p.name)));
  const name = freeName(part.name, (one) => taken.has(nameKey(one)));
  const cells = cellsOf(part);
  const copies = new Copies(known, cells, COPIED_PART, name);
  const texts = copies.others();
  if (isRefused(texts)) return texts;
  const own = copies.own(
    [...sayingsOf(notebook)].filter((s) => s.part === part.key),
    (saying) => ownPartSaid(saying, vocabulary, part, name),
  );
  if (isRefused(own)) return own;
  const { from, to } = part.nameSpot;
  const inside = withTexts(known, own, {
    ...NOTHING,
    say: `Duplicate ${part.name} as ${name}`,
    splices: [{ from, to, insert: name }],
  });
  const { text } = notebook;
  const end = lineBreak(text);
  const content = trimmed(text, part.spot.from, part.spot.to);
  const spot = { from: part.spot.from, to: content.to };
  const source = stretch(text, spot, inside.splices);
  const parts = notebook.parts.slice(1).map((p) => p.name);
  parts.splice(notebook.parts.indexOf(part), 0, name);
  const edit: Edit = {
    ...NOTHING,
    say: inside.say,
    splices: [{ from: content.to, to: content.to, insert: `${end}${end}${source}` }],
    adds: cells.map((cell) => ({
      part: name,
      name: cell.name,
      formula: inside.cells.get(cell.id)?.formula ?? cell.formula,
    })),
    parts,
    prose: 'free',
  };
  return [copies.withChoices(withTexts(known, texts, edit))];
}

/** `Landing 2`, or the next number that is free; the copy of `Landing 2` is `Landing 3`. */
function freeName(name: string, taken: (name: string) => boolean): string {
  const numbered = /^(.*\S) (\d{1,6})$/.exec(name);
  const stem = numbered?.[1] ?? name;
  let n = numbered ? Number(numbered[2]) + 1 : 2;
  while (taken(`${stem} ${n}`)) n++;
  return `${stem} ${n}`;
}

/** The copies among the names while readings are compared, and the texts that have to be written anew for them. */
class Copies {
  readonly #known: Known;
  readonly #cells: readonly Cell[];
  readonly #part: string;
  /** The name of the new part, or null where the copy stands in the part of the first. */
  readonly #partName: string | null;

  constructor(known: Known, cells: readonly Cell[], part: string, partName: string | null = null) {
    this.#known = known;
    this.#cells = cells;
    this.#part = part;
    this.#partName = partName;
  }

  /** Everything that stood there before means what it meant. */
  others() {
    return this.#kept([...sayingsOf(this.#known.notebook)], null);
  }

  /** The edit with every choice of what stood there before taken from where it was. */
  withChoices(edit: Edit): Edit {
    const choices = keptChoices(this.#known, this.#names());
    const cells = new Map<CellId, MeantCell>(edit.cells);
    for (const { cell, remarks } of choices) cells.set(cell, { ...cells.get(cell), remarks });
    return { ...edit, splices: [...edit.splices, ...choices.map((c) => c.splice)], cells };
  }

  /** The copies' texts, as they are written in the first. */
  own(sayings: readonly Saying[], rewrite: (saying: Saying) => string | null = () => null) {
    return this.#kept(sayings, rewrite);
  }

  #kept(sayings: readonly Saying[], rewrite: ((saying: Saying) => string | null) | null) {
    const { vocabulary, notebook } = this.#known;
    const copied = rewrite ? this.#meant() : null;
    return keptReadings({
      notebook,
      vocabulary,
      sayings,
      names: [...this.#cells.map((c) => c.name), ...(this.#partName ? [this.#partName] : [])],
      atFault: (saying) => this.#known.atFault(saying),
      ...this.#names(),
      rewrite: rewrite ?? (() => null),
      ...(copied
        ? {
            meant: copied,
            later: (s: Saying) => ({ ...s, cell: s.cell + COPY, part: this.#part }),
          }
        : {}),
    });
  }

  #names() {
    const { vocabulary } = this.#known;
    const before = vocabulary.parts;
    return {
      bring: () => {
        if (this.#partName !== null) {
          vocabulary.setParts([...before, { key: this.#part, name: this.#partName }]);
        }
        for (const cell of this.#cells) this.#bring(cell);
      },
      takeBack: () => {
        for (const { id } of this.#cells) {
          vocabulary.setChoices(id + COPY, null);
          vocabulary.dropTable(id + COPY);
          vocabulary.remove(id + COPY);
        }
        vocabulary.setParts(before);
      },
    };
  }

  #bring(cell: Cell): void {
    const { vocabulary } = this.#known;
    vocabulary.add({ id: cell.id + COPY, name: cell.name, part: this.#part });
    const table = vocabulary.table(cell.id);
    if (table) vocabulary.putTable(copyOf(table, cell.name, this.#part));
    const choices = cell.remarks.find((r) => r.kind === 'choices');
    if (choices) vocabulary.setChoices(cell.id + COPY, choices.text);
  }

  /** In a copied part whatever means one of its cells means the copy; a copied cell only means other cells. */
  #meant(): (id: CellId) => CellId {
    const ids = new Set<CellId>();
    for (const { id } of this.#cells) {
      const columns = this.#known.vocabulary.table(id)?.columns ?? [];
      for (const column of columns) ids.add(column.id);
      if (this.#partName !== null) ids.add(id);
    }
    return (id) => (ids.has(id) ? id + COPY : id);
  }
}

function copyOf(table: TableShape, name: string, part: string): TableShape {
  const columns = table.columns.map((c) => ({ ...c, id: c.id + COPY }));
  return { ...table, id: table.id + COPY, name, part, columns };
}

/** A text of the part with the copy's name wherever it says the part's own. */
function ownPartSaid(
  saying: Saying,
  vocabulary: Vocabulary,
  part: Part,
  name: string,
): string | null {
  const own = mentionsIn(saying.text, saying, vocabulary)
    .filter((m) => vocabulary.cell(m.cell)?.part === part.key)
    .flatMap((m) => {
      const cell = vocabulary.cell(m.cell)?.name ?? '';
      return partWithin(saying.text, m, cell, part.name) ?? [];
    });
  const spots = [...own, ...recapSpots(saying.text, saying, vocabulary, part.name)];
  if (spots.length === 0) return null;
  const splices = spots.map(({ from, to }): Splice => ({ from, to, insert: name }));
  return said(saying.text, inOrder(splices));
}

/** A stretch of the text with these splices made in it. */
function stretch(
  text: string,
  { from, to }: { readonly from: number; readonly to: number },
  splices: readonly Splice[],
): string {
  const inside = splices.map((s) => ({ ...s, from: s.from - from, to: s.to - from }));
  return changed(text.slice(from, to), { say: '', splices: inOrder(inside) });
}
