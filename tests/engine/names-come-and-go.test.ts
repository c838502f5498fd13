// Which formulas a name that comes or goes is a reason to read again: those it could give another meaning, and no others.
import { expect, test } from 'vitest';
import { Job } from './job.ts';

test('a new name that only begins longer names leaves the formulas that say those alone', () => {
  const job = new Job(`
    slab length: 10 ft
    area: slab length by 3 ft`);
  expect(job.edit('slab: 2 ft')).toBe('slab');
  expect(job.value('area')).toBe('30 sq ft');
  expect(job.drop('slab')).toBe('');
});

test('a new name that is longer than the one which was read takes its place', () => {
  const job = new Job(`
    slab: 10 ft
    depth: 2 ft
    double: slab by depth times 2`);
  expect(job.value('double')).toBe('40 sq ft');
  job.edit('slab by depth: 3 ft');
  expect(job.value('double')).toBe('6 ft');
});

test('an own name takes the place of that of another part, and gives it back', () => {
  const job = new Job(`
    House
    width: 12 ft
    Yard
    double: width times 2`);
  expect(job.value('double')).toBe('24 ft');
  const width = job.cell('width: 5 ft', 'yard', 90);
  expect(job.change({ kind: 'put', cell: width })).toContain('double');
  expect(job.value('double')).toBe('10 ft');
  job.change({ kind: 'drop', id: 90 });
  expect(job.value('double')).toBe('24 ft');
});

test('two parts that change names change what is said with those', () => {
  const job = new Job(`
    Shed 1
    slab: 10 ft
    Shed 2
    slab: 20 ft
    Summary
    double: Shed 1 slab times 2`);
  expect(job.value('double')).toBe('20 ft');
  const other = new Map([
    ['shed 1', 'Shed 2'],
    ['shed 2', 'Shed 1'],
  ]);
  job.change({
    kind: 'parts',
    parts: job.parts.map(({ key, name }) => ({ key, name: other.get(key) ?? name })),
  });
  expect(job.value('double')).toBe('40 ft');
});
