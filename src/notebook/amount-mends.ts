// Mends of how much a given may be: its limits, its range, a share beside the cell of its name.
import { wordsOf } from '../language/range-ends.ts';
import type { Cell } from './document.ts';
import type { Mend, Mendable } from './mends.ts';
import { nameKey } from './names.ts';
import { remarkText } from './remarks.ts';
import { splitLimits, upTo } from './sensible.ts';
import { amountsIn } from './tree-parts.ts';
import { setRemark, withoutRemark } from './mend-words.ts';

/** `3 in to 8 in`, `between 3 in and 8 in`: as limits are written. */
export function limits(estimate: Mendable, cell: Cell): readonly Mend[] {
  const said = remarkText(cell.remarks, 'sensible') ?? '';
  const { tree } = estimate.draft(cell.part, cell.id, said).reading;
  const ends = tree.kind === 'range' ? upTo(tree) : null;
  const found = /^(?:between|from)?\s*(.+?)\s+(?:to|and|-|–|—)\s+(.+)$/i.exec(said.trim());
  const reads = found?.slice(1).every((side) => {
    const { outcome } = estimate.draft(cell.part, cell.id, side);
    return outcome.kind === 'value';
  });
  const made = ends ?? (found && reads ? `${found[1]} up to ${found[2]}` : null);
  return [
    ...(made === null ? [] : [setRemark(`Write ${made}`, cell.id, 'sensible', made)]),
    withoutRemark('Take the limits away', cell.id, 'sensible'),
  ];
}

/** The limit that was passed goes to where the value is, or the end of its range that lies farthest out. */
export function wider(estimate: Mendable, cell: Cell): readonly Mend[] {
  const said = remarkText(cell.remarks, 'sensible') ?? '';
  const { range, reading } = estimate.state(cell.id);
  const { tree } = reading;
  const shown = estimate.shown(cell.id);
  const ends = range && tree.kind === 'range' ? [wordsOf(tree.best), wordsOf(tree.worst)] : [];
  const values = [...(shown === null ? [] : [shown]), ...ends];
  if (values.length === 0) return [];
  const isLess = (a: string, b: string): boolean => {
    const { outcome } = estimate.draft(cell.part, cell.id, `(${a}) is less than (${b})`);
    return outcome.kind === 'value' && outcome.value === true;
  };
  const { low, high } = splitLimits(said.trim()) ?? { low: null, high: null };
  const least = low && values.reduce((far, value) => (isLess(value, far) ? value : far), low);
  const most = high && values.reduce((far, value) => (isLess(far, value) ? value : far), high);
  const moved = [least === low ? null : least, most === high ? null : most].filter(
    (one) => one !== null,
  );
  if (moved.length === 0) return [];
  const made = least === null ? `up to ${most}` : `${least} up to ${most}`;
  const text = most === null ? `at least ${least}` : made;
  const say = `Widen the limits to ${moved.join(' and ')}`;
  return [setRemark(say, cell.id, 'sensible', text)];
}

/** A range that leaves nothing open is one amount. */
export function certain(estimate: Mendable, cell: Cell): readonly Mend[] {
  const { tree } = estimate.state(cell.id).reading;
  if (tree.kind !== 'range') return [];
  const formula = wordsOf(tree.first ?? tree.best);
  return [{ say: `Only ${formula}`, does: { kind: 'formula', cell: cell.id, formula } }];
}

/** `10% waste` beside a cell Waste: the cell's name in its place. */
export function byName(estimate: Mendable, cell: Cell): readonly Mend[] {
  const section = estimate.notebook.sections.find(({ key }) => key === cell.part);
  const mends: Mend[] = [];
  for (const { label, spot } of amountsIn(estimate.state(cell.id).reading.tree)) {
    const beside = section?.cells.find((c) => label !== null && nameKey(c.name) === label);
    if (!beside || beside.id === cell.id) continue;
    const formula =
      cell.formula.slice(0, spot.from) + beside.name.toLowerCase() + cell.formula.slice(spot.to);
    const say = `Take ${beside.name}, ${estimate.shown(beside.id) ?? beside.formula}`;
    mends.push({ say, does: { kind: 'formula', cell: cell.id, formula } });
  }
  return mends;
}
