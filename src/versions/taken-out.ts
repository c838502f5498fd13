// Prices that stand inside a formula get cells of their own, with the source that told of them, and the formula names them.
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
  const { id } = twin.cell(cell);
  const { formula } = twin.estimate.state(id).input;
  const prices = pricesIn(twin.estimate, id).map(({ spot }) => formula.slice(spot.from, spot.to));
  const own = takeOut(twin.estimate, id);
  if (own === null || 'code' in own) return own;
  const names = own.map((one) => twin.estimate.state(one).input.name);
  const say = names.length === 1 ? 'a cell of its own' : 'cells of their own';
  return twin.change(`Give ${prices.join(' and ')} ${say}: ${names.join(' and ')}`);
}

/** Made in this estimate: the new cells, as their prices stood in the formula. Where it can't be made, all is as it was. */
export function takeOut(estimate: Estimate, id: CellId): readonly CellId[] | Finding | null {
  const { part } = estimate.state(id).input;
  const before = estimate.shown(id)?.text;
  const from = sourceOf(remarksOf(estimate, id)) ?? '';
  const many = pricesIn(estimate, id).length;
  if (many === 0) throw new Error(`no price in the formula of "${estimate.state(id).input.name}"`);
  const own: CellId[] = [];
  let made = 0;
  const back = (): void => {
    while (made-- > 0) estimate.undo();
  };
  for (let n = 0; n < many; n++) {
    const { name, formula } = estimate.state(id).input;
    const [price] = pricesIn(estimate, id);
    if (!price) throw new Error(`a price in the formula of "${name}" went with another one`);
    const { spot } = price;
    const called = freeName(estimate, part, `${name} price`);
    const known = new Set(idsOf(estimate));
    const added = (): CellId => idsOf(estimate).find((one) => !known.has(one)) ?? id;
    const steps = [
      () => estimate.addCell(part, own.at(-1) ?? id, called, formula.slice(spot.from, spot.to)),
      () => estimate.setRemark(added(), 'from', from),
      () => estimate.setFormula(id, formula.slice(0, spot.from) + called + formula.slice(spot.to)),
    ];
    for (const step of steps) {
      const done = step();
      if (!('change' in done)) {
        back();
        return done;
      }
      made++;
    }
    own.push(added());
  }
  const told = estimate.removeRemark(id, 'from');
  if ('change' in told) made++;
  if ('change' in told && estimate.shown(id)?.text === before) return own;
  back();
  return 'change' in told ? null : told;
}

function idsOf({ notebook }: Estimate): readonly CellId[] {
  return notebook.parts.flatMap(cellsOf).map(({ id }) => id);
}

function remarksOf({ notebook }: Estimate, id: CellId) {
  return notebook.parts.flatMap(cellsOf).find((cell) => cell.id === id)?.remarks ?? [];
}

/** `Delivery price`, or with a number after it where the part has one of that name. */
function freeName({ notebook }: Estimate, key: string, wanted: string): string {
  const part = notebook.parts.find((one) => one.key === key);
  const names = new Set((part ? cellsOf(part) : []).map(({ name }) => name.toLowerCase()));
  let name = wanted;
  for (let n = 2; names.has(name.toLowerCase()); n++) name = `${wanted} ${n}`;
  return name;
}
