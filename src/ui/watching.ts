// What is watched beside the open notebook, and the alternatives it is compared with: none of it stands in its text.
// Held by the keys that last, so that it follows renames, and comes back when what was removed comes back.
import type { CellId } from '../language/tree.ts';
import { type Moved, type Result, type Stood, movedSince, stoodOf } from '../moves-it/stood.ts';
import type { Notebook } from '../notebook/document.ts';
import type { Alongside, WatchedKept } from '../store/alongside-shapes.ts';
import type { Shelf } from '../store/shelf.ts';
import type { Identities } from '../versions/identities.ts';
import { type Act, LaidAlongside } from './laid-alongside.ts';
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

/** What was found in one notebook of what is watched. */
interface Found {
  readonly notebook: Notebook;
  readonly watched: Alongside['watched'];
  readonly entries: readonly Watched[];
}

export class Watching {
  readonly #desk: WatchingDesk;
  readonly #laid: LaidAlongside;
  /** What each came to when the tape was opened, or null while none is. */
  #atTick: ReadonlyMap<string, Stood> | null = null;
  /** What stood when it was looked last, by its mark. */
  #stood: ReadonlyMap<string, string> = new Map();
  #found: Found | null = null;
  #told: string | null = null;
  #said = '';

  constructor(desk: WatchingDesk, shelf: Shelf) {
    this.#desk = desk;
    this.#laid = new LaidAlongside(desk, shelf, () => this.#show());
    desk.session.listen(({ kind }) => {
      if (kind === 'opened') this.#open();
      else if (kind === 'changed') this.#look();
      else if (kind === 'tape') this.#tick();
    });
    desk.listen(() => {
      // A copy that goes on under another id takes along what stood beside it.
      if (this.#laid.id === '') this.#open();
      else if (this.#laid.id !== desk.openId) this.#laid.follow();
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
    return this.#laid.trouble;
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
    this.#told = null;
    this.#laid.lay(act);
    if (this.#atTick) this.#atTick = new Map([...this.#now(), ...this.#atTick]);
    this.#show();
  }

  /** Resolves when all that was laid so far is kept, or it is known why not. */
  settled(): Promise<void> {
    return this.#laid.settled();
  }

  #open(): void {
    this.#atTick = this.#told = null;
    this.#laid.open();
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
    if (this.#laid.beside.watched.length === 0) return;
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
