// `how many 16 ft boards for 224 ft`, `number of bags of 0.45 cubic feet for …`: packs asked for as a question.
import { seesAmount, writtenAmount } from './amounts.ts';
import { termAfter } from './rates.ts';
import type { Form } from '../quantity/form.ts';
import { sortBefore } from './asides.ts';
import { readSum } from './sums.ts';
import type { Phrase } from './phrases.ts';
import type { Reader } from './reader.ts';
import { roughDimension } from './rough.ts';
import { spacedOpening } from './spaced.ts';
import type { Formula } from './tree.ts';
import { expectSlot, expectValue } from './values.ts';

const ASKED: readonly (readonly string[])[] = [
  ['how', 'many'],
  ['number', 'of'],
  ['#', 'of'],
  ['count', 'of'],
  ['quantity', 'of'],
];

export function howManyAt(r: Reader, skip: number): Phrase | null {
  const words = ASKED.find((each) => r.seesAll(skip, each));
  if (!words) return null;
  const ahead = skip + words.length;
  const name = r.nameAt(ahead);
  if (name && !asksForThings(r, ahead, name.length)) {
    return r.vocabulary.table(name.cells[0] ?? 0) ? null : drop(r, ahead);
  }
  if (spacedOpening(r, ahead) > 0) return drop(r, ahead);
  const what = wantedAt(r, ahead);
  if (!what && isSlip(r, ahead)) return { opening: ahead, read: () => refuseSlip(r, ahead) };
  return what ? { opening: ahead, read: () => readWanted(r, ahead) } : null;
}

/** `how many ballusters in …`: nearly a thing that is counted. */
function isSlip(r: Reader, ahead: number): boolean {
  const { kind, text } = r.peek(ahead);
  return kind === 'word' && text.length > 3 && r.nearUnits(text).length > 0;
}

function refuseSlip(r: Reader, ahead: number): Formula {
  r.take(ahead, 'phrase');
  const spot = { from: r.token.from, to: r.token.to };
  return r.fail({
    code: 'unknown-unit',
    spots: [spot],
    word: r.slice(spot),
    number: 'how many',
    fixes: r.nearUnits(r.token.text).map((near) => r.fix(`Use "${near}"`, spot, near)),
  });
}

/** `how many bags for …` beside a cell Bags: the things are meant. */
function asksForThings(r: Reader, ahead: number, length: number): boolean {
  const noun = r.vocabulary.nounAt(r.tokens, r.at + ahead);
  return noun?.length === length && BETWEEN.has(r.peek(ahead + length).text);
}

/** Only the asking is passed over: `number of joists every 16 in along 12 ft`. */
function drop(r: Reader, words: number): Phrase {
  return {
    opening: words,
    read: () => {
      r.take(words, 'unread');
      return expectValue(r);
    },
  };
}

/** Does a thing to buy, or a unit to count in, stand there? */
function wantedAt(r: Reader, ahead: number): boolean {
  const { kind } = r.peek(ahead);
  if (kind === 'number') return true;
  return (
    termAfter(r, ahead) !== null ||
    (kind === 'word' &&
      (r.vocabulary.nounAt(r.tokens, r.at + ahead) !== null || sortBefore(r, ahead) > 0))
  );
}

function readWanted(r: Reader, opening: number): Formula {
  const from = r.token.from;
  const gaps = refuseGaps(r, opening);
  if (gaps) return gaps;
  r.take(opening, 'phrase');
  const wanted = expectWanted(r);
  if (r.problem || !wanted) return r.problem ? hole(r, from) : refuse(r, from);
  const asksFit = takeFor(r);
  if (asksFit === null) return refuse(r, from);
  const before = r.at;
  const of = readSum(r);
  if (r.problem) return of;
  const spot = r.since(from);
  const ofSpot = { from: r.tokens[before]?.from ?? spot.from, to: spot.to };
  if (wanted.kind === 'unit') {
    return { kind: 'in-units', of, form: wanted.form, formSpot: wanted.spot, spot };
  }
  const { noun, holdsEach } = wanted;
  if (!holdsEach) return refusePack(r, from, noun, of, ofSpot);
  if (asksFit === 'in') return refuseFit(r, spot, wanted.say, ofSpot);
  return { kind: 'in-packs', of, noun, nounSpot: wanted.spot, holdsEach, spot };
}

type Wanted =
  | { readonly kind: 'unit'; readonly form: Form; readonly spot: { from: number; to: number } }
  | {
      readonly kind: 'pack';
      readonly noun: string;
      readonly holdsEach: Formula | null;
      readonly spot: { from: number; to: number };
      readonly say: string;
    };

function expectWanted(r: Reader): Wanted | null {
  const { from } = r.token;
  if (seesAmount(r)) {
    const holdsEach = writtenAmount(r);
    if (r.problem) return null;
    r.take(sortBefore(r, 0), 'unread');
    const noun = r.vocabulary.nounAt(r.tokens, r.at);
    if (!noun) return null;
    const spot = r.take(noun.length, 'phrase');
    return { kind: 'pack', noun: noun.noun, holdsEach, spot, say: r.slice(r.since(from)) };
  }
  r.take(sortBefore(r, 0), 'unread');
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  if (noun) {
    const spot = r.take(noun.length, 'phrase');
    // `bags of 0.45 cubic feet`
    const held = r.sees('of') || r.sees('at') || r.sees('holding');
    if (held) r.take(1, 'phrase');
    const holdsEach = held ? expectSlot(r) : null;
    return { kind: 'pack', noun: noun.noun, holdsEach, spot, say: r.slice(r.since(from)) };
  }
  const term = termAfter(r, 0);
  if (!term) return null;
  const spot = r.take(term.length, 'phrase');
  return { kind: 'unit', form: { over: [term.term], under: [] }, spot };
}

/** `needed to make`, `do I need for`, `is`, `are in`, `in`: null where nothing says of what. */
function takeFor(r: Reader): 'for' | 'in' | null {
  const at = r.at;
  let count = 0;
  while (count < 6 && BETWEEN.has(r.peek(count).text)) count++;
  const last = r.peek(count - 1).text;
  if (count === 0 || r.peek(count).kind === 'end') return null;
  r.take(count, 'phrase');
  const words = r.tokens.slice(at, r.at).map((token) => token.text);
  return last === 'in' && !words.includes('needed') ? 'in' : 'for';
}

const BETWEEN: ReadonlySet<string> = new Set(
  'is are in for to make cover fill do does will would i we you it need needed required take takes get go goes into there have'.split(
    ' ',
  ),
);

/** `how many balusters in 6 ft with 4 in gaps if they are 1 1/2 in wide`: is the gap a limit that may be reached? */
function refuseGaps(r: Reader, opening: number): Formula | null {
  const noun = r.vocabulary.nounAt(r.tokens, r.at + opening);
  if (!noun) return null;
  const rest = r.text.slice(r.peek(opening + noun.length).from);
  const said = GAPS.exec(rest);
  const [, across = '', gap = '', wide = ''] = said ?? [];
  if (!said) return null;
  const spot = { from: r.token.from, to: r.text.trimEnd().length };
  const many = r.vocabulary.nouns.many(noun.noun);
  const phrase = `fewest ${many} of ${wide} across ${across} with gaps`;
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `A gap of ${gap} could be the most there may be, or one that none may reach. Write the one that is meant.`,
    fixes: [
      r.fix(`Gaps of at most ${gap}`, spot, `${phrase} at most ${gap}`),
      r.fix(`Gaps under ${gap}`, spot, `${phrase} under ${gap}`),
    ],
  });
}

const GAPS =
  /^(?:in|across|for|along|over)\s+([^,]{1,40}?)\s+(?:with|at)\s+(?:a\s+|max(?:imum)?\s+)?([^,]{1,30}?)\s+gaps?\b[^\d]{0,30}?(\d[^,]{0,20}?(?:in|inch|inches|"|mm|cm))\s*(?:wide|each)?\s*\??$/i;

function hole(r: Reader, from: number): Formula {
  return { kind: 'hole', spot: r.since(from) };
}

function refuse(r: Reader, from: number): Formula {
  return r.fail({
    code: 'phrase-slot',
    spots: [r.since(from)],
    phrase: 'how many',
    wanted: 'what one holds, and of how much',
    like: 'how many 16 ft boards for 224 ft',
    fixes: [],
  });
}

/** `how many bags for 16 cubic feet`: how much is in one? Cells that say it are offered. */
function refusePack(
  r: Reader,
  from: number,
  noun: string,
  of: Formula,
  ofSpot: { from: number; to: number },
): Formula {
  const many = r.vocabulary.nouns.many(noun);
  const spot = { from, to: Math.max(ofSpot.to, r.sees('?') ? r.token.to : 0) };
  const words = r.slice(ofSpot).replace(/[\s,?.]+$/, '');
  const wanted = roughDimension(r, of);
  const fits = [...r.vocabulary.namesIn(r.part, r.self)]
    .filter(({ id }) => {
      const measure = r.surroundings?.holdsOf(id)?.measure;
      if (measure?.kind !== 'amount' || !measure.rate || !wanted) return false;
      const under = measure.rate.under.dimension.nouns;
      return (
        measure.rate.over.dimension === wanted && under.length === 1 && under[0]?.noun === noun
      );
    })
    .slice(0, 3);
  return r.fail({
    code: 'pack-of-what',
    spots: [spot],
    noun,
    many,
    fixes: [
      ...fits.map(({ say }) =>
        r.fix(
          `Bags of ${say}`.replace('Bags', capital(many)),
          spot,
          `${words}, in ${many} of ${say}`,
        ),
      ),
      r.fix('Leave it open for now', spot, `${words}, in ${many} of ?`),
    ],
  });
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** `how many 4 in pieces in 12 ft`: as many as are needed for it, or as many whole ones as go into it? */
function refuseFit(
  r: Reader,
  spot: { from: number; to: number },
  say: string,
  ofSpot: { from: number; to: number },
): Formula {
  const words = r.slice(ofSpot).replace(/[\s,?.]+$/, '');
  const length = /^(.*\S)\s+\S+$/.exec(say)?.[1] ?? say;
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `As many as are needed to make up ${words}, or as many whole ones as go into it? Write the one that is meant.`,
    fixes: [
      r.fix('As many as are needed', spot, `${words}, in ${say}`),
      r.fix('Whole ones that go in', spot, `(${words}) divided by ${length}, rounded down`),
    ],
  });
}
