// A whole question where a sum belongs: `What would 40 bags run me at the bag price?`. It is said once, calmly; where all
// that stands beside one sum is how one asks, that sum is offered.
import type { Fix, Report } from '../words/report.ts';
import type { Spot } from '../words/spot.ts';

const OPENS =
  /^(?:what|what's|whats|how|can|could|would|will|which|when|where|who|why|do|does|did|is|are|should|if)\b/i;

/** Problems that come of words nobody knows, and say nothing that helps with a question. */
const LOST: ReadonlySet<string> = new Set([
  'unknown-name',
  'unread',
  'missing-value',
  'phrase-slot',
  'missing-operator',
  'unknown-unit',
  'two-readings',
  'missing-otherwise',
]);

/** Is it a question, as far as can be told where it can't be read? */
export function isQuestion(text: string, report: Report): boolean {
  if (!LOST.has(report.code) || !OPENS.test(text)) return false;
  const words = text.match(/[a-z'’]+/gi)?.length ?? 0;
  // `what is slab lenght` and `if A then B` are sums with a slip in them.
  if (/^if\b/i.test(text)) return /\?\s*$/.test(text) && words > 7;
  return words > (/\?\s*$/.test(text) ? 4 : 5);
}

export function questionReport(text: string, fixes: readonly Fix[]): Report {
  const spot: Spot = { from: 0, to: text.trimEnd().length };
  const words = text.trim();
  const said = words.length > 60 ? `${words.slice(0, 58)}…` : words;
  return {
    code: 'question',
    headline: 'A line holds a sum, not a question.',
    spots: [spot],
    explanation: `"${said}" can't be read as a sum. Write only what is to be worked out, such as 40 bags at $6.48 per bag.`,
    fixes,
  };
}

/** How one asks, and nothing that counts. */
const ASKING =
  /\b(?:what(?:'s|’s)?|how much|would|will|do|does|did|can|could|should|you|tell|me|us|i|we|it|they|be|run|cost|costs|charge|pay|need|have|come to|comes to|work out to|give|gives|get|for me|please)\b/gi;

/** The sums that may stand in it, each still to be tried. */
export function sumsIn(text: string): readonly string[] {
  const words = text.trim().replace(/[?.\s]+$/, '');
  const plain = tidy(words.replaceAll(ASKING, ' '));
  const [, told] =
    /\bif (?:i|we|you) ((?:add|divide|multiply|take|subtract|split|increase|reduce)\b.*)$/i.exec(
      words,
    ) ?? [];
  const sums = told === undefined ? [plain] : [tidy(told.replace(/ evenly\b/i, ''))];
  // The same words again would be the same question.
  return sums.filter(
    (sum) => sum !== '' && sum !== words && !/\b(?:if|when|because|so that|or)\b/i.test(sum),
  );
}

function tidy(words: string): string {
  return words
    .replaceAll(/\s+/g, ' ')
    .replace(/^(?:is|are|of|on|for|the)\s+/i, '')
    .replaceAll(/\b(at|by|times|plus) (?:the|our|my) /gi, '$1 ')
    .replaceAll(/\s+([,?.])/g, '$1')
    .trim();
}
