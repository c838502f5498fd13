// A new name leaves every formula reading as it did. Where the name would take words that stood for something
// else, what stood there is written with its part's name, or in brackets, and the change says so.
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
  said,
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
  /** Cells whose formulas can't be read now: their reading is not protected. */
  atFault(cell: CellId): boolean;
}

/** Every text that has to be written anew, or why the names can't be brought in. */
export function keptReadings(wish: NewNames): readonly Rewritten[] | Finding {
  const { notebook, vocabulary } = wish;
  const before: { saying: Saying; text: string; named: string; mentions: readonly Mention[] }[] =
    [];
  for (const saying of sayingsOf(notebook)) {
    const text = wish.rewrite(saying);
    if (text === null && !wish.names.some((name) => mayName(saying.text, name))) continue;
    before.push({
      saying,
      text: text ?? saying.text,
      named: namedIn(saying.text, saying, vocabulary),
      mentions: mentionsIn(saying.text, saying, vocabulary),
    });
  }
  const rewritten: Rewritten[] = [];
  wish.bring();
  try {
    for (const { saying, text, named, mentions } of before) {
      const same = (candidate: string): boolean => namedIn(candidate, saying, vocabulary) === named;
      if (same(text) || wish.atFault(saying.cell)) {
        if (text !== saying.text) rewritten.push({ saying, text, mended: [] });
        continue;
      }
      const mended = mend(text, mentions, saying, vocabularyOf(saying, vocabulary), same);
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

/**
 * Says the mentions again, in the text as it is to be: `old` are the mentions in their order before the change.
 * Those that no longer stand as they did are tried with their part's name, in brackets, and with both.
 */
function mend(
  text: string,
  old: readonly Mention[],
  saying: Saying,
  vocabulary: Vocabulary,
  same: (candidate: string) => boolean,
): Rewritten | null {
  const now = mentionsIn(text, saying, vocabulary);
  const spots = placesOf(text, old, vocabulary);
  if (!spots) return null;
  const lost = spots.filter(
    (s) => !now.some((m) => m.from <= s.from && m.to === s.to && m.cell === s.cell),
  );
  const ways = [
    (m: Mention, typed: string) => `${partOf(m.cell, vocabulary)}${typed}`,
    (_: Mention, typed: string) => `(${typed})`,
    (m: Mention, typed: string) => `(${partOf(m.cell, vocabulary)}${typed})`,
  ];
  for (const group of [lost, spots]) {
    for (const way of ways) {
      const written = group.map((m) => way(m, text.slice(m.from, m.to)));
      const candidate = said(
        text,
        group.map((m, i) => ({ from: m.from, to: m.to, insert: written[i] })),
      );
      if (candidate !== text && same(candidate)) {
        const mended = written.filter((w, i) => w !== text.slice(group[i].from, group[i].to));
        return { saying, text: candidate, mended };
      }
    }
  }
  return null;
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

function partOf(cell: CellId, vocabulary: Vocabulary): string {
  const part = vocabulary.partName(vocabulary.cell(cell)?.part ?? '');
  return part === '' ? '' : `${part} `;
}
