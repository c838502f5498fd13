// What an owner answers for, beside the open notebook: its snapshots, change orders and what happened to them. Comes
// when somebody asks for it, or right after the page stands. All of it is only ever added to, so that what another tab
// added in between is read again and added to in turn.
import { Estimate } from '../notebook/estimate.ts';
import { readNotebook } from '../notebook/read-notebook.ts';
import type { Versions, VersionsShelf } from '../store/versions-shelf.ts';
import { NO_VERSIONS } from '../store/versions-shelf.ts';
import type { ChangeOrder } from '../versions/change-order.ts';
import type { Comparison } from '../versions/compare.ts';
import { type OrderState, orderLogged } from '../versions/contract.ts';
import { type KeptIdentities, keptIdentities, stemOf } from '../versions/identities.ts';
import type { Job } from '../versions/job.ts';
import { type PastDate, type Validity, pastDates, validity } from '../versions/past-dates.ts';
import { type Snapshot, freeze } from '../versions/snapshot.ts';
import { type Happened, acceptedOf, logged, standingOf } from '../versions/standing.ts';
import { type Version, versionNow, versionOf } from '../versions/version.ts';
import { type Origin, copyOfSnapshot, duplicateOf } from '../versions/working-copy.ts';
import { type Adding, BesideNotebook, type BesideState } from './beside-notebook.ts';
import { dayOf } from './day-words.ts';
import type { Desk } from './desk.ts';
import { orderAdded } from './order-added.ts';

/** What the footing sets the price beside. */
export interface Against {
  readonly snapshot: Snapshot;
  readonly accepted: boolean;
}

export class Binder {
  readonly desk: Desk;
  readonly #shelf: VersionsShelf;
  readonly #tool: string;
  readonly #beside: BesideNotebook;
  #chosen: string | null = null;
  #reading: Promise<void> = Promise.resolve();
  readonly #worked = new Map<string, Version>();
  #past: {
    readonly text: string;
    readonly day: string;
    readonly found: readonly PastDate[];
  } | null = null;
  readonly #listeners = new Set<() => void>();

  /** Of the open notebook, and of each that is opened after it. */
  static async of(desk: Desk, shelf: VersionsShelf, tool: string): Promise<Binder> {
    const binder = new Binder(desk, shelf, tool);
    await binder.#read();
    desk.session.listen(({ kind }) => {
      if (kind === 'opened') void binder.#read();
    });
    // A copy is another notebook, though the page shows what it showed.
    desk.listen(() => {
      if (desk.openId !== binder.#beside.id) void binder.#read();
    });
    return binder;
  }

  private constructor(desk: Desk, shelf: VersionsShelf, tool: string) {
    this.desk = desk;
    this.#shelf = shelf;
    this.#tool = tool;
    this.#beside = new BesideNotebook(shelf, desk.channel(), () => this.#said());
  }

  get versions(): Versions {
    return this.#beside.versions;
  }
  get state(): BesideState {
    return this.#beside.state;
  }
  /** Something was added that could not be written yet: it would go with the page. */
  get waits(): boolean {
    return this.#beside.waits;
  }
  /** Seals of snapshots that are listed and can't be read here. */
  get unreadable(): readonly string[] {
    return this.#beside.unreadable;
  }
  get accepted(): Snapshot | null {
    return acceptedOf(this.versions.log, this.versions.snapshots);
  }
  get today(): string {
    return dayOf(this.desk.now());
  }

  /** The chosen snapshot, else the accepted one. */
  get against(): Against | null {
    const { accepted } = this;
    const chosen = this.snapshot(this.#chosen) ?? accepted;
    return chosen && { snapshot: chosen, accepted: chosen === accepted };
  }

  /** Called when something was added, read or chosen. */
  listen(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Reads what another page added in between. */
  async catchUp(): Promise<void> {
    await this.#reading;
    await this.#beside.catchUp();
  }

  /** The job record, which is kept in the same place, was added to by this page. */
  async recordKept(): Promise<void> {
    await this.catchUp();
    this.#beside.tellOthers();
  }

  snapshot(seal: string | null): Snapshot | null {
    return this.versions.snapshots.find((one) => one.seal === seal) ?? null;
  }

  /** Sets the footing beside this one, now and at the next visit; null: beside the accepted one, if there is one. */
  setAgainst(seal: string | null): void {
    this.#chosen = seal;
    this.#said();
    const { id } = this.#beside;
    this.#reading = this.#reading.then(() =>
      this.#shelf.keepAgainst(id, seal).catch(() => undefined),
    );
  }

  /** Null: nothing can be added here. */
  async freeze(name: string, note: string): Promise<Snapshot | null> {
    const { desk } = this;
    desk.session.leaveTape();
    const snapshot = this.#frozen(name, note);
    // What it was frozen from is kept with it, also where nobody changed the notebook yet.
    await desk.keepAnyway();
    const added = await this.#add((versions) => ({
      ...versions,
      snapshots: [...versions.snapshots, snapshot],
    }));
    return added ? snapshot : null;
  }

  #frozen(name: string, note: string): Snapshot {
    const { desk } = this;
    const naming = { name, note, date: new Date(desk.now()).toISOString(), tool: this.#tool };
    return freeze(this.#estimate, desk.identities, naming);
  }

  /** One that is accepted takes the place of the one that was. */
  async log(snapshot: Snapshot, happened: Happened, note: string): Promise<void> {
    const date = this.today;
    await this.#add((versions) => {
      const { snapshots } = versions;
      const others =
        happened === 'accepted'
          ? snapshots.filter(
              (one) =>
                one.seal !== snapshot.seal &&
                standingOf(versions.log, one)?.happened === 'accepted',
            )
          : [];
      let { log } = versions;
      for (const { seal } of others)
        log = logged(log, { snapshot: seal, happened: 'superseded', date, note: snapshot.name });
      return { ...versions, log: logged(log, { snapshot: snapshot.seal, happened, date, note }) };
    });
    // What was accepted stands out from now on, whatever the price stood beside before.
    if (happened === 'accepted' && this.#chosen !== null) this.setAgainst(null);
  }

  /** Null: the two are in different currencies, or nothing can be added here. */
  async order(
    comparison: Comparison,
    seals: { readonly from: string | null; readonly to: string | null },
    { reason, state }: { readonly reason: string; readonly state: OrderState },
  ): Promise<ChangeOrder | null> {
    const date = this.today;
    const freezeNow = (name: string): Snapshot => this.#frozen(name, reason);
    await this.desk.keepAnyway();
    let made: ChangeOrder | null = null;
    const added = await this.#add((versions) => {
      const asked = { comparison, ...seals, date, reason, state };
      const done = orderAdded(versions, asked, freezeNow);
      made = done?.order ?? null;
      return done?.versions ?? versions;
    });
    return added ? made : null;
  }

  async logOrder(order: number, state: OrderState, note: string): Promise<void> {
    const date = this.today;
    await this.#add((versions) => ({
      ...versions,
      orderLog: orderLogged(versions.orderLog, { order, state, date, note }),
    }));
  }

  /** The snapshot worked again, or the notebook as it stands for null. */
  version(seal: string | null): Version {
    if (seal === null) return versionNow('Now', this.#estimate, this.desk.identities);
    const known = this.#worked.get(seal);
    if (known) return known;
    const snapshot = this.snapshot(seal);
    if (!snapshot) throw new Error(`no snapshot ${seal} here`);
    const version = versionOf(snapshot);
    this.#worked.set(seal, version);
    return version;
  }

  /** As a notebook of its own, which goes on with all that this one has; a trial without its change orders. */
  async copy(snapshot: Snapshot, kind: 'restored' | 'trial'): Promise<void> {
    const id = this.desk.newId();
    const made = copyOfSnapshot(kind, snapshot, { stem: stemOf(id), date: this.today });
    await this.catchUp();
    const { versions } = this;
    const { snapshots, log } = versions;
    const beside = kind === 'restored' ? versions : { ...NO_VERSIONS, snapshots, log };
    await this.#openMade(id, made, { ...beside, origin: made.origin });
  }

  /** For the next client: the notebook as it stands, and nothing of what happened to it. */
  async duplicate(title: string): Promise<void> {
    const { desk } = this;
    const { notebook } = desk.session.door;
    const id = desk.newId();
    const naming = { stem: stemOf(id), date: this.today };
    const made = duplicateOf(notebook, desk.identities, title, naming);
    await this.#openMade(id, made, { ...NO_VERSIONS, origin: made.origin });
  }

  /** A job from a file becomes a notebook of its own, whatever is kept here already. */
  async openJob({ text, identities, ...job }: Job): Promise<void> {
    const id = this.desk.newId();
    const { origin, snapshots, log, orders, orderLog, records } = job;
    const versions = { origin, snapshots, log, orders, orderLog, records };
    // Two notebooks never give the same key: what comes to this one from now on has keys of its own.
    const own = { ...identities, stem: stemOf(id), next: 1 };
    await this.#openMade(id, { text, identities: own }, versions);
  }

  /** All there is of this job, with what other pages added to it. */
  async job(): Promise<Job> {
    await this.catchUp();
    const { desk } = this;
    const { notebook } = desk.session.door;
    return {
      id: desk.openId,
      title: notebook.title,
      text: notebook.text,
      identities: keptIdentities(desk.identities, notebook),
      ...this.versions,
    };
  }

  /** Prices whose date is over today. */
  get past(): readonly PastDate[] {
    const { today } = this;
    const { text } = this.desk.session.door.notebook;
    if (this.#past?.text !== text || this.#past.day !== today)
      this.#past = { text, day: today, found: pastDates(this.#estimate, today) };
    return this.#past.found;
  }

  /** Until when its prices are good; null where none has a date. */
  get validity(): Validity | null {
    return validity(this.#estimate);
  }

  /** The open notebook, with all that the floors below ask of it. */
  get estimate(): Estimate {
    return this.#estimate;
  }

  get #estimate(): Estimate {
    const { door } = this.desk.session;
    if (!(door instanceof Estimate)) throw new Error('the open notebook is no estimate');
    return door;
  }

  async #openMade(
    id: string,
    made: { readonly text: string; readonly identities: KeptIdentities; readonly origin?: Origin },
    versions: Versions,
  ): Promise<void> {
    const title = readNotebook(made.text).title || 'Estimate without a title';
    const { text, identities } = made;
    const job: Job = { ...versions, id, title, text, identities };
    // All of it in one go: what is broken off has left nothing half done.
    const brought = await this.#shelf.bring(job, this.desk.now()).catch(() => null);
    if (brought?.kind === 'kept') {
      await this.desk.openKept(id);
      await this.#reading;
      return;
    }
    await this.desk.openMade(id, text, identities);
    await this.#reading;
    await this.#add(() => versions);
  }

  /** Never beside the notebook that was open before. */
  async #add(adding: Adding): Promise<boolean> {
    await this.#reading;
    return this.#beside.add(adding);
  }

  #read(): Promise<void> {
    this.#reading = this.#reading.then(() => this.#take());
    return this.#reading;
  }

  async #take(): Promise<void> {
    const { openId } = this.desk;
    this.#chosen = null;
    this.#worked.clear();
    await this.#beside.read(openId);
    this.#chosen = await this.#shelf.against(openId).catch(() => null);
    this.#said();
  }

  #said(): void {
    if (this.desk.openId === this.#beside.id) this.desk.besideNow(this.#beside.revision);
    for (const listener of this.#listeners) listener();
  }
}
