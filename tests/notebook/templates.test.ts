// Parts of a template at the end of a notebook, each under a name of its own.
import { describe, expect, it } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { isRefused } from '../../src/notebook/edits.ts';
import { templateParts } from '../../src/notebook/templates.ts';
import { cellNamed, done, linesOf, refusal, shownIn } from './cells.ts';

const SLAB = `# Slab

Made for a small pour.

## Slab
- Slab length: 12 ft
  - from: measured on site
- Slab width: 4 ft
- Slab area: Slab slab length by slab width
- Concrete: slab area at $5 per sq ft
  - cost: material
- Share: what share concrete is of (total cost of Slab)
`;

describe('a template', () => {
  it('is split into its parts', () => {
    expect(templateParts(`${SLAB}\n## Base\n- Depth: 4 in\n`)).toEqual([
      { name: 'Slab', text: `${SLAB.slice(SLAB.indexOf('## Slab'))}\n` },
      { name: 'Base', text: '## Base\n- Depth: 4 in\n' },
    ]);
  });

  it('without a part, or with cells before its first, is refused with the reason', () => {
    const none = templateParts('- A: 1\n');
    expect(isRefused(none) ? none : null).toMatchObject({ code: 'no-parts' });
    expect(refusal(new Estimate('').insertTemplate('just words')).code).toBe('no-parts');
    expect(refusal(new Estimate('').insertTemplate('- A: 1\n\n## P\n- B: 2\n')).code).toBe(
      'cells-before-parts',
    );
    expect(refusal(new Estimate('').insertTemplate('\0')).code).toBe('not-text');
  });

  it('that brings a name which the column of a table goes by has it written there with its part', () => {
    const bed = `## Wall
- Wall length: 20 ft

## Bed
- Plants:

  | plant | spacing | count: wall length divided by spacing, rounded up, as plants |
  |-------|---------|--|
  | shrub | 5 ft    |  |

- Ordered: total of count in plants
`;
    const estimate = new Estimate(bed);
    expect(shownIn(estimate, 'Ordered')).toBe('4 plants');
    done(estimate.insertTemplate('## Low wall\n- Wall length: 30 ft\n'));
    expect(estimate.notebook.text).toContain('count: Wall wall length divided by spacing, rounded');
    expect(shownIn(estimate, 'Ordered')).toBe('4 plants');
  });

  it('that reads from a table of the trade by a cell called like a column goes in twice', () => {
    const text =
      '# Dig\n\n## Dig\n- Ground: loam\n  - choices: ground of soil volumes\n- Swell: read loose off soil volumes for ground ground\n';
    const estimate = new Estimate('');
    done(estimate.insertTemplate(text));
    done(estimate.insertTemplate(text));
    const again = cellNamed(estimate.notebook, 'Dig 2 / Swell');
    expect(estimate.shown(again.id)?.text).toBe('1.25');
  });

  it('goes to the end as it is written', () => {
    const text = '# Kestrel Court\n\n## Steps\n- Rise: 7 in\n';
    const estimate = new Estimate(text);
    const { change } = done(estimate.insertTemplate(SLAB));
    expect(change.say).toBe('Insert Slab');
    expect(estimate.notebook.text).toBe(`${text}\n${SLAB.slice(SLAB.indexOf('## Slab'))}`);
    expect(shownIn(estimate, 'Concrete')).toBe('$240.00');
    estimate.undo();
    expect(estimate.notebook.text).toBe(text);
  });

  it('takes the line ends of the notebook', () => {
    const estimate = new Estimate('# Kestrel Court\r\n');
    done(estimate.insertTemplate(SLAB));
    expect(estimate.notebook.text).not.toMatch(/[^\r]\n/);
    expect(estimate.notebook.text.endsWith('cost of Slab)\r\n')).toBe(true);
  });

  it('has a name of its own the second time and the third, and stays with its own cells', () => {
    const estimate = new Estimate('# Kestrel Court\n');
    for (let i = 0; i < 3; i++) done(estimate.insertTemplate(SLAB));
    expect(estimate.notebook.parts.map((p) => p.name)).toEqual(['', 'Slab', 'Slab 2', 'Slab 3']);
    expect(cellNamed(estimate.notebook, 'Slab 2 / Slab area').formula).toBe(
      'Slab 2 slab length by slab width',
    );
    expect(cellNamed(estimate.notebook, 'Slab 2 / Share').formula).toBe(
      'what share concrete is of (total cost of Slab 2)',
    );
    done(estimate.setFormula(cellNamed(estimate.notebook, 'Slab 2 / Slab length').id, '10 ft'));
    expect(
      ['Slab', 'Slab 2', 'Slab 3'].map((part) => shownIn(estimate, `${part} / Concrete`)),
    ).toEqual(['$240.00', '$200.00', '$240.00']);
    expect(shownIn(estimate, 'Slab 2 / Share')).toBe('100%');
  });

  it('leaves formulas that meant the first copy with the first copy', () => {
    const estimate = new Estimate(
      '# Kestrel Court\n\n## Summary\n- Gravel: slab area times 4 in\n',
    );
    done(estimate.insertTemplate(SLAB));
    expect(shownIn(estimate, 'Gravel')).toBe('16 cubic feet');
    const { change } = done(estimate.insertTemplate(SLAB));
    expect(cellNamed(estimate.notebook, 'Gravel').formula).toBe('Slab slab area times 4 in');
    expect(shownIn(estimate, 'Gravel')).toBe('16 cubic feet');
    expect(change.say).toBe('Insert Slab 2; now written "Slab slab area" in Gravel');
  });

  it('of several parts has each copy stay with its own parts', () => {
    const template =
      '## Rates\n- Charge rate: $40 per hour\n\n## Work\n- Laying: 2 hours at charge rate\n';
    const estimate = new Estimate('# Kestrel Court\n');
    done(estimate.insertTemplate(template));
    done(estimate.insertTemplate(template));
    expect(cellNamed(estimate.notebook, 'Work / Laying').formula).toBe(
      '2 hours at Rates charge rate',
    );
    expect(cellNamed(estimate.notebook, 'Work 2 / Laying').formula).toBe(
      '2 hours at Rates 2 charge rate',
    );
    expect(shownIn(estimate, 'Work 2 / Laying')).toBe('$80.00');
  });

  it('brings the counted things it names', () => {
    const template =
      '# T\n\n- Counted things: sleeper, dowel\n\n## Wall\n- Sleepers: 12 sleepers\n';
    const first = new Estimate('# Kestrel Court\nProse right below.\n');
    done(first.insertTemplate(template));
    expect(first.notebook.settings.counted).toEqual(['sleeper', 'dowel']);
    expect(first.notebook.parts[0].blocks).toHaveLength(2);
    expect(shownIn(first, 'Sleepers')).toBe('12 sleepers');
    const bare = new Estimate('# Kestrel Court\n');
    done(bare.insertTemplate(template));
    expect(bare.notebook.text).toBe(
      '# Kestrel Court\n\n- Counted things: sleeper, dowel\n\n## Wall\n- Sleepers: 12 sleepers\n',
    );
    const second = new Estimate('# Kestrel Court\n\n- Counted things: bay, dowel\n');
    done(second.insertTemplate(template));
    expect(second.notebook.settings.counted).toEqual(['bay', 'dowel', 'sleeper']);
    expect(linesOf(second.notebook)).toEqual(['Wall / Sleepers: 12 sleepers']);
  });
});
