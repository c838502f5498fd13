// The client's sheet as text: names at the left, money in one column, the rest below.
import type { ClientSheet, Named } from './client-sheet.ts';

export function clientText({ copy, currency, ...sheet }: ClientSheet): string {
  const money = (amount: string): string => currency + amount.replace(/\B(?=(\d{3})+\.)/g, ',');
  const price = { name: 'Price', amount: copy.price, work: [] };
  const due = sheet.payments.map(({ name, when, amount }) => ({
    name: when === '' ? name : `${name}, ${when}`,
    amount,
  }));
  const rows = [...copy.lines, price, ...due];
  const wide = Math.max(...rows.map(({ name }) => name.length)) + 2;
  const long = Math.max(...rows.map(({ amount }) => money(amount).length));
  const row = ({ name, amount }: { readonly name: string; readonly amount: string }): string =>
    name.padEnd(wide) + money(amount).padStart(long);
  const lines = copy.lines.flatMap((line) => [row(line), ...line.work.map((one) => `  ${one}`)]);
  const sections: readonly (readonly string[])[] = [
    [copy.title],
    [...lines, ...(lines.length === 0 ? [] : ['-'.repeat(wide + long)]), row(price)],
    sheet.until === null ? [] : [`Good until ${sheet.until}.`],
    listed('Included', sheet.included),
    listed('By others', sheet.byOthers),
    listed('Not part of this work', sheet.notNeeded),
    headed('Before work begins', sheet.toKnow),
    due.length === 0 ? [] : ['Payments', ...due.map(row)],
  ];
  const told = sections.filter((section) => section.some((line) => line !== ''));
  return `${told.map((section) => section.join('\n')).join('\n\n')}\n`;
}

function listed(heading: string, named: readonly Named[]): readonly string[] {
  return headed(
    heading,
    named.map(({ name, told }) => (told === '' ? name : `${name}: ${told}`)),
  );
}

function headed(heading: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : [heading, ...lines.map((line) => `  ${line}`)];
}
