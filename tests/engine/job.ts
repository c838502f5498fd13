// A job in a few lines, for tests of what its cells come to and which of them ran.
//
//   Deck                              a part
//   length: 12 ft                     a cell
//   boards: 40 bags at $5 | material  a cost line of that kind; `| price` is a price line
//   area: length by 4 ft | by hand 50 sq ft
import type { CellInput, CellState, Outcome } from '../../src/engine/outcome.ts';
import { type CellEdit, Workings } from '../../src/engine/workings.ts';
import type { PartName } from '../../src/language/reading.ts';
import type { CellId, CostKind } from '../../src/language/tree.ts';
import { Nouns } from '../../src/quantity/nouns.ts';
import { type ShowSettings, show } from '../../src/quantity/show.ts';

const nouns = new Nouns([]);
export const SHOW: ShowSettings = {
  currency: '$',
  fractions: 16,
  measures: 'us',
  many: (noun) => nouns.many(noun),
};

export class Job {
  readonly workings = new Workings({ nouns, show: SHOW });
  parts: PartName[] = [{ key: '', name: '' }];
  readonly cells = new Map<CellId, CellInput>();
  #next = 0;

  constructor(text = '') {
    const added = text
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== '')
      .flatMap((line) => this.#line(line));
    for (const cell of added) this.cells.set(cell.id, cell);
    this.workings.load(this.parts, added);
  }

  #line(line: string): readonly CellInput[] {
    if (!line.includes(':')) {
      this.parts.push({ key: line.toLowerCase(), name: line });
      return [];
    }
    return [this.cell(line, this.parts.at(-1)?.key ?? '', ++this.#next)];
  }

  cell(line: string, part: string, id: CellId): CellInput {
    const [before = '', after = ''] = line.split(' | ');
    const colon = before.indexOf(':');
    const byHand = after.startsWith('by hand ') ? after.slice('by hand '.length) : null;
    const kind = byHand === null ? after.trim() : '';
    return {
      id,
      part,
      name: before.slice(0, colon).trim(),
      formula: before.slice(colon + 1).trim(),
      byHand,
      money: kind === '' ? null : moneyOf(kind),
    };
  }

  id(name: string): CellId {
    for (const cell of this.cells.values()) if (cell.name === name) return cell.id;
    throw new Error(`no cell is called ${name}`);
  }

  name(id: CellId): string {
    return this.cells.get(id)?.name ?? `no. ${id}`;
  }

  state(name: string): CellState {
    return this.workings.state(this.id(name));
  }

  /** The names of the cells that ran, in order. */
  get ran(): string {
    return this.workings.ran.map((id) => this.name(id)).join(' ');
  }

  change(...edits: CellEdit[]): string {
    this.workings.change(edits);
    return this.ran;
  }

  /** Edits cells as lines: `length: 13 ft`; a new name adds a cell to the last part. Returns what ran. */
  edit(...lines: string[]): string {
    return this.change(
      ...lines.map((line): CellEdit => {
        const name = line.slice(0, line.indexOf(':')).trim();
        const known = [...this.cells.values()].find((cell) => cell.name === name);
        const cell = this.cell(
          line,
          known?.part ?? this.parts.at(-1)?.key ?? '',
          known?.id ?? ++this.#next,
        );
        this.cells.set(cell.id, cell);
        return { kind: 'put', cell };
      }),
    );
  }

  put(name: string, changed: Partial<CellInput>): string {
    const cell = { ...this.cells.get(this.id(name)), ...changed } as CellInput;
    this.cells.set(cell.id, cell);
    return this.change({ kind: 'put', cell });
  }

  drop(name: string): string {
    const id = this.id(name);
    const ran = this.workings.change([{ kind: 'drop', id }]);
    this.cells.delete(id);
    return ran.map((each) => this.name(each)).join(' ');
  }

  /** What a cell comes to: `12 ft`, `$5.00 so far without paint`, `unknown for paint`, `waiting for x`, `circle`. */
  value(name: string): string {
    const state = this.state(name);
    return this.said(state.outcome, state);
  }

  worked(name: string): string {
    const state = this.state(name);
    return this.said(state.worked, { holds: state.workedHolds });
  }

  said(outcome: Outcome, { holds }: Pick<CellState, 'holds'>): string {
    const names = (ids: readonly CellId[]): string => ids.map((id) => this.name(id)).join(', ');
    switch (outcome.kind) {
      case 'value': {
        const shown = holds ? show(outcome.value, holds, SHOW).text : String(outcome.value);
        return outcome.leftOut.length > 0
          ? `${shown} so far without ${names(outcome.leftOut)}`
          : shown;
      }
      case 'unknown':
      case 'waiting':
        return `${outcome.kind} for ${names(outcome.for)}`;
      case 'fault':
        return outcome.report.code;
    }
  }

  /** Everything that can be seen of all cells but the last good values, for comparing jobs. */
  all(): unknown {
    return [...this.cells.values()].map((cell) => {
      const { lastGood: _, reading, holds, workedHolds, ...state } = this.workings.state(cell.id);
      return {
        ...state,
        needs: [...state.needs].sort((a, b) => a - b),
        goesInto: [...state.goesInto].sort((a, b) => a - b),
        holds: [holds, workedHolds].map((h) => h && [h.measure.key, h.written, h.showIn]),
        reading: [reading.sentence, reading.notes, reading.problems, reading.waitsFor],
      };
    });
  }
}

function moneyOf(kind: string): CellInput['money'] {
  return kind === 'price'
    ? { line: 'price', kind: 'markup' }
    : { line: 'cost', kind: kind as CostKind };
}
