// What becomes of a range in a notebook that is edited: it stays with its given through every change but the one that
// takes it away, and what is sensible holds for both of its ends.
import { describe, expect, it, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { textToKeep, typedOver, withPlainValue } from '../../src/notebook/ranges.ts';
import { cellNamed, done, shownIn } from './cells.ts';

const JOB = `# Kestrel Court

## Ground

- Digging: 13 hours, 12 at best, 16 at worst
  - from: own hours on the last two jobs
- Labour: digging at $50 per hour
  - cost: labour

## Yard

- Haul: Ground digging times 2
`;

const idOf = (e: Estimate, name: string): number => cellNamed(e.notebook, name).id;
const ends = (e: Estimate, name = 'Digging'): string | undefined =>
  e.shownRange(idOf(e, name))?.text;
const partKey = ({ notebook }: Estimate, name: string): string =>
  notebook.parts.find((part) => part.name === name)?.key ?? 'none';
const ENDS = '12 hours at best, 16 hours at worst';

describe('a range stays with its given', () => {
  const CHANGES: readonly (readonly [string, (e: Estimate) => string | void])[] = [
    [
      'that is called something else',
      (e) => {
        done(e.rename(idOf(e, 'Digging'), 'Dig and pile'));
        expect(cellNamed(e.notebook, 'Labour').formula).toBe('dig and pile at $50 per hour');
        return 'Dig and pile';
      },
    ],
    [
      'that moves to another part',
      (e) => {
        const to = { part: partKey(e, 'Yard'), place: 0 };
        done(e.moveCell(idOf(e, 'Digging'), to, 'kept'));
        expect(shownIn(e, 'Labour')).toBe('$650.00');
      },
    ],
    ['whose part moves', (e) => void done(e.movePart(partKey(e, 'Ground'), 1, 'kept'))],
    [
      'whose part is called something else',
      (e) => void done(e.renamePart(partKey(e, 'Ground'), 'Earth')),
    ],
    [
      'with a source of its own',
      (e) => void done(e.setRemark(idOf(e, 'Digging'), 'from', 'guess')),
    ],
    ['beside a line that goes', (e) => void done(e.removeCell(idOf(e, 'Haul')))],
    [
      'beside a cell that is called Best',
      (e) => void done(e.addCell(partKey(e, 'Ground'), null, 'Best', '$60 per hour')),
    ],
    [
      'beside a cell that is called Worst, which another names',
      (e) => {
        done(e.addCell(partKey(e, 'Ground'), null, 'Worst', '$60 per hour'));
        done(e.setFormula(idOf(e, 'Labour'), 'digging at worst'));
        expect(shownIn(e, 'Labour')).toBe('$780.00');
      },
    ],
  ];

  it.each(CHANGES)('%s, and when that is taken back', (_, change) => {
    const e = new Estimate(JOB);
    const name = change(e) ?? 'Digging';
    expect([ends(e, name), shownIn(e, name)]).toEqual([ENDS, '13 hours']);
    expect(ends(new Estimate(e.notebook.text), name)).toBe(ENDS);
    while (e.canUndo() !== null) e.undo();
    expect([e.notebook.text, ends(e)]).toEqual([JOB, ENDS]);
    while (e.canRedo() !== null) e.redo();
    expect(ends(e, name)).toBe(ENDS);
  });

  test('that is duplicated, alone or with its part', () => {
    const e = new Estimate(JOB);
    done(e.duplicateCell(idOf(e, 'Digging')));
    done(e.duplicatePart(partKey(e, 'Yard')));
    done(e.duplicatePart(partKey(e, 'Ground')));
    const names = e.notebook.parts.flatMap((p) =>
      p.blocks.flatMap((b) =>
        b.kind === 'cell' && b.cell.formula.includes('best') ? [b.cell] : [],
      ),
    );
    expect(names.map(({ id }) => e.shownRange(id)?.text)).toEqual([ENDS, ENDS, ENDS, ENDS]);
  });

  test('while it is set by hand: nobody asks for its ends then, and taken back they are there', () => {
    const e = new Estimate(JOB);
    done(e.setByHand(idOf(e, 'Digging'), '20 hours', 'the ground is frozen'));
    expect([ends(e), shownIn(e, 'Labour')]).toEqual([undefined, '$1,000.00']);
    expect(cellNamed(e.notebook, 'Digging').formula).toBe('13 hours, 12 at best, 16 at worst');
    done(e.setByHand(idOf(e, 'Digging'), null, null));
    expect([ends(e), shownIn(e, 'Labour')]).toEqual([ENDS, '$650.00']);
  });

  test('that is read, changed and written as text again, word for word', () => {
    const e = new Estimate(JOB);
    expect(e.notebook.text).toBe(JOB);
    done(e.setFormula(idOf(e, 'Digging'), '12 to 16 hours'));
    expect(e.notebook.text).toBe(
      JOB.replace('13 hours, 12 at best, 16 at worst', '12 to 16 hours'),
    );
    const again = new Estimate(e.notebook.text);
    expect(ends(again)).toBe('the middle of 12 hours at best and 16 hours at worst');
    expect(shownIn(again, 'Labour')).toBe('$700.00');
  });
});

describe('what is written of a range', () => {
  const reading = (formula: string): ReturnType<Estimate['draft']>['reading'] => {
    const e = new Estimate('# Kestrel Court\n\n## Ground\n\n- Digging: 1 hour\n');
    return e.draft(idOf(e, 'Digging'), formula).reading;
  };

  it.each([
    ['12 to 16 hours', '12 hours at best, 16 hours at worst'],
    ['12-16 hours', '12 hours at best, 16 hours at worst'],
    ['13 hours (12 to 16)', '13 hours, 12 hours at best, 16 hours at worst'],
    ['13 hours, 12 at best, 16 at worst', '13 hours, 12 at best, 16 at worst'],
    ['13 hours', '13 hours'],
    ['12 hours to 16 ft', '12 hours to 16 ft'],
  ])('"%s" is kept as "%s"', (typed, kept) => {
    expect(textToKeep(reading(typed), typed)).toBe(kept);
  });

  test('another plain value leaves the ends as they are, and an amount that is typed over it does too', () => {
    const range = reading('13 hours, 12 at best, 16 at worst');
    const kept = '14 hours, 12 hours at best, 16 hours at worst';
    expect(withPlainValue(range, '14 hours')).toBe(kept);
    expect(typedOver(range, '1')).toBe('1, 12 hours at best, 16 hours at worst');
    expect(typedOver(range, '$')).toBe('$, 12 hours at best, 16 hours at worst');
    expect(typedOver(range, 'b')).toBe('b');
    expect(typedOver(reading('13 hours'), '1')).toBe('1');
  });
});

describe('what is sensible', () => {
  const LIMITS: readonly (readonly [string, string, readonly string[], string | null])[] = [
    ['13 hours, 12 at best, 16 at worst', '8 hours up to 20 hours', [], null],
    [
      '13 hours, 12 at best, 16 at worst',
      '8 hours up to 14 hours',
      ['"Digging" is 16 hours at worst, above what is sensible: 8 hours up to 14 hours.'],
      '8 hours up to 16 hours',
    ],
    [
      '13 hours, 7 at best, 16 at worst',
      '8 hours up to 14 hours',
      [
        '"Digging" is 7 hours at best, below what is sensible: 8 hours up to 14 hours.',
        '"Digging" is 16 hours at worst, above what is sensible: 8 hours up to 14 hours.',
      ],
      '7 hours up to 16 hours',
    ],
    [
      '30 to 50 sq ft per hour',
      'at least 35 sq ft per hour',
      [
        '"Digging" is 30 sq ft per hour at worst, below what is sensible: at least 35 sq ft per hour.',
      ],
      'at least 30 sq ft per hour',
    ],
    [
      '$40 to $60',
      'up to $45',
      [
        '"Digging" is $60.00 at worst, above what is sensible: up to $45.',
        '"Digging" is $50.00, above what is sensible: up to $45.',
      ],
      'up to $60',
    ],
  ];
  const limited = (formula: string, sensible: string): Estimate =>
    new Estimate(
      `# Kestrel Court\n\n## Ground\n\n- Digging: ${formula}\n  - from: guess\n  - sensible: ${sensible}\n`,
    );

  it.each(LIMITS)('of "%s", %s, is asked of both ends', (formula, sensible, messages, wider) => {
    const e = limited(formula, sensible);
    const found = e.findings();
    expect(found.map(({ message }) => message)).toEqual(messages);
    for (const [index] of messages.entries()) {
      const again = limited(formula, sensible);
      const [mend] = again.mendsFor(again.findings()[index] ?? found[0]);
      if (!mend) throw new Error('nothing is offered');
      done(again.mend(mend));
      expect(again.findings()).toEqual([]);
      expect(cellNamed(again.notebook, 'Digging').remarks.at(-1)?.text).toBe(wider);
    }
  });

  it.each([
    ['13 hours', '8 to 14 hours', '8 hours up to 14 hours'],
    ['40 sq ft per hour', '30 to 50 sq ft per hour', '30 sq ft per hour up to 50 sq ft per hour'],
  ])('of "%s" can be no range: "%s" is mended to "%s"', (formula, written, meant) => {
    const e = limited(formula, written);
    const [found] = e.findings();
    expect(found?.message).toContain(`Write them as "${meant}".`);
    const [mend] = found ? e.mendsFor(found) : [];
    expect(mend?.say).toBe(`Write ${meant}`);
    if (mend) done(e.mend(mend));
    expect(e.findings()).toEqual([]);
  });

  test('a range that leaves nothing open is pointed out, and is one amount after the mend', () => {
    const e = limited('12 to 12 hours', '8 hours up to 14 hours');
    const [found] = e.findings();
    expect(found?.code).toBe('range-of-one');
    const [mend] = found ? e.mendsFor(found) : [];
    if (mend) done(e.mend(mend));
    expect([cellNamed(e.notebook, 'Digging').formula, e.findings()]).toEqual(['12 hours', []]);
  });
});
