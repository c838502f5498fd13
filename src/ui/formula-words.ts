// What stands in and under a formula while it is written: ties under its words, how it is read,
// what it comes to, and what can't be read with its mends.
import { html, nothing, type TemplateResult } from 'lit';
import type { Draft } from '../notebook/estimate.ts';
import type { Report } from '../words/report.ts';
import type { Session } from './session.ts';
import { isPlainAmount, stretches } from './spots-in.ts';
import { DOES_NOT_HOLD, HOLDS } from './value-words.ts';

/** The same text as in the line, in pieces that can be marked. */
export function mirrored(text: string, draft: Draft | null, problems: readonly Report[]): unknown {
  if (!draft) return text;
  const rings = problems.flatMap((problem) => problem.spots);
  return stretches(text, draft.reading.tree, rings).map(
    (one) => html`<span class="${one.kind} ${one.ringed ? 'doubt' : ''}">${one.text}</span>`,
  );
}

/** Everything that is wrong with what is written: how it reads, or what it comes to. */
export function problemsOf({ reading, outcome }: Draft): readonly Report[] {
  const seen = reading.problems;
  const worked = outcome.kind === 'fault' ? outcome.report : null;
  return seen.length > 0 || !worked ? seen : [worked];
}

export function said(
  session: Session,
  text: string,
  draft: Draft | null,
  problems: readonly Report[],
): unknown {
  if (!draft || text.trim() === '') {
    return html`<span class="small"
      >An amount such as 12 ft, a formula in words, or ? for one still to come.</span
    >`;
  }
  const { reading } = draft;
  const names = reading.waitsFor.map((id) => session.cell(id)?.name ?? '');
  const waits = names.filter((name) => name !== '').join(', ');
  const other = session.asides.otherwise(draft);
  const small = [
    problems.length === 0 && waits ? `waiting for ${waits}` : '',
    // 10.8 ft is seen to be 10 ft 9 5/8 in and not 10 ft 8 in.
    other ? `that is ${other}` : '',
    ...reading.notes,
  ].filter((words) => words !== '');
  return html`
    ${
      reading.sentence && !isPlainAmount(reading.tree)
        ? html`<span class="read">read as <q>${reading.sentence}</q></span>`
        : nothing
    }
    ${result(draft)} ${small.map((words) => html`<span class="small">${words}</span>`)}
  `;
}

function result({ outcome, shown }: Draft): TemplateResult | typeof nothing {
  switch (outcome.kind) {
    case 'value': {
      const checked = outcome.value === true ? HOLDS : DOES_NOT_HOLD;
      const text = typeof outcome.value === 'boolean' ? checked : (shown?.text ?? '');
      return html`<b class="result">${text}</b>`;
    }
    case 'unknown':
      return html`<b class="result">?</b>`;
    case 'waiting':
    case 'fault':
      return nothing;
  }
}

/** Every problem with its mends as buttons, numbered through for the keyboard. */
export function problemsSaid(
  problems: readonly Report[],
  mend: (formula: string) => void,
): readonly TemplateResult[] {
  let key = 0;
  return problems.map(
    ({ headline, explanation, fixes }) =>
      html`<div class="problem">
        <b>${headline}</b> <span>${explanation}</span>
        ${fixes.map(({ say, formula }) => {
          key += 1;
          return html`<button
            class="act"
            title=${formula}
            @mousedown=${stay}
            @click=${() => mend(formula)}
          >
            ${say}${key < 10 ? html`<kbd>Alt ${key}</kbd>` : nothing}
          </button>`;
        })}
      </div>`,
  );
}

/** Keeps the keyboard in the line while a button beside it is pressed. */
export function stay(event: Event): void {
  event.preventDefault();
}
