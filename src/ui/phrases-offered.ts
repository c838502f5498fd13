// Phrases and clauses of the language that can go on from a place: those that begin a value where one is wanted, and
// those that go on from what stands at the left where a value has ended. Each comes with an example that is worked.
import { PHRASE_SHAPES, type PhraseShape } from '../language/phrase-shapes.ts';
import { AREA, LENGTH, MASS, MONEY, VOLUME, hardPart, isHard } from '../quantity/dimension.ts';
import type { Measure } from '../quantity/measure.ts';
import type { Nouns } from '../quantity/nouns.ts';
import type { Candidate } from './completing.ts';
import { isCount, isNumber } from './fitting.ts';

/** What the page can ask about a formula that is only thought of. */
export interface Worked {
  /** What it comes to, as it is shown; null where it can't be read. */
  shown(formula: string): string | null;
}

type Left = 'length' | 'area' | 'volume' | 'count' | 'number' | 'money';

/** In which units a result is wanted most. */
const UNITS_WANTED: readonly (readonly [Left | 'weight', readonly string[]])[] = [
  ['volume', ['cubic yards', 'cubic feet']],
  ['area', ['sq ft', 'sq yd']],
  ['length', ['ft', 'in']],
  ['weight', ['tons', 'lb']],
];

/** Clauses that go on from a value: `before` is the formula up to where they begin. */
export function clausesAfter(before: string, left: Measure, worked: Worked): readonly Candidate[] {
  const what = leftOf(left);
  const shapes = PHRASE_SHAPES.filter(
    ({ stands }) =>
      stands.place === 'after' && what !== null && what !== 'weight' && stands.left.includes(what),
  );
  const units = UNITS_WANTED.find(([of]) => of === what)?.[1] ?? [];
  const now = before.trimEnd();
  const inUnits = units.map((unit): Candidate =>
    phrase(`in ${unit}`, `in ${unit}`, [`in ${unit}`], () => {
      const shown = worked.shown(`${now} in ${unit}`);
      return shown === null ? '' : `gives ${shown}`;
    }),
  );
  const [first, ...more] = shapes.map((shape) => ofShape(shape, worked, now));
  return first ? [first, ...inUnits, ...more] : inUnits;
}

/** Phrases that begin a value. */
export function phrasesFirst(worked: Worked): readonly Candidate[] {
  return PHRASE_SHAPES.filter(({ stands }) => stands.place === 'first').map((shape) =>
    ofShape(shape, worked, null),
  );
}

/** `joists every … along …`, for whatever is counted by a name that begins so. */
export function spacedOf(nouns: Nouns, typed: string, worked: Worked): readonly Candidate[] {
  const wanted = typed.toLowerCase();
  const many = [...new Set(nouns.phrases.values())]
    .map((noun) => nouns.many(noun))
    .filter((noun) => `${noun} every`.startsWith(wanted) && wanted.length > 1);
  return many.slice(0, 2).map((noun) => {
    const example = `${noun} every 16 in along 12 ft`;
    return phrase(`${noun} every … along …`, `${noun} every `, [`${noun} every`], () =>
      workedExample(example, worked),
    );
  });
}

function ofShape(shape: PhraseShape, worked: Worked, before: string | null): Candidate {
  const { say, slots, example, like } = shape;
  const opening = say.split('…')[0] ?? say;
  const hint = (): string => {
    if (slots.length === 0 && before !== null) {
      const shown = worked.shown(`${before} ${say}`);
      if (shown !== null) return `gives ${shown}`;
    }
    return example === null ? `as in ${like ?? say}` : workedExample(example, worked);
  };
  return phrase(say, opening, [opening.trim().toLowerCase(), say.toLowerCase()], hint);
}

function workedExample(example: string, worked: Worked): string {
  const shown = worked.shown(example);
  return shown === null ? `as in ${example}` : `${example}: ${shown}`;
}

function phrase(
  label: string,
  text: string,
  keys: readonly string[],
  hint: () => string,
): Candidate {
  return { text, keys, place: '', cell: null, label, hint };
}

function leftOf(left: Measure): Left | 'weight' | null {
  if (left.kind !== 'amount' || left.rate) return null;
  if (isNumber(left)) return 'number';
  if (isCount(left)) return 'count';
  if (!isHard(left.dimension)) return null;
  switch (hardPart(left.dimension)) {
    case LENGTH:
      return 'length';
    case AREA:
      return 'area';
    case VOLUME:
      return 'volume';
    case MONEY:
      return 'money';
    case MASS:
      return 'weight';
    default:
      return null;
  }
}
