// Unit factors against their definitions, and the words that units are written with.
import { expect, test } from 'vitest';
import { nameWords } from '../../src/language/lexer.ts';
import { AREA, LENGTH, MASS, MONEY, TIME, VOLUME } from '../../src/quantity/dimension.ts';
import { Fraction } from '../../src/quantity/measure.ts';
import { factorOf } from '../../src/quantity/registry.ts';
import { UNITS, unitByKey, unitOf, unitPhrases } from '../../src/quantity/units.ts';

const MM = new Fraction(5, 127);

test.each([
  ['in', LENGTH, 1],
  ['ft', LENGTH, 12],
  ['yd', LENGTH, 36],
  ['mi', LENGTH, 63_360],
  ['mm', LENGTH, MM],
  ['cm', LENGTH, MM.mul(10)],
  ['m', LENGTH, MM.mul(1_000)],
  ['km', LENGTH, MM.mul(1_000_000)],
  ['sq in', AREA, 1],
  ['sq ft', AREA, 144],
  ['sq yd', AREA, 1_296],
  ['acre', AREA, 43_560 * 144],
  ['square', AREA, 14_400],
  ['sq m', AREA, MM.pow(2)?.mul(1_000_000)],
  ['hectare', AREA, MM.pow(2)?.mul(10_000_000_000)],
  ['cubic in', VOLUME, 1],
  ['cubic ft', VOLUME, 1_728],
  ['cubic yd', VOLUME, 46_656],
  ['gal', VOLUME, 231],
  ['qt', VOLUME, '231/4'],
  ['pt', VOLUME, '231/8'],
  ['fl oz', VOLUME, '231/128'],
  ['board ft', VOLUME, 144],
  ['mbf', VOLUME, 144_000],
  ['cubic m', VOLUME, MM.pow(3)?.mul(1_000_000_000)],
  ['litre', VOLUME, MM.pow(3)?.mul(1_000_000)],
  ['ml', VOLUME, MM.pow(3)?.mul(1_000)],
  ['cubic cm', VOLUME, MM.pow(3)?.mul(1_000)],
  ['lb', MASS, 1],
  ['oz', MASS, '1/16'],
  ['ton', MASS, 2_000],
  ['kg', MASS, '100000000/45359237'],
  ['g', MASS, '100000/45359237'],
  ['tonne', MASS, '100000000000/45359237'],
  ['second', TIME, '1/60'],
  ['min', TIME, 1],
  ['hour', TIME, 60],
  ['$', MONEY, 1],
  ['cent', MONEY, '1/100'],
] as const)('a %s is exactly what it is defined to be', (key, dimension, scale) => {
  const unit = unitByKey(key);
  expect(unit.dimension).toBe(dimension);
  expect(unit.scale.toFraction()).toBe(new Fraction(scale ?? 0).toFraction());
  expect(unit.source).not.toBe('');
});

test('a square and a cube of a unit agree with the entries that mathjs has for them', () => {
  const inch = factorOf('inch');
  for (const [key, name, power] of [
    ['sq in', 'sqin', 2],
    ['sq ft', 'sqft', 2],
    ['sq yd', 'sqyd', 2],
    ['sq mi', 'sqmi', 2],
    ['cubic ft', 'cuft', 3],
    ['cubic yd', 'cuyd', 3],
  ] as const) {
    const metres = unitByKey(key).scale.mul(inch.pow(power) ?? 0);
    expect(metres.toFraction(), key).toBe(factorOf(name).toFraction());
  }
});

test('the acre of mathjs is not exact, which is why ours is defined here', () => {
  const ours = unitByKey('acre').scale.mul(factorOf('inch').pow(2) ?? 0);
  expect(ours.toString(10)).toBe('4046.8564224');
  expect(factorOf('acre').equals(ours)).toBe(false);
});

test('a name that mathjs does not have is a mistake in the program', () => {
  expect(() => factorOf('cubit')).toThrow('cubit');
  expect(() => unitByKey('cubit')).toThrow('cubit');
});

test.each([
  ['in', 'in inch inches'],
  ['ft', 'ft|foot|feet|lf|linear ft|linear foot|linear feet|lineal feet|running feet'],
  ['yd', 'yd|yds|yard|yards'],
  ['m', 'm|metre|metres|meter|meters'],
  ['mm', 'mm|millimetre|millimeters'],
  ['sq ft', 'sq ft|sf|sqft|square ft|square foot|square feet|sq feet|ft2|ft²'],
  ['sq yd', 'sq yd|sy|square yards|sq yds'],
  ['sq m', 'sq m|sqm|square metre|square meters|m2|m²'],
  ['square', 'squares|roofing square|roofing squares'],
  ['cubic ft', 'cubic ft|cu ft|cf|cubic foot|cubic feet|cuft|ft³'],
  ['cubic yd', 'cubic yd|cy|cu yd|cu yds|cubic yard|cubic yards'],
  ['cubic m', 'cubic m|m3|cubic metres|cubic meters'],
  ['board ft', 'board ft|bf|board foot|board feet'],
  ['gal', 'gal|gallon|gallons'],
  ['litre', 'l|litre|litres|liter|liters'],
  ['lb', 'lb|lbs|pound|pounds'],
  ['oz', 'oz|ounce|ounces'],
  ['ton', 'ton|tons'],
  ['tonne', 'tonne|tonnes|metric tons'],
  ['hour', 'h|hr|hrs|hour|hours'],
  ['min', 'min|mins|minute|minutes'],
  ['person-hour', 'person-hour|person-hours|man-hours'],
  ['$', '$|dollars'],
  ['cent', 'cent|cents'],
  ['psf', 'psf'],
])('%s is written %s', (key, spellings) => {
  for (const spelling of spellings.includes('|') ? spellings.split('|') : spellings.split(' ')) {
    expect(unitPhrases.get(spelling)?.key, spelling).toBe(key);
  }
});

test('a day is no unit, and a square alone is none', () => {
  for (const word of ['day', 'days', 'week', 'square', 'sq', 'each', 'point']) {
    expect(unitPhrases.has(word), word).toBe(false);
  }
});

test('whatever is shown for a unit can be typed again', () => {
  for (const unit of UNITS) {
    expect(unitPhrases.get(unit.one.toLowerCase()), unit.one).toBe(unit);
    expect(unitPhrases.get(unit.many.toLowerCase()), unit.many).toBe(unit);
  }
});

test('every way to write a unit reads as that unit and no other, token by token', () => {
  const read = new Map<string, string>();
  for (const [phrase, unit] of unitPhrases) {
    const words = nameWords(phrase).join(' ');
    expect(read.get(words) ?? unit.key, phrase).toBe(unit.key);
    read.set(words, unit.key);
  }
  expect(read.size).toBeGreaterThan(200);
});

test('a unit is found again by what it measures and its scale', () => {
  expect(unitOf(VOLUME, new Fraction(46_656))?.key).toBe('cubic yd');
  expect(unitOf(LENGTH, new Fraction(7))).toBeNull();
});
