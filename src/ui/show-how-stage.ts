// The sheet's middle and foot while it is shown how: the marks down the rod with the step that stands there now, or at the
// end how it went; and the bar that goes on and back.
import { html, nothing, type TemplateResult } from 'lit';
import type { CellId } from '../language/tree.ts';
import type { Move } from './show-how-keys.ts';
import type { Showing } from './showing.ts';
import { type StepActs, howItWent, stepShown } from './shown-step.ts';

/** What a person does beside or below a step. */
export interface StageActs extends StepActs {
  readonly move: (move: Move) => void;
  readonly goTo: (cell: CellId) => void;
  readonly knowNothing: () => void;
  /** Asked anew, with other numbers or with the same. */
  readonly again: (numbers: 'fresh' | 'same') => void;
}

/** So many marks stand above the step, and so many names of what is still to come below it. */
const MARKS_ABOVE = 4;
const NAMES_BELOW = 3;

export function stageOf(showing: Showing, acts: StageActs): TemplateResult {
  const { here, steps, at } = showing;
  const above = steps.slice(Math.max(0, at - MARKS_ABOVE), at);
  const more = at - above.length;
  const below = steps.slice(at + 1, at + 1 + NAMES_BELOW);
  return html`<div class="stage">
    <ol class="rod">
      ${
        more > 0
          ? html`<li class="mark far">
              <button class="plain" @click=${() => acts.move('start')}>${more} more above</button>
            </li>`
          : nothing
      }
      ${above.map(
        (cell) =>
          html`<li class="mark">
            <button @click=${() => acts.goTo(cell)}>
              <span class="value">${showing.asked(cell) ? '?' : showing.result(cell)}</span>
              <span class="name">${showing.nameOf(cell)}</span>
            </button>
          </li>`,
      )}
      <li class="now">
        <article tabindex="-1" aria-labelledby="what">
          ${here === null ? end(showing, acts) : step(showing, here, acts)}
        </article>
      </li>
      ${below.map(
        (cell) =>
          html`<li class="mark to-come"><span class="name">${showing.nameOf(cell)}</span></li>`,
      )}
    </ol>
  </div>`;
}

function step(showing: Showing, cell: CellId, acts: StepActs): TemplateResult {
  return html`<h3 id="what">
      <span class="heard">${showing.progress}: </span>${showing.nameOf(cell)}
    </h3>
    ${stepShown(showing, cell, acts)}`;
}

function end(showing: Showing, acts: StageActs): TemplateResult {
  return html`<h3 id="what">How it went</h3>
    ${howItWent(showing)}
    <p class="acts">
      <button class="act first" @click=${() => acts.again('fresh')}>
        Again with fresh numbers
      </button>
      <button class="act" @click=${() => acts.again('same')}>Again with the same</button>
    </p>`;
}

export function barOf(showing: Showing, acts: StageActs): TemplateResult {
  const { at, last, here, known, progress } = showing;
  const asked = here !== null && showing.asked(here) !== null;
  return html`<div class="bar">
    <button class="act" ?disabled=${at === 0} @click=${() => acts.move('back')}>Back</button>
    <button
      class="act on ${asked ? '' : 'first'}"
      ?disabled=${at === last && !asked}
      @click=${() => acts.move('forward')}
    >
      ${asked ? 'Show it' : 'Go on'}
    </button>
    <span class="progress">${capital(progress)}</span>
    <button class="plain ends" ?disabled=${at === 0} @click=${() => acts.move('start')}>
      Start
    </button>
    <button class="plain ends" ?disabled=${at === last} @click=${() => acts.move('end')}>
      End
    </button>
    ${
      here === null || at >= showing.steps.length - 1
        ? nothing
        : html`<button class="plain" @click=${() => acts.know(here)}>We know this one</button>`
    }
    ${
      known.size === 0
        ? nothing
        : html`<button class="plain" @click=${acts.knowNothing}>
            ${known.size} left out; bring ${known.size === 1 ? 'it' : 'them'} back
          </button>`
    }
  </div>`;
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}
