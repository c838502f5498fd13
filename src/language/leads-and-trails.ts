// How one asks and how one ends: `what is …`, `how much concrete do I need for …`, `… in total`, `… please`.
import { byFirstWord } from './words.ts';
import type { Reader } from './reader.ts';
import { skipStuffBefore, skipTitle } from './titles.ts';
import { isUnknown } from './unknown-words.ts';

const phrases = (...all: readonly string[]): readonly { readonly words: readonly string[] }[] =>
  all.map((words) => ({ words: words.split(' ') }));

/** How one asks. A name that begins so wins. */
export const LEADS = phrases(
  'what is',
  "what's",
  'whats',
  'what are',
  'convert',
  'express',
  'what would be',
  'what will be',
  'how much is',
  'how much are',
  'how much would be',
  'how much will be',
  'how much for',
  'how much',
  'how long is',
  'how big is',
  'how far is',
  'find',
  'calculate',
  'compute',
  'work out',
  'figure out',
  'figure',
  'give me',
  'tell me',
  'show me',
  'i need',
  'we need',
  'i want',
  'need',
  'please',
  'so',
  'like',
  'ok',
  'okay',
  'just',
  'start with',
  'starting with',
  'starting from',
  'begin with',
  'basically',
  "let's say",
  'say',
  'call it',
  'allow',
  'allow for',
  'there are',
  "there's",
  'order',
  'buy',
);

/** How one ends. */
export const TRAILS = phrases(
  'needed',
  'required',
  'altogether',
  'come to',
  'comes to',
  'add up to',
  'in total',
  'total',
  'in all',
  'all in',
  'all told',
  'overall',
  'to buy',
  'to order',
  'please',
  'thanks',
  'thank you',
  'is needed',
  'are needed',
  'is required',
  'are required',
  'is that',
  'is it',
  'do i need',
  'do we need',
  'will i need',
  'will we need',
  'for the job',
  'for this job',
  'only',
  'installed',
  'delivered',
  'supplied',
  'fitted',
  'in place',
  'as is',
);

const LEADS_BY_WORD = byFirstWord(LEADS);

const TRAILS_BY_WORD = byFirstWord(TRAILS);

/** `what is …`, `so like …`, `forms: …`: passed over at the very start. */
export function skipLeads(r: Reader): void {
  skipTitle(r);
  for (;;) {
    const found = LEADS_BY_WORD.get(r.token.text)
      ?.filter(({ words }) => r.seesAll(0, words))
      .sort((a, b) => b.words.length - a.words.length)[0];
    const count = found?.words.length ?? 0;
    if (count === 0 || (r.nameAt(0)?.length ?? 0) >= count) break;
    if (r.sees('what', 'is', 'share') || r.peek(count).kind === 'end') break;
    const asksHowMuch = r.sees('how', 'much') && count === 2;
    r.take(count, 'unread');
    if (asksHowMuch) skipMuch(r);
  }
  skipStuffBefore(r);
}

/** `how much concrete do I need for …`: after `how much`, what it is of and whom it is for. */
function skipMuch(r: Reader): void {
  let count = 0;
  while (count < 3 && isUnknown(r, count) && !MUCH.has(r.peek(count).text)) count++;
  const stuff = count;
  while (count < stuff + 6 && MUCH.has(r.peek(count).text)) count++;
  if (count > stuff) r.take(count, 'unread');
}

const MUCH: ReadonlySet<string> = new Set(
  'do does will would i we you need needed required for to fill cover in is are it take takes make'.split(
    ' ',
  ),
);

/** `…, needed`, `… in total`: passed over at the very end. */
export function skipTrails(r: Reader): void {
  skipReason(r);
  for (;;) {
    const comma = r.sees(',') ? 1 : 0;
    const found = trailAt(r, comma);
    if (found === 0) return;
    r.at += comma;
    r.take(found, 'unread');
  }
}

/** `, because it is 25 boards or more`: why, to the very end. What could be a condition or a step is no reason. */
function skipReason(r: Reader): void {
  const comma = r.sees(',') ? 1 : 0;
  if (!reasonAt(r, comma)) return;
  let count = comma;
  while (r.peek(count).kind !== 'end') {
    if (NO_REASON.has(r.peek(count).text)) return;
    count++;
  }
  r.take(count, 'unread');
}

/** Does a reason begin so many tokens ahead: `because`, `since it`, `as they`? */
export function reasonAt(r: Reader, ahead: number): boolean {
  const { kind, text } = r.peek(ahead);
  if (kind !== 'word' || r.nameAt(ahead)) return false;
  if (text === 'because' || text === 'cos') return true;
  return (text === 'since' || text === 'as') && WHO.has(r.peek(ahead + 1).text);
}

const WHO: ReadonlySet<string> = new Set(
  "it its it's they we we're i i'm you he she there that's they're".split(' '),
);

const NO_REASON: ReadonlySet<string> = new Set(
  'if when where otherwise else unless but then plus minus times add less ( )'.split(' '),
);

/** How many words of an ending stand there with nothing but another ending, or a mark, after them. */
export function trailAt(r: Reader, ahead: number): number {
  if (r.peek(ahead).kind !== 'word') return 0;
  for (const { words } of TRAILS_BY_WORD.get(r.peek(ahead).text) ?? []) {
    if (!r.seesAll(ahead, words)) continue;
    const next = r.peek(ahead + words.length);
    if (next.kind === 'end' || /^[.,?!)]$/.test(next.text)) return words.length;
    if (TRAILS_BY_WORD.has(next.text) && trailAt(r, ahead + words.length) > 0) return words.length;
  }
  return 0;
}
