// The table of units. Factors are mathjs's own where they are exact; what it has inexact (the acre)
// or not at all (the board foot) is defined here. Each says where its factor comes from.
import { MONEY, VOLUME, dimension } from './dimension.ts';
import { Fraction } from './measure.ts';
import { factorOf } from './registry.ts';
import {
  type Entry,
  INCH,
  NIST_44,
  along,
  area,
  defined,
  length,
  mass,
  metric,
  powerOf,
  squareFeet,
  time,
  volume,
} from './unit-makers.ts';

export type { Entry };

const lengths: readonly Entry[] = [
  length('in', 'us', factorOf('inch'), '25.4 mm', ['inch', 'inches']),
  length('ft', 'us', factorOf('foot'), '0.3048 m', ['foot', 'feet']),
  length('yd', 'us', factorOf('yard'), '0.9144 m', ['yds', 'yard', 'yards']),
  length('mi', 'us', factorOf('mile'), '1,609.344 m', ['mile', 'miles']),
  length('mm', 'metric', factorOf('m', 'm'), '1/1,000 m', metric('millimet')),
  length('cm', 'metric', factorOf('m', 'c'), '1/100 m', metric('centimet')),
  length('m', 'metric', factorOf('m'), 'the metre', metric('met')),
  length('km', 'metric', factorOf('m', 'k'), '1,000 m', metric('kilomet')),
];

/** Along something long, `linear` says that no area is meant. */
const LINEAR: Readonly<Record<string, readonly string[]>> = {
  ft: ['lf', 'lft', 'lin ft', ...along(['ft', 'foot', 'feet'])],
  yd: along(['yd', 'yds', 'yard', 'yards']),
  m: ['lm', ...along(['m', ...metric('met')])],
};

export const ENTRIES: readonly Entry[] = [
  ...lengths.map((unit) => ({
    ...unit,
    spellings: [...unit.spellings, ...(LINEAR[unit.key] ?? [])],
  })),
  ...lengths.map((unit) => powerOf(unit, 2)),
  ...lengths.map((unit) => powerOf(unit, 3)),

  area('acre', 'us', squareFeet(43_560), '43,560 sq ft', ['acre', 'acres'], ['ac']),
  area(
    'square',
    'us',
    squareFeet(100),
    '100 sq ft, in roofing and siding',
    ['roofing square', 'roofing squares'],
    ['squares'],
  ),
  area(
    'hectare',
    'metric',
    factorOf('hectare').div(INCH.pow(2)),
    '10,000 sq m',
    ['hectare', 'hectares'],
    ['ha'],
  ),

  volume('gal', 'us', factorOf('gallon'), '231 cubic in', ['gallon', 'gallons'], ['gals']),
  volume('qt', 'us', factorOf('quart'), '1/4 gal', ['quart', 'quarts'], ['qts']),
  volume('pt', 'us', factorOf('pint'), '1/8 gal', ['pint', 'pints'], ['pts']),
  volume(
    'fl oz',
    'us',
    factorOf('fluidounce'),
    '1/128 gal',
    ['fl oz', 'fl oz'],
    ['fluid oz', 'fluid ounce', 'fluid ounces'],
  ),
  volume(
    'litre',
    'metric',
    factorOf('litre'),
    '1/1,000 cubic m',
    ['litre', 'litres'],
    ['l', 'liter', 'liters'],
  ),
  volume(
    'ml',
    'metric',
    factorOf('litre').div(1000),
    '1/1,000 litre',
    ['ml', 'ml'],
    ['millilitre', 'millilitres', 'milliliter', 'milliliters'],
  ),
  defined(
    'board ft',
    VOLUME,
    'us',
    new Fraction(144),
    `144 cubic in; ${NIST_44}`,
    ['board foot', 'board feet'],
    ['bf', 'bft', 'bdft', 'bd ft', 'fbm'],
  ),
  defined(
    'mbf',
    VOLUME,
    'us',
    new Fraction(144_000),
    '1,000 board feet, as lumber is priced',
    ['MBF', 'MBF'],
    ['thousand board feet'],
  ),

  mass('oz', 'us', factorOf('ounce'), '1/16 lb', ['oz', 'oz'], ['ounce', 'ounces']),
  mass(
    'lb',
    'us',
    factorOf('poundmass'),
    '0.45359237 kg',
    ['lb', 'lb'],
    ['lbs', 'pound', 'pounds'],
  ),
  mass('ton', 'us', factorOf('ton'), '2,000 lb', ['ton', 'tons'], ['short ton', 'short tons']),
  mass(
    'g',
    'metric',
    factorOf('g'),
    '1/1,000 kg',
    ['g', 'g'],
    ['gram', 'grams', 'gramme', 'grammes'],
  ),
  mass(
    'kg',
    'metric',
    factorOf('g', 'k'),
    'the kilogram',
    ['kg', 'kg'],
    ['kgs', 'kilo', 'kilos', 'kilogram', 'kilograms'],
  ),
  mass(
    'tonne',
    'metric',
    factorOf('tonne'),
    '1,000 kg',
    ['tonne', 'tonnes'],
    ['t', 'metric ton', 'metric tons'],
  ),

  time('second', factorOf('second'), 'the second', ['second', 'seconds'], ['sec', 'secs']),
  time('min', factorOf('minute'), '60 seconds', ['min', 'min'], ['mins', 'minute', 'minutes']),
  time('hour', factorOf('hour'), '60 min', ['hour', 'hours'], ['h', 'hr', 'hrs']),
  defined(
    'person-hour',
    dimension({ time: 1, nouns: [{ noun: 'person', power: 1 }] }),
    'both',
    new Fraction(60),
    'one person for one hour',
    ['person-hour', 'person-hours'],
    ['person hour', 'person hours', 'man-hour', 'man-hours', 'man hour', 'man hours'],
  ),

  defined(
    '$',
    MONEY,
    'both',
    new Fraction(1),
    'the currency of the notebook',
    ['$', '$'],
    ['dollar', 'dollars'],
  ),
  defined(
    'cent',
    MONEY,
    'both',
    new Fraction(1, 100),
    '1/100 of the currency',
    ['cent', 'cents'],
    ['¢'],
  ),

  defined(
    'psf',
    dimension({ mass: 1, length: -2 }),
    'us',
    new Fraction(1, 144),
    'lb per sq ft',
    ['psf', 'psf'],
    [],
  ),
  defined(
    'psi',
    dimension({ mass: 1, length: -2 }),
    'us',
    new Fraction(1),
    'lb per sq in',
    ['psi', 'psi'],
    [],
  ),
];
