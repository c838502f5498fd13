// The working as a proof for a client or an inspector: of which notebook, which part and which day it is, then the whole
// working with its sources and cautions.
import type { Working } from './step.ts';
import { workingText } from './text.ts';

export interface ProofHead {
  /** Of the notebook. */
  readonly title: string;
  /** In which the cell stands; empty above the first. */
  readonly part: string;
  /** The day, as it is to be read. */
  readonly day: string;
}

/** `Kestrel Court garden, Landing`, and when it was worked. */
export function proofHead({ title, part, day }: ProofHead): readonly [place: string, when: string] {
  const place = [title, part].filter((text) => text !== '').join(', ');
  return [place === '' ? 'A notebook without a title' : place, `As the notebook stood on ${day}`];
}

export function proofText(working: Working, head: ProofHead): string {
  return `${proofHead(head).join('\n')}\n\n${workingText(working)}`;
}
