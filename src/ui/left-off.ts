// Where one left off in a notebook, for the page to go back to at the next visit.
import type { KeptPlace } from '../store/shapes.ts';
import type { Shelf } from '../store/shelf.ts';
import { allCells } from './reading-order.ts';
import type { Session } from './session.ts';

export class LeftOff {
  readonly #session: Session;
  readonly #shelf: Shelf;
  place: KeptPlace | null = null;

  constructor(session: Session, shelf: Shelf) {
    this.#session = session;
    this.#shelf = shelf;
  }

  now(scroll: number): KeptPlace {
    const session = this.#session;
    const cell = session.chosen === null ? null : session.cell(session.chosen);
    const part = cell ? (session.part(cell.part)?.name ?? '') : '';
    return { v: 1, part, cell: cell?.name ?? null, scroll };
  }

  async read(id: string): Promise<void> {
    this.place = await this.#shelf.place(id).catch(() => null);
  }

  async keep(id: string, scroll: number): Promise<void> {
    this.place = this.now(scroll);
    await this.#shelf.keepPlace(id, this.place).catch(() => undefined);
  }

  /** The cell that was chosen when this notebook was left, or the first that was worked from others. */
  goBack(): void {
    const session = this.#session;
    const { door } = session;
    const { place } = this;
    const left = place?.cell ? session.called(place.part, place.cell) : null;
    const cells = allCells(door.notebook);
    const worked = cells.find(({ id }) => door.state(id).needs.length > 0);
    session.choose(left ?? worked?.id ?? cells[0]?.id ?? null);
  }
}
