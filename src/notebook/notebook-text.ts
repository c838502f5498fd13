// The notebook as a value: the text, its sections, and what stands where, worked out when it is asked for.
import type { CellId } from '../language/tree.ts';
import type { Spot } from '../words/spot.ts';
import type { Block, Cell, Finding, Notebook, Part, Settings } from './document.ts';
import {
  type Identified,
  NO_REGISTER,
  type OldStretch,
  type Register,
  type Section,
} from './identified.ts';
import { nameKey } from './names.ts';
import { USUAL } from './settings.ts';

export class NotebookText implements Notebook {
  readonly text: string;
  /** 1 after a byte order mark, else 0. */
  readonly start: number;
  readonly sections: readonly Section[];
  /** Where each section starts. */
  readonly starts: readonly number[];
  readonly register: Register;
  /** Why the text was not read, or null. */
  readonly refusal: Pick<Finding, 'code' | 'message'> | null;
  #parts: readonly Part[] | null = null;
  #findings: readonly Finding[] | null = null;
  #index: ReadonlyMap<CellId, number> | null = null;

  private constructor(
    text: string,
    start: number,
    sections: readonly Section[],
    register: Register,
    refusal: Pick<Finding, 'code' | 'message'> | null,
  ) {
    this.text = text;
    this.start = start;
    this.sections = sections;
    this.register = register;
    this.refusal = refusal;
    const starts: number[] = [];
    let at = start;
    for (const section of sections) {
      starts.push(at);
      at += section.length;
    }
    this.starts = starts;
  }

  static made(text: string, start: number, made: Identified): NotebookText {
    return new NotebookText(text, start, made.sections, made.register, null);
  }

  /** A text that can't be read as a notebook: kept whole, with the reason. */
  static unread(
    text: string,
    refusal: Pick<Finding, 'code' | 'message'>,
    before: NotebookText | null,
  ): NotebookText {
    const front: Section = {
      key: '',
      name: '',
      nameSpot: { from: 0, to: 0 },
      length: text.length,
      blocks: [],
      cells: [],
      findings: [{ ...refusal, part: null, cell: null, spot: null }],
      passedOver: [],
      front: { title: '', titleSpot: null, settings: USUAL },
    };
    return new NotebookText(text, 0, [front], before?.register ?? NO_REGISTER, refusal);
  }

  /** This notebook with the sections `first` up to `last` replaced. */
  replaced(text: string, first: number, last: number, made: Identified): NotebookText {
    const sections = [
      ...this.sections.slice(0, first),
      ...made.sections,
      ...this.sections.slice(last),
    ];
    return new NotebookText(text, this.start, sections, made.register, null);
  }

  stretch(first: number, last = this.sections.length): OldStretch {
    return {
      text: this.text,
      start: this.starts[first],
      sections: this.sections.slice(first, last),
      register: this.register,
    };
  }

  get title(): string {
    return this.sections[0].front?.title ?? '';
  }

  get titleSpot(): Spot | null {
    const spot = this.sections[0].front?.titleSpot ?? null;
    return spot && moved(spot, this.start);
  }

  get settings(): Settings {
    return this.sections[0].front?.settings ?? USUAL;
  }

  get parts(): readonly Part[] {
    this.#parts ??= this.sections.map((section, i) => new PlacedPart(section, this.starts[i]));
    return this.#parts;
  }

  get findings(): readonly Finding[] {
    this.#findings ??= [
      ...this.sections.flatMap((section, i) =>
        section.findings.map((f) => ({ ...f, spot: f.spot && moved(f.spot, this.starts[i]) })),
      ),
      ...this.#sameParts(),
    ];
    return this.#findings;
  }

  /** The cell with its places in this text, or undefined. */
  cell(id: CellId): Cell | undefined {
    this.#index ??= new Map(
      this.sections.flatMap((s, i) => s.cells.map((c) => [c.id, i] as const)),
    );
    const index = this.#index.get(id);
    if (index === undefined) return undefined;
    const cell = this.sections[index].cells.find((c) => c.id === id);
    return cell && placedCell(cell, this.starts[index]);
  }

  part(key: string): Part | undefined {
    return this.parts.find((part) => part.key === key);
  }

  #sameParts(): readonly Finding[] {
    const seen = new Set<string>();
    const findings: Finding[] = [];
    this.sections.forEach((section, i) => {
      if (section.front) return;
      const name = nameKey(section.name);
      if (seen.has(name)) {
        findings.push({
          code: 'same-part-name',
          message: `Two parts are called "${section.name}". Give one of them a name of its own.`,
          part: section.key,
          cell: null,
          spot: moved(section.nameSpot, this.starts[i]),
        });
      }
      seen.add(name);
    });
    return findings;
  }
}

/** A part in its place; its blocks are placed when they are first asked for. */
class PlacedPart implements Part {
  readonly #section: Section;
  readonly #start: number;
  #blocks: readonly Block[] | null = null;

  constructor(section: Section, start: number) {
    this.#section = section;
    this.#start = start;
  }

  get key(): string {
    return this.#section.key;
  }

  get name(): string {
    return this.#section.name;
  }

  get nameSpot(): Spot {
    return moved(this.#section.nameSpot, this.#start);
  }

  get spot(): Spot {
    return { from: this.#start, to: this.#start + this.#section.length };
  }

  get blocks(): readonly Block[] {
    this.#blocks ??= this.#section.blocks.map((block) =>
      block.kind === 'cell'
        ? { kind: 'cell', cell: placedCell(block.cell, this.#start) }
        : { ...block, spot: moved(block.spot, this.#start) },
    );
    return this.#blocks;
  }
}

function placedCell(cell: Cell, by: number): Cell {
  return {
    ...cell,
    nameSpot: moved(cell.nameSpot, by),
    formulaSpot: moved(cell.formulaSpot, by),
    spot: moved(cell.spot, by),
    remarks: cell.remarks.map((remark) => ({
      ...remark,
      spot: moved(remark.spot, by),
      textSpot: moved(remark.textSpot, by),
    })),
  };
}

function moved(spot: Spot, by: number): Spot {
  return { from: spot.from + by, to: spot.to + by };
}
