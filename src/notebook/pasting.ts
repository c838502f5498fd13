// Text from a spreadsheet as rows of a table: cells split at tabs, or at commas with quotes around what holds one.
import { nameKey } from './names.ts';

export interface PastedText {
  /** Row by row, as many cells as were pasted. */
  readonly rows: readonly (readonly string[])[];
  readonly between: Between;
}

type Between = 'tab' | 'comma' | 'semicolon';

const MARKS: Readonly<Record<Between, string>> = { tab: '\t', comma: ',', semicolon: ';' };

/** The most rows that are taken in one go. */
export const MOST_PASTED = 20_000;

export function pastedText(
  text: string,
  between: Between = text.includes('\t') ? 'tab' : 'comma',
): PastedText {
  const mark = MARKS[between];
  // Where blanks follow the commas between cells, one inside a figure parts its thousands.
  const spaced = between === 'comma' && /,[ \u00a0]/.test(text);
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  const endCell = (): void => {
    row.push(tidy(cell));
    cell = '';
  };
  const endRow = (): void => {
    endCell();
    if (row.some((each) => each !== '')) rows.push(row);
    row = [];
  };
  for (let i = 0; i < text.length; i++) {
    const char = text.charAt(i);
    if (quoted) {
      if (char !== '"') cell += char;
      else if (text.charAt(i + 1) === '"') {
        cell += '"';
        i++;
      } else quoted = false;
    } else if (char === '"' && cell.trim() === '' && closes(text, i, mark)) {
      cell = '';
      quoted = true;
    } else if (char === mark && !(spaced && partsThousands(text, i))) endCell();
    else if (char === '\n' || char === '\r') {
      if (char === '\r' && text.charAt(i + 1) === '\n') i++;
      endRow();
    } else cell += char;
  }
  endRow();
  return { rows, between };
}

/** `1,200`, `$12,500.00` */
function partsThousands(text: string, at: number): boolean {
  return /\d/.test(text.charAt(at - 1)) && /^,\d{3}(?!\d)/.test(text.slice(at, at + 5));
}

/** Does a quote that opens here close right before a mark or the end of a line? `6" x 4"` opens none. */
function closes(text: string, at: number, mark: string): boolean {
  for (let i = at + 1; i < text.length; i++) {
    if (text.charAt(i) !== '"') continue;
    const next = text.charAt(i + 1);
    if (next === '"') i++;
    else return next === '' || next === mark || next === '\n' || next === '\r';
  }
  return false;
}

// eslint-disable-next-line no-control-regex
const CONTROL = /[\0-\x1f\x7f\x85\u2028\u2029]+/g;

function tidy(cell: string): string {
  return cell.replace(CONTROL, ' ').replaceAll('\u00a0', ' ').trim();
}

/** Where each pasted column goes: by its heading where the first row holds names of columns, else in order from `first`. */
export function placesFor(
  pasted: PastedText,
  columns: readonly string[],
  first: number,
): { readonly rows: readonly (readonly string[])[]; readonly places: readonly (number | null)[] } {
  const [head = [], ...rest] = pasted.rows;
  const named = head.map((text) => columns.findIndex((name) => nameKey(name) === nameKey(text)));
  const isHead =
    head.length > 0 &&
    new Set(named).size === head.length &&
    named.every((k, i) => k >= 0 && head[i] !== '');
  if (isHead) return { rows: rest, places: named };
  const widest = pasted.rows.reduce((most, row) => Math.max(most, row.length), 0);
  const places = Array.from({ length: widest }, (_, i) =>
    first + i < columns.length ? first + i : null,
  );
  return { rows: pasted.rows, places };
}

/** What no reader of amounts would see to be wrong, or would misread; null: it may be read. */
export function oddInPaste(text: string): string | null {
  if (text.startsWith('=')) {
    return 'It is a formula that points at places in a sheet. Paste what it comes to.';
  }
  if (/^#[A-Z][A-Z0-9/]*[!?]?$/.test(text)) return 'The sheet it comes from found an error there.';
  if (/^\(\s*[$€£]?\s*[\d.,]+\s*\)$/.test(text)) {
    return 'Brackets around a figure may mean that it is owed. Write it with a minus, or without them.';
  }
  if (/^[$€£]?\s?\d{1,3}(\.\d{3})+,\d+$/.test(text)) {
    return 'Points and commas stand the other way round here: 1,234.50.';
  }
  if (/^[-−+]?\d+(\.\d+)?e[-+]?\d+$/i.test(text)) {
    return 'The sheet has shortened this figure. Paste all its digits.';
  }
  return null;
}
