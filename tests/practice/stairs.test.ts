// Stairs as they went wrong on site, and what a notebook makes of them.
import { describe, expect, test } from 'vitest';
import { opened } from '../published/opened.ts';

describe('PC-01: a floor chosen after the carriages were cut', () => {
  const packers = ['First', 'Second', 'Third', 'Fourth', 'Fifth', 'Sixth'];
  // Illustration: seven risers of 7 1/2 in as cut; the sizes of floor and packers are the case's own.
  const flight = [
    '# Flight',
    '## Stair',
    '- Riser as cut: 7 1/2 in',
    '- Floor: 0 in',
    ...packers.map((name) => `- ${name} packer: 0 in`),
    '- Riser 1: riser as cut minus floor plus first packer',
    ...packers
      .slice(1)
      .map(
        (name, n) =>
          `- Riser ${n + 2}: riser as cut minus ${packers[n]} packer plus ${name} packer`,
      ),
    '- Riser 7: riser as cut minus sixth packer',
    `- Tallest: greatest of ${list(7)}`,
    `- Shortest: least of ${list(7)}`,
    '- Spread: tallest minus shortest',
    '- Even check: spread is at most 3/8 in',
    '  - caution: Someone will trip.',
    '- Largest change: tallest minus riser as cut or riser as cut minus shortest, whichever is greater',
    '',
  ].join('\n');

  test('the floor reaches the first riser and the check at once', () => {
    const notebook = opened(flight);
    expect(notebook.holds('Even check')).toBe(true);
    notebook.estimate.setFormula(notebook.cell('Floor').id, '3/4 in');
    expect(notebook.figure('Riser 1')).toEqual(['in', 6.75]);
    expect(notebook.figure('Riser 2')).toEqual(['in', 7.5]);
    expect(notebook.figure('Spread')).toEqual(['in', 0.75]);
    expect(notebook.holds('Even check')).toBe(false);
  });

  test('packers that share the difference bring every riser within an eighth', () => {
    const notebook = opened(flight);
    notebook.estimate.setFormula(notebook.cell('Floor').id, '3/4 in');
    for (const [n, packer] of ['3/4', '5/8', '1/2', '3/8', '1/4', '1/8'].entries()) {
      notebook.estimate.setFormula(notebook.cell(`${packers[n]} packer`).id, `${packer} in`);
    }
    expect(notebook.figure('Riser 1')).toEqual(['in', 7.5]);
    expect(notebook.figure('Riser 7')).toEqual(['in', 7.375]);
    expect(notebook.figure('Largest change')).toEqual(['in', 0.125]);
    expect(notebook.holds('Even check')).toBe(true);
  });

  test('taking the floor away again takes the change with it', () => {
    const notebook = opened(flight);
    notebook.estimate.setFormula(notebook.cell('Floor').id, '3/4 in');
    notebook.estimate.undo();
    expect(notebook.figure('Spread')).toEqual(['in', 0]);
  });
});

describe('PC-03: a riser between two marks of the tape', () => {
  const text = (fractions: string) =>
    `# Flight\n\n- Fractions: ${fractions}\n\n## Stair\n` +
    '- Too small: 7 9/16 in\n- Too large: 7 5/8 in\n' +
    '- Riser: average of too small and too large\n- Off: too large minus riser\n' +
    '- Drift: too large times 12 minus riser times 12\n' +
    Array.from(
      { length: 12 },
      (_, n) => `- Mark ${n + 1}: riser times ${n + 1}, rounded to the nearest 1/16 in\n`,
    ).join('') +
    Array.from(
      { length: 12 },
      (_, n) =>
        `- Near ${n + 1}: mark ${n + 1} minus riser times ${n + 1} is between -1/32 in and 1/32 in\n`,
    ).join('');

  test('the riser is kept as it is and shown as near as the tape goes', () => {
    const sixteenths = opened(text('1/16 in'));
    expect(sixteenths.figure('Riser')).toEqual(['in', 7.59375]);
    expect(sixteenths.shown('Riser')).toBe('7 5/8 in, a hair shy');
    expect(opened(text('1/32 in')).shown('Riser')).toBe('7 19/32 in');
  });

  test('one rounded riser drifts by three eighths over twelve', () => {
    const notebook = opened(text('1/16 in'));
    expect(notebook.figure('Off')).toEqual(['in', 0.03125]);
    expect(notebook.figure('Drift')).toEqual(['in', 0.375]);
  });

  test('running heights, each rounded on its own, are never more than half a mark off', () => {
    const notebook = opened(text('1/16 in'));
    const near = Array.from({ length: 12 }, (_, n) => notebook.holds(`Near ${n + 1}`));
    expect(near).toEqual(Array(12).fill(true));
    expect(notebook.figure('Mark 12')).toEqual(['in', 91.125]);
  });
});

function list(count: number): string {
  const names = Array.from({ length: count }, (_, n) => `riser ${n + 1}`);
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
