// Renaming rewrites what mentions the name, and a new name leaves every other formula reading as it did.
import { describe, expect, it, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { cellNamed, cellsIn, done, linesOf, refusal, shownIn } from './cells.ts';

const JOB = `# Kestrel Court

## Landing
- Slab length: 12 ft
- Slab width: 4 ft
- Waste: 10%
- Slab area: slab length by slab width plus 10% waste
- Edge: the slab length plus Slab width
- Concrete: slab area at $5 per sq ft
  - cost: material

## Steps
- Slab length: 3 ft
- Both: slab length plus Landing slab length
- Bags: 40 bags
- Trip: 40 bags plus bags

## Summary
- All: total cost of Landing
- Material: total of material in Landing
- Job: total cost of every part
- Wide: slab width plus the Landing slab width
- Hand: slab width times 2
  - by hand: Landing slab width
  - from: asked
- Lost: slab lenght by slab width
`;

function renamed(said: string, name: string, text = JOB): Estimate {
  const estimate = new Estimate(text);
  done(estimate.rename(cellNamed(estimate.notebook, said).id, name));
  return estimate;
}

describe('renaming a cell', () => {
  it('rewrites its mentions in its own part, elsewhere with the part before it, and nothing else', () => {
    const { notebook } = renamed('Landing / Slab length', 'Run');
    expect(notebook.text).toBe(
      JOB.replace('- Slab length: 12', '- Run: 12')
        .replace('slab length by slab width plus', 'run by slab width plus')
        .replace('the slab length plus', 'the run plus')
        .replace('plus Landing slab length', 'plus Landing run'),
    );
  });

  it('keeps the capital that was typed, and capitals that a name brings', () => {
    expect(cellNamed(renamed('Slab width', 'Breadth').notebook, 'Edge').formula).toBe(
      'the slab length plus Breadth',
    );
    expect(cellNamed(renamed('Slab width', 'LF of edge').notebook, 'Slab area').formula).toBe(
      'slab length by LF of edge plus 10% waste',
    );
  });

  it('reaches formulas that cannot be read, and values by hand', () => {
    const { notebook } = renamed('Slab width', 'Breadth');
    expect(cellNamed(notebook, 'Lost').formula).toBe('slab lenght by breadth');
    expect(cellNamed(notebook, 'Hand').remarks[0].text).toBe('Landing breadth');
    expect(cellNamed(notebook, 'Wide').formula).toBe('breadth plus the Landing breadth');
  });

  it('leaves a word alone that is no mention: a label after a percent, a counted thing after a number', () => {
    const waste = renamed('Waste', 'Offcut').notebook;
    expect(cellNamed(waste, 'Slab area').formula).toBe('slab length by slab width plus 10% waste');
    const bags = renamed('Bags', 'Sacks').notebook;
    expect(cellNamed(bags, 'Trip').formula).toBe('40 bags plus sacks');
  });

  it('changes no number', () => {
    const before = new Estimate(JOB);
    for (const cell of cellsIn(before.notebook)) {
      const after = new Estimate(JOB);
      done(after.rename(cell.id, 'Gable end'));
      for (const { id } of cellsIn(before.notebook)) {
        expect(after.shown(id)?.text).toBe(before.shown(id)?.text);
      }
      after.undo();
      expect(after.notebook.text).toBe(JOB);
    }
  });
});

describe('a new name that would take words from a formula', () => {
  test.for([
    [
      'with an operator in it',
      'Waste',
      'Length plus slab',
      'Edge',
      'the slab length plus Slab width',
    ],
  ] as const)('%s leaves it reading as it did', ([, said, name, other, formula]) => {
    const estimate = renamed(said, name);
    expect(cellNamed(estimate.notebook, other).formula).toBe(formula);
    expect(shownIn(estimate, other)).toBe('16 ft');
  });

  it('brackets what stood there, and says so', () => {
    const estimate = new Estimate(
      '- Length: 3 ft\n- Width: 4 ft\n- Sum: length plus width\n- Fall: 1 ft\n',
    );
    const { change } = done(
      estimate.rename(cellNamed(estimate.notebook, 'Fall').id, 'Length plus width'),
    );
    expect(cellNamed(estimate.notebook, 'Sum').formula).toBe('(length) plus (width)');
    expect(shownIn(estimate, 'Sum')).toBe('7 ft');
    expect(change.say).toBe(
      'Rename Fall to Length plus width; now written "(length)" in Sum, "(width)" in Sum',
    );
  });

  it('puts the part before a name that another part now has too', () => {
    const text =
      '## Back\n- Depth: 4 in\n\n## Front\n- Rise: 7 in\n- Sum: depth plus rise\n\n## Side\n- Two: depth times 2\n';
    const estimate = new Estimate(text);
    done(estimate.rename(cellNamed(estimate.notebook, 'Rise').id, 'Depth'));
    expect(linesOf(estimate.notebook)).toEqual([
      'Back / Depth: 4 in',
      'Front / Depth: 7 in',
      'Front / Sum: Back depth plus depth',
      'Side / Two: Back depth times 2',
    ]);
    expect([shownIn(estimate, 'Sum'), shownIn(estimate, 'Two')]).toEqual(['11 in', '8 in']);
  });

  it('does the same when the name comes with a new cell', () => {
    const text = '## Back\n- Depth: 4 in\n\n## Front\n- Sum: depth plus 1 in\n';
    const estimate = new Estimate(text);
    done(estimate.addCell('part-2', null, 'Depth', '9 in'));
    expect(cellNamed(estimate.notebook, 'Sum').formula).toBe('Back depth plus 1 in');
    expect(shownIn(estimate, 'Sum')).toBe('5 in');
    estimate.undo();
    expect(estimate.notebook.text).toBe(text);
  });

  it('is refused where no bracket helps', () => {
    const estimate = new Estimate(
      '- Deck width: 14 ft\n- Joists: joists every 16 in along deck width\n- Fall: 1 ft\n',
    );
    const before = estimate.notebook;
    const result = refusal(
      estimate.rename(cellNamed(before, 'Fall').id, 'Joists every 16 in along'),
    );
    expect(result.code).toBe('name-changes-reading');
    expect(result.message).toContain('"Joists"');
    expect(estimate.notebook).toBe(before);
  });

  it('may mend a formula that could not be read', () => {
    const estimate = new Estimate('- Slab lenght: 3 ft\n- Area: slab length by 2 ft\n');
    done(estimate.rename(cellNamed(estimate.notebook, 'Slab lenght').id, 'Slab length'));
    expect(shownIn(estimate, 'Area')).toBe('6 sq ft');
  });
});

describe('renaming a part', () => {
  it('rewrites what is said with its name: cells and recaps', () => {
    const estimate = new Estimate(JOB);
    done(estimate.renamePart('part-1', 'Lower landing'));
    expect(estimate.notebook.text).toBe(JOB.replaceAll('Landing', 'Lower landing'));
    expect(shownIn(estimate, 'All')).toBe('$264.00');
    estimate.undo();
    expect(estimate.notebook.text).toBe(JOB);
  });

  it('keeps its key and the ids of its cells', () => {
    const estimate = new Estimate(JOB);
    const before = cellsIn(estimate.notebook).map((c) => [c.id, c.part]);
    done(estimate.renamePart('part-1', 'Stoop'));
    expect(cellsIn(estimate.notebook).map((c) => [c.id, c.part])).toEqual(before);
  });
});
