// Other amounts for the givens of a notebook, each inside the limits that are written under it.
import type { CellId } from '../../src/language/tree.ts';
import type { Estimate } from '../../src/notebook/estimate.ts';
import { cellsOf } from '../../src/notebook/lines.ts';
import type { Chance } from '../properties/chance.ts';

/** Writes them into the notebook; how many were changed. */
export function freshGivens(estimate: Estimate, chance: Chance): number {
  const cells = estimate.notebook.parts.flatMap((part) => cellsOf(part));
  let changed = 0;
  for (const { id } of cells) {
    const fresh = freshGiven(estimate, id, chance);
    if (fresh !== null && 'change' in estimate.setFormula(id, fresh)) changed++;
  }
  return changed;
}

/** Another amount for one given; null where there are no limits to go by. */
export function freshGiven(estimate: Estimate, id: CellId, chance: Chance): string | null {
  if (estimate.state(id).kind !== 'given') return null;
  const cells = estimate.notebook.parts.flatMap((part) => cellsOf(part));
  const remarks = cells.find((cell) => cell.id === id)?.remarks ?? [];
  return within(remarks.find(({ kind }) => kind === 'sensible')?.text ?? '', chance);
}

/** `3 ft up to 12 ft`: sixteenths of an inch, whole things, cents, or a fortieth of the way. */
function within(limits: string, chance: Chance): string | null {
  const [low, high] = limits.split(' up to ').map((end) => /^(\$?)([\d.,]+)(.*)$/.exec(end.trim()));
  if (!low || !high || low[1] !== high[1] || low[3] !== high[3]) return null;
  const [, money = '', , unit = ''] = low;
  const [least, most] = [low, high].map((end) => Number(end[2]?.replaceAll(',', '')));
  if (least === undefined || most === undefined) return null;
  const step = stepOf(unit.trim(), money, least, most);
  const number = least + chance.whole(0, Math.floor((most - least) / step)) * step;
  return `${money}${Number(number.toFixed(6))}${unit}`;
}

function stepOf(unit: string, money: string, least: number, most: number): number {
  if (money !== '') return 0.01;
  if (unit === 'in') return 1 / 16;
  // A sixteenth of an inch is no end of digits of a foot; three of them are.
  if (unit === 'ft') return 1 / 64;
  const isMeasured = /^(?:%|sq|cubic|hours?|min|lb|psf|tons?)/.test(unit) || unit.includes(' per ');
  return isMeasured || unit === '' ? (most - least) / 40 : 1;
}
