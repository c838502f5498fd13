// Putting the parts of a template at the end of a notebook, each under a name of its own.
import type { NamedCell, PartName } from '../language/reading.ts';
import { isAtFault } from './at-fault.ts';
import type { Finding, Splice } from './document.ts';
import { type Edits, NOTHING, isRefused, refused } from './edits.ts';
import { type Rewritten, keptReadings } from './kept-readings.ts';
import { lineBreak } from './lines.ts';
import { nameKey } from './names.ts';
import type { NotebookText } from './notebook-text.ts';
import { lineEnd, trimmed } from './outline.ts';
import { LONGEST_TEXT, readNotebook } from './read-notebook.ts';
import { type Known, renamePartEdit, withTexts } from './renames.ts';
import { tried } from './trying.ts';
import { settingsOf, worked } from './worked-cells.ts';

/** What comes in has identities from here on while readings are compared; those below nought are the rows' of tables. */
const COMING = 1_000_000_000;

export interface TemplatePart {
  readonly name: string;
  /** The part's text, from its heading to the next part. */
  readonly text: string;
}

/** The parts of a template, or why it has none. */
export function templateParts(text: string): readonly TemplatePart[] | Finding {
  const template = readNotebook(text) as NotebookText;
  const refusal = templateRefusal(template);
  if (refusal) return refusal;
  return template.parts
    .slice(1)
    .map((part) => ({ name: part.name, text: template.text.slice(part.spot.from, part.spot.to) }));
}

export function insertTemplateEdit(known: Known, text: string): Edits {
  const first = readNotebook(text) as NotebookText;
  const refusal = templateRefusal(first);
  if (refusal) return refusal;
  const renamed = withOwnNames(first, known.notebook);
  if (isRefused(renamed)) return renamed;
  const fresh = besideNames(renamed, known.notebook);
  if (isRefused(fresh)) return fresh;
  const parts = fresh.sections.filter((s) => s.front === null);
  // Keys and ids of things that aren't in the notebook yet: none that it could have.
  const texts = readingsKept(
    known,
    parts.map((s) => ({ key: `new-${s.key}`, name: s.name })),
    parts.flatMap((s) =>
      s.cells.map((c) => ({ id: COMING + c.id, name: c.name, part: `new-${s.key}` })),
    ),
  );
  if (isRefused(texts)) return texts;
  const { notebook } = known;
  const counted = countedSplices(notebook, fresh.settings.counted);
  return [
    withTexts(known, texts, {
      ...NOTHING,
      say: `Insert ${parts.map((s) => s.name).join(', ')}`,
      splices: [...counted, atEnd(notebook, fresh)],
      adds: parts.flatMap((s) =>
        s.cells.map((c) => ({ part: s.name, name: c.name, formula: c.formula })),
      ),
      parts: [...notebook.sections, ...fresh.sections]
        .filter((s) => s.front === null)
        .map((s) => s.name),
      prose: counted.length > 0 ? 'free' : 'grows',
    }),
  ];
}

function templateRefusal(template: NotebookText): Finding | null {
  if (template.refusal) return refused(template.refusal.code, template.refusal.message, null, null);
  if (template.sections.length < 2) {
    return refused(
      'no-parts',
      'There is no part in this template: a line that begins with ##.',
      null,
      null,
    );
  }
  if (template.sections[0].cells.length > 0) {
    return refused(
      'cells-before-parts',
      'This template has cells before its first part; they would be left behind. Put them under a part.',
      null,
      null,
    );
  }
  return null;
}

/** The template with `Landing 2` where the notebook already has a Landing; what it says of its own parts follows. */
function withOwnNames(template: NotebookText, notebook: NotebookText): NotebookText | Finding {
  const taken = new Set(
    notebook.sections.filter((s) => s.front === null).map((s) => nameKey(s.name)),
  );
  let now = template;
  for (const { key, name } of template.sections) {
    if (key === '') continue;
    let own = name;
    for (let n = 2; taken.has(nameKey(own)); n++) own = `${name} ${n}`;
    taken.add(nameKey(own));
    if (own === name) continue;
    const part = now.part(key);
    if (!part) throw new Error(`no part ${key} in the template`);
    const known = knownOf(now, notebook.settings.counted);
    const renamed = tried(now, renamePartEdit(known, part, own), LONGEST_TEXT);
    if (isRefused(renamed)) return renamed;
    now = renamed.notebook;
  }
  return now;
}

/**
 * The template with what it says of its own cells still said of them beside the notebook's names:
 * where both have a `charge rate`, the template's is written with its part's name.
 */
function besideNames(template: NotebookText, notebook: NotebookText): NotebookText | Finding {
  const known = knownOf(template, notebook.settings.counted);
  const { vocabulary } = known;
  const own = vocabulary.parts;
  const cells = notebook.sections.flatMap((s) =>
    s.cells.map((c) => ({ id: COMING + c.id, name: c.name, part: besideKey(s.key) })),
  );
  const parts = notebook.sections.flatMap((s) =>
    s.front ? [] : [{ key: besideKey(s.key), name: s.name }],
  );
  const texts = keptReadings({
    ...known,
    atFault: (saying) => known.atFault(saying),
    bring() {
      vocabulary.setParts([...parts, ...own]);
      for (const cell of cells) vocabulary.add(cell);
    },
    takeBack() {
      for (const cell of cells) vocabulary.remove(cell.id);
      vocabulary.setParts(own);
    },
    names: [...parts, ...cells].map((thing) => thing.name),
    rewrite: () => null,
  });
  if (isRefused(texts)) return texts;
  const edit = withTexts(known, texts, { ...NOTHING, say: 'Read as before', splices: [] });
  const result = tried(template, [edit], LONGEST_TEXT);
  return isRefused(result) ? result : result.notebook;
}

/** Keys of the notebook's parts among the template's; what stands above the first part of either is the same. */
function besideKey(key: string): string {
  return key === '' ? '' : `beside-${key}`;
}

function knownOf(notebook: NotebookText, further: readonly string[]): Known {
  const workings = worked(notebook, settingsOf(notebook, further));
  return {
    notebook,
    vocabulary: workings.vocabulary,
    atFault: (saying) => isAtFault(workings, saying),
  };
}

/** The edits that add a cell, with every text that its name would have made read otherwise. */
export function withNewCell(known: Known, part: string, name: string, edits: Edits): Edits {
  if (isRefused(edits)) return edits;
  const texts = readingsKept(known, [], [{ id: COMING, name, part }]);
  if (isRefused(texts)) return texts;
  return edits.map((edit) => withTexts(known, texts, edit));
}

/** The texts that have to be written anew when these parts and cells come in. */
function readingsKept(
  known: Known,
  parts: readonly PartName[],
  cells: readonly NamedCell[],
): readonly Rewritten[] | Finding {
  const { notebook, vocabulary } = known;
  const before = vocabulary.parts;
  return keptReadings({
    notebook,
    vocabulary,
    bring() {
      vocabulary.setParts([...before, ...parts]);
      for (const cell of cells) vocabulary.add(cell);
    },
    takeBack() {
      for (const cell of cells) vocabulary.remove(cell.id);
      vocabulary.setParts(before);
    },
    names: [...parts, ...cells].map((thing) => thing.name),
    rewrite: () => null,
    atFault: (saying) => known.atFault(saying),
  });
}

function atEnd(notebook: NotebookText, template: NotebookText): Splice {
  const { text } = notebook;
  const end = lineBreak(text);
  const spot = trimmed(template.text, template.starts[1], template.text.length);
  const parts = template.text.slice(spot.from, spot.to).replace(/\r\n|\r|\n/g, end);
  const content = trimmed(text, notebook.start, text.length);
  const gap = content.to === content.from ? '' : `${end}${end}`;
  const tail = content.to === text.length && text.length > 0 ? '' : end;
  const follows = text.slice(content.to).startsWith(end);
  return { from: content.to, to: content.to, insert: `${gap}${parts}${follows ? '' : tail}` };
}

/** The counted things that the template names and the notebook doesn't, added to its settings. */
function countedSplices(notebook: NotebookText, wanted: readonly string[]): readonly Splice[] {
  const missing = wanted.filter((noun) => !notebook.settings.counted.includes(noun));
  if (missing.length === 0) return [];
  const { text, titleSpot, start } = notebook;
  const end = lineBreak(text);
  const front = text.slice(0, notebook.starts[1] ?? text.length);
  const line = /^[ \t]*(?:[-+*]|\d+[.)])[ \t]+counted things:([^\r\n]*)/im.exec(front);
  if (line) {
    const at = line.index + line[0].trimEnd().length;
    const comma = line[1].trim() === '' ? ' ' : ', ';
    return [{ from: at, to: at, insert: comma + missing.join(', ') }];
  }
  const setting = `- Counted things: ${missing.join(', ')}`;
  if (!titleSpot) return [{ from: start, to: start, insert: `${setting}${end}${end}` }];
  const titleEnd = underlined(text, titleSpot.to);
  const content = trimmed(text, start, text.length);
  if (content.to <= titleEnd) {
    // Nothing but a title: the parts follow at the same place.
    return [{ from: content.to, to: content.to, insert: `${end}${end}${setting}` }];
  }
  // A line of prose right below would run into the item.
  const at = lineEnd(text, titleEnd);
  return [{ from: at, to: at, insert: `${end}${setting}${end}${end}` }];
}

/** The end of a title's underline where it has one (`===`), else of the title. */
function underlined(text: string, titleEnd: number): number {
  const below = /^[^\r\n]*(?:\r\n|\r|\n) {0,3}=+[ \t]*(?=[\r\n]|$)/.exec(text.slice(titleEnd));
  return titleEnd + (below ? below[0].length : 0);
}
