// Written amounts: the text of one and what it comes to.
import type { Chance } from './chance.ts';
import { Exact, ONE } from './exact.ts';
import { type Kind, type Plain, THINGS, WRITTEN } from './measures.ts';

export interface Amount {
  readonly text: string;
  readonly size: Exact;
}

/** `12`, `1,250`, `0.45`, `3/4`, `7 1/2`; more than 0. */
export function number(c: Chance, most = 400): Amount {
  const whole = c.whole(1, most);
  switch (c.whole(0, 5)) {
    case 0: {
      const text = `${whole}.${c.of(['5', '25', '75', '1', '3', '05', '125', '333'])}`;
      return { text, size: Exact.of(text) };
    }
    case 1: {
      const under = c.of([2, 4, 8, 16, 3]);
      const over = c.whole(1, under - 1);
      const size = Exact.of(`${over}/${under}`);
      if (c.in(0.3)) return { text: `${over}/${under}`, size };
      return {
        text: `${whole}${c.of([' ', '-'])}${over}/${under}`,
        size: size.plus(Exact.of(whole)),
      };
    }
    case 2: {
      const large = whole * c.of([1, 10, 100]);
      return { text: grouped(large), size: Exact.of(large) };
    }
    case 3: {
      const small = c.whole(1, 12);
      return c.in(0.5)
        ? { text: `${small}½`, size: Exact.of(2 * small + 1).by(Exact.of(2)) }
        : { text: `${small}`, size: Exact.of(small) };
    }
    default:
      return { text: `${whole}`, size: Exact.of(whole) };
  }
}

/** Digits with commas between thousands. */
function grouped(whole: number): string {
  return String(whole).replaceAll(/\B(?=(\d{3})+$)/g, ',');
}

/** `12' 6-1/2"`, `12 ft 6 1/2 in`. */
function feetAndInches(c: Chance): Amount {
  const [feet, inches, sixteenths] = [c.whole(1, 40), c.whole(0, 11), c.whole(0, 15)];
  const size = Exact.of(feet * 12 + inches)
    .plus(Exact.of(`${sixteenths}/16`))
    .times(Exact.of('25.4'));
  const fraction = sixteenths === 0 ? '' : `${sixteenths}/16`;
  const joint = fraction === '' ? '' : c.of(['-', ' ']);
  const text = c.of([
    `${feet} ft ${inches}${joint}${fraction} in`,
    `${feet}' ${inches}${joint}${fraction}"`,
    `${feet}'-${inches}${joint}${fraction}"`,
    `${feet}’ ${inches}${joint}${fraction}”`,
  ]);
  return { text, size };
}

function plain(c: Chance, kind: Plain): Amount {
  if (kind === 'number') return number(c);
  if (kind === 'share') {
    const { text, size } = number(c, 60);
    return { text: `${text}%`, size: size.by(Exact.of(100)) };
  }
  if (kind === 'money') {
    if (c.in(0.15)) return cents(c);
    const dollars = c.whole(0, 900);
    const rest = c.of(['', '', `.${c.whole(10, 99)}`]);
    const size = Exact.of(`${dollars}${rest}`);
    if (size.over === 0n) return { text: '$1', size: Exact.of(100) };
    return { text: `$${dollars}${rest}`, size: size.times(Exact.of(100)) };
  }
  if (kind.startsWith('count ')) {
    const { text, size } = number(c);
    const one = kind.slice(6);
    return { text: `${text} ${c.in(0.1) ? one : THINGS.get(one)}`, size };
  }
  if (kind === 'length' && c.in(0.3)) return feetAndInches(c);
  const unit = c.of(WRITTEN[kind] ?? []);
  const { text, size } = number(c);
  return { text: `${text} ${c.of(unit.many)}`, size: size.times(unit.size) };
}

function cents(c: Chance): Amount {
  const count = c.whole(2, 99);
  return { text: `${count} cents`, size: Exact.of(count) };
}

/** One of `kind` for what stands after `per`, with its size. */
function per(c: Chance, kind: Plain): Amount {
  if (kind.startsWith('count ')) return { text: kind.slice(6), size: ONE };
  const unit = c.of(WRITTEN[kind] ?? []);
  return { text: c.of(unit.one), size: unit.size };
}

/** A written amount of this kind, more than 0. */
export function amount(c: Chance, kind: Kind): Amount {
  const [over, under] = kind.split(' per ') as [Plain, Plain | undefined];
  if (under === undefined) return plain(c, over);
  const top = plain(c, over);
  if (c.in(0.15) && !under.startsWith('count ')) {
    const unit = c.of(WRITTEN[under] ?? []);
    const count = c.of([10, 100, 1000]);
    return {
      text: `${top.text} per ${count} ${c.of(unit.many)}`,
      size: top.size.by(unit.size.times(Exact.of(count))),
    };
  }
  const below = per(c, under);
  return { text: `${top.text} per ${below.text}`, size: top.size.by(below.size) };
}

/** A given that says what it is at best and at worst, with its plain value: the first, or the middle of the two. */
export function ranged(c: Chance, kind: Kind): Amount {
  const drawn = [amount(c, kind), amount(c, kind), amount(c, kind)];
  const [low, first, high] = drawn.toSorted((a, b) => a.size.compare(b.size));
  if (!low || !first || !high) throw new Error('three amounts were drawn');
  const [best, worst] = c.in(0.5) ? [low, high] : [high, low];
  const middle = low.size.plus(high.size).by(Exact.of(2));
  return c.of<Amount>([
    { text: `${first.text}, ${best.text} at best, ${worst.text} at worst`, size: first.size },
    { text: `${first.text}, ${worst.text} at worst, ${best.text} at best`, size: first.size },
    { text: `${first.text} (${low.text} to ${high.text})`, size: first.size },
    { text: `${best.text} at best, ${worst.text} at worst`, size: middle },
    { text: `${low.text} to ${high.text}`, size: middle },
    { text: `between ${low.text} and ${high.text}`, size: middle },
  ]);
}
