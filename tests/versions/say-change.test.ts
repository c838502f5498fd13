// The steps from one total to the other, in words.
import { expect, it, test } from 'vitest';
import { compare } from '../../src/versions/compare.ts';
import { sayMethod, stepsOf } from '../../src/versions/say-change.ts';
import type { Version } from '../../src/versions/version.ts';
import { whyMoved } from '../../src/versions/why-moved.ts';
import { done } from '../notebook/cells.ts';
import { edited } from './sides.ts';

const TEXT =
  '# Kestrel Court\n\n## Landing\n\n- Length: 10 ft\n- Price: $5 per ft\n- Kerb: length at price\n  - cost: material\n' +
  '- Items:\n  | item | sum |\n  | --- | --- |\n  | sand | $10 |\n  | stakes | $8 |\n' +
  '- Extras: total of sum in items\n  - cost: material\n';

function told(versions: readonly [Version, Version]) {
  const comparison = compare(...versions);
  const why = whyMoved(comparison);
  if (!why) throw new Error('in different currencies');
  return { steps: stepsOf(why, comparison), method: sayMethod(why), comparison };
}

it('goes from the total before to the total after, each step with what was done', () => {
  const { steps, method, comparison } = told(
    edited(TEXT, (e, cell) => {
      done(e.rename(cell('Length').id, 'Run'));
      done(e.setFormula(cell('Run').id, '12 ft'));
      done(e.setFormula(cell('Price').id, '$4 per ft'));
      done(e.setRowCell(cell('Items').id, 1, 1, '$9'));
      done(e.addRow(cell('Items').id, null, ['twine', '$2']));
      done(e.addCell(cell('Kerb').part, null, 'Spare', '$20'));
      done(e.setByHand(cell('Extras').id, '$30', 'agreed'));
    }),
  );
  expect(steps.flatMap(({ changes }) => changes)).toEqual([
    { part: 'Landing', name: 'Run', was: '10 ft', is: '12 ft', how: 'was called Length, grew' },
    {
      part: 'Landing',
      name: 'Price',
      was: '$5 per ft',
      is: '$4 per ft',
      how: 'the price came down',
    },
    { part: 'Landing', name: 'Items', was: '$8', is: '$9', how: 'row changed' },
    { part: 'Landing', name: 'Items', was: null, is: 'twine, $2', how: 'row added' },
    {
      part: 'Landing',
      name: 'Extras',
      was: 'total of sum in items',
      is: '$30',
      how: 'set by hand, another source',
    },
    { part: 'Landing', name: 'Spare', was: null, is: '$20', how: 'added' },
  ]);
  expect(steps[0]?.from).toBe(comparison.price.before);
  expect(steps.at(-1)?.to).toBe(comparison.price.after);
  for (const [i, step] of steps.entries()) if (i > 0) expect(step.from).toBe(steps[i - 1]?.to);
  expect(method).toContain('every order');
});

test('what only works together is one step of several changes', () => {
  const { steps } = told(
    edited(TEXT, (e, cell) => {
      done(e.addCell(cell('Kerb').part, null, 'Waste', '10%'));
      done(e.setFormula(cell('Kerb').id, '(length plus waste) at price'));
    }),
  );
  expect(steps).toEqual([
    {
      changes: [
        {
          part: 'Landing',
          name: 'Kerb',
          was: 'length at price',
          is: '(length plus waste) at price',
          how: 'worked another way',
        },
        { part: 'Landing', name: 'Waste', was: null, is: '10%', how: 'added' },
      ],
      amount: '5.00',
      from: '68.00',
      to: '73.00',
    },
  ]);
});
