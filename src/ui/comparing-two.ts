// The two versions to compare, chosen by name.
import { html, type TemplateResult } from 'lit';
import type { Binder } from './binder.ts';
import type { Compared } from './snapshot-list.ts';

export function comparingTwo(
  { versions: { snapshots } }: Binder,
  show: (compared: Compared) => void,
): TemplateResult {
  const choice = (name: string, label: string, first: number) =>
    html`<label
      >${label}
      <select name=${name}>
        ${snapshots.map(
          ({ seal, name: called }, i) =>
            html`<option value=${seal} .selected=${i === first}>${called}</option>`,
        )}
        <option value="">the notebook as it stands now</option>
      </select>
    </label>`;
  const last = snapshots.length - 1;
  return html`<h3>Compare any two</h3>
    <form
      class="fields"
      @submit=${(event: SubmitEvent) => {
        event.preventDefault();
        const { elements } = event.currentTarget as HTMLFormElement;
        const chosen = (name: string): string | null => {
          const field = elements.namedItem(name);
          return field instanceof HTMLSelectElement && field.value !== '' ? field.value : null;
        };
        show({ from: chosen('from'), to: chosen('to') });
      }}
    >
      ${choice('from', 'From', last - 1)} ${choice('to', 'to', last)}
      <button class="act" data-compare="two">Compare the two</button>
    </form>`;
}
