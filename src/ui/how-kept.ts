// How safe notebooks are in this browser, in sentences under the list of them.
import { html, type TemplateResult } from 'lit';
import { sayStanding } from '../store/ground.ts';
import type { Desk } from './desk.ts';

export function howKept({ standing, unsaved, lacks }: Desk): TemplateResult {
  const said = [
    sayStanding(standing),
    ...(unsaved ? [`The open notebook has ${unsaved.say}. ${unsaved.more}`.trim()] : []),
    ...lacks,
  ];
  return html`${said.map((words) => html`<p class="small">${words}</p>`)}`;
}
