// What a client may be handed of an estimate: its price alone, by part, or as work and material. Each of them is made
// of nothing but what it shows, so that no quantity, rate or cost leaves with it, and each adds up to the same price.
import type { CellState } from '../engine/outcome.ts';
import type { CellId } from '../language/tree.ts';
import type { CostRow, Costs } from './recap.ts';

/** How much is told: one price, a price for each part, or what of it is work and what is material. */
export type ClientLevel = (typeof CLIENT_LEVELS)[number];
export const CLIENT_LEVELS = ['price', 'parts', 'work'] as const;

export type ClientCopy =
  | {
      readonly kind: 'copy';
      readonly title: string;
      /** Decimal text with two places; together they are the price. None where the price stands alone. */
      readonly lines: readonly { readonly name: string; readonly amount: string }[];
      readonly price: string;
    }
  /** It can't go out as it stands: what has no value, by name, or why else there is no price to hand out. */
  | { readonly kind: 'not-yet'; readonly message: string };

interface Handed {
  readonly title: string;
  costs(): Costs;
  state(cell: CellId): CellState;
}

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
  const weighed = linesOf(level, parts, total).filter(({ cost }) => cost !== 0n);
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
    title: estimate.title,
    lines: weighed.map(({ name }, i) => ({ name, amount: text(amounts[i] ?? 0n) })),
    price: text(price),
  };
}

function notYet(message: string): ClientCopy {
  return { kind: 'not-yet', message };
}

/** What is shown, and the cost by which the price is shared among it. */
function linesOf(
  level: ClientLevel,
  parts: Costs['parts'],
  total: CostRow,
): readonly { readonly name: string; readonly cost: bigint }[] {
  switch (level) {
    case 'price':
      return [];
    case 'parts':
      return parts.map(({ part, direct }) => ({
        name: part === '' ? 'Job' : part,
        cost: cents(direct),
      }));
    case 'work':
      // Hired tools, fees and work by others are what it takes to do the work.
      return [
        { name: 'Material', cost: cents(total.material) },
        {
          name: 'Labour, equipment and services',
          cost: [total.labour, total.equipment, total.subcontract, total.fee].reduce(
            (sum, each) => sum + cents(each),
            0n,
          ),
        },
      ];
  }
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

function cents(amount: string): bigint {
  return BigInt(amount.replace('.', ''));
}

function text(amount: bigint): string {
  const digits = amount.toString().padStart(3, '0');
  return `${digits.slice(0, -2)}.${digits.slice(-2)}`;
}

/** Readable on paper: names at the left, money in one column. */
export function clientText(copy: Extract<ClientCopy, { kind: 'copy' }>, currency: string): string {
  const rows = [...copy.lines, { name: 'Price', amount: copy.price }].map(({ name, amount }) => ({
    name,
    said: currency + amount.replace(/\B(?=(\d{3})+\.)/g, ','),
  }));
  const wide = Math.max(...rows.map(({ name }) => name.length)) + 2;
  const long = Math.max(...rows.map(({ said }) => said.length));
  const lines = rows.map(({ name, said }) => name.padEnd(wide) + said.padStart(long));
  const rule = '-'.repeat(wide + long);
  const body = copy.lines.length === 0 ? lines : [...lines.slice(0, -1), rule, lines.at(-1) ?? ''];
  return `${[...(copy.title === '' ? [] : [copy.title, '']), ...body].join('\n')}\n`;
}
