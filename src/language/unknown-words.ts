// Words that nothing here knows, and how far they are from those that count.
import { OPERATOR_WORDS, SHARE_LABELS } from './words.ts';
import { WHICH } from './which.ts';
import { OPENINGS } from './phrases.ts';
import { RELATION_WORDS } from './comparisons.ts';
import { ALL_LIMITS, SHARE_OF } from './limit-words.ts';
import type { Reader } from './reader.ts';
import { trailAt } from './leads-and-trails.ts';
import { isNumberWord } from './numbers.ts';
import { nearNames } from '../words/near.ts';

/** What is worked with, poured, laid or planted: after an amount it says what that is of. */
export const STUFF: ReadonlySet<string> = new Set(
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
export const SORTS: ReadonlySet<string> = new Set(
  `bulk big small large short long thin thick heavy light wide narrow galvanised galvanized treated untreated pine
   cedar oak steel concrete timber wooden plastic metal aluminium brass deck decking fence fencing framing roofing
   hardwood softwood rough finished standard new old extra spare full plain ready precast paving barrow wheelbarrow
   dump tipper drywall masonry hex equal even carriage lag joist corner gravel sand stone cement white black grey red flat rim edge intermediate composite pressure wood vinyl aluminum pvc pt side top bottom front
   back outer inner upper main middle centre ledger gate end beam header rafter`
    .split(/\s+/)
    .filter((word) => word !== ''),
);

/** Words that count: one that is nearly one of these is asked about. */
const OWN_WORDS =
  `squared cubed square cubic each every percent cents dozen pair together added equals more most least no but
   capped nearest round rounded roundup rnd rd up down to marked between than pi twice double triple half third
   quarter hundred thousand million on centre centres oc apart min max minimum maximum diameter dia radius wide
   long high deep thick tall margin ways yes above below off including incl inc excluding add then take deduct
   subtract remove knock increase raise bump decrease reduce lower discount multiply divide halve increased
   raised reduced decreased lowered discounted shared best worst converted convert expressed shown into cut
   ripped sawn made taken out vat gst extra again when whichever where free instead without because doubled tripled halved added
   deducted subtracted removed`.split(/\s+/);

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

/** Does the language give this word a meaning that changes a number? */
export function counts(word: string): boolean {
  return wordsThatCount().has(word);
}

/** After these a value has been said in full. */
export function endsValue(r: Reader, ahead: number): boolean {
  const token = r.peek(ahead);
  if (token.kind === 'end') return true;
  if (token.kind === 'symbol') return !/^[$£€#"'(&%]$/.test(token.text);
  if (token.kind !== 'word') return false;
  return OPERATOR_WORDS.has(token.text) || CLAUSES.has(token.text) || trailAt(r, ahead) > 0;
}

const CLAUSES: ReadonlySet<string> = new Set(
  'rounded round rnd rd roundup nearest up down to marked as but not no capped including incl inc add then converted when whichever cut each because twice doubled off deduct subtract take knock multiply divide'.split(
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
export function isFarFromAll(r: Reader, ahead: number): boolean {
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

export function isNearName(r: Reader, word: string): boolean {
  const names = [...r.vocabulary.namesIn(r.part, r.self)].map((n) => n.say);
  return nearNames(word, names, 1).length > 0;
}
