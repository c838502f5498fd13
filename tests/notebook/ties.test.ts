// Givens tied by what moves them: read, tied and untied in one step, pointed out where it can't be done, kept by renames.
import { describe, expect, it, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import type { Finding } from '../../src/notebook/document.ts';
import { cellsOf } from '../../src/notebook/lines.ts';
import { tiesAmong } from '../../src/notebook/ties.ts';

const JOB = `# Kestrel Court

## Deck

- Board price: $25 to $33 per board
  - from: a test
  - moves with: the lumber yard
- Joist price: $18 to $24 per joist
  - from: a test
  - moves with:  The  lumber yard
- Pace: 20 to 30 sq ft per hour
  - from: a test

## Wall

- Cap price: $9 to $12 per cap
  - from: a test
`;

const cellsIn = (estimate: Estimate) => estimate.notebook.parts.flatMap(cellsOf);

function idOf(estimate: Estimate, name: string): number {
  const found = cellsIn(estimate).find((cell) => cell.name === name);
  if (!found) throw new Error(`no cell ${name}`);
  return found.id;
}

const ties = (estimate: Estimate) =>
  tiesAmong(cellsIn(estimate)).map(({ words, cells }) => [words, ...cells.map((c) => c.name)]);

const tieFindings = (estimate: Estimate): readonly Finding[] =>
  estimate.findings().filter(({ code }) => /^tie|remark/.test(code));

describe('ties', () => {
  it('are made by the same words, whatever their case and blanks', () => {
    const estimate = new Estimate(JOB);
    expect(ties(estimate)).toEqual([['the lumber yard', 'Board price', 'Joist price']]);
    expect(tieFindings(estimate)).toEqual([]);
  });

  it('are made and taken away in one step across parts, and undone in one', () => {
    const estimate = new Estimate(JOB);
    const three = ['Pace', 'Cap price', 'Board price'].map((name) => idOf(estimate, name));
    const done = estimate.tie(three, 'one crew');
    expect(done).toHaveProperty('change.say', 'Tie Pace, Cap price, Board price: one crew');
    expect(ties(estimate)).toEqual([
      ['one crew', 'Board price', 'Pace', 'Cap price'],
      ['The  lumber yard', 'Joist price'],
    ]);
    expect(estimate.notebook.text).toContain(
      '  - from: a test\n  - moves with: one crew\n\n## Wall',
    );
    estimate.undo();
    expect(estimate.notebook.text).toBe(JOB);
    expect(
      estimate.tie([idOf(estimate, 'Board price'), idOf(estimate, 'Joist price')], null),
    ).toHaveProperty('change');
    expect(ties(estimate)).toEqual([]);
    expect(estimate.notebook.text).toBe(JOB.replace(/ {2}- moves with.*\n/g, ''));
    estimate.undo();
    expect(estimate.notebook.text).toBe(JOB);
  });

  test.for([
    ['', [0]],
    ['  ', [0, 1]],
  ] as const)('are not made by the words "%s"', ([words, which]) => {
    const estimate = new Estimate(JOB);
    const cells = which.map((k) => cellsIn(estimate)[k].id);
    expect(estimate.tie(cells, words)).toMatchObject({ code: 'nothing-tied' });
    expect(estimate.tie([], null)).toMatchObject({ code: 'nothing-tied' });
    expect(estimate.notebook.text).toBe(JOB);
  });

  it('stay when cells and parts are renamed, moved and duplicated', () => {
    const estimate = new Estimate(JOB);
    estimate.rename(idOf(estimate, 'Board price'), 'Plank price');
    estimate.renamePart(estimate.notebook.parts[1].key, 'Terrace');
    estimate.moveCell(
      idOf(estimate, 'Joist price'),
      { part: estimate.notebook.parts[2].key, place: 0 },
      'kept',
    );
    estimate.duplicateCell(idOf(estimate, 'Plank price'));
    expect(ties(estimate)).toEqual([
      ['the lumber yard', 'Plank price', 'Plank price 2', 'Joist price'],
    ]);
  });

  it('a table among them stands for its rows', () => {
    const estimate = new Estimate(
      `${JOB}- Plants:\n  - moves with: the lumber yard\n\n  | plant | price |\n  |---|---|\n  | fern | $6 per plant, $5 at best, $9 at worst |\n`,
    );
    expect(ties(estimate)).toEqual([['the lumber yard', 'Board price', 'Joist price', 'Plants']]);
    expect(tieFindings(estimate)).toEqual([]);
  });
});

describe('a tie that can not do what it says', () => {
  const only = (...remarks: readonly string[]): Estimate =>
    new Estimate(
      JOB.replace(/ {2}- moves with.*\n/g, '').replace(
        '- Pace: 20 to 30 sq ft per hour\n',
        `- Pace: 20 to 30 sq ft per hour\n${remarks.map((remark) => `  - ${remark}\n`).join('')}`,
      ),
    );

  it('says that one alone is tied to nothing', () => {
    const estimate = only('moves with: one crew');
    const [found, ...more] = tieFindings(estimate);
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      code: 'tied-alone',
      message:
        'Only "Pace" moves with "one crew", so it is tied to nothing. Write the same words under what moves with it.',
    });
    const [away] = estimate.mendsFor(found);
    expect(away.say).toBe('Take it away');
    estimate.mend(away);
    expect(tieFindings(estimate)).toEqual([]);
  });

  it('offers the words that were nearly written', () => {
    const estimate = new Estimate(JOB);
    estimate.setRemark(idOf(estimate, 'Cap price'), 'moves with', 'the lumber yrad');
    const [found] = tieFindings(estimate);
    expect(found.message).toContain('Nearest here: "the lumber yard".');
    const [near] = estimate.mendsFor(found);
    expect(near.say).toBe('Write "the lumber yard"');
    estimate.mend(near);
    expect(ties(estimate)).toEqual([
      ['the lumber yard', 'Board price', 'Joist price', 'Cap price'],
    ]);
    expect(tieFindings(estimate)).toEqual([]);
  });

  it('takes the name of a given for what moves both, once it is tied too', () => {
    const estimate = only('moves with: Joist price');
    const [found] = tieFindings(estimate);
    expect(found.message).toContain('"Joist price" is tied to it once it says the same words.');
    const [tie] = estimate.mendsFor(found);
    expect(tie.say).toBe('Tie "Joist price" to it');
    estimate.mend(tie);
    expect(ties(estimate)).toEqual([['Joist price', 'Joist price', 'Pace']]);
    expect(tieFindings(estimate)).toEqual([]);
  });

  it('says nothing of what moves it', () => {
    const estimate = only('moves with:');
    const [found] = tieFindings(estimate);
    expect(found.code).toBe('tie-without-words');
    estimate.mend(estimate.mendsFor(found)[0]);
    expect(tieFindings(estimate)).toEqual([]);
  });

  it('stands under what is worked', () => {
    const estimate = new Estimate(
      `${JOB}- Caps: 3 times cap price\n  - moves with: the lumber yard\n`,
    );
    const [found] = tieFindings(estimate);
    expect(found).toMatchObject({
      code: 'tied-not-given',
      message:
        '"Caps" is worked, so it moves with what it is worked from. "moves with" stands under givens.',
    });
    estimate.mend(estimate.mendsFor(found)[0]);
    expect(tieFindings(estimate)).toEqual([]);
  });

  it('is said twice', () => {
    const estimate = only('moves with: one crew', 'moves with: the lumber yard');
    expect(tieFindings(estimate).map(({ code }) => code)).toEqual(['remark-twice', 'tied-alone']);
  });
});
