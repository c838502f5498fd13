// One node of a formula told in words and numbers: which teller speaks for which node.
import type { Checked } from '../../language/plan.ts';
import type { Binary } from '../../language/tree.ts';
import type { Book } from '../book.ts';
import type { Target } from '../line.ts';
import { bared, saidWhole } from '../naming.ts';
import { type Word, saying } from '../step.ts';
import { tellList, tellRecap } from './adding.ts';
import { tellArithmetic, tellNegative } from './arithmetic.ts';
import {
  tellBetween,
  tellComparison,
  tellCondition,
  tellLimited,
  tellLogic,
  tellNot,
  tellPick,
} from './choices.ts';
import { tellColumn, tellLookUp, tellRowCount } from './tables.ts';
import { tellCircle, tellDiagonal, tellPower, tellSquareRoot, tellTriangle } from './geometry.ts';
import { tellAsNoun, tellInPacks, tellInUnits, tellRounded } from './rounding.ts';
import { tellPartOf, tellShareOf, tellShareRun, tellWhatShare } from './shares.ts';
import { tellForShares, tellMarkedUp } from './pricing.ts';
import { tellSized } from './sized.ts';
import { tellEvenGap, tellFewest, tellPieces, tellSpaced } from './spacing.ts';
import { type Told, riser, use } from './told.ts';

/** `target` is how the step above writes what this node comes to. */
export function tell(book: Book, checked: Checked, target: Target): Told {
  const inner = bared(checked);
  const { formula } = inner;
  switch (formula.kind) {
    case 'binary':
      return tellBinary(book, inner, formula, target);
    case 'negative':
      return tellNegative(book, inner, formula, target);
    case 'comparison':
      return tellComparison(book, inner, formula, target);
    case 'between':
      return tellBetween(book, inner, formula, target);
    case 'and':
    case 'or':
      return tellLogic(book, inner, formula, target);
    case 'not':
      return tellNot(book, inner, formula, target);
    case 'condition':
      return tellCondition(book, inner, formula, target);
    case 'in-units':
      return tellInUnits(book, inner, formula, target);
    case 'in-packs':
      return tellInPacks(book, inner, formula, target);
    case 'as-noun':
      return tellAsNoun(book, inner, formula, target);
    case 'rounded':
      return tellRounded(book, inner, formula, target);
    case 'marked-up':
      return tellMarkedUp(book, inner, formula, target);
    case 'for-shares':
      return tellForShares(book, inner, formula, target);
    case 'limited':
      return tellLimited(book, inner, formula, target);
    case 'pick':
      return tellPick(book, inner, formula, target);
    case 'list':
      return tellList(book, inner, formula, target);
    case 'part-of':
      return tellPartOf(book, inner, formula, target);
    case 'what-share':
      return tellWhatShare(book, inner, formula, target);
    case 'power':
      return tellPower(book, inner, formula, target);
    case 'square-root':
      return tellSquareRoot(book, inner, formula, target);
    case 'diagonal':
      return tellDiagonal(book, inner, formula, target);
    case 'circle':
      return tellCircle(book, inner, formula, target);
    case 'triangle':
      return tellTriangle(book, inner, formula, target);
    case 'pieces':
      return tellPieces(book, inner, formula, target);
    case 'spaced':
      return tellSpaced(book, inner, formula, target);
    case 'fewest':
      return tellFewest(book, inner, formula, target);
    case 'even-gap':
      return tellEvenGap(book, inner, formula, target);
    case 'recap':
      return tellRecap(book, inner, formula, target);
    case 'column':
      return tellColumn(book, inner, formula, target);
    case 'look-up':
      return tellLookUp(book, inner, formula, target);
    case 'sized':
      return tellSized(book, inner, formula, target);
    case 'row-count':
      return tellRowCount(book, formula, target);
    case 'name':
      return tellName(book, inner, target);
    case 'amount':
    case 'range':
    case 'words':
    case 'size':
    case 'yes-no':
    case 'pi':
      return tellPlain(book, saying('as written: ', book.say(formula)), target);
    case 'bracket':
    case 'hole':
      return tellPlain(book, saying('there is nothing to work here yet'), target);
  }
}

function tellBinary(book: Book, checked: Checked, formula: Binary, target: Target): Told {
  switch (checked.manner) {
    case 'share-of':
      return tellShareOf(book, checked, formula, target);
    case 'share-added':
    case 'from-whole':
      return tellShareRun(book, checked, target);
    case 'at-multiplied':
    case 'at-divided':
    case null:
      return tellArithmetic(book, checked, formula, target);
  }
}

/** A formula that is another cell's name and nothing else. */
function tellName(book: Book, checked: Checked, target: Target): Told {
  const used = use(book, checked);
  return [
    riser(book, {
      said: saying('the same as ', saidWhole(book, checked)),
      tokens: [],
      joint: '=',
      result: target,
      comesOut: [],
      used: [used],
    }),
  ];
}

function tellPlain(book: Book, words: readonly Word[], target: Target): Told {
  return [
    riser(book, { said: words, tokens: [], joint: '=', result: target, comesOut: [], used: [] }),
  ];
}
