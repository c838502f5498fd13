// The whole job in one file, and the notebook once more for the next client.
import { html, type TemplateResult } from 'lit';
import type { Binder } from './binder.ts';
import type { Desk } from './desk.ts';
import { type JobTold, openJob, saveJob } from './job-files.ts';
import { written } from './snapshot-list.ts';

/** What the sheet does when something was done. */
interface Done {
  readonly told: (told: JobTold) => void;
  readonly copied: () => void;
}

export function wholeJob(desk: Desk, binder: Binder, { told, copied }: Done): TemplateResult {
  const { title } = binder.estimate.notebook;
  return html`<h3>The whole job in one file</h3>
    <p class="tell">
      The notebook with all its snapshots, change orders and logs. Opening it, here or elsewhere,
      looks at every hash and makes a notebook of its own of it.
    </p>
    <div class="acts">
      <button class="act" @click=${() => void saveJob(desk).then(told)}>Save the whole job</button>
      <button class="act" @click=${() => void openJob(desk).then(told)}>Open a job</button>
    </div>
    <h3>For the next client</h3>
    <form
      class="fields"
      @submit=${(event: SubmitEvent) => {
        event.preventDefault();
        const named = written(event.currentTarget as HTMLFormElement, 'title');
        void binder.duplicate(named).then(copied);
      }}
    >
      <label class="wide"
        >Title of the copy
        <input
          name="title"
          required
          autocomplete="off"
          .defaultValue=${`${title || 'Estimate'}, for the next client`}
        />
      </label>
      <button class="act">Duplicate the notebook</button>
    </form>`;
}
