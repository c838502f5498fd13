// What came of being asked, as it is kept on this machine: the list of sittings, and a way to clear it.
// Property: `desk`.
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { MISTAKES_SAID } from '../mistakes/named.ts';
import type { Sitting } from '../store/practice-shapes.ts';
import { dayOf, dayShown } from './day-words.ts';
import type { Desk } from './desk.ts';
import { look } from './look.ts';
import { resultsLook } from './results-look.ts';

@customElement('practice-results')
export class PracticeResults extends LitElement {
  static override styles = [look, resultsLook];

  @property({ attribute: false }) desk!: Desk;
  @state() private sittings: readonly Sitting[] | null = null;
  @state() private others = 0;
  @state() private trouble = '';
  @state() private clearing: 'no' | 'asked' = 'no';

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#read();
  }

  protected override render(): TemplateResult {
    const { sittings, others, trouble } = this;
    if (trouble !== '') return html`<p role="alert">${trouble}</p>`;
    if (!sittings) return html`<p>Reading what is kept here …</p>`;
    return html`<p class="small">
        Kept on this machine only, in no notebook and in no file.
        ${others === 0 ? nothing : `${others} more can’t be read by this version of the page.`}
      </p>
      ${
        sittings.length === 0
          ? html`<p>Nothing was asked here yet.</p>`
          : html`<ol>
              ${sittings.map(sittingLine)}
            </ol>`
      }
      ${sittings.length + others === 0 ? nothing : this.#clearing()}`;
  }

  #clearing(): TemplateResult {
    if (this.clearing === 'no') {
      return html`<button class="plain" @click=${() => (this.clearing = 'asked')}>
        Clear all results
      </button>`;
    }
    return html`<p class="acts">
      <button class="act first" @click=${this.#clear}>Clear them for good</button>
      <button class="act" @click=${() => (this.clearing = 'no')}>Leave them</button>
    </p>`;
  }

  async #read(): Promise<void> {
    try {
      const found = await (await this.desk.practice()).list();
      this.sittings = found.sittings;
      this.others = found.others;
    } catch {
      this.trouble = 'This browser keeps nothing here, so there are no results to show.';
    }
  }

  #clear = async (): Promise<void> => {
    this.clearing = 'no';
    try {
      await (await this.desk.practice()).clear();
    } catch {
      this.trouble = 'The results could not be cleared here.';
      return;
    }
    await this.#read();
    this.renderRoot.querySelector('p')?.scrollIntoView({ block: 'nearest' });
  };
}

function sittingLine({ at, notebook, result, seed, steps }: Sitting): TemplateResult {
  const many = (cameOut: Sitting['steps'][number]['cameOut']): number =>
    steps.filter((step) => step.cameOut === cameOut).length;
  const met = [...new Set(steps.flatMap(({ mistakes }) => mistakes))];
  return html`<li>
    <b>${result}</b>
    <span class="small"
      >${notebook}, ${dayShown(dayOf(at))}${seed === null ? '' : `, practice set ${seed}`}</span
    >
    <span class="counts"
      >${many('first')} at first, ${many('after-hint')} after a hint, ${many('shown')} shown</span
    >
    ${
      met.length === 0
        ? nothing
        : html`<span class="small">Met: ${met.map(saidOf).join('; ')}.</span>`
    }
  </li>`;
}

/** A later version may know mistakes that this one has no words for. */
function saidOf(mistake: string): string {
  return Object.entries(MISTAKES_SAID).find(([key]) => key === mistake)?.[1] ?? mistake;
}

declare global {
  interface HTMLElementTagNameMap {
    'practice-results': PracticeResults;
  }
}
