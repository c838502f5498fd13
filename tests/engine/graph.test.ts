import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Graph, type Slot } from '../../src/engine/graph.ts';

/** Whole numbers in cells called a, b, c …; a cell works the sum of what it needs plus its own number. */
class Sums {
  readonly ran: string[] = [];
  readonly graph: Graph;
  readonly #slots = new Map<string, Slot>();
  readonly #names: string[] = [];
  readonly #own: number[] = [];
  readonly #then: ((sum: number) => number)[] = [];
  readonly values: number[] = [];

  constructor() {
    this.graph = new Graph((slot) => this.#run(slot));
  }

  #run(slot: Slot): boolean {
    this.ran.push(this.#names[slot] ?? '?');
    const before = this.values[slot];
    let sum = this.#own[slot] ?? 0;
    for (const need of this.graph.needsOf(slot)) sum += this.values[need] ?? 0;
    this.values[slot] = this.graph.inCircle(slot) ? NaN : (this.#then[slot]?.(sum) ?? sum);
    return !Object.is(before, this.values[slot]);
  }

  slot(name: string): Slot {
    let slot = this.#slots.get(name);
    if (slot === undefined) {
      slot = this.graph.add();
      this.#slots.set(name, slot);
      this.#names[slot] = name;
      this.#own[slot] = 0;
      this.graph.touch(slot);
    }
    return slot;
  }

  /** `c: a b` — c needs a and b. Several lines are told at once. */
  tell(lines: string): this {
    const edges = lines
      .trim()
      .split('\n')
      .map((line) => line.split(':').map((side) => side.trim()))
      .map(([name = '', needs = '']) => {
        const slot = this.slot(name);
        this.graph.touch(slot);
        return [slot, needs === '' ? [] : needs.split(/\s+/).map((n) => this.slot(n))] as const;
      });
    this.graph.connect(edges);
    return this;
  }

  then(name: string, work: (sum: number) => number): this {
    this.#then[this.slot(name)] = work;
    return this;
  }

  set(name: string, own: number): this {
    this.#own[this.slot(name)] = own;
    this.graph.touch(this.slot(name));
    return this;
  }

  /** Which cells ran, in order. */
  settle(): string {
    this.ran.length = 0;
    this.graph.settle();
    return this.ran.join(' ');
  }

  remove(name: string): this {
    this.graph.remove(this.slot(name));
    this.#slots.delete(name);
    return this;
  }

  value(name: string): number {
    return this.values[this.slot(name)] ?? NaN;
  }

  path(name: string): string {
    return (this.graph.pathAround(this.slot(name)) ?? []).map((s) => this.#names[s]).join(' ');
  }

  circle(name: string): string {
    return [...(this.graph.circleOf(this.slot(name)) ?? [])]
      .map((s) => this.#names[s])
      .sort()
      .join(' ');
  }

  height(name: string): number {
    return this.graph.heightOf(this.slot(name));
  }
}

describe('a change', () => {
  //   a
  //  / \
  // b   c
  //  \ /
  //   d
  test('a diamond works its tip once', () => {
    const sums = new Sums().tell('a:\nb: a\nc: a\nd: b c');
    sums.settle();
    expect(sums.set('a', 1).settle()).toBe('a b c d');
    expect(sums.value('d')).toBe(2);
  });

  test('something new that comes in amid a change is worked at once, and the rest of the change after it', () => {
    const sums = new Sums().tell('a:\nb: a\nc: a\nd: b c');
    sums.settle();
    sums.then('b', (sum) => {
      if (sum === 1) {
        // As a table of the trade comes in that a formula is the first to name.
        sums.tell('new:\nmore: new');
        sums.graph.settle();
      }
      return sum;
    });
    expect(sums.set('a', 1).settle()).toBe('a b new more c d');
    expect(sums.value('d')).toBe(2);
  });

  // a ─ b ─ c ─ d, and d needs a too
  test('a short cut beside a long way does not make the end run early', () => {
    const sums = new Sums().tell('a:\nd: a c\nc: b\nb: a');
    sums.settle();
    expect(sums.set('a', 1).settle()).toBe('a b c d');
    expect(sums.value('d')).toBe(2);
  });

  test('a chain runs from the change on, and nothing before it', () => {
    const sums = new Sums().tell('a:\nb: a\nc: b\nd: c');
    sums.settle();
    expect(sums.set('c', 5).settle()).toBe('c d');
  });

  // a ─ b (to whole tens) ─ c ─ d
  test('what rounding absorbs goes no further', () => {
    const sums = new Sums().tell('a:\nb: a\nc: b\nd: c').then('b', (n) => Math.ceil(n / 10) * 10);
    sums.set('a', 3).settle();
    expect(sums.set('a', 7).settle()).toBe('a b');
    expect(sums.set('a', 11).settle()).toBe('a b c d');
    expect(sums.value('d')).toBe(20);
  });

  test('a change that changes nothing wakes nobody', () => {
    const sums = new Sums().tell('a:\nb: a');
    sums.settle();
    expect(sums.set('a', 0).settle()).toBe('a');
    expect(sums.settle()).toBe('');
  });

  test('a fan runs each of its ends once, in the order they stand', () => {
    const sums = new Sums().tell('rate:\na: rate\nb: rate\nc: rate\nsum: a b c');
    sums.settle();
    expect(sums.set('rate', 2).settle()).toBe('rate a b c sum');
    expect(sums.value('sum')).toBe(6);
  });

  test('two changes at once run what both reach once', () => {
    const sums = new Sums().tell('a:\nb:\nc: a b\nd: c');
    sums.settle();
    sums.set('a', 1).set('b', 2);
    expect(sums.settle()).toBe('a b c d');
  });

  test('one branch that stays the same does not keep the other from running', () => {
    const sums = new Sums().tell('a:\nb: a\nc: a\nd: b c').then('b', () => 0);
    sums.settle();
    expect(sums.set('a', 1).settle()).toBe('a b c d');
    expect(sums.value('d')).toBe(1);
  });
});

describe('edges', () => {
  test('re-pointing a cell puts the heights above it right', () => {
    const sums = new Sums().tell('a:\nb: a\nc: b\nx:\ny: x\nz: y');
    sums.tell('x: c').settle();
    expect(['a', 'b', 'c', 'x', 'y', 'z'].map((n) => sums.height(n))).toEqual([0, 1, 2, 3, 4, 5]);
    expect(sums.set('a', 1).settle()).toBe('a b c x y z');
    sums.tell('x:');
    expect(['x', 'y', 'z'].map((n) => sums.height(n))).toEqual([0, 1, 2]);
    sums.settle();
    expect(sums.set('a', 2).settle()).toBe('a b c');
  });

  test('turning two cells round again and again does not let heights grow', () => {
    const sums = new Sums().tell('a:\nb: a');
    for (let i = 0; i < 50; i++) {
      sums.tell('b:').tell('a: b').settle();
      sums.tell('a:').tell('b: a').settle();
    }
    expect(sums.height('b')).toBe(1);
    expect(sums.height('a')).toBe(0);
  });

  test('a removed cell makes room for the next one', () => {
    const sums = new Sums().tell('a:\nb: a');
    sums.settle();
    const slot = sums.slot('b');
    sums.remove('b');
    expect(sums.slot('c')).toBe(slot);
    expect(sums.tell('c: a').settle()).toBe('c');
    expect(sums.set('a', 4).settle()).toBe('a c');
  });

  test('removing a cell that others need is a mistake of the program', () => {
    const sums = new Sums().tell('a:\nb: a');
    expect(() => sums.remove('a')).toThrow(/need/);
  });
});

describe('circles', () => {
  test('a circle is kept, flagged and named along its path; the rest goes on', () => {
    const sums = new Sums().tell('a:\nb: a\nc: b\nd: c\nother: a');
    sums.settle();
    sums.tell('b: d a').set('a', 1);
    expect(sums.settle()).toBe('a b d c other');
    expect(sums.circle('b')).toBe('b c d');
    expect(sums.path('b')).toBe('b d c');
    expect(sums.path('c')).toBe('c b d');
    expect(sums.path('a')).toBe('');
    expect(sums.value('other')).toBe(1);
    expect(sums.value('c')).toBeNaN();
  });

  test('a cell that needs itself is a circle of one', () => {
    const sums = new Sums().tell('a: a');
    expect(sums.settle()).toBe('a');
    expect(sums.path('a')).toBe('a');
    expect(sums.tell('a:').settle()).toBe('a');
    expect(sums.value('a')).toBe(0);
  });

  test('an edit that breaks a circle settles all that was in it', () => {
    const sums = new Sums().tell('a: c\nb: a\nc: b\nd: c');
    sums.set('a', 2).settle();
    expect(sums.value('d')).toBeNaN();
    expect(sums.tell('a:').settle()).toBe('a b c d');
    expect(sums.value('d')).toBe(2);
    expect(sums.circle('a')).toBe('');
    expect(['a', 'b', 'c', 'd'].map((n) => sums.height(n))).toEqual([0, 1, 2, 3]);
  });

  test('members of a circle do not wake one another', () => {
    const sums = new Sums().tell('a: b\nb: a\nx:\na2: x a');
    sums.settle();
    expect(sums.set('a', 1).settle()).toBe('a');
  });

  // Two circles that share nothing, then an edge each way between them.
  test('two circles become one and fall apart again', () => {
    const sums = new Sums().tell('a: b\nb: a\nc: d\nd: c');
    sums.tell('a: b c').settle();
    expect(sums.circle('a')).toBe('a b');
    expect(sums.circle('c')).toBe('c d');
    sums.tell('c: d a');
    expect(sums.circle('d')).toBe('a b c d');
    sums.settle();
    sums.tell('c: a');
    expect(sums.circle('a')).toBe('a b c');
    expect(sums.circle('d')).toBe('');
    expect(sums.settle()).toBe('c a b d');
  });

  test('what a circle needs runs without it; what needs the circle is above it', () => {
    const sums = new Sums().tell('a:\nb: a c\nc: b\nd: c\ne: a');
    sums.settle();
    expect(sums.set('a', 1).settle()).toBe('a b e');
    expect(sums.height('d')).toBe(2);
  });

  test('the path of a circle is the shortest, of equals the first mentioned', () => {
    const sums = new Sums().tell('a: b c\nb: d\nc: d\nd: a e\ne: a');
    expect(sums.path('a')).toBe('a b d');
    expect(sums.path('e')).toBe('e a b d');
  });

  test('what a circle would be can be asked before it is made', () => {
    const sums = new Sums().tell('a:\nb: a\nc: b');
    const way = sums.graph.pathFrom([sums.slot('c')], sums.slot('a'));
    expect(way).toEqual(['c', 'b', 'a'].map((n) => sums.slot(n)));
    expect(sums.graph.pathFrom([sums.slot('a')], sums.slot('c'))).toBeNull();
  });
});

describe('length', () => {
  test('a chain of a hundred thousand cells runs, and its circle is found', () => {
    const sums = new Sums();
    const many = 100_000;
    const slots = Array.from({ length: many }, (_, i) => sums.slot(`c${i}`));
    sums.graph.connect(slots.map((slot, i) => [slot, i === 0 ? [] : [slots[i - 1] ?? 0]] as const));
    sums.settle();
    expect(sums.ran.length).toBe(many);
    sums.set('c0', 1).settle();
    expect(sums.value(`c${many - 1}`)).toBe(1);
    sums.tell(`c0: c${many - 1}`);
    expect(sums.graph.pathAround(slots[5] ?? 0)?.length).toBe(many);
    sums.settle();
    sums.tell('c0:').settle();
    expect(sums.height(`c${many - 1}`)).toBe(many - 1);
  });
});

describe('after any sequence of edits', () => {
  const size = 12;
  const name = (i: number): string => `n${i}`;
  const edit = fc.record({
    cell: fc.nat(size - 1),
    needs: fc.uniqueArray(fc.nat(size - 1), { maxLength: 4 }),
    own: fc.nat(3),
  });
  const batches = fc.array(fc.array(edit, { minLength: 1, maxLength: 3 }), { maxLength: 25 });

  test('values, heights, circles and paths are those of the same graph told at once', () => {
    fc.assert(
      fc.property(batches, fc.boolean(), (all, rough) => {
        const step = new Sums();
        if (rough) for (let i = 0; i < size; i++) step.then(name(i), (sum) => Math.min(sum, 4));
        step.tell(Array.from({ length: size }, (_, i) => `${name(i)}:`).join('\n'));
        step.settle();
        const needs = new Map<number, readonly number[]>();
        const own = new Map<number, number>();
        for (const batch of all) {
          for (const each of batch) {
            needs.set(each.cell, each.needs);
            own.set(each.cell, each.own);
            step.tell(`${name(each.cell)}: ${each.needs.map(name).join(' ')}`);
            step.set(name(each.cell), each.own);
          }
          step.settle();
          expect(new Set(step.ran).size).toBe(step.ran.length);
        }
        const whole = new Sums();
        for (let i = 0; i < size; i++) {
          whole.set(name(i), own.get(i) ?? 0);
          if (rough) whole.then(name(i), (sum) => Math.min(sum, 4));
        }
        const edges = Array.from(
          { length: size },
          (_, i) =>
            [whole.slot(name(i)), (needs.get(i) ?? []).map((n) => whole.slot(name(n)))] as const,
        );
        // Enough edges at once to be put in order anew.
        whole.graph.connect(Array.from({ length: 6 }, () => edges).flat());
        whole.settle();
        for (let i = 0; i < size; i++) {
          const n = name(i);
          expect([n, step.value(n), step.height(n), step.circle(n), step.path(n)]).toEqual([
            n,
            whole.value(n),
            whole.height(n),
            whole.circle(n),
            whole.path(n),
          ]);
        }
      }),
      { numRuns: 300 },
    );
  });
});
