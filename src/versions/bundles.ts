// Changes that only work together: a new cell and the formula that names it, a price per bag and the formula that
// began to count bags. What names a cell that only one version has goes with that cell; the rest is found by trying:
// where a mixture of the two versions leaves a line of the costs without a value that it has in both, the change made
// last belongs to another one, and the two become one.
import type { CellId } from '../language/tree.ts';
import type { Game } from './effects.ts';
import type { Needs } from './needs.ts';
import type { World } from './world.ts';

/** How far up from a cell at fault its changed needs are looked for. */
const MOST_LOOKED_AT = 400;

export class Bundles implements Game {
  readonly #world: World;
  readonly #needs: Needs;
  /** Which bundle each switch is in, by its first. */
  readonly #home: number[];
  #bundles: readonly (readonly number[])[];
  /** Cells that were worked when each bundle was first switched. */
  readonly #reach = new Map<number, number>();
  #last = -1;

  constructor(world: World, needs: Needs) {
    this.#world = world;
    this.#needs = needs;
    this.#home = world.switches.map((_, i) => i);
    this.#bundles = this.#gathered();
    for (const [one, other] of needs.together) this.#joinCells(one, other);
    for (const on of [true, false]) this.#walk(on);
    this.#bundles = this.#gathered();
  }

  /** Those that reach least come first. */
  get all(): readonly (readonly number[])[] {
    return this.#bundles;
  }

  toggle(index: number): void {
    const bundle = this.#bundles[index];
    this.#last = bundle[0];
    this.#world.set(bundle, !this.#world.isOn(bundle[0]));
  }

  total(): bigint | null {
    return this.#world.lacking.size > 0 ? null : this.#world.total;
  }

  /** After a mixture that does not work: joins what belongs together and stands at the start again. */
  joinLast(): void {
    const before = this.#bundles.length;
    this.#join(this.#last, this.#candidates(), 'any');
    this.#world.setAll(false);
    this.#bundles = this.#gathered();
    if (this.#bundles.length === before) this.joinAll();
  }

  joinAll(): void {
    this.#home.fill(0);
    this.#world.setAll(false);
    this.#bundles = this.#gathered();
  }

  /** From one end to the other; what is met on the way that works only with what is still to come is joined with it. */
  #walk(on: boolean): void {
    const world = this.#world;
    for (const first of world.switches.keys()) {
      if (world.isOn(first) === on) continue;
      const members = this.#members(first);
      world.set(members, on);
      if (on) this.#reach.set(first, world.reach);
      while (world.lacking.size > 0) {
        const left = this.#candidates().filter((i) => world.isOn(i) !== on);
        const joined = this.#join(first, left, 'left');
        if (!joined)
          this.#joinAmong(
            first,
            [...world.switches.keys()].filter((i) => world.isOn(i) !== on),
          );
        world.set(this.#members(first), on);
      }
    }
  }

  /** Joins a bundle with the one whose switching mends most, or with all of the candidates. False: there are none. */
  #join(first: number, candidates: readonly number[], how: 'left' | 'any'): boolean {
    const world = this.#world;
    const others = [...new Set(candidates.map((i) => this.#home[i]))].filter(
      (home) => home !== this.#home[first],
    );
    if (others.length === 0) return false;
    const lacking = world.lacking.size;
    for (const home of others) {
      const members = this.#members(home);
      const was = world.isOn(members[0]);
      world.set(members, !was);
      const better = world.lacking.size < lacking;
      if (how === 'any' || !better) world.set(members, was);
      if (!better) continue;
      this.#joinAmong(first, [home]);
      return true;
    }
    this.#joinAmong(first, others);
    return true;
  }

  #joinCells(one: CellId, other: CellId): void {
    const [first, ...others] = [one, other].flatMap((cell) => this.#world.switchesOf(cell));
    if (first !== undefined) this.#joinAmong(first, others);
  }

  #joinAmong(first: number, others: readonly number[]): void {
    const homes = new Set([first, ...others].map((i) => this.#home[i]));
    const home = Math.min(...homes);
    this.#home.forEach((old, i) => {
      if (homes.has(old)) this.#home[i] = home;
    });
  }

  #members(index: number): readonly number[] {
    const home = this.#home[index];
    return this.#home.flatMap((each, i) => (each === home ? [i] : []));
  }

  #gathered(): readonly (readonly number[])[] {
    const bundles = new Map<number, number[]>();
    this.#home.forEach((home, i) => {
      const bundle = bundles.get(home);
      if (bundle) bundle.push(i);
      else bundles.set(home, [i]);
    });
    const reach = (bundle: readonly number[]): number =>
      bundle.reduce((sum, i) => sum + (this.#reach.get(i) ?? 0), 0);
    return [...bundles.values()].sort((a, b) => reach(a) - reach(b) || a[0] - b[0]);
  }

  /**
   * Switches of the cells at fault under the lines that lack a value, then of those on the way from there to the
   * lines, then of what the cells at fault need, near to far.
   */
  #candidates(): readonly number[] {
    const world = this.#world;
    const { roots, way } = lackIn(world);
    const found = [...roots, ...way].flatMap((id) => world.switchesOf(id));
    const seen = new Set<CellId>();
    let next = [...roots];
    while (next.length > 0 && seen.size < MOST_LOOKED_AT) {
      const further: CellId[] = [];
      for (const id of next) {
        if (seen.has(id)) continue;
        seen.add(id);
        found.push(...world.switchesOf(id));
        further.push(...this.#needs.of(id));
      }
      next = further;
    }
    world.switches.forEach((each, i) => {
      if (each.kind === 'part') found.push(i);
    });
    return found;
  }
}

/** Where the lack begins: cells at fault themselves, or not known; and the cells between those and the lines. */
function lackIn(world: World): { roots: ReadonlySet<CellId>; way: ReadonlySet<CellId> } {
  const roots = new Set<CellId>();
  const way = new Set<CellId>();
  const left = [...world.lacking];
  for (let id = left.pop(); id !== undefined; id = left.pop()) {
    if (way.has(id)) continue;
    way.add(id);
    const state = world.state(id);
    if (!state) continue;
    const { outcome, input } = state;
    const owner = input.inTable ?? id;
    switch (outcome.kind) {
      case 'fault':
        roots.add(owner);
        break;
      case 'value':
        left.push(...outcome.leftOut);
        break;
      case 'unknown':
      case 'waiting':
        if (outcome.for.includes(id)) roots.add(owner);
        left.push(...outcome.for);
    }
  }
  return { roots, way };
}
