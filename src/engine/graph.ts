// Which cell needs which, and what has to run again after a change. Knows no values: whoever holds
// them hands in `run`, which works one cell and says whether its outcome differs from before.
//
// Every slot has a height: one more than the highest slot it needs, nought if it needs none. What is
// touched runs lowest first, so that a slot runs once, after all that it needs. A slot whose outcome
// stayed the same wakes nobody: what lies behind it isn't even visited.
//
// Edges are told, never watched. Slots that need one another are a circle: they are kept and flagged,
// share one height (one more than the highest slot outside that any of them needs) and never wake
// one another, so the rest goes on. A new edge is looked into for a circle only where it leads to a slot
// at least as high as the one it starts from, and the search never goes below that height.
//
// Nothing here calls itself: chains may be of any length.
import { shortestWay, tellGroups } from './circles.ts';

/** The place of a cell in the arrays. */
export type Slot = number;

const NONE = -1;
const NO_CIRCLE = 0;
const EMPTY: readonly Slot[] = [];

/** With more edges told at once than this, everything is put in order anew. */
const FEW = 64;

export class Graph {
  readonly #run: (slot: Slot) => boolean;
  readonly #needs: (readonly Slot[])[] = [];
  readonly #users: Slot[][] = [];
  readonly #height: number[] = [];
  readonly #circle: number[] = [];
  readonly #circles = new Map<number, readonly Slot[]>();
  #circlesMade = 0;
  readonly #free: Slot[] = [];

  readonly #touched: Slot[] = [];
  readonly #isTouched: boolean[] = [];
  /** One queue a height, threaded through `#next`. */
  readonly #first: Slot[] = [];
  readonly #last: Slot[] = [];
  readonly #next: Slot[] = [];
  readonly #queued: boolean[] = [];
  /** How many are queued, and between which heights. */
  #waiting = 0;
  #lowest = 0;
  #highest = NONE;

  constructor(run: (slot: Slot) => boolean) {
    this.#run = run;
  }

  add(): Slot {
    const slot = this.#free.pop() ?? this.#needs.length;
    this.#needs[slot] = EMPTY;
    this.#users[slot] = [];
    this.#height[slot] = 0;
    this.#circle[slot] = NO_CIRCLE;
    this.#next[slot] = NONE;
    this.#queued[slot] = false;
    this.#isTouched[slot] = false;
    return slot;
  }

  /** Nobody may need it any more. */
  remove(slot: Slot): void {
    this.connect([[slot, EMPTY]]);
    if (this.usersOf(slot).length > 0) {
      throw new Error(`slot ${slot} is removed while ${this.usersOf(slot).join(', ')} need it`);
    }
    this.#isTouched[slot] = false;
    this.#free.push(slot);
  }

  needsOf(slot: Slot): readonly Slot[] {
    return this.#needs[slot] ?? EMPTY;
  }

  usersOf(slot: Slot): readonly Slot[] {
    return this.#users[slot] ?? EMPTY;
  }

  heightOf(slot: Slot): number {
    return this.#height[slot] ?? 0;
  }

  /** All slots of the circle that it is in, or null. */
  circleOf(slot: Slot): readonly Slot[] | null {
    return this.#circles.get(this.#circle[slot] ?? NO_CIRCLE) ?? null;
  }

  inCircle(slot: Slot): boolean {
    return this.#circle[slot] !== NO_CIRCLE;
  }

  /**
   * The shortest way around, from the slot back to before itself, each needing the next; null if it is in no
   * circle, or if the way wasn't found among the `most` slots that are looked at.
   */
  pathAround(slot: Slot, most = Infinity): readonly Slot[] | null {
    const circle = this.#circle[slot] ?? NO_CIRCLE;
    if (circle === NO_CIRCLE) return null;
    const inside = (other: Slot): boolean => this.#circle[other] === circle;
    const needsOf = (s: Slot): readonly Slot[] => this.needsOf(s);
    const back = shortestWay(this.needsOf(slot), slot, needsOf, inside, most);
    return back && [slot, ...back.slice(0, -1)];
  }

  /** The shortest way from one of the slots down to `goal`, or null: what a circle would be. */
  pathFrom(starts: readonly Slot[], goal: Slot): readonly Slot[] | null {
    const floor = this.heightOf(goal);
    const highEnough = (slot: Slot): boolean => this.heightOf(slot) >= floor;
    return shortestWay(starts, goal, (s) => this.needsOf(s), highEnough);
  }

  /** Tells what these slots need from now on (no repeats). Heights and circles follow; nothing runs. */
  connect(edges: readonly (readonly [Slot, readonly Slot[]])[]): void {
    const waiting = this.#setAside();
    if (edges.length > FEW) this.#connectAnew(edges);
    else for (const [slot, needs] of edges) this.#connectOne(slot, needs);
    for (const slot of waiting) this.#enqueue(slot);
  }

  /** Runs at the next `settle`, whatever it needs. */
  touch(slot: Slot): void {
    if (this.#isTouched[slot]) return;
    this.#isTouched[slot] = true;
    this.#touched.push(slot);
  }

  /** Runs what was touched and what that reaches, lowest first. */
  settle(): void {
    const waiting = this.#setAside();
    const run = this.#run;
    let slot = this.#takeTouched();
    while (slot !== NONE) {
      const next = run(slot) ? this.#wake(slot) : NONE;
      slot = next === NONE ? this.#dequeue() : next;
    }
    for (const later of waiting) this.#enqueue(later);
  }

  /** Empties the queue; what a `settle` still has to run is told when something new is connected amid it. */
  #setAside(): readonly Slot[] {
    if (this.#waiting === 0) return EMPTY;
    const waiting: Slot[] = [];
    for (let slot = this.#dequeue(); slot !== NONE; slot = this.#dequeue()) waiting.push(slot);
    return waiting;
  }

  /** Queues what was touched; told is the first to run, or NONE. */
  #takeTouched(): Slot {
    if (this.#touched.length === 1) {
      const slot = this.#touched.pop() as Slot;
      if (!this.#isTouched[slot]) return NONE;
      this.#isTouched[slot] = false;
      return slot;
    }
    for (let i = 0; i < this.#touched.length; i++) {
      const slot = this.#touched[i];
      if (!this.#isTouched[slot]) continue;
      this.#isTouched[slot] = false;
      this.#enqueue(slot);
    }
    this.#touched.length = 0;
    return this.#dequeue();
  }

  /** Queues the users of a slot. A single one with nothing queued beside it needs no queue: it is told, and next. */
  #wake(slot: Slot): Slot {
    const users = this.#users[slot] as readonly Slot[];
    const circle = this.#circle[slot];
    if (users.length === 1 && this.#waiting === 0 && circle === NO_CIRCLE) return users[0];
    for (let i = 0; i < users.length; i++) {
      const user = users[i];
      if (circle === NO_CIRCLE || this.#circle[user] !== circle) this.#enqueue(user);
    }
    return NONE;
  }

  #connectOne(slot: Slot, needs: readonly Slot[]): void {
    const before = this.needsOf(slot);
    const had = asSet(before);
    const has = asSet(needs);
    this.#needs[slot] = needs.length === 0 ? EMPTY : needs;
    for (const need of before) if (!has.has(need)) this.#forgetUser(need, slot);
    let upward = false;
    for (const need of needs) {
      if (had.has(need)) continue;
      this.#users[need]?.push(slot);
      if (this.heightOf(need) >= this.heightOf(slot)) upward = true;
    }
    if (upward || this.inCircle(slot)) this.#findCircles(slot);
    else this.#raise([slot]);
  }

  #forgetUser(need: Slot, slot: Slot): void {
    const users = this.#users[need] ?? [];
    const at = users.indexOf(slot);
    if (at >= 0) users.splice(at, 1);
  }

  /** Looks at the circle that a slot was in and at the one it may be in now. */
  #findCircles(slot: Slot): void {
    const floor = this.heightOf(slot);
    const was = this.#circle[slot] ?? NO_CIRCLE;
    const roots = this.#circles.get(was) ?? [slot];
    const concerned = (member: Slot): boolean =>
      member === slot || (was !== NO_CIRCLE && this.#circle[member] === was);
    const above: Slot[] = [];
    const regroup = (members: readonly Slot[]): void => {
      if (!members.some(concerned)) return;
      this.#group(members);
      for (const member of members) above.push(...this.#usersOutside(member));
    };
    tellGroups(
      roots,
      (s) => this.needsOf(s),
      (s) => this.heightOf(s) >= floor,
      { one: (member) => regroup([member]), many: regroup },
    );
    this.#raise(above);
  }

  /** Flags slots that need one another, or one that doesn't; gives them their height. */
  #group(members: readonly Slot[]): void {
    const [first = 0] = members;
    const isCircle = members.length > 1 || this.needsOf(first).includes(first);
    for (const member of members) {
      const was = this.#circle[member] ?? NO_CIRCLE;
      if (was !== NO_CIRCLE || isCircle) this.touch(member);
      // One that broke or was swallowed by a larger one is no more.
      this.#circles.delete(was);
    }
    const circle = isCircle ? ++this.#circlesMade : NO_CIRCLE;
    if (isCircle) this.#circles.set(circle, members);
    for (const member of members) this.#circle[member] = circle;
    const height = this.#heightNeeded(members);
    for (const member of members) this.#height[member] = height;
  }

  #heightNeeded(members: readonly Slot[]): number {
    const circle = this.#circle[members[0] ?? 0] ?? NO_CIRCLE;
    let height = 0;
    for (const member of members) {
      for (const need of this.needsOf(member)) {
        if (circle !== NO_CIRCLE && this.#circle[need] === circle) continue;
        height = Math.max(height, this.heightOf(need) + 1);
      }
    }
    return height;
  }

  #usersOutside(slot: Slot): readonly Slot[] {
    const circle = this.#circle[slot];
    const users = this.usersOf(slot);
    return circle === NO_CIRCLE ? users : users.filter((user) => this.#circle[user] !== circle);
  }

  /**
   * Puts heights right again from these slots upward. Slots are taken in the order of the heights they
   * had, which still orders all that lies above the change; so each is looked at once.
   */
  #raise(slots: readonly Slot[]): void {
    for (const slot of slots) this.#enqueue(slot);
    for (let slot = this.#dequeue(); slot !== NONE; slot = this.#dequeue()) {
      const members = this.circleOf(slot) ?? [slot];
      const height = this.#heightNeeded(members);
      if (height === this.heightOf(slot)) continue;
      for (const member of members) {
        this.#height[member] = height;
        for (const user of this.#usersOutside(member)) this.#enqueue(user);
      }
    }
  }

  #connectAnew(edges: readonly (readonly [Slot, readonly Slot[]])[]): void {
    for (const [slot, needs] of edges) this.#needs[slot] = needs.length === 0 ? EMPTY : needs;
    this.#tellUsers();
    for (const members of this.#circles.values()) {
      for (const member of members) {
        this.touch(member);
        this.#circle[member] = NO_CIRCLE;
      }
    }
    this.#circles.clear();
    tellGroups(
      this.#needs.keys(),
      (s) => this.needsOf(s),
      () => true,
      {
        one: (slot) => this.#group([slot]),
        many: (members) => this.#group(members),
      },
    );
  }

  /** All users anew, in lists no longer than they have to be: most are short, and there is one a cell. */
  #tellUsers(): void {
    const many = new Int32Array(this.#needs.length);
    for (const needs of this.#needs) for (const need of needs) many[need] = (many[need] ?? 0) + 1;
    for (let slot = 0; slot < many.length; slot++) {
      this.#users[slot] = Array.from({ length: many[slot] ?? 0 }, () => NONE);
    }
    many.fill(0);
    for (let slot = 0; slot < this.#needs.length; slot++) {
      for (const need of this.needsOf(slot)) {
        const at = many[need] ?? 0;
        (this.#users[need] ?? [])[at] = slot;
        many[need] = at + 1;
      }
    }
  }

  #enqueue(slot: Slot): void {
    if (this.#queued[slot]) return;
    this.#queued[slot] = true;
    this.#waiting += 1;
    const height = this.#height[slot];
    while (this.#first.length <= height) {
      this.#first.push(NONE);
      this.#last.push(NONE);
    }
    const last = this.#last[height];
    if (last === NONE) this.#first[height] = slot;
    else this.#next[last] = slot;
    this.#last[height] = slot;
    if (height > this.#highest) {
      if (this.#highest === NONE) this.#lowest = height;
      this.#highest = height;
    }
    if (height < this.#lowest) this.#lowest = height;
  }

  /** The first of the lowest queue, or NONE. */
  #dequeue(): Slot {
    if (this.#waiting === 0) {
      this.#highest = NONE;
      return NONE;
    }
    let height = this.#lowest;
    while (this.#first[height] === NONE) height += 1;
    this.#lowest = height;
    this.#waiting -= 1;
    const slot = this.#first[height];
    const next = this.#next[slot];
    this.#first[height] = next;
    if (next === NONE) this.#last[height] = NONE;
    else this.#next[slot] = NONE;
    this.#queued[slot] = false;
    return slot;
  }
}

function asSet(slots: readonly Slot[]): { has(slot: Slot): boolean } {
  return slots.length > 16 ? new Set(slots) : { has: (slot) => slots.includes(slot) };
}
