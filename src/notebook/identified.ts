// Gives the parts and cells of a stretch their keys and ids: those they had, or new ones.
import type { CellId } from '../language/tree.ts';
import type { Cell, Finding } from './document.ts';
import { type Known, type Unknown, matched } from './identity.ts';
import { nameKey } from './names.ts';
import type { DraftCell, DraftFinding, DraftSection, Front, PassedOver } from './draft-section.ts';
import type { Block } from './document.ts';

/** A section with its identities. Spots are relative to the section's start. */
export interface Section {
  readonly key: string;
  readonly name: string;
  readonly nameSpot: { readonly from: number; readonly to: number };
  readonly length: number;
  readonly blocks: readonly Block[];
  readonly cells: readonly Cell[];
  readonly findings: readonly Finding[];
  readonly passedOver: readonly PassedOver[];
  readonly front: Front | null;
}

/**
 * Which identities have been given out, and what had those that are gone now. What is remembered is in use
 * nowhere in the notebook: an identity that comes back, under whichever label, is forgotten here.
 */
export interface Register {
  readonly nextCell: CellId;
  readonly nextPart: number;
  readonly goneCells: ReadonlyMap<string, CellId>;
  readonly goneParts: ReadonlyMap<string, string>;
}

export const NO_REGISTER: Register = {
  nextCell: 1,
  nextPart: 1,
  goneCells: new Map(),
  goneParts: new Map(),
};

/** The sections that stood where a stretch is read again, and the text they stood in. */
export interface OldStretch {
  readonly text: string;
  readonly start: number;
  readonly sections: readonly Section[];
  readonly register: Register;
}

export interface Identified {
  readonly sections: readonly Section[];
  readonly register: Register;
}

/** How many removed cells are remembered, for undo. */
const REMEMBERED = 5_000;

export function identified(
  text: string,
  start: number,
  drafts: readonly DraftSection[],
  old: OldStretch | null,
): Identified {
  const register = old?.register ?? NO_REGISTER;
  let { nextCell, nextPart } = register;
  const oldParts = (old?.sections ?? []).filter((s) => s.front === null);
  const newParts = drafts.filter((d) => d.front === null);
  const keys = matched(
    oldParts.map((s) => ({ identity: s.key, ...asPart(s.name) })),
    newParts.map((d) => asPart(d.name)),
    (label) => register.goneParts.get(label),
  ).map((key) => key ?? `part-${nextPart++}`);

  const placed: (Unknown & { cell: DraftCell; part: string })[] = [];
  let at = start;
  let index = 0;
  for (const draft of drafts) {
    const part = draft.front ? '' : keys[index++];
    for (const cell of draft.cells) {
      placed.push({
        cell,
        part,
        source: old ? text.slice(at + cell.spot.from, at + cell.spot.to).trimEnd() : '',
        label: old ? labelOf(part, cell.name) : '',
        name: old ? nameKey(cell.name) : null,
      });
    }
    at += draft.length;
  }
  const before = old ? oldCells(old) : [];
  const ids = old
    ? matched(before, placed, (label) => register.goneCells.get(label)).map(
        (id) => id ?? nextCell++,
      )
    : placed.map(() => nextCell++);

  let next = 0;
  index = 0;
  const sections = drafts.map((draft) => {
    const key = draft.front ? '' : keys[index++];
    const section = finished(draft, key, ids.slice(next, next + draft.cells.length));
    next += draft.cells.length;
    return section;
  });
  return {
    sections,
    register: {
      nextCell,
      nextPart,
      goneCells: remembering(
        register.goneCells,
        before,
        placed.map((p) => p.label),
        new Set(ids),
      ),
      goneParts: remembering(
        register.goneParts,
        oldParts.map((s) => ({ identity: s.key, label: nameKey(s.name) })),
        newParts.map((d) => nameKey(d.name)),
        new Set(keys),
      ),
    },
  };
}

function asPart(name: string): Unknown {
  return { label: nameKey(name), source: nameKey(name), name: null };
}

function oldCells(old: OldStretch): Known<CellId>[] {
  const cells: Known<CellId>[] = [];
  let at = old.start;
  for (const section of old.sections) {
    for (const cell of section.cells) {
      cells.push({
        identity: cell.id,
        label: labelOf(section.key, cell.name),
        source: old.text.slice(at + cell.spot.from, at + cell.spot.to).trimEnd(),
        name: nameKey(cell.name),
      });
    }
    at += section.length;
  }
  return cells;
}

function finished(draft: DraftSection, key: string, ids: readonly CellId[]): Section {
  const cells: Cell[] = draft.cells.map((cell, i) => ({ id: ids[i], part: key, ...cell }));
  let index = 0;
  const blocks = draft.blocks.map((block): Block =>
    block.kind === 'cell' ? { kind: 'cell', cell: cells[index++] } : block,
  );
  const idOf = new Map(
    draft.findings.length > 0 ? draft.cells.map((cell, i) => [cell, ids[i]]) : [],
  );
  const findings = draft.findings.map((finding) => pointed(finding, key, idOf));
  return {
    key,
    name: draft.name,
    nameSpot: draft.nameSpot,
    length: draft.length,
    blocks,
    cells,
    findings: [...findings, ...sameNames(cells, draft.name)],
    passedOver: draft.passedOver,
    front: draft.front,
  };
}

function pointed(
  finding: DraftFinding,
  part: string,
  idOf: ReadonlyMap<DraftCell, CellId>,
): Finding {
  const cell = finding.cell ? (idOf.get(finding.cell) ?? null) : null;
  return { code: finding.code, message: finding.message, part, cell, spot: finding.spot };
}

/** Two cells with one name in a part: a formula that says it could mean either. */
function sameNames(cells: readonly Cell[], part: string): readonly Finding[] {
  const seen = new Set<string>();
  const findings: Finding[] = [];
  for (const cell of cells) {
    const key = nameKey(cell.name);
    if (seen.has(key)) {
      const where = part === '' ? 'This notebook' : `"${part}"`;
      findings.push({
        code: 'same-name',
        message: `${where} has two cells called "${cell.name}". Give one of them a name of its own.`,
        part: cell.part,
        cell: cell.id,
        spot: cell.nameSpot,
      });
    }
    seen.add(key);
  }
  return findings;
}

function labelOf(part: string, name: string): string {
  return `${part}\0${nameKey(name)}`;
}

/**
 * The memory of what is gone, with what went now and without what came back by one of the labels `now`;
 * the oldest is forgotten first.
 */
function remembering<T>(
  gone: ReadonlyMap<string, T>,
  before: readonly { readonly identity: T; readonly label: string }[],
  now: readonly string[],
  still: ReadonlySet<T>,
): ReadonlyMap<string, T> {
  const went = before.filter((thing) => !still.has(thing.identity));
  const back = gone.size === 0 ? [] : now.filter((label) => isAmong(still, gone.get(label)));
  if (went.length === 0 && back.length === 0) return gone;
  const memory = new Map(gone);
  for (const label of back) memory.delete(label);
  for (const { label, identity } of went) {
    memory.delete(label);
    memory.set(label, identity);
  }
  for (const label of memory.keys()) {
    if (memory.size <= REMEMBERED) break;
    memory.delete(label);
  }
  return memory;
}

function isAmong<T>(still: ReadonlySet<T>, identity: T | undefined): boolean {
  return identity !== undefined && still.has(identity);
}
