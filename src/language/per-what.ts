// `per` after a value: a price per unit asked for, or a question for which one it is.
import type { Reader } from './reader.ts';
import { termAfter } from './rates.ts';
import type { Formula } from './tree.ts';
import type { Term } from '../quantity/form.ts';
import { unitByKey } from '../quantity/units.ts';
import { roughDimension } from './rough.ts';
import { MONEY } from '../quantity/dimension.ts';
import { termFrom } from './products.ts';
import { expectValue } from './values.ts';

/** `per` after a name divides by a name or bracket; by a unit or noun alone it asks. */
export function refusesPer(r: Reader): boolean {
  if (r.peek(1).kind === 'number' || r.peek(1).text === '(') return false;
  const term = termAfter(r, 1);
  const name = r.nameAt(1);
  return (
    term !== null &&
    term.length - 1 > (name?.length ?? 0) - 1 &&
    (name?.length ?? 0) <= term.length - 1
  );
}

/** `materials per sq ft of deck area`, `cost / area per sq ft`: a price per unit asked for. Null: it asks. */
export function perUnit(r: Reader, left: Formula): Formula | null {
  const found = termAfter(r, 1);
  if (found?.term.kind !== 'unit' || found.term.count !== null) return null;
  const { from } = r.token;
  const money: Term = { kind: 'unit', unit: unitByKey('$'), count: null };
  const form = { over: [money], under: [found.term] };
  if (r.seesAt(found.length, 'of')) {
    if (roughDimension(r, left) !== MONEY) return null;
    const opSpot = r.take(found.length + 1, 'operator');
    const right = termFrom(r, expectValue(r));
    const spot = r.since(left.spot.from);
    const of: Formula = { kind: 'binary', op: 'over', opSpot, left, right, spot };
    return { kind: 'in-units', of, form, formSpot: opSpot, spot };
  }
  if (left.kind !== 'binary' || left.op !== 'over' || roughDimension(r, left.left) !== MONEY)
    return null;
  if (roughDimension(r, left.right) !== found.term.unit.dimension) return null;
  r.take(found.length, 'phrase');
  return {
    kind: 'in-units',
    of: left,
    form,
    formSpot: r.since(from),
    spot: r.since(left.spot.from),
  };
}

export function askPerWhat(r: Reader, left: Formula): Formula {
  const found = termAfter(r, 1);
  const term = found?.term ?? null;
  const spot = { from: r.token.from, to: r.peek((found?.length ?? 2) - 1).to };
  const what = r.slice({ from: r.peek(1).from, to: spot.to });
  const many =
    term?.kind === 'unit' ? term.unit.many : term ? r.vocabulary.nouns.many(term.noun) : what;
  const fits = [...r.vocabulary.namesIn(r.part, r.self)]
    .filter(({ id }) => r.holdsTerm(id, term))
    .slice(0, 3);
  const after = { from: left.spot.to, to: spot.to };
  // `8 hours at 50 per hour`: a price without its sign.
  const price =
    left.kind === 'binary' && left.op === 'at' && left.right.kind === 'amount' && left.right.bare
      ? { from: left.right.spot.from, to: left.right.spot.from }
      : null;
  return r.fail({
    code: 'per-what',
    spots: [spot],
    what,
    many,
    fixes: [
      ...(price ? [r.fix('A price', price, r.vocabulary.sign)] : []),
      ...fits.map(({ say }) => r.fix(`Divided by ${say}`, spot, `divided by ${say}`)),
      r.fix(`For one ${what}`, after, ` divided by 1 ${what}`),
    ],
  });
}
