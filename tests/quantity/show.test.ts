// How values read, and what is handed to machines beside it.
import { describe, expect, test } from 'vitest';
import { formMeasure } from '../../src/quantity/amount.ts';
import { Dec } from '../../src/quantity/decimal.ts';
import { writtenUnits } from '../../src/quantity/form.ts';
import { NUMBER, OPEN, SHARE, TEXT, YES_NO } from '../../src/quantity/measure.ts';
import { show } from '../../src/quantity/show.ts';
import { type Given, form, given, result, settings, shown, shownIn } from './held.ts';

describe('lengths as on a tape', () => {
  test.each([
    ['12', 'ft', '12 ft'],
    ['9.375', 'ft', '9 ft 4 1/2 in'],
    ['10.8', 'ft', '10 ft 9 5/8 in, a hair shy'],
    ['129.59', 'ft', '129 ft 7 1/16 in, a hair over'],
    ['0.5', 'ft', '6 in'],
    ['23/24', 'ft', '11 1/2 in'],
    ['3', 'yd', '9 ft'],
    ['1/96', 'ft', '1/8 in'],
    ['12.0416666666666667', 'ft', '12 ft 1/2 in'],
    ['2', 'mi', '2 mi'],
    ['0.25', 'mi', '0.25 mi'],
    ['0', 'ft', '0 in'],
    ['-9.375', 'ft', '−9 ft 4 1/2 in'],
    ['-10.8', 'ft', '−10 ft 9 5/8 in, a hair shy'],
  ])('%s %s reads %s', (number, words, text) => {
    expect(shown(given(number, words)).text).toBe(text);
  });

  test.each([
    ['52.5', '52 1/2 in'],
    ['7.5', '7 1/2 in'],
    ['0.625', '5/8 in'],
    ['1234', '1,234 in'],
    ['0.01', '0.01 in'],
    ['11.99', '12 in, a hair shy'],
  ])('%s in, all written in inches, reads %s', (number, text) => {
    expect(shown(given(number, 'in')).text).toBe(text);
  });

  test('miles beside a length in feet are feet', () => {
    expect(shown(given('2', 'mi', ['ft'])).text).toBe('10,560 ft');
  });

  test('35.625 in beside a length in feet reads 2 ft 11 5/8 in (PC-09)', () => {
    expect(shown(given('35.625', 'in', ['ft'])).text).toBe('2 ft 11 5/8 in');
  });

  test('11.5 in given as a long decimal of feet reads 11 1/2 in (PC-11)', () => {
    const { text } = shown(given('0.9583333333333334', 'ft'), { fractions: 8 });
    expect(text).toBe('11 1/2 in');
    expect(shown(given('11.5', 'in', ['ft']), { fractions: 8 }).text).toBe('11 1/2 in');
  });

  test('14.0001 in to eighths reads 1 ft 2 in and says that it lies over (PC-11)', () => {
    const { text, mark } = shown(given('14.0001', 'in', ['ft']), { fractions: 8 });
    expect(text).toBe('1 ft 2 in, a hair over');
    expect(mark).toBe('over');
  });

  test('the whole length is rounded before it is split', () => {
    expect(shown(given('11.999', 'in', ['ft'])).text).toBe('1 ft, a hair shy');
    expect(shown(given('23.97', 'in', ['ft'])).text).toBe('2 ft, a hair shy');
    expect(shown(given('9.97', 'in')).text).toBe('10 in, a hair shy');
  });

  test('a third of a foot, three times, is a foot without a hair', () => {
    const { value, holds } = given('1', 'ft');
    const back = { value: value.div(3).times(3), holds };
    expect(shown(back)).toEqual({ text: '1 ft', unit: 'ft', exact: '1', mark: 'exact' });
  });

  test('machines get the unit that is read, and the whole number', () => {
    expect(shown(given('10.8', 'ft'))).toMatchObject({ unit: 'ft', exact: '10.8', mark: 'shy' });
    expect(shown(given('11.5', 'in', ['ft']))).toMatchObject({ unit: 'in', exact: '11.5' });
    expect(shown(given('-1/3', 'yd'))).toMatchObject({ unit: 'ft', exact: '-1' });
  });
});

describe('a form that was asked for', () => {
  const volume: Given = result('27648', 'cubic in', ['ft', 'in']);

  test.each([
    ['cubic yards', '0.5926 cubic yards', 'cubic yd', `0.${'592'.repeat(13)}6`],
    ['cubic ft', '16 cubic feet', 'cubic ft', '16'],
    ['gallons', '119.69 gallons', 'gal', '119.688311688311688311688311688311688311688'],
  ])('16 cubic feet in %s is %s', (words, text, unit, exact) => {
    const found = shownIn(words, volume);
    expect(found).toMatchObject({ text, unit });
    expect(found.exact.slice(0, 40)).toBe(exact.slice(0, 40));
    expect(new Dec(found.exact).precision()).toBeLessThanOrEqual(40);
  });

  test('feet that were asked for are decimal, inches are on the tape', () => {
    const length = given('112.5', 'in', ['ft']);
    expect(shownIn('ft', length)).toMatchObject({ text: '9.375 ft', exact: '9.375' });
    expect(shownIn('in', length).text).toBe('112 1/2 in');
    expect(shownIn('m', length).text).toBe('2.8575 m');
    expect(shownIn('hours', given('320', 'min')).text).toBe('5.33 hours');
  });

  test('what is counted below the line is not lost', () => {
    const rise = result('15/2', 'in per riser', ['in']);
    expect(shownIn('ft', rise)).toMatchObject({ text: '0.625 ft per riser', unit: 'ft per riser' });
  });

  test('a form that measures something else is left aside', () => {
    expect(shownIn('lb', given('12', 'ft')).text).toBe('12 ft');
  });
});

describe('areas, volumes and weights', () => {
  test.each([
    ['one written unit is kept', '11664', 'sq in', ['sq yd'], '9 sq yd'],
    ['also among lengths', '11664', 'sq in', ['ft', 'sq yd'], '9 sq yd'],
    ['two written units give sq ft', '11664', 'sq in', ['sq ft', 'sq yd'], '81 sq ft'],
    ['none written gives cubic feet', '27648', 'cubic in', ['ft', 'in'], '16 cubic feet'],
    ['one of a thing', '1728', 'cubic in', [], '1 cubic foot'],
    ['board feet', '59136', 'cubic in', ['board ft'], '410.67 board feet'],
    ['pounds', '40', 'oz', [], '2.5 lb'],
    ['tons', '64000', 'oz', ['ton'], '2 tons'],
    ['all metric', '2400000', 'sq mm', ['m', 'mm'], '2.4 sq m'],
    ['a metric volume', '100000000', 'cubic mm', ['m'], '0.1 cubic m'],
    ['litres', '2500000', 'cubic mm', ['litre'], '2.5 litres'],
    ['metric weight', '2500', 'g', ['m'], '2.5 kg'],
    ['pressure', '40', 'psf', ['psf'], '40 psf'],
    ['pressure by its parts', '40', 'psf', ['lb', 'sq ft'], '40 lb per sq ft'],
  ])('%s', (_, number, words, written, text) => {
    expect(shown(result(number, words, written)).text).toBe(text);
  });

  test('mixed measures are shown in those of the notebook', () => {
    const mixed = result('144', 'sq in', ['ft', 'm']);
    expect(shown(mixed).text).toBe('1 sq ft');
    expect(shown(mixed, { measures: 'metric' }).text).toBe('0.0929 sq m');
  });

  test.each([
    ['2400', ['mm'], '2,400 mm'],
    ['2400', ['m'], '2.4 m'],
    ['2400', ['m', 'mm'], '2,400 mm'],
    ['254', ['m', 'ft'], '10 in'],
  ])('a metric length of %s mm written in %j reads %s', (number, written, text) => {
    expect(shown(result(number, 'mm', written)).text).toBe(text);
  });
});

describe('times', () => {
  test.each([
    ['1.5', 'hours', [], '1.5 hours'],
    ['1', 'hour', [], '1 hour'],
    ['16', 'hours', [], '16 hours'],
    ['320', 'min', ['hour'], '5 h 20 min'],
    ['335', 'min', ['hour'], '5 h 35 min'],
    ['20', 'min', ['hour'], '20 min'],
    ['315', 'min', ['hour'], '5.25 hours'],
    ['5.333', 'hours', [], '5.333 hours'],
    ['45', 'min', [], '45 min'],
    ['-320', 'min', ['hour'], '−5 h 20 min'],
    ['24', 'person-hours', [], '24 person-hours'],
  ])('%s %s with %j reads %s', (number, words, written, text) => {
    expect(shown(given(number, words, written)).text).toBe(text);
  });

  test('machines get hours in decimals', () => {
    const { unit, exact } = shown(given('320', 'min', ['hour']));
    expect(unit).toBe('hour');
    expect(exact).toBe('5.333333333333333333333333333333333333333');
  });

  test('people times hours are hours where the people were not asked for', () => {
    expect(shown(result('1440', 'person-hours', ['hour'])).text).toBe('1,440 hours');
  });
});

describe('money', () => {
  test.each([
    ['1234.5', '$', '$1,234.50', '1234.5'],
    ['233.28', '$', '$233.28', '233.28'],
    ['-50', '$', '−$50.00', '-50'],
    ['0', '$', '$0.00', '0'],
    ['85', 'cents', '$0.85', '0.85'],
    ['4000/3', '$', '$1,333.33', `1333.${'3'.repeat(36)}`],
    ['0.005', '$', '$0.01', '0.005'],
    ['0.004', '$', '$0.004', '0.004'],
  ])('%s %s reads %s', (number, words, text, exact) => {
    expect(shown(given(number, words))).toEqual({ text, unit: '$', exact, mark: 'exact' });
  });

  test.each([
    ['6.48', '$ per bag', '$6.48 per bag'],
    ['6.5', '$ per each', '$6.50 each'],
    ['50', '$ per hour', '$50.00 per hour'],
    ['0.085', '$ per sq ft', '$0.085 per sq ft'],
    ['320', '$ per 1000 sq ft', '$320.00 per 1000 sq ft'],
    ['1/30', '$ per sq ft', '$0.0333 per sq ft'],
    ['17/3', '$ per sq ft', '$5.67 per sq ft'],
    ['50', '$ per hour per person', '$50.00 per hour per person'],
    ['85', 'cents per lb', '$0.85 per lb'],
  ])('the price %s %s reads %s', (number, words, text) => {
    expect(shown(given(number, words)).text).toBe(text);
  });

  test('a price that was worked out reads in the units its givens were written in', () => {
    const price = result('5/1296', '$ per sq in', ['sq yd']);
    expect(shown(price)).toMatchObject({ text: '$5.00 per sq yd', unit: '$ per sq yd' });
    expect(shown(result('1/2', '$ per in', ['in'])).text).toBe('$0.50 per in');
    expect(shown(result('1/2', '$ per in', [])).text).toBe('$6.00 per ft');
    expect(shown(result('5/6', '$ per min', ['hour'])).text).toBe('$50.00 per hour');
  });

  test("the notebook's currency is written in its own sign", () => {
    const price = shown(given('6.48', '$ per bag'), { currency: '€' });
    expect(price).toMatchObject({ text: '€6.48 per bag', unit: '€ per bag' });
  });

  test('cents that were asked for read as money', () => {
    expect(shownIn('cents', given('12.35', '$'))).toMatchObject({ text: '$12.35', unit: '$' });
  });
});

describe('counts and rates', () => {
  test.each([
    ['40', 'bags', '40 bags', 'bag'],
    ['1', 'bag', '1 bag', 'bag'],
    ['3', 'people', '3 people', 'person'],
    ['0', 'boxes', '0 boxes', 'box'],
    ['0.5', 'bags', '0.5 bags', 'bag'],
    ['-1', 'bag', '−1 bag', 'bag'],
    ['352/9', 'bags', '39.11 bags', 'bag'],
    ['1260', 'screws', '1,260 screws', 'screw'],
    ['3', 'screws per board', '3 screws per board', 'screw per board'],
    ['0.45', 'cubic feet per bag', '0.45 cubic feet per bag', 'cubic ft per bag'],
    ['40', 'sq ft per hour', '40 sq ft per hour', 'sq ft per hour'],
    ['1/4', 'in per ft', '1/4 in per ft', 'in per ft'],
    ['0.3', 'in per ft', '0.3 in per ft', 'in per ft'],
    ['7.5', 'in per riser', '7 1/2 in per riser', 'in per riser'],
    [
      '3',
      'cubic yards per 1000 sq ft per in',
      '3 cubic yards per 1000 sq ft per in',
      'cubic yd per 1000 sq ft per in',
    ],
  ])('%s %s reads %s', (number, words, text, unit) => {
    expect(shown(given(number, words))).toMatchObject({ text, unit });
  });

  test('nouns above the line beside a hard unit drop out, those below stay', () => {
    const joists = result('1440', 'in', ['ft']);
    const noun = formWith(joists, 'joist');
    expect(shown(noun).text).toBe('120 ft');
    expect(shown(result('60/7', 'in per riser', ['in'])).text).toBe(
      '8 9/16 in per riser, a hair over',
    );
    expect(shown(result('15', 'in per step', ['ft'])).text).toBe('1 ft 3 in per step');
  });

  test('a rate kept without its form reads as its sides were written', () => {
    const { value, holds } = given('25', 'sq ft per hour');
    expect(shown({ value, holds: { ...holds, showIn: null } }).text).toBe('25 sq ft per hour');
    const screws = given('8', '$ per 100 screws');
    expect(shown({ ...screws, holds: { ...screws.holds, showIn: null } }).text).toBe(
      '$8.00 per 100 screws',
    );
  });
});

/** 1 in of each joist. */
function formWith({ value, holds }: Given, noun: string): Given {
  const { over } = form('in');
  const both = { over: [...over, { kind: 'noun' as const, noun, count: null }], under: [] };
  const measure = formMeasure(both);
  return { value, holds: { ...holds, measure } };
}

describe('numbers, shares and the rest', () => {
  const number = (text: string, measure: typeof NUMBER | typeof SHARE | typeof OPEN = NUMBER) =>
    show(new Dec(text), { measure, showIn: null, written: writtenUnits() }, settings);

  test.each([
    ['7', '7'],
    ['1250', '1,250'],
    ['0.45', '0.45'],
    ['1234.5678', '1,234.5678'],
    ['1234.56789', '1,234.57'],
    ['0.59259259', '0.5926'],
    ['0.000123456', '0.0001235'],
    ['39.9999612', '39.99996'],
    ['0.9999996', '0.9999996'],
    ['-2.5', '−2.5'],
    ['-0', '0'],
    ['1000000', '1,000,000'],
  ])('the number %s reads %s', (typed, text) => {
    expect(number(typed)).toMatchObject({ text, unit: '' });
  });

  test('a computed whole number reads as one', () => {
    const whole = new Dec(99_985).div(32_332).times(32_332);
    const holds = { measure: NUMBER, showIn: null, written: writtenUnits() };
    expect(show(whole, holds, settings)).toMatchObject({ text: '99,985', exact: '99985' });
  });

  test.each([
    ['0.1', '10%', '10'],
    ['0.085', '8.5%', '8.5'],
    ['0.08375', '8.375%', '8.375'],
    ['1.4', '140%', '140'],
    ['-0.05', '−5%', '-5'],
    ['0', '0%', '0'],
  ])('the share %s reads %s', (held, text, exact) => {
    expect(number(held, SHARE)).toEqual({ text, unit: '%', exact, mark: 'exact' });
  });

  test('a third as a share reads to two places', () => {
    const third = show(
      new Dec(1).div(3),
      { measure: SHARE, showIn: null, written: writtenUnits() },
      settings,
    );
    expect(third.text).toBe('33.33%');
  });

  test('yes, no and text stand as they are', () => {
    const holds = { measure: YES_NO, showIn: null, written: writtenUnits() };
    expect(show(true, holds, settings)).toEqual({
      text: 'yes',
      unit: '',
      exact: '',
      mark: 'exact',
    });
    expect(show(false, holds, settings).text).toBe('no');
    expect(show('hem-fir', { ...holds, measure: TEXT }, settings).text).toBe('hem-fir');
    expect(number('12', OPEN).text).toBe('12');
  });

  test('no exact text has an exponent', () => {
    expect(number('0.00000000000000000000012').exact).toBe('0.00000000000000000000012');
    expect(number('1e30').exact).toBe(`1${'0'.repeat(30)}`);
  });
});
