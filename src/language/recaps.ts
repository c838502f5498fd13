// Recap phrases: `total of material in Landing`, `total cost of this part`, `total of labour in every part`.
import { nearNames } from '../words/near.ts';
import { ARTICLES } from './lexer.ts';
import type { Reader } from './reader.ts';
import type { CostKind, Formula, RecapScope } from './tree.ts';

const KINDS: ReadonlyMap<string, CostKind | 'all'> = new Map(
  Object.entries({
    material: 'material',
    materials: 'material',
    labour: 'labour',
    labor: 'labour',
    equipment: 'equipment',
    subcontract: 'subcontract',
    subcontracts: 'subcontract',
    fee: 'fee',
    fees: 'fee',
  }),
);

/** A cost kind with its `in`, so many tokens ahead. */
export function costKindAt(
  r: Reader,
  ahead: number,
): { kind: CostKind | 'all'; length: number } | null {
  const kind = KINDS.get(r.peek(ahead).text);
  return kind && r.peek(ahead).kind === 'word' && r.seesAt(ahead + 1, 'in')
    ? { kind, length: 2 }
    : null;
}

const EVERY_PART: readonly (readonly string[])[] = [
  ['every', 'part'],
  ['all', 'parts'],
  ['the', 'job'],
  ['the', 'whole', 'job'],
];

/** A cost kind with its `in` and a part that there is: `material in Deck` is no table that was mistyped. */
export function seesRecap(r: Reader, ahead: number): boolean {
  const kind = costKindAt(r, ahead);
  if (!kind) return false;
  const at = ahead + kind.length;
  const article = ARTICLES.has(r.peek(at).text) ? 1 : 0;
  return (
    r.seesAll(at, ['this', 'part']) ||
    EVERY_PART.some((words) => r.seesAll(at, words)) ||
    r.vocabulary.partAt(r.tokens, r.at + at) !== null ||
    r.vocabulary.partAt(r.tokens, r.at + at + article) !== null
  );
}

/** Reads the phrase whose opening stands here. */
export function readRecap(r: Reader): Formula {
  const from = r.token.from;
  r.skipArticle();
  const whole = r.sees('total', 'cost', 'of');
  const costKind = whole ? 'all' : (KINDS.get(r.peek(2).text) ?? 'all');
  r.take(whole ? 3 : 4, 'phrase');
  const where = expectPart(r);
  if (!where) return { kind: 'hole', spot: r.since(from) };
  const scope: RecapScope = { costKind, part: where.part };
  r.recaps.push(scope);
  const lines = (r.surroundings?.linesOf(scope) ?? []).filter((id) => id !== r.self);
  const say = whole ? `total cost of ${where.say}` : `total of ${costKind} in ${where.say}`;
  return { kind: 'recap', scope, say, lines, spot: r.since(from) };
}

function expectPart(r: Reader): { part: string | null; say: string } | null {
  if (r.sees('this', 'part')) {
    r.take(2, 'phrase');
    return { part: r.part, say: 'this part' };
  }
  for (const words of EVERY_PART) {
    if (r.seesAll(0, words)) {
      r.take(words.length, 'phrase');
      return { part: null, say: 'every part' };
    }
  }
  const named = r.vocabulary.partAt(r.tokens, r.at) ?? skipping(r);
  if (named) {
    r.take(named.length, 'phrase');
    return { part: named.key, say: r.vocabulary.partName(named.key) };
  }
  let count = 0;
  while (count < 4 && (r.peek(count).kind === 'word' || r.peek(count).kind === 'number')) count++;
  const spot = { from: r.token.from, to: r.peek(Math.max(0, count - 1)).to };
  const word = r.slice(spot);
  const near = nearNames(
    word,
    r.vocabulary.parts.map((p) => p.name).filter((n) => n !== ''),
    3,
  );
  r.fail({
    code: 'unknown-part',
    spots: [spot],
    word,
    near,
    fixes: [
      ...near.map((name) => r.fix(`Use "${name}"`, spot, name)),
      ...['this part', 'every part'].map((say) => r.fix(`Use "${say}"`, spot, say)),
    ],
  });
  return null;
}

function skipping(r: Reader): { length: number; key: string } | null {
  const before = r.at;
  r.skipArticle();
  const named = r.vocabulary.partAt(r.tokens, r.at);
  if (!named) r.at = before;
  return named;
}
