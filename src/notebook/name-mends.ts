// Mends of names: of a cell, a part, a line or a column that needs one of its own.
import type { Cell, Finding } from './document.ts';
import type { Mend, Mendable } from './mends.ts';
import { nameKey, nameProblem } from './names.ts';
import { texts } from './mend-words.ts';

/** `Width 2`, or the next number that nobody has. */
function freeName(name: string, taken: readonly string[]): string {
  const known = new Set(taken.map(nameKey));
  const base = name.replace(/ \d{1,3}$/, '');
  for (let n = 2; ; n++) if (!known.has(nameKey(`${base} ${n}`))) return `${base} ${n}`;
}

export function ownName({ notebook }: Mendable, cell: Cell): Mend {
  const names = notebook.sections.flatMap(({ cells }) => cells.map((c) => c.name));
  const name = freeName(cell.name, names);
  return { say: `Call this one "${name}"`, does: { kind: 'name', cell: cell.id, name } };
}

export function ownPartName({ notebook }: Mendable, key: string): Mend {
  const part = notebook.sections.find((section) => section.key === key);
  const name = freeName(
    part?.name ?? '',
    notebook.sections.map((section) => section.name),
  );
  return { say: `Call this one "${name}"`, does: { kind: 'part-name', part: key, name } };
}

/** A line that stays prose for its name: with the part's name before it, or cut to eight words. */
export function lineName({ notebook }: Mendable, { spot, part }: Finding): readonly Mend[] {
  if (!spot) return [];
  const line = notebook.text.slice(spot.from, spot.to);
  const colon = /:(?=\s|$)/.exec(line)?.index ?? line.length;
  const name = line.slice(0, colon).trim();
  const section = notebook.sections.find(({ key }) => key === part);
  const before = section?.name ? section.name : 'Job';
  const taken = section?.cells.map((cell) => cell.name) ?? [];
  const made =
    nameProblem(name) === 'too-long'
      ? name.split(/\s+/).slice(0, 8).join(' ')
      : `${before} ${name.toLowerCase()}`;
  if (nameProblem(made) !== null) return [];
  const free = taken.some((each) => nameKey(each) === nameKey(made)) ? freeName(made, taken) : made;
  const end = spot.from + line.slice(0, colon).trimEnd().length;
  return [texts(`Call it "${free}"`, { from: spot.from, to: end, insert: free })];
}

/** A column with no name of its own: numbered, or with the table's name before it. */
export function columnNames(cell: Cell, { spot }: Finding): readonly Mend[] {
  const { table } = cell;
  if (!table || !spot) return [];
  const column = table.columns.findIndex((c) => cell.spot.from + c.spot.from === spot.from);
  const found = table.columns[column];
  if (!found) return [];
  const names = table.columns.map((c) => c.name);
  const made =
    found.name === '' ? `column ${column + 1}` : `${cell.name.toLowerCase()} ${found.name}`;
  const isTwin = found.name !== '' && nameProblem(found.name) === null;
  const name = isTwin ? freeName(found.name, names) : made;
  if (nameProblem(name) !== null || names.some((each) => nameKey(each) === nameKey(name)))
    return [];
  return [{ say: `Call it "${name}"`, does: { kind: 'column-name', cell: cell.id, column, name } }];
}
