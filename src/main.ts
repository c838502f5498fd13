// The page in the browser: puts the floors together and hands in the clock, ids and tabs.
import index from '../templates/index.json';
import { Estimate } from './notebook/estimate.ts';
import { aloneOn } from './store/alone.ts';
import { Shelf } from './store/shelf.ts';
import { Desk } from './ui/desk.ts';
import './ui/story-page.ts';

/** How long a change waits for the next one before it is kept. */
const KEPT_AFTER = 350;

const texts = import.meta.glob<string>('../templates/*.md', { query: '?raw', import: 'default' });

const desk = await Desk.laid({
  estimate: (text) => new Estimate(text),
  shelf: new Shelf(),
  versions: async () => new (await import('./store/versions-shelf.ts')).VersionsShelf(),
  now: () => Date.now(),
  newId: () => freshId(),
  later: (call) => {
    const timer = setTimeout(call, KEPT_AFTER);
    return () => clearTimeout(timer);
  },
  channel: () => ('BroadcastChannel' in globalThis ? new BroadcastChannel('storyrod') : null),
  alone: aloneOn(navigator.locks),
  templates: index.parts.map((file) => ({ file, read: () => textOf(file) })),
  demo: () => textOf(index.demo),
  guide: () => textOf(index.guide),
});

const page = document.createElement('story-page');
page.desk = desk;
document.body.append(page);

function textOf(file: string): Promise<string> {
  return texts[`../templates/${file}`]?.() ?? Promise.reject(new Error(`no template ${file}`));
}

/** Without a secure address there is no randomUUID; these are only told apart within one browser. */
function freshId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
