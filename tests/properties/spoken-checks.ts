// Yes and no: comparisons, and, or, not, and the conditions that hang on them.
import type { Kind } from './measures.ts';
import { MEASURED, spoken, bracketed, held, COUNTS, type Spoken } from './saying.ts';
import type { Speaker } from './spoken.ts';

export function logic(s: Speaker, depth: number): { text: string; holds: boolean } {
  const c = s.c;
  if (depth > 0 && c.in(0.4)) {
    const parts = Array.from({ length: c.whole(2, 3) }, () => logic(s, 0));
    const words = parts.slice(1).map(() => c.of(['and', 'or'] as const));
    const text = parts.map((p, i) => (i === 0 ? '' : ` ${words[i - 1]} `) + p.text).join('');
    // `and` holds tighter than `or`.
    let any = false;
    let all = true;
    parts.forEach((p, i) => {
      if (i > 0 && words[i - 1] === 'or') [any, all] = [any || all, true];
      all = all && p.holds;
    });
    return { text, holds: any || all };
  }
  if (depth > 0 && c.in(0.15)) {
    const of = logic(s, depth - 1);
    return { text: `not (${of.text})`, holds: !of.holds };
  }
  return comparison(s);
}

export function comparison(s: Speaker): { text: string; holds: boolean } {
  const c = s.c;
  const kind = c.of([...MEASURED, 'money', 'number', ...COUNTS, 'money per area'] as Kind[]);
  if (s.answers.length > 0 && c.in(0.3)) {
    const { say, holds } = c.of(s.answers);
    return { text: say, holds };
  }
  const left = kind === 'length' && c.in(0.4) ? labelled(s) : side(s, s.closed(kind, 1));
  if (c.in(0.15)) {
    const low = held('sum', s.sum(kind, 1));
    const high = side(s, s.closed(kind, 1));
    const holds = left.size.compare(low.size) >= 0 && left.size.compare(high.size) <= 0;
    return { text: `${left.text} is between ${low.text} and ${high.text}`, holds };
  }
  // The same again by another way, so that the last digit decides.
  const right = c.in(0.4) ? returned(s, left) : side(s, s.closed(kind, 1));
  const far = left.size.compare(right.size);
  const [words, holds] = c.of<readonly [string, boolean]>([
    ['is', far === 0],
    ['is not', far !== 0],
    ['is more than', far > 0],
    ['is over', far > 0],
    ['>', far > 0],
    ['is less than', far < 0],
    ['is under', far < 0],
    ['is at least', far >= 0],
    ['is not less than', far >= 0],
    ['≥', far >= 0],
    ['is at most', far <= 0],
    ['is not more than', far <= 0],
    ['<=', far <= 0],
  ]);
  return { text: `${left.text} ${words} ${right.text}`, holds };
}

/** `60 in divided by 8 risers`: what stands below the line is a label that blocks nothing. */
export function labelled(s: Speaker): Spoken {
  const [long, many] = [s.slot('length', 0), s.slot(s.c.of(COUNTS), 0)];
  return spoken(`${long.text} divided by ${many.text}`, long.size.by(many.size), 'length', 'term');
}

/** A side of a comparison: one may follow a list, so only conditions need brackets. */
export function side(s: Speaker, said: Spoken): Spoken {
  return said.hold === 'open' && said.text.includes(' otherwise ') ? bracketed(said) : said;
}

/** Divided and multiplied by the same: the same amount, by way of digits that never end. */
export function returned(s: Speaker, of: Spoken): Spoken {
  const by = s.c.of(['3', '7', '0.3', '11', '1.7', '49']);
  return spoken(`${held('term', of).text} ÷ ${by} times ${by}`, of.size, of.kind, 'term');
}

/** `A where C, otherwise B`; outside brackets the first takes no plus and the last no more words. */
export function condition(
  s: Speaker,
  kind: Kind,
  depth: number,
  where: 'inside' | 'outside',
): Spoken {
  // In brackets each value is closed on its own, lists and choices too.
  const hold = where === 'inside' ? 'open' : 'term';
  const first = held(hold, s.closed(kind, depth - 1));
  const when = logic(s, 1);
  const second = s.c.in(0.3) ? held(hold, s.closed(kind, depth - 1)) : null;
  const whenToo = second && logic(s, 0);
  const last = where === 'inside' ? s.closed(kind, depth - 1) : s.value(kind, depth - 1);
  const otherwise = held(where === 'inside' ? 'open' : 'value', last);
  const size = when.holds ? first.size : second && whenToo?.holds ? second.size : otherwise.size;
  const more = second && whenToo ? `, ${second.text} where ${whenToo.text}` : '';
  return spoken(
    `${first.text} ${s.c.of(['where', 'if'])} ${when.text}${more}, otherwise ${otherwise.text}`,
    size,
    kind,
    'open',
  );
}
