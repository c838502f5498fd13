// When the price is to be paid: the amounts of money under a heading that says "Payments". They are told only where all of
// them together are the price to the cent.
import type { Cell } from '../notebook/document.ts';
import { scaled } from '../quantity/decimal.ts';
import { MONEY } from '../quantity/dimension.ts';
import { type Handed, cents } from './client-copy.ts';
import { toldClient } from './told-client.ts';

export interface Payment {
  readonly name: string;
  readonly amount: string;
  /** When it is due, as the owner wrote it for the client. */
  readonly when: string;
}

const SAYS_PAYMENTS = /^payments?\b|^payment schedule\b|^schedule of payments\b/i;

/** Null: there are some, and they are not the price. */
export function paymentsOf(estimate: Handed, price: string): readonly Payment[] | null {
  const all = underPayments(estimate).flatMap((cell) => paid(estimate, cell));
  // What comes to the whole beside others is their sum and no payment.
  const found = all.filter(({ amount }) => all.length === 1 || amount !== price);
  if (found.length === 0) return [];
  const sum = found.reduce((so, { amount }) => so + cents(amount), 0n);
  return sum === cents(price) && found.every(({ amount }) => cents(amount) >= 0n) ? found : null;
}

function underPayments({ notebook }: Handed): readonly Cell[] {
  return notebook.parts.flatMap(({ name, blocks }) => {
    const cells: Cell[] = [];
    const whole = SAYS_PAYMENTS.test(name);
    let under = whole;
    for (const block of blocks) {
      if (block.kind === 'heading') under = whole || SAYS_PAYMENTS.test(block.text);
      else if (block.kind === 'cell' && under && block.cell.money === null) cells.push(block.cell);
    }
    return cells;
  });
}

function paid(estimate: Handed, cell: Cell): readonly Payment[] {
  const { holds, outcome } = estimate.state(cell.id);
  if (holds?.measure.kind !== 'amount' || holds.measure.dimension !== MONEY) return [];
  if (outcome.kind !== 'value' || typeof outcome.value !== 'object') return [];
  const amount = scaled(outcome.value, holds.measure.scale).toFixed(2);
  return [{ name: cell.name, amount, when: toldClient(cell).join('; ') }];
}
