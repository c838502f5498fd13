// What lies on the desk: the open notebook, where it is kept, and the ways to open, save and follow it.
// Clock, ids and everything of the browser that is not drawn come in from outside.
import { difference } from '../notebook/change.ts';
import { LONGEST_TEXT, refusal } from '../notebook/read-notebook.ts';
import type { Standing, Unsaved } from '../store/ground.ts';
import type { Slip } from '../store/journal.ts';
import { type Channel, Keeper, type KeeperState } from '../store/keeper.ts';
import type { HandedLast } from '../store/client-shapes.ts';
import { NO_REVISIONS } from '../store/shelf.ts';
import type { KeptEntry, KeptPlace } from '../store/shapes.ts';
import type { Role } from '../store/turn.ts';
import type { PracticeShelf } from '../store/practice-shelf.ts';
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
import { copied } from './copied.ts';
import type { DeskSettings, Template } from './desk-settings.ts';
import { HalfWritten } from './half-written.ts';
import { RowsLeft } from './rows-left.ts';
import { HeldOnto } from './held-onto.ts';
import type { Binder } from './binder.ts';
import { LeftOff } from './left-off.ts';
import { LeftSlips } from './left-slips.ts';
import { notTaken } from './not-taken.ts';
import { allCells } from './reading-order.ts';
import { type Door, Session } from './session.ts';
import { Watching } from './watching.ts';
import { WhoseTurn } from './whose-turn.ts';

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
  /** The line that is being written, as far as it got. */
  readonly half: HalfWritten;
  /** Rows for the job record that are not put in yet. */
  readonly rows: RowsLeft;
  /** What is watched and compared beside the open notebook. */
  readonly watching: Watching;
  readonly #settings: DeskSettings;
  readonly #turn: WhoseTurn;
  readonly #held: HeldOnto;
  readonly #leftOff: LeftOff;
  readonly #slips: LeftSlips;
  #keeper: Keeper | null = null;
  #text = '';
  #identities: Identities;
  #binder: Promise<Binder> | null = null;
  readonly #listeners = new Set<() => void>();

  /** The notebook that was open last, or the demo on a first visit. */
  static async laid(settings: DeskSettings): Promise<Desk> {
    const { shelf } = settings;
    const id = (await shelf.last().catch(() => null)) ?? settings.journal.latest();
    const kept = id === null ? null : await shelf.take(id).catch(() => null);
    if (id !== null && kept?.kind === 'taken') {
      const desk = new Desk(settings, kept.value.text, id, kept.value.identities);
      void desk.#held.look();
      await desk.#lay(id, kept.value.revision, kept.value.keptAt);
      return desk;
    }
    // Nothing of it ever came into the database.
    const slip = id === null || kept?.kind === 'newer' ? null : settings.journal.left(id)[0];
    if (id !== null && slip) {
      const desk = new Desk(settings, slip.notebook.text, id, slip.notebook.identities);
      await desk.#lay(id, slip.revision, null);
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
    const { shelf, later } = settings;
    this.#turn = new WhoseTurn(this, () => this.#said());
    this.#held = new HeldOnto(settings, () => this.#said());
    this.#leftOff = new LeftOff(this.session, shelf);
    this.#slips = new LeftSlips(settings, this.session);
    this.rows = new RowsLeft(shelf);
    this.half = new HalfWritten(this.session, {
      shelf,
      rows: this.rows,
      later,
      id: () => this.openId,
      writes: () => this.role === 'writes',
      takeOver: () => this.takeOver(),
    });
    this.#text = text;
    this.#identities = identitiesOf(door, id, identities);
    this.watching = new Watching(this, shelf);
    this.session.listen((happening) => {
      if (happening.kind === 'changed' || happening.kind === 'tape') this.#keepSoon();
    });
  }

  get keeping(): KeeperState {
    return this.#keeper?.state ?? { kind: 'kept', at: null };
  }

  /** Whether the browser promised to hold on to what is kept; null: it was not asked yet. */
  get standing(): Standing | null {
    return this.#held.standing;
  }

  get lacks(): readonly string[] {
    return this.#settings.lacks;
  }

  /** What is in this browser and in no file, once it is worth a word. */
  get unsaved(): Unsaved | null {
    return this.#held.unsaved(this.#keeper?.revision ?? 0);
  }

  /** So often something was added beside the notebook. */
  besideNow(revision: number): void {
    this.#held.besideNow(revision);
  }

  /** All that stands here is in a file now; in one of the text nothing of what stands beside it. */
  async savedAsFile(file: 'text' | 'whole job'): Promise<void> {
    await this.#keeper?.flush();
    await this.#held.savedAsFile(this.openId, this.#keeper?.revision ?? 0, file);
  }

  /** Whether this page writes in the notebook or follows one that does. */
  get role(): Role {
    return this.#turn.role;
  }

  /** Where one left off in this notebook, for the page to go back to. */
  get place(): KeptPlace | null {
    return this.#leftOff.place;
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

  /** Of its own for whoever asks; null where pages can't hear each other. */
  channel(): Channel | null {
    return this.#settings.channel();
  }

  practice(): Promise<PracticeShelf> {
    return this.#settings.practice();
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

  /** Snapshots and change orders of the open notebook; fetched when they are first asked for. */
  binder(): Promise<Binder> {
    const { versions, tool } = this.#settings;
    this.#binder ??= Promise.all([import('./binder.ts'), versions()]).then(([{ Binder }, shelf]) =>
      Binder.of(this, shelf, tool),
    );
    return this.#binder;
  }

  /** Opens a copy, or a job from a file, as a notebook of its own whose cells are known already. */
  async openMade(id: string, text: string, identities: KeptIdentities): Promise<void> {
    await this.#change({ text, id, identities }, 0, null);
    this.#keepSoon('anyway');
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
    this.#leftOff.place = this.#leftOff.now(this.place?.scroll ?? 0);
    const { revision, keptAt } = kept.value;
    this.#keeper?.giveUp();
    this.#open(kept.value);
    await this.#lay(id, revision, keptAt, this.place);
    this.session.tell({ text: 'This page now shows what the other one kept.', lasts: 'plain' });
  }

  /** Another page kept this notebook later: what stands here becomes a notebook of its own. */
  async keepAsCopy(): Promise<void> {
    const id = this.#settings.newId();
    const change = copied(this.session.door);
    // The cells are who they were; what comes to the copy from now on has keys of its own.
    this.#identities = { ...this.identities, stem: stemOf(id), next: 1 };
    const before = this.#keeper;
    await this.#lay(id, 0, null, this.place);
    this.session.apply((door) => door.replaceText(change));
    this.#keepSoon('anyway');
    before?.giveUp();
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

  /** Opens a text beside the notebook, which it does not touch. */
  openBeside(text: string): Door {
    return this.#settings.estimate(text);
  }

  /** The guide as a notebook of its own, anew each time it is asked for: what is tried in it touches nothing else. */
  async guide(): Promise<Door> {
    return this.#settings.estimate(await this.#settings.guide());
  }

  /** Keeps what waits and where one is; for when the page is left. */
  async leave(scroll: number): Promise<void> {
    this.session.leaveTape();
    const place = this.placeNow(scroll);
    const kept = this.#keeper?.leave();
    void this.half.flush();
    await this.#settings.shelf.keepPlace(this.openId, place).catch(() => undefined);
    await kept;
  }

  /** How the open notebook was handed to a client last; nothing where nothing can be kept. */
  handed(): Promise<HandedLast | null> {
    return this.#settings.shelf.handed(this.openId).catch(() => null);
  }

  /** Beside a notebook that is not kept it would be found by nobody. */
  async keepHanded(handed: HandedLast): Promise<void> {
    const id = this.openId;
    if (id === '') return;
    await this.keepAnyway();
    await this.#settings.shelf.keepHanded(id, handed).catch(() => undefined);
  }

  placeNow(scroll: number): KeptPlace {
    return this.#leftOff.now(scroll);
  }

  keepPlace(scroll: number): Promise<void> {
    return this.#leftOff.keep(this.openId, scroll);
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
    const { shelf, journal, now, later, locks } = this.#settings;
    const before = this.#keeper;
    if (place === undefined) await this.#leftOff.read(id);
    else this.#leftOff.place = place;
    const saved = await shelf.saved(id).catch(() => NO_REVISIONS);
    const channel = this.#settings.channel();
    const keeper = new Keeper(id, revision, keptAt, {
      shelf,
      journal,
      now,
      later,
      channel,
      changed: (state) => {
        if (keeper === this.#keeper) this.#keptSo(state);
      },
      moved: () => {
        turn.another();
        void this.catchUp();
      },
    });
    const turn = this.#turn.of(id, {
      locks,
      channel,
      page: journal.page,
      patience: (call) => later(call, 'answer'),
      handOver: async () => {
        await keeper.flush();
        return keeper.state.kind !== 'not-kept';
      },
    });
    this.#keeper = keeper;
    this.#held.open(saved);
    this.session.hold(null);
    void before?.close();
    open?.();
    this.#leftOff.goBack();
    this.#said();
    await shelf.keepLast(id).catch(() => undefined);
    await turn.begin();
    if (!this.#turn.isOf(turn)) return;
    await this.#slips.find({ keeper, isOpen: () => keeper === this.#keeper, again: this.#again });
    await this.half.tellLeft();
  }

  /** Shows what another page kept, where nothing waits here. */
  async catchUp(): Promise<void> {
    const keeper = this.#keeper;
    const kept = await this.#settings.shelf.take(this.openId).catch(() => null);
    if (!keeper || keeper !== this.#keeper || kept?.kind !== 'taken') return;
    const { revision, keptAt } = kept.value;
    if (keeper.waits || revision <= keeper.revision) return;
    this.#show(kept.value, 'Changed in another tab');
    keeper.follow(revision, keptAt);
  }

  /** Writes here from now on; the page that does so far follows. */
  takeOver(): Promise<void> {
    return this.#turn.takeOver();
  }

  /** What could not be kept at the last visit. */
  #again = (found: Slip['notebook'] | null): void => {
    if (found) this.#show(found, 'Changes found again');
    this.#keepSoon('anyway');
  };

  #keptSo(state: KeeperState): void {
    const { session } = this;
    if (state.kind === 'behind' && session.notice?.lasts === 'plain') session.tell(null);
    if (state.kind === 'kept') {
      this.#slips.kept();
      void this.#held.ask();
    }
    this.#said();
  }

  /** Another text of the same notebook: only what is otherwise in it is worked and drawn anew. */
  #show({ text, identities }: Pick<Opened, 'text' | 'identities'>, say: string): void {
    const before = this.session.door.notebook.text;
    this.#text = text;
    const followed = this.session.follow({ say, splices: [difference(before, text)] });
    const { notebook } = this.session.door;
    if (!followed || notebook.text !== text) {
      this.#open({ text, id: this.openId, identities });
      this.#leftOff.goBack();
      return;
    }
    if (!identities) return;
    // What is gone stays known, for undo.
    const now = readIdentities(identities, notebook);
    const parts = new Map([...this.#identities.parts, ...now.parts]);
    this.#identities = { ...now, parts, cells: new Map([...this.#identities.cells, ...now.cells]) };
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
