// The line above what is shown: of which result, asked first or not, from where it begins, with which numbers; copying,
// printing, and what came of being asked.
import { html, nothing, type TemplateResult } from 'lit';
import type { CellId } from '../language/tree.ts';
import { resultsToShow } from './results-to-show.ts';
import type { Door } from './session.ts';
import type { Showing } from './showing.ts';

export interface Tools {
  readonly door: Door;
  readonly chosen: CellId | null;
  readonly showing: Showing | null;
  /** What is to be told beside them. */
  readonly said: string;
  readonly choose: (cell: CellId) => void;
  readonly ask: (asks: 'first' | 'not') => void;
  readonly begin: (from: number | null) => void;
  /** The text of the number of a practice set. */
  readonly practise: (seed: string) => void;
  readonly copy: () => void;
  readonly results: () => void;
}

export function toolsOf(on: Tools): TemplateResult {
  const { showing, said } = on;
  return html`<label>Result ${choice(on)}</label>
    ${showing ? ofShowing(showing, on) : nothing}
    <button class="plain" @click=${on.results}>Results</button>
    ${said === '' ? nothing : html`<span class="said" role="status">${said}</span>`}`;
}

function choice({ door, chosen, choose }: Tools): TemplateResult {
  return html`<select
    @change=${({ target }: Event) => choose(Number((target as HTMLSelectElement).value))}
  >
    ${chosen === null ? html`<option selected disabled>choose one</option>` : nothing}
    ${resultsToShow(door, chosen).map(
      ({ part, cells }) =>
        html`<optgroup label=${part}>
          ${cells.map(
            ({ id, name }) => html`<option value=${id} .selected=${id === chosen}>${name}</option>`,
          )}
        </optgroup>`,
    )}
  </select>`;
}

function ofShowing(showing: Showing, on: Tools): TemplateResult {
  const { practice } = showing;
  return html`<label class="ask"
      ><input
        type="checkbox"
        .checked=${showing.asks}
        @change=${({ target }: Event) =>
          on.ask((target as HTMLInputElement).checked ? 'first' : 'not')}
      />
      Ask first</label
    >
    ${beginning(showing, on)}
    <form
      class="fresh"
      @submit=${(event: SubmitEvent) => {
        event.preventDefault();
        const field = (event.currentTarget as HTMLFormElement).elements.namedItem('seed');
        if (field instanceof HTMLInputElement) on.practise(field.value.trim());
      }}
    >
      <label
        >Practice set
        <input
          name="seed"
          placeholder="any"
          inputmode="numeric"
          autocomplete="off"
          aria-describedby="seed-said"
          .value=${practice ? String(practice.seed) : ''}
      /></label>
      <button class="act">${practice ? 'Another' : 'Practise'}</button>
      <span id="seed-said" class="heard"
        >Fresh numbers inside the limits of the givens. The same set has the same numbers; empty:
        any.</span
      >
    </form>
    ${
      practice && on.chosen !== null
        ? html`<button class="plain" @click=${() => on.choose(on.chosen ?? showing.cell)}>
            Back to the notebook’s own
          </button>`
        : nothing
    }
    <button class="plain" @click=${on.copy}>Copy the working</button>
    <button class="plain" @click=${() => window.print()}>Print the working</button>`;
}

/** A price rests on a hundred steps: one may show the last few alone. */
function beginning(showing: Showing, { begin }: Tools): TemplateResult | typeof nothing {
  const { beginnings, from, many } = showing;
  if (beginnings.length < 2) return nothing;
  return html`<label
    >Begin
    <select
      @change=${({ target }: Event) => {
        const { value } = target as HTMLSelectElement;
        begin(value === '' ? null : Number(value));
      }}
    >
      <option value="" .selected=${from === null}>from the givens, ${many} steps</option>
      ${beginnings.map(
        (each) =>
          html`<option value=${each.from} .selected=${from === each.from}>
            ${sayBeginning(each)}
          </option>`,
      )}
    </select></label
  >`;
}

function sayBeginning({ from, many }: { readonly from: number; readonly many: number }): string {
  const steps = many === 1 ? '1 step' : `${many} steps`;
  return from === 0 ? 'with the last step' : `${from} before the last, ${steps}`;
}
