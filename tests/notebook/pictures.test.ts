// The `picture` remark in a notebook: read, worked, pointed out, followed by renames, kept in the text.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import type { PictureState } from '../../src/notebook/pictures.ts';
import { draw } from '../../src/picture/draw.ts';
import { PICTURES } from '../../src/picture/pictures.ts';
import { cellNamed, done } from './cells.ts';

const JOB = `# Kestrel Court

## Landing

- Bays:

  | what | length | width |
  |------|--------|-------|
  | house | 6 ft  | 4 ft  |
  | yard | 5 ft 6 in | 4 ft |

  - picture: slab plan for lengths length in bays, widths width in bays, joint spacing joint limit

- Thickness: 4 in
  - sensible: 3 1/2 in up to 8 in
- Joint limit: thickness times 24, in feet

## Steps

- Climb: 29 1/4 in
- Risers: climb divided by 7 3/4 in per riser, rounded up
- Unit rise: climb divided by risers
  - picture: stair section for risers risers, rise unit rise, run tread depth, landing Landing thickness
- Tread depth: 11 in
`;

function pictures(estimate: Estimate, cell: string): readonly PictureState[] {
  return estimate.picturesOf(cellNamed(estimate.notebook, cell).id);
}

function altOf(estimate: Estimate, cell: string): string {
  const [picture] = pictures(estimate, cell);
  return picture?.kind === 'drawn' ? draw(picture.name, picture.given).alt : `${picture?.kind}`;
}

function pointedOut(estimate: Estimate) {
  return estimate
    .findings()
    .filter(({ code }) => code.startsWith('picture'))
    .map(({ message }) => message);
}

describe('from cells', () => {
  it('columns of a table are lists, and the words are those that the cells show', () => {
    const estimate = new Estimate(JOB);
    expect(pointedOut(estimate)).toEqual([]);
    expect(altOf(estimate, 'Bays')).toBe(
      'Slab from above, house at the top: 2 bays, 6 ft by 4 ft and 5 ft 6 in by 4 ft, 11 ft 6 in in all.',
    );
  });

  it('a dimension says what its cell shows, without what it is for and the hair beside the mark', () => {
    const estimate = new Estimate(JOB);
    const rise = estimate.shown(cellNamed(estimate.notebook, 'Unit rise').id);
    expect(rise?.text).toBe('7 5/16 in per riser');
    const [picture] = pictures(estimate, 'Unit rise');
    if (picture?.kind !== 'drawn') throw new Error('not drawn');
    expect(picture.given.size('rise')).toEqual({ inches: 7.3125, said: '7 5/16 in' });
    done(estimate.setFormula(cellNamed(estimate.notebook, 'Climb').id, '30 1/4 in'));
    expect(altOf(estimate, 'Unit rise')).toContain('4 risers of 7 9/16 in');
  });

  it('follows every number that it is told', () => {
    const estimate = new Estimate(JOB);
    done(estimate.setFormula(cellNamed(estimate.notebook, 'Climb').id, '37 1/2 in'));
    expect(altOf(estimate, 'Unit rise')).toContain('5 risers of 7 1/2 in, 4 treads of 11 in');
    const bays = cellNamed(estimate.notebook, 'Bays').id;
    done(estimate.setRowCell(bays, 1, 1, '7 ft'));
    expect(altOf(estimate, 'Bays')).toContain('6 ft by 4 ft and 7 ft by 4 ft, 13 ft in all');
    done(estimate.removeRow(bays, 1));
    expect(altOf(estimate, 'Bays')).toBe('Slab from above, house at the top: 6 ft by 4 ft.');
  });

  it('a metric notebook has metric sizes', () => {
    const estimate = new Estimate(
      '# Yard\n\n- Measures: metric\n\n## Slab\n\n- Long: 3.6 m\n- Wide: 240 cm\n  - picture: slab plan for lengths long and wide, widths wide\n',
    );
    expect(altOf(estimate, 'Wide')).toContain('3.6 m by 240 cm and 240 cm by 240 cm');
    const [picture] = pictures(estimate, 'Wide');
    expect(picture?.kind === 'drawn' && picture.given.measures).toBe('metric');
  });

  it('a picture under a cell may name that cell', () => {
    const estimate = new Estimate(
      '## Slab\n\n- Wide: 4 ft\n  - picture: slab section for width wide, thickness 4 in\n',
    );
    expect(altOf(estimate, 'Wide')).toBe('Slab cut across: 4 ft wide, 4 in thick.');
  });

  it('of no steps and no boards there is nothing to draw, and nothing to mend', () => {
    const estimate = new Estimate(
      '## Yard\n\n- Count: 0 risers\n  - picture: stair section for risers count, rise 7 in, run 11 in\n',
    );
    expect(pictures(estimate, 'Count')).toEqual([
      { kind: 'nothing', name: 'stair section', slot: 'risers' },
    ]);
    expect(pointedOut(estimate)).toEqual([]);
  });

  it('waits for cells that are not yet known or at fault, which are pointed out themselves', () => {
    const estimate = new Estimate(JOB);
    const climb = cellNamed(estimate.notebook, 'Climb').id;
    done(estimate.setFormula(climb, '?'));
    expect(pictures(estimate, 'Unit rise')).toEqual([
      { kind: 'waits', name: 'stair section', for: [climb] },
    ]);
    done(estimate.setFormula(climb, '29 in plus $3'));
    expect(pictures(estimate, 'Unit rise')[0]?.kind).toBe('waits');
    expect(pointedOut(estimate)).toEqual([]);
  });
});

describe('what is pointed out', () => {
  const about = (remark: string): readonly string[] =>
    pointedOut(
      new Estimate(
        `## Yard\n\n- Run: 12 ft\n- Price: $5 per bag\n- Width: 4 ft\n  - picture: ${remark}\n`,
      ),
    );

  it.each([
    [
      'slab plam for lengths run',
      '"Width" asks for a picture "slab plam". Drawn here are: slab plan, slab section, stair section, board plan, framing plan, railing elevation and wall section.',
    ],
    [
      'slab plan for lengths run',
      'The slab plan of "Width" wants to be told "widths" too, lengths: a column of a table, or some joined by "and". It is written as in "slab plan for lengths 6 ft and 6 ft, widths 4 ft".',
    ],
    [
      'slab plan for lengths run, widths price',
      'In the slab plan of "Width" "widths" takes lengths: a column of a table, or some joined by "and", and this is a price per bag.',
    ],
    [
      'slab plan for lengths run, widths width minus run',
      'In the slab plan of "Width" "widths" is −8 ft, which can\'t be drawn.',
    ],
    [
      'slab plan for lengths run, widths width, widths run',
      'The picture of "Width" is told "widths" twice.',
    ],
    [
      'slab plan for lengths 1 ft and 2 ft and 3 ft, widths 4 ft and 5 ft',
      'The slab plan of "Width" is told 3 lengths and 2 widths. Give as many of the one as of the other, or one width for all.',
    ],
  ])('%s', (remark, message) => {
    expect(about(remark)).toEqual([message]);
  });

  it('the nearest picture, slot and name are offered, and go into the remark', () => {
    const estimate = new Estimate(
      '## Yard\n\n- Run: 12 ft\n- Width: 4 ft\n  - picture: slab plam for lengths runn, widths width\n',
    );
    for (const say of ['Write "slab plan"', 'Write "run"']) {
      const [finding] = estimate.findings().filter(({ code }) => code.startsWith('picture'));
      const mend = finding && estimate.mendsFor(finding).find((each) => each.say === say);
      if (!mend) throw new Error(`not offered: ${say}`);
      done(estimate.mend(mend));
    }
    expect(estimate.notebook.text).toContain(
      '  - picture: slab plan for lengths run, widths width\n',
    );
    expect(pointedOut(estimate)).toEqual([]);
  });
});

describe('in the text', () => {
  it('a rename of a cell, a column, a table or a part is followed', () => {
    const estimate = new Estimate(JOB);
    const named = (name: string): number => cellNamed(estimate.notebook, name).id;
    done(estimate.rename(named('Tread depth'), 'Going'));
    done(estimate.rename(named('Joint limit'), 'Farthest joint'));
    done(estimate.rename(named('Bays'), 'Slab bays'));
    done(estimate.renameColumn(named('Slab bays'), 1, 'run'));
    const landing = estimate.notebook.parts.find(({ name }) => name === 'Landing');
    done(estimate.renamePart(landing?.key ?? '', 'Front landing'));
    expect(estimate.notebook.text).toContain(
      '- picture: slab plan for lengths run in slab bays, widths width in slab bays, joint spacing farthest joint',
    );
    expect(estimate.notebook.text).toContain(
      '- picture: stair section for risers risers, rise unit rise, run going, landing Front landing thickness',
    );
    expect(pointedOut(estimate)).toEqual([]);
    for (let steps = 5; steps > 0; steps--) estimate.undo();
    expect(estimate.notebook.text).toBe(JOB);
  });

  it('a new name that would mean something else in a picture leaves it meaning what it did', () => {
    const estimate = new Estimate(
      '## Shed\n\n- Wide: 4 ft\n\n## Patio\n\n- Long: 9 ft\n  - picture: slab plan for lengths long, widths wide\n- Narrow: 2 ft\n',
    );
    done(estimate.rename(cellNamed(estimate.notebook, 'Narrow').id, 'Wide'));
    expect(estimate.notebook.text).toContain('widths Shed wide');
    expect(altOf(estimate, 'Long')).toContain('9 ft by 4 ft');
  });

  it('what can not be read in a picture keeps no name from being given', () => {
    const estimate = new Estimate(
      '## A\n\n- Long: 9 ft\n  - picture: slab plan for lengths long, widths girth\n- Narrow: 2 ft\n',
    );
    done(estimate.rename(cellNamed(estimate.notebook, 'Narrow').id, 'Girth'));
    expect(altOf(estimate, 'Long')).toContain('9 ft by 2 ft');
  });

  it('a duplicated part draws from its own cells', () => {
    const estimate = new Estimate(JOB);
    const steps = estimate.notebook.parts.find(({ name }) => name === 'Steps');
    done(estimate.duplicatePart(steps?.key ?? ''));
    const copy = estimate.notebook.parts.find(({ name }) => name === 'Steps 2');
    const cells = copy?.blocks.flatMap((b) => (b.kind === 'cell' ? [b.cell] : [])) ?? [];
    const climb = cells.find(({ name }) => name === 'Climb')?.id ?? 0;
    const rise = cells.find(({ name }) => name === 'Unit rise')?.id ?? 0;
    done(estimate.setFormula(climb, '15 in'));
    const [picture] = estimate.picturesOf(rise);
    expect(picture?.kind === 'drawn' && draw(picture.name, picture.given).alt).toContain(
      '2 risers of 7 1/2 in',
    );
    expect(altOf(estimate, 'Steps / Unit rise')).toContain('4 risers');
  });

  it('a cell that is moved to another part draws from where it was', () => {
    const estimate = new Estimate(JOB);
    const { id } = cellNamed(estimate.notebook, 'Unit rise');
    const landing = estimate.notebook.parts.find(({ name }) => name === 'Landing');
    done(estimate.moveCell(id, { part: landing?.key ?? '', place: 0 }, 'kept'));
    expect(altOf(estimate, 'Unit rise')).toContain('4 risers of 7 5/16 in');
  });

  it('a second copy of a template draws from its own cells', () => {
    const estimate = new Estimate(JOB);
    done(estimate.insertTemplate(JOB));
    expect(pointedOut(estimate)).toEqual([]);
    const copy = estimate.notebook.parts.find(({ name }) => name === 'Steps 2');
    expect(copy).toBeDefined();
    expect(estimate.notebook.text).toContain('landing Landing 2 thickness');
  });

  it('a remark is written and read again as it was', () => {
    expect(new Estimate(JOB).notebook.text).toBe(JOB);
    const estimate = new Estimate(JOB);
    const { id } = cellNamed(estimate.notebook, 'Tread depth');
    done(
      estimate.setRemark(
        id,
        'picture',
        'wall section for courses 4, unit height 6 in, unit depth 1 ft',
      ),
    );
    expect(altOf(new Estimate(estimate.notebook.text), 'Tread depth')).toContain(
      '4 courses of 6 in',
    );
  });
});

describe('what is kept from one change to the next', () => {
  type Change = (estimate: Estimate) => unknown;
  const at = (estimate: Estimate, name: string): number => cellNamed(estimate.notebook, name).id;
  const changes: readonly Change[] = [
    (e) => e.setFormula(at(e, 'Climb'), '37 1/2 in'),
    (e) => e.setFormula(at(e, 'Climb'), '?'),
    (e) => e.setFormula(at(e, 'Thickness'), '6 in'),
    (e) => e.setFormula(at(e, 'Thickness'), '15 cm'),
    (e) => e.setFormula(at(e, 'Risers'), '3 risers'),
    (e) => e.setByHand(at(e, 'Unit rise'), '7 in per riser', null),
    (e) => e.setRowCell(at(e, 'Bays'), 0, 1, '9 ft'),
    (e) => e.setRowCell(at(e, 'Bays'), 1, 2, 'thickness'),
    (e) => e.addRow(at(e, 'Bays'), null, ['side', '2 ft', '3 ft']),
    (e) => e.removeRow(at(e, 'Bays'), 0),
    (e) => e.renameColumn(at(e, 'Bays'), 1, 'run'),
    (e) => e.addCell(e.notebook.parts.at(-1)?.key ?? '', null, 'Thickness', '2 in'),
    (e) =>
      e.setRemark(at(e, 'Unit rise'), 'picture', 'slab section for width 4 ft, thickness 3 in'),
    (e) => e.undo(),
    (e) => e.undo(),
    (e) => e.redo(),
  ];
  const all = (estimate: Estimate): readonly string[] =>
    ['Bays', 'Unit rise'].map((name) => altOf(estimate, name));

  it('every picture is what it would be in a notebook opened anew', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(changes.length - 1), { maxLength: 8 }), (order) => {
        const estimate = new Estimate(JOB);
        all(estimate);
        for (const place of order) {
          // A name may by now be two cells', and a row be gone: then nothing is changed.
          try {
            changes[place]?.(estimate);
          } catch (error) {
            if (!/cells are called|has no row/.test(String(error))) throw error;
          }
          expect(all(estimate)).toEqual(all(new Estimate(estimate.notebook.text)));
        }
      }),
      { numRuns: Number(process.env['PICTURE_CASES'] ?? 10), seed: 20261125 },
    );
  });
});

describe('whatever is written in a remark', () => {
  const words = [
    ...PICTURES.flatMap(({ name, slots }) => [name, ...Object.keys(slots)]),
    'for',
    ',',
    'and',
    '(',
    ')',
    'in',
    'bays',
    'length in bays',
    'Thickness',
    'risers',
    '?',
    '',
    '7 1/2 in',
    '0',
    '-3 ft',
    '4',
    '$5',
    '10%',
    '1/4 in per ft',
    'wood',
    'greatest',
    '1e9 ft',
  ];

  it('nothing throws, what is wrong is told, and every mend can be made', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...PICTURES),
        fc.array(fc.constantFrom(...words), { maxLength: 14 }),
        ({ name }, told) => {
          const estimate = new Estimate(
            JOB.replace(/picture: stair section.*/, `picture: ${name} for ${told.join(' ')}`),
          );
          const { id } = cellNamed(estimate.notebook, 'Unit rise');
          const states = estimate.picturesOf(id);
          expect(states).toHaveLength(1);
          const [state] = states;
          if (state?.kind === 'drawn') draw(state.name, state.given);
          for (const finding of estimate.findings()) {
            if (!finding.code.startsWith('picture')) continue;
            for (const mend of estimate.mendsFor(finding)) {
              done(estimate.mend(mend));
              estimate.undo();
            }
          }
          done(estimate.rename(cellNamed(estimate.notebook, 'Thickness').id, 'Depth of it'));
        },
      ),
      { numRuns: Number(process.env['PICTURE_CASES'] ?? 20), seed: 20261125 },
    );
  });
});
