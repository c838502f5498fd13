// What a client may be handed of an estimate: its price alone, by part, with the work described, or as work and material.
// Each of them is made of nothing but what it shows, so that no quantity, rate or cost leaves with it, and each adds up
// to the same price.
import type { Part } from '../notebook/document.ts';
import type { EstimateDoor, TableDoor } from '../notebook/estimate.ts';
import { cellsOf } from '../notebook/lines.ts';
import type { CostRow, Costs } from '../notebook/recap.ts';
import { askedItems } from './asked-items.ts';
import { toldClient } from './told-client.ts';

/** How much is told: one price, a price for each part, the same with its work in words, or what of it is work and what is material. */
export type ClientLevel = (typeof CLIENT_LEVELS)[number];
export const CLIENT_LEVELS = ['price', 'parts', 'described', 'work'] as const;

export interface ClientLine {
  readonly name: string;
  /** Decimal text with two places. */
  readonly amount: string;
  /** What is done for it, as the owner wrote it for the client. */
  readonly work: readonly string[];
}

export type ClientCopy =
  | {
      readonly kind: 'copy';
      readonly title: string;
      /** Together they are the price. None where the price stands alone. */
      readonly lines: readonly ClientLine[];
      readonly price: string;
    }
  /** It can't go out as it stands: what has no value, by name, or why else there is no price to hand out. */
  | { readonly kind: 'not-yet'; readonly message: string };

/** What of an estimate is read for a client. */
export type Handed = Pick<EstimateDoor & TableDoor, 'notebook' | 'costs' | 'state' | 'rows'>;

export function clientCopy(estimate: Handed, level: ClientLevel): ClientCopy {
  const { total, parts } = estimate.costs();
  if (total.incomplete.length > 0) {
    const names = [...new Set(total.incomplete.map((id) => `"${estimate.state(id).input.name}"`))];
    const some = names.slice(0, 5).join(', ') + (names.length > 5 ? ' and more' : '');
    return notYet(
      `This price is not complete: ${some} without a value. Nothing goes to a client before.`,
    );
  }
  const price = cents(total.price);
  if (price <= 0n) return notYet('There is no price here yet that could go to a client.');
  const weighed = linesOf(
    level,
    parts,
    total,
    estimate.notebook.parts,
    new Set(askedItems(estimate).map(({ part }) => part)),
  ).filter(({ cost }) => cost !== 0n);
  if (weighed.some(({ cost }) => cost < 0n)) {
    return notYet(
      'A line costs less than nothing, so the price can only be handed out as a whole.',
    );
  }
  const amounts = shared(
    price,
    weighed.map(({ cost }) => cost),
  );
  return {
    kind: 'copy',
    title: estimate.notebook.title,
    lines: weighed.map(({ name, work }, i) => ({ name, amount: text(amounts[i] ?? 0n), work })),
    price: text(price),
  };
}

function notYet(message: string): ClientCopy {
  return { kind: 'not-yet', message };
}

interface Weighed {
  readonly name: string;
  readonly work: readonly string[];
  readonly cost: bigint;
}

/** What is shown, and the cost by which the price is shared among it. */
function linesOf(
  level: ClientLevel,
  rows: Costs['parts'],
  total: CostRow,
  parts: readonly Part[],
  named: ReadonlySet<string>,
): readonly Weighed[] {
  switch (level) {
    case 'price':
      return [];
    case 'parts':
      return rows.map((row) => ofPart(row, named));
    case 'described':
      return rows.map((row) => ({
        ...ofPart(row, named),
        work: workIn(parts.find(({ key }) => key === row.key)),
      }));
    case 'work':
      // Hired tools, fees and work by others are what it takes to do the work.
      return [
        { name: 'Material', work: [], cost: cents(total.material) },
        {
          name: 'Labour, equipment and services',
          work: [],
          cost: [total.labour, total.equipment, total.subcontract, total.fee].reduce(
            (sum, each) => sum + cents(each),
            0n,
          ),
        },
      ];
  }
}

/** What costs in the list of what is often forgotten was asked for besides; the name of the list is for its owner. */
function ofPart(
  { key, part, direct }: Costs['parts'][number],
  lists: ReadonlySet<string>,
): Weighed {
  const own = part === '' ? 'Job' : part;
  const name = lists.has(key) && /\bforgotten\b/i.test(own) ? 'Other work asked for' : own;
  return { name, work: [], cost: cents(direct) };
}

function workIn(part: Part | undefined): readonly string[] {
  if (!part) return [];
  return cellsOf(part).flatMap((cell) => (cell.money?.line === 'cost' ? toldClient(cell) : []));
}

/** The price in whole cents, shared as the costs are; what rounding down leaves goes to those that lost most. */
function shared(price: bigint, costs: readonly bigint[]): readonly bigint[] {
  const whole = costs.reduce((sum, each) => sum + each, 0n);
  if (whole === 0n) return costs.map(() => 0n);
  const down = costs.map((each) => (each * price) / whole);
  const missing = Number(price - down.reduce((sum, each) => sum + each, 0n));
  const most = costs
    .map((each, i) => ({ lost: (each * price) % whole, i }))
    .toSorted((a, b) => (a.lost === b.lost ? a.i - b.i : a.lost < b.lost ? 1 : -1))
    .slice(0, missing);
  const raised = new Set(most.map(({ i }) => i));
  return down.map((each, i) => each + (raised.has(i) ? 1n : 0n));
}

/** Of decimal text with two places. */
export function cents(amount: string): bigint {
  return BigInt(amount.replace('.', ''));
}

function text(amount: bigint): string {
  const digits = amount.toString().padStart(3, '0');
  return `${digits.slice(0, -2)}.${digits.slice(-2)}`;
}
