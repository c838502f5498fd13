// The change orders made so far, and what the contract comes to after each.
import { html, nothing, type TemplateResult } from 'lit';
import { orderState } from '../versions/contract.ts';
import type { Binder } from './binder.ts';
import { contractHere, sayTwice } from './contract-here.ts';
import { dayShown } from './day-words.ts';
import { money, signedMoney } from './money-words.ts';

export function ordersMade(
  { versions }: Binder,
  show: (number: number) => void,
): TemplateResult | typeof nothing {
  const { orders, orderLog } = versions;
  if (orders.length === 0) return nothing;
  const contract = contractHere(versions);
  const currency = orders[0]?.currency ?? '';
  const sumAfter = new Map(contract?.rows.map(({ order, sum }) => [order.number, sum]));
  return html`<h3>Change orders</h3>
    <div class="sideways">
      <table>
        <thead>
          <tr>
            <th scope="col">number</th>
            <th scope="col">reason</th>
            <th scope="col">state</th>
            <th scope="col" class="n">net</th>
            <th scope="col" class="n">contract after it</th>
          </tr>
        </thead>
        <tbody>
          ${
            contract
              ? html`<tr>
                  <td></td>
                  <td colspan="3">${contract.of.name}, accepted</td>
                  <td class="n">${money(contract.signed, contract.of.values.currency)}</td>
                </tr>`
              : nothing
          }
          ${orders.map(({ number, reason, date, net }) => {
            const sum = sumAfter.get(number);
            return html`<tr>
              <td>
                <button class="tie" data-order=${number} @click=${() => show(number)}>
                  Change order ${number}
                </button>
              </td>
              <td>${reason} <span class="tell">${dayShown(date)}</span></td>
              <td>${orderState(orderLog, number)}</td>
              <td class="n">${signedMoney(net, currency)}</td>
              <td class="n">${sum ? money(sum, currency) : 'not yet'}</td>
            </tr>`;
          })}
        </tbody>
        ${
          contract
            ? html`<tfoot>
                <tr>
                  <th scope="row" colspan="4">
                    Contract sum<span class="tell"
                      >; asked and priced ${signedMoney(contract.open, currency)}, billed
                      ${signedMoney(contract.billed, currency)}</span
                    >
                  </th>
                  <td class="n">${money(contract.sum, currency)}</td>
                </tr>
              </tfoot>`
            : nothing
        }
      </table>
    </div>
    ${
      contract
        ? contract.twice.length === 0
          ? nothing
          : html`<p class="trouble">${sayTwice(contract)}</p>`
        : html`<p class="tell">
            No snapshot was accepted yet: there is no contract that these could be added to.
          </p>`
    }`;
}
