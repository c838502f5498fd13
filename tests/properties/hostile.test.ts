// What nobody should hand to an estimate: it is told apart or taken as plain text, all of it is kept, none of it runs.
// Work is bounded by steps: how often the parser looks at a token, which cells the engine ran. Never by a clock.
import { describe, expect, it, test } from 'vitest';
import { type Token, tokensOf } from '../../src/language/lexer.ts';
import { parseTokens } from '../../src/language/parse.ts';
import type { Cell } from '../../src/notebook/document.ts';
import { Estimate } from '../../src/notebook/estimate.ts';
import { surroundings, vocabulary } from '../language/parsed.ts';
import { Chance } from './chance.ts';
import { GIVENS, RIGHT } from './mutants.ts';
import { IMAGE, SCRIPT } from './run-nothing.ts';

const TEXTS: Readonly<Record<string, string>> = {
  'an empty file': '',
  'a line end': '\n',
  'a byte order mark alone': '\uFEFF',
  'a byte order mark and a cell': '\uFEFF# Kestrel Court\n\n- Slab: 12 ft\n',
  'Windows line ends':
    '# Kestrel Court\r\n\r\n- Slab: 12 ft\r\n  - from: drawing\r\n- Twice: slab times 2\r\n',
  'old line ends': '- Slab: 12 ft\r- Twice: slab times 2\r',
  tabs: '-\tSlab:\t12 ft\n\t- from:\tdrawing\n-\tTwice:\tslab times\t2\n',
  'HTML everywhere': `# ${SCRIPT}\n\n${IMAGE}\n\n## ${IMAGE}\n\n- ${SCRIPT}: 12 ft\n  - from: ${IMAGE}\n- Slab: ${SCRIPT}\n  - caution: ${SCRIPT}\n`,
  'names of the machinery':
    '## __proto__\n\n- __proto__: 3 ft\n- constructor: 4 ft\n- toString: __proto__ plus constructor\n- hasOwnProperty: tostring times 2\n\n## constructor\n\n- valueOf: __proto__ __proto__ plus 1 ft\n',
  'code for a formula':
    '- Slab: constructor.constructor("globalThis.ran = 1")()\n- Price: `${globalThis.ran = 1}`\n- Sum: =1+1\n',
  'lone surrogates':
    '# \uD800\n\n## \uDC00 yard\n\n- Slab \uD800: 12 ft\n- Twice: slab \uD800 times 2\n- Odd: \uDFFF\n',
  'marks that turn the text around':
    '## \u202EYard\n\n- \u202ESlab: 12 ft\n- Twice: \u202Eslab times 2\n- Hidden: 1\u200B2 ft\n',
  'quotes 20,000 deep': '> '.repeat(20_000) + 'deep',
  'lists 20,000 deep': '- '.repeat(20_000),
  'brackets for Markdown': '[a](['.repeat(5000),
  'a part 3,000 times': '## Yard\n'.repeat(3000),
  'a name of 50,000 characters': `- ${'a'.repeat(50_000)}: 12 ft\n`,
  'settings that nobody meant': `# Kestrel Court\n\n- Currency: ${SCRIPT}\n- Counted things: ${'x, '.repeat(500)}\n- Fractions: 1/0 in\n- Measures: cubits\n\n- Slab: 12 ft\n`,
};

function cellsOf(e: Estimate): readonly Cell[] {
  return e.notebook.parts
    .flatMap((p) => p.blocks)
    .flatMap((b) => (b.kind === 'cell' ? [b.cell] : []));
}

/** Asks for all that a page asks for. */
function lookedOver(e: Estimate): readonly string[] {
  e.costs();
  for (const cell of cellsOf(e)) {
    e.shown(cell.id);
    e.lastShown(cell.id);
    e.draft(cell.id, cell.formula);
    const { outcome } = e.state(cell.id);
    if (outcome.kind === 'fault') expect(outcome.report.headline).not.toBe('');
  }
  return e.findings().map((f) => f.code);
}

describe('a hostile text', () => {
  test.for(Object.entries(TEXTS))(
    'is kept to the last character and runs nothing: %s',
    ([, text]) => {
      const e = new Estimate(text);
      lookedOver(e);
      expect(e.notebook.text).toBe(text);
    },
  );

  test.for(Object.entries(TEXTS))(
    'takes an edit, and taken back it is what it was: %s',
    ([, text]) => {
      const e = new Estimate(text);
      const [cell] = cellsOf(e);
      const done = cell
        ? e.setFormula(cell.id, `${IMAGE} plus ${SCRIPT}`)
        : e.addCell('', null, 'Slab', '12 ft');
      lookedOver(e);
      if ('change' in done) e.undo();
      expect(e.notebook.text).toBe(text);
    },
  );

  it('of 5 MB is kept and told to be too long', () => {
    const text = '# Kestrel Court\n\n' + '- Slab: 12 ft\n'.repeat(5_000_000 / 14);
    const e = new Estimate(text);
    expect(e.notebook.text).toBe(text);
    expect(lookedOver(e)).toEqual(['text-too-long']);
    expect(cellsOf(e)).toEqual([]);
  });

  it('of random bytes is kept and told to be no text', () => {
    const c = new Chance(7);
    const bytes = Uint8Array.from({ length: 20_000 }, () => c.whole(0, 255));
    const text = new TextDecoder('latin1').decode(bytes);
    const e = new Estimate(text);
    expect(e.notebook.text).toBe(text);
    expect(lookedOver(e)).toEqual(['not-text']);
  });

  it('of random characters is kept whatever they are', () => {
    const c = new Chance(8);
    for (let i = 0; i < 60; i++) {
      const marks = [
        ...'-:#>*_`[]()<>&|\\"\'\n\r\t $%?½’−'.split(''),
        ' ft',
        '- A: ',
        '\n- B: a ',
        '\n## ',
        '\uD83C',
        '\u2028',
      ];
      const text = Array.from({ length: 300 }, () =>
        c.in(0.7) ? c.of(marks) : String.fromCharCode(c.whole(1, 0xffff)),
      ).join('');
      const e = new Estimate(text);
      lookedOver(e);
      expect(e.notebook.text).toBe(text);
    }
  });
});

describe('names of the machinery', () => {
  it('are names like any other', () => {
    const e = new Estimate(TEXTS['names of the machinery'] ?? '');
    const said = cellsOf(e).map((cell) => `${cell.name} = ${e.shown(cell.id)?.text}`);
    expect(said).toEqual([
      '__proto__ = 3 ft',
      'constructor = 4 ft',
      'toString = 7 ft',
      'hasOwnProperty = 14 ft',
      'valueOf = 4 ft',
    ]);
    const [cell] = cellsOf(e);
    if (!cell) throw new Error('no cell came of the text');
    expect(e.rename(cell.id, 'prototype')).toHaveProperty('change');
    expect(cellsOf(e)[2]?.formula).toBe('prototype plus constructor');
  });
});

describe('words of the machinery', () => {
  const WORDS = ['constructor', '__proto__', 'toString', 'hasOwnProperty'];

  test.for(WORDS)(
    'take no other meaning anywhere in a formula, or as a counted thing: %s',
    (word) => {
      const lines = [...GIVENS, 'Answer: 1', 'Count: 1'].map((l) => `- ${l}\n`).join('');
      const e = new Estimate(
        `# Kestrel Court\n\n- Counted things: sleeper\n\n## Landing\n\n${lines}`,
      );
      const answer = cellsOf(e).find((c) => c.name === 'Answer')?.id ?? -1;
      for (const formula of RIGHT) {
        const words = formula.match(/\s*(?:\w+|[^\s\w])/gu) ?? [];
        for (let at = 0; at < words.length; at++) {
          const odd = [...words.slice(0, at), ` ${word}`, ...words.slice(at + 1)].join('').trim();
          const { outcome, reading } = e.draft(answer, odd);
          expect(['value', 'fault', 'unknown', 'waiting']).toContain(outcome.kind);
          for (const { headline, explanation } of reading.problems) {
            expect(`${headline} ${explanation}`).not.toMatch(/function|native code|\[object/);
          }
        }
      }
      const counted = new Estimate(
        `- Counted things: ${word}\n\n## Landing\n\n- Many: 3 ${word}\n- Twice: many times 2\n`,
      );
      expect(cellsOf(counted).map((c) => counted.shown(c.id)?.unit)).toEqual([
        word.toLowerCase(),
        word.toLowerCase(),
      ]);
    },
  );
});

describe('a hostile formula', () => {
  const FORMULAS: Readonly<Record<string, readonly [formula: string, code: string]>> = {
    'of 100,000 characters': ['x'.repeat(100_000), 'too-long'],
    'of 20,000 words': ['slab '.repeat(20_000).trim(), 'too-long'],
    'with 5,000 nested brackets': ['('.repeat(5000) + '1' + ')'.repeat(5000), 'too-long'],
    'with 4,900 brackets that never close': ['('.repeat(4900), 'too-deep'],
    'with 4,900 brackets that never opened': [')'.repeat(4900), 'missing-value'],
    'that outgrows any job': [`10${' cubed'.repeat(400)}`, 'too-large'],
    'that shrinks past measure': [`1 ÷ 0.1${' cubed'.repeat(40)}`, 'too-large'],
    'with a number of 60 digits': ['1'.repeat(60), 'odd-number'],
    'that is HTML': [SCRIPT, 'missing-value'],
  };

  test.for(Object.entries(FORMULAS))('%s is told so, and kept', ([, [formula, code]]) => {
    const e = new Estimate('- Slab: 12 ft\n- Answer: 1\n');
    const answer = cellsOf(e)[1];
    if (!answer) throw new Error('no cell came of the text');
    expect(e.setFormula(answer.id, formula)).toHaveProperty('change');
    const { outcome } = e.state(answer.id);
    expect(outcome.kind === 'fault' ? outcome.report.code : outcome.kind).toBe(code);
    expect(cellsOf(e)[1]?.formula).toBe(formula);
    expect(e.notebook.text).toBe(`- Slab: 12 ft\n- Answer: ${formula}\n`);
    expect(e.lastShown(answer.id)?.text).toBe('1');
    expect(lookedOver(e)).toContain(code);
  });

  test.for([
    ['NUL', '12\0 ft'],
    ['a lone surrogate', '12 ft \uD800'],
    ['a mark that turns the text around', '12 ft \u202E plus 1 ft'],
    ['a tab', '12\tft'],
    ['a line break', '12 ft\n- Other: 3 ft'],
  ] as const)('with %s is taken as text or refused, and adds no cell', ([, formula]) => {
    const text = '- Slab: 12 ft\n- Answer: 1\n';
    const e = new Estimate(text);
    const answer = cellsOf(e)[1];
    if (!answer) throw new Error('no cell came of the text');
    const done = e.setFormula(answer.id, formula);
    expect(cellsOf(e).map((c) => c.name)).toEqual(['Slab', 'Answer']);
    lookedOver(e);
    if ('change' in done) e.undo();
    expect(e.notebook.text).toBe(text);
  });
});

describe('steps are bounded', () => {
  /** How often the parser looks at a token. */
  function looksAt(text: string): number {
    let looks = 0;
    const counted = new Proxy(tokensOf(text) as Token[], {
      get(tokens, key) {
        if (typeof key === 'string' && /^\d/.test(key)) looks++;
        return Reflect.get(tokens, key);
      },
    });
    parseTokens(text, counted, vocabulary, 'landing', null, surroundings);
    return looks;
  }

  const GROWING: Readonly<Record<string, (n: number) => string>> = {
    sums: (n) => 'thickness' + ' plus thickness'.repeat(n),
    'parts of parts': (n) => '1 of ('.repeat(n) + '1' + ')'.repeat(n),
    'shares of shares': (n) => 'waste of ('.repeat(n) + '1' + ')'.repeat(n),
    brackets: (n) => '('.repeat(n) + '1' + ')'.repeat(n),
    'brackets that never close': (n) => '('.repeat(n),
    'pieces of pieces': (n) => '1 pieces of ('.repeat(n) + '1 ft' + ') from 16 ft boards'.repeat(n),
    'conditions in limits': (n) =>
      '(1 where yes, otherwise 1 not less than ('.repeat(n) + '1' + '))'.repeat(n),
    'conditions with tails': (n) =>
      '1 where yes, otherwise 1 in boards of ('.repeat(n) + '1 ft' + ')'.repeat(n),
    'conditions in a row': (n) => '1' + ' where yes, 1'.repeat(n) + ' where no, otherwise 1',
    'conditions first': (n) => 'if yes then 1, otherwise '.repeat(n) + '1',
    'lists in lists': (n) => 'total of 1 and ('.repeat(n) + '1' + ')'.repeat(n),
    choices: (n) => 'thickness' + ' or thickness whichever is greater'.repeat(n),
    logic: (n) => 'yes' + ' and yes or no'.repeat(n),
    clauses: (n) => '$5' + ' for 1% fee'.repeat(n),
    'unknown names': (n) => 'slbb '.repeat(n),
    fractions: (n) => '1/'.repeat(n) + '1',
    'feet and inches': (n) => `12' 6" x `.repeat(n) + "12'",
    signs: (n) => '- '.repeat(n) + '1',
    commas: (n) => ','.repeat(n),
    quotes: (n) => '"a'.repeat(n),
  };

  test.for(Object.entries(GROWING))(
    'twice as long a formula takes about twice the looks at most: %s',
    ([, text]) => {
      for (const n of [20, 40, 80]) {
        expect(looksAt(text(2 * n))).toBeLessThanOrEqual(2.3 * looksAt(text(n)) + 100);
      }
    },
  );

  it('an edit runs what it reaches and no more, however long the chain', () => {
    const count = 2000;
    const cells = Array.from(
      { length: count },
      (_, i) => `- Step ${i}: ${i === 0 ? '1 ft' : `step ${i - 1} plus 1 in`}`,
    );
    const e = new Estimate(
      `${cells.join('\n')}\n- Whole: step ${count - 1} rounded up to the next 1000 ft\n- After: whole times 2\n`,
    );
    const [first] = cellsOf(e);
    const last = cellsOf(e).at(-1);
    if (!first || !last) throw new Error('no cells came of the text');
    expect(e.shown(last.id)?.text).toBe('2,000 ft');
    const done = e.setFormula(first.id, '2 ft');
    if (!('ran' in done)) throw new Error('the edit was refused');
    expect(done.ran).toHaveLength(count + 1);
    expect(done.ran).not.toContain(last.id);
  });

  it('a circle of 800 cells is told once for each and runs no cell twice', () => {
    const count = 800;
    const cells = Array.from(
      { length: count },
      (_, i) => `- Step ${i}: step ${(i + 1) % count} plus 1 in`,
    );
    const e = new Estimate(cells.join('\n'));
    const [first] = cellsOf(e);
    if (!first) throw new Error('no cells came of the text');
    const done = e.setFormula(first.id, '1 ft');
    if (!('ran' in done)) throw new Error('the edit was refused');
    expect(new Set(done.ran).size).toBe(done.ran.length);
    expect(done.ran).toHaveLength(count);
    e.undo();
    expect(cellsOf(e).every((cell) => e.state(cell.id).outcome.kind === 'fault')).toBe(true);
  });
});
