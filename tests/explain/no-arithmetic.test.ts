// The explanation asks the engine for every number: nothing in its folder adds, multiplies or rounds.
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const folder = join(import.meta.dirname, '../../src/explain');
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((f) =>
  f.endsWith('.ts'),
);

/** The code without comments, texts and patterns. */
function bareCode(source: string): string {
  return source
    .replaceAll(/\/\*[\s\S]*?\*\//g, '')
    .replaceAll(/(^|\s)\/\/.*$/gm, '')
    .replaceAll(/'(?:[^'\\\n]|\\.)*'/g, "''")
    .replaceAll(/`(?:[^`\\]|\\.)*`/g, (text) => {
      const inner = [...text.matchAll(/\$\{([^}]*)\}/g)].map((m) => m[1]);
      return `(${inner.join(',')})`;
    })
    .replaceAll(/(?<=[(,=:]\s*)\/(?:[^/\\\n[]|\\.|\[[^\]]*\])+\/[a-z]*/g, '//')
    .replaceAll(/^import[\s\S]*?;$/gm, '');
}

/** Arithmetic that counts places and levels of text, not figures of an estimate. */
const COUNTING = /\blevel [+-] 1\b/g;

function arithmeticIn(source: string): readonly string[] {
  const code = bareCode(source).replaceAll(COUNTING, 'level');
  const operators =
    code.match(/.*(?:[\w)\]]\s*(?:\*\*|[*%]|\+(?!\+)|-(?!-))=?\s*[\w(]|[\w)\]]\s+\/\s+[\w(]).*/g) ??
    [];
  const calls =
    code.match(
      /.*(?:\bMath\.|\bNumber\(|\bparseFloat\(|\bparseInt\(|\.(?:plus|minus|times|div|mul|sub|add|pow|sqrt|toDecimalPlaces|toFixed\()\().*/g,
    ) ?? [];
  return [...operators, ...calls.filter((line) => !/\b(?:struck|seen)\.add\(/.test(line))];
}

describe('the folder explain', () => {
  it.each(files)('does no arithmetic of its own in %s', (file) => {
    expect(arithmeticIn(readFileSync(join(folder, file), 'utf8'))).toEqual([]);
  });

  it('is more than one file', () => {
    expect(files.length).toBeGreaterThan(5);
  });

  it.each([
    'const a = b + c;',
    'const a = b * (c);',
    'const a = b / c;',
    'const a = b - 2;',
    'a += b;',
    'const a = x.plus(y);',
    'const a = `${b + c}`;',
    'Math.round(a)',
    'Number(text)',
  ])('would be caught with %s in it', (line) => {
    expect(arithmeticIn(line)).toHaveLength(1);
  });

  it.each([
    "const a = 'b + c';",
    '// a + b',
    'list.slice(0, -1)',
    'const a = (b) => c;',
    '/** a * b */',
  ])('is let alone with %s in it', (line) => {
    expect(arithmeticIn(line)).toEqual([]);
  });
});
