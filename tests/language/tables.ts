// One formula worked beside some tables: text in, text out.
import { Estimate } from '../../src/notebook/estimate.ts';

/** Invented bays and spans of Kestrel Court; the spans are no published ones. */
export const TABLES = `# Kestrel Court

- Counted things: bay

## Landing

- Thickness: 4 in
- Waste: 10%
- Joist spacing: 16 in
- Joist length: 12 ft
- Species: hem-fir
  - choices: species of joist spans
- Finish: broom
  - choices: broom, steel trowel, exposed aggregate
- Slab bays:

  | bay | length    | width | volume: length by width by thickness | bags |
  |-----|-----------|-------|--------------------------------------|------|
  | A   | 12 ft     | 4 ft  |                                      | 12 bags |
  | B   | 8 ft 6 in | 4 ft  |                                      | 9 bags |
  | C   | 6 ft      | 3 ft  | 9 cubic feet                         | ? bags |

- Joist spans:

  | species       | spacing | size | span      | price       |
  |---------------|---------|------|-----------|-------------|
  | hem-fir       | 12 in   | 2x8  | 12 ft     | $1.20 per ft |
  | hem-fir       | 16 in   | 2x8  | 11 ft     | $1.20 per ft |
  | hem-fir       | 16 in   | 2x10 | 13 ft 5 in | $1.75 per ft |
  | southern pine | 16 in   | 2x8  | 12 ft 2 in | $1.30 per ft |
  | southern pine, treated | 16 in | 2x8 | 11 ft 8 in |       |

- Odd ones:

  | what | size  | mixed |
  |------|-------|-------|
  | X    | 4 ft  | 4 ft  |
  | Y    | 2 m   | 3 lb  |

- Nothing yet:

  | size |
  |------|

- Volume: 1 cubic yard

## Deck

- Slab bays plan: 3
- Total of spans: 5 ft
`;

export interface WorkedOut {
  readonly shown: string | null;
  readonly exact: string | null;
  readonly readAs: string;
  readonly code: string | null;
  readonly message: string;
  readonly spots: readonly string[];
  readonly fixes: readonly string[];
}

/** Works `formula` as the cell Answer at the end of the Landing. */
export function beside(formula: string, text = TABLES): WorkedOut {
  const estimate = new Estimate(text.replace('\n## Deck', `- Answer: ${formula}\n\n## Deck`));
  const cell = estimate.notebook.parts
    .flatMap((p) => p.blocks)
    .flatMap((b) => (b.kind === 'cell' && b.cell.name === 'Answer' ? [b.cell] : []))[0];
  if (!cell) throw new Error(`no cell Answer came of: ${formula}`);
  const { outcome, reading } = estimate.state(cell.id);
  const report = outcome.kind === 'fault' ? outcome.report : null;
  const waits =
    outcome.kind === 'waiting' || outcome.kind === 'unknown'
      ? `waits for ${outcome.for.map((id) => estimate.state(id).input.name).join(', ')}`
      : null;
  const shown = estimate.shown(cell.id);
  return {
    shown: shown?.text ?? waits,
    exact: shown?.exact ?? null,
    readAs: reading.sentence,
    code: report?.code ?? null,
    message: report ? `${report.headline} ${report.explanation}` : '',
    spots: (report?.spots ?? []).map((s) => formula.slice(s.from, s.to)),
    fixes: (report?.fixes ?? []).map((fix) => fix.formula),
  };
}
