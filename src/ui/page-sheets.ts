// What is laid over the page: sheets, snapshots, the job record, what moves it, the client's sheet, the guide and the alternatives. Each is fetched when it is first asked for.
import { html, nothing, type ReactiveController, type TemplateResult } from 'lit';
import type { ReactiveControllerHost } from 'lit';
import type { CellId } from '../language/tree.ts';
import type { Desk } from './desk.ts';
import type { SheetName } from './job-header.ts';
import type { CellSheet } from './job-sheets.ts';

type Page = ReactiveControllerHost & HTMLElement & { readonly desk: Desk };

/** What comes in a piece of its own. */
type Fetched =
  | 'sheets'
  | 'snapshots'
  | 'record'
  | 'moves'
  | 'client'
  | 'show-how'
  | 'guide'
  | 'alternatives-sheet';

export class PageSheets implements ReactiveController {
  readonly #page: Page;
  /** Called when a sheet went. */
  readonly #gone: (sheet: SheetName | CellSheet | '') => void;
  readonly #here = new Set<Fetched>();
  #open: SheetName | CellSheet | '' = '';
  /** What stands in the place of the working. */
  #beside: 'guide' | 'alternatives-sheet' | null = null;
  /** The cell that the sheet is about, and of a table the column. */
  #about: CellId | null = null;
  #column = 0;

  constructor(page: Page, gone: (sheet: SheetName | CellSheet | '') => void) {
    this.#page = page;
    this.#gone = gone;
    page.addController(this);
  }

  hostUpdate(): void {
    const page = this.#page;
    const open = this.#open;
    if (this.#beside) this.#fetch(this.#beside);
    for (const beside of ['guide', 'alternatives-sheet'] as const) {
      page.toggleAttribute(beside, this.#beside === beside && this.#here.has(beside));
    }
    page.toggleAttribute('snapshots', open === 'snapshots' && this.#here.has('snapshots'));
    page.toggleAttribute('record', open === 'record');
    page.toggleAttribute('moves', open === 'moves');
    page.toggleAttribute('show-how', open === 'show-how');
    page.toggleAttribute('client', this.alone);
    const own = ['snapshots', 'record', 'moves', 'show-how', 'client'] as const;
    const found = own.find((one) => one === open);
    if (found) this.#fetch(found);
    else if (open !== '') this.#fetch('sheets');
  }

  get open(): SheetName | CellSheet | '' {
    return this.#open;
  }

  /** Whether a client looks on: nothing of the notebook stands in the document then but what that sheet shows. */
  get alone(): boolean {
    return this.#open === 'client' && this.#here.has('client');
  }

  show(sheet: SheetName): void {
    this.#open = sheet;
    this.#page.requestUpdate();
  }

  /** A sheet about one cell. */
  lay(sheet: CellSheet, cell: CellId, column = 0): void {
    this.#column = column;
    this.#about = cell;
    this.#open = sheet;
    this.#page.requestUpdate();
  }

  readonly turnGuide = (): void => {
    this.#beside = this.#beside === 'guide' ? null : 'guide';
    this.#page.requestUpdate();
  };

  readonly turnAlternatives = (): void => {
    this.#beside = this.#beside === 'alternatives-sheet' ? null : 'alternatives-sheet';
    this.#page.requestUpdate();
  };

  /** What is laid beside the notebook where there is room. */
  beside(): TemplateResult | typeof nothing {
    const { desk } = this.#page;
    if (this.alone) return nothing;
    return html`${
      this.#here.has('guide')
        ? html`<guide-page
            .desk=${desk}
            ?open=${this.#beside === 'guide'}
            @away=${this.turnGuide}
          ></guide-page>`
        : nothing
    }
    ${
      this.#here.has('alternatives-sheet')
        ? html`<alternatives-sheet
            .desk=${desk}
            ?open=${this.#beside === 'alternatives-sheet'}
            @away=${this.turnAlternatives}
          ></alternatives-sheet>`
        : nothing
    }`;
  }

  render(): TemplateResult {
    const { desk } = this.#page;
    const open = this.#open;
    if (this.alone)
      return html`<client-sheet .desk=${desk} open @away=${this.#away}></client-sheet>`;
    return html`
      ${
        this.#here.has('record')
          ? html`<record-sheet
              .desk=${desk}
              ?open=${open === 'record'}
              @away=${this.#away}
            ></record-sheet>`
          : nothing
      }
      ${
        this.#here.has('moves')
          ? html`<moves-sheet
              .desk=${desk}
              ?open=${open === 'moves'}
              @away=${this.#away}
            ></moves-sheet>`
          : nothing
      }
      ${
        this.#here.has('show-how')
          ? html`<show-how
              .desk=${desk}
              .cell=${this.#about}
              ?open=${open === 'show-how'}
              @away=${this.#away}
            ></show-how>`
          : nothing
      }
      ${
        this.#here.has('sheets')
          ? html`<job-sheets
              .desk=${desk}
              open=${open === 'snapshots' ? '' : open}
              .about=${this.#about}
              column=${this.#column}
              @away=${this.#away}
            ></job-sheets>`
          : nothing
      }
      ${
        this.#here.has('snapshots')
          ? html`<snapshot-sheet
              .desk=${desk}
              ?open=${open === 'snapshots'}
              @away=${this.#away}
            ></snapshot-sheet>`
          : nothing
      }
    `;
  }

  #away = (): void => {
    const sheet = this.#open;
    this.#open = '';
    this.#page.requestUpdate();
    this.#gone(sheet);
  };

  #fetch(piece: Fetched): void {
    if (this.#here.has(piece)) return;
    void PIECES[piece]().then(() => {
      this.#here.add(piece);
      this.#page.requestUpdate();
    });
  }
}

const PIECES: Readonly<Record<Fetched, () => Promise<unknown>>> = {
  sheets: () => import('./job-sheets.ts'),
  snapshots: () => import('./snapshot-sheet.ts'),
  record: () => import('./record-sheet.ts'),
  moves: () => import('./moves-sheet.ts'),
  client: () => import('./client-sheet.ts'),
  'show-how': () => import('./show-how.ts'),
  guide: () => import('./guide-page.ts'),
  'alternatives-sheet': () => import('./alternatives-sheet.ts'),
};
