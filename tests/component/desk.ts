// A desk for tests: a database and a room of its own, a clock that stands still, ids that count.
import { createStore } from 'idb-keyval';
import { Estimate } from '../../src/notebook/estimate.ts';
import { Journal } from '../../src/store/journal.ts';
import { PracticeShelf } from '../../src/store/practice-shelf.ts';
import { Shelf } from '../../src/store/shelf.ts';
import { VersionsShelf } from '../../src/store/versions-shelf.ts';
import { Desk } from '../../src/ui/desk.ts';
import type { DeskSettings } from '../../src/ui/desk-settings.ts';
import { SMALL_JOB } from './drawn.ts';

/** A browser in which several pages can be opened one after the other, or beside each other. */
export function browserOf(demo = SMALL_JOB, guide = SMALL_JOB) {
  // Test files share the browser's databases.
  const name = `desk ${crypto.randomUUID()}`;
  let ids = 0;
  let pages = 0;
  const settings: DeskSettings = {
    estimate: (text) => new Estimate(text),
    shelf: new Shelf(createStore(name, 'kept')),
    now: () => Date.UTC(2026, 2, 3, 16, 25),
    newId: () => `id-${++ids}`,
    later: (call, wait) => {
      const timer = setTimeout(call, wait === 'soon' ? 0 : 50);
      return () => clearTimeout(timer);
    },
    channel: () => new BroadcastChannel(name),
    locks: undefined,
    standing: () => Promise.resolve('promised'),
    lacks: [],
    journal: new Journal(null, `page ${crypto.randomUUID()}`),
    templates: [
      {
        file: 'fence.md',
        read: () =>
          Promise.resolve(
            '# Fence\n\n## Fence\n\n- Fence length: 40 ft\n  - from: a test\n- Rails: fence length times 2\n',
          ),
      },
    ],
    demo: () => Promise.resolve(demo),
    guide: () => Promise.resolve(guide),
    versions: () => Promise.resolve(new VersionsShelf(createStore(name, 'kept'))),
    practice: () => Promise.resolve(new PracticeShelf(createStore(name, 'kept'))),
    tool: '0.1.0',
  };
  return {
    settings,
    page: (own: Partial<DeskSettings> = {}) =>
      Desk.laid({ ...settings, journal: new Journal(null, `page ${++pages}`), ...own }),
  };
}
