// What stands beside the notebook and can't be kept or read, in words.
import { html, nothing, type TemplateResult } from 'lit';
import type { Binder } from './binder.ts';

export function binderState({ state }: Binder): TemplateResult | typeof nothing {
  switch (state.kind) {
    case 'here':
    case 'reading':
      return nothing;
    case 'not-kept':
      return html`<p class="trouble" role="alert">
        ${
          state.why === 'full'
            ? 'This browser has no room left: what stands here is not kept.'
            : 'This browser keeps nothing here: what stands here goes with the page.'
        }
        Save the whole job as a file.
      </p>`;
    case 'closed':
      return html`<p class="trouble" role="alert">
        ${
          state.why === 'newer'
            ? 'Snapshots of this notebook were kept by a later version of this page. They are left as they are; reload to get the later version.'
            : 'What was kept of the snapshots of this notebook can’t be read here. It is left as it is.'
        }
      </p>`;
  }
}
