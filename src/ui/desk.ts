// What lies on the desk: the open notebook, where it is kept, and the ways to open, save and follow it.
// Clock, ids and everything of the browser that is not drawn come in from outside.
import { LONGEST_TEXT, refusal } from '../notebook/read-notebook.ts';
import { type Channel, Keeper, type KeeperState } from '../store/keeper.ts';
import type { Shelf } from '../store/shelf.ts';
import type { KeptEntry, KeptPlace } from '../store/shapes.ts';
import type { VersionsShelf } from '../store/versions-shelf.ts';
import {
  type Identities,
  type KeptIdentities,
  keptIdentities,
  newIdentities,
  readIdentities,
  stemOf,
  withNew,
} from '../versions/identities.ts';
import { asidesOf } from './asides.ts';
import { allCells } from './reading-order.ts';
import { type Door, Session } from './session.ts';

export interface Template {
  readonly file: string;
  read(): Promise<string>;
}

export interface DeskSettings {
  readonly estimate: (text: string) => Door;
  readonly shelf: Shelf;
  /** Read when somebody asks for what is kept beside a notebook. */
  readonly versions: () => Promise<VersionsShelf>;
  readonly now: () => number;
  readonly newId: () => string;
  readonly later: (call: () => void) => () => void;
  readonly channel: () => Channel | null;
  /** Asks whether this page is the only one on a notebook; null where the browser can't tell. */
  readonly alone: (id: string) => Promise<boolean | null>;
  readonly templates: readonly Template[];
  /** What a newcomer finds on the desk. */
  readonly demo: () => Promise<string>;
  readonly guide: () => Promise<string>;
}

/** A text that is opened, with what was kept beside it. */
interface Opened {
  readonly text: string;
  readonly id: string;
  readonly identities: KeptIdentities | null;
}

const EMPTY = '# New estimate\n\n## First part\n\n- First size: ?\n  - from: to be measured\n';

export class Desk {
  readonly session: Session;
  readonly templates: readonly Template[];
  readonly #settings: DeskSettings;
  #keeper: Keeper | null = null;
  #text = '';
  #identities: Identities;
  #place: KeptPlace | null = null;
  readonly #listeners = new Set<() => void>();

  /** The notebook that was open last, or the demo on a first visit. */
  static async laid(settings: DeskSettings): Promise<Desk> {
    const { shelf } = settings;
    const id = await shelf.last().catch(() => null);
    const kept = id === null ? null : await shelf.take(id).catch(() => null);
    if (id !== null && kept?.kind === 'taken') {
      const desk = new Desk(settings, kept.value.text, id, kept.value.identities);
      await desk.#lay(id, kept.value.revision, kept.value.keptAt);
      return desk;
    }
    const text = await settings.demo();
    const fresh = settings.newId();
    const desk = new Desk(settings, text, fresh, null);
    await desk.#lay(fresh, 0, null);
    if (kept?.kind === 'newer' || kept?.kind === 'unreadable') {
      desk.session.tell({ text: notTaken(kept.kind), lasts: 'stays' });
    }
    return desk;
  }

  private constructor(
    settings: DeskSettings,
    text: string,
    id: string,
    identities: KeptIdentities | null,
  ) {
    this.#settings = settings;
    this.templates = settings.templates;
    const door = settings.estimate(text);
    this.session = new Session(door, asidesOf(door));
    this.#text = text;
    this.#identities = identitiesOf(door, id, identities);
    this.session.listen((happening) => {
      if (happening.kind === 'changed' || happening.kind === 'tape') this.#keepSoon();
    });
  }

  get keeping(): KeeperState {
    return this.#keeper?.state ?? { kind: 'kept', at: null };
  }

  /** Where one left off in this notebook, for the page to go back to. */
  get place(): KeptPlace | null {
    return this.#place;
  }

  /** Called when how the notebook is kept has changed. */
  listen(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Who is who in the open notebook, from one visit to the next. */
  get identities(): Identities {
    this.#identities = withNew(this.#identities, this.session.door.notebook);
    return this.#identities;
  }

  versions(): Promise<VersionsShelf> {
    return this.#settings.versions();
  }

  now(): number {
    return this.#settings.now();
  }

  newId(): string {
    return this.#settings.newId();
  }

  /** Keeps the notebook though it was not changed: something is kept beside it. */
  async keepAnyway(): Promise<void> {
    if (this.keeping.kind === 'kept' && this.keeping.at !== null) return;
    this.#keepSoon('anyway');
    await this.#keeper?.flush();
  }

  async list(): Promise<readonly KeptEntry[]> {
    return this.#settings.shelf.list().catch(() => []);
  }

  get openId(): string {
    return this.#keeper?.id ?? '';
  }

  /** Opens a text as a notebook of its own; says why not where it is none. */
  async openText(text: string): Promise<boolean> {
    const refused = refusal(text, LONGEST_TEXT);
    if (refused) {
      this.session.tell({
        text: `${refused.message} The notebook that was open is still here.`,
        lasts: 'stays',
      });
      return false;
    }
    await this.#change({ text, id: this.#settings.newId(), identities: null }, 0, null);
    this.#keepSoon('anyway');
    return true;
  }

  openEmpty(): Promise<boolean> {
    return this.openText(EMPTY);
  }

  /** The demo again, beside whatever became of it. */
  async openDemo(): Promise<void> {
    await this.openText(await this.#settings.demo());
  }

  async openKept(id: string): Promise<void> {
    if (id === this.openId) return;
    const kept = await this.#settings.shelf.take(id).catch(() => null);
    if (kept?.kind === 'taken') {
      await this.#change(kept.value, kept.value.revision, kept.value.keptAt);
    } else {
      this.session.tell({ text: notTaken(kept?.kind ?? 'absent'), lasts: 'stays' });
    }
  }

  async forget(id: string): Promise<void> {
    await this.#settings.shelf.remove(id).catch(() => {
      this.session.tell({ text: 'That notebook could not be removed here.', lasts: 'stays' });
    });
  }

  /** Another page kept this notebook later: show what it kept. */
  async follow(): Promise<void> {
    const id = this.openId;
    const kept = await this.#settings.shelf.take(id).catch(() => null);
    if (kept?.kind !== 'taken') {
      this.session.tell({ text: notTaken(kept?.kind ?? 'absent'), lasts: 'stays' });
      return;
    }
    this.#place = this.placeNow(this.#place?.scroll ?? 0);
    const { revision, keptAt } = kept.value;
    this.#open(kept.value);
    await this.#lay(id, revision, keptAt, this.#place);
    this.session.tell({ text: 'This page now shows what the other one kept.', lasts: 'plain' });
  }

  /** Another page kept this notebook later: what stands here becomes a notebook of its own. */
  async keepAsCopy(): Promise<void> {
    const { notebook } = this.session.door;
    const at = notebook.titleSpot;
    const title = `${notebook.title || 'Estimate'}, a copy`;
    const id = this.#settings.newId();
    // The cells are who they were; what comes to the copy from now on has keys of its own.
    this.#identities = { ...this.identities, stem: stemOf(id), next: 1 };
    await this.#lay(id, 0, null, this.#place);
    const splice = at ? { ...at, insert: title } : { from: 0, to: 0, insert: `# ${title}\n\n` };
    this.session.apply((door) => door.replaceText({ say: `Title: ${title}`, splices: [splice] }));
    this.#keepSoon('anyway');
  }

  async insert(template: Template): Promise<void> {
    const before = this.session.door.notebook.parts.length;
    const text = await template.read();
    if (!this.session.apply((door) => door.insertTemplate(text))) return;
    const { door } = this.session;
    const added = new Set(door.notebook.parts.slice(before).map(({ key }) => key));
    const first = allCells(door.notebook).find(
      ({ id, part }) => added.has(part) && door.state(id).kind === 'given',
    );
    if (!first) return;
    this.session.bring(first.id);
    this.session.write({ kind: 'formula', cell: first.id });
  }

  /** The guide as a notebook of its own, anew each time it is asked for: what is tried in it touches nothing else. */
  async guide(): Promise<Door> {
    return this.#settings.estimate(await this.#settings.guide());
  }

  /** Keeps what waits and where one is; for when the page is left. */
  async leave(scroll: number): Promise<void> {
    this.session.leaveTape();
    const place = this.placeNow(scroll);
    const kept = this.#keeper?.flush();
    await this.#settings.shelf.keepPlace(this.openId, place).catch(() => undefined);
    await kept;
  }

  placeNow(scroll: number): KeptPlace {
    const { session } = this;
    const cell = session.chosen === null ? null : session.cell(session.chosen);
    const part = cell ? (session.part(cell.part)?.name ?? '') : '';
    return { v: 1, part, cell: cell?.name ?? null, scroll };
  }

  async keepPlace(scroll: number): Promise<void> {
    this.#place = this.placeNow(scroll);
    await this.#settings.shelf.keepPlace(this.openId, this.#place).catch(() => undefined);
  }

  async #change(opened: Opened, revision: number, keptAt: number | null): Promise<void> {
    await this.#keeper?.close();
    await this.#lay(opened.id, revision, keptAt, undefined, () => this.#open(opened));
  }

  #open({ text, id, identities }: Opened): void {
    const door = this.#settings.estimate(text);
    this.#text = text;
    this.#identities = identitiesOf(door, id, identities);
    this.session.open(door, asidesOf(door));
  }

  /** Puts a keeper in charge of this notebook from now on. */
  async #lay(
    id: string,
    revision: number,
    keptAt: number | null,
    place?: KeptPlace | null,
    open?: () => void,
  ): Promise<void> {
    const { shelf, now, later, channel, alone } = this.#settings;
    const before = this.#keeper;
    this.#place = place === undefined ? await shelf.place(id).catch(() => null) : place;
    this.#keeper = new Keeper(id, revision, keptAt, {
      shelf,
      now,
      later,
      channel: channel(),
      changed: ({ kind }) => {
        if (kind === 'behind' && this.session.notice?.lasts === 'plain') this.session.tell(null);
        this.#said();
      },
    });
    void before?.close();
    open?.();
    this.#goBack();
    this.#said();
    await shelf.keepLast(id).catch(() => undefined);
    if ((await alone(id)) === false) {
      this.session.tell({
        text: 'This notebook is open in another tab too. Nothing is written over: whichever keeps second is told.',
        lasts: 'plain',
      });
    }
  }

  /** The cell that was chosen when this notebook was left, or the first that was worked from others. */
  #goBack(): void {
    const { session } = this;
    const { door } = session;
    const place = this.#place;
    const left = place?.cell ? session.called(place.part, place.cell) : null;
    const cells = allCells(door.notebook);
    const worked = cells.find(({ id }) => door.state(id).needs.length > 0);
    session.choose(left ?? worked?.id ?? cells[0]?.id ?? null);
  }

  /** Not while a tape is open: what it passes over is tried and not meant. */
  #keepSoon(when?: 'anyway'): void {
    const { notebook } = this.session.door;
    if (this.session.trial || !this.#keeper) return;
    if (notebook.text === this.#text && when === undefined) return;
    this.#text = notebook.text;
    this.#keeper.keepSoon({
      id: this.#keeper.id,
      title: notebook.title || 'Estimate without a title',
      text: notebook.text,
      identities: keptIdentities(this.identities, notebook),
    });
  }

  #said(): void {
    for (const listener of this.#listeners) listener();
  }
}

function identitiesOf({ notebook }: Door, id: string, kept: KeptIdentities | null): Identities {
  return kept ? readIdentities(kept, notebook) : newIdentities(notebook, stemOf(id));
}

function notTaken(why: 'newer' | 'unreadable' | 'absent'): string {
  switch (why) {
    case 'newer':
      return 'That notebook was kept by a later version of this page. It is left as it is; reload to get the later version.';
    case 'unreadable':
      return 'What was kept of that notebook can’t be read here. It is left as it is.';
    case 'absent':
      return 'That notebook is no longer kept in this browser.';
  }
}
