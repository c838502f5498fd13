// Draws a component again when something of what it shows happened in the session.
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Happening } from './happening.ts';
import type { Session } from './session.ts';

type Host = ReactiveControllerHost & { readonly session: Session };

export class Follows implements ReactiveController {
  readonly #host: Host;
  readonly #kinds: readonly Happening['kind'][];
  #stop: (() => void) | null = null;

  constructor(host: Host, ...kinds: readonly Happening['kind'][]) {
    this.#host = host;
    this.#kinds = kinds;
    host.addController(this);
  }

  hostConnected(): void {
    this.#stop = this.#host.session.listen((happening) => {
      if (this.#kinds.includes(happening.kind)) this.#host.requestUpdate();
    });
  }

  hostDisconnected(): void {
    this.#stop?.();
    this.#stop = null;
  }
}
