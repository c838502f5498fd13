// What a formula is told that was read and can't be worked with the values there are.
import { faultAtWork } from '../language/check/at-work.ts';
import type { Checked } from '../language/plan.ts';
import type { Surroundings } from '../language/reading.ts';
import { Dec, plusDropping } from '../quantity/decimal.ts';
import { writtenUnits } from '../quantity/form.ts';
import { SHARE } from '../quantity/measure.ts';
import type { Nouns } from '../quantity/nouns.ts';
import { type ShowSettings, show } from '../quantity/show.ts';
import type { Formula } from '../language/tree.ts';
import type { Fix, Report } from '../words/report.ts';
import type { Spot } from '../words/spot.ts';
import { workingFault } from './faults.ts';
import { Fault, type FaultCode, bare, isNoValue } from './held.ts';
import { type Working, culprit, whereAtFault } from './tracing.ts';

export interface Telling {
  readonly text: string;
  readonly surroundings: Surroundings;
  readonly nouns: Nouns;
  readonly show: ShowSettings;
  readonly work: Working;
}

/** Codes of which the formula itself says what went wrong; a division by nothing is told at what is nothing. */
const OF_ITS_OWN: ReadonlySet<FaultCode> = new Set([
  'nothing-left',
  'piece-too-long',
  'root-of-negative',
]);

/** The report of a formula that comes to a fault. */
export function reportAtWork(checked: Checked, telling: Telling): Report {
  const { text, surroundings, nouns, work } = telling;
  const at = whereAtFault(checked, work);
  const held = work(at.plan);
  if (!(held instanceof Fault) || held.code === 'text') throw new Error(`no fault in: ${text}`);
  if (OF_ITS_OWN.has(held.code)) {
    const lists = { sizes: [], problems: [], waitsFor: [], notes: [] };
    const checking = { text, surroundings, nouns, ...lists };
    const report = faultAtWork(at, sharesTogether(at, telling), checking);
    if (report) return report;
  }
  const { spot, says } = culprit(at, work);
  const words = text.slice(spot.from, spot.to);
  return {
    ...workingFault(held.code, says(words), spot),
    fixes: fixesAtWork(held.code, at.formula, text, spot),
  };
}

/** Nothing where there is nothing to divide by, or no root below nought. */
function fixesAtWork(
  code: FaultCode,
  { kind, spot: whole }: Formula,
  text: string,
  spot: Spot,
): readonly Fix[] {
  const put = (say: string, at: Spot, by: string): readonly Fix[] => [
    { say, formula: text.slice(0, at.from) + by + text.slice(at.to) },
  ];
  const words = text.slice(spot.from, spot.to);
  const isOne =
    /^\(.*\)$/.test(words) ||
    !/[-+−–*/÷×,]|\b(?:plus|minus|less|times|by|over|per|at)\b/i.test(words);
  const asOne = isOne ? words : `(${words})`;
  if (code === 'root-of-negative') {
    return put('Take nothing where it is less', spot, `(${words}, not less than 0)`);
  }
  if (code !== 'division-by-zero' || kind === 'even-gap' || kind === 'fewest') return [];
  const all = text.slice(whole.from, whole.to);
  return put(
    'Take 0 where there is nothing',
    whole,
    `(${/^\([^()]*\)$/.test(all) ? all : `(${all})`} where ${asOne} is not 0, otherwise 0)`,
  );
}

/** What the shares of a price come to, as they are shown. */
function sharesTogether(at: Checked, { work, show: settings }: Telling): string {
  let sum = new Dec(0);
  for (const share of at.parts.slice(1)) {
    const held = work(share.plan);
    const value = isNoValue(held) ? null : bare(held);
    if (value instanceof Dec) sum = plusDropping(sum, value);
  }
  return show(sum, { measure: SHARE, showIn: null, written: writtenUnits() }, settings).text;
}
