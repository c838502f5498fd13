// Whole things: packs, pieces, spacing, and the fewest under a gap.
import { Exact, ZERO } from './exact.ts';
import { THINGS, type Kind } from './measures.ts';
import {
  MEASURED,
  spoken,
  bracketed,
  commaBeforeIn,
  positive,
  atLeast,
  NotSaid,
  type Spoken,
} from './saying.ts';
import type { Speaker } from './spoken.ts';
import { amount } from './written-amounts.ts';

/** Packs, pieces, spacing, fewest: whole things. */
export function counted(s: Speaker, one: string, depth: number): Spoken {
  const c = s.c;
  const many = THINGS.get(one) ?? one;
  const kind: Kind = `count ${one}`;
  switch (c.whole(0, 4)) {
    case 0: {
      const of = s.closed(c.of([...MEASURED, 'count riser'] as Kind[]), depth);
      const holds = c.in(0.3) ? s.slot(of.kind, 0) : amount(c, of.kind);
      const comma = commaBeforeIn(of, c);
      const to = of.size.by(positive(holds.size)).up();
      return bracketed(spoken(`${of.text}${comma}in ${many} of ${holds.text}`, to, kind, 'closed'));
    }
    case 1: {
      const of = s.closed('length', depth);
      const size = c.whole(1, 20);
      const comma = commaBeforeIn(of, c);
      const to = of.size.by(Exact.of(size).times(Exact.of('304.8'))).up();
      return bracketed(spoken(`${of.text}${comma}in ${size} ft ${many}`, to, kind, 'closed'));
    }
    case 2: {
      const [count, long, stock] = [c.whole(1, 40), s.slot('length', 0), c.whole(6, 20)];
      const each = Exact.of(stock).times(Exact.of('304.8')).by(positive(long.size)).down();
      const to = Exact.of(count).by(positive(each)).up();
      return spoken(`${count} pieces of ${long.text} from ${stock} ft ${many}`, to, kind, 'value');
    }
    case 3: {
      const [step, run] = [s.slot('length', 0), s.slot('length', depth)];
      const spaces = positive(run.size).by(positive(step.size)).up();
      const [ends, more] = c.of([
        ['', 1],
        [', one end', 0],
        [', neither end', -1],
        [', both ends', 1],
        ['around', 0],
      ] as const);
      const text = `${many} every ${step.text} ${ends === 'around' ? 'around' : 'along'} ${run.text}${ends === 'around' ? '' : ends}`;
      return bracketed(spoken(text, atLeast(spaces.plus(Exact.of(more)), ZERO), kind, 'value'));
    }
    default:
      return fewest(s, many, kind);
  }
}

/** Found by trying one after another, which is slow and can't be wrong. */
export function fewest(s: Speaker, many: string, kind: Kind): Spoken {
  const c = s.c;
  const [wide, run, gap] = [amount(c, 'length'), s.slot('length', 0), amount(c, 'length')];
  const under = c.in(0.6);
  for (let n = 0n; n < 600n; n++) {
    const left = run.size.minus(wide.size.times(new Exact(n))).by(new Exact(n + 1n));
    if (left.compare(gap.size) < (under ? 0 : 1)) {
      const words = `${wide.text} across ${run.text} with gaps ${under ? 'under' : 'at most'} ${gap.text}`;
      return spoken(`fewest ${many} of ${words}`, new Exact(n), kind, 'value');
    }
  }
  throw new NotSaid();
}
