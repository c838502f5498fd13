// Why the total moved, weighed: by kind of change, as a stair, and as a table whose pieces add up to the cent.
import { html, nothing, type TemplateResult } from 'lit';
import type { SaidChange, TotalStep } from '../versions/say-change.ts';
import type { WhyMoved } from '../versions/why-moved.ts';
import { isNothing, money, signedMoney } from './money-words.ts';
import { chartSteps, hatchSwatch, stepChart } from './step-chart.ts';
import { type KindSum, sayKind, whyKind } from './why-kinds.ts';

/** What was weighed, and how it is told. */
export interface Weighed {
  readonly why: WhyMoved;
  readonly steps: readonly TotalStep[];
  readonly sums: readonly KindSum[];
}

export function whyWeighed(
  { why, steps, sums }: Weighed,
  [before, after]: readonly [string, string],
  amounts: { readonly before: string; readonly after: string; readonly difference: string },
  currency: string,
): TemplateResult {
  const kinds = why.pieces.map(whyKind);
  const drawn = chartSteps(steps, kinds);
  const still = steps.filter(({ amount }) => isNothing(amount)).length;
  if (steps.length === 0) return html`<p>Nothing that was changed can move it.</p>`;
  return html`
    <ul class="kinds" aria-label="The difference by what was changed">
      ${sums.map(
        ({ kind, amount }) =>
          html`<li>
            ${hatchSwatch(kind)} ${sayKind(kind)} <b>${signedMoney(amount, currency)}</b>
          </li>`,
      )}
    </ul>
    ${
      drawn.length === 0
        ? nothing
        : stepChart(drawn, {
            before: [before, amounts.before],
            after: [after, amounts.after],
            currency,
          })
    }
    <div class="sideways">
      <table class="why">
        <caption>
          Each piece, and the total after it
        </caption>
        <thead>
          <tr>
            <th scope="col">what was changed</th>
            <th scope="col">was</th>
            <th scope="col">is</th>
            <th scope="col" class="n">moves it by</th>
            <th scope="col" class="n">total then</th>
          </tr>
        </thead>
        <tbody>
          ${steps.map((step) => (isNothing(step.amount) ? nothing : pieceRow(step, currency)))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colspan="3">
              together${
                still === 0
                  ? nothing
                  : html`<span class="tell"
                      >; ${still === 1 ? '1 other change moves' : `${still} other changes move`}
                      nothing</span
                    >`
              }
            </th>
            <td class="n">${signedMoney(amounts.difference, currency)}</td>
            <td class="n">${money(amounts.after, currency)}</td>
          </tr>
        </tfoot>
      </table>
    </div>
  `;
}

function pieceRow({ changes, amount, to }: TotalStep, currency: string): TemplateResult {
  return html`<tr>
    <td>
      ${
        changes.length === 0
          ? 'This version of the tool works it otherwise than it was frozen'
          : changes.map(
              (change) =>
                html`<div><b>${nameOf(change)}</b> <span class="tell">${change.how}</span></div>`,
            )
      }
    </td>
    <td>${changes.map(({ was }) => html`<div>${was ?? '–'}</div>`)}</td>
    <td>${changes.map(({ is }) => html`<div>${is ?? '–'}</div>`)}</td>
    <td class="n by">${signedMoney(amount, currency)}</td>
    <td class="n">${money(to, currency)}</td>
  </tr>`;
}

function nameOf({ name, part }: SaidChange): string {
  return name || part;
}
