// How wide an element of a component is drawn, so that strokes in it stay strokes; draws it again when that changes.
import type { ReactiveController, ReactiveControllerHost } from 'lit';

type Host = ReactiveControllerHost & { readonly renderRoot: Element | DocumentFragment };

export class MeasuredWidth implements ReactiveController {
  readonly #host: Host;
  readonly #selector: string;
  readonly #watch = new ResizeObserver((seen) => this.#seen(seen));
  #element: Element | null = null;
  width: number;

  /** Until it was seen it is taken to be so wide. */
  constructor(host: Host, selector: string, width: number) {
    this.#host = host;
    this.#selector = selector;
    this.width = width;
    host.addController(this);
  }

  hostUpdated(): void {
    const found = this.#host.renderRoot.querySelector(this.#selector);
    if (found === this.#element) return;
    this.#watch.disconnect();
    this.#element = found;
    if (found) this.#watch.observe(found);
  }

  hostDisconnected(): void {
    this.#watch.disconnect();
    this.#element = null;
  }

  #seen(seen: readonly ResizeObserverEntry[]): void {
    const width = Math.round(seen.at(-1)?.contentRect.width ?? 0);
    // Hidden it has none: it is drawn as it was.
    if (width === 0 || width === this.width) return;
    this.width = width;
    // In the next frame: drawn at once it would be measured again within this one.
    requestAnimationFrame(() => this.#host.requestUpdate());
  }
}
