// What builders type: habits that are read rightly or refused with a fix, never read wrongly in silence.
import { describe, expect, it } from 'vitest';
import { GIVENS, worked } from './worked.ts';

const givens = [...GIVENS, 'Deck area: 224 sq ft', 'Slab volume: 16 cubic feet', 'Cost: $1,234'];

describe('lengths with marks', () => {
  it.each([
    ['15\'-9 1/2"', '15 ft 9 1/2 in'],
    ['9\'-4½"', '9 ft 4 1/2 in'],
    ['11’9', '11 ft 9 in'],
    ["3'6", '3 ft 6 in'],
    ['4"', '4 in'],
    ['4 inch', '4 in'],
    ['12\'\u00a06"', '12 ft 6 in'],
    ['12’ 6½”', '12 ft 6 1/2 in'],
    ["24' x 20'", '480 sq ft'],
    ['½ in', '1/2 in'],
  ])('%s is %s', (typed, shown) => {
    expect(worked(typed, givens)).toMatchObject({ message: '', shown });
  });
});

describe('short words and marks', () => {
  it.each([
    ['joists @ 16" o.c. along 12 ft', '10 joists'],
    ['joists at 16 in on center along 12 ft', '10 joists'],
    ['36 bags @ bag price', '$233.28'],
    ['36 bags @ $6.48 ea', '$233.28'],
    ['slab volume w/ 10% waste', '17.6 cubic feet'],
    ['60# times 40', '2,400 lb'],
    ['85¢ times 4', '$3.40'],
    ['1200 screws at $45/M', '$54.00'],
    ['1200 screws at $45 per thousand', '$54.00'],
    ['200 lb at $12 per 100 lb', '$24.00'],
    ['$1.2k', '$1,200.00'],
    ['10 percent of cost', '$123.40'],
    ['224 sqft', '224 sq ft'],
    ['224 SF', '224 sq ft'],
    ['2 cu. yds.', '2 cubic yards'],
    ['7 3/4 in max', '7 3/4 in'],
    ['the greater of 4 ft & 5 ft', '5 ft'],
  ])('%s is %s', (typed, shown) => {
    expect(worked(typed, givens)).toMatchObject({ message: '', shown });
  });
});

describe('rounding and limits as they are said', () => {
  it.each([
    ['slab volume rnd up to the next cubic yard', '1 cubic yard'],
    ['slab volume, round up to the next half yard', '1 cubic yard'],
    ['cost, nearest $50', '$1,250.00'],
    ['cost to the nearest dollar', '$1,234.00'],
    ['$50 minus cost, not below 0', '$0.00'],
    ['thickness is 4 in or less', 'yes'],
    ['thickness is 5 in or more', 'no'],
  ])('%s is %s', (typed, shown) => {
    expect(worked(typed, givens)).toMatchObject({ message: '', shown });
  });
});

describe('shares and fractions in words', () => {
  it.each([
    ['$42 as a share of $60', '70%'],
    ['$42 as a percent of $60', '70%'],
    ['half of slab length', '6 ft'],
    ['a third of slab length', '4 ft'],
    ['twice the slab width', '8 ft'],
    ['same as slab width', '4 ft'],
    ['cost split 4 ways', '$308.50'],
    ['slab length times 2?', '24 ft'],
    ['slab length and slab width together', '16 ft'],
    ['$5, $6 and $7 added up, times 2', '$36.00'],
  ])('%s is %s', (typed, shown) => {
    expect(worked(typed, givens)).toMatchObject({ message: '', shown });
  });
});

describe('numbers and limits in words', () => {
  it.each([
    ['seven and a half inches', '7 1/2 in'],
    ['5 ft 7 and a half inches', '5 ft 7 1/2 in'],
    ['is slab length bigger than slab width?', 'yes'],
    ['one third of cost', '$411.33'],
    ['cost plus ten percent', '$1,357.40'],
    ['30 feet less three inches', '29 ft 9 in'],
    ['sum of $5, $6 and $7', '$18.00'],
    ['$50 an hour times 3 hours', '$150.00'],
    ['cost, minimum charge $2,000', '$2,000.00'],
    ['cost, at least $2,000', '$2,000.00'],
    ['cost capped at $400', '$400.00'],
    ['8.89 cy w/ 10% waste, up to the nearest 1/4 yd', '10 cubic yards'],
    ['cost with a 20% margin', '$1,542.50'],
    ['if cost > $4,000 then 15% of cost else 20% of cost', '$246.80'],
    ['cost plus 10% for waste', '$1,357.40'],
    ['cost plus 10 percent for the sales tax', '$1,357.40'],
    ["24'x30'", '720 sq ft'],
    ['6 in^2', '6 sq in'],
    ['6 in²', '6 sq in'],
    ['slab width^2', '16 sq ft'],
    ['2 guys times 8 hours at $50 per hour', '$800.00'],
    ['cost ??', '$1,234.00'],
    ['cost plus $1 please', '$1,235.00'],
    ['40 feet long by 3 feet 6 inches wide', '140 sq ft'],
  ])('%s is %s', (typed, shown) => {
    const answer = worked(typed, givens);
    if (shown) expect(answer).toMatchObject({ message: '', shown });
    else expect(answer.code).not.toBeNull();
  });
});

describe('what was mended after builders tried it', () => {
  it.each([
    ['slab length divided by 5 1/2 in, rounded up to whole boards', '27 boards'],
    ['50 boards plus 10%, rounded up to whole boards', '55 boards'],
    ['thirty boards at $2 per board', '$60.00'],
    ['cost but at least $2,000', '$2,000.00'],
    ['cost, min $2,000', '$2,000.00'],
    ['max of cost and $2,000', '$2,000.00'],
    ['cost plus $66 at a 20% margin', '$1,625.00'],
    ['posts at 2 ft centres along 12 ft', '7 posts'],
    ['slab width / 5 1/2 in roundup', '9'],
    ['$100 for a 7½% margin', '$108.11'],
    ['$100 for 7-1/2% profit', '$108.11'],
    ['(1 − 10%) plus 20%', '1.08'],
    ['1 − 10%, less 20%', '0.72'],
    ['(4 in where thickness is 4 in, otherwise 5 in or thickness, whichever is greater)', '4 in'],
    ['4 in or 5 in, whichever is greater, or 3 in, whichever is less', '3 in'],
  ])('%s is %s', (typed, shown) => {
    expect(worked(typed, givens)).toMatchObject({ message: '', shown });
  });

  it('counts another thing only on purpose', () => {
    expect(worked('50 boards plus 10%, rounded up to whole bags', givens).code).not.toBeNull();
  });

  it('finds a name that begins with an operator word after a comma', () => {
    const sides = [...givens, 'Per side: 7 in'];
    const typed =
      '4 in where slab length is 3 ft, per side where slab width is 4 ft, otherwise 5 in';
    expect(worked(typed, sides).shown).toBe('7 in');
  });

  it.each([
    ['6 in where thickness is less than 4 4 in, otherwise 4 in', 'missing-operator'],
    ['if thickness is 4 in then 6 6 in, otherwise 4 in', 'missing-operator'],
  ])('%s: marks what is wrong, not the otherwise', (typed, code) => {
    expect(worked(typed, givens).code).toBe(code);
  });

  it('offers the otherwise that was left unsaid', () => {
    const answer = worked('if thickness is 4 in then 6 in, 4 in', givens);
    expect(answer.code).toBe('missing-otherwise');
    expect(answer.fixes).toEqual(['if thickness is 4 in then 6 in, otherwise 4 in']);
  });
});

describe('slopes', () => {
  it.each([
    ['12 ft at 1/4 in per ft', '3 in'],
    ['20 ft at 1:80', '3 in'],
    ['12 ft at 6 in 12', '6 ft'],
  ])('%s is %s', (typed, shown) => {
    expect(worked(typed, givens)).toMatchObject({ message: '', shown });
  });
});

describe('what a careful reader could take in two ways is refused, and a fix gives what was meant', () => {
  it.each([
    ['$140 per yard times slab volume', '$82.96'],
    ['deck area is under 200', 'no'],
    ['4,5 ft', '4 ft 6 in'],
    ['10 ft at 2%', '2 3/8 in, a hair over'],
    ["12' x 4' x 4\" / 27", '0.5926 cubic yards'],
    ['12 bags at £4.50 a bag', '$54.00'],
  ])('%s can become %s', (typed, meant) => {
    const answer = worked(typed, givens);
    expect(answer.code).not.toBeNull();
    expect(answer.fixes.map((fix) => worked(fix, givens).shown)).toContain(meant);
  });
});

describe('what is said in passing is passed over', () => {
  it.each([
    ['$85 haulage plus $15', '$100.00'],
    ['whats 12 ft 6in plus 3ft 9 in', '16 ft 3 in'],
    ['so like 30 boards times $2 per board', '$60.00'],
    ['40 sq ft of turf in square yards', '4.44 sq yd'],
    ['1/4 in per ft over 14 ft', '3 1/2 in'],
    ['how much is cost?', '$1,234.00'],
    ['forms: 12 ft plus 4 ft', '16 ft'],
    ['30 ft divided by 5 ft, plus one, for the posts', '7'],
    ['deck area needed, in total', '224 sq ft'],
  ])('%s is %s', (typed, shown) => {
    expect(worked(typed, givens)).toMatchObject({ message: '', shown });
  });
});

describe('a word that counts, or is nearly one, is never passed over', () => {
  it.each([
    '12 ft sqaured',
    '12 ft cubd',
    '10 ft square',
    '40 bags eech',
    '2 dozzen boards',
    '12 ft wast',
    '12 ft thicknes',
    'cost with 10% wast',
    '5 ft haf',
    '12 ft timse 4',
    'cost roundd up',
    'twcie cost',
    '3 ft of thicknes',
    '40 sq ft of slab volume',
    '$6.48 bag',
  ])('%s', (typed) => {
    expect(worked(typed, givens).shown).toBeNull();
  });
});

describe('what could be said twice is asked about', () => {
  it.each([
    ['posts every 6 ft along 30 ft, plus one', ['6 posts', '7 posts']],
    ['add 10% to cost plus $100', ['$1,457.40', '$1,467.40']],
    ['3 pairs of hinges', ['6 hinges', '3 pairs']],
    ['27 sq m divided by 450 mm × 450 mm', ['133.33', '27 sq m']],
    ['cost as a percent of $2,000 + $500', ['49.36%', null]],
    ['20% margin on cost', ['$1,542.50', '$246.80']],
    ['how many 4 in pieces in 14 in', ['4 pieces', '3']],
  ])('%s', (typed, meant) => {
    const answer = worked(typed, givens);
    expect(answer.shown).toBeNull();
    expect(answer.fixes.map((fix) => worked(fix, givens).shown)).toEqual(meant);
  });
});

it('of what a second share is taken is told', () => {
  const shares = [...givens, 'Overhead: 12%', 'Markup: 20%'];
  expect(worked('cost plus overhead plus markup', shares).notes).toEqual([
    'Markup is taken of "cost plus overhead", not of "cost" alone.',
  ]);
  expect(worked('(cost plus overhead) plus markup', shares).notes).toEqual([]);
});

it('minutes are no minimum', () => {
  const limit = '3 ft where 2 ft is under 3 ft per min times 1 min, otherwise 4 ft';
  expect(worked(limit, givens).shown).toBe('3 ft');
  expect(worked('4 cubic yards min, else 0.6 cubic yards', givens).shown).toBe('4 cubic yards');
});

it('labour and labor are one word, whoever writes it', () => {
  expect(worked('labor plus $1', ['Labour: $50']).shown).toBe('$51.00');
  expect(worked('colour times 2', ['Color: 3']).shown).toBe('6');
});

it('two slips in one formula are mended at once', () => {
  const { fixes } = worked('slab lenght by slab widht in sq yrds', givens);
  expect(fixes).toContain('slab length by slab width in sq yards');
});

it('a mend that is tried brings no table of the trade into the middle of the working', () => {
  const more = [...givens, 'Area: slab length by slab width'];
  expect(worked('slab lenght plus (read yield off bag yields for bag 60 lb)', more).code).toBe(
    'unknown-name',
  );
  expect(worked('area', more).shown).toBe('48 sq ft');
});

it('a cell may be called A', () => {
  const letters = ['A: 3 ft', 'B: 4 ft'];
  expect(worked('a by b', letters).shown).toBe('12 sq ft');
  expect(worked('diagonal of a and b', letters).shown).toBe('5 ft');
  expect(worked('total of a, b and the a', letters).shown).toBe('10 ft');
});
