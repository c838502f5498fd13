// What the ground is like on which notebooks are kept here: whether the browser promised not to clear them away, and what
// is missing where a page came over plain HTTP or the browser is old. Said in whole sentences, for whoever asks.

/** As far as the browser's store of stores is needed here. */
type Storage = Pick<StorageManager, 'persist' | 'persisted'>;

/** `promised`: only the person removes what is kept. `may-clear`: the browser may, when the disk gets full. `unknown`: it does not say. */
export type Standing = 'promised' | 'may-clear' | 'unknown';

/**
 * `look` only looks whether the browser promised; `ask` asks it to, and some browsers ask the person in turn, so that it
 * is done only once there is something to keep.
 */
export async function standingOf(
  storage: Storage | undefined,
  how: 'look' | 'ask',
): Promise<Standing> {
  if (!storage?.persist) return 'unknown';
  try {
    const stays = (await storage.persisted()) || (how === 'ask' && (await storage.persist()));
    return stays ? 'promised' : 'may-clear';
  } catch {
    return 'unknown';
  }
}

/** What the browser has of that which keeping leans on. */
export interface Has {
  /** The page came over an address that browsers call secure. */
  readonly secure: boolean;
  readonly database: boolean;
  readonly locks: boolean;
  readonly channel: boolean;
  readonly storage: boolean;
}

/** What does not work here and what that means; empty where all does. */
export function sayLacks({ secure, database, locks, channel, storage }: Has): readonly string[] {
  const said: string[] = [];
  if (!database) {
    said.push(
      'This browser has no database, so that little or nothing is kept here: save files before you leave.',
    );
  }
  if (!channel) {
    said.push(
      'Tabs can’t hear each other here: one that keeps second is told so then, and nothing is written over.',
    );
  } else if (!locks) {
    said.push(
      'There are no locks here: tabs ask each other who writes, and one that was closed is missed only when you take over from it.',
    );
  }
  if (!storage) {
    said.push(
      'This browser can’t be asked to hold on to what is kept here when the disk gets full: save files now and then.',
    );
  }
  if (!secure && said.length > 0) {
    said.unshift(
      'This page came over plain HTTP, where browsers leave things out. Notebooks are kept all the same, and snapshots have their hashes.',
    );
  }
  return said;
}

export function sayStanding(standing: Standing | null): string {
  switch (standing) {
    case 'promised':
      return 'The browser promised to keep what is kept here until you remove it.';
    case 'may-clear':
      return 'The browser did not promise to hold on to what is kept here: it may clear it away when the disk gets full, so save files now and then.';
    case 'unknown':
      return 'The browser does not say whether it may clear away what is kept here.';
    case null:
      return 'The browser is asked to hold on to what is kept here as soon as something is.';
  }
}

/** How much is in this browser and in no file. */
export interface Unsaved {
  readonly say: string;
  /** What a file of the text would leave out; empty where nothing. */
  readonly more: string;
  /** `due`: so much that it should be seen. */
  readonly weight: 'quiet' | 'due';
}

/** From so many changes on it is mentioned, and from so many it weighs; sooner where the browser may clear things away. */
const MENTIONED = { promised: 30, other: 10 };
const DUE = { promised: 300, other: 100 };

/** Changes of the notebook, and what was added beside it: snapshots, orders, lines of the record. */
export interface InNoFile {
  readonly notebook: number;
  readonly beside: number;
}

export function sayUnsaved(
  { notebook, beside }: InNoFile,
  standing: Standing | null,
): Unsaved | null {
  const changes = notebook + beside;
  const how = standing === 'promised' ? 'promised' : 'other';
  if (changes < MENTIONED[how]) return null;
  const weight = changes < DUE[how] ? 'quiet' : 'due';
  const which = notebook > 0 ? 'file' : 'file of the whole job';
  const more =
    beside === 0
      ? ''
      : `${beside === changes ? 'All' : beside} of them are snapshots, orders or lines of the record, which a text file does not hold: save the whole job, under Snapshots.`;
  return { say: `${changes} changes in no ${which} yet`, more, weight };
}
