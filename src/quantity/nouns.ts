// Counted things: what a number on a building site counts. One noun has a singular, a plural and perhaps other ways to say it.
import { TRADE_NOUNS } from './trade-nouns.ts';

/** Plurals that no rule gives, by singular. */
const IRREGULAR: Readonly<Record<string, string>> = {
  person: 'people',
  leaf: 'leaves',
  shelf: 'shelves',
  half: 'halves',
  knife: 'knives',
};

/** Other ways to say a noun: one noun however it is said. */
const SAME_AS: Readonly<Record<string, string>> = {
  persons: 'person',
  man: 'person',
  men: 'person',
  worker: 'person',
  workers: 'person',
  guy: 'person',
  guys: 'person',
  labourer: 'person',
  labourers: 'person',
  laborer: 'person',
  laborers: 'person',
  ppl: 'person',
  lad: 'person',
  lads: 'person',
  bloke: 'person',
  blokes: 'person',
  chap: 'person',
  chaps: 'person',
  blk: 'block',
  blks: 'block',
  brd: 'board',
  brds: 'board',
  bds: 'board',
  sht: 'sheet',
  shts: 'sheet',
  bdl: 'bundle',
  bdls: 'bundle',
  pc: 'piece',
  pcs: 'piece',
};

export class Nouns {
  /** Lower-case singular and plural → singular, words joined by one space. */
  readonly phrases: ReadonlyMap<string, string>;

  /** `extra` are the notebook's own counted things, each in singular or plural. */
  constructor(extra: readonly string[] = []) {
    const phrases = new Map<string, string>();
    for (const noun of TRADE_NOUNS) put(phrases, noun);
    for (const [said, noun] of Object.entries(SAME_AS)) phrases.set(said, noun);
    for (const typed of extra) {
      const phrase = typed.trim().toLowerCase().replaceAll(/\s+/g, ' ');
      if (phrase !== '' && !phrases.has(phrase)) put(phrases, singularOf(phrase));
    }
    this.phrases = phrases;
  }

  /** The plural of a noun's singular. */
  many(noun: string): string {
    return pluralOf(noun);
  }
}

function put(phrases: Map<string, string>, noun: string): void {
  phrases.set(noun, noun);
  phrases.set(pluralOf(noun), noun);
}

/** The plural of a singular; of several words the last one changes: `deck boards`. */
export function pluralOf(noun: string): string {
  const space = noun.lastIndexOf(' ');
  if (space >= 0) return noun.slice(0, space + 1) + pluralOf(noun.slice(space + 1));
  const irregular = Object.hasOwn(IRREGULAR, noun) ? IRREGULAR[noun] : undefined;
  if (irregular) return irregular;
  if (/[^aeiou]y$/.test(noun)) return `${noun.slice(0, -1)}ies`;
  if (/(s|x|z|ch|sh)$/.test(noun)) return `${noun}es`;
  return `${noun}s`;
}

/** The singular of a noun typed by its owner in either number; the way back from `pluralOf`. */
export function singularOf(noun: string): string {
  const space = noun.lastIndexOf(' ');
  if (space >= 0) return noun.slice(0, space + 1) + singularOf(noun.slice(space + 1));
  const irregular = Object.entries(IRREGULAR).find(([, many]) => many === noun);
  if (irregular) return irregular[0];
  if (/[^aeiou]ies$/.test(noun)) return `${noun.slice(0, -3)}y`;
  if (/(ss|x|z|ch|sh)es$/.test(noun)) return noun.slice(0, -2);
  return /[^suia]s$/.test(noun) ? noun.slice(0, -1) : noun;
}
