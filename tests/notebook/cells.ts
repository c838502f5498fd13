// Looking into notebooks and estimates from tests: cells by name, and what a notebook says apart from its ids.
import type { Cell, Finding, Notebook } from '../../src/notebook/document.ts';
import type { Estimate } from '../../src/notebook/estimate.ts';
import { type Applied } from '../../src/notebook/estimate.ts';

export function cellsIn(notebook: Notebook): readonly Cell[] {
  return notebook.parts.flatMap((part) =>
    part.blocks.flatMap((block) => (block.kind === 'cell' ? [block.cell] : [])),
  );
}

/** `Name: formula` of every cell, a part's name before it where it has one. */
export function linesOf(notebook: Notebook): readonly string[] {
  const names = new Map(notebook.parts.map((part) => [part.key, part.name]));
  return cellsIn(notebook).map((cell) => {
    const part = names.get(cell.part);
    return `${part ? `${part} / ` : ''}${cell.name}: ${cell.formula}`;
  });
}

/** The cell of this name, or of this part and name written `Landing / Slab length`. */
export function cellNamed(notebook: Notebook, said: string): Cell {
  const [part, name] = said.includes(' / ') ? said.split(' / ') : [null, said];
  const keys = notebook.parts.filter((p) => part === null || p.name === part).map((p) => p.key);
  const found = cellsIn(notebook).filter((c) => c.name === name && keys.includes(c.part));
  if (found.length !== 1) throw new Error(`${found.length} cells are called ${said}`);
  return found[0];
}

/** All a notebook says, without the ids and keys, which hang on its history. */
export function saidBy(notebook: Notebook): unknown {
  const withoutIds = ({ id: _id, part: _part, ...rest }: Cell): unknown => rest;
  return {
    text: notebook.text,
    title: notebook.title,
    titleSpot: notebook.titleSpot,
    settings: notebook.settings,
    parts: notebook.parts.map(({ name, nameSpot, spot, blocks }) => ({
      name,
      nameSpot,
      spot,
      blocks: blocks.map((b) => (b.kind === 'cell' ? withoutIds(b.cell) : b)),
    })),
    findings: notebook.findings.map(({ code, message, spot }) => ({ code, message, spot })),
  };
}

export function codesOf(findings: readonly Finding[]): readonly string[] {
  return findings.map((finding) => finding.code);
}

/** The change that was made; a test that expects one should hear why it wasn't. */
export function done(result: Applied | Finding | null): Applied {
  if (result === null) throw new Error('nothing was done');
  if ('code' in result) throw new Error(`refused: ${result.code}: ${result.message}`);
  return result;
}

export function refusal(result: Applied | Finding): Finding {
  if (!('code' in result)) throw new Error(`not refused: ${result.change.say}`);
  return result;
}

export function shownIn(estimate: Estimate, said: string): string | null {
  return estimate.shown(cellNamed(estimate.notebook, said).id)?.text ?? null;
}
