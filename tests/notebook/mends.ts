// Everything that can be pointed out beside faults that a formula has by itself: circles, cost lines, values by hand,
// names, remarks, tables, lines of the text. Invented sizes and prices.
import type { MendCase } from './mending.ts';

type More = Pick<MendCase, 'asks' | 'none'>;

const at = (code: string, cell: string | null, text: string, more: More = {}): MendCase => ({
  code,
  cell,
  text,
  ...more,
});

const OPEN = { asks: ['not-yet-known'] } as const;
const part = (lines: string): string => `# Kestrel Court\n\n## Landing\n\n${lines}`;
const table = (rows: string): string =>
  part(`- Bays:\n\n  | what | long | wide | area: long by wide |\n  |---|---|---|---|\n${rows}`);
const SIZED = '- Run: 12 ft\n- Price: $5 per bag\n- Width: 4 ft\n';
const OWNER = 'Only its owner can say.';

export const NOTEBOOK_MENDS: readonly MendCase[] = [
  at(
    'circle',
    'Deck area',
    part(
      '- Deck area: board count at 2 sq ft per board\n- Board count: waste boards plus 3 boards\n- Waste boards: (deck area at 1 board per 20 sq ft)\n',
    ),
    OPEN,
  ),
  at(
    'circle',
    'Site fee',
    part(
      '- Permit: $100\n  - cost: fee\n- Site fee: 11% of total cost of this part\n  - cost: fee\n',
    ),
    OPEN,
  ),
  at(
    'not-yet-a-cost',
    'Concrete',
    part(
      '- Bag price: $6.48 per bag\n- Bags to buy: 40 bags\n- Concrete: bag price\n  - cost: material\n',
    ),
  ),
  at(
    'not-yet-a-cost',
    'Forms',
    part('- Form price: $2 per ft\n- Run: 24 ft\n- Forms: run plus 3 ft\n  - cost: material\n'),
  ),
  at('not-yet-a-cost', 'Loose', part('- Loose: 3 ft\n  - cost: material\n')),
  at('not-yet-a-cost', 'Extra', part('- Extra: 3 ft\n  - price: overhead\n')),
  at(
    'by-hand-measure',
    'Run',
    part('- Length: 4 ft\n- Run: length plus 3 ft\n  - by hand: $9\n  - from: quote\n'),
  ),
  at(
    'by-hand-unread',
    'Run',
    part('- Length: 4 ft\n- Run: length plus 3 ft\n  - by hand: lenght\n  - from: quote\n'),
  ),
  at(
    'counted-twice',
    'With delivery',
    part(
      '- Concrete: $100\n  - cost: material\n- With delivery: concrete plus $65\n  - cost: material\n',
    ),
  ),
  at(
    'counted-twice',
    'All',
    part(
      '- Concrete: $100\n  - cost: material\n- All: total cost of this part\n  - cost: material\n',
    ),
  ),
  at(
    'fee-twice',
    'Permit',
    '## Frame\n\n- Permit: $180\n  - cost: fee\n\n## Site\n\n- Permit: $246\n  - cost: fee\n',
  ),
  at('same-name', 'Width', part('- Width: 4 ft\n- Width: 14 ft\n')),
  at(
    'same-name',
    'Width',
    part('- Width: 4 ft\n- Width 2: 5 ft\n- Width: 14 ft\n- Sum: width 2 plus 1 ft\n'),
  ),
  at('same-name', 'Bays', part('- Bays:\n\n  | long | long |\n  |---|---|\n  | 4 ft | 5 ft |\n')),
  at('same-part-name', null, '## Landing\n\n- Width: 4 ft\n\n## Landing\n\n- Width: 5 ft\n'),
  at('remark-not-known', 'Width', part('- Width: 4 ft\n  - form: measured on site\n')),
  at('remark-not-known', 'Width', part('- Width: 4 ft\n  - colour: grey\n')),
  at(
    'remark-twice',
    'Width',
    part('- Width: 4 ft\n  - sensible: up to 5 ft\n  - sensible: up to 6 ft\n'),
  ),
  at('money-not-known', 'Permit', part('- Permit: $45\n  - cost: labor cost\n')),
  at('money-not-known', 'Permit', part('- Permit: $45\n  - price: oddments\n')),
  at('money-on-table', 'Bays', `${table('  | small | 4 ft | 3 ft | |\n')}  - cost: material\n`),
  at('cost-and-price', 'Permit', part('- Permit: $45\n  - cost: fee\n  - price: overhead\n')),
  at('formula-goes-on', 'Sum', part('- Width: 4 ft\n- Sum: width\n  plus 3 ft\n')),
  at(
    'picture-not-known',
    'Width',
    part(`${SIZED}  - picture: slab plam for lengths run, widths width\n`),
  ),
  at('picture-not-known', 'Width', part(`${SIZED}  - picture: photo of the yard\n`)),
  at(
    'picture-slot-not-known',
    'Width',
    part(`${SIZED}  - picture: slab plan for lengths run, widths width, baars 16 in\n`),
  ),
  at(
    'picture-slot-not-known',
    'Width',
    part(`${SIZED}  - picture: slab plan for colour grey, lengths run, widths width\n`),
  ),
  at(
    'picture-slot-twice',
    'Width',
    part(`${SIZED}  - picture: slab plan for lengths run, widths width, widths run\n`),
  ),
  at('picture-slot-missing', 'Width', part(`${SIZED}  - picture: slab plan for lengths run\n`), {
    asks: ['picture-slot-missing'],
  }),
  at('picture-slot-missing', 'Width', part(`${SIZED}  - picture: slab section\n`), {
    asks: ['picture-slot-missing'],
  }),
  at(
    'picture-value-not-read',
    'Width',
    part(`${SIZED}  - picture: slab plan for lengths runn, widths width\n`),
  ),
  at(
    'picture-value-not-read',
    'Width',
    part(`${SIZED}  - picture: slab plan for lengths run, widths width, bars 16 in rounded\n`),
  ),
  at(
    'picture-value-unlike',
    'Width',
    part(`${SIZED}  - picture: slab plan for lengths run, widths price\n`),
  ),
  at(
    'picture-value-unlike',
    'Width',
    part(`${SIZED}  - picture: slab plan for lengths run, widths width, bars price\n`),
  ),
  at(
    'picture-value-odd',
    'Width',
    part(`${SIZED}  - picture: slab plan for lengths run, widths width minus run\n`),
  ),
  at(
    'picture-value-odd',
    'Width',
    part(`${SIZED}  - picture: slab plan for lengths run, widths width, panels along 2.5\n`),
  ),
  at(
    'picture-lists-unlike',
    'Width',
    part(
      `${SIZED}  - picture: slab plan for lengths 2 ft and 3 ft and 4 ft, widths 4 ft and 5 ft\n`,
    ),
  ),
  at('limits-not-read', 'Width', part('- Width: 4 ft\n  - sensible: between 3 ft and 8 ft\n')),
  at('limits-not-read', 'Width', part('- Width: 4 ft\n  - sensible: as the drawing says\n')),
  at('limits-unlike', 'Width', part('- Width: 4 ft\n  - sensible: $3 up to $8\n')),
  at('outside-limits', 'Width', part('- Width: 4 ft\n  - sensible: 5 ft up to 8 ft\n')),
  at('outside-limits', 'Width', part('- Width: 9 ft\n  - sensible: up to 8 ft\n')),
  at('recap-not-known', 'Width', part('- Width: 4 ft\n  - recap: the deck\n')),
  at(
    'part-not-priced',
    'Width',
    `${part('- Width: 4 ft\n  - recap: every part\n')}\n## Fence\n\n- Run: 20 ft\n`,
    { none: OWNER },
  ),
  at('not-yet-known', 'Width', part('- Width: ?\n'), { none: OWNER }),
  at('check-fails', 'Check', part('- Width: 4 ft\n- Check: width is over 5 ft\n'), {
    none: 'A check that does not hold is a finding about the job, and no slip of the pen.',
  }),
  at(
    'set-by-hand',
    'Run',
    part('- Length: 4 ft\n- Run: length plus 3 ft\n  - by hand: 8 ft\n  - from: quote\n'),
  ),
  at('range-in-row', 'Bays', table('  | small | 4 to 5 ft | 3 ft | |\n'), {
    asks: ['not-yet-known'],
  }),
  at(
    'range-not-here',
    'Bays',
    part('- Bays:\n\n  | what | long: 4 to 5 ft |\n  |---|---|\n  | small | |\n'),
    { asks: ['not-yet-known'] },
  ),
  at(
    'by-hand-unread',
    'Run',
    part('- Length: 4 ft\n- Run: length plus 3 ft\n  - by hand: 8 to 9 ft\n  - from: quote\n'),
  ),
  at('range-of-one', 'Time', part('- Time: 12 hours, 12 at best, 12 at worst\n  - from: me\n')),
  at('tie-without-words', 'Pace', part('- Pace: 3 to 5 hours\n  - from: me\n  - moves with:\n')),
  at('tied-alone', 'Pace', part('- Pace: 3 to 5 hours\n  - from: me\n  - moves with: rain\n')),
  at(
    'tied-alone',
    'Pace',
    part(
      '- Pace: 3 to 5 hours\n  - from: me\n  - moves with: haul\n- Haul: 1 to 2 hours\n  - from: me\n',
    ),
  ),
  at(
    'tied-not-given',
    'Sum',
    part('- Width: 4 ft\n  - from: me\n- Sum: width times 2\n  - moves with: rain\n'),
  ),
  at('given-without-source', 'Width', part('- Width: 4 ft\n')),
  at('given-without-source', 'Bays', table('  | small | 4 ft | 3 ft | |\n')),
  at('assumed-amount', 'Sum', part('- Width: 4 ft\n- Sum: width plus 2 in\n')),
  at(
    'other-share',
    'Sum',
    part('- Waste: 15%\n- Volume: 4 cubic ft\n- Sum: volume plus 10% waste\n'),
  ),
  at('name-is-a-word', null, part('- Width: 4 ft\n- Plus: width plus 2 ft\n')),
  at('not-a-name', null, part('- 4 in pipe: 12 ft\n')),
  at('not-a-name', null, part('- The very long name of a thing that goes on: 12 ft\n')),
  at('not-a-name', 'Bays', part('- Bays:\n\n  | 4 in |\n  |---|\n  | 4 ft |\n')),
  at('cell-under-prose', null, part('- Sizes taken on site\n  - Width: 4 ft\n    - from: plan\n')),
  at('table-not-read', null, part('- Bays:\n\n  | what | long |\n  | small | 4 ft |\n')),
  at('table-not-read', null, part('- Bays:\n\n  | what | long |\n  |---|\n  | small | 4 ft |\n')),
  at(
    'table-beside-formula',
    'Bays',
    part('- Bays: 4 ft\n\n  | what | long |\n  |---|---|\n  | small | 4 ft |\n'),
  ),
  at('row-too-long', 'Bays', table('  | small | 4 ft | 3 ft | | more |\n')),
  at(
    'column-without-name',
    'Bays',
    part('- Bays:\n\n  | what | |\n  |---|---|\n  | small | 4 ft |\n'),
  ),
  at(
    'column-clash',
    'Bays',
    part('- Bays:\n\n  | what | long |\n  |---|---|\n  | small | 4 ft |\n  | large | $5 |\n'),
    {
      none: 'Only the owner of the table knows which of its rows is wrong.',
    },
  ),
  at('set-in-row', 'Bays', table('  | small | 4 ft | 3 ft | 13 sq ft |\n')),
  at('text-or-name', 'Bays', `${table('  | small | 4 ft | 3 ft | |\n')}- Small: 3 ft\n`),
  at('blank-in-table', 'Bays', table('  | small | 4 ft | | |\n'), { none: OWNER }),
  at(
    'setting-not-read',
    null,
    '# Kestrel Court\n\n- Currency: groats\n\n## Landing\n\n- Width: 4 ft\n',
  ),
  at(
    'unknown-name',
    'Bays',
    part(
      '- Bays:\n\n  | what | long | wide: lnog times 2 |\n  |---|---|---|\n  | small | 4 ft | |\n',
    ),
  ),
  at('unknown-unit', 'Bays', table('  | small | 4 feeet | 3 ft | |\n'), {
    asks: ['not-yet-known', 'too-many-lengths'],
  }),
  at('too-deep', null, part(`${'> '.repeat(70)}deep\n`), {
    none: 'The text is kept; only its writer knows what was meant to stand in it.',
  }),
  at('text-too-long', null, `${part('')}${'x'.repeat(6_000_000)}`, {
    none: 'A text past the limit is not read at all, so nothing can be written into it.',
  }),
  at('not-text', null, 'a\0b', { none: 'What is no text is not read at all.' }),
];

/** Why an edit was not made. Nothing was changed by it, so there is nothing to mend: each says what to do instead. */
export const REFUSALS: ReadonlySet<string> = new Set([
  'nothing-tied',
  'empty-by-hand',
  'not-by-hand',
  'not-a-remark',
  'no-such-remark',
  'not-a-part',
  'not-blank',
  'not-read-back',
  'name-changes-reading',
  'no-parts',
  'cells-before-parts',
  'no-columns',
  'last-column',
  'nothing-pasted',
  'too-much-pasted',
  'values-change',
  'stays',
]);

/** Told as `too-deep` is, where reading would take too long; it takes a text of minutes to see. */
export const AS_TOO_DEEP = 'too-involved';
