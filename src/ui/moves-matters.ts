// What matters: for each given what the result comes to at its low and at its high, the greatest swing first, as bars on
// one scale with their figures beside them.
// Properties: `session`, `asked`, `result`, `shown`. Event, for a person's act: `goes` with the cell that was chosen.
import { LitElement, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { CellId } from '../language/tree.ts';
import { givensOf, numberOf } from '../moves-it/givens.ts';
import type { Matter, Matters } from '../moves-it/matters.ts';
import type { Packs } from '../moves-it/packs.ts';
import { cellsOfAnswer, placeIn } from '../moves-it/questions.ts';
import { JOB_PRICE, withTotals } from '../moves-it/whole-job.ts';
import type { Notebook } from '../notebook/document.ts';
import { tieOf } from '../notebook/ties.ts';
import { BAR_HEIGHT, type Scale, matterBar, placeOn } from './matter-bar.ts';
import { MeasuredWidth } from './measured-width.ts';
import { Follows } from './follows.ts';
import { look } from './look.ts';
import type { MovesAsked } from './moves-asked.ts';
import { movesLook } from './moves-look.ts';
import { NearAmounts } from './near-amounts.ts';
import type { Session } from './session.ts';

/** Drawn at first; the others move it less. */
const MOST = 14;

const MOST_PACKS = 3;

/** Of those that are nought. */
const NAMED_AT_MOST = 4;

@customElement('moves-matters')
export class MovesMatters extends LitElement {
  static override styles = [look, movesLook];

  @property({ attribute: false }) session!: Session;
  @property({ attribute: false }) asked!: MovesAsked;
  @property({ attribute: false }) result: CellId = JOB_PRICE;
  @property({ type: Boolean }) shown = false;
  @state() private matters: Matters | null = null;
  @state() private done = 0;
  @state() private all = false;
  /** What `matters` is of; it is asked anew when either changes. */
  #of: { readonly notebook: Notebook; readonly result: CellId } | null = null;
  readonly #bars = new MeasuredWidth(this, '.axis', 420);

  constructor() {
    super();
    new Follows(this, 'changed', 'opened');
  }

  protected override willUpdate(): void {
    const { notebook } = this.session.door;
    const known = this.#of?.notebook === notebook && this.#of.result === this.result;
    if (!this.shown || known) return;
    if (this.#of?.result !== this.result) this.matters = null;
    this.#of = { notebook, result: this.result };
    void this.#ask();
  }

  async #ask(): Promise<void> {
    const job = withTotals(this.session.door);
    const of = this.#of;
    this.done = 0;
    const answer = await this.asked.ask(
      job,
      { kind: 'matters', result: placeIn(job, this.result) },
      (done) => (this.done = done),
    );
    if (answer?.kind !== 'matters' || this.#of !== of) return;
    this.matters = answer.matters && cellsOfAnswer(job, answer.matters);
    this.done = 1;
  }

  protected override render(): TemplateResult {
    const { matters } = this;
    if (!matters) {
      return html`<p class="soon" role="status">
        Working along every given … ${Math.round(this.done * 100)}%
      </p>`;
    }
    const moving = matters.givens.filter(({ swing }) => swing > 0);
    const still = matters.givens.length - moving.length;
    if (moving.length === 0)
      return html`<p>No given that is a number moves it.</p>
        ${this.#leftOut(matters)}`;
    const words = new NearAmounts(withTotals(this.session.door), this.result);
    const scale = scaleOf(matters, moving, this.#bars.width);
    const drawn = this.all ? moving : moving.slice(0, MOST);
    return html`
      <p>
        ${leading(moving, (cell) => this.#name(cell))} Each given goes alone, all others staying as
        they are: by its own range where it has one, else by 10% to either side, what is counted by
        one at least.
      </p>
      ${legend()}
      <table class="matters" aria-label="What matters">
        <thead>
          <tr>
            <th scope="col">Given</th>
            <th class="axis">
              <span class="heard">Picture</span>
              ${axis(words, scale)}
            </th>
            <th scope="col">at its low</th>
            <th scope="col">at its high</th>
            <th scope="col">swing</th>
            <th scope="col" class="packs">whole things, low to high</th>
          </tr>
        </thead>
        <tbody>
          ${drawn.map((matter) => this.#row(matter, words, scale))}
        </tbody>
      </table>
      ${
        drawn.length === moving.length
          ? nothing
          : this.#others(moving.length - drawn.length, words.say(moving[MOST].swing))
      }
      ${
        still === 0
          ? nothing
          : html`<p class="small">
              ${still === 1 ? '1 given it rests on does' : `${still} givens it rests on do`} not
              move it within these bounds.
            </p>`
      }
      ${this.#leftOut(matters)} ${this.#tied(moving)}
    `;
  }

  /** Ten per cent of nought is nought: such a given was not looked at, and that is said. */
  #leftOut({ givens }: Matters): TemplateResult | typeof nothing {
    const seen = new Set(givens.map(({ given }) => given));
    const job = withTotals(this.session.door);
    const nought = givensOf(job, this.result).filter(
      (cell) => !seen.has(cell) && numberOf(job.state(cell))?.isZero(),
    );
    if (nought.length === 0) return nothing;
    const names = nought.slice(0, NAMED_AT_MOST).map((cell) => this.#name(cell));
    const more = nought.length - names.length;
    return html`<p class="small nought">
      Not looked at, because 10% of nought is nought:
      ${names.join('; ')}${more > 0 ? `; and ${more} more` : ''}. A range with its best and its
      worst says how far to look.
    </p>`;
  }

  /** Here each goes alone, also where the text says that some move together. */
  #tied(moving: readonly Matter[]): TemplateResult | typeof nothing {
    const { session } = this;
    const isTied = (given: CellId): boolean => {
      const { inTable } = session.door.state(given).input;
      const cell = session.cell(inTable ?? given);
      return cell ? tieOf(cell) !== null : false;
    };
    const tied = moving.filter(({ given }) => isTied(given));
    if (tied.length < 2) return nothing;
    return html`<p class="small tied">
      ${tied.length} of them are tied to others, and go alone here all the same. Together they go
      under How sure.
    </p>`;
  }

  /** On paper it is said and not offered. */
  #others(many: number, most: string): TemplateResult {
    const says = `${many} more, each by ${most} at most`;
    return html`<p>
      <button class="act" @click=${() => (this.all = true)}>${says}</button
      ><span class="on-paper">${says}.</span>
    </p>`;
  }

  #row(matter: Matter, words: NearAmounts, scale: Scale): TemplateResult {
    const { given, from, to, swing } = matter;
    const own = new NearAmounts(this.session.door, given);
    const [low, high] = from.at <= to.at ? [from, to] : [to, from];
    const name = this.#name(given);
    const part = this.#part(given);
    return html`<tr>
      <th scope="row">
        <button class="name" @click=${() => this.#goes(given)} title="Go to it">${name}</button>
        <span class="where">${part === '' ? nothing : html`${part}, `}${bySaid(matter, own)}</span>
      </th>
      <td class="bar" @click=${() => this.#goes(given)}>
        <svg
          aria-hidden="true"
          viewBox="0 0 ${scale.width} ${BAR_HEIGHT}"
          preserveAspectRatio="none"
          height=${BAR_HEIGHT}
        >
          ${plumb(scale, words.now ?? scale.low)} ${matterBar(matter, own.now ?? low.at, scale)}
        </svg>
      </td>
      <td data-label="at its low">${words.say(low.result)}</td>
      <td data-label="at its high">${words.say(high.result)}</td>
      <td data-label="swing"><strong>${words.say(swing)}</strong>${jumpsSaid(matter)}</td>
      <td class="packs" data-label="whole things, low to high">${this.#packs(matter)}</td>
    </tr>`;
  }

  /** How many whole things on the way, from its low to its high; what is bought by the pack first. */
  #packs({ packs, from, to }: Matter): readonly TemplateResult[] {
    const isUp = from.at <= to.at;
    const isBought = ({ cell }: Packs): boolean =>
      this.session.cell(cell)?.remarks.some(({ kind }) => kind === 'buy') ?? false;
    const inOrder = [...packs.filter(isBought), ...packs.filter((pack) => !isBought(pack))];
    const told = inOrder.slice(0, MOST_PACKS).map((each) => {
      const [low, high] = isUp ? [each.from, each.to] : [each.to, each.from];
      const { name } = this.session.door.state(each.cell).input;
      return html`<span class="pack">${name}: ${withoutNoun(low)} to ${high}</span>`;
    });
    const more = packs.length - told.length;
    return more <= 0 ? told : [...told, html`<span class="pack">and ${more} more</span>`];
  }

  #name(cell: CellId): string {
    return this.session.door.state(cell).input.name;
  }

  #part(cell: CellId): string {
    const { part } = this.session.door.state(cell).input;
    return this.session.part(part)?.name ?? '';
  }

  #goes(cell: CellId): void {
    this.dispatchEvent(new CustomEvent('goes', { detail: cell }));
  }
}

/** `29 boards` beside `35 boards`: 29. */
function withoutNoun(shown: string): string {
  return /^[\d,]+(?= )/.exec(shown)?.[0] ?? shown;
}

function jumpsSaid({ jumps, more }: Matter): TemplateResult | typeof nothing {
  if (jumps.length === 0) return nothing;
  const many = jumps.length === 1 ? '1 jump' : `${jumps.length} jumps`;
  return html`<span class="where">in ${more ? `more than ${many}` : many}</span>`;
}

function leading(moving: readonly Matter[], name: (cell: CellId) => string): string {
  const [first, second] = moving;
  if (!second) return `It hangs on ${name(first.given)} alone.`;
  return `It hangs most on ${name(first.given)}, then on ${name(second.given)}.`;
}

/** `its range, 12 hours to 16 hours`; `10% less to 10% more, …`. */
function bySaid({ by, from, to }: Matter, words: NearAmounts): string {
  const [low, high] = [Math.min(from.at, to.at), Math.max(from.at, to.at)];
  const ends = `${words.say(low)} to ${words.say(high)}`;
  switch (by) {
    case 'range':
      return `by its range: ${ends}`;
    case 'tenth':
      return `by 10%: ${ends}`;
    case 'whole':
      return `in whole ones: ${ends}`;
  }
}

function scaleOf({ plain }: Matters, moving: readonly Matter[], width: number): Scale {
  const all = moving.flatMap(({ points, from, to }) =>
    [...points, from, to].map(({ result }) => result).filter((value) => Number.isFinite(value)),
  );
  return { low: Math.min(plain, ...all), high: Math.max(plain, ...all), width };
}

function plumb(scale: Scale, now: number): TemplateResult {
  return svg`<path class="plumb" d=${`M${placeOn(scale, now)} 0V${BAR_HEIGHT}`} />`;
}

/** The ends of the scale, and over them where it stands now. */
function axis(words: NearAmounts, scale: Scale): TemplateResult {
  const now = words.now ?? scale.low;
  const x = placeOn(scale, now);
  const share = x / scale.width;
  const anchor = share < 0.25 ? 'start' : share > 0.75 ? 'end' : 'middle';
  return html`<svg class="scale" aria-hidden="true" viewBox="0 0 ${scale.width} 40" height="40">
    <text x=${x} y="12" text-anchor=${anchor}>now ${words.say(now)}</text>
    <path class="plumb" d="M${x} 16V40" />
    <text x="0" y="30">${words.say(scale.low)}</text>
    <text x=${scale.width} y="30" text-anchor="end">${words.say(scale.high)}</text>
    <path class="base" d="M0.5 40V35H${scale.width - 0.5}V40" />
  </svg>`;
}

function legend(): TemplateResult {
  const sample = (inside: TemplateResult): TemplateResult =>
    html`<svg viewBox="0 0 30 ${BAR_HEIGHT}" width="30" height=${BAR_HEIGHT}>${inside}</svg>`;
  return html`<ul class="legend" aria-hidden="true">
    <li>${sample(svg`<path class="less" d="M1 6H29V18H1Z" />`)}the given is less than now</li>
    <li>
      ${sample(
        svg`<path class="more" d="M1 6H29V18H1Z" /><path class="hatch" d="M1 18L13 6M6 18L18 6M11 18L23 6M16 18L28 6M21 18L29 10M26 18L29 15M1 13L8 6M1 8L3 6" />`,
      )}it
      is more
    </li>
    <li>
      ${sample(svg`<path class="jump" d="M2 12H28M2 6V18M15 6V18M28 6V18" />`)}it jumps: whole
      packs, boards, steps
    </li>
  </ul>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'moves-matters': MovesMatters;
  }
}
