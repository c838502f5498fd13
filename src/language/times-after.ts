// So many times what was just said, told after it: `delivery twice`, `deck width 2 times`, `labour doubled`.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { endsValue } from './unknown-words.ts';

/** `X twice`, `X 3 times`: belongs to the one thing before it. Null where that is not said. */
export function timesAfter(r: Reader, value: Formula): Formula | null {
  const { kind, text } = r.token;
  if (kind === 'word' && text === 'twice' && r.nameAt(0) === null && endsValue(r, 1)) {
    return soManyTimes(r, value, '2', 1);
  }
  const number = WORDS.get(text) ?? (kind === 'number' && /^\d{1,4}$/.test(text) ? text : null);
  if (number === null || !r.seesAt(1, 'times') || r.nameAt(0) || r.nameAt(1)) return null;
  return endsValue(r, 2) ? soManyTimes(r, value, number, 2) : null;
}

const WORDS: ReadonlyMap<string, string> = new Map(
  ['two', 'three', 'four', 'five', 'six'].map((word, i) => [word, String(i + 2)] as const),
);

function soManyTimes(r: Reader, value: Formula, number: string, words: number): Formula {
  const opSpot = r.take(words, 'operator');
  const left = r.number(number, number, opSpot);
  const spot = r.since(value.spot.from);
  return { kind: 'binary', op: 'times', opSpot, left, right: value, spot };
}

const PAST: ReadonlyMap<string, string> = new Map([
  ['doubled', '2'],
  ['tripled', '3'],
  ['halved', '1/2'],
]);

/** `labour doubled`; after a sum without a comma it could be of the last alone, and asks. */
export function doubledAfter(r: Reader, of: Formula): Formula | null {
  const comma = r.sees(',') ? 1 : 0;
  const number = PAST.get(r.peek(comma).text);
  if (number === undefined || r.nameAt(comma) || !endsValue(r, comma + 1)) return null;
  const isSum = of.kind === 'binary' && (of.op === 'plus' || of.op === 'minus');
  const opSpot = r.take(comma + 1, 'operator');
  if (isSum && comma === 0 && !/^[([]/.test(r.slice(of.spot))) {
    const word = r.slice(opSpot);
    const [all, last] = [r.slice(of.spot), r.slice(of.right.spot)];
    const by = number === '1/2' ? 'half of' : number === '2' ? 'twice' : '3 times';
    return r.fail({
      code: 'two-readings',
      spots: [opSpot],
      about: `"${word}" could work on "${last}" alone or on all that stands before it. Write the one that is meant.`,
      fixes: [
        r.fix('All of it', { from: of.spot.from, to: opSpot.to }, `${by} (${all})`),
        r.fix('The last alone', { from: of.right.spot.from, to: opSpot.to }, `(${by} ${last})`),
      ],
    });
  }
  const share = r.number(number, number === '1/2' ? 'half' : number, opSpot);
  const spot = r.since(of.spot.from);
  return number === '1/2'
    ? { kind: 'part-of', share, of, spot }
    : { kind: 'binary', op: 'times', opSpot, left: share, right: of, spot };
}
