// The job record of the open notebook, as the page holds it: read from where it is kept, added to, and held against an
// estimate. Everything in it changes by adding; what was added is kept before it counts.
import { type Against, type Warning, against, warnings } from '../record/against.ts';
import { type Budget, budgetNow, budgetOf, partsOf } from '../record/budget.ts';
import type { Correction, Entry, PartNamed, Progress, Recorded, Watch } from '../record/entry.ts';
import { type Stands, standingOf } from '../record/standing.ts';
import { type Added, addRecords } from '../store/record-keeping.ts';
import { type TakenRecords, takenRecords } from '../store/record-shapes.ts';
import {
  type KeptVersions,
  NO_VERSIONS,
  type Versions,
  type VersionsShelf,
} from '../store/versions-shelf.ts';
import { acceptedOf } from '../versions/standing.ts';
import type { Desk } from './desk.ts';

/** What is added, without what the book itself gives it. */
export type Fresh =
  | Omit<Entry, 'v' | 'id' | 'entered'>
  | Omit<Correction, 'v' | 'id' | 'entered'>
  | Omit<Progress, 'v' | 'id' | 'entered'>
  | Omit<Watch, 'v' | 'id' | 'entered'>;

/** Nothing is pointed out before the forecast is over by more than nothing. */
const NO_LIMIT = '0.00';

export class RecordBook {
  /** The notebook that it belongs to. */
  readonly id: string;
  readonly #desk: Desk;
  readonly #shelf: VersionsShelf;
  #versions: Versions = NO_VERSIONS;
  #revision = 0;
  #taken: TakenRecords = { records: [], newer: 0, unreadable: [] };
  stands: Stands = standingOf([]);

  /** Null: what is kept of it can't be read here. */
  static async opened(desk: Desk): Promise<RecordBook | null> {
    const shelf = await desk.versions();
    const book = new RecordBook(desk, shelf);
    const found = await shelf.take(book.id);
    if (found.kind !== 'taken') return null;
    book.#take(found.value);
    return book;
  }

  private constructor(desk: Desk, shelf: VersionsShelf) {
    this.id = desk.openId;
    this.#desk = desk;
    this.#shelf = shelf;
  }

  /** Keeps all of it or nothing; null, or why it was not kept. */
  async add(fresh: readonly Fresh[]): Promise<string | null> {
    const desk = this.#desk;
    const entered = new Date(desk.now()).toISOString();
    const records = fresh.map((one): Recorded => ({ ...one, v: 1, id: desk.newId(), entered }));
    // A record without its notebook would be found by nobody.
    await desk.keepAnyway();
    if (desk.keeping.kind === 'not-kept') return sayNotKept(desk.keeping.why);
    const added = await addRecords(this.#shelf, this.id, records);
    if (added.kind === 'not-kept') return sayNotKept(added.why);
    this.#take(added.kept);
    await (await desk.binder()).recordKept();
    return null;
  }

  /** Takes in what another page added; false where nothing is new. */
  async catchUp(): Promise<boolean> {
    const found = await this.#shelf.take(this.id).catch(() => null);
    if (found?.kind !== 'taken' || found.value.revision <= this.#revision) return false;
    this.#take(found.value);
    return true;
  }

  /** Rows of a sheet that were left in the field and not put in. */
  get rowsLeft(): Promise<string> {
    return this.#desk.rows.of(this.id);
  }

  keepRows(text: string): void {
    void this.#desk.rows.keep(this.id, text);
  }

  get today(): string {
    const now = new Date(this.#desk.now());
    const two = (number: number): string => String(number).padStart(2, '0');
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  }

  get currency(): string {
    return this.#desk.session.door.notebook.settings.currency;
  }

  get parts(): readonly PartNamed[] {
    return partsOf(this.#desk.session.door.notebook, this.#desk.identities);
  }

  /** How many lines were written by a later version, or can't be read. */
  get notCounted(): { readonly newer: number; readonly unreadable: number } {
    return { newer: this.#taken.newer, unreadable: this.#taken.unreadable.length };
  }

  /** Every estimate that it can be held against. */
  get budgets(): readonly Budget[] {
    const { door } = this.#desk.session;
    const now = budgetNow(door.notebook, door.costs(), this.#desk.identities);
    return [...this.#versions.snapshots.map(budgetOf), now];
  }

  /** The chosen one; else what was accepted, what was frozen last, or the notebook as it stands. */
  get budget(): Budget {
    const { snapshots, log } = this.#versions;
    const { watch } = this.stands;
    const seal = watch
      ? watch.budget
      : ((acceptedOf(log, snapshots) ?? snapshots.at(-1))?.seal ?? null);
    const all = this.budgets;
    const found = all.find((one) => one.seal === seal) ?? all.at(-1);
    if (!found) throw new Error('there is no estimate to hold the record against');
    return found;
  }

  get limit(): string {
    return this.stands.watch?.over ?? NO_LIMIT;
  }

  against(): { readonly held: Against; readonly warnings: readonly Warning[] } {
    const held = against(this.budget, this.stands);
    return { held, warnings: warnings(held, this.limit) };
  }

  #take({ versions, revision }: KeptVersions): void {
    this.#versions = versions;
    this.#revision = revision;
    this.#taken = takenRecords(versions.records);
    this.stands = standingOf(this.#taken.records);
  }
}

function sayNotKept(why: Extract<Added, { readonly kind: 'not-kept' }>['why']): string {
  switch (why) {
    case 'full':
      return 'Not kept: this browser has no room left. What you wrote still stands here.';
    case 'refused':
      return 'Not kept: this browser keeps nothing here just now. What you wrote still stands here.';
    case 'newer':
      return 'Not kept: this record was written by a later version of this page. Reload to get it.';
    case 'unreadable':
      return 'Not kept: what is kept of this record can’t be read here. It is left as it is.';
    case 'busy':
      return 'Not kept: other pages write to this record all the time. Try once more.';
  }
}
