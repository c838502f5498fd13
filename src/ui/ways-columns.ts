// The columns of alternatives above the results: the name of each, what it would be otherwise in it with why that can't
// be and what could, and what can be done with it at its foot.
import { html, nothing, type TemplateResult } from 'lit';
import type { ComparedAlternative } from '../moves-it/compared.ts';
import type { CellId } from '../language/tree.ts';
import type { NotPut } from '../moves-it/written-in.ts';
import type { AlternativeKept } from '../store/alongside-shapes.ts';

/** What a person does in them; `place` counts the alternatives. */
export interface WayActs {
  call(place: number, line: HTMLInputElement): void;
  put(place: number, key: string, line: HTMLInputElement): void;
  mend(place: number, key: string, formula: string): void;
  /** As it is in every alternative again. */
  leaveIt(key: string): void;
  go(cell: CellId): void;
  putIn(place: number): void;
  copy(place: number): void;
  takeAway(place: number): void;
}

/** A cell that is varied, and what it is in the notebook. */
export interface VariedCell {
  readonly key: string;
  readonly cell: CellId;
  readonly name: string;
  readonly shown: string;
}

export function wayHead(way: AlternativeKept, place: number, acts: WayActs): TemplateResult {
  return html`<th scope="col" class="way">
    <span class="printed">${way.name}</span>
    <input
      class="called"
      aria-label="Name of way ${place + 1}"
      title=${way.name}
      .value=${way.name}
      autocomplete="off"
      spellcheck="false"
      @change=${(event: Event) => acts.call(place, event.target as HTMLInputElement)}
      @keydown=${(event: KeyboardEvent) => leaveLine(event, way.name)}
    />
  </th>`;
}

export function variedLine(
  { key, cell, name, shown }: VariedCell,
  ways: readonly AlternativeKept[],
  compared: readonly ComparedAlternative[],
  acts: WayActs,
): TemplateResult {
  return html`<tr>
    <th scope="row">
      <button class="tie" @click=${() => acts.go(cell)}>${name}</button>
      <button class="plain go" aria-label="leave it: ${name}" @click=${() => acts.leaveIt(key)}>
        leave it
      </button>
    </th>
    <td class="is">${shown}</td>
    ${ways.map((way, place) => {
      const written = way.puts.find((put) => put.key === key)?.formula ?? '';
      const not = compared[place]?.refused.find((one) => one.cell === cell);
      const id = `why-${place}-${cell}`;
      return html`<td class="way amount">
        <span class="printed">${written || 'as it is'}</span>
        <input
          aria-label="${name}, ${way.name}"
          aria-invalid=${not ? 'true' : 'false'}
          aria-describedby=${not ? id : nothing}
          placeholder="as it is"
          autocapitalize="off"
          autocomplete="off"
          spellcheck="false"
          .value=${written}
          @change=${(event: Event) => acts.put(place, key, event.target as HTMLInputElement)}
          @keydown=${(event: KeyboardEvent) => leaveLine(event, written)}
        />
        ${not ? whyNot(not, id, (formula) => acts.mend(place, key, formula)) : nothing}
      </td>`;
    })}
  </tr>`;
}

/** At the foot of a column. */
export function wayEnds(
  way: AlternativeKept,
  place: number,
  compared: ComparedAlternative | undefined,
  room: 'for more' | 'for no more',
  acts: WayActs,
): TemplateResult {
  const nothingElse = (compared?.change ?? null) === null;
  return html`<td class="way">
    <button
      class="act first"
      aria-label="Put in ${way.name}"
      aria-disabled=${nothingElse ? 'true' : 'false'}
      title=${nothingElse ? 'Nothing in it is otherwise than in the notebook' : ''}
      @click=${() => acts.putIn(place)}
    >
      Put in
    </button>
    ${
      room === 'for more'
        ? html`<button class="plain" aria-label="Copy ${way.name}" @click=${() => acts.copy(place)}>
            Copy
          </button>`
        : nothing
    }
    <button class="plain" aria-label="Take away ${way.name}" @click=${() => acts.takeAway(place)}>
      Take away
    </button>
  </td>`;
}

function whyNot(
  { why, fixes }: NotPut,
  id: string,
  mend: (formula: string) => void,
): TemplateResult {
  return html`<div class="why" id=${id}>
    <span>${why} Left as it is.</span>
    ${fixes.map(
      (fix) =>
        html`<button class="act" title=${fix.formula} @click=${() => mend(fix.formula)}>
          ${fix.say}
        </button>`,
    )}
  </div>`;
}

/** Esc in a line that was written in leaves it as it was; else it goes on and puts the sheet away. */
function leaveLine(event: KeyboardEvent, was: string): void {
  const line = event.target as HTMLInputElement;
  if (event.key !== 'Escape' || line.value === was) return;
  event.preventDefault();
  event.stopPropagation();
  line.value = was;
}
