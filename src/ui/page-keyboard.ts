// The keyboard on the page: each key goes to whatever has it, from what is being written up to undoing anywhere.
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { CellId } from '../language/tree.ts';
import type { Desk } from './desk.ts';
import { duplicatePart } from './moving.ts';
import {
  type Asked,
  clientKey,
  goToKey,
  guideKey,
  moveKey,
  movesKey,
  problemKey,
  rowKey,
  snapshotsKey,
  undoKey,
  watchKey,
  whatIfKey,
} from './page-keys.ts';
import type { PageSheets } from './page-sheets.ts';
import type { CellSheet } from './job-sheets.ts';
import type { Session } from './session.ts';
import type { StoryCell } from './story-cell.ts';

interface Page extends ReactiveControllerHost {
  readonly desk: Desk;
  readonly session: Session;
  readonly sheets: PageSheets;
  lay(sheet: CellSheet, cell: CellId): void;
  toWorking(): void;
  /** On a phone: the working goes out of the way. */
  fromWorking(): void;
}

export class PageKeyboard implements ReactiveController {
  readonly #page: Page;

  constructor(page: Page) {
    this.#page = page;
    page.addController(this);
  }

  hostConnected(): void {
    // Also where nothing has the keyboard: undoing always works.
    document.addEventListener('keydown', this.#key);
    // Before whatever is being written takes its keys: one goes on from anywhere.
    document.addEventListener('keydown', this.#goToKey, true);
  }

  hostDisconnected(): void {
    document.removeEventListener('keydown', this.#key);
    document.removeEventListener('keydown', this.#goToKey, true);
  }

  #goToKey = (event: KeyboardEvent): void => {
    if (goToKey(event) === 'nothing' || event.isComposing) return;
    event.preventDefault();
    event.stopPropagation();
    if (this.#page.sheets.open === '') this.#page.sheets.show('go-to');
  };

  #key = (event: KeyboardEvent): void => {
    if (event.defaultPrevented || event.isComposing) return;
    if (this.#keyed(event) !== 'nothing') event.preventDefault();
  };

  #keyed(event: KeyboardEvent): Asked {
    const page = this.#page;
    const { session, sheets } = page;
    // A client sits beside: nothing of the notebook moves or comes into sight.
    if (sheets.open === 'client') return 'nothing';
    const undone = undoKey(session, event);
    if (undone !== 'nothing') return undone;
    if (guideKey(session, event)) {
      sheets.turnGuide();
      return 'done';
    }
    const path = event.composedPath().filter((at) => at instanceof HTMLElement);
    if (sheets.open === '' && snapshotsKey(session, event)) {
      sheets.show('snapshots');
      return 'done';
    }
    if (sheets.open === '' && clientKey(session, event)) {
      sheets.show('client');
      return 'done';
    }
    if (sheets.open === '' && movesKey(session, event)) {
      sheets.show('moves');
      return 'done';
    }
    if (sheets.open === '' && whatIfKey(session, event)) {
      sheets.turnAlternatives();
      return 'done';
    }
    if (event.key === 'Escape' && path.some((at) => at.tagName === 'ASIDE')) {
      page.fromWorking();
      if (session.chosen !== null) session.bring(session.chosen);
      return 'done';
    }
    // A sheet that is laid over the page has keys of its own.
    if (!path.some((at) => at.tagName === 'DIALOG')) {
      const mended = problemKey(session, event);
      if (mended !== 'nothing') return mended;
    }
    const row = path.find((at): at is StoryCell => at.tagName === 'STORY-CELL');
    const heading = path.find((at) => at.dataset['heading'] !== undefined);
    const on = row
      ? { cell: row.cell.id }
      : heading
        ? { part: heading.dataset['heading'] ?? '' }
        : null;
    if (on && session.writing === null) {
      const moved = moveKey(session, on, event);
      if (moved !== 'nothing') return moved;
    }
    const watched = sheets.open === '' ? watchKey(session, on, event) : null;
    if (watched) {
      page.desk.watching.turn(watched);
      return 'done';
    }
    if (heading && /^d$/i.test(event.key) && !event.ctrlKey && !event.metaKey && !event.altKey) {
      duplicatePart(session, heading.dataset['heading'] ?? '');
      return 'done';
    }
    if (!row || session.writing !== null || event.ctrlKey || event.metaKey || event.altKey) {
      return 'nothing';
    }
    const onName = path.some((at) => at.classList.contains('name'));
    const asked = rowKey(session, row.cell.id, event.key, onName ? 'name' : 'other');
    if (asked === 'working') page.toWorking();
    if (asked === 'remove') page.lay('removing', row.cell.id);
    if (asked === 'move') page.lay('moving', row.cell.id);
    if (asked === 'goes-into') page.lay('goes-into', row.cell.id);
    if (asked === 'go-to') sheets.show('go-to');
    if (asked === 'show-how') page.lay('show-how', session.worked ?? row.cell.id);
    return asked;
  }
}
