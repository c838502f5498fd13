// What lies on the desk: the open notebook, where it is kept, and the ways to open, save and follow it.
// Clock, ids and everything of the browser that is not drawn come in from outside.
import type { Change, Splice } from '../notebook/document.ts';
import { LONGEST_TEXT, refusal } from '../notebook/read-notebook.ts';
import { type Standing, type Unsaved, sayUnsaved } from '../store/ground.ts';
import type { Journal, Slip } from '../store/journal.ts';
import { type Channel, Keeper, type KeeperState } from '../store/keeper.ts';
import type { PracticeShelf } from '../store/practice-shelf.ts';
import type { Shelf } from '../store/shelf.ts';
import type { KeptEntry, KeptPlace } from '../store/shapes.ts';
import { type Locks, type Role, Turn } from '../store/turn.ts';
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
import { HalfWritten } from './half-written.ts';
import type { Binder } from './binder.ts';
import { allCells } from './reading-order.ts';
import { type Door, Session } from './session.ts';

export interface Template {
  readonly file: string;
  read(): Promise<string>;
}

export interface DeskSettings {
  readonly estimate: (text: string) => Door;
  readonly shelf: Shelf;
  readonly now: () => number;
  readonly newId: () => string;
  /** Calls back: soon after a change, again after a failure, or when another page does not answer. */
  readonly later: (call: () => void, wait: 'soon' | 'again' | 'answer') => () => void;
  readonly channel: () => Channel | null;
  readonly locks: Locks | undefined;
  readonly journal: Journal;
  /** Whether the browser holds on to what is kept; asks it to, or only looks. */
  readonly standing: (how: 'look' | 'ask') => Promise<Standing>;
  /** What does not work in this browser, in sentences. */
  readonly lacks: readonly string[];
  readonly templates: readonly Template[];
  /** What a newcomer finds on the desk. */
  readonly demo: () => Promise<string>;
  readonly guide: () => Promise<string>;
  /** Where snapshots, change orders and the job record are kept; fetched when they are asked for. */
  readonly versions: () => Promise<VersionsShelf>;
  /** Where it is kept what came of being asked; fetched when somebody is. */
  readonly practice: () => Promise<PracticeShelf>;
  /** The version of this tool, as snapshots name it. */
  readonly tool: string;
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
  /** The line that is being written, as far as it got. */
  readonly half: HalfWritten;
  readonly #settings: DeskSettings;
  #keeper: Keeper | null = null;
  #turn: Turn | null = null;
  #turning: Promise<void> = Promise.resolve();
  /** Null: the browser was not asked yet. */
  #standing: Standing | null = null;
  #asked = false;
  /** The revision that is in a file, too. */
  #saved = 0;
  /** Slips that are in the way once what they hold is kept. */
  #slips: string[] = [];
  #text = '';
  #identities: Identities;
  #place: KeptPlace | null = null;
  #binder: Promise<Binder> | null = null;
  readonly #listeners = new Set<() => void>();

  /** The notebook that was open last, or the demo on a first visit. */
  static async laid(settings: DeskSettings): Promise<Desk> {
    const { shelf } = settings;
    const id = (await shelf.last().catch(() => null)) ?? settings.journal.latest();
    const kept = id === null ? null : await shelf.take(id).catch(() => null);
    if (id !== null && kept?.kind === 'taken') {
      const desk = new Desk(settings, kept.value.text, id, kept.value.identities);
      void desk.#askToStay('look');
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
    this.half = new HalfWritten(this.session, { shelf, later, id: () => this.openId });
    this.#text = text;
    this.#identities = identitiesOf(door, id, identities);
    this.session.listen((happening) => {
      if (happening.kind === 'changed' || happening.kind === 'tape') this.#keepSoon();
    });
  }

  get keeping(): KeeperState {
    return this.#keeper?.state ?? { kind: 'kept', at: null };
  }

  /** Whether the browser promised to hold on to what is kept; null: it was not asked yet. */
  get standing(): Standing | null {
    return this.#standing;
  }

  get lacks(): readonly string[] {
    return this.#settings.lacks;
  }

  /** What is in this browser and in no file, once it is worth a word. */
  get unsaved(): Unsaved | null {
    return sayUnsaved((this.#keeper?.revision ?? 0) - this.#saved, this.#standing);
  }

  /** All that stands here is in a file now. */
  async savedAsFile(): Promise<void> {
    const { shelf, now } = this.#settings;
    await this.#keeper?.flush();
    this.#saved = this.#keeper?.revision ?? 0;
    this.#said();
    await shelf.keepSaved(this.openId, this.#saved, now()).catch(() => undefined);
  }

  /** Whether this page writes in the notebook or follows one that does. */
  get role(): Role {
    return this.#turn?.role ?? 'writes';
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
    this.#place = this.placeNow(this.#place?.scroll ?? 0);
    const { revision, keptAt } = kept.value;
    this.#keeper?.giveUp();
    this.#open(kept.value);
    await this.#lay(id, revision, keptAt, this.#place);
    this.session.tell({ text: 'This page now shows what the other one kept.', lasts: 'plain' });
  }

  /** Another page kept this notebook later: what stands here becomes a notebook of its own. */
  async keepAsCopy(): Promise<void> {
    const id = this.#settings.newId();
    const change = copied(this.session.door);
    // The cells are who they were; what comes to the copy from now on has keys of its own.
    this.#identities = { ...this.identities, stem: stemOf(id), next: 1 };
    const before = this.#keeper;
    await this.#lay(id, 0, null, this.#place);
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
    const { shelf, journal, now, later, locks } = this.#settings;
    const before = this.#keeper;
    this.#place = place === undefined ? await shelf.place(id).catch(() => null) : place;
    const saved = await shelf.saved(id).catch(() => 0);
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
    const turn = new Turn(id, {
      locks,
      channel,
      page: journal.page,
      patience: (call) => later(call, 'answer'),
      changed: (role) => (this.#turning = this.#turned(role)),
      handOver: async () => {
        await keeper.flush();
        return keeper.state.kind !== 'not-kept';
      },
    });
    this.#turn?.close();
    this.#turn = turn;
    this.#keeper = keeper;
    this.#saved = saved;
    this.session.hold(null);
    void before?.close();
    open?.();
    this.#goBack();
    this.#said();
    await shelf.keepLast(id).catch(() => undefined);
    await turn.begin();
    if (turn !== this.#turn || turn.role !== 'writes') return;
    await this.#findAgain();
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
  async takeOver(): Promise<void> {
    const taken = await this.#turn?.takeOver();
    await this.#turning;
    if (taken !== 'refused') return;
    const text =
      'The other tab can’t keep what was changed there and does not let go of it: look there first.';
    this.session.tell({ text, lasts: 'stays' });
  }

  async #turned(role: Role): Promise<void> {
    const { session } = this;
    const turn = this.#turn;
    if (role === 'follows') {
      const act = { say: 'Write here instead', go: () => void this.takeOver() };
      const text = 'Nothing was changed: this notebook is being written in another tab.';
      session.hold({ text, lasts: 'plain', act });
    } else {
      await this.catchUp();
      if (turn !== this.#turn || turn?.role !== 'writes') return;
      session.hold(null);
      if (session.notice?.act?.say === 'Write here instead') session.tell(null);
    }
    this.#said();
  }

  /** What a page left that could not keep it: here again, or beside this as a copy where others kept more since. */
  async #findAgain(): Promise<void> {
    const { journal } = this.#settings;
    const keeper = this.#keeper;
    if (!keeper) return;
    for (const slip of journal.left(this.openId)) {
      const { text } = slip.notebook;
      const here = text === this.session.door.notebook.text;
      if (here && keeper.revision > slip.revision) journal.drop(slip.key);
      else if (!keeper.waits && slip.revision === keeper.revision) {
        this.#slips.push(slip.key);
        if (!here) this.#show(slip.notebook, 'Changes found again');
        this.#keepSoon('anyway');
        const words =
          'What was changed here last could not be kept before the page was left. It is here again.';
        this.session.tell({ text: words, lasts: 'stays' });
      } else await this.#besides(slip);
      if (keeper !== this.#keeper) return;
    }
  }

  async #besides({ key, notebook }: Slip): Promise<void> {
    const { estimate, shelf, journal, newId, now } = this.#settings;
    const door = estimate(notebook.text);
    door.replaceText(copied(door));
    const { text, title } = door.notebook;
    const copy = { id: newId(), title, text, identities: null };
    const kept = await shelf.keep(copy, 0, now()).catch(() => null);
    if (kept?.kind !== 'kept') return;
    journal.drop(key);
    const words = `Changes that another page could not keep were found. They are kept as "${title}" under Notebooks.`;
    this.session.tell({ text: words, lasts: 'stays' });
  }

  #keptSo(state: KeeperState): void {
    const { session } = this;
    if (state.kind === 'behind' && session.notice?.lasts === 'plain') session.tell(null);
    if (state.kind === 'kept') {
      for (const key of this.#slips.splice(0)) this.#settings.journal.drop(key);
      if (!this.#asked) void this.#askToStay('ask');
    }
    this.#said();
  }

  async #askToStay(how: 'look' | 'ask'): Promise<void> {
    this.#asked ||= how === 'ask';
    this.#standing = await this.#settings.standing(how);
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
      this.#goBack();
      return;
    }
    if (!identities) return;
    // What is gone stays known, for undo.
    const now = readIdentities(identities, notebook);
    const parts = new Map([...this.#identities.parts, ...now.parts]);
    this.#identities = { ...now, parts, cells: new Map([...this.#identities.cells, ...now.cells]) };
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

/** The change that makes a copy of a notebook one by name. */
function copied({ notebook }: Door): Change {
  const at = notebook.titleSpot;
  const title = `${notebook.title || 'Estimate'}, a copy`;
  const splice = at ? { ...at, insert: title } : { from: 0, to: 0, insert: `# ${title}\n\n` };
  return { say: `Title: ${title}`, splices: [splice] };
}

/** The one stretch in which two texts differ, never through the middle of a sign. */
function difference(before: string, after: string): Splice {
  const most = Math.min(before.length, after.length);
  let from = 0;
  while (from < most && before[from] === after[from]) from++;
  let end = 0;
  while (end < most - from && before.at(-1 - end) === after.at(-1 - end)) end++;
  if (/[\uD800-\uDBFF]/.test(before[from - 1] ?? '')) from--;
  if (/[\uDC00-\uDFFF]/.test(before[before.length - end] ?? '')) end--;
  return { from, to: before.length - end, insert: after.slice(from, after.length - end) };
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
