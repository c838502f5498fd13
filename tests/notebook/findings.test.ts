// Where the owner looks: each finding where it belongs, and none where it doesn't.
import { describe, expect, it, test } from 'vitest';
import { Estimate } from '../../src/notebook/estimate.ts';
import { done, cellNamed } from './cells.ts';

/** Codes with the cell they stand on, in order. */
function found(text: string): readonly string[] {
  const estimate = new Estimate(text);
  return estimate
    .findings()
    .map(({ code, cell }) =>
      cell === null ? code : `${code}: ${estimate.state(cell).input.name}`,
    );
}

const SOURCED = '\n  - from: plan\n';
const COST = '\n  - cost: material\n';

describe('a cost line that is counted twice', () => {
  const base = `- Concrete: $100${SOURCED.trimEnd()}${COST}- Truck: $65${SOURCED}- Rate: 5%${SOURCED}`;
  test.for([
    ['a cost line plus something', 'concrete plus truck', ['Concrete']],
    ['a cost line less something', 'concrete minus truck', ['Concrete']],
    ['a cost line plus a share', 'concrete plus rate', ['Concrete']],
    ['a cost line times a number', 'concrete times 2', ['Concrete']],
    ['a cost line in a list', 'total of concrete, truck and truck', ['Concrete']],
    ['a cost line marked up', '(concrete) marked up rate', ['Concrete']],
    ['a cost line rounded', 'concrete rounded up to the next $10', ['Concrete']],
    [
      'a cost line in a branch',
      'concrete where truck is more than $1, otherwise truck',
      ['Concrete'],
    ],
    ['a recap', 'total cost of this part', ['Concrete']],
    ['a worked cell between', 'between plus truck', ['Concrete']],
    ['only a share of a cost line', 'rate times concrete', []],
    ['a share of a cost line', '5% of concrete', []],
    ['what a cost line is taken from', 'truck minus concrete', []],
    ['no cost line', 'truck plus truck', []],
  ] as const)('%s', ([, formula, names]) => {
    const estimate = new Estimate(
      `## P\n${base}- Between: concrete plus truck\n- Line: ${formula}${COST}`,
    );
    const twice = estimate.findings().filter((f) => f.code === 'counted-twice');
    expect(twice.map((f) => f.message)).toEqual(
      names.map(
        (name) => `"Line" adds "${name}" in, which is a cost line of its own: it is counted twice.`,
      ),
    );
    expect(twice.every((f) => f.cell === cellNamed(estimate.notebook, 'Line').id)).toBe(true);
  });

  it('is no price line, which may take what it likes of the cost', () => {
    expect(
      found(
        `## P\n${base}- Overhead: total cost of this part times 10%\n  - price: overhead\n  - from: rule\n`,
      ),
    ).toEqual([]);
  });

  it('set by hand adds no other line in', () => {
    const text = `## P\n${base}- Line: concrete plus truck\n  - cost: material\n  - by hand: $9\n  - from: quote\n`;
    expect(found(text)).toEqual(['set-by-hand: Line']);
  });
});

describe('amounts without a source', () => {
  test.for([
    ['a given without from', '- Run: 3 ft\n', ['given-without-source: Run']],
    ['a given with from', `- Run: 3 ft${SOURCED}`, []],
    [
      'an amount in a worked formula',
      `- Run: 3 ft${SOURCED}- B: run plus 2 in\n`,
      ['assumed-amount: B'],
    ],
    ['an amount in a formula with from', `- Run: 3 ft${SOURCED}- B: run plus 2 in${SOURCED}`, []],
    ['a whole number', `- Run: 3 ft${SOURCED}- B: run times 2\n`, []],
    [
      'a factor that is no whole number',
      `- Run: 3 ft${SOURCED}- B: run times 1.15\n`,
      ['assumed-amount: B'],
    ],
    ['a rounding step', `- Run: 3 ft${SOURCED}- B: run rounded up to the next 1 ft\n`, []],
    ['nought', `- Run: $3${SOURCED}- B: run where run is more than $0, otherwise $0\n`, []],
    ['what is not yet known', '- Run: ?\n', ['not-yet-known: Run']],
    ['what waits for it', '- Run: ?\n- B: run times 2\n', ['not-yet-known: Run']],
  ] as const)('%s', ([, text, codes]) => {
    expect(found(text)).toEqual(codes);
  });
});

describe('sensible limits', () => {
  test.for([
    ['4 in', '3 1/2 in up to 8 in', []],
    ['3 1/2 in', '3 1/2 in up to 8 in', []],
    ['8 in', '3 1/2 in up to 8 in', []],
    ['1 ft', '3 1/2 in up to 8 in', ['outside-limits']],
    ['3 in', 'from 3 1/2 in up to 8 in', ['outside-limits']],
    ['30 cm', 'up to 8 in', ['outside-limits']],
    ['2 in', 'at least 3 in', ['outside-limits']],
    ['10%', 'up to 20%', []],
    ['30%', 'up to 20%', ['outside-limits']],
    ['$6 per bag', '$4 per bag up to $9 per bag', []],
    ['40 bags', '10 up to 60', []],
    ['4 lb', '3 in up to 8 in', ['limits-unlike']],
    ['4 in', 'whatever', ['limits-not-read']],
    ['4 in', '3 wugs up to 8 in', ['limits-not-read']],
    ['?', '3 in up to 8 in', ['not-yet-known']],
  ] as const)('%s, sensible %s', ([formula, limits, codes]) => {
    const estimate = new Estimate(`- Run: ${formula}\n  - from: plan\n  - sensible: ${limits}\n`);
    expect(estimate.findings().map((f) => f.code)).toEqual(codes);
  });

  it('may name another cell, and follow it', () => {
    const text = `- Top: 8 in${SOURCED}- Run: 9 in\n  - from: plan\n  - sensible: up to top\n`;
    const estimate = new Estimate(text);
    expect(estimate.findings().map((f) => f.code)).toEqual(['outside-limits']);
    done(estimate.setFormula(cellNamed(estimate.notebook, 'Top').id, '10 in'));
    expect(estimate.findings()).toEqual([]);
  });
});

test('a share written beside a cell that holds another one is pointed out', () => {
  const text = (waste: string): string =>
    `- Waste: ${waste}${SOURCED}- Run: 3 ft${SOURCED}- B: run plus 10% waste${SOURCED}`;
  expect(found(text('15%'))).toEqual(['other-share: B']);
  expect(found(text('10%'))).toEqual([]);
});

test('a check that fails says its caution; one that holds says nothing', () => {
  const text = (rise: string): string =>
    `- Rise: ${rise}${SOURCED}- Riser check: rise is at most 7 3/4 in\n  - from: code\n  - caution: Ask the building department.\n`;
  const estimate = new Estimate(text('8 in'));
  expect(estimate.findings().map((f) => [f.code, f.message])).toEqual([
    ['check-fails', '"Riser check" does not hold. Ask the building department.'],
  ]);
  expect(found(text('7 in'))).toEqual([]);
});

test('a value by hand is listed with what it stands in place of, and why', () => {
  const estimate = new Estimate(
    `- Run: 3 ft${SOURCED}- B: run times 2\n  - by hand: 7 ft\n  - from: measured again\n- C: run times 3\n  - by hand: 8 ft\n`,
  );
  expect(estimate.findings().map((f) => f.message)).toEqual([
    '"B" is set by hand: 7 ft in place of 6 ft (measured again).',
    '"C" is set by hand: 8 ft in place of 9 ft; no reason is given.',
  ]);
});

test('a fault is listed once, at its cell, and what waits for it is not', () => {
  const estimate = new Estimate(`- Run: 3 ft${SOURCED}- B: run plus nobody\n- C: b times 2\n`);
  expect(estimate.findings().map((f) => f.code)).toEqual(['unknown-name']);
});

test('findings about the text come with those about the numbers', () => {
  expect(found(`- Run: 3 ft\n  - from: plan\n  - bogus: x\n- Run: 4 ft${SOURCED}`)).toEqual([
    'remark-not-known: Run',
    'same-name: Run',
  ]);
});

describe('a part said in words', () => {
  const run = `- Run: 3 ft${SOURCED}`;
  test.for([
    ['half of run', []],
    ['a third of run', []],
    ['1.15 times run', ['assumed-amount: B']],
    ['run plus 1/2 in', ['assumed-amount: B']],
  ] as const)('%s', ([formula, codes]) => {
    expect(found(`${run}- B: ${formula}\n`)).toEqual(codes);
  });
});

describe('a written share beside a cell that holds another', () => {
  const waste = `- Waste: 15%${SOURCED}- Profit: 12%${SOURCED}- Run: $300${SOURCED}`;
  test.for([
    ['run plus 10% waste', ['other-share: B']],
    ['run plus 10% for waste', ['other-share: B']],
    ['run for 10% profit', ['other-share: B']],
    ['run plus 15% waste', []],
    ['run plus 10% extra', []],
  ] as const)('%s', ([formula, codes]) => {
    expect(found(`## P\n${waste}- B: ${formula}${SOURCED}`)).toEqual(codes);
  });
});

describe('a total says what it leaves out', () => {
  const total = (line: string): string | null => {
    const e = new Estimate(
      `## P\n- A: $5\n  - cost: fee\n- B: ${line}\n  - cost: fee\n- Area: ?\n- All: total cost of this part\n`,
    );
    return e.shown(cellNamed(e.notebook, 'All').id)?.text ?? null;
  };
  test.for([
    ['$?', '$5.00 so far; 1 line not yet known'],
    ['area at $2 per sq ft', '$5.00 so far; 1 line not yet known'],
    ['nonsense', '$5.00 so far; 1 line without a value'],
    ['$5 divided by 0', '$5.00 so far; 1 line without a value'],
  ] as const)('%s', ([line, text]) => {
    expect(total(line)).toBe(text);
  });
});

test("a cost line set by hand says its formula's worth in dollars", () => {
  const e = new Estimate(
    '- Concrete: 40 bags at 85 cents per bag\n  - cost: material\n  - by hand: $30\n  - from: quote\n',
  );
  const { id } = cellNamed(e.notebook, 'Concrete');
  expect([e.shown(id)?.text, e.shownWorked(id)?.text]).toEqual(['$30.00', '$34.00']);
});

describe('however long a circle is', () => {
  const ring = (many: number): Estimate =>
    new Estimate(
      Array.from({ length: many }, (_, i) => `- C${i}: c${(i + 1) % many} plus 1\n`).join(''),
    );

  it('every cell in it is pointed out once, with the next one around', () => {
    const findings = ring(1200).findings();
    expect(findings.map((f) => f.code)).toEqual(Array.from({ length: 1200 }, () => 'circle'));
    expect(findings[7]?.message).toBe(
      'These 1,200 cells wait for one another. C7 needs C8, and C8 in turn, over others, needs C7. ' +
        'Give one of them a plain amount, or a formula without the others.',
    );
  });
});
