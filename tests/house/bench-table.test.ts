// The benchmark's table tells a missed gate from a noisy machine.
import { expect, test } from 'vitest';
import { measured, missesGate, tableText, type Row } from '../bench/table.ts';

const row = (better: Row['better'], gate: number | null, ...results: number[]) => ({
  what: 'recompute',
  measure: () => results.shift() ?? NaN,
  goal: 40,
  gate,
  better,
  unit: ' ×',
});

test('a row within its gate is measured once', () => {
  expect(measured(row('lower', 80, 70, 10)).got).toBe(70);
  expect(measured(row('higher', 1, 1.2, 9)).got).toBe(1.2);
});

test('a row that misses its gate is measured twice more and keeps its best', () => {
  expect(measured(row('lower', 80, 90, 85, 79, 1)).got).toBe(79);
  expect(measured(row('higher', 1, 0.5, 0.9, 0.7, 5)).got).toBe(0.9);
});

test('a gate is missed by a worse number and by no number at all', () => {
  expect(missesGate(measured(row('lower', 80, 81, 82, 83)))).toBe(true);
  expect(missesGate(measured(row('higher', 1, 0.5, 0.5, 0.5)))).toBe(true);
  expect(missesGate(measured(row('lower', 80, NaN, NaN, NaN)))).toBe(true);
  expect(missesGate(measured(row('lower', null, 1000)))).toBe(false);
});

test('the table prints number, goal and gate, and marks what was missed', () => {
  const rows = [measured(row('lower', 80, 52.34)), measured(row('lower', 50, 60, 61, 62))];
  expect(tableText('Engine', rows)).toBe(
    [
      'Engine',
      'recompute  52.3 ×  goal ≤ 40 ×  gate ≤ 80 ×',
      'recompute  60 ×    goal ≤ 40 ×  gate ≤ 50 ×  MISSED',
    ].join('\n'),
  );
});
