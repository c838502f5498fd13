// Walking formula trees: what a formula is made of, without recursion, however deep it is.
import { partsOf } from '../language/check/parts.ts';
import type { Checked } from '../language/plan.ts';
import type { Amount, CellId, Formula } from '../language/tree.ts';
import { MONEY } from '../quantity/dimension.ts';

/** Every written amount in a formula, in reading order. */
export function amountsIn(tree: Formula): readonly Amount[] {
  const found: Amount[] = [];
  const waiting: Formula[] = [tree];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (next.kind === 'amount') found.push(next);
    // A rounding step is a way of working, no amount of the job.
    else if (next.kind === 'rounded') waiting.push(next.of);
    else waiting.push(...partsOf(next).toReversed());
  }
  return found;
}

/** Whether a cell stands in a formula as a line of a recap alone, and nowhere by its name. */
export function onlyRecaps(tree: Formula, cell: CellId): boolean {
  let recapped = false;
  const waiting: Formula[] = [tree];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (next.kind === 'name' && next.cell === cell) return false;
    if (next.kind === 'recap') recapped ||= next.lines.includes(cell);
    else waiting.push(...partsOf(next));
  }
  return recapped;
}

/**
 * The cells whose whole amount is in this one: `concrete plus $65` holds concrete, `5% of concrete` and
 * `total less concrete` don't. A recap holds its lines.
 */
export function wholesIn(checked: Checked): readonly CellId[] {
  const found: CellId[] = [];
  const waiting: Checked[] = [checked];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const { formula } = next;
    if (formula.kind === 'name') found.push(formula.cell);
    else if (formula.kind === 'recap') found.push(...formula.lines);
    else if (formula.kind === 'column' && formula.what === 'total') found.push(...formula.cells);
    else waiting.push(...wholeParts(next).toReversed());
  }
  return found;
}

function wholeParts({ formula, parts, manner }: Checked): readonly Checked[] {
  const [first, second] = parts;
  switch (formula.kind) {
    case 'binary':
      if (!first || !second) return [];
      switch (formula.op) {
        case 'plus':
          return manner === 'share-of' ? [first] : parts;
        case 'minus':
          return [first];
        case 'times':
        case 'by':
          if (isShare(first) || isShare(second)) return [];
          return parts.filter(isMoney);
        case 'over':
          return isFromWhole(second) ? [first] : [];
        case 'at':
          return [];
      }
      break;
    case 'bracket':
    case 'in-units':
    case 'as-noun':
    case 'rounded':
    case 'limited':
    case 'marked-up':
    case 'for-shares':
      return first ? [first] : [];
    case 'pick':
    case 'list':
    case 'condition':
      return parts.filter(isMoney);
    default:
      return [];
  }
  return [];
}

function isShare({ holds }: Checked): boolean {
  return holds.measure.kind === 'share';
}

function isMoney({ holds }: Checked): boolean {
  return holds.measure.kind === 'amount' && holds.measure.dimension === MONEY;
}

function isFromWhole(checked: Checked): boolean {
  let inner = checked;
  while (inner.formula.kind === 'bracket' && inner.parts[0]) inner = inner.parts[0];
  return inner.manner === 'from-whole';
}
