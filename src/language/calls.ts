// `max(a, b)`, `sqrt(x)`: written as a call. It is refused, with the sentence that says the same.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';

/** Each in words, from what stands between the commas. */
const SAID: ReadonlyMap<string, (parts: readonly string[]) => string | null> = new Map(
  Object.entries({
    max: (parts) => (parts.length > 1 ? `the greater of ${listed(parts)}` : null),
    min: (parts) => (parts.length > 1 ? `the lesser of ${listed(parts)}` : null),
    sum: (parts) => `total of ${listed(parts)}`,
    total: (parts) => `total of ${listed(parts)}`,
    average: (parts) => `average of ${listed(parts)}`,
    avg: (parts) => `average of ${listed(parts)}`,
    mean: (parts) => `average of ${listed(parts)}`,
    sqrt: ([of]) => (of ? `square root of ${slot(of)}` : null),
    sqr: ([of]) => (of ? `${slot(of)} squared` : null),
    half: ([of]) => (of ? `half of ${slot(of)}` : null),
    round: ([of, ...more]) => (of && more.length === 0 ? `${slot(of)} rounded` : null),
    roundup: ([of]) => (of ? `${slot(of)} rounded up` : null),
    rounddown: ([of]) => (of ? `${slot(of)} rounded down` : null),
    ceil: ([of]) => (of ? `${slot(of)} rounded up` : null),
    ceiling: ([of]) => (of ? `${slot(of)} rounded up` : null),
    floor: ([of]) => (of ? `${slot(of)} rounded down` : null),
    int: ([of]) => (of ? `${slot(of)} rounded down` : null),
    hypot: ([a, b]) => (a && b ? `diagonal of ${slot(a)} and ${slot(b)}` : null),
    if: ([when, then, otherwise]) =>
      when && then && otherwise
        ? `${slot(then)} where ${when}, otherwise ${slot(otherwise)}`
        : null,
  } satisfies Record<string, (parts: readonly string[]) => string | null>),
);

/** A call that begins here, refused; null where none does. */
export function refuseCall(r: Reader): Formula | null {
  const { kind, text, from } = r.token;
  const say = kind === 'word' ? SAID.get(text) : undefined;
  if (!say || !r.seesAt(1, '(') || r.peek(1).gap || r.nameAt(0)) return null;
  const close = r.closing.get(r.at + 1);
  const end = close === undefined ? null : r.tokens[close];
  if (!end) return null;
  const spot = { from, to: end.to };
  const parts = partsOf(r, r.at + 2, close ?? 0);
  const words = parts.length > 0 ? say(parts) : null;
  return r.fail({
    code: 'phrase-slot',
    spots: [spot],
    phrase: r.slice(r.token),
    wanted: 'to be said in words',
    like: 'the greater of $85 and $120',
    fixes: words ? [r.fix(`Write "${words}"`, spot, bracketed(r, spot, words))] : [],
  });
}

/** Beside anything else the words stand in brackets. */
function bracketed(r: Reader, spot: { from: number; to: number }, words: string): string {
  const alone = (r.text.slice(0, spot.from) + r.text.slice(spot.to)).trim() === '';
  return alone ? words : `(${words})`;
}

function partsOf(r: Reader, from: number, close: number): readonly string[] {
  const parts: string[] = [];
  let depth = 0;
  let start = from;
  for (let i = from; i <= close; i++) {
    const { text } = r.tokens[i] ?? r.token;
    if (i === close || (depth === 0 && text === ',')) {
      const [first, last] = [r.tokens[start], r.tokens[i - 1]];
      if (first && last && i > start) parts.push(r.slice({ from: first.from, to: last.to }));
      start = i + 1;
    } else if (text === '(' || text === '[') depth++;
    else if (text === ')' || text === ']') depth--;
  }
  return parts;
}

function listed(parts: readonly string[]): string {
  const said = parts.map(slot);
  return said.length < 2 ? said.join('') : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`;
}

/** In brackets where it is more than one amount or name. */
function slot(words: string): string {
  const plain = words.replaceAll(/(?<=\d),(?=\d{3})/g, '');
  const bare = /^[$£€]?[\p{L}\d.' "/%-]*$/u.test(plain) && !OPERATES.test(words);
  return bare || /^\([^()]*\)$/.test(words) ? words : `(${words})`;
}

const OPERATES = /\b(plus|minus|times|by|at|x|over|per|of|less|with|divided)\b|\s-\s|\s\/\s/i;
