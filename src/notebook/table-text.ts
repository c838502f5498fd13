// Tables in the text: a GitHub-flavoured-Markdown table inside a cell's list item, read line by line.
// Every line of it begins with `|`, so that to a CommonMark parser it is a paragraph and nothing else.
import type { Spot } from '../words/spot.ts';
import type { Table, TableColumn, TableRow } from './document.ts';
import { nameKey, nameProblem, sayNameProblem } from './names.ts';
import { lineEnd, trimmed } from './outline.ts';

export interface TableRead {
  readonly table: Table;
  /** What can't be used in it; spots into the text. */
  readonly odd: readonly { readonly code: string; readonly message: string; readonly spot: Spot }[];
}

/**
 * The table that these lines are, or why they are none. `base` is where the cell's item begins:
 * places in a table are told from there, so that an edit above it leaves the table as it is.
 */
export function readTable(text: string, lines: readonly Spot[], base: number): TableRead | string {
  const [header, delimiter, ...rest] = lines;
  if (!header || !delimiter || !isDelimiter(text, delimiter)) {
    return 'a row such as |---|---| has to stand under the names of its columns';
  }
  const heads = cellSpots(text, header);
  const many = cellSpots(text, delimiter).length;
  if (heads.length !== many) {
    return `there are ${heads.length} names of columns and ${many === 1 ? '1 mark' : `${many} marks`} under them`;
  }
  const odd: TableRead['odd'][number][] = [];
  const columns = heads.map((spot) => columnOf(text, spot, base));
  tellOddNames(columns, base, odd);
  const rows = rest.map((line, index): TableRow => {
    const spots = cellSpots(text, line);
    if (spots.length > columns.length) {
      const from = spots[columns.length]?.from ?? line.from;
      odd.push({
        code: 'row-too-long',
        message: `Row ${index + 1} has ${spots.length} cells for ${columns.length} columns; what stands beyond them is kept and not used.`,
        spot: { from, to: line.to },
      });
    }
    const texts = columns.map((_, i) => {
      const spot = spots[i];
      return spot ? textAt(text, spot) : '';
    });
    return { texts, spot: { from: line.from - base, to: line.to - base } };
  });
  const from = header.from;
  const to = lineEnd(text, lines.at(-1)?.to ?? header.to);
  const table: Table = {
    spot: { from: from - base, to: to - base },
    source: text.slice(from, to),
    columns,
    rows,
  };
  return { table, odd };
}

/** Where the cells of a row stand, each without the blanks around it. A blank one is where its text would go. */
export function cellSpots(text: string, line: Spot): readonly Spot[] {
  return cellRooms(text, line).map(({ from, to }) => {
    const inner = trimmed(text, from, to);
    if (inner.from < inner.to) return inner;
    const at = Math.min(from + 1, to);
    return { from: at, to: at };
  });
}

/** All the room between the bars. */
export function cellRooms(text: string, line: Spot): readonly Spot[] {
  const rooms: Spot[] = [];
  let from = line.from + 1;
  for (let i = from; i < line.to; i++) {
    const code = text.charCodeAt(i);
    // A bar after a backslash belongs to the text.
    if (code === 92 && text.charCodeAt(i + 1) === 124) i++;
    else if (code === 124) {
      rooms.push({ from, to: i });
      from = i + 1;
    }
  }
  const last = trimmed(text, from, line.to);
  if (last.from < last.to) rooms.push({ from, to: line.to });
  return rooms;
}

/** A text as it stands in a table. */
export function asTableCell(text: string): string {
  return text.replaceAll('|', '\\|');
}

function textAt(text: string, spot: Spot): string {
  return text.slice(spot.from, spot.to).replaceAll('\\|', '|');
}

function isDelimiter(text: string, line: Spot): boolean {
  const spots = cellSpots(text, line);
  return spots.length > 0 && spots.every((s) => /^:?-+:?$/.test(text.slice(s.from, s.to)));
}

/** `name` or `name: formula`. */
function columnOf(text: string, spot: Spot, base: number): TableColumn {
  let colon = -1;
  for (let i = spot.from; i < spot.to && colon < 0; i++) {
    const next = text.charCodeAt(i + 1);
    if (text.charCodeAt(i) === 58 && (i + 1 === spot.to || next === 32 || next === 9)) colon = i;
  }
  const name = colon < 0 ? spot : trimmed(text, spot.from, colon);
  const formula = colon < 0 ? { from: spot.to, to: spot.to } : trimmed(text, colon + 1, spot.to);
  const said = textAt(text, formula);
  return {
    name: textAt(text, name),
    formula: said === '' ? null : said,
    nameSpot: local(name, base),
    formulaSpot: local(formula, base),
    spot: local(spot, base),
  };
}

function tellOddNames(
  columns: readonly TableColumn[],
  base: number,
  odd: { code: string; message: string; spot: Spot }[],
): void {
  const seen = new Set<string>();
  columns.forEach(({ name, spot }, index) => {
    const place = { from: spot.from + base, to: spot.to + base };
    const problem = nameProblem(name);
    if (problem === 'empty') {
      odd.push({
        code: 'column-without-name',
        message: `Column ${index + 1} has no name, so no formula can ask for it.`,
        spot: place,
      });
    } else if (problem) {
      odd.push({ code: 'not-a-name', message: sayNameProblem(name, problem), spot: place });
    } else if (seen.has(nameKey(name))) {
      odd.push({
        code: 'same-name',
        message: `Two columns are called "${name}"; the first one is used. Give one of them a name of its own.`,
        spot: place,
      });
    }
    seen.add(nameKey(name));
  });
}

function local(spot: Spot, base: number): Spot {
  return { from: spot.from - base, to: spot.to - base };
}
