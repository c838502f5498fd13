// What a formula is told that was read and can't be worked with the values there are.
import { faultAtWork } from '../language/check/at-work.ts';
import type { Checked } from '../language/plan.ts';
import type { Surroundings } from '../language/reading.ts';
import { Dec, plusDropping } from '../quantity/decimal.ts';
import { writtenUnits } from '../quantity/form.ts';
import { SHARE } from '../quantity/measure.ts';
import type { Nouns } from '../quantity/nouns.ts';
import { type ShowSettings, show } from '../quantity/show.ts';
import type { Report } from '../words/report.ts';
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
  return workingFault(held.code, says(text.slice(spot.from, spot.to)), spot);
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
