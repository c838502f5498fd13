// Shapes as they are said: `perimeter of 6 m by 4.5 m`, `area of a circle 12 ft across`, `a fall of 1 in 60 over 20 ft`,
// `40 ft long and 3 ft wide`, `6 holes 10" dia x 3' deep`. Each comes to a tree that a tidy sentence says too.
import { isWrittenLength, seesAmount, writtenAmount } from './amounts.ts';
import { AREA, LENGTH, hardPart, isHard } from '../quantity/dimension.ts';
import type { Fix } from '../words/report.ts';
import { ARTICLES } from './lexer.ts';
import type { Phrase } from './phrases.ts';
import { slotProblem } from './phrases.ts';
import type { Reader } from './reader.ts';
import { roughDimension } from './rough.ts';
import type { Amount, Arithmetic, Formula } from './tree.ts';
import { expectSlot, expectValue, seesSlot, slotEnd } from './values.ts';
import { OPERATOR_WORDS } from './words.ts';

export function outlineAt(r: Reader, skip: number): Phrase | null {
  if (r.seesAt(skip, 'total', 'cost', 'of')) return outlineAt(r, skip + 1);
  if (isRoundShape(r, skip)) return { opening: skip + 1, read: (at) => readRound(at, 'area') };
  const word = r.peek(skip).text;
  if (FALLS.has(word) && seesAmountAt(r, skip + 1)) {
    return { opening: skip + 1, read: (at) => readFall(at, skip + 1) };
  }
  if (!r.seesAt(skip + 1, 'of') && !r.seesAt(skip + 1, 'around')) return null;
  const ahead = skip + 2;
  if (word === 'perimeter' || (word === 'distance' && r.seesAt(skip + 1, 'around'))) {
    return { opening: ahead, read: readPerimeter };
  }
  if (r.seesAt(skip + 1, 'around')) return null;
  const round = roundSoon(r, ahead);
  if (word === 'circumference')
    return { opening: ahead, read: (at) => readRound(at, 'circumference') };
  if (word === 'area' && round) return { opening: ahead, read: (at) => readRound(at, 'area') };
  if (FALLS.has(word) && seesAmountAt(r, ahead)) {
    return { opening: ahead, read: (at) => readFall(at, ahead) };
  }
  if (!SAID_OF.has(word)) return null;
  const article = ARTICLES.has(r.peek(ahead).text) ? 1 : 0;
  return { opening: ahead, read: (at) => readMeasured(at, ahead, article) };
}

/** What one asks for before saying what it is of. */
const SAID_OF: ReadonlySet<string> = new Set(
  'area volume length width height depth weight size amount footprint cost price value'.split(' '),
);

const FALLS: ReadonlySet<string> = new Set('fall rise drop slope gradient grade pitch'.split(' '));
const ROUND: ReadonlySet<string> = new Set(['circle', 'circular', 'round', 'cylinder']);

function seesAmountAt(r: Reader, ahead: number): boolean {
  const article = ARTICLES.has(r.peek(ahead).text) ? 1 : 0;
  const at = r.at;
  r.at += ahead + article;
  const seen = seesAmount(r);
  r.at = at;
  return seen;
}

/** `a circle 3 m in diameter`, `circle with radius 3 ft`: a shape and then its size. */
function isRoundShape(r: Reader, skip: number): boolean {
  if (!ROUND.has(r.peek(skip).text) || r.nameAt(skip)) return false;
  if (r.seesAt(skip + 1, 'area')) return false;
  return sizeSoon(r, skip + 1);
}

/** Does an amount, a name or a bracket come after at most four words? */
function sizeSoon(r: Reader, ahead: number): boolean {
  for (let i = ahead; i < ahead + 6; i++) {
    const { kind, text } = r.peek(i);
    if (kind === 'number' || text === '(' || r.nameAt(i)) return true;
    if (kind !== 'word') return false;
  }
  return false;
}

/** Is a circle what is said next, before its size or after it? */
function roundSoon(r: Reader, ahead: number): boolean {
  for (let i = ahead; i < ahead + 8; i++) {
    const { kind, text } = r.peek(i);
    if (ROUND.has(text)) return true;
    if (kind === 'end' || text === ',' || text === 'plus' || text === 'x') return false;
  }
  return false;
}

/** `circumference of a circular bed of 12 ft diameter`: the size, with how it is measured before or after it. */
function readRound(r: Reader, what: 'area' | 'circumference'): Formula {
  const from = r.token.from;
  let across: 'diameter' | 'radius' | null = null;
  for (let i = 0; i < 10 && !seesAmount(r) && !r.sees('(') && r.token.kind === 'word'; i++) {
    if (r.nameAt(0) && !ROUND.has(r.token.text)) break;
    across = acrossSaid(r.token.text) ?? across;
    r.take(1, 'phrase');
  }
  const size = expectRoundSize(r);
  if (r.problem) return size;
  const named = size.kind === 'name' ? acrossSaid(size.say.split(' ').at(-1) ?? '') : null;
  across = takeAcross(r) ?? across ?? named;
  while (ROUND.has(r.token.text)) r.take(1, 'phrase');
  if (!across) {
    const phrase = what === 'area' ? 'circle area for' : 'circumference for';
    return slotProblem(r, from, phrase, '"diameter" or "radius"', `${phrase} 12 in diameter`, [
      ['Across it', 'diameter'],
      ['From its middle', 'radius'],
    ]);
  }
  return { kind: 'circle', what, across, size, spot: r.since(from) };
}

function expectRoundSize(r: Reader): Formula {
  return seesAmount(r) ? writtenAmount(r) : expectSlot(r);
}

function acrossSaid(word: string): 'diameter' | 'radius' | null {
  if (word === 'radius') return 'radius';
  return DIAMETER.has(word) ? 'diameter' : null;
}

const DIAMETER: ReadonlySet<string> = new Set(['diameter', 'dia', 'diam', 'across']);

/** `in diameter`, `dia`, `across`, `wide` after the size of something round. */
function takeAcross(r: Reader): 'diameter' | 'radius' | null {
  const skip = r.sees('in') || r.sees('of') ? 1 : 0;
  const said = acrossSaid(r.peek(skip).text) ?? (r.sees('wide') ? 'diameter' : null);
  if (!said) return null;
  r.take(skip + 1, 'phrase');
  return said;
}

/** Is this length said to be one across, so many tokens ahead: `10" dia`, `3 m in diameter`? */
function acrossAt(r: Reader, ahead: number): boolean {
  const skip = r.seesAt(ahead, 'in') ? 1 : 0;
  const { kind, text } = r.peek(ahead + skip);
  return kind === 'word' && text !== 'across' && acrossSaid(text) !== null;
}

/** `10" dia x 3' deep`, `a 12 ft diameter circle`: the area that a length across makes. Null where it makes none. */
export function roundFrom(r: Reader, size: Formula): Formula | null {
  if (size.kind !== 'amount' || !isWrittenLength(size)) return null;
  const shaped = ROUND.has(r.token.text) && r.token.text !== 'round';
  if (!shaped && !acrossAt(r, 0)) return null;
  const { at } = r;
  const marks = r.marks.length;
  const across = takeAcross(r);
  if (across === null) {
    return slotProblem(
      r,
      size.spot.from,
      'circle area for',
      '"diameter" or "radius"',
      'circle area for 12 in diameter',
      [
        ['Across it', 'diameter'],
        ['From its middle', 'radius'],
      ],
    );
  }
  let said = 0;
  while (said < 2 && (ROUND.has(r.token.text) || r.vocabulary.nounAt(r.tokens, r.at))) {
    if (r.nameAt(0)) break;
    r.take(1, 'phrase');
    said++;
  }
  const goesOn =
    r.sees('x') || r.sees('×') || r.sees('by') || r.sees('times') || labelledNext(r) > 0;
  if (!goesOn && !shaped && said === 0) {
    r.goBack(at, marks, r.brackets);
    return null;
  }
  return { kind: 'circle', what: 'area', across, size, spot: r.since(size.spot.from) };
}

/** `perimeter of A by B`: twice both sides. */
function readPerimeter(r: Reader): Formula {
  const from = r.token.from;
  r.skipArticle();
  const opSpot = r.take(2, 'phrase');
  const article = r.token;
  r.skipArticle();
  if (!seesSlot(r)) return askForSides(r, from, article.from, 'perimeter');
  const a = seesAmount(r) ? writtenAmount(r) : expectSlot(r);
  takeLabel(r);
  const joined = ['by', 'x', '×', 'and'].includes(r.token.text);
  if (r.problem || !joined) {
    if (r.problem) return a;
    return slotProblem(
      r,
      from,
      'perimeter of',
      'two sides',
      'perimeter of 12 ft by 10 ft',
      'by ? ft',
    );
  }
  const plus = r.take(1, 'operator');
  const b = seesAmount(r) ? writtenAmount(r) : expectSlot(r);
  takeLabel(r);
  skipThing(r);
  const spot = r.since(from);
  const sides: Formula = {
    kind: 'binary',
    op: 'plus',
    opSpot: plus,
    left: a,
    right: b,
    spot: { from: a.spot.from, to: spot.to },
  };
  const two = r.number('2', '2', opSpot);
  return { kind: 'binary', op: 'times', opSpot, left: two, right: sides, spot };
}

/** `8' x 10' x 5" slab in cy`: what the product of lengths is of, where nothing else could go on with it. */
export function skipThingAtEnd(r: Reader): void {
  const length = thingLength(r);
  if (length === 0) return;
  const { kind, text } = r.peek(length);
  if (kind === 'end' || /^(in|,|plus|with|to|as|at|@|rounded|less|\+|\))$/.test(text))
    r.take(length, 'unread');
}

/** `perimeter of a 24 ft by 30 ft slab` */
export function skipThing(r: Reader): void {
  const noun = r.nameAt(0) === null ? r.vocabulary.nounAt(r.tokens, r.at) : null;
  if (noun) r.take(noun.length, 'unread');
}

/** `area of slab length by slab width`: what is asked is what it comes to. Of a thing, its measures are offered. */
function readMeasured(r: Reader, opening: number, article: number): Formula {
  const from = r.token.from;
  const word = r.tokens[r.at + opening - 2]?.text ?? '';
  const things = r.peek(opening + article).from;
  const seen = r.at + opening;
  const at = r.at;
  r.at = seen + article;
  const known = seesSlot(r) && slotEnd(r, 0) > 0;
  r.at = at;
  r.take(opening, 'unread');
  if (!known || isCountOfThings(r, article)) return askForSides(r, from, things, word);
  r.at += article;
  return expectValue(r);
}

/** `volume of 6 holes`: so many things, and nothing that says how large one is. */
function isCountOfThings(r: Reader, article: number): boolean {
  const { kind } = r.peek(article);
  if (kind !== 'number') return false;
  const noun = r.vocabulary.nounAt(r.tokens, r.at + article + 1);
  if (!noun) return false;
  const next = r.peek(article + 1 + noun.length);
  return next.kind === 'end' || ['in', ',', 'as', 'to', '?', 'plus', 'with'].includes(next.text);
}

/** `volume of 6 holes`, `area of the slab`: cells named after the thing are offered. */
function askForSides(r: Reader, from: number, things: number, word: string): Formula {
  const counted = /^(\d[\d,]*)\s+/.exec(r.text.slice(things));
  let count = 0;
  while (count < 3 && r.peek(count).kind !== 'word') count++;
  const begins = count;
  while (count < begins + 4 && r.peek(count).kind === 'word' && !ENDS_THING.has(r.peek(count).text))
    count++;
  const spot = { from, to: Math.max(r.peek(Math.max(0, count - 1)).to, from + 1) };
  const typed = r
    .slice({ from: things, to: spot.to })
    .replace(/^(?:(?:the|an?)\s+|\d[\d,]*\s+)/i, '');
  const named = typed.toLowerCase();
  const thing = r.vocabulary.nouns.phrases.get(named) ?? named;
  const fixes: Fix[] = [];
  for (const by of waysToMeasure(r, thing, word)) {
    const words = counted ? `(${by}) times ${r.text.slice(things, spot.to).trim()}` : by;
    fixes.push(r.fix(capital(`Write "${words}"`), spot, `(${words})`));
  }
  return r.fail({
    code: 'phrase-slot',
    spots: [spot],
    phrase: `${word} of`,
    wanted: 'its lengths, or the name of a cell',
    like:
      word === 'volume'
        ? '12 ft by 4 ft by 4 in'
        : word === 'perimeter'
          ? 'perimeter of 12 ft by 10 ft'
          : '12 ft by 4 ft',
    fixes,
  });
}

const ENDS_THING: ReadonlySet<string> = new Set(
  'in plus minus times by at with for as to x and or rounded over divided less marked'.split(' '),
);

/** What the cells named after a thing come to: its length by its width, its diameter. */
function waysToMeasure(r: Reader, thing: string, word: string): readonly string[] {
  const names = new Map(
    [...r.vocabulary.namesIn(r.part, r.self)].map(({ say }) => [say.toLowerCase(), say] as const),
  );
  const of = (figure: string): string | undefined => names.get(`${thing} ${figure}`);
  const first = (...all: readonly (string | undefined)[]): string | undefined => all.find(Boolean);
  const own = of(word);
  if (own) return [own];
  const [long, wide] = [of('length'), of('width')];
  const deep = first(
    of('depth'),
    of('thickness'),
    of('height'),
    names.get('thickness'),
    names.get('depth'),
  );
  const across = of('diameter')
    ? `circle area for ${of('diameter')}`
    : of('radius')
      ? `circle area for ${of('radius')}`
      : undefined;
  const ways: string[] = [];
  if (word === 'area') {
    if (long && wide) ways.push(`${long} by ${wide}`);
    if (across) ways.push(across);
  } else if (word === 'volume') {
    if (long && wide && deep) ways.push(`${long} by ${wide} by ${deep}`);
    const tall = first(of('depth'), of('height'), of('length'));
    if (across && tall) ways.push(`${across} by ${tall}`);
  } else if (word === 'perimeter' && long && wide) ways.push(`perimeter of ${long} by ${wide}`);
  return ways;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** `fall of 1 in 60 over 20 ft`, `rise of a 6 in 12 slope over a run of 14 ft`; alone it is the slope. */
function readFall(r: Reader, opening: number): Formula {
  const from = r.token.from;
  r.take(opening, 'phrase');
  r.skipArticle();
  const slope = writtenAmount(r);
  if (r.problem) return slope;
  while (FALLS.has(r.token.text)) r.take(1, 'phrase');
  return alongSlope(r, slope, from) ?? slope;
}

/** `over 20 ft` after a slope: so much rise in that run. Null where no run follows. */
export function alongSlope(r: Reader, slope: Formula, from: number): Formula | null {
  if (slope.kind !== 'amount' || !isSlope(slope)) return null;
  let ahead = 0;
  if (FALLS.has(r.token.text) && !r.nameAt(0)) ahead = 1;
  if (!['over', 'along', 'across', 'for', 'in'].includes(r.peek(ahead).text)) return null;
  const spotOp = { from: r.peek(ahead).from, to: r.peek(ahead).to };
  let skip = ahead + 1;
  if (ARTICLES.has(r.peek(skip).text)) skip++;
  if (
    (r.seesAt(skip, 'run') || r.seesAt(skip, 'length') || r.seesAt(skip, 'distance')) &&
    r.seesAt(skip + 1, 'of')
  )
    skip += 2;
  // A bracket is read once only: what it measures is not known before.
  if (slotEnd(r, skip) < 0 || /^[([]$/.test(r.peek(skip).text)) return null;
  const { at } = r;
  const marks = r.marks.length;
  r.take(skip, 'phrase');
  const run = expectSlot(r);
  if (r.problem) return run;
  if (hardPartOf(r, run) !== LENGTH) {
    r.goBack(at, marks, r.brackets);
    return null;
  }
  const spot = r.since(from);
  const isShare = slope.holds.measure.kind === 'share';
  return isShare
    ? { kind: 'part-of', share: slope, of: run, spot }
    : { kind: 'binary', op: 'at', opSpot: spotOp, left: run, right: slope, spot };
}

/** A length per length, or a percent after `fall of`. */
function isSlope({ holds: { measure } }: Amount): boolean {
  if (measure.kind === 'share') return true;
  if (measure.kind !== 'amount' || !measure.rate) return false;
  return measure.rate.over.dimension === LENGTH && measure.rate.under.dimension === LENGTH;
}

const LABELS: ReadonlySet<string> = new Set('deep wide long high tall thick'.split(' '));
const LETTERS: ReadonlySet<string> = new Set(['w', 'l', 'h', 'd', 't']);

/** How many tokens say which way a length lies, so many ahead: `wide`, `in depth`, the `w` of `16"w`. */
export function labelAt(r: Reader, ahead: number): number {
  const { kind, text, gap } = r.peek(ahead);
  if (kind !== 'word') return 0;
  if (LABELS.has(text)) return 1;
  if (text === 'in' && /^(length|width|depth|height|thickness)$/.test(r.peek(ahead + 1).text))
    return 2;
  if (!LETTERS.has(text) || r.seesAt(ahead + 1, '/')) return 0;
  const next = r.peek(ahead + 1);
  const ends =
    next.kind === 'end' || next.kind === 'symbol' || /^(x|by|in|and|at)$/.test(next.text);
  return !gap || ends ? 1 : 0;
}

/** `27 sq m divided by 450 mm × 450 mm`: is it divided by the area of one, or by one side and multiplied by the other? */
export function askAreaOver(
  r: Reader,
  left: Formula,
  op: Arithmetic,
  right: Formula,
): Formula | null {
  if ((op !== 'times' && op !== 'by') || left.kind !== 'binary' || left.op !== 'over') return null;
  const sides = [left.right, right].every(
    (side) => side.kind === 'amount' && isWrittenLength(side),
  );
  if (!sides || r.problem || /^[([]/.test(r.slice(left.spot))) return null;
  if (hardPartOf(r, left.left) !== AREA) return null;
  const under = { from: left.right.spot.from, to: right.spot.to };
  return r.fail({
    code: 'two-readings',
    spots: [under],
    about: `"${r.slice(under)}" could be the area to divide by, or "${r.slice(right.spot)}" could multiply what stands before it. Brackets say which.`,
    fixes: [
      r.fix('Divide by that area', under, `(${r.slice(under)})`),
      r.fix('From left to right', left.spot, `(${r.slice(left.spot)})`),
    ],
  });
}

/** `deck area over thickness`, `48 sq ft over 4 in thick`: divided by that, or so thick? */
export function askLayer(
  r: Reader,
  left: Formula,
  opSpot: { readonly from: number; readonly to: number },
  right: Formula,
): Formula | null {
  if (r.problem || !/^over$/i.test(r.slice(opSpot))) return null;
  const named = right.kind === 'name' && /\b(thickness|depth)$/i.test(right.say);
  const said =
    right.kind === 'amount' && isWrittenLength(right) && /^(thick|deep)$/.test(lastWord(r));
  if (!(named || said) || hardPartOf(r, left) !== AREA || hardPartOf(r, right) !== LENGTH)
    return null;
  const spot = { from: left.spot.from, to: right.spot.to };
  const [area, thick] = [r.slice(left.spot), r.slice(right.spot)];
  const whole = { from: spot.from, to: r.since(spot.from).to };
  return r.fail({
    code: 'two-readings',
    spots: [whole],
    about: `"${thick}" could be how thick it is, or what the area is divided by. Write the one that is meant.`,
    fixes: [
      r.fix('So thick', whole, `${area} by ${thick}`),
      r.fix('Divided by it', whole, `${area} divided by ${thick}`),
    ],
  });
}

/** The label that was passed over last, or stands here. */
function lastWord(r: Reader): string {
  return labelAt(r, 0) > 0 ? r.token.text : (r.tokens[r.at - 1]?.text ?? '');
}

/** Says which way the length lies that was read; for the reader. */
export function takeLabel(r: Reader): void {
  const words = labelAt(r, 0);
  if (words > 0) r.take(words, 'unread');
}

/**
 * How many tokens stand before a length with its label that goes on from what was read: `40 ft long and 3 ft wide`,
 * `224 sq ft, 4 in deep`. 0 for none; 1 more than what is to be passed over.
 */
function labelledNext(r: Reader): number {
  // Most of what stands after a value is an end or an operator, and this is asked after every value.
  const { kind, text } = r.token;
  if (kind === 'end' || kind === 'quoted') return 0;
  if (kind !== 'number' && OPERATOR_WORDS.has(text) && !MAY_LEAD.has(text)) return 0;
  const comma = thingLength(r) + (r.seesAt(thingLength(r), ',') ? 1 : 0);
  const joined =
    comma + (r.seesAt(comma, 'and') || r.seesAt(comma, 'at') || r.seesAt(comma, '@') ? 1 : 0);
  const next = r.peek(joined);
  if (next.kind !== 'number' && next.kind !== 'word') return 0;
  if (next.kind === 'word' && r.nameAt(joined)) return 0;
  const end = slotEnd(r, joined);
  const each = end > 0 && comma > 0 && joined === comma && /^(each|ea)$/.test(r.peek(end - 1).text);
  return end > 0 && (labelAt(r, end) > 0 || each) ? joined + 1 : 0;
}

const MAY_LEAD: ReadonlySet<string> = new Set([',', 'and', 'at', '@']);

/** `24' x 30' slab, 4" thick`: what it is of, said between. */
function thingLength(r: Reader): number {
  if (r.token.kind !== 'word' || r.nameAt(0)) return 0;
  return r.vocabulary.nounAt(r.tokens, r.at)?.length ?? 0;
}

/** Does a length with its label follow, after a word for what it is of? */
export function goesOnWithLabel(r: Reader): boolean {
  return thingLength(r) > 0 && labelledNext(r) > 0;
}

/** The product that a labelled length makes with what stands before it; null where none follows. */
export function crossedByLabel(r: Reader, left: Formula): Formula | null {
  const next = labelledNext(r);
  if (next === 0) return null;
  const rough = roughDimension(r, left);
  if (!rough) return null;
  const count = !isHard(rough) && rough.nouns.length > 0;
  // `10 x 10 slab 4" thick` may be feet, `2 boards each 4 ft long` says each of which: neither is a number of times.
  const odd =
    left.kind === 'binary'
      ? left.op === 'by'
      : left.kind === 'amount' && left.say.endsWith(' each');
  if (count && odd) return null;
  const hard = hardPart(rough);
  if (!count && hard !== LENGTH && hard !== AREA) return null;
  const opSpot = next > 1 ? r.take(next - 1, 'operator') : { from: r.token.from, to: r.token.from };
  const right = expectValue(r);
  takeLabel(r);
  const spot = r.since(left.spot.from);
  return { kind: 'binary', op: count ? 'times' : 'by', opSpot, left, right, spot };
}

function hardPartOf(r: Reader, tree: Formula): object | null {
  const rough = roughDimension(r, tree);
  return rough && hardPart(rough);
}

/** `24' x 30' @ 4"`, `5" of concrete over 80 sq ft`: a length beside an area can only be how thick it is. */
export function isLayer(
  r: Reader,
  left: Formula,
  op: Arithmetic,
  opSpot: { readonly from: number; readonly to: number },
  right: Formula,
): boolean {
  if (op === 'at') return isThickness(r, left, right);
  if (op !== 'over' || !/^over$/i.test(r.slice(opSpot))) return false;
  return left.kind === 'amount' && isWrittenLength(left) && hardPartOf(r, right) === AREA;
}

function isThickness(r: Reader, left: Formula, right: Formula): boolean {
  if (right.kind !== 'amount' || !isWrittenLength(right)) return false;
  const hard = hardPartOf(r, left);
  return hard === AREA || (hard === LENGTH && left.kind === 'binary' && left.op === 'by');
}
