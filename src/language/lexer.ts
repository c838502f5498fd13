// Text into tokens. A token knows whether white space stands before it, because `7-1/2` and `7 - 1/2` differ.
import type { Spot } from '../words/spot.ts';

export interface Token extends Spot {
  readonly kind: 'word' | 'number' | 'symbol' | 'quoted' | 'end';
  /** Lower case, typographic marks made plain: `’` is `'`, `−` is `-`, `×` stays. */
  readonly text: string;
  /** White space before it, or the start of the text. */
  readonly gap: boolean;
}

/** The longest formula that is read, in characters. */
export const LONGEST_FORMULA = 10_000;

/** White space, seen or unseen; a number; a word; a text in quotes; any other mark. Groups without names are found faster. */
const PIECE =
  /([\s\u00a0\u00ad\u200b-\u200f\u2060\ufeff]+)|(\d{1,3}(?:,\d{3})+(?![\d])(?:\.\d+)?|\d+\.\d+|\d+|\.\d+|[½⅓⅔¼¾⅛⅜⅝⅞])|([\p{L}_][\p{L}\p{Nd}_]*(?:['’][\p{L}]+)*)|(["“](?=[\p{L}])[^"”“]*["”])|(?:>=|<=|!=|\^[23](?!\d)|[\s\S])/uy;

const PLAIN_MARK: Readonly<Record<string, string>> = {
  '−': '-',
  '–': '-',
  '—': '-',
  '’': "'",
  '‘': "'",
  '′': "'",
  '”': '"',
  '“': '"',
  '″': '"',
  '∙': '×',
  '·': '×',
  '*': '×',
  '>=': '≥',
  '<=': '≤',
  '!=': '≠',
  '^2': '²',
  '^3': '³',
};

/** The tokens of a text, closed by one of kind `end`. Never fails: any character is at least a symbol. */
export function tokensOf(text: string): readonly Token[] {
  const tokens: Token[] = [];
  let gap = true;
  PIECE.lastIndex = 0;
  while (PIECE.lastIndex < text.length) {
    const from = PIECE.lastIndex;
    if (text.charCodeAt(from) === BLANK) {
      PIECE.lastIndex = from + 1;
      gap = true;
      continue;
    }
    const plainTo = endOfPlainWord(text, from);
    if (plainTo > 0) {
      PIECE.lastIndex = plainTo;
      const word = spelled(text.slice(from, plainTo));
      tokens.push({ kind: 'word', text: word, from, to: plainTo, gap });
      gap = false;
      continue;
    }
    const found = PIECE.exec(text);
    if (!found) break;
    const to = PIECE.lastIndex;
    const { 0: symbol, 1: space, 2: number, 3: word, 4: quoted } = found;
    if (space !== undefined) {
      gap = true;
      continue;
    }
    const last = tokens[tokens.length - 1];
    if (number !== undefined) tokens.push({ kind: 'number', text: number, from, to, gap });
    else if (word !== undefined) {
      // `12x4`, `8h30`: the letter right after a number stands alone before the next number.
      const tight = !gap && (last?.kind === 'number' || last?.text === "'" || last?.text === '"');
      // `rows x16ft`: the same after a blank.
      const crossed = gap && /^x\d/i.test(word);
      const end = (tight && /^[xh]\d/i.test(word)) || crossed ? from + 1 : to;
      PIECE.lastIndex = end;
      tokens.push({ kind: 'word', text: plainWord(text.slice(from, end)), from, to: end, gap });
    } else if (quoted !== undefined && last?.kind !== 'number') {
      tokens.push({ kind: 'quoted', text: quoted.slice(1, -1), from, to, gap });
    } else if (quoted !== undefined) {
      // An inch mark after a number, not the start of a text in quotes.
      PIECE.lastIndex = from + 1;
      tokens.push({ kind: 'symbol', text: '"', from, to: from + 1, gap });
    } else {
      if (symbol === '&') {
        tokens.push({ kind: 'word', text: 'and', from, to, gap });
        gap = false;
        continue;
      }
      // A full stop right after a word belongs to an abbreviation: `sq. ft.`.
      if (symbol === '.' && last?.kind === 'word' && !gap) continue;
      tokens.push({ kind: 'symbol', text: PLAIN_MARK[symbol] ?? symbol, from, to, gap });
    }
    gap = false;
  }
  tokens.push({ kind: 'end', text: '', from: text.length, to: text.length, gap: true });
  return tokens;
}

const BLANK = 32;
const LOWER_A = 97;
const LOWER_Z = 122;

/**
 * Where a word of small plain letters ends that stands before a blank or the end of the text: as most do, and
 * they need no expression. 0 where it is something else.
 */
function endOfPlainWord(text: string, from: number): number {
  let to = from;
  let code = text.charCodeAt(to);
  while (code >= LOWER_A && code <= LOWER_Z) code = text.charCodeAt(++to);
  return to > from && (code === BLANK || to === text.length) ? to : 0;
}

/** The tokens of a formula; none of one that is too long to be read. */
export function formulaTokens(text: string): readonly Token[] {
  return tokensOf(text.length > LONGEST_FORMULA ? '' : text);
}

/** The words of a name as the lexer sees them: its key in the tries. An article in front is dropped. */
export function nameWords(name: string): readonly string[] {
  const words = tokensOf(name)
    .slice(0, -1)
    .map((t) => t.text);
  return words.length > 1 && ARTICLES.has(words[0] ?? '') ? words.slice(1) : words;
}

export const ARTICLES: ReadonlySet<string> = new Set(['the', 'a', 'an']);

function plainWord(word: string): string {
  const low = word.toLowerCase();
  return spelled(low.includes('’') ? low.replaceAll('’', "'") : low);
}

/** Words of the trade that two countries spell differently: one word, whoever writes it. */
const SPELLINGS: ReadonlyMap<string, string> = new Map(
  `labor labour laborer labourer laborers labourers color colour colors colours gray grey center centre
   centers centres aluminum aluminium molding moulding moldings mouldings fiber fibre plow plough
   neighbor neighbour gage gauge pct percent`
    .split(/\s+/)
    .flatMap((word, i, all) => (i % 2 === 0 ? [[word, all[i + 1] ?? word] as const] : [])),
);

function spelled(word: string): string {
  return SPELLINGS.get(word) ?? word;
}
