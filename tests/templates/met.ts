// What the language can say, told by its own sources: the variants of the tree and the words that open or join things.
import fs from 'node:fs';
import { ALL_LIMITS, SHARE_OF } from '../../src/language/limit-words.ts';
import { OR_LESS, RELATION_WORDS } from '../../src/language/comparisons.ts';
import { WHICH } from '../../src/language/which.ts';
import { OPENINGS } from '../../src/language/phrases.ts';
import { RELATIONS, WHATS } from '../../src/language/table-phrases.ts';
import { OPERATOR_WORDS, SHARE_LABELS } from '../../src/language/words.ts';

/** The texts that a type of this name may be, as its source says: `type Way = 'up' | 'down'`. */
function textsOfType(source: string, name: string): readonly string[] | null {
  const found = new RegExp(`type ${name} =([^;{]+);`).exec(source)?.[1];
  return found ? [...found.matchAll(/'([^']+)'/g)].map(([, text = '']) => text) : null;
}

function source(file: string): string {
  return fs.readFileSync(new URL(`../../src/${file}`, import.meta.url), 'utf8');
}

/** A hole stands where nothing could be read: nobody says one. */
const NOT_SAID = new Set(['hole']);

/**
 * `binary op=plus`, `rounded way=up` …: every kind of node in the tree with every text that a field of
 * it may be. A kind without such fields stands alone.
 */
export function variantsOfTree(): readonly string[] {
  const tree = source('language/tree.ts');
  return [...tree.matchAll(/interface \w+ extends At \{([\s\S]*?)\n\}/g)].flatMap(([, body = '']) => {
    const fields = [...body.matchAll(/readonly (\w+): ([^;]+);/g)];
    const kinds = textsIn(fields.find(([, name]) => name === 'kind')?.[2] ?? '', tree);
    const more = fields.flatMap(([, name = '', type = '']) =>
      name === 'kind' ? [] : textsIn(type, tree).map((text) => `${name}=${text}`),
    );
    return kinds
      .filter((kind) => !NOT_SAID.has(kind))
      .flatMap((kind) => [kind, ...more.map((field) => `${kind} ${field}`)]);
  });
}

function textsIn(type: string, tree: string): readonly string[] {
  const direct = [...type.matchAll(/'([^']+)'/g)].map(([, text = '']) => text);
  return direct.length > 0 ? direct : (/^\w+$/.test(type) && textsOfType(tree, type)) || [];
}

/** The same names for a tree that was read. */
export function variantsIn(tree: unknown, met: Set<string>): void {
  if (Array.isArray(tree)) for (const one of tree) variantsIn(one, met);
  if (typeof tree !== 'object' || tree === null || Array.isArray(tree)) return;
  const { kind } = tree as { kind?: unknown };
  for (const [name, value] of Object.entries(tree)) {
    if (typeof kind === 'string' && 'spot' in tree) {
      met.add(kind);
      if (typeof value === 'string') met.add(`${kind} ${name}=${value}`);
    }
    variantsIn(value, met);
  }
}

/** Marks that only hold a text together; the page of the guide is full of them. */
const PUNCTUATION = new Set(['(', ')', ',', '+', '-', '/', '=']);

/** Every wording that has a meaning: openings of phrases, clauses, comparisons, operators, labels of shares. */
export function wordings(): readonly string[] {
  return [
    ...OPENINGS.map(({ words }) => words.join(' ')),
    ...ALL_LIMITS.map(([words]) => words.join(' ')),
    ...SHARE_OF.map((words) => words.join(' ')),
    ...RELATION_WORDS.map(({ words }) => words.join(' ')),
    ...[...OR_LESS.keys()].map((word) => `or ${word}`),
    ...WHICH.keys(),
    ...WHATS.map(({ words }) => words.join(' ')),
    ...RELATIONS.map(([words]) => words.join(' ')),
    ...[...OPERATOR_WORDS].filter((word) => !PUNCTUATION.has(word)),
    ...SHARE_LABELS,
  ];
}

/** The words that may stand before the colon of a remark, and what a cost or price remark may say. */
export function remarkWords(): readonly string[] {
  const notebook = source('notebook/document.ts');
  const costs = textsOfType(source('language/tree.ts'), 'CostKind') ?? [];
  const prices = textsOfType(notebook, 'PriceKind') ?? [];
  return [...(textsOfType(notebook, 'RemarkKind') ?? []), ...costs, ...prices];
}
