// `round up (…)`, `round deck area to the nearest 10`: the rounding said before what it works on.
import { expectStep } from './rounding.ts';
import type { Reader } from './reader.ts';
import type { Formula, Way } from './tree.ts';
import { expectSlot } from './values.ts';

const ROUND: ReadonlySet<string> = new Set(['round', 'rounded', 'rnd', 'roundup', 'rounding']);

/** Does rounding begin here, with its value still to come? */
export function seesRoundFirst(r: Reader): boolean {
  return ROUND.has(r.token.text) && r.token.kind === 'word' && r.nameAt(0) === null;
}

/** One slot: what follows works on the rounded amount. */
export function readRoundedFirst(r: Reader): Formula {
  const opening = takeOpening(r);
  const of = expectSlot(r);
  return rounded(r, opening, of);
}

/** Rounding of all that follows up to a clause or a comma, which `readSum` reads. */
export function maybeRoundedFirst(r: Reader, readSum: (r: Reader) => Formula): Formula | null {
  if (!seesRoundFirst(r)) return null;
  const opening = takeOpening(r);
  const of = readSum(r);
  return rounded(r, opening, of);
}

interface OpeningTaken {
  readonly from: number;
  readonly way: Way;
  readonly opSpot: { readonly from: number; readonly to: number };
  readonly step: Formula | null;
}

function takeOpening(r: Reader): OpeningTaken {
  const { from } = r.token;
  const joined = r.sees('roundup');
  r.take(1, 'phrase');
  const way: Way = joined || r.sees('up') ? 'up' : r.sees('down') ? 'down' : 'nearest';
  if (r.sees('up') || r.sees('down') || r.sees('off')) r.take(1, 'phrase');
  const opSpot = r.since(from);
  // `round up to the next 10: …`
  const step = r.sees('to') ? stepAfter(r, way) : null;
  if (step && !r.maybe(':')) r.maybe(',');
  r.maybe('of');
  return { from, way: step?.way ?? way, opSpot, step: step?.step ?? null };
}

function stepAfter(r: Reader, way: Way): { way: Way; step: Formula | null } {
  r.maybe('to');
  r.skipArticle();
  let to = way;
  if (r.sees('next') || r.sees('nearest')) {
    if (way === 'nearest' && r.sees('next')) to = 'up';
    r.take(1, 'phrase');
  }
  return { way: to, step: expectStep(r) };
}

function rounded(r: Reader, opening: OpeningTaken, of: Formula): Formula {
  if (r.problem) return of;
  let { way, step } = opening;
  if (way === 'nearest' && (r.sees('up') || r.sees('down'))) {
    way = r.sees('up') ? 'up' : 'down';
    r.take(1, 'phrase');
  }
  if (step === null && r.sees('to')) ({ way, step } = stepAfter(r, way));
  const { opSpot, from } = opening;
  return { kind: 'rounded', of, way, step, opSpot, spot: r.since(from) };
}
