// What the page tells the person: that another tab writes in this notebook or kept it, or what has just happened.
import { html, nothing, type TemplateResult } from 'lit';
import type { Desk } from './desk.ts';
import { saveTextFile } from './files.ts';

export function told(desk: Desk): TemplateResult {
  const { session, keeping } = desk;
  const { notice } = session;
  return html`<div class="told" role="status">
    ${
      keeping.kind === 'behind'
        ? html`<p>
            <span
              >Another tab kept this notebook after this one had read it. Nothing of either is lost,
              and this tab keeps nothing more until you choose.</span
            >
            <button class="act" @click=${() => void desk.follow()}>
              Follow what the other kept
            </button>
            <button class="act" @click=${() => void desk.keepAsCopy()}>Keep mine as a copy</button>
          </p>`
        : nothing
    }
    ${
      keeping.kind === 'not-kept'
        ? html`<p>
            <span
              >${
                keeping.noted
                  ? 'What was changed last could not be put where notebooks are kept; it is noted beside them and tried again every few seconds.'
                  : 'What was changed last stands only on this page; keeping it is tried again every few seconds.'
              }</span
            >
            <button class="act" @click=${() => void saveTextFile(desk)}>Save a text file</button>
          </p>`
        : nothing
    }
    ${
      desk.role === 'follows'
        ? html`<p>
            <span
              >This notebook is open in another tab too, which writes in it. This tab follows
              it.</span
            >
            <button class="act" @click=${() => void desk.takeOver()}>Write here instead</button>
          </p>`
        : nothing
    }
    ${
      notice
        ? html`<p>
            <span>${notice.text}</span>
            ${
              notice.act
                ? html`<button
                    class="act"
                    @click=${() => {
                      session.tell(null);
                      notice.act?.go();
                    }}
                  >
                    ${notice.act.say}
                  </button>`
                : nothing
            }
            <button class="plain" @click=${() => session.tell(null)}>Put away</button>
          </p>`
        : nothing
    }
  </div>`;
}
