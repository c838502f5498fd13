// A line whose name can't be one stays prose, and is pointed out where what follows is a formula.
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';

const GIVENS =
  '## P\n- Slab length: 12 ft\n  - from: tape\n- Hours: 40 hours\n  - from: plan\n- Sam: 3\n  - from: count\n';

function found(line: string) {
  const estimate = new Estimate(`${GIVENS}- ${line}\n`);
  const { text } = estimate.notebook;
  return estimate.findings().map(({ code, spot, message }) => ({
    code,
    words: spot && text.slice(spot.from, spot.to),
    message,
  }));
}

describe('a name that can be none, before a formula', () => {
  test.for([
    ['Over: hours minus 8 hours', 'name-is-a-word'],
    ['Over: hours - 8 hours', 'name-is-a-word'],
    ['Over: hours - 8', 'name-is-a-word'],
    ['Per: slab length by 2 ft', 'name-is-a-word'],
    ['Per: slab lenght by 2 ft', 'name-is-a-word'],
    ['By: 4 ft', 'name-is-a-word'],
    ['At: ?', 'name-is-a-word'],
    ['60 lb bags: 40 bags', 'not-a-name'],
    ['2 ft strip: slab length by 2 ft', 'not-a-name'],
    ['the number of hours that we are over in all: hours minus 8 hours', 'not-a-name'],
  ] as const)('%s is pointed out as %s', ([line, code]) => {
    const [finding, ...more] = found(line);
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ code, words: line });
    expect(finding?.message).toMatch(/kept as prose and isn't worked\. To have it worked, \w+/);
  });

  test.for([
    'Over: done for this year',
    'By: Sam and Ann',
    'In: the yard, 3 bags were left over',
    'On: see the drawing',
    'From: north wall - see drawing 3',
    'At: ',
    '2026-03-03: met the owner on site',
    '3 bags: left over from last time',
    'what we talked about with the owner in the yard: the gate stays',
  ])('%s is prose and nothing is said', (line) => {
    expect(found(line)).toEqual([]);
  });
});
