// One quiet line under a formula while the caret stands in a phrase: the phrase with this slot marked, what the slot
// needs, and an example.
import { html, nothing, type TemplateResult } from 'lit';
import { slotAt } from '../language/slots.ts';

export function slotSaid(text: string, caret: number): TemplateResult | typeof nothing {
  const found = slotAt(text, caret);
  if (!found) return nothing;
  const { shape, slot, index } = found;
  const pieces = shape.say.split('…');
  const example = shape.example ?? shape.like ?? '';
  return html`<span class="shape" aria-hidden="true"
      >${pieces.map((words, i) =>
        i === pieces.length - 1 ? words : html`${words}<b class=${i === index ? 'here' : ''}>…</b>`,
      )}</span
    >
    <span class="needs">${slot.say}</span>
    <span class="small">as in ${example}</span>`;
}
