// What a value is taken as: `as boards`, `as a percentage of X`, `as a deposit`.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { seesOperator } from './operators.ts';
import { noteLength } from './asides.ts';
import { inUnitsAfter, toUnits } from './in-clause.ts';
import { nearNames } from '../words/near.ts';

/** `labour as a percentage of materials + labour`: of the first alone, or of the sum? */
export function wholeAlone(r: Reader, of: Formula, whole: Formula): Formula {
  const share: Formula = { kind: 'what-share', of, whole, spot: r.since(of.spot.from) };
  if (r.problem || !seesOperator(r, 0)) return share;
  const rest = { from: whole.spot.from, to: r.endOfBracket() };
  const tail = r.slice({ from: r.token.from, to: rest.to }).trim();
  return r.fail({
    code: 'two-readings',
    spots: [{ from: r.token.from, to: rest.to }],
    about: `"${tail}" could belong to what the share is of, or go on with the share itself. Brackets or a comma say which.`,
    fixes: [
      r.fix('Of all of it', rest, `(${r.slice(rest).trimEnd()})`),
      r.fix('Go on with the share', { from: whole.spot.to, to: r.token.from }, ', '),
    ],
  });
}

/** `as a percentage`, `as a deposit`, `as cubic yards`, `as boards`. */
export function asClause(r: Reader, of: Formula, comma: number): Formula {
  const article =
    r.seesAt(comma + 1, 'a') || r.seesAt(comma + 1, 'an') || r.seesAt(comma + 1, 'the') ? 1 : 0;
  const ahead = comma + 1 + article;
  const percent = ['%', 'percent', 'percentage', 'share'].includes(r.peek(ahead).text);
  if (percent && !r.seesAt(ahead + 1, 'of')) return asPercent(r, of, ahead + 1);
  if (article > 0) {
    const note = noteLength(r, ahead);
    if (note > 0) {
      r.take(ahead + note, 'unread');
      return of;
    }
  }
  const to = toUnits(r, comma);
  return to > 0 ? inUnitsAfter(r, of, to) : asNoun(r, of, comma);
}

/** `labour / (labour + materials) as %`: what share the one is of the other. */
function asPercent(r: Reader, of: Formula, words: number): Formula {
  const { from } = r.token;
  if (of.kind === 'what-share' || of.kind === 'part-of') {
    r.take(words, 'unread');
    return of;
  }
  if (of.kind === 'binary' && of.op === 'over') {
    r.take(words, 'phrase');
    const spot = r.since(of.spot.from);
    return { kind: 'what-share', of: of.left, whole: of.right, spot };
  }
  r.take(words, 'phrase');
  return r.fail({
    code: 'phrase-slot',
    spots: [r.since(from)],
    phrase: 'as a percent of',
    wanted: 'the whole',
    like: '$42 as a percent of $60',
    fixes: [r.fix('Leave it open for now', r.afterLast(), ' of ?')],
  });
}

function asNoun(r: Reader, of: Formula, comma: number): Formula {
  r.at += comma;
  r.take(1, 'phrase');
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  if (!noun) {
    return r.fail({
      code: 'phrase-slot',
      spots: [r.token],
      phrase: 'as',
      wanted: 'a thing that is counted',
      like: 'joist count, as boards',
      fixes:
        r.token.kind === 'word'
          ? nearNames(r.token.text, r.vocabulary.nouns.phrases.keys(), 3).map((near) =>
              r.fix(`Count it as ${near}`, r.token, near),
            )
          : [],
    });
  }
  const nounSpot = r.take(noun.length, 'phrase');
  return { kind: 'as-noun', of, noun: noun.noun, nounSpot, spot: r.since(of.spot.from) };
}
