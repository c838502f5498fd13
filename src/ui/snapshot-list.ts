// The snapshots of the open notebook, and the line that makes one: date, price, mark of the hash, where each stands,
// whether it is as it was frozen, and what can be done with it.
// Property: `binder`. Events, for a person's act: `compare` with the seals of two versions, `gone` after a notebook was opened.
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { fingerprint } from '../versions/hash.ts';
import { type Snapshot, sayMismatch, verify } from '../versions/snapshot.ts';
import { type Happened, standingOf } from '../versions/standing.ts';
import type { Binder } from './binder.ts';
import { dayShown } from './day-words.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import { money, moreOrLess } from './money-words.ts';
import type { Session } from './session.ts';
import { snapshotsLook } from './snapshots-look.ts';

/** Two versions to be compared by their seals; null is the notebook as it stands. */
export interface Compared {
  readonly from: string | null;
  readonly to: string | null;
}

const HAPPENINGS: readonly (readonly [Happened, string])[] = [
  ['sent', 'It was sent'],
  ['accepted', 'It was accepted'],
  ['superseded', 'It was superseded'],
];

@customElement('snapshot-list')
export class SnapshotList extends LitElement {
  static override styles = [
    look,
    snapshotsLook,
    css`
      .snap {
        display: grid;
        grid-template-columns: 8rem minmax(0, 1fr) auto;
        gap: 0 1rem;
        padding: 0.5rem 0.7rem;
        border-bottom: 1px solid var(--hair);
        border-left: 4px solid transparent;
        align-items: baseline;
      }
      .snap.accepted {
        border-left-color: var(--keel);
        background: var(--wash);
      }
      .sum {
        font-size: 1.05rem;
      }
      .name {
        font-weight: 600;
        margin-right: 0.5rem;
      }
      .stand {
        white-space: nowrap;
      }
      .accepted .stand {
        border: 1.5px solid var(--keel);
        border-radius: 46% 54% 50% 50% / 58% 52% 60% 48%;
        padding: 0 0.5em;
        color: var(--keel);
        font-weight: 650;
      }
      .under {
        grid-column: 2 / -1;
        margin-top: 0.4rem;
      }
      .now {
        border-bottom: 1.5px solid var(--graphite);
        padding-bottom: 0.8rem;
      }
      ol.log {
        font-size: var(--small);
        color: var(--pencil);
      }
      @media (max-width: 600px) {
        .snap {
          grid-template-columns: minmax(0, 1fr) auto;
          padding-left: 0.5rem;
        }
        .snap .sum {
          grid-column: 2;
          grid-row: 1;
        }
        .snap .who {
          grid-column: 1;
          grid-row: 1;
        }
        .snap .go,
        .under {
          grid-column: 1 / -1;
        }
      }
    `,
  ];

  @property({ attribute: false }) binder!: Binder;
  @state() private opened: string | null = null;
  @state() private said = '';
  #stop: (() => void) | null = null;
  readonly #matches = new WeakMap<Snapshot, readonly string[]>();

  constructor() {
    super();
    new Follows(this, 'changed', 'opened');
  }

  get session(): Session {
    return this.binder.desk.session;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#stop = this.binder.listen(() => this.requestUpdate());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
  }

  protected override render(): TemplateResult {
    const { snapshots } = this.binder.versions;
    const newest = snapshots.toReversed();
    return html`
      ${this.#freezing()}
      <p class="heard" role="status">${this.said}</p>
      ${
        newest.length === 0
          ? html`<p class="tell">
              Nothing is frozen yet. A snapshot holds the text, every value, where each is from and
              the totals as they are now; nothing that is changed later reaches it.
            </p>`
          : html`<ul aria-label="Snapshots, the newest first">
              ${newest.map((snapshot) => this.#line(snapshot))}
            </ul>`
      }
      ${this.binder.unreadable.map(
        (seal) =>
          html`<p class="trouble">
            A snapshot marked ${fingerprint(seal)} is listed here and can’t be read. It is left as
            it is.
          </p>`,
      )}
    `;
  }

  #freezing(): TemplateResult {
    const { binder } = this;
    const { price, incomplete } = binder.estimate.costs().total;
    const { currency } = binder.estimate.notebook.settings;
    return html`<form class="snap now" @submit=${this.#freeze}>
      <span class="sum">${money(price, currency)}</span>
      <div class="who">
        <span class="name">Now</span>
        <span class="tell"
          >${
            incomplete.length === 0
              ? 'as the notebook stands'
              : `so far: ${incomplete.length === 1 ? '1 line has' : `${incomplete.length} lines have`} no value yet`
          }</span
        >
      </div>
      <div class="under fields">
        <label
          >Name of the snapshot
          <input name="name" required autocomplete="off" .defaultValue=${this.#nextName()} />
        </label>
        <label class="wide"
          >Note, if one is wanted
          <input name="note" autocomplete="off" />
        </label>
        <button class="act first" ?disabled=${binder.state.kind === 'closed'}>Freeze it now</button>
      </div>
    </form>`;
  }

  #line(snapshot: Snapshot): TemplateResult {
    const { binder } = this;
    const { name, note, date, seal, values } = snapshot;
    const stands = standingOf(binder.versions.log, snapshot);
    const accepted = binder.accepted?.seal === seal;
    const opened = this.opened === seal;
    const wrong = this.#wrong(snapshot);
    return html`<li class="snap ${accepted ? 'accepted' : ''}">
      <span class="sum">${money(values.total.price, values.currency)}</span>
      <div class="who">
        <span class="name">${name}</span>
        <span class="mark" title="The beginning of its hash">${fingerprint(seal)}</span>
        <div class="tell">
          frozen
          ${dayShown(date)}${
            stands
              ? html`, <span class="stand">${stands.happened} ${dayShown(stands.date)}</span>`
              : nothing
          }${values.total.incomplete ? ', with lines without a value' : nothing}${
            note ? html`: ${note}` : nothing
          }
        </div>
        ${this.#beside(snapshot)}
        ${wrong.map((message) => html`<div class="trouble"><span class="ringed">Not as it was</span> ${message}</div>`)}
      </div>
      <div class="acts go">
        <button
          class="act"
          aria-label="Compare with now: ${name}"
          data-compare=${seal}
          @click=${() => this.#compare({ from: seal, to: null })}
        >
          Compare with now
        </button>
        <button
          class="act"
          data-more=${seal}
          aria-label="${opened ? 'Less' : 'More'} of ${name}"
          aria-expanded=${opened ? 'true' : 'false'}
          @click=${() => (this.opened = opened ? null : seal)}
        >
          ${opened ? 'Less' : 'More'}
        </button>
      </div>
      ${opened ? this.#more(snapshot) : nothing}
    </li>`;
  }

  #more(snapshot: Snapshot): TemplateResult {
    const { binder } = this;
    const { seal, hash, tool, name } = snapshot;
    const log = binder.versions.log.filter((entry) => entry.snapshot === seal);
    const beside = binder.against?.snapshot === snapshot;
    return html`<div class="under">
      <form class="fields" @submit=${(event: SubmitEvent) => this.#happened(event, snapshot)}>
        <label class="wide"
          >What happened to it: a note for the log
          <input name="note" autocomplete="off" />
        </label>
        ${HAPPENINGS.map(
          ([happened, say]) => html`<button class="act" value=${happened}>${say}</button>`,
        )}
      </form>
      ${
        log.length === 0
          ? nothing
          : html`<ol class="log" aria-label="What happened to ${name}">
              ${log.map(
                ({ date, happened, note }) =>
                  html`<li>${dayShown(date)}: ${happened}${note ? `, ${note}` : ''}</li>`,
              )}
            </ol>`
      }
      <div class="acts">
        <button
          class="act"
          aria-pressed=${beside ? 'true' : 'false'}
          @click=${() => binder.setAgainst(beside ? null : seal)}
        >
          ${beside ? 'Stands beside the price below' : 'Set the price below beside it'}
        </button>
        <button class="act" @click=${() => void this.#copy(snapshot, 'restored')}>
          Take it up again in a notebook of its own
        </button>
        <button class="act" @click=${() => void this.#copy(snapshot, 'trial')}>
          Copy it to try things in
        </button>
      </div>
      <p class="tell">
        ${
          this.#wrong(snapshot).length === 0
            ? 'It matches its hash: text, values, name, note and date are as they were frozen'
            : 'It does not match its hash'
        }
        (${hash.slice(0, 16)}…), by version ${tool} of this tool. It can’t be edited; only the log
        grows.
      </p>
    </div>`;
  }

  #beside({ values, seal }: Snapshot): TemplateResult | typeof nothing {
    const { binder } = this;
    const list = binder.versions.snapshots;
    const earlier = list[list.findIndex((one) => one.seal === seal) - 1];
    if (!earlier || earlier.values.currency !== values.currency) return nothing;
    const by = moreOrLess(values.total.price, earlier.values.total.price, values.currency);
    return html`<div class="tell">
      ${by ?? 'the same price'}${by ? ' than' : ' as'} ${earlier.name}
    </div>`;
  }

  /** What does not match, in words. Looked at once: a snapshot never changes while it is here. */
  #wrong(snapshot: Snapshot): readonly string[] {
    const known = this.#matches.get(snapshot);
    if (known) return known;
    const found = verify(snapshot).map((mismatch) => sayMismatch(snapshot, mismatch));
    this.#matches.set(snapshot, found);
    return found;
  }

  /** `Bid 3` where two were frozen. */
  #nextName(): string {
    const names = new Set(this.binder.versions.snapshots.map(({ name }) => name));
    let n = 1;
    while (names.has(`Bid ${n}`)) n++;
    return `Bid ${n}`;
  }

  #freeze = (event: SubmitEvent): void => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const [name, note] = [written(form, 'name'), written(form, 'note')];
    if (name === '') return;
    void this.binder.freeze(name, note).then(async (snapshot) => {
      if (!snapshot) return;
      this.said = `${name} is frozen, marked ${fingerprint(snapshot.seal)}.`;
      await this.updateComplete;
      form.reset();
      this.renderRoot.querySelector<HTMLElement>(`[data-compare="${snapshot.seal}"]`)?.focus();
    });
  };

  #happened(event: SubmitEvent, snapshot: Snapshot): void {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    // Enter in the note takes the first button: what a person does first is to send it.
    const pressed = event.submitter instanceof HTMLButtonElement ? event.submitter.value : 'sent';
    const found = HAPPENINGS.find(([happened]) => happened === pressed);
    if (!found) return;
    const [happened] = found;
    void this.binder.log(snapshot, happened, written(form, 'note')).then(() => {
      form.reset();
      this.said = `${snapshot.name}: ${happened}, in the log.`;
    });
  }

  async #copy(snapshot: Snapshot, kind: 'restored' | 'trial'): Promise<void> {
    await this.binder.copy(snapshot, kind);
    this.dispatchEvent(new CustomEvent('gone'));
  }

  #compare(detail: Compared): void {
    this.dispatchEvent(new CustomEvent<Compared>('compare', { detail }));
  }
}

export function written(form: HTMLFormElement, name: string): string {
  const field = form.elements.namedItem(name);
  return field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement
    ? field.value.trim()
    : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'snapshot-list': SnapshotList;
  }
}
