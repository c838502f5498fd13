// Lengths that were misread, and lengths that other tools print wrongly.
import { describe, expect, test } from 'vitest';
import { opened } from '../published/opened.ts';

const one = (formula: string, settings = '') =>
  opened(`# Lengths\n${settings}\n## Site\n- Length: ${formula}\n`);

describe('PC-08: tenths of a foot are no inches', () => {
  test('10.8 ft is shown as feet, inches and sixteenths', () => {
    expect(one('10.8 ft').shown('Length')).toBe('10 ft 9 5/8 in, a hair shy');
    expect(one('10.8 ft, in inches').figure('Length')).toEqual(['in', 129.6]);
  });

  test('the misreading is 1.6 in short', () => {
    expect(one('10.8 ft minus 10 ft 8 in, in inches').figure('Length')).toEqual(['in', 1.6]);
    const [unit, feet] = one('10 ft 8 in, in feet').figure('Length');
    expect(unit).toBe('ft');
    expect(feet).toBeCloseTo(10.666667, 6);
  });

  test.each([`10' 8"`, '10 ft 8 in', `10'-8"`, '10’ 8”', '10 feet 8 inches'])(
    '%s is ten foot eight',
    (written) => expect(one(`${written}, in inches`).figure('Length')).toEqual(['in', 128]),
  );
});

describe('PC-09: sixteenths are reduced and the length stays a number', () => {
  test('35.625 in shows in eighths, in inches and in feet', () => {
    expect(one('35.625 in').shown('Length')).toBe('35 5/8 in');
    expect(one('0 ft plus 35.625 in').shown('Length')).toBe('2 ft 11 5/8 in');
  });

  test('it can be added up', () => {
    expect(one('0 ft plus 35.625 in plus 35.625 in').shown('Length')).toBe('5 ft 11 1/4 in');
  });
});

describe('PC-11: no twelfth inch and no empty fraction', () => {
  test('11.5 in as a part of a foot is 11 1/2 in', () => {
    expect(one('11.5 ft divided by 12').shown('Length')).toBe('11 1/2 in');
    expect(one('0.9583333333333334 ft').shown('Length')).toMatch(/^11 1\/2 in/);
  });

  test('14.0001 in shows whole inches and that it is a little more', () => {
    const eighths = '\n- Fractions: 1/8 in\n';
    expect(one('0 ft plus 14.0001 in', eighths).shown('Length')).toBe('1 ft 2 in, a hair over');
    expect(one('14.0001 in', eighths).shown('Length')).toBe('14 in, a hair over');
  });

  test('every sixteenth from 39 to 40 ft shows a fraction of its own, never twelve inches', () => {
    const cells = Array.from({ length: 193 }, (_, n) => `- Length ${n}: 39 ft plus ${n}/16 in`);
    const notebook = opened(`# Lengths\n## Site\n${cells.join('\n')}\n`);
    for (let n = 0; n <= 192; n++) {
      expect(notebook.shown(`Length ${n}`)).toBe(feetAndSixteenths(39 * 192 + n));
    }
  });
});

/** In whole numbers only: a length in sixteenths of an inch as a builder writes it. */
function feetAndSixteenths(sixteenths: number): string {
  const feet = Math.floor(sixteenths / 192);
  const inches = Math.floor((sixteenths % 192) / 16);
  let over = sixteenths % 16;
  let under = 16;
  while (over > 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  const fraction = over > 0 ? `${over}/${under}` : '';
  const rest = [inches > 0 ? String(inches) : '', fraction].filter(Boolean).join(' ');
  return rest ? `${feet} ft ${rest} in` : `${feet} ft`;
}
