// Of a long table only the rows in sight are on the page, and some around them: where the others would stand is left
// free, so that the scroll bar tells the truth. The row that the keyboard is in stays, wherever it stands.
// In print all rows stand.
import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Tables up to this long stand on the page as a whole. */
export const WHOLE = 150;
/** Rows drawn above and below those in sight. */
const AROUND = 15;
/** Rows drawn before anything was measured, and about how high one is, in pixels. */
const FIRST = 40;
const ROW_HEIGHT = 30;

/** A row that stands on the page, or room for those above another that don't. */
export type Line =
  | { readonly kind: 'row'; readonly row: number }
  | { readonly kind: 'room'; readonly above: number; readonly height: number };

interface Host extends ReactiveControllerHost {
  readonly renderRoot: HTMLElement | DocumentFragment;
}

export class RowWindow implements ReactiveController {
  readonly #host: Host;
  #many = 0;
  #from = 0;
  #to = FIRST;
  #height = ROW_HEIGHT;
  /** Rows that are higher than the others: something is told in them. */
  #higher = new Map<number, number>();
  #printing = false;
  /** The widest each column was, so that columns stand still while rows come and go. */
  #widths: number[] = [];
  #columns = '';

  constructor(host: Host) {
    this.#host = host;
    host.addController(this);
  }

  hostConnected(): void {
    window.addEventListener('beforeprint', this.#prints);
    window.addEventListener('afterprint', this.#printed);
  }

  hostDisconnected(): void {
    window.removeEventListener('beforeprint', this.#prints);
    window.removeEventListener('afterprint', this.#printed);
  }

  /** Are all rows on the page? */
  get whole(): boolean {
    return this.#many <= WHOLE || this.#printing;
  }

  /** What stands on the page of so many rows, `kept` among them. */
  lines(many: number, kept: number): readonly Line[] {
    if (many !== this.#many) {
      this.#many = many;
      this.#higher.clear();
      this.#find();
    }
    const [from, to] = this.whole ? [0, many] : [this.#from, this.#to];
    const rows = Array.from({ length: to - from }, (_, n) => from + n);
    if (kept >= 0 && kept < from) rows.unshift(kept);
    if (kept >= to && kept < many) rows.push(kept);
    const found: Line[] = [];
    let at = 0;
    const roomTo = (row: number): void => {
      if (row > at) found.push({ kind: 'room', above: row, height: this.#between(at, row) });
    };
    for (const row of rows) {
      roomTo(row);
      found.push({ kind: 'row', row });
      at = row + 1;
    }
    roomTo(many);
    return found;
  }

  scrolled = (): void => {
    if (this.#find()) this.#host.requestUpdate();
  };

  /** Brings a row that may not be drawn into the rows that are. */
  show(row: number): void {
    const scroller = this.#scroller;
    if (!scroller || this.whole) return;
    const top = this.#between(0, row);
    const seen = scroller.clientHeight;
    if (top < scroller.scrollTop || top + this.#height * 3 > scroller.scrollTop + seen) {
      scroller.scrollTop = top - seen / 2;
      this.#find();
    }
  }

  /** After the rows were drawn. */
  hostUpdated(): void {
    if (this.whole) {
      if (this.#widths.length > 0 && this.#many <= WHOLE) this.#keepWidths([]);
      return;
    }
    const rows = [...this.#host.renderRoot.querySelectorAll<HTMLElement>('tr[data-row]')];
    const heights = rows.map((row) => [Number(row.dataset['row']), row.offsetHeight] as const);
    const usual = Math.min(...heights.map(([, height]) => height).filter((height) => height > 0));
    if (Number.isFinite(usual) && usual !== this.#height) {
      this.#height = usual;
      this.#host.requestUpdate();
    }
    for (const [row, height] of heights) {
      if (height > this.#height) this.#higher.set(row, height);
      else this.#higher.delete(row);
    }
    const heads = [...this.#host.renderRoot.querySelectorAll<HTMLElement>('thead th')];
    this.#keepWidths(heads);
    if (this.#find()) this.#host.requestUpdate();
  }

  #keepWidths(heads: readonly HTMLElement[]): void {
    const columns = heads.map((head) => head.textContent ?? '').join('\0');
    if (columns !== this.#columns) {
      this.#columns = columns;
      this.#widths = [];
      for (const head of heads) head.style.minWidth = '';
    }
    heads.forEach((head, k) => {
      const width = Math.ceil(head.getBoundingClientRect().width);
      if (width <= (this.#widths[k] ?? 0)) return;
      this.#widths[k] = width;
      head.style.minWidth = `${width}px`;
    });
  }

  /** Finds which rows are in sight; true where others are to be drawn. */
  #find(): boolean {
    const scroller = this.#scroller;
    const top = scroller?.scrollTop ?? 0;
    const seen = scroller?.clientHeight || FIRST * this.#height;
    let first = 0;
    let y = 0;
    while (first < this.#many && y + this.#heightOf(first) <= top) y += this.#heightOf(first++);
    let last = first;
    while (last < this.#many && y < top + seen) y += this.#heightOf(last++);
    // Only where what is drawn comes to its end: not at every turn of the wheel.
    const near = AROUND / 3;
    const enough =
      (this.#from === 0 || this.#from <= first - near) &&
      (this.#to >= this.#many || this.#to >= last + near) &&
      this.#to - this.#from <= last - first + 3 * AROUND;
    if (enough) return false;
    this.#from = Math.max(0, first - AROUND);
    this.#to = Math.min(this.#many, last + AROUND);
    return true;
  }

  #between(from: number, to: number): number {
    let height = (to - from) * this.#height;
    for (const [row, high] of this.#higher) {
      if (row >= from && row < to) height += high - this.#height;
    }
    return height;
  }

  #heightOf(row: number): number {
    return this.#higher.get(row) ?? this.#height;
  }

  get #scroller(): HTMLElement | null {
    return this.#host.renderRoot?.querySelector<HTMLElement>('.scroll') ?? null;
  }

  #prints = (): void => {
    this.#printing = true;
    this.#host.requestUpdate();
  };

  #printed = (): void => {
    this.#printing = false;
    this.#host.requestUpdate();
  };
}
