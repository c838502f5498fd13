// What a desk is handed from outside: where things are kept, clock, ids, and what comes with the page.
import type { Journal } from '../store/journal.ts';
import type { Standing } from '../store/ground.ts';
import type { Channel } from '../store/keeper.ts';
import type { Shelf } from '../store/shelf.ts';
import type { Locks } from '../store/turn.ts';
import type { PracticeShelf } from '../store/practice-shelf.ts';
import type { VersionsShelf } from '../store/versions-shelf.ts';
import type { Door } from './session.ts';

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
