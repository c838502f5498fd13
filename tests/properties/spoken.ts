// What an estimator might say: formulas as text, each with what it comes to, worked out beside it by exact fractions.
// Built from language.md alone. Whatever stands here in brackets would be taken otherwise without them.
import type { Chance } from './chance.ts';
import { Exact, ONE } from './exact.ts';
import type { Kind, Plain } from './measures.ts';
import {
  MEASURED,
  spoken,
  bracketed,
  held,
  isCount,
  isBareWhole,
  NotSaid,
  COUNTS,
  RATES,
  type Spoken,
  type Named,
  type Answered,
} from './saying.ts';
import { logic, condition } from './spoken-checks.ts';
import { clause } from './spoken-clauses.ts';
import { odd, whatShare, long, list } from './spoken-phrases.ts';
import { counted } from './spoken-things.ts';
import { amount } from './written-amounts.ts';

/** Longer ones are hard to judge by eye when they come out wrong. */
const LONGEST = 240;
/** A volume over a bare 27 is not worked but asked about: was it cubic feet that were to be cubic yards? */
const OVER_27 = /(÷|\/|divided by|over) \(*27(?![\d½]|[.,]\d)/;
const LABELS = [
  'waste',
  'breakage',
  'overhead',
  'profit',
  'tax',
  'discount',
  'contingency',
  'markup',
];

export class Speaker {
  readonly c: Chance;
  readonly names: readonly Named[];
  readonly answers: readonly Answered[];

  constructor(c: Chance, names: readonly Named[], answers: readonly Answered[]) {
    this.c = c;
    this.names = names;
    this.answers = answers;
  }

  /** A whole formula of this kind. */
  formula(kind: Kind): Spoken {
    for (;;) {
      try {
        const said = this.c.in(0.08) ? condition(this, kind, 2, 'outside') : this.closed(kind, 3);
        const digits = String(said.size.over).length + String(said.size.under).length;
        if (digits < 400 && said.text.length < LONGEST && !OVER_27.test(said.text)) return said;
      } catch (e) {
        if (!(e instanceof NotSaid || e instanceof RangeError)) throw e;
      }
    }
  }

  /** A yes or no. */
  check(): { readonly text: string; readonly holds: boolean } {
    for (;;) {
      try {
        const said = logic(this, 2);
        if (!OVER_27.test(said.text)) return said;
      } catch (e) {
        if (!(e instanceof NotSaid || e instanceof RangeError)) throw e;
      }
    }
  }

  /** A sum and clauses, each of which works on all before it. */
  closed(kind: Kind, depth: number): Spoken {
    let said = depth > 0 && this.c.in(0.1) ? list(this, kind, depth) : this.sum(kind, depth);
    for (let more = this.c.whole(0, depth); more > 0; more--) said = clause(this, said, depth);
    return said;
  }

  sum(kind: Kind, depth: number): Spoken {
    const c = this.c;
    let said = this.term(kind, depth);
    for (let more = c.whole(0, Math.min(2, depth)); more > 0; more--) {
      if (c.in(0.35) && !isBareWhole(said)) {
        const share = this.slot('share', 0);
        const label = share.text.endsWith('%') && c.in(0.5) ? ` ${c.of(LABELS)}` : '';
        const [word, added] = c.of([
          ['plus', 1],
          ['with', 1],
          ['+', 1],
          ['less', -1],
          ['minus', -1],
        ] as const);
        // What comes with a discount is less by it.
        const sign = word === 'with' && label === ' discount' ? -1 : added;
        const to =
          kind === 'share'
            ? said.size.plus(share.size.times(Exact.of(sign)))
            : said.size.times(ONE.plus(share.size.times(Exact.of(sign))));
        said = spoken(`${said.text} ${word} ${share.text}${label}`, to, kind, 'sum');
        continue;
      }
      if ((kind === 'money' || (isCount(kind) && !kind.includes(' per '))) && c.in(0.15)) {
        // A bare number beside a count is that count, beside money dollars.
        const bare = amount(c, 'number');
        const worth = kind === 'money' ? bare.size.times(Exact.of(100)) : bare.size;
        said = spoken(`${said.text} plus ${bare.text}`, said.size.plus(worth), kind, 'sum');
        continue;
      }
      const counted = kind === 'length' && c.in(0.15);
      const other = counted
        ? this.countedLength()
        : kind === 'share'
          ? this.slot(kind, 0)
          : held('term', this.term(kind, depth - 1));
      const minus = c.in(0.4);
      const to = minus ? said.size.minus(other.size) : said.size.plus(other.size);
      said = spoken(
        `${said.text} ${minus ? c.of(['minus', '-', '−']) : c.of(['plus', '+'])} ${other.text}`,
        to,
        kind,
        'sum',
      );
    }
    return said;
  }

  /** `12 joists times 10 ft`: in a sum the joists drop out. */
  countedLength(): Spoken {
    const [count, length] = [this.slot(this.c.of(COUNTS), 0), this.slot('length', 0)];
    return spoken(
      `${count.text} times ${length.text}`,
      count.size.times(length.size),
      'length',
      'term',
    );
  }

  term(kind: Kind, depth: number): Spoken {
    const c = this.c;
    if (depth <= 0 || c.in(0.25)) return this.value(kind, depth);
    const left = (k: Kind): Spoken =>
      held('term', c.in(0.5) ? this.term(k, depth - 1) : this.value(k, depth - 1));
    const right = (k: Kind): Spoken => held('value', this.value(k, depth - 1));
    const times = (a: Spoken, word: string, b: Spoken): Spoken =>
      spoken(`${a.text} ${word} ${b.text}`, a.size.times(b.size), kind, 'term');
    const over = (a: Spoken, b: Spoken): Spoken =>
      spoken(
        `${a.text} ${c.of(['divided by', '÷', '/', 'over'])} ${b.text}`,
        a.size.by(b.size),
        kind,
        'term',
      );
    if (kind === 'share')
      return c.in(0.5)
        ? times(left('share'), 'times', right('number'))
        : over(left('share'), right('number'));
    const [above, below] = kind.split(' per ') as [Plain, Plain | undefined];
    if (below !== undefined && (above === 'money' || isCount(below)) && c.in(0.3)) {
      return over(left(above), this.slot(below, 0));
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
        return spoken(`${same.text} ÷ ${by} × ${by}`, same.size, kind, 'term');
      }
      case 4:
        if (kind === 'number') {
          const k = c.of([...MEASURED, 'money', ...COUNTS] as Kind[]);
          return over(left(k), right(k));
        }
        return this.priced(kind, depth) ?? times(left(kind), 'times', right('number'));
      case 5:
        if (kind === 'area')
          return times(left('length'), c.of(['by', 'times', '×']), right('length'));
        if (kind === 'volume') return times(left('area'), c.of(['by', 'times']), right('length'));
        if (kind === 'length')
          return c.in(0.5)
            ? over(left('area'), right('length'))
            : over(left('volume'), right('area'));
        return this.priced(kind, depth) ?? over(left(kind), right('number'));
      default:
        return this.priced(kind, depth) ?? times(left(kind), 'times', right('number'));
    }
  }

  /** `L at R`, both ways round; null where no rate gives this kind. */
  priced(kind: Kind, depth: number): Spoken | null {
    const c = this.c;
    const fits = RATES.flatMap((rate) => {
      const [over, under] = rate.split(' per ') as [Plain, Plain];
      return over === kind
        ? [{ rate, of: under, divides: false }]
        : under === kind
          ? [{ rate, of: over, divides: true }]
          : [];
    });
    if (fits.length === 0) return null;
    const { rate, of, divides } = c.of(fits);
    const price = held('value', this.value(rate, 0));
    if (c.in(0.2) && !divides && isCount(of)) {
      // A bare number before `at` takes the noun.
      const count = amount(c, 'number');
      return spoken(`${count.text} at ${price.text}`, count.size.times(price.size), kind, 'term');
    }
    if (kind === 'money' && isCount(of) && c.in(0.3)) {
      const [count, one] = [this.slot(of, 0), amount(c, 'money')];
      return spoken(
        `${count.text} at ${one.text}${c.of([' each', ''])}`,
        count.size.times(one.size),
        kind,
        'term',
      );
    }
    const left =
      c.in(0.25) && depth > 1
        ? this.sharedOut(of, depth - 1)
        : held('term', this.term(of, depth - 1));
    const size = divides ? left.size.by(price.size) : left.size.times(price.size);
    if (!divides && c.in(0.15) && left.hold !== 'sum') {
      return spoken(`${left.text} times ${price.text}`, size, kind, 'term');
    }
    // A sum that ends in a share is priced as a whole; from there on it is a sum.
    return spoken(
      `${left.text} at ${price.text}`,
      size,
      kind,
      left.hold === 'sum' ? 'sum' : 'term',
    );
  }

  /** `volume plus 10%`, to be priced as a whole. */
  sharedOut(kind: Plain, depth: number): Spoken {
    const of = held('term', this.term(kind, depth));
    if (isBareWhole(of)) throw new NotSaid();
    const share = this.slot('share', 0);
    return spoken(
      `${of.text} plus ${share.text}`,
      of.size.times(ONE.plus(share.size)),
      kind,
      'sum',
    );
  }

  value(kind: Kind, depth: number): Spoken {
    const c = this.c;
    if (depth <= 0 || c.in(0.5)) return this.slot(kind, depth);
    if (c.in(0.15) && kind !== 'share') {
      const of = held('value', this.value(kind, depth - 1));
      const shares = this.names.filter((n) => n.kind === 'share');
      if (shares.length > 0 && c.in(0.4)) {
        const { say, size } = c.of(shares);
        // `total of` and `sum of` open a list, whatever cells are called.
        const of_ = /(total|sum)$/i.test(say) ? 'on' : c.of(['of', 'on']);
        return spoken(`${say} ${of_} ${of.text}`, size.times(of.size), kind, 'value');
      }
      const [words, share] = c.in(0.4)
        ? c.of([
            ['half of', '1/2'],
            ['3/4 of', '3/4'],
            ['1/3 of', '1/3'],
          ] as const)
        : ([`${c.whole(1, 90)}% of`, ''] as const);
      const part = share === '' ? Exact.of(words.slice(0, -4)).by(Exact.of(100)) : Exact.of(share);
      return spoken(`${words} ${of.text}`, of.size.times(part), kind, 'value');
    }
    if (kind === 'share') return whatShare(this);
    const own = c.in(0.25) ? odd(this, kind) : null;
    if (own) return own;
    if (kind === 'area' && c.in(0.4)) {
      const side = this.slot('length', depth - 1);
      return spoken(`${side.text} squared`, side.size.times(side.size), kind, 'value');
    }
    if (kind === 'length' && c.in(0.3)) return long(this);
    if (kind.startsWith('count ') && !kind.includes(' per ') && c.in(0.7))
      return counted(this, kind.slice(6), depth - 1);
    return bracketed(
      c.in(0.3) ? condition(this, kind, depth - 1, 'inside') : this.closed(kind, depth - 1),
    );
  }

  slot(kind: Kind, depth: number): Spoken {
    const c = this.c;
    const known = this.names.filter((n) => n.kind === kind);
    if (known.length > 0 && c.in(0.5)) {
      const { say, size } = c.of(known);
      return spoken(say, size, kind, 'slot');
    }
    if (depth > 0 && c.in(0.25)) return bracketed(this.closed(kind, depth - 1));
    const { text, size } = amount(c, kind);
    return spoken(text, size, kind, 'slot');
  }
}
