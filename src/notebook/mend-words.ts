// Mends by what they do: a remark set or taken away, a stretch of the text written otherwise.
import type { CellId } from '../language/tree.ts';
import type { Finding, Splice } from './document.ts';
import type { Mend } from './mends.ts';

export function setRemark(say: string, cell: CellId, word: string, text: string): Mend {
  return { say, does: { kind: 'remark', cell, word, text } };
}

export function withoutRemark(say: string, cell: CellId, word: string): Mend {
  return { say, does: { kind: 'no-remark', cell, word } };
}

export function texts(say: string, ...splices: readonly Splice[]): Mend {
  return { say, does: { kind: 'text', splices } };
}

export function away(say: string, { spot }: Finding): Mend {
  return texts(say, { from: spot?.from ?? 0, to: spot?.to ?? 0, insert: '' });
}
