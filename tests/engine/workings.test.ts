import { describe, expect, test } from 'vitest';
import { Job } from './job.ts';

const slab = `
Slab
slab length: 12 ft
slab width: 4 ft
thickness: 4 in
waste: 10%
bag yield: 0.45 cubic feet per bag
bag price: $6.48 per bag
volume: slab length by slab width by thickness
bags: volume plus waste, in bags of bag yield
concrete: bags at bag price | material
`;

describe('a job', () => {
  test('is worked from its formulas', () => {
    const job = new Job(slab);
    expect(job.value('volume')).toBe('16 cubic feet');
    expect(job.value('bags')).toBe('40 bags');
    expect(job.value('concrete')).toBe('$259.20');
    expect(job.ran.split(' ').length).toBeGreaterThan(9);
  });

  test('tells givens, worked cells and checks apart', () => {
    const job = new Job(`${slab}\nthick enough: thickness is at least 4 in\nopen: ?`);
    expect(['slab length', 'volume', 'thick enough', 'open'].map((n) => job.state(n).kind)).toEqual(
      ['given', 'worked', 'check', 'given'],
    );
  });

  test('says what a cell needs and what it goes into', () => {
    const job = new Job(slab);
    expect(job.state('bags').needs.map((id) => job.name(id))).toEqual([
      'volume',
      'waste',
      'bag yield',
    ]);
    expect(job.state('bags').goesInto.map((id) => job.name(id))).toEqual(['concrete']);
  });

  test('works any stretch of a formula on its own', () => {
    const job = new Job(slab);
    const plan = job.state('bags').reading.checked?.parts[0]?.plan;
    expect(plan && job.workings.evaluate(plan).kind).toBe('value');
  });
});

describe('an edit', () => {
  test('runs the edited cell and what it reaches, in order', () => {
    const job = new Job(slab);
    expect(job.edit('slab length: 13 ft')).toBe('slab length volume bags concrete');
    expect(job.value('bags')).toBe('43 bags');
  });

  test('that rounding absorbs goes no further', () => {
    const job = new Job(slab);
    expect(job.edit('waste: 10.1%')).toBe('waste bags');
  });

  test('to another way of writing the same value wakes nobody but those who show its unit', () => {
    const job = new Job('run: 12 ft\narea: run by 2 ft\nc: 3 bags\nd: c times 2');
    expect(job.edit('c: 3 bag')).toBe('c');
    expect(job.edit('run: 144 in')).toBe('run area');
  });

  test('of what a cell measures is checked in all that read it', () => {
    const job = new Job(slab);
    expect(job.edit('thickness: 4 lb')).toBe('thickness volume bags concrete');
    expect(job.state('bags').outcome.kind).toBe('fault');
    expect(job.value('concrete')).toBe('waiting for bags');
    job.edit('thickness: 4 in');
    expect(job.value('concrete')).toBe('$259.20');
  });

  test('a fault keeps the last good value of all that wait for it', () => {
    const job = new Job(slab);
    job.edit('volume: slab length by slab widht');
    expect(job.value('volume')).toBe('unknown-name');
    expect(job.value('bags')).toBe('waiting for volume');
    expect(job.value('concrete')).toBe('waiting for bags');
    const last = job.state('concrete').lastGood;
    expect(last && job.said({ kind: 'value', value: last.value, leftOut: [] }, last)).toBe(
      '$259.20',
    );
  });

  test('several edits settle once', () => {
    const job = new Job(slab);
    expect(job.edit('slab length: 10 ft', 'slab width: 5 ft')).toBe(
      'slab length slab width volume bags concrete',
    );
  });
});

describe('names', () => {
  test('a new name is found by the formulas that hold its words, and no others', () => {
    const job = new Job('n: 2\nx: paint price times n\ny: n times 3');
    expect(job.value('x')).toBe('unknown-name');
    expect(job.edit('paint price: $4')).toBe('paint price x');
    expect(job.value('x')).toBe('$8.00');
  });

  test('a longer name takes its words over', () => {
    const job = new Job('slab: 2 ft\nx: slab area in sq ft');
    expect(job.state('x').outcome.kind).toBe('fault');
    job.edit('slab area: 9 sq ft');
    expect(job.value('x')).toBe('9 sq ft');
    job.drop('slab area');
    expect(job.state('x').outcome.kind).toBe('fault');
  });

  test('a dropped name leaves its users at fault and what reads them waiting', () => {
    const job = new Job(slab);
    job.drop('thickness');
    expect(job.value('volume')).toBe('unknown-name');
    expect(job.value('concrete')).toBe('waiting for bags');
    job.edit('thickness: 4 in');
    expect(job.value('concrete')).toBe('$259.20');
  });

  test('a renamed cell is lost by the old name and found by the new one', () => {
    const job = new Job('length: 3 ft\nx: length times 2\ny: run times 2');
    expect(job.value('y')).toBe('unknown-name');
    job.put('length', { name: 'run' });
    expect(job.value('x')).toBe('unknown-name');
    expect(job.value('y')).toBe('6 ft');
  });

  test('nearest names are offered anew when a name comes that is nearer', () => {
    const job = new Job('slab width: 4 ft\nx: slab lenght by 2 ft');
    job.edit('slab length: 12 ft');
    const { outcome } = job.state('x');
    expect(outcome.kind === 'fault' && outcome.report.fixes.map((fix) => fix.formula)).toContain(
      'slab length by 2 ft',
    );
  });

  test('the own part comes first, and another part is reached by its name', () => {
    const job = new Job(`
      Deck
      width: 14 ft
      area: width by 10 ft
      Landing
      width: 4 ft
      share: Deck width by 1 ft
      x: width by 1 ft
    `);
    expect(job.value('area')).toBe('140 sq ft');
    expect(job.value('share')).toBe('14 sq ft');
    expect(job.value('x')).toBe('4 sq ft');
  });

  test('a renamed part is read by its new name', () => {
    const job = new Job('Deck\nwidth: 14 ft\nLanding\nx: Terrace width times 1\nwidth: 2 ft');
    expect(job.state('x').outcome.kind).toBe('fault');
    job.change({
      kind: 'parts',
      parts: job.parts.map((p) => (p.name === 'Deck' ? { ...p, name: 'Terrace' } : p)),
    });
    expect(job.value('x')).toBe('14 ft');
  });

  test('two cells of one name in a part do no harm', () => {
    const job = new Job('n: 2\nn: 3\nb: n times 2');
    expect(['value', 'fault']).toContain(job.state('b').outcome.kind);
    job.edit('c: b');
    expect(() => job.drop('n')).not.toThrow();
  });

  test('names that are words of the machine are names like others', () => {
    const job = new Job(
      'constructor: 2\n__proto__: 3\nx: constructor plus __proto__\ntoString: x times 2',
    );
    expect(job.value('toString')).toBe('10');
  });
});

describe('circles', () => {
  test('are named cell by cell from where one stands, and mended by an edit', () => {
    const job = new Job(
      'deck area: 3 times waste\nboard count: deck area plus 1\nwaste: board count times 2\nother: 5\nend: waste plus other',
    );
    const { outcome } = job.state('board count');
    expect(outcome.kind === 'fault' && outcome.report).toMatchObject({
      code: 'circle',
      headline: 'These three cells wait for one another.',
      spots: [{ from: 0, to: 9 }],
      explanation:
        'board count needs deck area needs waste needs board count. ' +
        'Give one of them a plain amount, or a formula without the other two.',
    });
    expect(job.value('end')).toBe('waiting for waste');
    expect(job.value('other')).toBe('5');
    job.edit('waste: 4');
    expect(job.value('board count')).toBe('13');
    expect(job.value('end')).toBe('9');
  });

  test('a cell keeps its last good value when an edit closes a circle', () => {
    const job = new Job('n: 2\nb: n times 3');
    job.edit('n: b plus 1');
    expect([job.value('n'), job.value('b')]).toEqual(['circle', 'circle']);
    expect(String(job.state('b').lastGood?.value)).toBe('6');
    expect(job.edit('n: 5')).toBe('n b');
    expect(job.value('b')).toBe('15');
  });

  test('a long one is shortened', () => {
    const names = Array.from({ length: 20 }, (_, i) => `c${i}`);
    const job = new Job(names.map((n, i) => `${n}: ${names[(i + 1) % 20]} times 1`).join('\n'));
    const { outcome } = job.state('c3');
    expect(outcome.kind === 'fault' && outcome.report.explanation).toMatch(
      /^c3 needs c4 needs c5 needs .* c1 needs c2 needs c3\./,
    );
    expect(outcome.kind === 'fault' && outcome.report.headline).toBe(
      'These 20 cells wait for one another.',
    );
  });

  test("a cell's own name in its formula is no circle", () => {
    const job = new Job('Joists: joists every 16 in along 12 ft');
    expect(job.value('Joists')).toBe('10 joists');
  });

  test("a fee that is a share of its own part's total is one, and the mend is offered", () => {
    const job = new Job(
      'Landing\nboards: $60 | material\nwork: $29 | labour\nfee: 11% of total cost of this part | fee',
    );
    const { outcome } = job.state('fee');
    expect(outcome.kind === 'fault' && outcome.report.code).toBe('circle');
    expect(outcome.kind === 'fault' && outcome.report.explanation).toContain('for 11% fee');
    const fix = outcome.kind === 'fault' ? outcome.report.fixes[0]?.formula : undefined;
    expect(fix).toBe('11% of (total of boards and work, for 11% fee)');
    job.edit(`fee: ${fix} | fee`);
    expect(job.value('fee')).toBe('$11.00');
  });
});

describe('what is not yet known', () => {
  test('is passed on to what needs it', () => {
    const job = new Job('rate: $? per hour\nhours: 8 hours\nlabour cost: hours at rate | labour');
    expect(job.value('labour cost')).toBe('unknown for rate');
    job.edit('rate: $50 per hour');
    expect(job.value('labour cost')).toBe('$400.00');
  });

  test('is left out of totals, and they say so however far they are carried', () => {
    const job = new Job(`
      Landing
      boards: $100 | material
      stain: $? | material
      nails: $20 | material
      Summary
      materials: total of material in Landing
      price: materials plus 10%
      too much: price is more than $100
    `);
    expect(job.value('materials')).toBe('$120.00 so far without stain');
    expect(job.value('price')).toBe('$132.00 so far without stain');
    expect(job.value('too much')).toBe('unknown for stain');
    job.edit('stain: $30 | material');
    expect(job.value('price')).toBe('$165.00');
    expect(job.value('too much')).toBe('yes');
  });

  test('a line at fault is left out in the same way', () => {
    const job = new Job(`
      Landing
      boards: $100 | material
      stain: $10 by lost width | material
      glue: $10 divided by none | material
      none: 0
      total cost: total cost of Landing
    `);
    expect(job.value('total cost')).toBe('$100.00 so far without stain, glue');
  });
});

describe('recaps', () => {
  const job = (): Job =>
    new Job(`
    Deck
    boards: $100 | material
    screws: $20 | material
    crew: $400 | labour
    Steps
    treads: $70 | material
    Summary
    deck materials: total of material in Deck
    all materials: total of material in every part
    everything: total cost of the job
  `);

  test('add the cost lines of their kind and part', () => {
    expect(['deck materials', 'all materials', 'everything'].map((n) => job().value(n))).toEqual([
      '$120.00',
      '$190.00',
      '$590.00',
    ]);
  });

  test('are read again when a line comes, goes, or is of another kind or part', () => {
    const changing = job();
    expect(changing.put('treads', { part: 'deck' })).toContain('deck materials');
    expect(changing.value('deck materials')).toBe('$190.00');
    changing.put('screws', { money: { line: 'cost', kind: 'labour' } });
    expect(changing.value('deck materials')).toBe('$170.00');
    changing.drop('boards');
    expect(changing.value('deck materials')).toBe('$70.00');
    expect(changing.value('everything')).toBe('$490.00');
    changing.put('crew', { money: null });
    expect(changing.value('everything')).toBe('$90.00');
  });

  test("a line of another part does not touch a part's recap", () => {
    const changing = job();
    expect(changing.edit('treads: $80 | material')).toBe('treads all materials everything');
  });

  test('keep their lines in the order of the notebook', () => {
    const changing = job();
    const ids = ['crew', 'screws', 'boards', 'treads'].map((n) => changing.id(n));
    changing.change({ kind: 'order', ids });
    expect(changing.state('everything').needs).toEqual(ids);
  });
});

describe('cost lines', () => {
  test('are to the cent wherever they are used, so that totals add up as shown', () => {
    const job = new Job(
      'd: $10 divided by 3 | material\nb: $10 divided by 3 | material\nc: total of d and b',
    );
    expect(job.value('d')).toBe('$3.33');
    expect(job.value('c')).toBe('$6.66');
  });

  test.each([
    ['$0.125', '$0.13'],
    ['0 - $0.125', '−$0.13'],
    ['$1 divided by 3, times 3', '$1.00'],
    ['85 cents times 1.5', '$1.28'],
    ['45 min at $50 per hour', '$37.50'],
    ['0', '$0.00'],
  ])('%s is %s', (formula, shown) => {
    const job = new Job(`x: ${formula} | material\ny: x times 1`);
    expect(job.value('x')).toBe(shown);
    expect(job.value('y')).toBe(shown);
  });

  test('a change below a cent goes no further', () => {
    const job = new Job('x: $1.001 | material\ny: x plus $1');
    expect(job.edit('x: $1.002 | material')).toBe('x');
  });

  test('have to end in money alone', () => {
    const job = new Job(
      'bag price: $6.48 per bag\nConcrete: bag price | material\nLength: 12 ft | material\nend: Concrete plus $1',
    );
    const { outcome } = job.state('Concrete');
    expect(outcome.kind === 'fault' && outcome.report).toMatchObject({
      code: 'not-yet-a-cost',
      headline: 'This is a price per bag, not yet a cost.',
      spots: [{ from: 0, to: 9 }],
    });
    expect(job.value('Length')).toBe('not-yet-a-cost');
    expect(job.value('end')).toBe('waiting for Concrete');
  });

  test('what is counted above the line beside money drops out', () => {
    const job = new Job('x: 3 people times 8 hours at $50 per hour | labour');
    expect(job.value('x')).toBe('$1,200.00');
  });

  test('a price line is to the cent too', () => {
    const job = new Job('x: $10 divided by 3 | price');
    expect(job.value('x')).toBe('$3.33');
    job.edit('x: 12 ft | price');
    expect(job.value('x')).toBe('not-yet-a-cost');
  });
});

describe('a value by hand', () => {
  test('is used, and what the formula comes to stays beside it', () => {
    const job = new Job('n: 4 ft\nb: n times 2 | by hand 9 ft\nc: b times 10');
    expect(job.value('b')).toBe('9 ft');
    expect(job.worked('b')).toBe('8 ft');
    expect(job.value('c')).toBe('90 ft');
    expect(job.edit('n: 5 ft')).toBe('n b');
    expect(job.worked('b')).toBe('10 ft');
    expect(job.edit('b: n times 2')).toBe('b c');
    expect(job.value('c')).toBe('100 ft');
  });

  test('of another kind is a fault that says both', () => {
    const job = new Job('b: 4 ft times 2 | by hand $9\nc: b times 2');
    const { outcome } = job.state('b');
    expect(outcome.kind === 'fault' && outcome.report).toMatchObject({
      code: 'by-hand-measure',
      headline: 'By hand this is money, by its formula a length.',
      spots: [],
    });
    expect(job.worked('b')).toBe('8 ft');
    expect(job.value('c')).toBe('waiting for b');
  });

  test("that can't be read is a fault, not a guess", () => {
    const job = new Job('b: 4 ft times 2 | by hand some');
    expect(job.value('b')).toBe('by-hand-unread');
  });

  test.each([
    ['40 bags times 2', '90', '90 bags'],
    ['$40 times 2', '90', '$90.00'],
    ['2 hours times 2', '5', '5 hours'],
    ['60 in divided by 8 risers', '7 3/4 in', '7 3/4 in per riser'],
  ])('%s by hand %s is %s', (formula, hand, shown) => {
    expect(new Job(`x: ${formula} | by hand ${hand}`).value('x')).toBe(shown);
  });

  test('may stand in for a formula that is at fault', () => {
    const job = new Job('b: lost width times 2 | by hand 9 ft\nc: b times 2');
    expect(job.value('c')).toBe('18 ft');
    expect(job.worked('b')).toBe('unknown-name');
  });

  test('may be not yet known', () => {
    const job = new Job('b: 2 ft times 2 | by hand ?\nc: b times 2');
    expect(job.value('c')).toBe('unknown for b');
  });

  test('of a cost line is to the cent too', () => {
    const job = new Job('x: $5 times 3\ny: x');
    const cell = job.cells.get(job.id('x'));
    if (cell) job.put('x', { byHand: '$7.005', money: { line: 'cost', kind: 'material' } });
    expect(job.value('x')).toBe('$7.01');
    expect(job.value('y')).toBe('$7.01');
  });
});

describe("what can't be worked", () => {
  test('division by nothing points at what is nothing', () => {
    const job = new Job('risers: 0\nrise: 52 in\nstep: rise divided by risers\nend: step times 2');
    const { outcome } = job.state('step');
    expect(outcome.kind === 'fault' && outcome.report).toMatchObject({
      code: 'division-by-zero',
      spots: [{ from: 16, to: 22 }],
    });
    expect(job.value('end')).toBe('waiting for step');
    expect(job.edit('risers: 7')).toBe('risers step end');
    expect(job.state('end').outcome.kind).toBe('value');
  });

  test('a fault of values has no part in what the cell measures', () => {
    const job = new Job('none: 0\nx: 12 ft divided by none\ny: x plus $3');
    expect(job.state('x').holds).not.toBeNull();
    expect(job.state('y').outcome.kind).toBe('fault');
  });
});

describe('a draft', () => {
  test('is read and worked, and changes nothing', () => {
    const job = new Job(slab);
    const draft = job.workings.draft('slab', job.id('bags'), 'volume in bags of bag yield');
    expect(job.said(draft.outcome, draft)).toBe('36 bags');
    expect(job.value('bags')).toBe('40 bags');
  });

  test('tells of the circle it would make', () => {
    const job = new Job(slab);
    const draft = job.workings.draft('slab', job.id('volume'), 'bags times 1 cubic ft per bag');
    expect(draft.outcome.kind === 'fault' && draft.outcome.report.code).toBe('circle');
    expect(job.value('volume')).toBe('16 cubic feet');
  });

  test('follows the rules of the cost line it is for', () => {
    const job = new Job(slab);
    const draft = job.workings.draft('slab', job.id('concrete'), 'bag price');
    expect(draft.outcome.kind === 'fault' && draft.outcome.report.code).toBe('not-yet-a-cost');
  });

  test('needs no cell', () => {
    const job = new Job(slab);
    const draft = job.workings.draft('slab', null, 'slab length by 2 ft');
    expect(job.said(draft.outcome, draft)).toBe('24 sq ft');
  });
});

describe('what is out of all measure', () => {
  test('a formula of a hundred thousand characters is a clear fault, and the rest goes on', () => {
    const job = new Job(`x: ${'1 plus '.repeat(15_000)}1\ny: 2 times 3`);
    expect(job.value('x')).toBe('too-long');
    expect(job.value('y')).toBe('6');
  });

  test('five thousand nested brackets are a clear fault', () => {
    const job = new Job(`x: ${'('.repeat(4_990)}1\nz: ${'('.repeat(4_900)}1${')'.repeat(4_900)}`);
    expect(['too-deep', 'unclosed-bracket']).toContain(job.value('x'));
    expect(job.value('z')).toBe('too-deep');
  });

  test('the longest sum that can be read is worked', () => {
    const terms = 2_400;
    const job = new Job(`n: 2\nx: ${'n + '.repeat(terms - 1)}n`);
    expect(job.value('x')).toBe((2 * terms).toLocaleString('en-US'));
    expect(job.edit('n: 3')).toBe('n x');
  });

  test('a share taken of what stands before it, two hundred times over, is worked in as many steps', () => {
    const job = new Job(`n: $100\nx: n${' plus 1%'.repeat(200)}`);
    expect(job.value('x')).toBe('$731.60');
  });

  test('a chain of ten thousand cells runs and settles', () => {
    const lines = Array.from({ length: 10_000 }, (_, i) =>
      i === 0 ? 'c0: 1' : `c${i}: c${i - 1} plus 1`,
    );
    const job = new Job(lines.join('\n'));
    expect(job.value('c9999')).toBe('10,000');
    job.edit('c0: 2');
    expect(job.workings.ran.length).toBe(10_000);
  });
});
