// Published figures, copied with where they stand, and how one of them becomes a notebook that works it.
import concrete from './concrete.json' with { type: 'json' };
import deck from './deck.json' with { type: 'json' };
import guards from './guards.json' with { type: 'json' };
import lumber from './lumber.json' with { type: 'json' };
import money from './money.json' with { type: 'json' };
import stairs from './stairs.json' with { type: 'json' };
import walls from './walls.json' with { type: 'json' };

interface Line {
  readonly name: string;
  readonly formula: string;
}

/** A formula and what the source, or arithmetic on what it gives, says it comes to. */
export interface Check extends Line {
  /** A number in `unit`, yes or no, or the value as it is shown. */
  readonly value: number | boolean | string;
  readonly unit?: string;
  /** How far the published figure may be off; 0 asks for the very number. */
  readonly tolerance?: number;
}

export interface Fact {
  readonly id: string;
  readonly source: string;
  /** Null where the source names none. */
  readonly edition: string | null;
  readonly where: string;
  readonly givens: readonly Line[];
  readonly checks: readonly Check[];
}

export const FACTS: Readonly<Record<string, readonly Fact[]>> = {
  concrete,
  deck,
  guards,
  lumber,
  money,
  stairs,
  walls,
};

/** The notebook of one fact: its givens with their source, then its checks, which may use those above them. */
export function notebookOf(fact: Fact): string {
  const source = [fact.source, fact.edition, fact.where].filter(Boolean).join(', ');
  return [
    `# ${fact.id}`,
    '## Check',
    ...fact.givens.map((given) => `- ${given.name}: ${given.formula}\n  - from: ${source}`),
    ...fact.checks.map((check) => `- ${check.name}: ${check.formula}`),
    '',
  ].join('\n');
}
