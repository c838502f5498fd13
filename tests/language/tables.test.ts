// Tables, look-ups and choices: what a formula comes to beside the tables of tables.ts, or what it is told.
import { describe, expect, it } from 'vitest';
import { TABLES, beside } from './tables.ts';

describe('a figure of a column', () => {
  it.each([
    ['total of volume in slab bays', '36.33 cubic feet'],
    ['the total of the volume in the slab bays', '36.33 cubic feet'],
    ['Total of Volume in Landing slab bays', '36.33 cubic feet'],
    ['total of length in slab bays', '26 ft 6 in'],
    ['greatest volume in slab bays', '16 cubic feet'],
    ['greatest of length in slab bays', '12 ft'],
    ['largest length in slab bays', '12 ft'],
    ['least width in slab bays', '3 ft'],
    ['smallest length in slab bays', '6 ft'],
    ['average of length in slab bays', '8 ft 10 in'],
    ['average length in slab bays', '8 ft 10 in'],
    ['how many slab bays', '3 bays'],
    ['how many joist spans', '5'],
    ['how many nothing yet', '0'],
  ])('%s → %s', (formula, shown) => {
    expect(beside(formula)).toMatchObject({ message: '', shown });
  });

  it.each([
    ['total of volume in slab bays plus waste, in bags of 0.45 cubic feet', '89 bags'],
    ['total of volume in slab bays, in cubic yards', '1.35 cubic yards'],
    ['half of total of length in slab bays', '13 ft 3 in'],
    ['total of length in slab bays at $2 per ft', '$53.00'],
    ['how many slab bays at $50 each', '$150.00'],
    ['what share (greatest volume in slab bays) is of (total of volume in slab bays)', '44.04%'],
    ['total of length in slab bays is more than 20 ft', 'yes'],
    ['total of volume in slab bays plus volume', '63.33 cubic feet'],
    ['total of length in slab bays divided by how many slab bays', '8 ft 10 in per bay'],
  ])('goes on in a formula: %s → %s', (formula, shown) => {
    expect(beside(formula)).toMatchObject({ message: '', shown });
  });

  it('brings rows written in other units to one, exactly', () => {
    // 4 ft and 2 m: 1.2192 m and 2 m.
    expect(beside('total of size in odd ones, in m')).toMatchObject({ exact: '3.2192' });
  });

  it('leaves out of a total what is not yet known, and says so; an average waits for it', () => {
    expect(beside('total of bags in slab bays').shown).toBe('21 bags so far; 1 line not yet known');
    expect(beside('average of bags in slab bays').shown).toBe('waits for Slab bays: C: bags');
  });

  it.each([
    ['total of depth in slab bays', 'unknown-column', 'depth'],
    ['total of volume in slab bay', 'unknown-table', 'slab bay'],
    ['how many slab bay', 'unknown-table', 'slab bay'],
    ['total of species in joist spans', 'column-not-amounts', 'total of species in joist spans'],
    ['total of mixed in odd ones', 'column-clash', 'total of mixed in odd ones'],
    ['total of size in nothing yet', 'no-rows', 'total of size in nothing yet'],
    ['slab bays times 2', 'table-not-a-value', 'slab bays'],
    ['total of 3 ft and volume in slab bays', 'unknown-column', '3 ft and volume'],
    ['total of spans in slab bays', 'unknown-column', 'spans'],
  ])('%s is told %s at "%s"', (formula, code, spot) => {
    expect(beside(formula)).toMatchObject({ shown: null, code, spots: [spot] });
  });

  it('names the row that measures something else', () => {
    expect(beside('total of mixed in odd ones').message).toContain(
      'row 1 holds a length and row 2 a weight: 4 ft, and 3 lb',
    );
  });
});

describe('a look-up reads the first row that fits', () => {
  it.each([
    [
      'read size off joist spans for species hem-fir, spacing joist spacing, span at least joist length',
      '2x10',
    ],
    [
      'read size off joist spans for species species, spacing 16 in and span at least 12 ft',
      '2x10',
    ],
    ['read span off joist spans for size 2x10', '13 ft 5 in'],
    ['read span off the joist spans for the species southern pine, treated', '11 ft 8 in'],
    ['read span off joist spans for species southern pine', '12 ft 2 in'],
    ['read size off joist spans for span over 11 ft, spacing 16 in', '2x10'],
    ['read size off joist spans for span under 12 ft', '2x8'],
    [
      'read span off joist spans for span at most 11 ft 8 in, species southern pine, treated',
      '11 ft 8 in',
    ],
    ['read span off joist spans for species "hem-fir", spacing is 16 in', '11 ft'],
    ['read span off joist spans for species is not hem-fir', '12 ft 2 in'],
    ['read span off joist spans for species hem-fir, rounded down to the next 5 ft', '10 ft'],
    ['read span off joist spans for species hem-fir, plus 1 ft', '13 ft'],
    ['(read span off joist spans for species hem-fir) times 2', '24 ft'],
    ['joist length at (read price off joist spans for species hem-fir, size 2x10)', '$21.00'],
    ['read volume off slab bays for bay B', '11.33 cubic feet'],
    ['read size off joist spans for spacing 1 ft, species hem-fir', '2x8'],
    ['read bay off slab bays for width under 4 ft', 'C'],
  ])('%s → %s', (formula, shown) => {
    expect(beside(formula)).toMatchObject({ message: '', shown });
  });

  it.each([
    [
      'read size off joist spans for species hem-fir, span at least 20 ft',
      'no-row',
      'span at least 20 ft',
    ],
    ['read size off joist spans for spacing 24 in', 'no-row', 'spacing 24 in'],
    ['read size off joist spans for species oak', 'not-a-choice', 'oak'],
    ['read size off joist spans for spacing 16', 'bare-number', '16'],
    ['read size off joist spans for species at least hem-fir', 'no-order', 'species'],
    ['read size off joist spans', 'phrase-slot', 'read size off joist spans'],
    ['read size off joist span for species hem-fir', 'unknown-table', 'joist span'],
    ['read depth off joist spans for species hem-fir', 'unknown-column', 'depth'],
    ['read size off joist spans for kind hem-fir', 'unknown-column', 'kind'],
    ['read size off joist spans for species', 'phrase-slot', 'species'],
  ])('%s is told %s at "%s"', (formula, code, spot) => {
    expect(beside(formula)).toMatchObject({ shown: null, code, spots: [spot] });
  });

  it('names the condition that no row met of those that met the others, and what stands there', () => {
    const { message } = beside(
      'read size off joist spans for species hem-fir, spacing 16 in, span at least joist length',
    );
    expect(message).toBe('');
    const missed = beside(
      'read size off joist spans for species hem-fir, spacing 16 in, span at least 20 ft',
    );
    expect(missed.message).toContain(
      'no row of those with "species hem-fir" and "spacing 16 in" has "span at least 20 ft"',
    );
    expect(missed.message).toContain('11 ft, 13 ft 5 in');
  });

  it('says of a cell how much it is that no row met', () => {
    expect(beside('read size off joist spans for spacing joist length').message).toContain(
      '"spacing joist length" (12 ft)',
    );
  });

  it('does not read past a value of another kind', () => {
    const money = beside('read size off joist spans for spacing $5');
    expect(money).toMatchObject({ code: 'unit-clash', spots: ['spacing', '$5'] });
  });

  it('waits where nothing stands in the row that it reads', () => {
    expect(beside('read price off joist spans for species southern pine, treated').shown).toBe(
      'waits for Joist spans: row 5: price',
    );
  });
});

describe('text that may be chosen needs no quotes', () => {
  it.each([
    ['species is hem-fir', 'yes'],
    ['species is not southern pine', 'yes'],
    ['species is southern pine, treated or thickness is 5 in', 'no'],
    ['species is "hem-fir"', 'yes'],
    ['finish is steel trowel', 'no'],
    ['finish is broom and thickness is 4 in', 'yes'],
    ['4 in where finish is exposed aggregate, otherwise 6 in', '6 in'],
    ['finish', 'broom'],
  ])('%s → %s', (formula, shown) => {
    expect(beside(formula)).toMatchObject({ message: '', shown });
  });

  it.each([
    ['species is oak', 'oak'],
    ['finish is brom', 'brom'],
    ['finish is steel', 'steel'],
  ])('%s is told what the choices are', (formula, spot) => {
    expect(beside(formula)).toMatchObject({ code: 'not-a-choice', spots: [spot] });
  });
});

it.each(['total of material in Deck', 'total of labour in the Deck', 'total of fees in this part'])(
  'a part is asked for its costs, though a table has a name near to it: %s',
  (formula) => {
    expect(beside(formula)).toMatchObject({ message: '', shown: '$0.00' });
  },
);

describe('a choice that begins with "not"', () => {
  const answers = (choices: string) =>
    TABLES.replace(
      '\n## Deck',
      `- Delivery: not needed\n  - choices: ${choices}\n- Needed: yes\n\n## Deck`,
    );

  it.each([
    ['delivery is not needed', 'yes', 'delivery is not needed'],
    ['delivery is not not needed', 'no', 'delivery is not not needed'],
    ['delivery is not by others', 'yes', 'delivery is not by others'],
    ['$0 where delivery is not needed, otherwise $5', '$0.00', null],
  ])('%s → %s', (formula, shown, readAs) => {
    const told = beside(formula, answers('included, not needed, by others'));
    expect(told).toMatchObject({ message: '', shown });
    expect(told.readAs).toBe(readAs ?? formula);
  });

  it('is offered with its own "not" where it was mistyped', () => {
    const told = beside('delivery is not neded', answers('included, not needed, by others'));
    expect(told).toMatchObject({ code: 'not-a-choice', fixes: ['delivery is not needed'] });
  });

  it('is not taken where what stands after "not" is a choice as well', () => {
    const told = beside('delivery is not needed', answers('needed, not needed, by others'));
    expect(told).toMatchObject({ message: '', shown: 'yes' });
    const choice = beside('delivery is "not needed"', answers('needed, not needed, by others'));
    expect(choice).toMatchObject({ message: '', shown: 'yes' });
  });
});

describe('a fix that is offered', () => {
  it.each([
    'total of dept in slab bays',
    'total of lenght in slab bays',
    'total of volume in slab bay',
    'how many joist span',
    'slab bays plus 1 ft',
    'read sise off joist spans for species hem-fir',
    'read size off joist span for species hem-fir',
    'read size off joist spans for spacng 16 in',
    'read size off joist spans for species hemfir',
    'read size off joist spans for spacing 16',
    'species is oak',
    'finish is brom',
  ])('leaves no problem of that sort: %s', (formula) => {
    const { code, fixes } = beside(formula);
    expect(code).not.toBeNull();
    expect(fixes.length).toBeGreaterThan(0);
    for (const fix of fixes) expect(beside(fix).code, fix).not.toBe(code);
  });
});

describe('the sentence', () => {
  it.each([
    ['the largest of the volume', 'unread'],
    ['greatest of volume in the slab bays', 'greatest volume in slab bays'],
    ['mean of volume in slab bays', 'unread'],
    [
      'read size off the joist spans for species is hem-fir and the spacing = 16 in and span ≥ 12 ft',
      'read size off joist spans for species hem-fir, spacing 16 in, span at least 12 ft',
    ],
    [
      'read span off joist spans for species hem-fir, plus 1 ft',
      '(read span off joist spans for species hem-fir) plus 1 ft',
    ],
    ['species is "hem-fir"', 'species is "hem-fir"'],
  ])('%s', (formula, said) => {
    const { readAs } = beside(formula);
    if (said === 'unread') expect(readAs).toBe('');
    else expect(readAs).toBe(said);
    if (said !== 'unread') expect(beside(readAs).readAs).toBe(readAs);
  });
});
