// Phrases: lists, choices, and the ways to say it that only one kind of amount has.
import { Exact, ONE, ZERO } from './exact.ts';
import { WRITTEN, type Kind } from './measures.ts';
import { COUNTS, MEASURED, spoken, bracketed, held, atLeast, type Spoken } from './saying.ts';
import type { Speaker } from './spoken.ts';
import { writtenShare } from './spoken-clauses.ts';
import { amount } from './written-amounts.ts';

/** Ways to say it that only this kind has. */
export function odd(s: Speaker, kind: Kind): Spoken | null {
  const c = s.c;
  if (kind === 'number') {
    const [a, b] = [writtenShare(c), writtenShare(c)];
    return spoken(`(1 − ${a.text} − ${b.text})`, ONE.minus(a.size).minus(b.size), kind, 'slot');
  }
  if (kind === 'length') {
    const [run, fall] = [s.slot('length', 0), amount(c, 'length')];
    const unit = c.of(WRITTEN['length'] ?? []);
    const text = `(${run.text} at ${fall.text} per ${c.of(unit.one)})`;
    return spoken(text, run.size.times(fall.size).by(unit.size), kind, 'slot');
  }
  if (kind === 'area') {
    const [a, b] = [c.whole(1, 60), c.whole(1, 60)];
    const [text, size] = c.of([
      [`${a}' x ${b}'`, '304.8'],
      [`${a} m x ${b} m`, '1000'],
      [`${a} ft x ${b} ft`, '304.8'],
    ] as const);
    return spoken(
      text,
      Exact.of(a * b)
        .times(Exact.of(size))
        .times(Exact.of(size)),
      kind,
      'slot',
    );
  }
  if (kind === 'volume') {
    const side = s.slot('length', 0);
    return spoken(`${side.text} cubed`, side.size.times(side.size).times(side.size), kind, 'value');
  }
  if (kind === 'time') {
    const [hours, minutes] = [c.whole(1, 12), c.whole(10, 59)];
    const text = c.of([
      `${hours}:${minutes} hours`,
      `${hours} h ${minutes} min`,
      `${hours}h${minutes}`,
    ]);
    return spoken(text, Exact.of(hours * 60 + minutes).times(Exact.of(60)), kind, 'slot');
  }
  if (kind === 'money') {
    const [people, hours, pay] = [c.whole(1, 9), s.slot('time', 0), c.whole(10, 90)];
    const text = `(${people} people times ${hours.text} at $${pay} per hour${c.of(['', ' per person'])})`;
    const size = hours.size.times(Exact.of(people * pay * 100)).by(Exact.of(3600));
    return spoken(text, size, kind, 'slot');
  }
  const of = s.slot(kind, 0);
  return spoken(`(${c.of(['-', '−'])}${of.text})`, ZERO.minus(of.size), kind, 'slot');
}

export function whatShare(s: Speaker): Spoken {
  const kind = s.c.of(['money', 'area', 'length'] as const);
  const [of, whole] = [s.slot(kind, 0), s.slot(kind, 0)];
  return bracketed(
    spoken(`what share ${of.text} is of ${whole.text}`, of.size.by(whole.size), 'share', 'value'),
  );
}

export function long(s: Speaker): Spoken {
  const c = s.c;
  if (c.in(0.5)) {
    const by = c.whole(1, 9);
    const unit = c.of([
      ['in', '25.4'],
      ['ft', '304.8'],
      ['m', '1000'],
    ] as const);
    const [a, b, far] = c.of([
      [3, 4, 5],
      [5, 12, 13],
      [8, 15, 17],
    ] as const);
    const size = Exact.of(far * by).times(Exact.of(unit[1]));
    return spoken(
      `diagonal of ${a * by} ${unit[0]} and ${b * by} ${unit[0]}`,
      size,
      'length',
      'value',
    );
  }
  const [n, wide, run] = [c.whole(1, 30), s.slot('length', 0), s.slot('length', 0)];
  const size = run.size.minus(wide.size.times(Exact.of(n))).by(Exact.of(n + 1));
  return spoken(
    `even gap for ${n} posts of ${wide.text} across ${run.text}`,
    size,
    'length',
    'value',
  );
}

export function list(s: Speaker, kind: Kind, depth: number): Spoken {
  const c = s.c;
  const item = (): Spoken =>
    kind === 'money' && c.in(0.3) ? pricedItem(s) : s.slot(kind, depth - 1);
  const items = Array.from({ length: c.whole(2, 4) }, item);
  const words = items.map((i) => i.text);
  const list = `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
  const sizes = items.map((i) => i.size);
  const total = sizes.reduce((a, b) => a.plus(b));
  const greatest = sizes.reduce((a, b) => atLeast(a, b));
  const least = sizes.reduce((a, b) => (a.compare(b) < 0 ? a : b));
  const [said, size] = c.of<readonly [string, Exact]>([
    [`total of ${list}`, total],
    [`average of ${list}`, total.by(Exact.of(items.length))],
    [`the greater of ${list}`, greatest],
    [`the lesser of ${list}`, least],
  ]);
  if (items.length === 2 && c.in(0.4)) {
    const [a, b] = [held('sum', s.sum(kind, depth - 1)), held('sum', s.sum(kind, depth - 1))];
    const more = c.in(0.5);
    const text = `${a.text} or ${b.text}, whichever is ${more ? 'greater' : 'less'}`;
    const picked = a.size.compare(b.size) >= 0 === more ? a.size : b.size;
    return spoken(text, picked, kind, 'open');
  }
  return spoken(said, size, kind, 'open');
}

/** `3 bags at $6.48 per bag`, an item that a list takes without brackets. */
export function pricedItem(s: Speaker): Spoken {
  const of = s.c.of([...MEASURED, ...COUNTS]);
  const [count, price] = [s.slot(of, 0), s.slot(`money per ${of}`, 0)];
  return spoken(`${count.text} at ${price.text}`, count.size.times(price.size), 'money', 'term');
}
