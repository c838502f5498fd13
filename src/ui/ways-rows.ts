// The rows of results under the alternatives: what each comes to, how far it is from the notebook, which is best and
// which worst, and the checks that fail in each.
import { html, nothing, type TemplateResult } from 'lit';
import type { ComparedResult } from '../moves-it/compared.ts';
import type { Cell } from '../notebook/document.ts';
import { type Rank, bestAndWorst, isMoney } from './best-way.ts';
import { movedSaid, stoodSaid } from './result-words.ts';
import type { Door } from './session.ts';
import { markOf } from './watching.ts';
import type { Compared, ComparedRow } from './ways-compared.ts';

export function resultRow(
  door: Door,
  { is, ways }: Compared,
  row: ComparedRow,
  at: number,
  preference: unknown,
): TemplateResult {
  const { result, name, better } = row;
  const now = is.results[at];
  const others = ways.map(({ results }) => results[at]);
  // A sum that leaves out more than the notebook's own is in no order with it.
  const whole = others.map((one) =>
    one.leftOut === now.leftOut ? one.stood : { ...one.stood, amount: null },
  );
  const marks = bestAndWorst(door, result, [now.stood, ...whole], better);
  return html`<tr data-mark=${markOf(result)}>
    <th scope="row">${name}${preference}</th>
    <td class="is ${marks[0] ?? ''}">
      <b>${stoodSaid(door, result, now.stood)}</b>
      ${now.leftOut > 0 ? html`<span class="by">${leftOutSaid(now)}</span>` : nothing}
      ${marked(marks[0])}
    </td>
    ${others.map((one, place) => {
      const mark = marks[place + 1];
      return html`<td class="way ${mark ?? ''}">
        <b>${stoodSaid(door, result, one.stood)}</b>
        <span class="by ${one.moved.moves}"
          >${
            one.leftOut === now.leftOut
              ? movedSaid(door, result, one.moved, now.stood, 'the same')
              : leftOutSaid(one)
          }</span
        >
        ${marked(mark)}
      </td>`;
    })}
  </tr>`;
}

/** What does not hold in each of them, watched or not: the cheaper way may be the one that can't be built. */
export function checksRow({ rows, checks, is, ways }: Compared): TemplateResult | typeof nothing {
  if (checks.length === 0) return nothing;
  const fails = (results: readonly ComparedResult[]): readonly Cell[] =>
    checks.filter((_, i) => results[rows.length + i].stood.text !== 'yes');
  const now = fails(is.results);
  return html`<tr class="checks">
    <th scope="row">Checks</th>
    <td class="is">${failing(now, [])}</td>
    ${ways.map(({ results }) => html`<td class="way">${failing(fails(results), now)}</td>`)}
  </tr>`;
}

/** Which way is better, as far as it is known: of money less is, else only its owner can say. */
export function betterSaid(
  { is }: Compared,
  { better }: ComparedRow,
  at: number,
): 'less' | 'more' | null {
  return better ?? (isMoney(is.results[at].stood) ? 'less' : null);
}

function leftOutSaid({ leftOut }: ComparedResult): string {
  return `so far; ${leftOut === 1 ? '1 line' : `${leftOut} lines`} not yet known`;
}

/** Those that fail though they did not before stand out, each with its caution. */
function failing(cells: readonly Cell[], before: readonly Cell[]): TemplateResult {
  if (cells.length === 0) return html`<span class="by">all hold</span>`;
  return html`${cells.map((cell) => {
    const caution = cell.remarks.find(({ kind }) => kind === 'caution')?.text;
    const fresh = !before.includes(cell);
    return html`<div class="fails ${fresh ? 'fresh' : ''}">
      <b>${cell.name}</b> ${fresh && caution ? `does not hold. ${caution}` : 'does not hold'}
    </div>`;
  })}`;
}

function marked(mark: Rank | undefined): TemplateResult | typeof nothing {
  return mark ? html`<span class="mark">${mark}</span>` : nothing;
}
