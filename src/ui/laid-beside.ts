// A dialog that stands beside the notebook where there is room, over it where there is not, and on paper neither: there it
// flows from page to page. When it goes, the keyboard is back where it was.
import type { LitElement, ReactiveController } from 'lit';

/** Narrower than this it lies over the notebook; on paper it flows, and what lies over a page is cut off. */
const ROOM_BESIDE = 'print, (min-width: 1281px)';

type Host = LitElement & { readonly open: boolean };

export class LaidBeside implements ReactiveController {
  readonly #host: Host;
  /** Called when it was laid there anew, or otherwise. */
  readonly #laid: () => void;
  readonly #room = window.matchMedia(ROOM_BESIDE);
  /** What had the keyboard before it was opened. */
  #before: HTMLElement | null = null;

  constructor(host: Host, laid: () => void = () => undefined) {
    this.#host = host;
    this.#laid = laid;
    host.addController(this);
  }

  hostConnected(): void {
    this.#room.addEventListener('change', this.#lay);
    window.addEventListener('beforeprint', this.#lay);
    window.addEventListener('afterprint', this.#lay);
  }

  hostDisconnected(): void {
    this.#room.removeEventListener('change', this.#lay);
    window.removeEventListener('beforeprint', this.#lay);
    window.removeEventListener('afterprint', this.#lay);
  }

  get over(): boolean {
    return this.#dialog?.classList.contains('over') ?? false;
  }

  /** Lays it there, before anything in it is given the keyboard. */
  come(): void {
    this.#before = focusedDeep();
    this.#lay();
  }

  /** `keyboard` says whether that goes back to where it was. */
  go(keyboard: 'goes back' | 'stays'): void {
    this.#dialog?.close();
    if (keyboard === 'goes back') this.#before?.focus();
  }

  get #dialog(): HTMLDialogElement | null {
    return this.#host.renderRoot.querySelector('dialog');
  }

  #lay = (event?: Event): void => {
    const dialog = this.#dialog;
    if (!this.#host.open || !dialog) return;
    const over = !this.#room.matches && event?.type !== 'beforeprint';
    if (dialog.open && this.over === over) return;
    dialog.close();
    dialog.classList.toggle('over', over);
    if (over) dialog.showModal();
    else dialog.show();
    this.#laid();
  };
}

function focusedDeep(): HTMLElement | null {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  return at instanceof HTMLElement ? at : null;
}
