// A name that stands where a value is needed: a cell's, a table's, or one that several parts have.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { missing } from './left-over.ts';
import { plainName } from './vocabulary.ts';
import { ARTICLES } from './lexer.ts';
import type { TableShape } from './table-shape.ts';

/** The name that stands here, already known to be one. */
export function expectName(r: Reader): Formula {
  const found = r.nameAt(0);
  const id = found?.cells[0];
  if (!found || id === undefined) return missing(r);
  if (found.cells.length > 1) return ambiguous(r, found.length, found.cells);
  const table = r.vocabulary.table(id);
  if (table) return notAValue(r, found.length, table);
  const skipped = found.length > 1 ? r.token : null;
  const spot = r.take(found.length, 'name', id);
  r.mention(id);
  const cell = r.vocabulary.cell(id);
  const name = plainName(cell?.name ?? '');
  const words = r.vocabulary.wordsOf(cell?.name ?? '').length;
  const article = skipped && ARTICLES.has(skipped.text) ? 1 : 0;
  const qualified = found.length - article > words;
  const say = qualified ? `${r.vocabulary.partName(cell?.part ?? '')} ${name}` : name;
  return { kind: 'name', cell: id, say, spot };
}

/** A table is no amount: one of its columns may be added up, or a row read off it. */
function notAValue(r: Reader, length: number, table: TableShape): Formula {
  const spot = { from: r.token.from, to: r.peek(length - 1).to };
  const words = r.slice(spot);
  r.mention(table.id);
  const columns = table.columns.filter((c) => c.texts === null && c.name !== '').slice(-3);
  return r.fail({
    code: 'table-not-a-value',
    spots: [spot],
    table: table.name,
    fixes: [
      ...columns.map((c) =>
        r.fix(`Add up ${plainName(c.name)}`, spot, `(total of ${plainName(c.name)} in ${words})`),
      ),
      r.fix('Count its rows', spot, `(how many ${words})`),
    ],
  });
}

function ambiguous(r: Reader, length: number, cells: readonly number[]): Formula {
  const spot = { from: r.token.from, to: r.peek(length - 1).to };
  for (const id of cells) r.mention(id);
  const choices = cells.map((id) => {
    const cell = r.vocabulary.cell(id);
    return `${r.vocabulary.partName(cell?.part ?? '')} ${plainName(cell?.name ?? '')}`.trim();
  });
  return r.fail({
    code: 'ambiguous-name',
    spots: [spot],
    word: r.slice(spot),
    choices,
    fixes: choices.map((say) => r.fix(`Use "${say}"`, spot, say)),
  });
}
