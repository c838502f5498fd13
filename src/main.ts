// The page in the browser: puts the floors together and hands in the clock, ids and tabs.
import { version } from '../package.json';
import index from '../templates/index.json';
import { Estimate } from './notebook/estimate.ts';
import { type Has, sayLacks, standingOf } from './store/ground.ts';
import { Journal } from './store/journal.ts';
import { Shelf } from './store/shelf.ts';
import { Desk } from './ui/desk.ts';
import './ui/story-page.ts';

/**
 * In milliseconds: how long a change waits for others before it is kept, how long after a failure it is tried again, and
 * how long another tab may take to answer.
 */
const WAITS = { soon: 300, again: 5000, answer: 1500 };

const texts = import.meta.glob<string>('../templates/*.md', { query: '?raw', import: 'default' });

const desk = await Desk.laid({
  estimate: (text) => new Estimate(text),
  shelf: new Shelf(),
  now: () => Date.now(),
  newId: () => freshId(),
  later: (call, wait) => {
    const timer = setTimeout(call, WAITS[wait]);
    return () => clearTimeout(timer);
  },
  channel: () => ('BroadcastChannel' in globalThis ? new BroadcastChannel('storyrod') : null),
  // A page that came over plain HTTP has none.
  locks: navigator.locks,
  journal: new Journal(slips(), freshId()),
  standing: (how) => standingOf(navigator.storage, how),
  lacks: sayLacks(has()),
  templates: index.parts.map((file) => ({ file, read: () => textOf(file) })),
  demo: () => textOf(index.demo),
  guide: () => textOf(index.guide),
  versions: () => import('./store/versions-shelf.ts').then((kept) => new kept.VersionsShelf()),
  practice: () => import('./store/practice-shelf.ts').then((kept) => new kept.PracticeShelf()),
  tool: version,
});

const page = document.createElement('story-page');
page.desk = desk;
document.body.append(page);

function textOf(file: string): Promise<string> {
  return texts[`../templates/${file}`]?.() ?? Promise.reject(new Error(`no template ${file}`));
}

function has(): Has {
  return {
    secure: isSecureContext,
    database: 'indexedDB' in globalThis,
    locks: 'locks' in navigator,
    channel: 'BroadcastChannel' in globalThis,
    storage: 'storage' in navigator,
  };
}

/** Asking alone throws where keeping is forbidden. */
function slips(): Storage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}

/** Without a secure address there is no randomUUID; these are only told apart within one browser. */
function freshId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
