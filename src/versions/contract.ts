// The contract as it stands after its change orders: which of them count, and the sum after each.
import { centsOf, moneyText } from './cents.ts';
import type { ChangeOrder } from './change-order.ts';

export const ORDER_STATES = ['asked', 'priced', 'approved', 'done', 'billed'] as const;
export type OrderState = (typeof ORDER_STATES)[number];

export interface OrderEntry {
  /** The number of the change order. */
  readonly order: number;
  readonly state: OrderState;
  readonly date: string;
  readonly note: string;
}

/** Only ever added to. */
export type OrderLog = readonly OrderEntry[];

export function orderLogged(log: OrderLog, entry: OrderEntry): OrderLog {
  return [...log, Object.freeze({ ...entry })];
}

/** What was said of it last; an order nobody said anything of was asked. */
export function orderState(log: OrderLog, order: number): OrderState {
  return log.findLast((entry) => entry.order === order)?.state ?? 'asked';
}

export interface Contract {
  readonly signed: string;
  readonly rows: readonly {
    readonly order: ChangeOrder;
    readonly state: OrderState;
    /** The contract sum after it; null: it is not approved and doesn't count yet. */
    readonly sum: string | null;
  }[];
  /** Signed and all that was approved since. */
  readonly sum: string;
  /** The net of what is asked and priced. */
  readonly open: string;
  /** The net of what was billed. */
  readonly billed: string;
}

/** Orders by their numbers. `signed` is the price of the accepted version, with two places. */
export function contractOf(
  signed: string,
  orders: readonly ChangeOrder[],
  log: OrderLog,
): Contract {
  let sum = centsOf(signed);
  let open = 0n;
  let billed = 0n;
  const rows = orders
    .toSorted((a, b) => a.number - b.number)
    .map((order) => {
      const state = orderState(log, order.number);
      const net = centsOf(order.net);
      switch (state) {
        case 'asked':
        case 'priced':
          open += net;
          return { order, state, sum: null };
        case 'billed':
          billed += net;
          break;
        case 'approved':
        case 'done':
          break;
      }
      sum += net;
      return { order, state, sum: moneyText(sum) };
    });
  return { signed, rows, sum: moneyText(sum), open: moneyText(open), billed: moneyText(billed) };
}
