// A price that stands inside a formula gets a cell of its own, with the source that told of it, and the formula names it.
import type { Change, Finding } from '../notebook/document.ts';
import type { Estimate } from '../notebook/estimate.ts';
import { cellsOf } from '../notebook/lines.ts';
import { sourceOf } from '../notebook/remarks.ts';
import { amountsIn } from '../notebook/tree-parts.ts';
import { Twin } from '../notebook/twin.ts';
import type { Amount, CellId } from '../language/tree.ts';

/** Amounts of money, and of money per something, that are written out in the formula of a cell. */
export function pricesIn(estimate: Estimate, cell: CellId): readonly Amount[] {
  return amountsIn(estimate.state(cell).reading.tree).filter(
    ({ holds: { measure } }) => measure.kind === 'amount' && measure.dimension.money !== 0,
  );
}

/** One change that can be undone as one, or why it can't be made; null where the cell would come to something else then. */
export function takenOut({ notebook }: Estimate, cell: CellId): Change | Finding | null {
  const twin = new Twin(notebook);
  const { estimate } = twin;
  const { id, remarks } = twin.cell(cell);
  const { name, formula, part } = estimate.state(id).input;
  const [price] = pricesIn(estimate, id);
  if (!price) throw new Error(`no price in the formula of "${name}"`);
  const written = formula.slice(price.spot.from, price.spot.to);
  const before = estimate.shown(id)?.text;
  const own = freeName(estimate, part, `${name} price`);
  const put = formula.slice(0, price.spot.from) + own + formula.slice(price.spot.to);
  const from = sourceOf(remarks) ?? '';
  for (const step of [
    () => estimate.addCell(part, id, own, written),
    () => estimate.setRemark(twin.added ?? id, 'from', from),
    () => estimate.setFormula(id, put),
    () => estimate.removeRemark(id, 'from'),
  ]) {
    const done = step();
    if (!('change' in done)) return done;
  }
  if (estimate.shown(id)?.text !== before) return null;
  return twin.change(`Give ${written} a cell of its own: ${own}`);
}

/** `Delivery price`, or with a number after it where the part has one of that name. */
function freeName({ notebook }: Estimate, key: string, wanted: string): string {
  const part = notebook.parts.find((one) => one.key === key);
  const names = new Set((part ? cellsOf(part) : []).map(({ name }) => name.toLowerCase()));
  let name = wanted;
  for (let n = 2; names.has(name.toLowerCase()); n++) name = `${wanted} ${n}`;
  return name;
}
