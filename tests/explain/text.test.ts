// The working as text: read aloud, it tells the number from the answer down to its givens.
import { describe, expect, it } from 'vitest';
import { STEPS_IN_TEXT } from '../../src/explain/text.ts';
import { landing } from './kestrel.ts';

describe('the working as text', () => {
  it('tells the bags to buy down to what was measured and looked up', () => {
    const book = landing(
      'Slab length: 12 ft\n  - from: measured on site, 2026-03-03',
      'Slab width: 4 ft\n  - from: width of the stair it continues',
      'Thickness: 4 in\n  - from: code minimum 3 1/2 in for slabs on ground',
      'Waste: 10%\n  - from: rule of thumb, uneven stone',
      'Bag yield: 0.45 cubic feet per bag\n  - from: bag label, 60 lb mix',
      'Slab volume: slab length by slab width by thickness',
      'Bags to buy: slab volume plus waste, divided by bag yield, rounded up',
      'Concrete: bags to buy at $6.48 per bag\n  - cost: material',
      'Mix and place: bags to buy at 8 min per bag, at $50 per hour\n  - cost: labour',
    );
    expect(book.text('Bags to buy')).toBe(`Working of Bags to buy: 40 bags

Rounded up to whole bags
  39.11 bags → 40 bags
Divided by bag yield
  17.6 cubic feet ÷ 0.45 cubic feet per bag = 39.11 bags
  Bag yield, 0.45 cubic feet per bag: bag label, 60 lb mix
Plus waste, 10% of slab volume
  16 cubic feet + 10% (1.6 cubic feet) = 17.6 cubic feet
  Waste, 10%: rule of thumb, uneven stone
Slab volume: slab length by slab width by thickness
  12 ft × 4 ft × 4 in ÷ 12 in per ft = 16 cubic feet
  Slab length, 12 ft: measured on site, 2026-03-03
  Slab width, 4 ft: width of the stair it continues
  Thickness, 4 in: code minimum 3 1/2 in for slabs on ground

Bags to buy goes into Concrete and Mix and place.
`);
  });

  it('opens the lines of a recap one below the other, and repeats nothing', () => {
    const book = landing(
      'Run: 20 ft\n  - from: measured',
      'Rail: run at $9.50 per ft\n  - cost: material',
      'Fit: run at 1 ft per hour, at $50 per hour\n  - cost: labour',
      'Gate: $?\n  - cost: material',
      'All: total cost of Landing',
    );
    expect(book.text('All')).toBe(`Working of All: $1,190.00 so far

Total cost of Landing, 2 lines
  $190.00 + $1,000.00 = $1,190.00
  So far: leaves out Gate, which has no value yet.
  Rail: run at $9.50 per ft
    20 ft × $9.50 per ft = $190.00
    Run, 20 ft: measured
  Fit: at $50 per hour
    20 hours × $50 per hour = $1,000.00
    Run at 1 ft per hour, which divides
      20 ft ÷ 1 ft per hour = 20 hours
      Run, 20 ft, as worked above
  Gate: not yet known

All goes into nothing else yet.
`);
  });

  it('says of a given where it comes from, or that nobody wrote it', () => {
    const book = landing('Rod: 3 ft\n  - from: tape', 'B: 4 ft', 'C: rod plus b');
    expect(book.text('Rod')).toContain('Given: 3 ft\n  From: tape');
    expect(book.text('B')).toContain('Given: 4 ft\n  No source is written.');
    expect(book.text('C')).toContain('B, 4 ft: no source is written');
  });

  it('says what is wrong and how to mend it where there is no value', () => {
    const text = landing('A: 12 ft rounded up').text('A');
    expect(text).toMatch(/^Working of A: no value yet\n\nRounded up to what\?\n {2}\S/);
  });

  it('of a chain without end stops after so many steps and says where to go on', () => {
    const cells = Array.from({ length: 2000 }, (_, i) => `C${i + 1}: C${i} plus 1 ft`);
    const lines = landing('C0: 1 ft', ...cells)
      .text('C2000')
      .split('\n');
    expect(lines.length).toBeLessThan(STEPS_IN_TEXT * 4);
    expect(lines.filter((line) => line.includes('The working goes on from here'))).toHaveLength(1);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThan(120);
  });
});
