// What is wanted at a place in a formula: told from the operator or the slot before it, and from what stands at its
// left, which is measured by the language itself.
import { slotAt } from '../language/slots.ts';
import type { Needs } from '../language/phrase-shapes.ts';
import type { Measure } from '../quantity/measure.ts';

/** `left` is what stands at the left of an operator; null where it can't be told. */
export type WantedHere =
  | { readonly kind: Exclude<Needs, 'rate' | 'like' | 'pack'> | 'factor' }
  | {
      readonly kind: 'rate' | 'like' | 'pack' | 'added' | 'number for';
      readonly left: Measure | null;
    }
  /** The start of a cost line, or of what is taken from one. */
  | { readonly kind: 'money' };

export type Measured = (text: string) => Measure | null;

/** How the cell is used: a cost line has to end in money. */
export type Line = 'cost' | 'plain';

export function wantedAt(text: string, at: number, measured: Measured, line: Line): WantedHere {
  const before = text.slice(0, at).trimEnd();
  if (before === '') return { kind: line === 'cost' ? 'money' : 'anything' };
  const left = (words: number): Measure | null =>
    leftMeasure(before.slice(0, before.length - words), measured);
  const [operator] = /(?:[\p{L}]+ )?[\p{L}]+$|\S$/u.exec(before) ?? [''];
  const last = operator.split(' ').at(-1)?.toLowerCase() ?? '';
  switch (last) {
    case 'at':
    case '@':
      return { kind: 'rate', left: left(last.length) };
    case 'plus':
    case 'minus':
    case 'with':
    case 'less':
    case '+':
    case '−':
    case '-':
      return { kind: 'added', left: left(last.length) };
    case 'times':
    case '×':
    case '*':
      return { kind: 'factor' };
    case 'by':
    case 'x':
      if (/\b(divided|multiplied)$/i.test(before.slice(0, -last.length).trimEnd())) {
        return { kind: 'number for', left: left(operator.length) };
      }
      return { kind: 'length' };
    case 'over':
    case '÷':
    case '/':
      return comparing(before, measured) ?? { kind: 'number for', left: left(last.length) };
    case 'than':
    case 'under':
    case 'is':
    case 'least':
    case 'most':
    case '=':
    case '<':
    case '>':
      return comparing(before, measured) ?? slotOr(text, at, before, measured, line);
    default:
      return slotOr(text, at, before, measured, line);
  }
}

/** After `is at least` and its like: what measures the same as what is compared. */
function comparing(before: string, measured: Measured): WantedHere | null {
  const found =
    /^(.*?)\s*(?:\bis\s+(?:not\s+)?(?:at (?:least|most)|more than|less than|over|under)?|[=<>])$/i.exec(
      before,
    );
  return found ? { kind: 'like', left: leftMeasure(found[1] ?? '', measured) } : null;
}

function slotOr(
  text: string,
  at: number,
  before: string,
  measured: Measured,
  line: Line,
): WantedHere {
  const found = slotAt(`${before} `, before.length + 1);
  if (found && before.length < found.from) {
    const { needs } = found.slot;
    switch (needs) {
      case 'rate':
      case 'pack':
      case 'like':
        return { kind: needs, left: likeWhat(before, found.opening, measured) };
      default:
        return { kind: needs };
    }
  }
  // Inside a bracket the same is wanted as in front of it.
  const bracket = /[([]$/.exec(before);
  if (bracket) return wantedAt(text, before.length - 1, measured, line);
  return { kind: /\b(where|if|and|or|not)$/i.test(before) ? 'condition' : 'anything' };
}

/** What a clause goes on from; where it is a phrase of its own (`total of A, …`), its first item. */
function likeWhat(before: string, opening: number, measured: Measured): Measure | null {
  const left = before.slice(0, opening);
  const [, item = ''] =
    /^(?:total of|average of|(?:the )?(?:greater|lesser) of|what share)\s+(.*?)(?:,|\band\b|\bis of\b)/i.exec(
      before.slice(opening),
    ) ?? [];
  return item === '' ? leftMeasure(left, measured) : measured(item);
}

/** The longest stretch that ends here and measures something: what an operator works on. */
export function leftMeasure(text: string, measured: Measured): Measure | null {
  const whole = text.trimEnd().replace(/,$/, '');
  const starts = [0];
  for (const found of whole.matchAll(
    /[([]|,\s|\b(?:of|where|if|is|and|or|plus|minus|otherwise|along|across|under|from)\s/gi,
  )) {
    starts.push(found.index + found[0].length);
  }
  // A formula with many joints is tried from its nearest ones.
  for (const from of [0, ...starts.slice(1).slice(-MOST_TRIED)]) {
    const stretch = whole.slice(from).trim();
    const measure = stretch === '' ? null : measured(stretch);
    if (measure) return measure;
  }
  return null;
}

const MOST_TRIED = 8;
