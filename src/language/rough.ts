// What a tree measures as far as can be told while it is read: for habits that read one way beside a length and
// another beside a count. Everything is measured for certain afterwards, in `check/`.
import {
  AREA,
  type Dimension,
  PLAIN,
  countOf,
  overDimension,
  powerDimension,
  timesDimension,
} from '../quantity/dimension.ts';
import type { Reader } from './reader.ts';
import type { Binary, Formula } from './tree.ts';

const told = new WeakMap<Formula, Dimension>();

/** Null where it can't be told. A tree that was asked about once is not gone through again. */
export function roughDimension(r: Reader, tree: Formula): Dimension | null {
  const known = told.get(tree);
  if (known) return known;
  const found = worked(r, tree);
  // While only names are looked for, what they hold is not known yet.
  if (found && r.surroundings) told.set(tree, found);
  return found;
}

function worked(r: Reader, tree: Formula): Dimension | null {
  switch (tree.kind) {
    case 'amount': {
      const { measure } = tree.holds;
      if (measure.kind === 'share') return PLAIN;
      return measure.kind === 'amount' ? measure.dimension : null;
    }
    case 'name': {
      r.askedHolds = true;
      const measure = r.surroundings?.holdsOf(tree.cell)?.measure;
      if (measure?.kind === 'share') return PLAIN;
      return measure?.kind === 'amount' ? measure.dimension : null;
    }
    case 'binary':
      return ofBinary(r, tree);
    case 'power': {
      const of = roughDimension(r, tree.of);
      return of && powerDimension(of, tree.power);
    }
    case 'bracket':
    case 'negative':
    case 'in-units':
    case 'rounded':
    case 'marked-up':
    case 'for-shares':
    case 'limited':
    case 'part-of':
      return roughDimension(r, tree.of);
    case 'pick':
    case 'list':
      return tree.items[0] ? roughDimension(r, tree.items[0]) : null;
    case 'in-packs':
    case 'as-noun':
    case 'pieces':
    case 'spaced':
    case 'fewest':
      return countOf(tree.noun);
    case 'circle':
      return tree.what === 'area' ? AREA : roughDimension(r, tree.size);
    case 'diagonal':
      return roughDimension(r, tree.a);
    case 'pi':
      return PLAIN;
    case 'words':
    case 'size':
    case 'yes-no':
    case 'comparison':
    case 'between':
    case 'and':
    case 'or':
    case 'not':
    case 'condition':
    case 'what-share':
    case 'square-root':
    case 'triangle':
    case 'even-gap':
    case 'recap':
    case 'column':
    case 'row-count':
    case 'look-up':
    case 'sized':
    case 'range':
    case 'hole':
      return null;
  }
}

function ofBinary(r: Reader, { op, left, right }: Binary): Dimension | null {
  const before = roughDimension(r, left);
  if (!before) return null;
  if (op === 'plus' || op === 'minus') return before;
  const after = roughDimension(r, right);
  if (!after) return null;
  return op === 'over' ? overDimension(before, after) : timesDimension(before, after);
}

/** The noun that a plain count counts; null for anything else. */
export function roughCount(r: Reader, tree: Formula): string | null {
  const dimension = roughDimension(r, tree);
  const [only, ...more] = dimension?.nouns ?? [];
  if (!only || more.length > 0 || only.power !== 1) return null;
  return dimension === countOf(only.noun) ? only.noun : null;
}
