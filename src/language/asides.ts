// Words said for the reader that change no number: how a question opens, what an amount is of, how a request ends.
// Only where nothing else could be meant by them: a word near one that counts is asked about, never passed over.
import { nearNames } from '../words/near.ts';
import { MONEY } from '../quantity/dimension.ts';
import { ALL_LIMITS, SHARE_OF } from './clauses.ts';
import { RELATION_WORDS } from './comparisons.ts';
import { ARTICLES } from './lexer.ts';
import { OPENINGS } from './phrases.ts';
import { isNumberWord } from './numbers.ts';
import { labelAt } from './outlines.ts';
import type { Reader } from './reader.ts';
import { roughDimension } from './rough.ts';
import type { Formula } from './tree.ts';
import { slotEnd } from './values.ts';
import { WHICH } from './which.ts';
import { OPERATOR_WORDS, SHARE_LABELS, byFirstWord } from './words.ts';

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
);

const LEADS_BY_WORD = byFirstWord(LEADS);
const TRAILS_BY_WORD = byFirstWord(TRAILS);

/** What is worked with, poured, laid or planted: after an amount it says what that is of. */
const STUFF: ReadonlySet<string> = new Set(
  `aggregate asphalt ballast bark base baseboard blinding blocks brickwork blockwork backfill cable casing caulk
   cement cladding clay compost conc concrete conduit decking dirt drive driveway drywall ducting earth edging
   excavation fascia felt fencing fill flashing flooring footing ftg ftgs fabric formwork forms gravel grout
   guttering hardcore hedge hedging insulation kerbing lawn loam lumber membrane mesh mortar moulding mulch
   paint path patio pavers paving pipework plaster plasterboard plywood ply polythene primer railing rebar
   render roofing sand screed sealant sealer sealing sheathing sheeting shuttering siding skirting sod soffit
   soil stain steel stone stucco subbase tarmac tarp tiling topsoil trench trim turf underlay varnish walkway
   wallpaper wire wood asphalted hardwood softwood cedar pine oak fir spruce treated`
    .split(/\s+/)
    .filter((word) => word !== ''),
);

/** What sort of thing it is: said before a noun, it changes no number. */
const SORTS: ReadonlySet<string> = new Set(
  `bulk big small large short long thin thick heavy light wide narrow galvanised galvanized treated untreated pine
   cedar oak steel concrete timber wooden plastic metal aluminium brass deck decking fence fencing framing roofing
   hardwood softwood rough finished standard new old extra spare full plain ready precast paving barrow wheelbarrow
   dump tipper drywall masonry hex equal even carriage lag joist corner gravel sand stone cement white black grey red flat`
    .split(/\s+/)
    .filter((word) => word !== ''),
);

/** Words that count: one that is nearly one of these is asked about. */
const OWN_WORDS =
  `squared cubed square cubic each every percent cents dozen pair together added equals more most least no but
   capped nearest round rounded roundup rnd up down to marked between than pi twice double triple half third
   quarter hundred thousand million on centre centres oc apart min max minimum maximum diameter dia radius wide
   long high deep thick tall margin ways yes above below off including incl inc excluding add then take deduct
   subtract remove knock increase raise bump decrease reduce lower discount multiply divide halve increased
   raised reduced decreased lowered discounted shared best worst converted convert expressed shown into cut
   ripped sawn made taken out vat gst extra again when whichever where free instead without`.split(
    /\s+/,
  );

let counting: ReadonlySet<string> | null = null;

/** Every word that the language gives a meaning: made when it is first asked for, for these lists lean on one another. */
function wordsThatCount(): ReadonlySet<string> {
  return (counting ??= new Set(
    [
      ...OPERATOR_WORDS,
      ...SHARE_LABELS,
      ...OWN_WORDS,
      ...WHICH.keys(),
      ...[...OPENINGS, ...RELATION_WORDS].flatMap(({ words }) => words),
      ...[...ALL_LIMITS.map(([words]) => words), ...SHARE_OF].flat(),
    ].filter((word) => /^[a-z]{2,}$/.test(word)),
  ));
}

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

/** `forms: 2 x 24 ft`: what stands before a colon is a title. */
function skipTitle(r: Reader): void {
  let words = 0;
  while (words < 5 && r.peek(words).kind === 'word') words++;
  for (let i = 0; i < words; i++) if (ASKS.has(r.peek(i).text)) return;
  if (words > 0 && r.seesAt(words, ':') && r.peek(words + 1).kind !== 'end') {
    r.take(words + 1, 'unread');
    return;
  }
  // `solid steps, 4 ft x 12 in`: before a comma only words that could be nothing else.
  let things = 0;
  while (things < 4 && isHeading(r, things)) things++;
  if (things > 0 && r.seesAt(things, ',') && startsAmount(r, things + 1)) {
    r.take(things + 1, 'unread');
  }
}

/** No heading: they ask for something else than what stands after them. */
const ASKS: ReadonlySet<string> = new Set(
  'perimeter circumference diagonal hypotenuse average mean difference ratio product both either half twice double triple'.split(
    ' ',
  ),
);

/** A thing or a word that nothing knows, and no slip of a name. */
function isHeading(r: Reader, ahead: number): boolean {
  if (!isThing(r, ahead)) return false;
  return !isUnknown(r, ahead) || isFarFromAll(r, ahead);
}

function startsAmount(r: Reader, ahead: number): boolean {
  return r.peek(ahead).kind === 'number' || r.seesAt(ahead, r.vocabulary.sign);
}

/** `path 40 ft long`, `stone 12 ft x 4 ft`: of what, said first. */
function skipStuffBefore(r: Reader): void {
  const article = ARTICLES.has(r.token.text) ? 1 : 0;
  let count = article;
  while (count < 4 && STUFF.has(r.peek(count).text) && !r.nameAt(count)) count++;
  const stuff = r.peek(count).kind === 'number' ? count : 0;
  if (stuff > article) {
    r.take(stuff, 'unread');
    return;
  }
  // `gravel for a path 900 mm wide`
  if (stuff === 0 && count > article && r.seesAt(count, 'for')) {
    const of = count + (ARTICLES.has(r.peek(count + 1).text) ? 2 : 1);
    let things = of;
    while (things < of + 3 && isThing(r, things)) things++;
    if (things > of && (labelledAt(r, things) || crossedAt(r, things))) r.take(things, 'unread');
    if (things > of) return;
  }
  // `wall 20 ft long and 8 ft high`
  count = article;
  while (count < 4 && isThing(r, count)) count++;
  if (count > article && (labelledAt(r, count) || crossedAt(r, count))) r.take(count, 'unread');
}

/** `slab 24' x 30'` */
function crossedAt(r: Reader, ahead: number): boolean {
  if (r.peek(ahead).kind !== 'number') return false;
  const end = slotEnd(r, ahead);
  const mark = r.peek(end - 1);
  return end > ahead + 1 && mark.kind !== 'number' && (r.seesAt(end, 'x') || r.seesAt(end, '×'));
}

/** A word that is a counted thing or nothing here. */
function isThing(r: Reader, ahead: number): boolean {
  if (r.nameAt(ahead)) return false;
  return isUnknown(r, ahead) || r.vocabulary.nounAt(r.tokens, r.at + ahead)?.length === 1;
}

/** `…, needed`, `… in total`: passed over at the very end. */
export function skipTrails(r: Reader): void {
  for (;;) {
    const comma = r.sees(',') ? 1 : 0;
    const found = trailAt(r, comma);
    if (found === 0) return;
    r.at += comma;
    r.take(found, 'unread');
  }
}

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

/** After these a value has been said in full. */
function endsValue(r: Reader, ahead: number): boolean {
  const token = r.peek(ahead);
  if (token.kind === 'end') return true;
  if (token.kind === 'symbol') return !/^[$£€#"'(&%]$/.test(token.text);
  if (token.kind !== 'word') return false;
  return OPERATOR_WORDS.has(token.text) || CLAUSES.has(token.text) || trailAt(r, ahead) > 0;
}

const CLAUSES: ReadonlySet<string> = new Set(
  'rounded round rnd roundup nearest up down to marked as but not no capped including incl inc add then converted when whichever cut'.split(
    ' ',
  ),
);

/** A word that nothing here knows. */
export function isUnknown(r: Reader, ahead: number): boolean {
  const { kind, text } = r.peek(ahead);
  if (kind !== 'word' || wordsThatCount().has(text) || text.length < 2) return false;
  if (r.nameAt(ahead) !== null || isNumberWord(text)) return false;
  if (STUFF.has(text)) return true;
  const at = r.at + ahead;
  return r.vocabulary.unitAt(r.tokens, at) === null && r.vocabulary.nounAt(r.tokens, at) === null;
}

/** So many words that are no slip of one that counts: units, nouns, names and the words of the language. */
function isFarFromAll(r: Reader, ahead: number): boolean {
  const { text } = r.peek(ahead);
  if (STUFF.has(text) || SORTS.has(text)) return true;
  return text.length > 3 && !isNearWord(r, text) && !isNearName(r, text);
}

/** Words that were looked for, by what is counted in a notebook: the same ones stand in row after row. */
const looked = new WeakMap<object, Map<string, boolean>>();

/** Is it nearly a unit, a counted thing or a word of the language? */
function isNearWord(r: Reader, word: string): boolean {
  const { nouns } = r.vocabulary;
  const known = looked.get(nouns) ?? new Map<string, boolean>();
  looked.set(nouns, known);
  let near = known.get(word);
  if (near === undefined) {
    near = r.nearUnits(word).length > 0 || nearNames(word, wordsThatCount(), 1).length > 0;
    if (known.size < MOST_LOOKED) known.set(word, near);
  }
  return near;
}

const MOST_LOOKED = 2_000;

function isNearName(r: Reader, word: string): boolean {
  const names = [...r.vocabulary.namesIn(r.part, r.self)].map((n) => n.say);
  return nearNames(word, names, 1).length > 0;
}

/** `410 ft of decking`, `2.7 cubic m of good topsoil`: what it is of. Things that are counted only after a measure. */
export function skipOfStuff(r: Reader, isHard: 'measure' | 'count'): void {
  if (!r.sees('of')) return;
  let count = ARTICLES.has(r.peek(1).text) ? 2 : 1;
  const first = count;
  for (;;) {
    if (isUnknown(r, count)) {
      const { text } = r.peek(count);
      if (!STUFF.has(text) && isNearName(r, text)) return;
      count++;
      continue;
    }
    const noun = isHard === 'measure' && r.nameAt(count) === null;
    const length = noun ? (r.vocabulary.nounAt(r.tokens, r.at + count)?.length ?? 0) : 0;
    if (length === 0) break;
    count += length;
  }
  if (count === first || !(endsValue(r, count) || labelledAt(r, count))) return;
  r.take(count, 'unread');
}

/** `720 sq ft mesh`, `8 in ftg`: what it is of, said right after it. */
export function skipStuffAfter(r: Reader): void {
  let count = 0;
  while (count < 3 && isUnknown(r, count)) count++;
  if (count === 0 || !(endsValue(r, count) || labelledAt(r, count))) return;
  for (let i = 0; i < count; i++) if (!isFarFromAll(r, i)) return;
  r.take(count, 'unread');
}

/** `120 lf ftg 16" wide`: a length with its label goes on. */
function labelledAt(r: Reader, ahead: number): boolean {
  if (r.peek(ahead).kind !== 'number') return false;
  const end = slotEnd(r, ahead);
  return end > 0 && labelAt(r, end) > 0;
}

/**
 * `+ $85 delivery`, `+ $95 short load`: money that is added, and what it is for. No price per load can be added to
 * money, so nothing else can be meant.
 */
export function skipWhatMoneyIsFor(r: Reader, value: Formula): void {
  if (value.kind !== 'amount' || r.token.kind !== 'word') return;
  const { measure } = value.holds;
  if (measure.kind !== 'amount' || measure.dimension !== MONEY || measure.rate) return;
  let count = 0;
  for (;;) {
    const name = r.nameAt(count);
    if (name) {
      const cells = name.cells.filter((id) => holdsMoney(r, id));
      if (cells.length !== name.cells.length) return;
      count += name.length;
      continue;
    }
    const noun = r.vocabulary.nounAt(r.tokens, r.at + count);
    if (noun) count += noun.length;
    else if (isUnknown(r, count) || SHARE_LABELS.has(r.peek(count).text)) count++;
    else break;
  }
  if (count === 0 || !endsValue(r, count) || r.seesAt(count, 'of')) return;
  r.take(count, 'unread');
}

/** What a cell holds is asked for, so the formula leans on it. */
function holdsMoney(r: Reader, id: number): boolean {
  r.askedHolds = true;
  r.mention(id);
  if (!r.surroundings) return true;
  const spot = { from: 0, to: 0 };
  return roughDimension(r, { kind: 'name', cell: id, say: '', spot }) === MONEY;
}

/** `850 kg bulk bags`, `8 barrow loads`: a word before a noun that only says what sort it is. 0: none stands here. */
export function sortBefore(r: Reader, ahead: number): number {
  let count = 0;
  while (count < 2 && isSort(r, ahead + count)) count++;
  return count > 0 && r.vocabulary.nounAt(r.tokens, r.at + ahead + count) ? count : 0;
}

function isSort(r: Reader, ahead: number): boolean {
  if (r.nameAt(ahead) !== null) return false;
  const { kind, text } = r.peek(ahead);
  if (kind === 'word' && SORTS.has(text)) return true;
  return isUnknown(r, ahead) && isFarFromAll(r, ahead);
}

/** `for the posts`, `as a deposit`: for what, where it can't be a price or an amount for each. */
export function noteLength(r: Reader, ahead: number): number {
  let count = 0;
  for (;;) {
    if (isUnknown(r, ahead + count) || SHARE_LABELS.has(r.peek(ahead + count).text)) {
      if (r.nameAt(ahead + count)) return 0;
      count++;
      continue;
    }
    if (r.nameAt(ahead + count)) return 0;
    const noun = r.vocabulary.nounAt(r.tokens, r.at + ahead + count);
    if (!noun) break;
    count += noun.length;
  }
  return count > 0 && endsValue(r, ahead + count) ? count : 0;
}
