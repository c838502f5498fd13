// The two set-up commands know what a machine still lacks.
import { expect, test } from 'vitest';
import { missing, recentEnough } from '../../src/tools/ready.mjs';

const wanted = {
  '': { version: '0.1.0' },
  'node_modules/a': { version: '1.0.0', integrity: 'x' },
  'node_modules/b/node_modules/a': { version: '2.0.0', integrity: 'y' },
  'node_modules/mac': { version: '1.0.0', optional: true, os: ['darwin'], cpu: ['arm64'] },
  'node_modules/musl': {
    version: '1.0.0',
    optional: true,
    os: ['linux'],
    cpu: ['x64'],
    libc: ['musl'],
  },
};
const onLinux = (installed: Parameters<typeof missing>[1]) =>
  missing(wanted, installed, 'linux', 'x64');

test('all is missing where nothing was installed', () => {
  expect(onLinux(null)).toEqual(['node_modules/a', 'node_modules/b/node_modules/a']);
});

test('nothing is missing where each package is there as the lockfile has it', () => {
  const { 'node_modules/a': a, 'node_modules/b/node_modules/a': deep } = wanted;
  const installed = { 'node_modules/a': a, 'node_modules/b/node_modules/a': deep };
  expect(onLinux(installed)).toEqual([]);
});

test('a package of another version or another content is missing', () => {
  const { 'node_modules/b/node_modules/a': deep } = wanted;
  const others = { 'node_modules/b/node_modules/a': deep };
  for (const a of [
    { version: '1.0.1', integrity: 'x' },
    { version: '1.0.0', integrity: 'z' },
  ]) {
    expect(onLinux({ ...others, 'node_modules/a': a })).toEqual(['node_modules/a']);
  }
});

test('a package for one kind of machine is missed only there', () => {
  expect(missing(wanted, null, 'darwin', 'arm64')).toContain('node_modules/mac');
  expect(onLinux(null)).not.toContain('node_modules/mac');
});

test('Node 20.19 is old enough to be the oldest', () => {
  const versions = ['18.20.4', '20.18.9', '20.19.0', '20.20.2', '22.1.0', '100.0.0'];
  expect(versions.filter(recentEnough)).toEqual(['20.19.0', '20.20.2', '22.1.0', '100.0.0']);
});
