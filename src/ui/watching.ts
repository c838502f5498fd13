// What is watched beside the open notebook, and the alternatives it is compared with: none of it stands in its text.
// Held by the keys that last, so that it follows renames, and comes back when what was removed comes back.
import type { CellId } from '../language/tree.ts';
import { type Moved, type Result, type Stood, movedSince, stoodOf } from '../moves-it/stood.ts';
import type { Notebook } from '../notebook/document.ts';
import type { Alongside, WatchedKept } from '../store/alongside-shapes.ts';
import type { Shelf } from '../store/shelf.ts';
import type { Identities } from '../versions/identities.ts';
import { allCells } from './reading-order.ts';
import type { Session } from './session.ts';

/** What it asks of the desk that it belongs to. */
export interface WatchingDesk {
  readonly session: Session;
  readonly openId: string;
  readonly identities: Identities;
  listen(listener: () => void): () => void;
  keepAnyway(): Promise<void>;
}

/** A watched result that stands in the notebook. */
export interface Watched {
  readonly result: Result;
  readonly kept: WatchedKept;
  readonly name: string;
}

/** What lies beside one notebook, and what was done to it that is not kept yet. */
interface Laid {
  id: string;
  beside: Alongside;
  /** The last that is known to be kept; 0: none. */
  revision: number;
  waiting: Act[];
}

/** What was found in one notebook of what is watched. */
interface Found {
  readonly notebook: Notebook;
  readonly watched: Alongside['watched'];
  readonly entries: readonly Watched[];
}

type Act = (beside: Alongside) => Alongside;

const NOTHING: Alongside = { watched: [], varied: [], alternatives: [] };

const NOT_READ =
  'What was watched here before can’t be read by this version. It is left as it is; what is watched now stays on this page only.';

/** So often it begins again when another page was quicker. */
const MOST_TRIES = 8;

export class Watching {
  readonly #desk: WatchingDesk;
  readonly #shelf: Shelf;
  #laid: Laid = { id: '', beside: NOTHING, revision: 0, waiting: [] };
  /** What each came to when the tape was opened, or null while none is. */
  #atTick: ReadonlyMap<string, Stood> | null = null;
  /** What stood when it was looked last, by its mark. */
  #stood: ReadonlyMap<string, string> = new Map();
  #found: Found | null = null;
  #told: string | null = null;
  #said = '';
  #trouble: string | null = null;
  /** Reading and writing, one after the other. */
  #work: Promise<void> = Promise.resolve();

  constructor(desk: WatchingDesk, shelf: Shelf) {
    this.#desk = desk;
    this.#shelf = shelf;
    desk.session.listen(({ kind }) => {
      if (kind === 'opened') this.#take('anew');
      else if (kind === 'changed') this.#look();
      else if (kind === 'tape') this.#tick();
    });
    desk.listen(() => {
      // A copy that goes on under another id takes along what stood beside it.
      if (this.#laid.id !== desk.openId) this.#take(this.#laid.id === '' ? 'anew' : 'along');
    });
  }

  /** What is watched and stands in the notebook, in the order in which it was asked for. */
  get entries(): readonly Watched[] {
    const { notebook } = this.#desk.session.door;
    const { watched } = this.#laid.beside;
    // Asked for many times at each place of a tape, and found once.
    if (this.#found?.notebook === notebook && this.#found.watched === watched) {
      return this.#found.entries;
    }
    const find = this.#finder();
    const entries = watched.flatMap((kept): readonly Watched[] => {
      const result = find(kept);
      return result ? [{ result, kept, name: this.nameOf(result) }] : [];
    });
    this.#found = { notebook, watched, entries };
    return entries;
  }

  get beside(): Alongside {
    return this.#laid.beside;
  }

  /** What was let go with its cell, or came back; null where nothing was. */
  get told(): string | null {
    return this.#told;
  }

  /** Why it is not kept, where it is not. */
  get trouble(): string | null {
    return this.#trouble;
  }

  /** What was done last, for whoever can't see it. */
  get said(): string {
    return this.#said;
  }

  /** What it came to at the tick of the tape that is open; null where none is. */
  atTick({ result }: Watched): Stood | null {
    return this.#atTick?.get(markOf(result)) ?? null;
  }

  /** How far it moved from there. */
  sinceTick(one: Watched): Moved | null {
    const { result } = one;
    const before = this.atTick(one);
    return before ? movedSince(this.#desk.session.door, result, before) : null;
  }

  sinceBegun({ result, kept }: Watched): Moved {
    return movedSince(this.#desk.session.door, result, kept.began);
  }

  nameOf(result: Result): string {
    const { session } = this.#desk;
    switch (result.of) {
      case 'cell':
        return session.cell(result.cell)?.name ?? '';
      case 'part':
        return `Cost of ${session.part(result.part)?.name ?? ''}`;
      case 'direct':
        return 'Direct cost';
      case 'price':
        return 'Price';
    }
  }

  /** The key that lasts of a cell; null of one that is none of this notebook's. */
  keyOf(cell: CellId): string | null {
    return this.#desk.identities.cells.get(cell) ?? null;
  }

  /** The cells that stand under these keys. */
  cellsOf(keys: readonly string[]): ReadonlyMap<string, CellId> {
    const wanted = new Set(keys);
    const { cells } = this.#desk.identities;
    const found = allCells(this.#desk.session.door.notebook).flatMap(({ id }) => {
      const key = cells.get(id) ?? '';
      return wanted.has(key) ? [[key, id] as const] : [];
    });
    return new Map(found);
  }

  /** Watches a result from now on, or lets it go. */
  turn(result: Result): void {
    const { session } = this.#desk;
    if (result.of === 'cell' && session.cell(result.cell)?.table) {
      const text = 'A table comes to no one value. Watch a cell that adds it up.';
      session.tell({ text, lasts: 'plain' });
      return;
    }
    const kept = this.#asKept(result);
    const isSame = (one: WatchedKept): boolean => one.of === kept.of && one.key === kept.key;
    const lets = session.watched.has(markOf(result));
    this.lay((beside) => {
      const others = beside.watched.filter((one) => !isSame(one));
      return { ...beside, watched: lets ? others : [...others, kept] };
    });
    this.#said = lets ? `${kept.name} is watched no more.` : `${kept.name} is watched from now on.`;
  }

  /** From now on changes are told from what everything comes to now. */
  beginAnew(): void {
    const now = this.entries.map(({ result }) => this.#asKept(result));
    this.lay((beside) => ({
      ...beside,
      watched: beside.watched.map((one) => {
        const fresh = now.find(({ of, key }) => of === one.of && key === one.key);
        return fresh ? { ...one, began: fresh.began } : one;
      }),
    }));
  }

  /** Says which way is the better one for a watched result. */
  prefer({ kept: { of, key } }: Watched, better: WatchedKept['better']): void {
    this.lay((beside) => ({
      ...beside,
      watched: beside.watched.map((one) =>
        one.of === of && one.key === key ? { ...one, better } : one,
      ),
    }));
  }

  /** Everything is changed by a function from what lies there to what lies there then; it is kept at once. */
  lay(act: Act): void {
    const laid = this.#laid;
    laid.beside = act(laid.beside);
    laid.waiting.push(act);
    this.#told = null;
    if (this.#atTick) this.#atTick = new Map([...this.#now(), ...this.#atTick]);
    this.#show();
    this.#work = this.#work.then(() => this.#keep(laid));
  }

  /** Resolves when all that was laid so far is kept, or it is known why not. */
  settled(): Promise<void> {
    return this.#work;
  }

  #take(how: 'anew' | 'along'): void {
    const { beside } = this.#laid;
    const laid: Laid = { id: this.#desk.openId, beside: NOTHING, revision: 0, waiting: [] };
    this.#laid = laid;
    if (how === 'along') {
      if (beside !== NOTHING) this.lay(() => beside);
      return;
    }
    this.#atTick = this.#told = this.#trouble = null;
    this.#show();
    this.#work = this.#work.then(() => this.#read(laid));
  }

  async #read(laid: Laid): Promise<void> {
    const found = await this.#shelf.alongside(laid.id).catch(() => null);
    // What was laid meanwhile is put to what is found when that is kept.
    if (laid !== this.#laid || laid.waiting.length > 0) return;
    if (found?.kind === 'taken') [laid.beside, laid.revision] = [found.value, found.value.revision];
    if (found?.kind === 'newer' || found?.kind === 'unreadable') this.#trouble = NOT_READ;
    this.#show();
  }

  async #keep(laid: Laid): Promise<void> {
    const acts = [...laid.waiting];
    if (acts.length === 0 || laid.id === '') return;
    try {
      // Beside a notebook that is not kept it would be found by nobody.
      if (laid.id === this.#desk.openId) await this.#desk.keepAnyway();
      for (let tries = 0; tries < MOST_TRIES; tries++) {
        const found = await this.#shelf.alongside(laid.id);
        if (found.kind === 'newer' || found.kind === 'unreadable') {
          this.#say(laid, NOT_READ);
          return;
        }
        const [there, revision] =
          found.kind === 'taken' ? [found.value, found.value.revision] : [NOTHING, 0];
        // Where another page laid something there meanwhile, the same is done to that.
        const fresh = revision === laid.revision ? laid.beside : after(there, acts);
        const done = await this.#shelf.keepAlongside(laid.id, fresh, revision);
        if (done.kind !== 'kept') continue;
        laid.waiting.splice(0, acts.length);
        if (revision !== laid.revision) laid.beside = after(fresh, laid.waiting);
        laid.revision = done.revision;
        this.#say(laid, null);
        return;
      }
      this.#say(laid, 'Not kept: other pages write here all the time. It stands on this page.');
    } catch {
      this.#say(
        laid,
        'Not kept: this browser keeps nothing here just now. It stands on this page.',
      );
    }
  }

  #say(laid: Laid, trouble: string | null): void {
    if (laid !== this.#laid) return;
    this.#trouble = trouble;
    this.#show();
  }

  #asKept(result: Result): WatchedKept {
    const { session, identities } = this.#desk;
    const began = stoodOf(session.door, result);
    const name = this.nameOf(result);
    return { of: result.of, key: keyOf(identities, result), name, began, better: null };
  }

  /** The result that is meant by what was kept; null where it doesn't stand in the notebook now. */
  #finder(): (kept: WatchedKept) => Result | null {
    const { session, identities } = this.#desk;
    const { watched } = this.#laid.beside;
    const cells = watched.some(({ of }) => of === 'cell')
      ? this.cellsOf(watched.map(({ key }) => key))
      : new Map<string, CellId>();
    return ({ of, key }) => {
      if (of === 'cell') {
        const cell = cells.get(key);
        return cell === undefined ? null : { of, cell };
      }
      if (of !== 'part') return { of };
      const part = session.door.notebook.parts.find((one) => identities.parts.get(one.key) === key);
      return part ? { of, part: part.key } : null;
    };
  }

  /** After every change: what went with its cell is let go, and told; what came back is watched again. */
  #look(): void {
    if (this.#laid.beside === NOTHING) return;
    const before = this.#stood;
    const { entries } = this;
    const now = new Map(entries.map(({ result, name }) => [markOf(result), name]));
    const gone = [...before].filter(([mark]) => !now.has(mark)).map(([, name]) => name);
    const back = [...now].filter(([mark]) => !before.has(mark)).map(([, name]) => name);
    const told = this.#toldOf(gone, back);
    if (gone.length + back.length === 0 && told === this.#told) {
      this.#stood = now;
      return;
    }
    this.#told = told;
    this.#show();
  }

  #toldOf(gone: readonly string[], back: readonly string[]): string | null {
    if (gone.length > 0) return `${listed(gone)} gone, and watched no more. Undo brings it back.`;
    if (back.length > 0) return `${listed(back)} back, and watched again.`;
    return this.#desk.session.trial ? this.#told : null;
  }

  #tick(): void {
    this.#atTick = this.#desk.session.trial ? this.#now() : null;
  }

  #now(): ReadonlyMap<string, Stood> {
    const { door } = this.#desk.session;
    return new Map(this.entries.map(({ result }) => [markOf(result), stoodOf(door, result)]));
  }

  #show(): void {
    this.#stood = new Map(this.entries.map(({ result, name }) => [markOf(result), name]));
    this.#desk.session.setWatched(new Set(this.#stood.keys()));
  }
}

function after(beside: Alongside, acts: readonly Act[]): Alongside {
  return acts.reduce((so, act) => act(so), beside);
}

/** By what a result is known on the page. */
export function markOf(result: Result): string {
  switch (result.of) {
    case 'cell':
      return `cell ${result.cell}`;
    case 'part':
      return `part ${result.part}`;
    case 'direct':
    case 'price':
      return result.of;
  }
}

function keyOf({ cells, parts }: Identities, result: Result): string {
  switch (result.of) {
    case 'cell':
      return cells.get(result.cell) ?? '';
    case 'part':
      return parts.get(result.part) ?? '';
    case 'direct':
    case 'price':
      return '';
  }
}

function listed(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length === 1 ? `${last} is` : `${names.slice(0, -1).join(', ')} and ${last} are`;
}
