// What the tests of the templates ask of a cell's remarks and of money.
import type { Cell, RemarkKind } from '../../src/notebook/document.ts';

export function remarkOf(cell: Cell, kind: RemarkKind): string | null {
  return cell.remarks.find((remark) => remark.kind === kind)?.text ?? null;
}

/** `12.30` and `12.3` are 1230 cents; more than two places is no amount of cents. */
export function toCents(decimal: string): bigint {
  const found = /^(-?)(\d+)(?:\.(\d{1,2}))?$/.exec(decimal);
  if (!found) throw new Error(`no amount in cents: "${decimal}"`);
  const cents = BigInt(found[2] ?? '') * 100n + BigInt((found[3] ?? '').padEnd(2, '0'));
  return found[1] === '-' ? -cents : cents;
}
