// Who is who from one visit to the next. The text says nothing of identities and the engine gives numbers anew at
// every reading; so a list stands beside the text in the saved form: a key that lasts for each part and cell, in the
// order of the text. When the text is read again the list is matched with it, by name and place where it was changed.
import type { CellId } from '../language/tree.ts';
import type { Notebook } from '../notebook/document.ts';
import { type Known, type Unknown, matched } from '../notebook/identity.ts';
import { cellsOf } from '../notebook/lines.ts';
import { nameKey } from '../notebook/names.ts';

/** The saved form. */
export interface KeptIdentities {
  /** New keys begin with it. Every notebook and working copy has a stem of its own, so that two never give the same key. */
  readonly stem: string;
  /** The number of the next new key: a key is never given twice, not even after its cell is gone. */
  readonly next: number;
  readonly parts: readonly KeptPart[];
}

export interface KeptPart {
  /** `''` is what stands above the first part. */
  readonly key: string;
  readonly name: string;
  readonly cells: readonly (readonly [key: string, name: string])[];
}

/** The keys that last, by the keys and ids of this reading. What is gone stays known, for undo. */
export interface Identities {
  readonly stem: string;
  readonly next: number;
  readonly parts: ReadonlyMap<string, string>;
  readonly cells: ReadonlyMap<CellId, string>;
}

/** The stem of a notebook that is known by this id. */
export function stemOf(id: string): string {
  return `${id.slice(0, 8)}-`;
}

/** For a notebook that has none yet. */
export function newIdentities(notebook: Notebook, stem: string): Identities {
  return withNew({ stem, next: 1, parts: new Map(), cells: new Map() }, notebook);
}

/** With keys for the parts and cells that came since. */
export function withNew(identities: Identities, notebook: Notebook): Identities {
  let { next } = identities;
  const parts = new Map(identities.parts);
  const cells = new Map(identities.cells);
  const fresh = (): string => `${identities.stem}${next++}`;
  for (const part of notebook.parts) {
    if (!parts.has(part.key)) parts.set(part.key, part.key === '' ? '' : fresh());
    for (const { id } of cellsOf(part)) if (!cells.has(id)) cells.set(id, fresh());
  }
  return next === identities.next && parts.size === identities.parts.size
    ? identities
    : { stem: identities.stem, next, parts, cells };
}

/** What is kept beside the text; the notebook's new cells have to be known by now. */
export function keptIdentities(identities: Identities, notebook: Notebook): KeptIdentities {
  const { stem, next } = identities;
  const keyOf = (id: CellId): string => {
    const key = identities.cells.get(id);
    if (key === undefined) throw new Error(`cell ${id} has no identity yet`);
    return key;
  };
  const parts = notebook.parts.map((part): KeptPart => {
    const key = identities.parts.get(part.key);
    if (key === undefined) throw new Error(`part ${part.key} has no identity yet`);
    return {
      key,
      name: part.name,
      cells: cellsOf(part).map(({ id, name }) => [keyOf(id), name] as const),
    };
  });
  return { stem, next, parts };
}

/** The kept list matched with the text beside it; who can't be found there is gone, and the rest is new. */
export function readIdentities(kept: KeptIdentities, notebook: Notebook): Identities {
  const unused = onlyOnce();
  const keptParts = kept.parts.filter(({ key }) => key !== '' && unused(key));
  const parts = notebook.parts.filter(({ key }) => key !== '');
  const partKeys = matched(
    keptParts.map(({ key, name }) => ({ identity: key, ...labelled(nameKey(name), null) })),
    parts.map(({ name }) => labelled(nameKey(name), null)),
    () => undefined,
  );
  const foundParts = new Map([['', '']]);
  parts.forEach(({ key }, i) => {
    const found = partKeys[i];
    if (found !== null) foundParts.set(key, found);
  });

  const keptCells = kept.parts.flatMap(({ key: part, cells }) =>
    cells
      .filter(([key]) => unused(key))
      .map(([key, name]): Known<string> => ({ identity: key, ...cellLabel(part, name) })),
  );
  const cells = notebook.parts.flatMap((part) =>
    cellsOf(part).map(({ id, name }) => ({
      id,
      ...cellLabel(foundParts.get(part.key) ?? `new ${part.key}`, name),
    })),
  );
  const cellKeys = matched(keptCells, cells, () => undefined);
  const foundCells = new Map<CellId, string>();
  cells.forEach(({ id }, i) => {
    const found = cellKeys[i];
    if (found !== null) foundCells.set(id, found);
  });

  const next = Math.max(kept.next, 1 + lastNumber(kept));
  return withNew({ stem: kept.stem, next, parts: foundParts, cells: foundCells }, notebook);
}

/** A list that somebody wrote into may name one twice: the first keeps it. */
function onlyOnce(): (key: string) => boolean {
  const seen = new Set<string>();
  return (key) => !seen.has(key) && seen.add(key) !== null;
}

function lastNumber({ stem, parts }: KeptIdentities): number {
  const keys = parts.flatMap(({ key, cells }) => [key, ...cells.map(([cell]) => cell)]);
  const numbers = keys
    .filter((key) => key.startsWith(stem) && /^\d{1,15}$/.test(key.slice(stem.length)))
    .map((key) => Number(key.slice(stem.length)));
  return numbers.reduce((most, n) => Math.max(most, n), 0);
}

function cellLabel(part: string, name: string): Unknown {
  return labelled(`${part}\0${nameKey(name)}`, nameKey(name));
}

/** The list holds no sources: a label stands in for its own. */
function labelled(label: string, name: string | null): Unknown {
  return { label, source: label, name };
}
