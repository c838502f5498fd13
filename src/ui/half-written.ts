// The line that somebody is in the middle of: kept as it is typed, and told at the next visit where the page went before
// it was done. It changes nothing by itself.
import type { KeptHalf } from '../store/shapes.ts';
import type { Shelf } from '../store/shelf.ts';
import type { RowsLeft } from './rows-left.ts';
import type { Session } from './session.ts';

export interface HalfSettings {
  readonly shelf: Shelf;
  readonly rows: RowsLeft;
  readonly later: (call: () => void, wait: 'soon') => () => void;
  /** The open notebook. */
  readonly id: () => string;
  /** Whether this page writes in it; `takeOver` asks the page that does for its turn. */
  readonly writes: () => boolean;
  readonly takeOver: () => Promise<void>;
}

type Half = Pick<KeptHalf, 'part' | 'cell' | 'what' | 'words'>;

const ROWS_WAIT =
  'Rows for the job record were not put in yet. They stand in it under From a sheet.';

/** What is being written, where it is a line of the job record. */
const RECORD = 'record';

export class HalfWritten {
  readonly #session: Session;
  readonly #settings: HalfSettings;
  #waiting: Half | null = null;
  #callOff: (() => void) | null = null;
  /** Whether one is kept, or was told and not put away yet. */
  #kept = false;
  #working: Promise<void> = Promise.resolve();

  constructor(session: Session, settings: HalfSettings) {
    this.#session = session;
    this.#settings = settings;
    session.listen(({ kind }) => {
      if (kind === 'opened') {
        this.#waitNoMore();
        this.#kept = false;
      }
      if (kind === 'changed' || (kind === 'writing' && session.writing === null)) this.done();
      if (kind === 'told' && session.notice === null && session.writing === null) this.done();
    });
  }

  /** These words stand in the line by now. */
  typed(words: string): void {
    const session = this.#session;
    const { writing } = session;
    const id = writing && 'cell' in writing ? writing.cell : session.chosen;
    const cell = id === null ? null : session.cell(id);
    this.#waiting = {
      part: cell ? (session.part(cell.part)?.name ?? '') : '',
      cell: cell?.name ?? null,
      what: writing?.kind ?? 'row',
      words,
    };
    this.#callOff ??= this.#settings.later(() => void this.flush(), 'soon');
  }

  /** These words stand in a line of the job record by now. */
  typedInRecord(words: string): void {
    if (words === '') {
      this.done();
      return;
    }
    this.#waiting = { part: '', cell: null, what: RECORD, words };
    this.#callOff ??= this.#settings.later(() => void this.flush(), 'soon');
  }

  /** Keeps at once what still waits. */
  flush(): Promise<void> {
    const half = this.#waiting;
    this.#waitNoMore();
    if (half) this.#keep(half);
    return this.#working;
  }

  /** The line is done, one way or the other. */
  done(): void {
    this.#waitNoMore();
    if (this.#kept) this.#keep(null);
  }

  /** Tells what was left when the page went. */
  async tellLeft(): Promise<void> {
    const session = this.#session;
    const { shelf, rows, id } = this.#settings;
    if ((await rows.of(id())).trim() !== '' && session.writing === null)
      session.tell({ text: withTold(session, ROWS_WAIT), lasts: 'stays' });
    const half = await shelf.half(id()).catch(() => null);
    if (!half || half.words.trim() === '' || session.writing !== null) return;
    this.#kept = true;
    const go = this.#goOn(half);
    const told = withTold(session, sayLeft(half));
    const act = go && { say: 'Go on with it', go };
    session.tell({ text: told, lasts: 'stays', ...(act ? { act } : {}) });
  }

  /** Null where the line can't be opened again with these words in it. */
  #goOn({ part, cell, what, words }: KeptHalf): (() => void) | null {
    const session = this.#session;
    if (what !== 'formula' && what !== 'by-hand' && what !== 'name') return null;
    const id = cell === null ? null : session.called(part, cell);
    // Over a range, what opens a line takes the place of one of its ends.
    if (id === null || session.cell(id)?.table || session.door.state(id).range) return null;
    const open = (): void => {
      // Meanwhile another page may have written: the cell is looked for again.
      const now = session.called(part, cell ?? '');
      if (now === null) return;
      session.bring(now);
      session.write({ kind: what, cell: now, typed: words });
      this.typed(words);
    };
    return () => {
      if (this.#settings.writes()) open();
      else this.#askForTurn({ part, cell, what, words }, open);
    };
  }

  /** The line waits, and stays kept, until this page may write. */
  #askForTurn(half: Half, open: () => void): void {
    const { writes, takeOver } = this.#settings;
    this.#keep(half);
    const go = async (): Promise<void> => {
      this.#keep(half);
      await takeOver();
      if (writes()) open();
    };
    this.#session.tell({
      text: `Another tab writes in this notebook now. The line waits here: ${half.words}`,
      lasts: 'stays',
      act: { say: 'Write here instead, and go on with it', go: () => void go() },
    });
  }

  #keep(half: Half | null): void {
    const { shelf, id } = this.#settings;
    const notebook = id();
    this.#kept = half !== null;
    this.#working = this.#working.then(() => shelf.keepHalf(notebook, half).catch(() => undefined));
  }

  #waitNoMore(): void {
    this.#callOff?.();
    this.#callOff = null;
    this.#waiting = null;
  }
}

/** After what stays told. */
function withTold({ notice }: Session, text: string): string {
  return notice?.lasts === 'stays' ? `${notice.text} ${text}` : text;
}

function sayLeft({ what, cell, words }: KeptHalf): string {
  if (what === RECORD)
    return `This was being written in the job record when the page went, and is not in it: ${words}`;
  const where = cell === null ? '' : ` at ${cell}`;
  return `This was being written${where} when the page went, and is not in the notebook: ${words}`;
}
