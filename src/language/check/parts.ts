// The operands of a formula node, in reading order.
import type { Formula } from '../tree.ts';

const NONE: readonly Formula[] = [];

export function partsOf(formula: Formula): readonly Formula[] {
  switch (formula.kind) {
    case 'amount':
    case 'words':
    case 'size':
    case 'yes-no':
    case 'name':
    case 'pi':
    case 'recap':
    case 'column':
    case 'row-count':
    case 'hole':
      return NONE;
    case 'binary':
    case 'comparison':
    case 'and':
    case 'or':
      return [formula.left, formula.right];
    case 'negative':
    case 'not':
    case 'bracket':
    case 'power':
    case 'square-root':
    case 'in-units':
    case 'as-noun':
      return [formula.of];
    case 'between':
      return [formula.of, formula.low, formula.high];
    case 'condition':
      return [...formula.branches.flatMap((b) => [b.value, b.when]), formula.otherwise];
    case 'in-packs':
      return [formula.of, formula.holdsEach];
    case 'rounded':
      return formula.step ? [formula.of, formula.step] : [formula.of];
    case 'marked-up':
      return [formula.of, formula.share];
    case 'for-shares':
      return [formula.of, ...formula.shares.map((s) => s.share)];
    case 'limited':
      return [formula.of, formula.limit];
    case 'pick':
    case 'list':
      return formula.items;
    case 'part-of':
      return [formula.share, formula.of];
    case 'what-share':
      return [formula.of, formula.whole];
    case 'diagonal':
      return [formula.a, formula.b];
    case 'circle':
      return [formula.size];
    case 'triangle':
      return formula.sides;
    case 'pieces':
      return [formula.count, formula.length, formula.stock];
    case 'spaced':
      return [formula.spacing, formula.along];
    case 'fewest':
      return [formula.width, formula.across, formula.gap];
    case 'sized':
      return [formula.count, formula.length, formula.size, ...formula.sold].filter(
        (each) => each !== null,
      );
    case 'range':
      return formula.first
        ? [formula.first, formula.best, formula.worst]
        : [formula.best, formula.worst];
    case 'look-up':
      return formula.conditions.map((c) => c.value);
    case 'even-gap':
      return [formula.count, formula.width, formula.across];
  }
}
