// What is asked for where a thing is named without its measures: cells named after it are offered.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import type { Fix } from '../words/report.ts';

/** `volume of 6 holes`, `area of the slab`: cells named after the thing are offered. */
export function askForSides(r: Reader, from: number, things: number, word: string): Formula {
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
