// What a part comes to, beside its heading: its lines, the shares of the kinds, and its sum with what is left out of it.
import { html, nothing, type TemplateResult } from 'lit';
import { sayLeftOut } from '../notebook/left-out.ts';
import type { CostRow } from '../notebook/recap.ts';
import { isNothing, money, percentOf } from './money-words.ts';
import type { Door } from './session.ts';

const KINDS = ['material', 'labour', 'equipment', 'subcontract', 'fee'] as const;

/** `mark` stands before the sum. */
export function partRecap(door: Door, row: CostRow, mark: unknown): TemplateResult {
  const { currency } = door.notebook.settings;
  const missing = row.incomplete.length;
  const shares = KINDS.filter((kind) => !isNothing(row[kind])).map(
    (kind) => `${kind} ${percentOf(row[kind], row.direct) ?? 0}%`,
  );
  const lines = row.lines === 0 ? '' : row.lines === 1 ? '1 line' : `${row.lines} lines`;
  const words = [lines, shares.join(', ')].filter((said) => said !== '').join(' · ');
  // A part with price lines only, such as a summary, adds to the price and not to the cost.
  const added = row.lines === 0 && !isNothing(row.price);
  const sum = added ? `adds ${money(row.price, currency)}` : money(row.direct, currency);
  return html`
    <span class="shares">${words}</span>
    ${
      row.lines > 0 || added || missing > 0
        ? html`<span class="sum"
            >${mark}${sum}${
              missing > 0
                ? html`<span class="so-far"
                    >so far; ${sayLeftOut(row.incomplete, (id) => door.state(id))}</span
                  >`
                : nothing
            }</span
          >`
        : nothing
    }
  `;
}
