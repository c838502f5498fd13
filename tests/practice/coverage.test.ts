// Every case told by practitioners is a test here, or on the list of what is left, with why.
import fs from 'node:fs';
import { expect, test } from 'vitest';
import list from './left-for-later.json' with { type: 'json' };

const CASES = [
  1, 3, 5, 7, 8, 9, 11, 13, 15, 17, 19, 21, 22, 24, 25, 27, 28, 30, 32, 34, 35, 37, 39, 41, 43, 45,
].map((n) => `PC-${String(n).padStart(2, '0')}`);

test('every case is tested or left with a reason', () => {
  const folder = new URL('./', import.meta.url);
  const tests = fs
    .readdirSync(folder)
    .filter((file) => file.endsWith('.test.ts') && file !== 'coverage.test.ts')
    .map((file) => fs.readFileSync(new URL(file, folder), 'utf8'))
    .join('\n');
  const tested = CASES.filter((id) => new RegExp(`(?:test|describe)\\('${id}:`).test(tests));
  const left = (list.left as readonly { id: string; why: string }[]).map((one) => one.id);
  expect([...tested, ...left].toSorted()).toEqual(CASES);
  expect(list.partly.filter((one) => !tested.includes(one.id))).toEqual([]);
  expect([...list.left, ...list.partly].filter((one) => one.why.length < 10)).toEqual([]);
});
