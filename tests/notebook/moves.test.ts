// Moving cells and parts, and duplicating them: what named them names them still, and nothing comes out otherwise.
import { describe, expect, it } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { cellNamed, cellsIn, done, linesOf, refusal, shownIn } from './cells.ts';

const JOB = `# Kestrel Court

- Waste: 10%

## Landing

The landing meets the stair.

- Slab length: 12 ft
  - from: measured on site
- Slab width: 4 ft
- Slab area: slab length by slab width plus waste
- Concrete: slab area at $5 per sq ft
  - cost: material

### Under it

- Gravel: slab area by 4 in

## Steps

- Tread: 11 in
- Slab length: 3 ft
- Run: tread times 4 plus Landing slab length
- Total: total cost of Landing

## Summary

- All: total cost of every part
- Wide: slab width plus Landing slab length
`;

const partKey = ({ notebook }: Estimate, name: string): string =>
  notebook.parts.find((part) => part.name === name)?.key ?? 'none';

function moved(said: string, part: string, place: number, text = JOB) {
  const estimate = new Estimate(text);
  const { id } = cellNamed(estimate.notebook, said);
  const to = { part: partKey(estimate, part), place };
  return { estimate, id, result: estimate.moveCell(id, to, 'kept') };
}

describe('moving a cell in its part', () => {
  it('takes its remarks along and touches nothing else', () => {
    const { estimate, result } = moved(
      'Slab length',
      'Landing',
      2,
      JOB.replace('- Slab length: 3 ft\n', '').replaceAll('Landing slab length', 'slab length'),
    );
    done(result);
    expect(estimate.notebook.text).toContain(
      '- Slab width: 4 ft\n- Slab length: 12 ft\n  - from: measured on site\n- Slab area',
    );
  });

  it('goes past prose and headings, one block at a time', () => {
    const { estimate, result } = moved('Gravel', 'Landing', 5);
    done(result);
    expect(estimate.notebook.text).toContain(
      '  - cost: material\n- Gravel: slab area by 4 in\n\n### Under it\n\n## Steps',
    );
    done(
      estimate.moveCell(
        cellNamed(estimate.notebook, 'Gravel').id,
        { part: partKey(estimate, 'Landing'), place: 0 },
        'kept',
      ),
    );
    expect(estimate.notebook.text).toContain(
      '## Landing\n\n- Gravel: slab area by 4 in\n\nThe landing meets',
    );
  });

  it('says that it already stands there', () => {
    expect(refusal(moved('Slab width', 'Landing', 2).result).code).toBe('stays');
  });

  it('comes to the end of a text without a last line break', () => {
    const { estimate, result } = moved('All', 'Summary', 1, JOB.trimEnd());
    done(result);
    expect(estimate.notebook.text.endsWith('slab length\n- All: total cost of every part\n')).toBe(
      true,
    );
    expect(linesOf(estimate.notebook)).toHaveLength(12);
  });
});

describe('moving a cell to another part', () => {
  it('keeps who it is, its value, and what names it', () => {
    const { estimate, id, result } = moved('Slab width', 'Steps', 1);
    done(result);
    expect(cellNamed(estimate.notebook, 'Steps / Slab width').id).toBe(id);
    expect(shownIn(estimate, 'Slab area')).toBe('52.8 sq ft');
  });

  it('gives it the new part’s name where the old one stood, and says so', () => {
    const estimate = new Estimate(JOB);
    const from = cellNamed(estimate.notebook, 'Landing / Slab length');
    const to = { part: partKey(estimate, 'Summary'), place: 0 };
    const { change } = done(estimate.moveCell(from.id, to, 'kept'));
    expect(cellNamed(estimate.notebook, 'Run').formula).toBe(
      'tread times 4 plus Summary slab length',
    );
    expect(cellNamed(estimate.notebook, 'Wide').formula).toBe(
      'slab width plus Summary slab length',
    );
    expect(cellNamed(estimate.notebook, 'Slab area').formula).toBe(
      'Summary slab length by slab width plus waste',
    );
    expect(change.say).toBe(
      'Move Slab length to Summary; now written "Summary slab length" in Slab area',
    );
    estimate.undo();
    expect(estimate.notebook.text).toBe(JOB);
    expect(cellNamed(estimate.notebook, 'Landing / Slab length').id).toBe(from.id);
  });

  it('writes its own formula with the part’s name of what it leaves behind', () => {
    const { estimate, id, result } = moved('Slab area', 'Steps', 0);
    const { change } = done(result);
    expect(cellNamed(estimate.notebook, 'Slab area').id).toBe(id);
    expect(cellNamed(estimate.notebook, 'Slab area').formula).toBe(
      'Landing slab length by slab width plus waste',
    );
    expect(change.say).toBe(
      'Move Slab area to Steps; now written "Landing slab length" in Slab area',
    );
    done(estimate.undo());
    expect(cellNamed(estimate.notebook, 'Slab area').id).toBe(id);
  });

  it('keeps what it adds up where it says this part', () => {
    const { estimate, result } = moved(
      'Sum',
      'Steps',
      0,
      JOB.replace('### Under it', '- Sum: total cost of this part\n\n### Under it'),
    );
    done(result);
    expect(cellNamed(estimate.notebook, 'Sum').formula).toBe('total cost of Landing');
  });

  it('is said first where a sum would change, and is made when that is meant', () => {
    const { estimate, id, result } = moved('Concrete', 'Steps', 0);
    const told = refusal(result);
    expect(told.code).toBe('values-change');
    expect(told.message).toBe('Moving Concrete there would change a value: Total $264.00 → $0.00.');
    expect(estimate.notebook.text).toBe(JOB);
    expect(estimate.canUndo()).toBeNull();
    done(estimate.moveCell(id, { part: partKey(estimate, 'Steps'), place: 0 }, 'may-change'));
    expect(shownIn(estimate, 'Total')).toBe('$0.00');
    expect(shownIn(estimate, 'All')).toBe('$264.00');
  });

  it('is not made beside a cell of its name', () => {
    const { estimate, result } = moved('Landing / Slab length', 'Steps', 0);
    expect(refusal(result).message).toBe('"Steps" already has a cell called "Slab length".');
    expect(estimate.notebook.text).toBe(JOB);
  });

  it('takes a table along, and the choices that are taken from it', () => {
    const text = `# Job

## Tables

- Joist spans:

  | species | span |
  | --- | --- |
  | pine | 9 ft |
  | hem-fir | 12 ft |

## Deck

- Joist spans: 3
- Wood: hem-fir
  - choices: species of Tables joist spans
- Span: read span off Tables joist spans for species wood
- Loads: 4 in

## End
`;
    const { estimate, result } = moved('Tables / Joist spans', 'End', 0, text);
    done(result);
    expect(cellNamed(estimate.notebook, 'Wood').remarks[0]?.text).toBe(
      'species of End joist spans',
    );
    expect(shownIn(estimate, 'Span')).toBe('12 ft');
  });
});

describe('moving a part', () => {
  it('changes places with what stands between left as it is', () => {
    const estimate = new Estimate(JOB);
    const values = cellsIn(estimate.notebook).map(({ id }) => [id, estimate.shown(id)?.text]);
    done(estimate.movePart(partKey(estimate, 'Summary'), 0, 'kept'));
    expect(estimate.notebook.parts.map(({ name }) => name)).toEqual([
      '',
      'Summary',
      'Landing',
      'Steps',
    ]);
    for (const [id, shown] of values) expect(estimate.shown(Number(id))?.text).toBe(shown);
    expect(estimate.notebook.text.endsWith('total cost of Landing\n')).toBe(true);
    done(estimate.movePart(partKey(estimate, 'Summary'), 2, 'kept'));
    expect(estimate.notebook.text).toBe(JOB);
  });

  it('leaves what stands above the first part', () => {
    expect(refusal(new Estimate(JOB).movePart('', 1, 'kept')).code).toBe('not-a-part');
  });
});

describe('duplicating', () => {
  it('puts a second cell below the first, with its remarks and a name of its own', () => {
    const estimate = new Estimate(JOB);
    const { id } = cellNamed(estimate.notebook, 'Landing / Slab length');
    const { change } = done(estimate.duplicateCell(id));
    expect(change.say).toBe('Duplicate Slab length as Slab length 2');
    expect(estimate.notebook.text).toBe(
      JOB.replace(
        '  - from: measured on site\n',
        '  - from: measured on site\n- Slab length 2: 12 ft\n  - from: measured on site\n',
      ),
    );
    done(estimate.duplicateCell(cellNamed(estimate.notebook, 'Slab length 2').id));
    expect(cellNamed(estimate.notebook, 'Slab length 3').formula).toBe('12 ft');
  });

  it('puts a second part after the first, whose formulas name its own cells', () => {
    const text = JOB.replace('slab area by 4 in', 'Landing slab area by 4 in').replace(
      '### Under it',
      '- Sum: total of material in Landing\n- Here: total cost of this part\n\n### Under it',
    );
    const estimate = new Estimate(text);
    const all = cellsIn(estimate.notebook).map((cell) => [
      cell.id,
      estimate.shown(cell.id)?.text,
      cell.name,
    ]);
    const { change } = done(estimate.duplicatePart(partKey(estimate, 'Landing')));
    expect(change.say).toContain('Duplicate Landing as Landing 2');
    expect(estimate.notebook.parts.map(({ name }) => name)).toEqual([
      '',
      'Landing',
      'Landing 2',
      'Steps',
      'Summary',
    ]);
    const said = linesOf(estimate.notebook).filter((line) => line.startsWith('Landing 2 / '));
    expect(said).toContain('Landing 2 / Gravel: Landing 2 slab area by 4 in');
    expect(said).toContain('Landing 2 / Sum: total of material in Landing 2');
    expect(said).toContain('Landing 2 / Slab area: slab length by slab width plus waste');
    expect(cellNamed(estimate.notebook, 'Wide').formula).toBe(
      'Landing slab width plus Landing slab length',
    );
    for (const [id, shown, name] of all) {
      if (name !== 'All') expect(estimate.shown(Number(id))?.text, String(name)).toBe(shown);
    }
    // The second landing is a second cost: the sum over every part holds both.
    expect(shownIn(estimate, 'All')).toBe('$528.00');
    estimate.setFormula(cellNamed(estimate.notebook, 'Landing 2 / Slab width').id, '8 ft');
    expect(shownIn(estimate, 'Landing 2 / Sum')).toBe('$528.00');
    expect(shownIn(estimate, 'Landing / Sum')).toBe('$264.00');
    expect(cellNamed(estimate.notebook, 'Landing 2 / Slab length').remarks[0]?.text).toBe(
      'measured on site',
    );
  });

  it('copies a table whose rows name its own columns', () => {
    const text = `# Job

## Slab

- Depth: 4 in
- Bays:

  | length | width | volume: length by width by depth |
  | --- | --- | --- |
  | 6 ft | 4 ft | |

- Poured: total of volume in bays
`;
    const estimate = new Estimate(text);
    done(estimate.duplicatePart(partKey(estimate, 'Slab')));
    expect(shownIn(estimate, 'Slab 2 / Poured')).toBe('8 cubic feet');
    estimate.setFormula(cellNamed(estimate.notebook, 'Slab 2 / Depth').id, '8 in');
    expect(shownIn(estimate, 'Slab 2 / Poured')).toBe('16 cubic feet');
    expect(shownIn(estimate, 'Slab / Poured')).toBe('8 cubic feet');
  });
});
