// Choices that cost money when they are only guessed at, held against each other before one is made.
import { describe, expect, test } from 'vitest';
import { Alternatives } from '../../src/moves-it/compared.ts';
import { type Result, signed } from '../../src/moves-it/stood.ts';
import { Estimate } from '../../src/notebook/estimate.ts';

/** What each alternative comes to in this result, with the difference; and as it is. */
function compared(
  text: string,
  name: string,
  ways: Readonly<Record<string, Readonly<Record<string, string>>>>,
): readonly string[] {
  const estimate = new Estimate(text);
  const cells = estimate.notebook.parts.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === 'cell' ? [block.cell] : [])),
  );
  const idOf = (called: string): number => {
    const cell = cells.find((one) => one.name === called);
    if (!cell) throw new Error(`no cell called ${called}`);
    return cell.id;
  };
  const result: Result = { of: 'cell', cell: idOf(name) };
  const alternatives = Object.entries(ways).map(([way, puts]) => ({
    name: way,
    puts: Object.entries(puts).map(([cell, formula]) => ({ cell: idOf(cell), formula })),
  }));
  const told = new Alternatives((copy) => new Estimate(copy)).compare(estimate, alternatives, [
    result,
  ]);
  expect(told.flatMap(({ refused }) => refused)).toEqual([]);
  return told.map(({ results: [{ stood, moved }] }) =>
    `${stood.text} ${signed(moved) ?? ''}`.trim(),
  );
}

describe('PC-07: a yard too many against a truck that runs short', () => {
  const text = `# Slab

## Concrete

- Calculated: 8.8 cubic yards
- Really needed: 9.5 cubic yards
- Ordered: 9 cubic yards
- First price: $1,000 divided by 9 cubic yards
- Second truck: $430
- Short: the greater of (really needed minus ordered) and 0 cubic yards
- First load: ordered at first price
  - cost: material
- Second load: second truck where short is more than 0 cubic yards, otherwise $0
  - cost: material
- Concrete: first load plus second load
`;

  test('ordering ten costs a yard more and saves the second truck', () => {
    expect(
      compared(text, 'Concrete', {
        'As ordered': {},
        'A yard more': { Ordered: '10 cubic yards' },
        'With 10% waste': {
          Ordered: 'calculated plus 10%, rounded up to the next 0.25 cubic yards',
        },
      }),
    ).toEqual(['$1,430.00', '$1,111.11 −$318.89', '$1,083.33 −$346.67']);
  });

  test('what the overrun was stands there as a share', () => {
    const overrun = `${text}- Overrun: what share (really needed minus calculated) is of calculated\n`;
    expect(compared(overrun, 'Overrun', { Known: { Calculated: '9.5 cubic yards' } })).toEqual([
      '0% −7.95%',
    ]);
  });
});

describe('PC-30: three rules of tax beside each other', () => {
  test('are three columns, and none of them says which is the law', () => {
    const text = `# Bill

## Tax

- Materials: $4,000
- Work: $6,000
- Material tax: 8%
- Labour tax: 0%
- Tax on the bill: material tax of materials plus labour tax of work
- Bill: materials plus work plus tax on the bill
`;
    expect(
      compared(text, 'Bill', {
        'Materials taxed': {},
        'All taxed': { 'Labour tax': '8%' },
        'Inside the cost': { Materials: '$4,000 plus 8%', 'Material tax': '0%' },
      }),
    ).toEqual(['$10,320.00', '$10,800.00 +$480.00', '$10,320.00']);
  });
});
