// Runs in the page that is killed: says what it finds kept, then edits and freezes through the page's own store code, and
// acknowledges each write to the one outside who keeps the log.
import { type UseStore, promisifyRequest } from 'idb-keyval';
import { Estimate } from '../../src/notebook/estimate.ts';
import { database } from '../../src/store/database.ts';
import { openJobFile, writeJobFile } from '../../src/store/job-file.ts';
import { Journal } from '../../src/store/journal.ts';
import { Keeper } from '../../src/store/keeper.ts';
import { Shelf } from '../../src/store/shelf.ts';
import { NO_VERSIONS, VersionsShelf } from '../../src/store/versions-shelf.ts';
import { hashOf } from '../../src/versions/hash.ts';
import {
  keptIdentities,
  newIdentities,
  readIdentities,
  withNew,
} from '../../src/versions/identities.ts';
import type { Job } from '../../src/versions/job.ts';
import { type Snapshot, freeze, verify } from '../../src/versions/snapshot.ts';
import { logged } from '../../src/versions/standing.ts';
import { copyOfSnapshot, duplicateOf } from '../../src/versions/working-copy.ts';
import { cellNamed } from '../notebook/cells.ts';
import type { Acknowledged, Found, Orders, Phase, Whole } from './phases.ts';

const FIRST = `# Steps without end

## Count

- Count: 0
  - from: the one who kills

## Steps

- Width: 4 ft
  - from: the tape
- Waste: 10%
  - from: our habit
- Treads: 12
  - from: counted
- Boards: treads times width plus waste
- Board price: $3.20 per ft
  - from: an invented quote
- Wood: boards times board price
  - cost: material
`;

const orders = JSON.parse(decodeURIComponent(location.hash.slice(1))) as Orders;
let acknowledged = 0;
/** What is written just now: of a removal no phase has a name. */
let writing: 'one' | 'bring' | 'remove' = 'one';

function reached(
  step: 'before' | 'begun' | 'one-put' | 'written' | 'acknowledged' | 'more-put',
): void {
  const phase: Phase | null =
    writing === 'bring'
      ? `bring-${step}`
      : writing === 'remove'
        ? null
        : step === 'more-put'
          ? 'two-put'
          : step;
  if (phase === null || phase !== orders.at || acknowledged < orders.after) return;
  // Stops the page right here: the answer never comes.
  const call = new XMLHttpRequest();
  call.open('POST', '/reached', false);
  call.send(phase);
}

const base = database('killed');
const watched: UseStore = (mode, work) => {
  if (mode === 'readonly') return base(mode, work);
  reached('before');
  return base(mode, (values) => {
    reached('begun');
    // Heard before whoever waits for the end of the writing.
    values.transaction.addEventListener('complete', () => reached('written'));
    return work(watching(values));
  });
};

function watching(values: IDBObjectStore): IDBObjectStore {
  let puts = 0;
  return new Proxy(values, {
    get: (target, name) => {
      const own: unknown = Reflect.get(target, name, target);
      if (typeof own !== 'function') return own;
      return (...told: unknown[]): unknown => {
        const answer: unknown = Reflect.apply(own, target, told);
        if (name === 'put') {
          puts++;
          if (puts === 1) reached('one-put');
          // Of a whole job more than the notebook is on its way then.
          if (puts === (writing === 'bring' ? 4 : 2)) reached('more-put');
        }
        return answer;
      };
    },
  });
}

const shelf = new Shelf(watched);
const versions = new VersionsShelf(watched);

async function post(path: string, what: unknown): Promise<void> {
  await fetch(path, { method: 'POST', body: JSON.stringify(what) });
}

async function acknowledge(what: Acknowledged): Promise<void> {
  await post('/acknowledged', what);
  acknowledged++;
  reached('acknowledged');
}

async function found(id: string): Promise<Found> {
  const kept = await shelf.take(id);
  const listed = (await shelf.list()).find((entry) => entry.id === id)?.revision ?? 0;
  const beside = await versions.take(id);
  const none = { versions: { snapshots: [] }, unreadable: [`all: ${beside.kind}`] };
  const { versions: held, unreadable } = beside.kind === 'taken' ? beside.value : none;
  const text = kept.kind === 'taken' ? kept.value.text : '';
  return {
    id,
    kind: kept.kind,
    revision: kept.kind === 'taken' ? kept.value.revision : 0,
    listed,
    hash: hashOf(text),
    count: countIn(text),
    snapshots: held.snapshots.map((one) => ({
      seal: one.seal,
      hash: one.hash,
      right: verify(one).length === 0,
    })),
    unreadable,
  };
}

function countIn(text: string): number | null {
  try {
    const { notebook } = new Estimate(text);
    if (notebook.findings.length > 0) return null;
    return Number(cellNamed(notebook, 'Count').formula);
  } catch {
    return null;
  }
}

/** Of every notebook of which anything is kept, by half or whole. */
async function idsKept(): Promise<readonly string[]> {
  const keys = await base('readonly', (values) =>
    promisifyRequest<IDBValidKey[]>(values.getAllKeys()),
  );
  return keys.flatMap((key) => {
    const [kind, ...rest] = typeof key === 'string' ? key.split('/') : [];
    if (kind === 'snapshot') return [rest.slice(0, -1).join('/')];
    return ['notebook', 'entry', 'versions'].includes(kind ?? '') ? [rest.join('/')] : [];
  });
}

async function write(id: string): Promise<never> {
  const kept = await shelf.take(id);
  const text = kept.kind === 'taken' ? kept.value.text : FIRST;
  const estimate = new Estimate(text);
  let identities =
    kept.kind === 'taken' && kept.value.identities
      ? readIdentities(kept.value.identities, estimate.notebook)
      : newIdentities(estimate.notebook, `${id}-`);
  let revision = kept.kind === 'taken' ? kept.value.revision : 0;
  const keeper = new Keeper(id, revision, null, {
    shelf,
    journal: new Journal(null, id),
    now: () => Date.now(),
    later: (call) => {
      const timer = setTimeout(call, 5);
      return () => clearTimeout(timer);
    },
    channel: new BroadcastChannel('killed'),
    changed: () => undefined,
    moved: () => undefined,
  });
  for (let count = (countIn(text) ?? 0) + 1; ; count++) {
    edit(estimate, count);
    const { notebook } = estimate;
    identities = withNew(identities, notebook);
    const acknowledgement: Acknowledged = {
      kind: 'text',
      id,
      revision: ++revision,
      count,
      hash: hashOf(notebook.text),
    };
    if (orders.way === 'too-early') await acknowledge(acknowledgement);
    keeper.keepSoon({
      id,
      title: notebook.title,
      text: notebook.text,
      identities: keptIdentities(identities, notebook),
    });
    await keeper.flush();
    if (keeper.state.kind !== 'kept') throw new Error(`edit ${count}: ${keeper.state.kind}`);
    if (orders.way !== 'too-early') await acknowledge(acknowledgement);
    if (count % 4 === 0) await snapshot(estimate, identities, id, count);
    if (count % 5 === 2) await bring(estimate, identities, id, count);
  }
}

function edit(estimate: Estimate, count: number): void {
  const set = (name: string, formula: string): void => {
    const done = estimate.setFormula(cellNamed(estimate.notebook, name).id, formula);
    if ('code' in done && done.code !== 'stays') throw new Error(done.message);
  };
  set('Count', String(count));
  if (count % 3 === 0) set('Width', `${3 + (count % 5)} ft ${count % 12} in`);
  if (count % 3 === 1) set('Board price', `$${2 + (count % 7)}.${10 + (count % 80)} per ft`);
  // The text grows for a while and shrinks again, so that values of many sizes are written.
  if (count % 10 === 5) done(estimate.addCell(partOf(estimate), null, `Landing ${count}`, '3 ft'));
  if (count % 40 === 39) {
    for (const { cell } of estimate.notebook.parts.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === 'cell' ? [block] : [])),
    ))
      if (cell.name.startsWith('Landing ')) done(estimate.removeCell(cell.id));
  }
}

function done(outcome: object): void {
  if ('code' in outcome) throw new Error(JSON.stringify(outcome));
}

function partOf({ notebook }: Estimate): string {
  return notebook.parts.at(-1)?.key ?? '';
}

async function snapshot(
  estimate: Estimate,
  identities: Parameters<typeof freeze>[1],
  id: string,
  count: number,
): Promise<void> {
  const before = await versions.take(id);
  if (before.kind !== 'taken') throw new Error(`snapshots: ${before.kind}`);
  const date = new Date().toISOString();
  const naming = { name: `Bid ${count}`, note: '', date, tool: '0.0.0' };
  const one = freeze(estimate, identities, naming);
  const held = before.value.versions;
  const log = logged(held.log, { snapshot: one.seal, happened: 'sent', date, note: '' });
  const told: Acknowledged = { kind: 'snapshot', id, seal: one.seal, hash: one.hash };
  if (orders.way === 'too-early') await acknowledge(told);
  const kept = await versions.keep(id, before.value, {
    ...held,
    snapshots: [...held.snapshots, one],
    log,
  });
  if (kept.kind !== 'kept') throw new Error(`snapshot ${count}: ${kept.kind}`);
  if (orders.way !== 'too-early') await acknowledge(told);
}

/** A whole job comes in, and one that came before goes. */
async function bring(
  estimate: Estimate,
  identities: Parameters<typeof freeze>[1],
  id: string,
  count: number,
): Promise<void> {
  const before = await versions.take(id);
  if (before.kind !== 'taken') throw new Error(`snapshots: ${before.kind}`);
  const snapshots = before.value.versions.snapshots.slice(-3);
  const job = jobMade(estimate, identities, snapshots, count, `${id}-brought-${count}`);
  const told: Whole = {
    kind: 'job',
    id: job.id,
    hash: hashOf(job.text),
    seals: job.snapshots.map(({ seal }) => seal),
  };
  await post('/begun', told);
  writing = 'bring';
  if (orders.way === 'too-early') await acknowledge(told);
  const kept = await (orders.way === 'by-halves' ? byHalves(job) : versions.bring(job, Date.now()));
  if (kept.kind !== 'kept') throw new Error(`${job.id}: ${kept.kind}`);
  if (orders.way !== 'too-early') await acknowledge(told);
  writing = 'remove';
  const others = [...new Set(await idsKept())].filter(
    (one) => one.includes('-brought-') && one !== job.id,
  );
  for (const other of others) {
    const going: Whole = { kind: 'removed', id: other };
    await post('/begun', going);
    await shelf.remove(other);
    await acknowledge(going);
  }
  writing = 'one';
}

/** As it must not be done. */
async function byHalves(job: Job): ReturnType<VersionsShelf['bring']> {
  const { id, title, text, identities, ...beside } = job;
  await shelf.keep({ id, title, text, identities }, 0, Date.now());
  return versions.keep(id, { versions: NO_VERSIONS, revision: 0, unreadable: [] }, beside);
}

/** From a file, of a snapshot taken up again, or for the next client, in turn. */
function jobMade(
  estimate: Estimate,
  identities: Parameters<typeof freeze>[1],
  snapshots: readonly Snapshot[],
  count: number,
  id: string,
): Job {
  const { notebook } = estimate;
  const naming = { stem: `${id}-`, date: '2026-03-03' };
  const beside = { ...NO_VERSIONS, snapshots, id };
  const last = snapshots.at(-1);
  if (count % 3 === 1 && last) return { ...beside, ...copyOfSnapshot('restored', last, naming) };
  const made = duplicateOf(notebook, identities, `For client ${count}`, naming);
  if (count % 3 === 2) return { ...beside, ...made };
  const opened = openJobFile(writeJobFile({ ...beside, ...made }), { id, stem: naming.stem });
  if (opened.kind !== 'opened' || opened.mismatches.length > 0)
    throw new Error(`${id}: ${JSON.stringify(opened)}`);
  return { ...opened.job, id };
}

try {
  const ids = await idsKept();
  await post('/found', await Promise.all([...new Set([...ids, orders.id])].map(found)));
  if (orders.after >= 0) await write(orders.id);
} catch (cause) {
  await post('/failed', cause instanceof Error ? (cause.stack ?? cause.message) : String(cause));
}
