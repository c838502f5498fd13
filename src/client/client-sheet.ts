// The sheet a client is handed: the price at the chosen level, until when it is good, what is in it and what is not, what
// there is to know before the work begins, and when it is to be paid. It is made of nothing but what it shows.
import type { Cell } from '../notebook/document.ts';
import { cellsOf } from '../notebook/lines.ts';
import { dayNumber } from '../versions/days.ts';
import { validity } from '../versions/past-dates.ts';
import { type AskedItem, askedItems } from './asked-items.ts';
import { type ClientCopy, type ClientLevel, type Handed, clientCopy } from './client-copy.ts';
import { type Payment, paymentsOf } from './payments.ts';
import { toldClient } from './told-client.ts';

/** Something named on the sheet, and what the owner wrote to it for the client. */
export interface Named {
  readonly name: string;
  readonly told: string;
}

export interface ClientSheet {
  readonly copy: Extract<ClientCopy, { kind: 'copy' }>;
  readonly currency: string;
  /** `2026-04-15`: the day on which the first price runs out; null where none does, or that day is over. */
  readonly until: string | null;
  readonly included: readonly Named[];
  readonly byOthers: readonly Named[];
  readonly notNeeded: readonly Named[];
  /** Of the permit, and whatever else the owner wants the client to know. */
  readonly toKnow: readonly string[];
  readonly payments: readonly Payment[];
}

export type Handing =
  /** `leftOff`: what the owner may want to know before it is handed in; none of it is on the sheet. */
  | { readonly kind: 'sheet'; readonly sheet: ClientSheet; readonly leftOff: readonly string[] }
  | Extract<ClientCopy, { kind: 'not-yet' }>;

/** `today`: `2026-03-03`; null where nobody knows the day. */
export function clientSheet(estimate: Handed, level: ClientLevel, today: string | null): Handing {
  const copy = clientCopy(estimate, level);
  if (copy.kind === 'not-yet') return copy;
  const asked = askedItems(estimate);
  const named = (answer: AskedItem['answer']): readonly Named[] =>
    asked
      .filter((item) => item.answer === answer)
      .map(({ name, told }) => ({ name, told: told.join('; ') }));
  const payments = paymentsOf(estimate, copy.price);
  const until = validity(estimate)?.first.until ?? null;
  const isOver = until !== null && today !== null && daysOf(until) < daysOf(today);
  return {
    kind: 'sheet',
    sheet: {
      copy,
      currency: estimate.notebook.settings.currency,
      until: isOver ? null : until,
      included: named('included'),
      byOthers: named('by others'),
      notNeeded: named('not needed'),
      toKnow: [ofPermit(estimate, asked), ...otherwiseTold(estimate, payments ?? [])],
      payments: payments ?? [],
    },
    leftOff: [
      ...(isOver ? ['A price in here is past its day: choose until when this is good.'] : []),
      ...(payments === null
        ? ['The payments are not the price to the cent, so they are left off.']
        : []),
      ...named(null).map(({ name }) => `“${name}” has no answer yet, so it is left off.`),
      ...(level === 'described' && copy.lines.every(({ work }) => work.length === 0)
        ? ['No work is described yet: put “client” under a cost line, with what is done there.']
        : []),
    ],
  };
}

function daysOf(day: string): number {
  const days = dayNumber(day);
  if (days === null) throw new Error(`"${day}" is no day`);
  return days;
}

/** Work without a permit that was needed is torn out again, and nobody looked whether it holds. */
function ofPermit(estimate: Handed, asked: readonly AskedItem[]): string {
  const answer = asked.find(({ name }) => SAYS_PERMIT.test(name))?.answer;
  const begins = 'Work that needs one begins when the building department has granted it.';
  if (answer === 'by others') return `A permit is asked for and paid by others. ${begins}`;
  if (answer === 'included' || (!answer && isPermitPaid(estimate)))
    return `The permit is in this price. ${begins}`;
  return 'No permit is in this price. Ask the local building department whether one is needed before work begins.';
}

const SAYS_PERMIT = /\bpermits?\b/i;

function isPermitPaid(estimate: Handed): boolean {
  return estimate.notebook.parts.flatMap(cellsOf).some(({ id, name, money }) => {
    if (money?.line !== 'cost' || !SAYS_PERMIT.test(name)) return false;
    const { outcome } = estimate.state(id);
    return (
      outcome.kind === 'value' && typeof outcome.value === 'object' && outcome.value.greaterThan(0)
    );
  });
}

/** What is written for the client under a line that is no cost, no payment and no answer. */
function otherwiseTold(estimate: Handed, payments: readonly Payment[]): readonly string[] {
  const places = new Set([...payments, ...askedItems(estimate)].map(({ name }) => name));
  const isElsewhere = ({ name, money }: Cell): boolean =>
    money?.line === 'cost' || places.has(name);
  return estimate.notebook.parts
    .flatMap(cellsOf)
    .flatMap((cell) => (isElsewhere(cell) ? [] : toldClient(cell)));
}
