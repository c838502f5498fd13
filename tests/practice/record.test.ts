// A job that was over, and what is learned of it for the next one.
import { describe, expect, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { against } from '../../src/record/against.ts';
import { budgetNow } from '../../src/record/budget.ts';
import { learn, learnedChange } from '../../src/record/learned.ts';
import { standingOf } from '../../src/record/standing.ts';
import { newIdentities } from '../../src/versions/identities.ts';
import { cellNamed, done } from '../notebook/cells.ts';
import { entry, said } from '../record/records.ts';

describe('PC-45: a job that cost a quarter more than its estimate', () => {
  // Boards: 200 sq ft at 0.2 hours, $60 an hour: $2,400. Rail: 80 ft at $90: $7,200. Together $9,600.
  const estimate = new Estimate(
    '# Deck\n\n## Boards\n\n- Area: 200 sq ft\n- Pace: 0.2 hours per sq ft\n  - from: rule of thumb\n' +
      '- Lay: area times pace at $60 per hour\n  - cost: labour\n\n## Rail\n\n- Rail: 80 ft at $90 per ft\n  - cost: subcontract\n',
  );
  const identities = newIdentities(estimate.notebook, 'k');
  const budget = budgetNow(estimate.notebook, estimate.costs(), identities);
  const [boards, rail] = budget.parts.filter(({ name }) => name === 'Boards' || name === 'Rail');
  const laid = said(['80', '60.00'], { part: boards, what: 'Lay boards' });
  const railed = said('7200.00', { part: rail, kind: 'subcontract' });
  const held = against(budget, standingOf([entry('a', laid), entry('b', railed)]));

  test('estimate, what it cost and the difference stand beside each other, line by line', () => {
    const rows = held.parts.map(({ part, whole: { estimate: was, actual, over } }) => [
      part.name,
      was,
      actual,
      over,
    ]);
    expect(rows).toEqual([
      ['Boards', 240_000n, 480_000n, 240_000n],
      ['Rail', 720_000n, 720_000n, 0n],
    ]);
    // A quarter of the estimate, a fifth of what it cost: of which it is a share has to be said.
    const { estimate: was, actual, over } = held.whole;
    expect([over * 4n === was, over * 5n === actual]).toEqual([true, true]);
  });

  test('the pace itself is corrected, and the line that was right stays as it is', () => {
    const built = estimate.shown(cellNamed(estimate.notebook, 'Area').id);
    if (!built) throw new Error('no area');
    const learning = learn([laid], built, 'Kestrel Court');
    if (learning.kind !== 'learned') throw new Error(learning.why);
    const cell = cellNamed(estimate.notebook, 'Pace').id;
    const change = learnedChange(estimate.notebook, { kind: 'given', cell }, learning.learned);
    if ('code' in change) throw new Error(change.message);
    const next = new Estimate(estimate.notebook.text);
    done(next.replaceText(change));
    expect(cellNamed(next.notebook, 'Pace').formula).toBe('0.4 hours per sq ft');
    const parts = next.costs().parts.flatMap(({ part, direct }) => (part ? [[part, direct]] : []));
    // A quarter on everything would have made $9,000 of the rail.
    expect(parts).toEqual([
      ['Boards', '4800.00'],
      ['Rail', '7200.00'],
    ]);
    expect(next.costs().total.direct).toBe('12000.00');
  });
});
