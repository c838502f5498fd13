// From outline to meaning: which items are cells, which are remarks, which are prose.
// Everything in a section stands relative to the section's start, so that an edit elsewhere leaves it as it is.
import type { Spot } from '../words/spot.ts';
import type { Remark, Settings, Table } from './document.ts';
import { nameProblem } from './names.ts';
import type {
  DraftBlock,
  DraftCell,
  DraftFinding,
  DraftSection,
  PassedOver,
} from './draft-section.ts';
import { remarkFindings } from './remark-findings.ts';
import type { OutlineItem, OutlineSection } from './outline.ts';
import { lineEnd, trimmed } from './outline.ts';
import { moneyLine, remarkKind } from './remarks.ts';
import { USUAL, isSetting, withSetting } from './settings.ts';
import { type TableRead, readTable } from './table-text.ts';

/** What the section says. `front` is for the one above the first part heading: title and settings stand there. */
export function draftSection(
  text: string,
  outline: OutlineSection,
  place: 'front' | 'part',
): DraftSection {
  return new SectionReader(text, outline, place).read();
}

class SectionReader {
  readonly #text: string;
  readonly #outline: OutlineSection;
  readonly #base: number;
  readonly #place: 'front' | 'part';
  readonly #blocks: DraftBlock[] = [];
  readonly #cells: DraftCell[] = [];
  readonly #findings: DraftFinding[] = [];
  readonly #passedOver: PassedOver[] = [];
  #title: Spot | null = null;
  #settings: Settings = USUAL;
  /** The end of the last item that was prose: the next one joins it when it follows at once. */
  #proseEnds = -1;

  constructor(text: string, outline: OutlineSection, place: 'front' | 'part') {
    this.#text = text;
    this.#outline = outline;
    this.#base = outline.spot.from;
    this.#place = place;
  }

  read(): DraftSection {
    const { heading, blocks, spot, unread } = this.#outline;
    for (const block of blocks) {
      switch (block.kind) {
        case 'heading':
          if (block.level === 1 && this.#place === 'front' && !this.#title)
            this.#title = block.text;
          else {
            this.#blocks.push({
              kind: 'heading',
              level: block.level,
              text: this.#words(block.text),
              spot: this.#local(block.spot),
            });
          }
          break;
        case 'prose':
          this.#prose(block.spot);
          break;
        case 'item':
          this.#item(block.item);
          break;
      }
    }
    if (unread) this.#unread(unread);
    const nameSpot = heading ? this.#local(heading.text) : { from: 0, to: 0 };
    return {
      name: heading ? this.#words(heading.text) : '',
      nameSpot,
      length: spot.to - spot.from,
      blocks: this.#blocks,
      cells: this.#cells,
      findings: this.#findings,
      passedOver: this.#passedOver,
      front:
        this.#place === 'front'
          ? {
              title: this.#title ? this.#words(this.#title) : '',
              titleSpot: this.#title ? this.#local(this.#title) : null,
              settings: this.#settings,
            }
          : null,
    };
  }

  #item(item: OutlineItem): void {
    const found = item.line ? this.#named(item.line) : null;
    if (!found) {
      this.#proseItem(item);
      return;
    }
    const { name, formula } = found;
    const words = this.#words(name);
    const saying = this.#words(formula);
    const lines = this.#tableLines(item);
    const read = lines ? readTable(this.#text, lines, item.spot.from) : null;
    const isTable = read !== null && typeof read !== 'string' && saying === '';
    if (saying === '' && !isTable && this.#isOnlyHeading(item)) {
      if (typeof read === 'string') this.#tableNotRead(words, read, lines?.[0] ?? item.spot);
      this.#proseItem(item);
      return;
    }
    if (this.#place === 'front' && isSetting(words)) {
      this.#setting(item, words, saying);
      return;
    }
    const problem = nameProblem(words);
    if (problem) {
      const spot = this.#local({ from: name.from, to: formula.to });
      this.#passedOver.push({ name: words, problem, formula: saying, spot });
      this.#proseItem(item);
      return;
    }
    this.#cell(item, words, name, saying, formula, isTable ? read : null);
    if (lines && !isTable) this.#besideTable(words, lines[0] ?? item.spot);
  }

  #cell(
    item: OutlineItem,
    name: string,
    nameSpot: Spot,
    formula: string,
    formulaSpot: Spot,
    read: TableRead | null,
  ): void {
    const table: Table | null = read?.table ?? null;
    const remarks = item.nested.flatMap((nested) => this.#remark(nested) ?? []);
    const cell: DraftCell = {
      name,
      nameSpot: this.#local(nameSpot),
      formula,
      formulaSpot: this.#local(formulaSpot),
      spot: this.#local(item.spot),
      remarks,
      // A table is no amount: what it costs is added up in a cell of its own.
      money: table ? null : moneyLine(remarks),
      table,
    };
    this.#blocks.push({ kind: 'cell', cell });
    this.#cells.push(cell);
    const goesOn = item.goesOn[0];
    if (goesOn && this.#text.charAt(goesOn.from) !== '|') {
      this.#point(
        'formula-goes-on',
        `The formula of "${name}" is what stands on its first line; "${this.#words(goesOn)}" below it isn't read.`,
        cell,
        goesOn,
      );
    }
    for (const { code, message, spot } of read?.odd ?? []) this.#point(code, message, cell, spot);
    this.#findings.push(...remarkFindings(cell));
  }

  /** The lines of a table: all that goes on below the item's own line, or the first thing after it. */
  #tableLines(item: OutlineItem): readonly Spot[] | null {
    const isBar = (line: Spot): boolean => this.#text.charCodeAt(line.from) === 124;
    const below = item.goesOn;
    if (below.length > 0) return below.every(isBar) ? below : null;
    const [more] = item.more;
    if (!more || item.more.length > 1 || !isBar(more)) return null;
    const lines: Spot[] = [];
    for (let at = more.from; at < more.to; at = lineEnd(this.#text, at)) {
      const line = trimmed(this.#text, at, Math.min(lineEnd(this.#text, at), more.to));
      if (line.to > line.from) lines.push(line);
    }
    return lines.every(isBar) ? lines : null;
  }

  #tableNotRead(name: string, why: string, spot: Spot): void {
    this.#point('table-not-read', `The table "${name}" is kept as prose: ${why}.`, null, spot);
  }

  #besideTable(name: string, spot: Spot): void {
    const cell = this.#cells.at(-1) ?? null;
    this.#point(
      'table-beside-formula',
      `"${name}" has a formula and a table; the formula is used. Give the table a cell of its own, with nothing after the colon.`,
      cell,
      spot,
    );
  }

  /** A nested item as a remark; one without a word before a colon is a note. */
  #remark(item: OutlineItem): Remark | null {
    if (!item.line) return null;
    const end = item.goesOn.at(-1)?.to ?? item.line.to;
    const found = this.#named(item.line);
    const textFrom = found ? found.formula.from : item.line.from;
    const lines = [{ from: textFrom, to: item.line.to }, ...item.goesOn];
    const text = lines
      .map((line) => this.#words(line))
      .filter((line) => line !== '')
      .join(' ');
    const word = found ? this.#words(found.name) : '';
    return {
      kind: found ? remarkKind(word) : 'note',
      word,
      text,
      spot: this.#local(item.spot),
      textSpot: this.#local({ from: textFrom, to: end }),
    };
  }

  #setting(item: OutlineItem, name: string, value: string): void {
    const set = withSetting(this.#settings, name, value);
    if (typeof set === 'string') this.#point('setting-not-read', set, null, item.spot);
    else this.#settings = set;
    this.#proseItem(item);
  }

  /** `Tools needed:` over plain items, or over a table: no cell without a formula, but prose. */
  #isOnlyHeading(item: OutlineItem): boolean {
    const table = item.goesOn[0] ?? item.more[0];
    if (table && this.#text.slice(table.from, table.to).trimStart().startsWith('|')) return true;
    if (item.more.length > 0) return true;
    if (item.nested.length === 0) return false;
    return item.nested.every((nested) => {
      const found = nested.line ? this.#named(nested.line) : null;
      return !found || remarkKind(this.#words(found.name)) === null;
    });
  }

  #proseItem(item: OutlineItem): void {
    for (const nested of item.nested) {
      const found = nested.line ? this.#named(nested.line) : null;
      if (!found || remarkKind(this.#words(found.name)) !== null) continue;
      if (!/^[-−]?[$€£]?[\d.½¼¾]/.test(this.#words(found.formula))) continue;
      this.#point(
        'cell-under-prose',
        `"${this.#words(nested.line ?? nested.spot)}" stands under a line of prose, so it isn't worked. Cells stand at the start of the line.`,
        null,
        nested.spot,
      );
    }
    const last = this.#blocks.at(-1);
    const to = trimmed(this.#text, item.spot.from, item.spot.to).to;
    if (last?.kind === 'prose' && this.#proseEnds === item.spot.from) {
      this.#blocks.pop();
      this.#prose({ from: last.spot.from + this.#base, to });
    } else this.#prose({ from: item.spot.from, to });
    this.#proseEnds = item.spot.to;
  }

  #prose(spot: Spot): void {
    this.#blocks.push({ kind: 'prose', markdown: this.#words(spot), spot: this.#local(spot) });
  }

  #unread(why: 'too-deep' | 'too-involved'): void {
    const { spot, heading } = this.#outline;
    const from = heading ? heading.spot.to : spot.from;
    const place = trimmed(this.#text, from, spot.to);
    this.#prose(place);
    const message =
      why === 'too-deep'
        ? 'Lists or quotes stand more than 60 deep here. The text is kept; nothing in it is worked.'
        : 'There is more involved Markdown here than can be read in good time. The text is kept; nothing in it is worked.';
    this.#point(why, message, null, {
      from: place.from,
      to: Math.min(place.to, lineEnd(this.#text, place.from)),
    });
  }

  /** `Name: rest` on one line: the first colon that a blank or the end follows. */
  #named(line: Spot): { readonly name: Spot; readonly formula: Spot } | null {
    const text = this.#text;
    for (let i = line.from; i < line.to; i++) {
      if (text.charCodeAt(i) !== 58) continue;
      const next = text.charCodeAt(i + 1);
      if (i + 1 < line.to && next !== 32 && next !== 9) continue;
      const name = trimmed(text, line.from, i);
      if (name.from === name.to) return null;
      return { name, formula: trimmed(text, i + 1, line.to) };
    }
    return null;
  }

  #point(code: string, message: string, cell: DraftCell | null, spot: Spot): void {
    this.#findings.push({ code, message, cell, spot: this.#local(spot) });
  }

  #words(spot: Spot): string {
    return this.#text.slice(spot.from, spot.to);
  }

  #local(spot: Spot): Spot {
    return { from: spot.from - this.#base, to: spot.to - this.#base };
  }
}
