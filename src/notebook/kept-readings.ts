// A new name leaves every formula reading as it did. Where the name would take words that stood for something
// else, what stood there is written with its part's name, or in brackets, and the change says so.
import { canBeRead } from '../language/marks.ts';
import type { CellId } from '../language/tree.ts';
import type { Vocabulary } from '../language/vocabulary.ts';
import type { Finding } from './document.ts';
import { refused } from './edits.ts';
import {
  type Mention,
  type Saying,
  mayName,
  mentionsIn,
  namedIn,
  namesIn,
  said,
  sayNamed,
  scanOf,
  sayingsOf,
  vocabularyOf,
} from './mentions.ts';
import type { NotebookText } from './notebook-text.ts';

/** One text as it has to be written after the change. */
export interface Rewritten {
  readonly saying: Saying;
  readonly text: string;
  /** What was bracketed or given its part's name, as it is now written; empty for a plain renaming. */
  readonly mended: readonly string[];
}

export interface NewNames {
  readonly notebook: NotebookText;
  /** As the names are before the change; left as it was found. */
  readonly vocabulary: Vocabulary;
  /** Brings the new names in, and takes them out again. */
  bring(): void;
  takeBack(): void;
  /** The new names: only texts that hold all words of one of them are looked at. */
  readonly names: readonly string[];
  /** How a text is to be written under the new names; null where it stays. Asked under the old ones. */
  rewrite(saying: Saying): string | null;
  /** What can't be read now: its reading is not protected. */
  atFault(saying: Saying): boolean;
  /** The texts to look at; every one of the notebook unless told otherwise. */
  readonly sayings?: Iterable<Saying>;
  /** Where a text stands afterwards, when that is another cell or part: it is moved, or it is a copy. */
  later?(saying: Saying): Saying;
  /** Which cell or column is meant afterwards by what means this one now: in a copy, the copy of it. */
  meant?(id: CellId): CellId;
}

/** Every text that has to be written anew, or why the names can't be brought in. */
export function keptReadings(wish: NewNames): readonly Rewritten[] | Finding {
  const { notebook, vocabulary } = wish;
  const before: {
    saying: Saying;
    later: Saying;
    text: string;
    named: string;
    mentions: readonly Mention[];
    unread: boolean;
  }[] = [];
  const meant = (id: CellId): CellId => wish.meant?.(id) ?? id;
  for (const saying of wish.sayings ?? sayingsOf(notebook)) {
    const text = wish.rewrite(saying);
    const later = wish.later?.(saying) ?? saying;
    const stays = text === null && later === saying;
    if (stays && !wish.names.some((name) => mayName(saying.text, name))) continue;
    const partLater = (key: string): string => (key === saying.part ? later.part : key);
    const copied = later.cell === saying.cell ? (key: string) => key : partLater;
    before.push({
      saying,
      later,
      text: text ?? saying.text,
      named: sayNamed(namesIn(saying.text, saying, vocabulary), meant, copied),
      mentions: mentionsIn(saying.text, saying, vocabulary).map((m) => ({
        ...m,
        cell: meant(m.cell),
      })),
      // A picture is no number: what can't be read in one keeps no name from being given.
      unread: saying.where === 'picture' && isUnread(saying, vocabulary),
    });
  }
  const rewritten: Rewritten[] = [];
  wish.bring();
  try {
    for (const { saying, later, text, named, mentions, unread } of before) {
      const same = (candidate: string): boolean => namedIn(candidate, later, vocabulary) === named;
      if (same(text) || unread || (saying.where !== 'picture' && wish.atFault(saying))) {
        if (text !== saying.text) rewritten.push({ saying, text, mended: [] });
        continue;
      }
      const own = vocabularyOf(later, vocabulary);
      const mended = mend(text, mentions, { saying, later, vocabulary, own, same });
      if (!mended) {
        const cell = vocabulary.cell(saying.cell)?.name ?? '';
        return refused(
          'name-changes-reading',
          `With this name the formula of "${cell}" would read differently, and no brackets help. Try another name.`,
          saying.part,
          saying.cell,
        );
      }
      rewritten.push(mended);
    }
  } finally {
    wish.takeBack();
  }
  return rewritten;
}

function isUnread(saying: Saying, vocabulary: Vocabulary): boolean {
  return !canBeRead(scanOf(saying.text, saying, vocabulary));
}

/**
 * Says the mentions again, in the text as it is to be: `old` are the mentions in their order before the change.
 * Those that no longer stand as they did are tried with their part's name, in brackets, and with both.
 */
function mend(text: string, old: readonly Mention[], from: Mended): Rewritten | null {
  const { saying, later, vocabulary, own, same } = from;
  const now = mentionsIn(text, later, vocabulary);
  const spots = placesOf(text, old, own);
  if (!spots) return null;
  const lost = spots.filter(
    (s) => !now.some((m) => m.from <= s.from && m.to === s.to && m.cell === s.cell),
  );
  const withPart = (m: Mention): string => partBefore(text, m, own);
  const ways = [
    (m: Mention, typed: string) => `${withPart(m)}${typed}`,
    (_: Mention, typed: string) => `(${typed})`,
    (m: Mention, typed: string) => `(${withPart(m)}${typed})`,
  ];
  const written = (group: readonly Mention[], way: Way): string =>
    said(
      text,
      group.map((m) => ({ from: m.from, to: m.to, insert: way(m, text.slice(m.from, m.to)) })),
    );
  for (const group of [lost, spots]) {
    for (const way of ways) {
      if (written(group, way) === text || !same(written(group, way))) continue;
      // Where one name stops the reading all after it are lost, and need no part's name themselves.
      const needed = group.reduce((kept: readonly Mention[], m) => {
        if (way !== ways[0]) return kept;
        const fewer = kept.filter((other) => other !== m);
        return same(written(fewer, way)) ? fewer : kept;
      }, group);
      const words = needed.map((m) => [way(m, text.slice(m.from, m.to)), m] as const);
      const mended = words.filter(([w, m]) => w !== text.slice(m.from, m.to)).map(([w]) => w);
      return { saying, text: written(needed, way), mended };
    }
  }
  return null;
}

type Way = (mention: Mention, typed: string) => string;

interface Mended {
  readonly saying: Saying;
  /** The saying where it stands afterwards. */
  readonly later: Saying;
  readonly vocabulary: Vocabulary;
  /** What can be named there. */
  readonly own: Vocabulary;
  readonly same: (candidate: string) => boolean;
}

/** Where the mentions stand in the text as it is to be: each by its name's words, in order. */
function placesOf(
  text: string,
  old: readonly Mention[],
  vocabulary: Vocabulary,
): readonly Mention[] | null {
  const low = text.toLowerCase();
  const places: Mention[] = [];
  let at = 0;
  for (const { cell } of old) {
    const name = vocabulary.cell(cell)?.name.toLowerCase();
    if (name === undefined) return null;
    const from = low.indexOf(name, at);
    if (from < 0) return null;
    at = from + name.length;
    places.push({ from, to: at, cell });
  }
  return places;
}

/**
 * The part's name to go before a mention; nothing where it stands there already, or where a column is named,
 * which is known in its table alone.
 */
function partBefore(text: string, { from, cell }: Mention, vocabulary: Vocabulary): string {
  if (cell < 0) return '';
  const part = vocabulary.partName(vocabulary.cell(cell)?.part ?? '');
  const there = text.slice(0, from).trimEnd().toLowerCase().endsWith(part.toLowerCase());
  return part === '' || there ? '' : `${part} `;
}
