// Walking formula trees: what a formula is made of, without recursion, however deep it is.
import type { Checked } from '../language/plan.ts';
import type { Amount, CellId, Formula } from '../language/tree.ts';
import { MONEY } from '../quantity/dimension.ts';

/** The formulas right below this one, in reading order. */
function partsOf(tree: Formula): readonly Formula[] {
  switch (tree.kind) {
    case 'amount':
    case 'words':
    case 'yes-no':
    case 'name':
    case 'pi':
    case 'recap':
    case 'column':
    case 'row-count':
    case 'hole':
      return [];
    case 'binary':
    case 'comparison':
    case 'and':
    case 'or':
      return [tree.left, tree.right];
    case 'between':
      return [tree.of, tree.low, tree.high];
    case 'negative':
    case 'not':
    case 'in-units':
    case 'as-noun':
    case 'power':
    case 'square-root':
    case 'bracket':
      return [tree.of];
    case 'condition':
      return [...tree.branches.flatMap((b) => [b.value, b.when]), tree.otherwise];
    case 'in-packs':
      return [tree.of, tree.holdsEach];
    case 'rounded':
      // A rounding step is a way of working, no amount of the job.
      return [tree.of];
    case 'marked-up':
      return [tree.of, tree.share];
    case 'for-shares':
      return [tree.of, ...tree.shares.map((s) => s.share)];
    case 'limited':
      return [tree.of, tree.limit];
    case 'pick':
    case 'list':
      return tree.items;
    case 'part-of':
      return [tree.share, tree.of];
    case 'what-share':
      return [tree.of, tree.whole];
    case 'diagonal':
      return [tree.a, tree.b];
    case 'circle':
      return [tree.size];
    case 'triangle':
      return tree.sides;
    case 'pieces':
      return [tree.count, tree.length, tree.stock];
    case 'spaced':
      return [tree.spacing, tree.along];
    case 'fewest':
      return [tree.width, tree.across, tree.gap];
    case 'look-up':
      return tree.conditions.map((c) => c.value);
    case 'even-gap':
      return [tree.count, tree.width, tree.across];
  }
}

/** Every written amount in a formula, in reading order. */
export function amountsIn(tree: Formula): readonly Amount[] {
  const found: Amount[] = [];
  const waiting: Formula[] = [tree];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (next.kind === 'amount') found.push(next);
    else waiting.push(...partsOf(next).toReversed());
  }
  return found;
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
