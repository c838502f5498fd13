// The paper that a client is handed: job, from and for whom, the price, what is in it and what is not, what there is to
// know, when it is paid, and lines to sign on.
import { html, nothing, type TemplateResult } from 'lit';
import type { ClientSheet, Named } from '../client/client-sheet.ts';
import { dayShown } from './day-words.ts';
import { money } from './money-words.ts';

export interface Between {
  readonly from: string;
  readonly whom: string;
  /** `2026-04-15`; empty: no day is set. */
  readonly until: string;
  readonly today: string;
}

export function clientPaper(sheet: ClientSheet, between: Between): TemplateResult {
  const { copy, included, byOthers, notNeeded, toKnow } = sheet;
  return html`<article class="paper">
    <h1 tabindex="-1">${copy.title || 'Price'}</h1>
    ${head(between)} ${priceOf(sheet)}
    <div class="terms">
      ${named('Included', included)} ${named('By others', byOthers)}
      ${named('Not part of this work', notNeeded)}
    </div>
    ${
      toKnow.length === 0
        ? nothing
        : html`<section class="know">
            <h2>Before work begins</h2>
            ${toKnow.map((one) => html`<p>${one}</p>`)}
          </section>`
    }
    ${payments(sheet)}
    <div class="sign" role="group" aria-label="To sign">
      <div>for the client</div>
      <div>date</div>
      <div>for the builder</div>
      <div>date</div>
    </div>
  </article>`;
}

function head({ from, whom, until, today }: Between): TemplateResult {
  const rows: readonly (readonly [string, string])[] = [
    ['From', from.trim()],
    ['For', whom.trim()],
    ['Handed in', dayShown(today)],
    ['Valid until', until === '' ? '' : dayShown(until)],
  ];
  return html`<dl>
    ${rows.map(([word, said]) =>
      said === ''
        ? nothing
        : html`<div>
            <dt>${word}</dt>
            <dd>${said}</dd>
          </div>`,
    )}
  </dl>`;
}

function priceOf({ copy, currency }: ClientSheet): TemplateResult {
  return html`<table class="price">
    <caption class="heard">
      What it costs
    </caption>
    ${
      copy.lines.length === 0
        ? nothing
        : html`<tbody>
            ${copy.lines.map(
              ({ name, amount, work }) =>
                html`<tr>
                  <th scope="row">
                    ${name}
                    ${
                      work.length === 0
                        ? nothing
                        : html`<span class="work"
                            >${work.map((one) => html`<span>${one}</span> `)}</span
                          >`
                    }
                  </th>
                  <td>${money(amount, currency)}</td>
                </tr>`,
            )}
          </tbody>`
    }
    <tfoot>
      <tr>
        <th scope="row">Price</th>
        <td>${money(copy.price, currency)}</td>
      </tr>
    </tfoot>
  </table>`;
}

function named(heading: string, list: readonly Named[]): TemplateResult | typeof nothing {
  if (list.length === 0) return nothing;
  return html`<section>
    <h2>${heading}</h2>
    <ul>
      ${list.map(
        ({ name, told }) =>
          html`<li>${name}${told === '' ? nothing : html`<span class="told">${told}</span>`}</li>`,
      )}
    </ul>
  </section>`;
}

function payments({ payments: due, currency }: ClientSheet): TemplateResult | typeof nothing {
  if (due.length === 0) return nothing;
  return html`<section class="payments">
    <h2 id="payments">Payments</h2>
    <table aria-labelledby="payments">
      <tbody>
        ${due.map(
          ({ name, when, amount }) =>
            html`<tr>
              <th scope="row">
                ${name}${when === '' ? nothing : html` <span class="when">${when}</span>`}
              </th>
              <td>${money(amount, currency)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </section>`;
}
