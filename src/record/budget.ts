// The estimate that the record is held against: direct cost by part and kind, of a snapshot as it was frozen or of the
// notebook as it stands.
import type { CostKind } from '../language/tree.ts';
import type { Notebook } from '../notebook/document.ts';
import { COST_KINDS, type Costs } from '../notebook/recap.ts';
import { centsOf } from '../versions/cents.ts';
import type { Identities } from '../versions/identities.ts';
import type { Snapshot } from '../versions/snapshot.ts';
import type { PartNamed } from './entry.ts';

/** Whole cents, kind by kind. */
export type ByKind<T = bigint> = Readonly<Record<CostKind, T>>;

export interface BudgetPart {
  /** The key that lasts; null: nobody gave one. */
  readonly key: string | null;
  readonly name: string;
  readonly cents: ByKind;
  /** It leaves lines out that have no value. */
  readonly incomplete: boolean;
}

export interface Budget {
  readonly name: string;
  /** The seal of the snapshot; null: the notebook as it stands. */
  readonly seal: string | null;
  readonly currency: string;
  readonly parts: readonly BudgetPart[];
}

export function budgetOf({ name, seal, values, identities }: Snapshot): Budget {
  // Both lists stand in the order of the text; above the first part is only told where money stands there.
  let at = 0;
  const parts = values.parts.map((row): BudgetPart => {
    const found = identities.parts.findIndex((part, i) => i >= at && part.name === row.part);
    if (found >= 0) at = found + 1;
    const key = identities.parts[found]?.key ?? null;
    return { key, name: partName(row.part), cents: centsByKind(row), incomplete: row.incomplete };
  });
  return { name, seal, currency: values.currency, parts };
}

export function budgetNow(notebook: Notebook, costs: Costs, identities: Identities): Budget {
  return {
    name: 'the notebook as it stands',
    seal: null,
    currency: notebook.settings.currency,
    parts: costs.parts.map((row) => ({
      key: identities.parts.get(row.key) ?? null,
      name: partName(row.part),
      cents: centsByKind(row),
      incomplete: row.incomplete.length > 0,
    })),
  };
}

/** The parts of the notebook as entries name them. */
export function partsOf(notebook: Notebook, identities: Identities): readonly PartNamed[] {
  return notebook.parts
    .filter(({ name, blocks }) => name !== '' || blocks.some(({ kind }) => kind === 'cell'))
    .map(({ key, name }) => ({ key: identities.parts.get(key) ?? null, name: partName(name) }));
}

function partName(name: string): string {
  return name === '' ? 'Above the first part' : name;
}

function centsByKind(row: ByKind<string>): ByKind {
  return eachKind((kind) => centsOf(row[kind]));
}

export function eachKind<T>(make: (kind: CostKind) => T): ByKind<T> {
  return Object.fromEntries(COST_KINDS.map((kind) => [kind, make(kind)])) as ByKind<T>;
}
