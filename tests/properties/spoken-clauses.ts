// Clauses: rounding, markups and margins, limits, units, and arithmetic that goes on after them.
import type { Chance } from './chance.ts';
import { Exact, ONE } from './exact.ts';
import { THINGS, WRITTEN } from './measures.ts';
import {
  spoken,
  held,
  commaBeforeIn,
  isCount,
  positive,
  rounded,
  COUNTS,
  type Spoken,
  type Hold,
} from './saying.ts';
import type { Speaker } from './spoken.ts';
import { amount } from './written-amounts.ts';

export function clause(s: Speaker, of: Spoken, depth: number): Spoken {
  const c = s.c;
  const { kind, size } = of;
  const comma = of.hold === 'open' || c.in(0.5) ? ', ' : ' ';
  const say = (words: string, to: Exact, hold: Hold = 'closed'): Spoken =>
    spoken(`${of.text}${comma}${words}`, to, kind, hold);
  const countable = kind === 'number' || (kind.startsWith('count ') && !kind.includes(' per '));
  switch (c.whole(0, 8)) {
    case 7: {
      if (!isCount(kind) || !countable) return of;
      const was = s.sum(c.of(COUNTS), depth - 1);
      return spoken(`${was.text}, as ${THINGS.get(kind.slice(6))}`, was.size, kind, 'closed');
    }
    case 0: {
      if (!countable) return stepped(s, of, comma);
      const way = c.of(['up', 'down', ''] as const);
      return say(`rounded${way && ` ${way}`}`, rounded(size, way));
    }
    case 1:
      return stepped(s, of, comma);
    case 2: {
      if (kind === 'share') return of;
      const share = s.slot('share', 0);
      return say(`marked up ${c.of(['', 'by '])}${share.text}`, size.times(ONE.plus(share.size)));
    }
    case 3: {
      if (kind !== 'money') return of;
      const name = s.slot('share', 0);
      const [a, b] = [writtenShare(c), writtenShare(c)];
      const word = (): string => c.of(['overhead', 'fee', 'profit', 'contingency']);
      const [words, whole] = c.of<readonly [string, Exact]>([
        [`for a margin of ${name.text}`, name.size],
        [`for a ${a.text} margin`, a.size],
        [`for ${a.text} ${word()}`, a.size],
        [`for ${a.text} ${word()} and ${b.text} ${word()}`, a.size.plus(b.size)],
      ]);
      return say(words, size.by(positive(ONE.minus(whole))));
    }
    case 4: {
      const limit = s.slot(kind, depth - 1);
      const less = c.in(0.5);
      const far = size.compare(limit.size);
      const to = less ? (far < 0 ? limit.size : size) : far > 0 ? limit.size : size;
      return say(`not ${less ? 'less' : 'more'} than ${limit.text}`, to);
    }
    case 5: {
      // Arithmetic goes on after a comma or a clause, on all before it.
      const gap = of.hold === 'closed' && c.in(0.5) ? ' ' : ', ';
      const times = held('value', s.value('number', 0));
      const over = c.in(0.4);
      const to = over ? size.by(times.size) : size.times(times.size);
      return spoken(
        `${of.text}${gap}${over ? 'divided by' : 'times'} ${times.text}`,
        to,
        kind,
        'carried',
      );
    }
    case 6: {
      const gap = of.hold === 'closed' && c.in(0.5) ? ' ' : ', ';
      // A share after plus takes no multiplication to itself.
      const more = kind === 'share' ? s.slot(kind, 0) : held('term', s.term(kind, depth - 1));
      return spoken(`${of.text}${gap}plus ${more.text}`, size.plus(more.size), kind, 'carried');
    }
    default: {
      const units = WRITTEN[kind];
      if (!units) return of;
      return spoken(
        `${of.text}${commaBeforeIn(of, c)}in ${c.of(c.of(units).many)}`,
        size,
        kind,
        'closed',
      );
    }
  }
}

export function stepped(s: Speaker, of: Spoken, comma: string): Spoken {
  const c = s.c;
  if (of.kind.includes(' per ') && !of.kind.startsWith('money per ')) return of;
  const step = of.kind === 'number' ? { text: '0.5', size: Exact.of('0.5') } : amount(c, of.kind);
  const [words, way] = c.of([
    [`rounded up to the next ${step.text}`, 'up'],
    [`rounded down to the next ${step.text}`, 'down'],
    [`rounded to the nearest ${step.text}`, ''],
  ] as const);
  const to = rounded(of.size.by(step.size), way).times(step.size);
  return spoken(`${of.text}${comma}${words}`, to, of.kind, 'closed');
}

/** Below a half; written in whole percents, with a point, or with a fraction. */
export function writtenShare(c: Chance): { text: string; size: Exact } {
  const whole = c.whole(1, 40);
  const [more, size] = c.of<readonly [string, string]>([
    ['', '0'],
    ['.5', '1/2'],
    [' 1/4', '1/4'],
    ['-1/2', '1/2'],
    ['½', '1/2'],
  ]);
  return { text: `${whole}${more}%`, size: Exact.of(whole).plus(Exact.of(size)).by(Exact.of(100)) };
}
