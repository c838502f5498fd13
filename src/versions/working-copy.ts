// A new notebook out of an old one: a snapshot taken up again, a copy to try things in, the next client's. Nothing is
// written over; each copy says what it was made from, on paper too, and is another notebook than the one it came from.
import type { Notebook } from '../notebook/document.ts';
import { changed } from '../notebook/change.ts';
import { lineBreak, oneLine } from '../notebook/lines.ts';
import { readNotebook } from '../notebook/read-notebook.ts';
import { fingerprint } from './hash.ts';
import { type Identities, type KeptIdentities, keptIdentities, withNew } from './identities.ts';
import type { Snapshot } from './snapshot.ts';

export interface Origin {
  readonly kind: 'restored' | 'trial' | 'duplicate';
  /** What it was made from: a snapshot's name, or the title of a notebook. */
  readonly name: string;
  /** Of a snapshot. */
  readonly seal: string | null;
  readonly date: string;
}

export interface WorkingCopy {
  readonly title: string;
  readonly text: string;
  /** The cells are who they were; new ones get keys that nobody else gives. */
  readonly identities: KeptIdentities;
  readonly origin: Origin;
}

/** `stem` is the copy's own: no other notebook has it. */
export interface CopyNaming {
  readonly stem: string;
  readonly date: string;
}

/** `restored`: to go on from; `trial`: to try what if, and not the estimate that was issued. */
export function copyOfSnapshot(
  kind: 'restored' | 'trial',
  snapshot: Snapshot,
  { stem, date }: CopyNaming,
): WorkingCopy {
  const { name, seal, text, identities } = snapshot;
  const { title } = readNotebook(text);
  return {
    title,
    text,
    identities: { ...identities, stem, next: 1 },
    origin: { kind, name, seal, date },
  };
}

/** For the next client, under a title of its own. */
export function duplicateOf(
  notebook: Notebook,
  identities: Identities,
  title: string,
  { stem, date }: CopyNaming,
): WorkingCopy {
  const kept = keptIdentities(withNew(identities, notebook), notebook);
  const text = titled(notebook, oneLine(title));
  return {
    title: readNotebook(text).title,
    text,
    identities: { ...kept, stem, next: 1 },
    origin: { kind: 'duplicate', name: notebook.title, seal: null, date },
  };
}

/** What stands on every sheet of a copy. */
export function sayOrigin({ kind, name, seal, date }: Origin): string {
  const mark = seal === null ? '' : ` (${fingerprint(seal)})`;
  switch (kind) {
    case 'restored':
      return `Taken up again from "${name}"${mark} on ${date}.`;
    case 'trial':
      return `A copy of "${name}"${mark} to try things in, made ${date}. It is not the estimate that was issued.`;
    case 'duplicate':
      return `Made from "${name}" on ${date}.`;
  }
}

function titled(notebook: Notebook, title: string): string {
  const { text, titleSpot } = notebook;
  if (title === '') return text;
  if (titleSpot) {
    const splices = [{ ...titleSpot, insert: title }];
    return changed(text, { say: `Call it ${title}`, splices });
  }
  const end = lineBreak(text);
  return `# ${title}${end}${end}${text}`;
}
