// What an estimator might say: formulas as text, each with what it comes to, worked out beside it by exact fractions.
// Built from language.md alone. Whatever stands here in brackets would be taken otherwise without them.
import type { Chance } from './chance.ts';
import { Exact, ONE, ZERO } from './exact.ts';
import { type Kind, type Plain, THINGS, WRITTEN } from './measures.ts';
import { amount } from './written-amounts.ts';

/**
 * How closely the words hold together. `carried`: a sum went on after a comma, so that a further times wants a comma too.
 * `closed`: ends in a clause, on whose result arithmetic may go on. `open`: a list or condition; only a comma goes on.
 */
type Hold = 'slot' | 'value' | 'term' | 'sum' | 'carried' | 'closed' | 'open';
const LOOSENESS: readonly Hold[] = ['slot', 'value', 'term', 'sum', 'carried', 'closed', 'open'];

export interface Spoken {
  readonly text: string;
  readonly size: Exact;
  readonly kind: Kind;
  readonly hold: Hold;
}

export interface Named {
  /** As it has to be written from where the formula stands. */
  readonly say: string;
  readonly size: Exact;
  readonly kind: Kind;
}

/** Left where an estimator would not go, such as dividing by nothing: the caller throws the dice again. */
class NotSaid extends Error {}

export const COUNTS: readonly Plain[] = [...THINGS.keys()].map((one): Plain => `count ${one}`);
const MEASURED: readonly Plain[] = ['length', 'area', 'volume', 'weight', 'time'];
export const PLAIN_KINDS: readonly Plain[] = ['number', ...MEASURED, 'money', 'share', ...COUNTS.slice(0, 4)];
/** Rates as builders write them. */
export const RATES: readonly Kind[] = [
  ...([...MEASURED, ...COUNTS] as const).map((under): Kind => `money per ${under}`),
  'area per time',
  'volume per time',
  'length per time',
  'weight per volume',
  'area per volume',
  'time per count riser',
  'length per count riser',
  'volume per count bag',
  'weight per count bag',
  'area per count box',
  'count screw per count board',
  'count screw per length',
  'count bag per area',
  'count post per time',
];
/** Longer ones are hard to judge by eye when they come out wrong. */
const LONGEST = 240;
const LABELS = ['waste', 'breakage', 'overhead', 'profit', 'tax', 'discount', 'contingency', 'markup'];

export class Speaker {
  readonly #c: Chance;
  readonly #names: readonly Named[];

  readonly #answers: readonly { readonly say: string; readonly holds: boolean }[];

  constructor(c: Chance, names: readonly Named[], answers: readonly { say: string; holds: boolean }[]) {
    this.#c = c;
    this.#names = names;
    this.#answers = answers;
  }

  /** A whole formula of this kind. */
  formula(kind: Kind): Spoken {
    for (;;) {
      try {
        const said = this.#c.in(0.08) ? this.#condition(kind, 2, 'outside') : this.#closed(kind, 3);
        const digits = String(said.size.over).length + String(said.size.under).length;
        if (digits < 400 && said.text.length < LONGEST) return said;
      } catch (e) {
        if (!(e instanceof NotSaid || e instanceof RangeError)) throw e;
      }
    }
  }

  /** A yes or no. */
  check(): { readonly text: string; readonly holds: boolean } {
    for (;;) {
      try {
        return this.#logic(2);
      } catch (e) {
        if (!(e instanceof NotSaid || e instanceof RangeError)) throw e;
      }
    }
  }

  #logic(depth: number): { text: string; holds: boolean } {
    const c = this.#c;
    if (depth > 0 && c.in(0.4)) {
      const parts = Array.from({ length: c.whole(2, 3) }, () => this.#logic(0));
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
      const of = this.#logic(depth - 1);
      return { text: `not (${of.text})`, holds: !of.holds };
    }
    return this.#comparison();
  }

  #comparison(): { text: string; holds: boolean } {
    const c = this.#c;
    const kind = c.of([...MEASURED, 'money', 'number', ...COUNTS, 'money per area'] as Kind[]);
    if (this.#answers.length > 0 && c.in(0.3)) {
      const { say, holds } = c.of(this.#answers);
      return { text: say, holds };
    }
    const left = kind === 'length' && c.in(0.4) ? this.#labelled() : this.#side(this.#closed(kind, 1));
    if (c.in(0.15)) {
      const low = this.#at('sum', this.#sum(kind, 1));
      const high = this.#side(this.#closed(kind, 1));
      const holds = left.size.compare(low.size) >= 0 && left.size.compare(high.size) <= 0;
      return { text: `${left.text} is between ${low.text} and ${high.text}`, holds };
    }
    // The same again by another way, so that the last digit decides.
    const right = c.in(0.4) ? this.#returned(left) : this.#side(this.#closed(kind, 1));
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
  #labelled(): Spoken {
    const [long, many] = [this.#slot('length', 0), this.#slot(this.#c.of(COUNTS), 0)];
    return this.#make(`${long.text} divided by ${many.text}`, long.size.by(many.size), 'length', 'term');
  }

  /** A side of a comparison: one may follow a list, so only conditions need brackets. */
  #side(said: Spoken): Spoken {
    return said.hold === 'open' && said.text.includes(' otherwise ') ? this.#bracket(said) : said;
  }

  /** Divided and multiplied by the same: the same amount, by way of digits that never end. */
  #returned(of: Spoken): Spoken {
    const by = this.#c.of(['3', '7', '0.3', '11', '1.7', '49']);
    return this.#make(`${this.#at('term', of).text} ÷ ${by} times ${by}`, of.size, of.kind, 'term');
  }

  /** `A where C, otherwise B`; outside brackets the first takes no plus and the last no more words. */
  #condition(kind: Kind, depth: number, where: 'inside' | 'outside'): Spoken {
    const hold = where === 'inside' ? 'closed' : 'term';
    const first = this.#at(hold, this.#closed(kind, depth - 1));
    const when = this.#logic(1);
    const second = this.#c.in(0.3) ? this.#at(hold, this.#closed(kind, depth - 1)) : null;
    const whenToo = second && this.#logic(0);
    const last = where === 'inside' ? this.#closed(kind, depth - 1) : this.#value(kind, depth - 1);
    const otherwise = this.#at(where === 'inside' ? 'closed' : 'value', last);
    const size = when.holds ? first.size : second && whenToo?.holds ? second.size : otherwise.size;
    const more = second && whenToo ? `, ${second.text} where ${whenToo.text}` : '';
    return this.#make(
      `${first.text} ${this.#c.of(['where', 'if'])} ${when.text}${more}, otherwise ${otherwise.text}`,
      size,
      kind,
      'open',
    );
  }

  /** A sum and clauses, each of which works on all before it. */
  #closed(kind: Kind, depth: number): Spoken {
    let said = depth > 0 && this.#c.in(0.1) ? this.#list(kind, depth) : this.#sum(kind, depth);
    for (let more = this.#c.whole(0, depth); more > 0; more--) said = this.#clause(said, depth);
    return said;
  }

  #clause(of: Spoken, depth: number): Spoken {
    const c = this.#c;
    const { kind, size } = of;
    const comma = of.hold === 'open' || c.in(0.5) ? ', ' : ' ';
    const say = (words: string, to: Exact, hold: Hold = 'closed'): Spoken =>
      this.#make(`${of.text}${comma}${words}`, to, kind, hold);
    const countable = kind === 'number' || (kind.startsWith('count ') && !kind.includes(' per '));
    switch (c.whole(0, 8)) {
      case 7: {
        if (!isCount(kind) || !countable) return of;
        const was = this.#sum(c.of(COUNTS), depth - 1);
        return this.#make(`${was.text}, as ${THINGS.get(kind.slice(6))}`, was.size, kind, 'closed');
      }
      case 0: {
        if (!countable) return this.#stepped(of, comma);
        const way = c.of(['up', 'down', ''] as const);
        return say(`rounded${way && ` ${way}`}`, rounded(size, way));
      }
      case 1:
        return this.#stepped(of, comma);
      case 2: {
        if (kind === 'share') return of;
        const share = this.#slot('share', 0);
        return say(`marked up ${c.of(['', 'by '])}${share.text}`, size.times(ONE.plus(share.size)));
      }
      case 3: {
        if (kind !== 'money') return of;
        const name = this.#slot('share', 0);
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
        const limit = this.#slot(kind, depth - 1);
        const less = c.in(0.5);
        const far = size.compare(limit.size);
        const to = less ? (far < 0 ? limit.size : size) : far > 0 ? limit.size : size;
        return say(`not ${less ? 'less' : 'more'} than ${limit.text}`, to);
      }
      case 5: {
        // Arithmetic goes on after a comma or a clause, on all before it.
        const gap = of.hold === 'closed' && c.in(0.5) ? ' ' : ', ';
        const times = this.#at('value', this.#value('number', 0));
        const over = c.in(0.4);
        const to = over ? size.by(times.size) : size.times(times.size);
        return this.#make(`${of.text}${gap}${over ? 'divided by' : 'times'} ${times.text}`, to, kind, 'carried');
      }
      case 6: {
        const gap = of.hold === 'closed' && c.in(0.5) ? ' ' : ', ';
        // A share after plus takes no multiplication to itself.
        const more = kind === 'share' ? this.#slot(kind, 0) : this.#at('term', this.#term(kind, depth - 1));
        return this.#make(`${of.text}${gap}plus ${more.text}`, size.plus(more.size), kind, 'carried');
      }
      default: {
        const units = WRITTEN[kind];
        if (!units) return of;
        return this.#make(`${of.text}${commaBeforeIn(of, c)}in ${c.of(c.of(units).many)}`, size, kind, 'closed');
      }
    }
  }

  #stepped(of: Spoken, comma: string): Spoken {
    const c = this.#c;
    if (of.kind.includes(' per ') && !of.kind.startsWith('money per ')) return of;
    const step = of.kind === 'number' ? { text: '0.5', size: Exact.of('0.5') } : amount(c, of.kind);
    const [words, way] = c.of([
      [`rounded up to the next ${step.text}`, 'up'],
      [`rounded down to the next ${step.text}`, 'down'],
      [`rounded to the nearest ${step.text}`, ''],
    ] as const);
    const to = rounded(of.size.by(step.size), way).times(step.size);
    return this.#make(`${of.text}${comma}${words}`, to, of.kind, 'closed');
  }

  #sum(kind: Kind, depth: number): Spoken {
    const c = this.#c;
    let said = this.#term(kind, depth);
    for (let more = c.whole(0, Math.min(2, depth)); more > 0; more--) {
      if (c.in(0.35) && !isBareWhole(said)) {
        const share = this.#slot('share', 0);
        const label = /%$/.test(share.text) && c.in(0.5) ? ` ${c.of(LABELS)}` : '';
        const [word, sign] = c.of([['plus', 1], ['with', 1], ['+', 1], ['less', -1], ['minus', -1]] as const);
        const to =
          kind === 'share'
            ? said.size.plus(share.size.times(Exact.of(sign)))
            : said.size.times(ONE.plus(share.size.times(Exact.of(sign))));
        said = this.#make(`${said.text} ${word} ${share.text}${label}`, to, kind, 'sum');
        continue;
      }
      if ((kind === 'money' || (isCount(kind) && !kind.includes(' per '))) && c.in(0.15)) {
        // A bare number beside a count is that count, beside money dollars.
        const bare = amount(c, 'number');
        const worth = kind === 'money' ? bare.size.times(Exact.of(100)) : bare.size;
        said = this.#make(`${said.text} plus ${bare.text}`, said.size.plus(worth), kind, 'sum');
        continue;
      }
      const counted = kind === 'length' && c.in(0.15);
      const other = counted
        ? this.#countedLength()
        : kind === 'share'
          ? this.#slot(kind, 0)
          : this.#at('term', this.#term(kind, depth - 1));
      const minus = c.in(0.4);
      const to = minus ? said.size.minus(other.size) : said.size.plus(other.size);
      said = this.#make(`${said.text} ${minus ? c.of(['minus', '-', '−']) : c.of(['plus', '+'])} ${other.text}`, to, kind, 'sum');
    }
    return said;
  }

  /** `12 joists times 10 ft`: in a sum the joists drop out. */
  #countedLength(): Spoken {
    const [count, length] = [this.#slot(this.#c.of(COUNTS), 0), this.#slot('length', 0)];
    return this.#make(`${count.text} times ${length.text}`, count.size.times(length.size), 'length', 'term');
  }

  #term(kind: Kind, depth: number): Spoken {
    const c = this.#c;
    if (depth <= 0 || c.in(0.25)) return this.#value(kind, depth);
    const left = (k: Kind): Spoken => this.#at('term', c.in(0.5) ? this.#term(k, depth - 1) : this.#value(k, depth - 1));
    const right = (k: Kind): Spoken => this.#at('value', this.#value(k, depth - 1));
    const times = (a: Spoken, word: string, b: Spoken): Spoken =>
      this.#make(`${a.text} ${word} ${b.text}`, a.size.times(b.size), kind, 'term');
    const over = (a: Spoken, b: Spoken): Spoken =>
      this.#make(`${a.text} ${c.of(['divided by', '÷', '/', 'over'])} ${b.text}`, a.size.by(b.size), kind, 'term');
    if (kind === 'share') return c.in(0.5) ? times(left('share'), 'times', right('number')) : over(left('share'), right('number'));
    const [above, below] = kind.split(' per ') as [Plain, Plain | undefined];
    if (below !== undefined && (above === 'money' || isCount(below)) && c.in(0.3)) {
      return over(left(above), this.#slot(below, 0));
    }
    switch (c.whole(0, 6)) {
      case 0:
        return times(left(kind), c.of(['times', '×', '*']), right('number'));
      case 1:
        return times(left('number'), c.of(['times', '×']), right(kind));
      case 2:
        return over(left(kind), right('number'));
      case 3: {
        const same = left(kind);
        const by = c.of(['3', '7', '0.3', '11', '1.7', '49']);
        return this.#make(`${same.text} ÷ ${by} × ${by}`, same.size, kind, 'term');
      }
      case 4:
        if (kind === 'number') {
          const k = c.of([...MEASURED, 'money', ...COUNTS] as Kind[]);
          return over(left(k), right(k));
        }
        return this.#priced(kind, depth) ?? times(left(kind), 'times', right('number'));
      case 5:
        if (kind === 'area') return times(left('length'), c.of(['by', 'times', '×']), right('length'));
        if (kind === 'volume') return times(left('area'), c.of(['by', 'times']), right('length'));
        if (kind === 'length') return c.in(0.5) ? over(left('area'), right('length')) : over(left('volume'), right('area'));
        return this.#priced(kind, depth) ?? over(left(kind), right('number'));
      default:
        return this.#priced(kind, depth) ?? times(left(kind), 'times', right('number'));
    }
  }

  /** `L at R`, both ways round; null where no rate gives this kind. */
  #priced(kind: Kind, depth: number): Spoken | null {
    const c = this.#c;
    const fits = RATES.flatMap((rate) => {
      const [over, under] = rate.split(' per ') as [Plain, Plain];
      return over === kind ? [{ rate, of: under, divides: false }] : under === kind ? [{ rate, of: over, divides: true }] : [];
    });
    if (fits.length === 0) return null;
    const { rate, of, divides } = c.of(fits);
    const price = this.#at('value', this.#value(rate, 0));
    if (c.in(0.2) && !divides && isCount(of)) {
      // A bare number before `at` takes the noun.
      const count = amount(c, 'number');
      return this.#make(`${count.text} at ${price.text}`, count.size.times(price.size), kind, 'term');
    }
    if (kind === 'money' && isCount(of) && c.in(0.3)) {
      const [count, one] = [this.#slot(of, 0), amount(c, 'money')];
      return this.#make(`${count.text} at ${one.text}${c.of([' each', ''])}`, count.size.times(one.size), kind, 'term');
    }
    const left = c.in(0.25) && depth > 1 ? this.#sharedOut(of, depth - 1) : this.#at('term', this.#term(of, depth - 1));
    const size = divides ? left.size.by(price.size) : left.size.times(price.size);
    if (!divides && c.in(0.15) && left.hold !== 'sum') {
      return this.#make(`${left.text} times ${price.text}`, size, kind, 'term');
    }
    // A sum that ends in a share is priced as a whole; from there on it is a sum.
    return this.#make(`${left.text} at ${price.text}`, size, kind, left.hold === 'sum' ? 'sum' : 'term');
  }

  /** `volume plus 10%`, to be priced as a whole. */
  #sharedOut(kind: Plain, depth: number): Spoken {
    const of = this.#at('term', this.#term(kind, depth));
    if (isBareWhole(of)) throw new NotSaid();
    const share = this.#slot('share', 0);
    return this.#make(`${of.text} plus ${share.text}`, of.size.times(ONE.plus(share.size)), kind, 'sum');
  }

  #value(kind: Kind, depth: number): Spoken {
    const c = this.#c;
    if (depth <= 0 || c.in(0.5)) return this.#slot(kind, depth);
    if (c.in(0.15) && kind !== 'share') {
      const of = this.#at('value', this.#value(kind, depth - 1));
      const shares = this.#names.filter((n) => n.kind === 'share' && !/total$/i.test(n.say));
      if (shares.length > 0 && c.in(0.4)) {
        const { say, size } = c.of(shares);
        return this.#make(`${say} ${c.of(['of', 'on'])} ${of.text}`, size.times(of.size), kind, 'value');
      }
      const [words, share] = c.in(0.4)
        ? c.of([['half of', '1/2'], ['3/4 of', '3/4'], ['1/3 of', '1/3']] as const)
        : ([`${c.whole(1, 90)}% of`, ''] as const);
      const part = share === '' ? Exact.of(words.slice(0, -4)).by(Exact.of(100)) : Exact.of(share);
      return this.#make(`${words} ${of.text}`, of.size.times(part), kind, 'value');
    }
    if (kind === 'share') return this.#whatShare();
    const odd = c.in(0.25) ? this.#odd(kind) : null;
    if (odd) return odd;
    if (kind === 'area' && c.in(0.4)) {
      const side = this.#slot('length', depth - 1);
      return this.#make(`${side.text} squared`, side.size.times(side.size), kind, 'value');
    }
    if (kind === 'length' && c.in(0.3)) return this.#long();
    if (kind.startsWith('count ') && !kind.includes(' per ') && c.in(0.7)) return this.#counted(kind.slice(6), depth - 1);
    return this.#bracket(c.in(0.3) ? this.#condition(kind, depth - 1, 'inside') : this.#closed(kind, depth - 1));
  }

  #slot(kind: Kind, depth: number): Spoken {
    const c = this.#c;
    const known = this.#names.filter((n) => n.kind === kind);
    if (known.length > 0 && c.in(0.5)) {
      const { say, size } = c.of(known);
      return this.#make(say, size, kind, 'slot');
    }
    if (depth > 0 && c.in(0.25)) return this.#bracket(this.#closed(kind, depth - 1));
    const { text, size } = amount(c, kind);
    return this.#make(text, size, kind, 'slot');
  }

  /** Ways to say it that only this kind has. */
  #odd(kind: Kind): Spoken | null {
    const c = this.#c;
    if (kind === 'number') {
      const [a, b] = [writtenShare(c), writtenShare(c)];
      return this.#make(`(1 − ${a.text} − ${b.text})`, ONE.minus(a.size).minus(b.size), kind, 'slot');
    }
    if (kind === 'length') {
      const [run, fall] = [this.#slot('length', 0), amount(c, 'length')];
      const unit = c.of(WRITTEN['length'] ?? []);
      const text = `(${run.text} at ${fall.text} per ${c.of(unit.one)})`;
      return this.#make(text, run.size.times(fall.size).by(unit.size), kind, 'slot');
    }
    if (kind === 'area') {
      const [a, b] = [c.whole(1, 60), c.whole(1, 60)];
      const [text, size] = c.of([[`${a}' x ${b}'`, '304.8'], [`${a} m x ${b} m`, '1000'], [`${a} ft x ${b} ft`, '304.8']] as const);
      return this.#make(text, Exact.of(a * b).times(Exact.of(size)).times(Exact.of(size)), kind, 'slot');
    }
    if (kind === 'volume') {
      const side = this.#slot('length', 0);
      return this.#make(`${side.text} cubed`, side.size.times(side.size).times(side.size), kind, 'value');
    }
    if (kind === 'time') {
      const [hours, minutes] = [c.whole(1, 12), c.whole(10, 59)];
      const text = c.of([`${hours}:${minutes} hours`, `${hours} h ${minutes} min`, `${hours}h${minutes}`]);
      return this.#make(text, Exact.of(hours * 60 + minutes).times(Exact.of(60)), kind, 'slot');
    }
    if (kind === 'money') {
      const [people, hours, pay] = [c.whole(1, 9), this.#slot('time', 0), c.whole(10, 90)];
      const text = `(${people} people times ${hours.text} at $${pay} per hour${c.of(['', ' per person'])})`;
      const size = hours.size.times(Exact.of(people * pay * 100)).by(Exact.of(3600));
      return this.#make(text, size, kind, 'slot');
    }
    const of = this.#slot(kind, 0);
    return this.#make(`(${c.of(['-', '−'])}${of.text})`, ZERO.minus(of.size), kind, 'slot');
  }

  #whatShare(): Spoken {
    const kind = this.#c.of(['money', 'area', 'length'] as const);
    const [of, whole] = [this.#slot(kind, 0), this.#slot(kind, 0)];
    return this.#bracket(this.#make(`what share ${of.text} is of ${whole.text}`, of.size.by(whole.size), 'share', 'value'));
  }

  #long(): Spoken {
    const c = this.#c;
    if (c.in(0.5)) {
      const by = c.whole(1, 9);
      const unit = c.of([['in', '25.4'], ['ft', '304.8'], ['m', '1000']] as const);
      const [a, b, far] = c.of([[3, 4, 5], [5, 12, 13], [8, 15, 17]] as const);
      const size = Exact.of(far * by).times(Exact.of(unit[1]));
      return this.#make(`diagonal of ${a * by} ${unit[0]} and ${b * by} ${unit[0]}`, size, 'length', 'value');
    }
    const [n, wide, run] = [c.whole(1, 30), this.#slot('length', 0), this.#slot('length', 0)];
    const size = run.size.minus(wide.size.times(Exact.of(n))).by(Exact.of(n + 1));
    return this.#make(`even gap for ${n} posts of ${wide.text} across ${run.text}`, size, 'length', 'value');
  }

  /** Packs, pieces, spacing, fewest: whole things. */
  #counted(one: string, depth: number): Spoken {
    const c = this.#c;
    const many = THINGS.get(one) ?? one;
    const kind: Kind = `count ${one}`;
    switch (c.whole(0, 4)) {
      case 0: {
        const of = this.#closed(c.of([...MEASURED, 'count riser'] as Kind[]), depth);
        const holds = c.in(0.3) ? this.#slot(of.kind, 0) : amount(c, of.kind);
        const comma = commaBeforeIn(of, c);
        const to = of.size.by(positive(holds.size)).up();
        return this.#bracket(this.#make(`${of.text}${comma}in ${many} of ${holds.text}`, to, kind, 'closed'));
      }
      case 1: {
        const of = this.#closed('length', depth);
        const size = c.whole(1, 20);
        const comma = commaBeforeIn(of, c);
        const to = of.size.by(Exact.of(size).times(Exact.of('304.8'))).up();
        return this.#bracket(this.#make(`${of.text}${comma}in ${size} ft ${many}`, to, kind, 'closed'));
      }
      case 2: {
        const [count, long, stock] = [c.whole(1, 40), this.#slot('length', 0), c.whole(6, 20)];
        const each = Exact.of(stock).times(Exact.of('304.8')).by(positive(long.size)).down();
        const to = Exact.of(count).by(positive(each)).up();
        return this.#make(`${count} pieces of ${long.text} from ${stock} ft ${many}`, to, kind, 'value');
      }
      case 3: {
        const [step, run] = [this.#slot('length', 0), this.#slot('length', depth)];
        const spaces = positive(run.size).by(positive(step.size)).up();
        const [ends, more] = c.of([['', 1], [', one end', 0], [', neither end', -1], [', both ends', 1], ['around', 0]] as const);
        const text = `${many} every ${step.text} ${ends === 'around' ? 'around' : 'along'} ${run.text}${ends === 'around' ? '' : ends}`;
        return this.#bracket(this.#make(text, atLeast(spaces.plus(Exact.of(more)), ZERO), kind, 'value'));
      }
      default:
        return this.#fewest(many, kind);
    }
  }

  /** Found by trying one after another, which is slow and can't be wrong. */
  #fewest(many: string, kind: Kind): Spoken {
    const c = this.#c;
    const [wide, run, gap] = [amount(c, 'length'), this.#slot('length', 0), amount(c, 'length')];
    const under = c.in(0.6);
    for (let n = 0n; n < 600n; n++) {
      const left = run.size.minus(wide.size.times(new Exact(n))).by(new Exact(n + 1n));
      if (left.compare(gap.size) < (under ? 0 : 1)) {
        const words = `${wide.text} across ${run.text} with gaps ${under ? 'under' : 'at most'} ${gap.text}`;
        return this.#make(`fewest ${many} of ${words}`, new Exact(n), kind, 'value');
      }
    }
    throw new NotSaid();
  }

  #list(kind: Kind, depth: number): Spoken {
    const c = this.#c;
    const item = (): Spoken => (kind === 'money' && c.in(0.3) ? this.#pricedItem() : this.#slot(kind, depth - 1));
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
      const [a, b] = [this.#at('sum', this.#sum(kind, depth - 1)), this.#at('sum', this.#sum(kind, depth - 1))];
      const more = c.in(0.5);
      const text = `${a.text} or ${b.text}, whichever is ${more ? 'greater' : 'less'}`;
      const picked = a.size.compare(b.size) >= 0 === more ? a.size : b.size;
      return this.#make(text, picked, kind, 'open');
    }
    return this.#make(said, size, kind, 'open');
  }

  /** `3 bags at $6.48 per bag`, an item that a list takes without brackets. */
  #pricedItem(): Spoken {
    const of = this.#c.of([...MEASURED, ...COUNTS]);
    const [count, price] = [this.#slot(of, 0), this.#slot(`money per ${of}`, 0)];
    return this.#make(`${count.text} at ${price.text}`, count.size.times(price.size), 'money', 'term');
  }

  /** With brackets around it, if it holds together less closely than that. */
  #at(hold: Hold, said: Spoken): Spoken {
    return LOOSENESS.indexOf(said.hold) <= LOOSENESS.indexOf(hold) ? said : this.#bracket(said);
  }

  #bracket(said: Spoken): Spoken {
    return this.#make(`(${said.text})`, said.size, said.kind, 'slot');
  }

  #make(text: string, size: Exact, kind: Kind, hold: Hold): Spoken {
    return { text, size, kind, hold };
  }
}

/** Right after a number `in` would be inches. */
function commaBeforeIn(of: Spoken, c: Chance): string {
  return of.hold === 'open' || /[\d½]$/.test(of.text) || c.in(0.5) ? ', ' : ' ';
}

/** Below a half; written in whole percents, with a point, or with a fraction. */
function writtenShare(c: Chance): { text: string; size: Exact } {
  const whole = c.whole(1, 40);
  const [more, size] = c.of<readonly [string, string]>([['', '0'], ['.5', '1/2'], [' 1/4', '1/4']]);
  return { text: `${whole}${more}%`, size: Exact.of(whole).plus(Exact.of(size)).by(Exact.of(100)) };
}

function isCount(kind: Kind): boolean {
  return kind.startsWith('count ');
}

/** After a bare 1 or 100%, in brackets or not, shares are taken from that whole. */
function isBareWhole(said: Spoken): boolean {
  return said.kind === 'number' || said.kind === 'share' ? /^\(*(1|100%)(?![\d.,/½])/.test(said.text) : false;
}

function positive(size: Exact): Exact {
  if (size.compare(ZERO) <= 0) throw new NotSaid();
  return size;
}

function atLeast(a: Exact, b: Exact): Exact {
  return a.compare(b) >= 0 ? a : b;
}

function rounded(size: Exact, way: 'up' | 'down' | ''): Exact {
  return way === 'up' ? size.up() : way === 'down' ? size.down() : size.nearest();
}
