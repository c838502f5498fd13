// The blocks of a part as they are drawn: when they say otherwise, in which stretches they are laid out, and who is who.
import type { Block, Part } from '../notebook/document.ts';
import { cellSaysOtherwise } from './story-cell.ts';

/** In a long notebook so many blocks at a time are laid out when they come into sight. */
const STRETCH = 60;

/** Has anything changed that the part draws? Where it stands in the text is not drawn. */
export function saysOtherwise(now: Part, before: Part | undefined): boolean {
  if (!before || now.key !== before.key || now.name !== before.name) return true;
  if (now.blocks.length !== before.blocks.length) return true;
  return now.blocks.some((block, place) => {
    const was = before.blocks[place];
    if (block.kind !== was?.kind) return true;
    switch (block.kind) {
      case 'cell':
        return was.kind !== 'cell' || cellSaysOtherwise(block.cell, was.cell);
      case 'heading':
        return was.kind !== 'heading' || block.text !== was.text || block.level !== was.level;
      case 'prose':
        return was.kind !== 'prose' || block.markdown !== was.markdown;
    }
  });
}

export function stretchesOf(
  blocks: readonly Block[],
): readonly (readonly [number, readonly Block[]])[] {
  const stretches: [number, readonly Block[]][] = [];
  for (let from = 0; from < blocks.length; from += STRETCH) {
    stretches.push([from, blocks.slice(from, from + STRETCH)]);
  }
  return stretches;
}

export function keyOf(block: Block, place: number): string {
  return block.kind === 'cell' ? `cell ${block.cell.id}` : `${block.kind} ${place}`;
}
