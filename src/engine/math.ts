// The mathjs instance that works every figure: scalar factories picked by hand, over our decimals, and
// our own functions registered in it. No parsing or evaluating of text, no units, nothing that makes code
// of text. The version of mathjs is pinned and tests/engine/mathjs-contract.test.ts says what we lean on.
//
// Functions look first whether all is plain decimals; what isn't goes through `carried`.
import {
  type MathJsInstance,
  create,
  createAddScalar,
  createConstantNode,
  createDivideScalar,
  createFunctionNode,
  createMultiplyScalar,
  createNode,
  createOperatorNode,
  createSubtractScalar,
  createSymbolNode,
  createTyped,
  factory,
} from 'mathjs';
import { Dec, minusDropping, plusDropping, roundedToWhole, snapped } from '../quantity/decimal.ts';
import type { Relation, Way } from '../language/tree.ts';
import {
  DIVISION_BY_ZERO,
  type Fault,
  type Held,
  NOTHING_LEFT,
  PIECE_TOO_LONG,
  type Plain,
  ROOT_OF_NEGATIVE,
  SoFar,
  TOO_LARGE,
  Unknown,
  bare,
  isNoValue,
  leftOutOf,
  soFar,
  union,
  withoutValue,
} from './held.ts';

/** Factories that mathjs has and its types leave out. */
declare module 'mathjs' {
  export const createTyped: unknown;
  export const createAddScalar: unknown;
  export const createSubtractScalar: unknown;
  export const createMultiplyScalar: unknown;
  export const createDivideScalar: unknown;
  export const createNode: unknown;
  export const createOperatorNode: unknown;
  export const createConstantNode: unknown;
  export const createSymbolNode: unknown;
  export const createFunctionNode: unknown;
}

/** What mathjs makes of a node: called without a scope, since our formulas have no symbols. */
export type Compiled = (scope: ReadonlyMap<string, never>, args: object, context: null) => Held;

/** The part of a mathjs node that we lean on. */
export interface MathNode {
  readonly type: string;
  _compile(math: object, names: object): Compiled;
}

interface NodeClasses {
  readonly Node: abstract new () => MathNode;
  readonly ConstantNode: new (value: Plain) => MathNode;
  readonly OperatorNode: new (sign: string, name: string, operands: MathNode[]) => MathNode;
  readonly FunctionNode: new (name: string, operands: MathNode[]) => MathNode;
}

/** The largest power of ten, and the smallest, that a figure may have before it is no estimate any more. */
const HIGHEST_EXPONENT = 300;

const standIns = {
  createBigNumber: factory('BigNumber', [], () => Dec),
  createNumeric: factory('numeric', [], () => unused('numeric')),
  createIsBounded: factory('isBounded', [], () => unused('isBounded')),
};

const factories: unknown = {
  createTyped,
  createAddScalar,
  createSubtractScalar,
  createMultiplyScalar,
  createDivideScalar,
  createNode,
  createOperatorNode,
  createConstantNode,
  createSymbolNode,
  createFunctionNode,
  ...standIns,
};

const instance: MathJsInstance = create(factories as Parameters<typeof create>[0]);

export const { Node, ConstantNode, OperatorNode, FunctionNode } =
  instance as unknown as NodeClasses;

/** What compiled nodes look their functions up in. */
export const functions = (instance as unknown as { expression: { mathWithTransform: object } })
  .expression.mathWithTransform;

type OnTwo = (a: Dec, b: Dec) => Dec;

const timesExactly = signature('multiplyScalar');
const overExactly = signature('divideScalar');

/** mathjs's own function for two decimals, picked once so that no call has to look at the types. */
function signature(name: 'multiplyScalar' | 'divideScalar'): OnTwo {
  const typed = instance.typed as unknown as {
    find(fn: unknown, types: readonly string[]): OnTwo;
  };
  return typed.find((instance as unknown as Record<string, unknown>)[name], [
    'BigNumber',
    'BigNumber',
  ]);
}

export function plus(a: Held, b: Held): Held {
  return a instanceof Dec && b instanceof Dec ? plusDropping(a, b) : carried(plus, a, b);
}

export function minus(a: Held, b: Held): Held {
  return a instanceof Dec && b instanceof Dec ? minusDropping(a, b) : carried(minus, a, b);
}

export function times(a: Held, b: Held): Held {
  return a instanceof Dec && b instanceof Dec ? within(timesExactly(a, b)) : carried(times, a, b);
}

export function over(a: Held, b: Held): Held {
  if (!(a instanceof Dec && b instanceof Dec)) return carried(over, a, b);
  return b.isZero() ? DIVISION_BY_ZERO : within(overExactly(a, b));
}

const squared = (a: Held): Held => times(a, a);
const cubed = (a: Held): Held => times(times(a, a), a);

function root(a: Held): Held {
  if (!(a instanceof Dec)) return carriedOne(root, a);
  const value = snapped(a);
  return value.isNeg() && !value.isZero() ? ROOT_OF_NEGATIVE : a.abs().sqrt();
}

/** It as it is where it is more than 0, else the fault. */
function someOr(fault: Fault, a: Held): Held {
  if (!(a instanceof Dec)) return carriedOne((x) => someOr(fault, x), a);
  return snapped(a).gt(0) ? a : fault;
}

/** To whole steps, on the snapped quotient. */
function roundTo(way: Way, a: Held, step: Held): Held {
  if (!(a instanceof Dec && step instanceof Dec)) {
    return carried((x, y) => roundTo(way, x, y), a, step);
  }
  if (step.isZero()) return DIVISION_BY_ZERO;
  const size = step.abs();
  if (size.eq(1)) return roundedToWhole(a, way);
  return within(timesExactly(roundedToWhole(overExactly(a, size), way), size));
}

const roundUp = (a: Held, step: Held): Held => roundTo('up', a, step);
const roundDown = (a: Held, step: Held): Held => roundTo('down', a, step);
const roundNearest = (a: Held, step: Held): Held => roundTo('nearest', a, step);

/** A comparison waits for what isn't known, and for a total that leaves lines out. */
function compared(relation: Relation, a: Held, b: Held): Held {
  if (isNoValue(a)) return withoutValue(a, waitingIfSoFar(b));
  if (isNoValue(b)) return withoutValue(b, waitingIfSoFar(a));
  if (a instanceof SoFar || b instanceof SoFar) {
    return new Unknown(union(leftOutOf(a), leftOutOf(b)));
  }
  if (a instanceof Dec && b instanceof Dec) return holds(relation, snapped(a).cmp(snapped(b)));
  return holds(relation, a === b ? 0 : a < b ? -1 : 1);
}

function waitingIfSoFar(a: Held): Held {
  return a instanceof SoFar ? new Unknown(a.leftOut) : a;
}

function holds(relation: Relation, order: number): boolean {
  switch (relation) {
    case 'is':
      return order === 0;
    case 'is-not':
      return order !== 0;
    case 'more':
      return order > 0;
    case 'less':
      return order < 0;
    case 'at-least':
      return order >= 0;
    case 'at-most':
      return order <= 0;
  }
}

function not(a: Held): Held {
  return a instanceof SoFar || isNoValue(a) ? carriedOne(not, a) : a === false;
}

/** The larger of two, as it was; of equal ones the first. */
function greaterOf(a: Held, b: Held): Held {
  if (!(a instanceof Dec && b instanceof Dec)) return carried(greaterOf, a, b);
  return snapped(b).gt(snapped(a)) ? b : a;
}

function lesserOf(a: Held, b: Held): Held {
  if (!(a instanceof Dec && b instanceof Dec)) return carried(lesserOf, a, b);
  return snapped(b).lt(snapped(a)) ? b : a;
}

const greatest = (items: readonly Held[]): Held => items.reduce(greaterOf);
const least = (items: readonly Held[]): Held => items.reduce(lesserOf);

function average(items: readonly Held[]): Held {
  return over(items.reduce(plus), new Dec(items.length));
}

const RELATIONS: Readonly<Record<Relation, (a: Held, b: Held) => Held>> = {
  is: (a, b) => compared('is', a, b),
  'is-not': (a, b) => compared('is-not', a, b),
  more: (a, b) => compared('more', a, b),
  less: (a, b) => compared('less', a, b),
  'at-least': (a, b) => compared('at-least', a, b),
  'at-most': (a, b) => compared('at-most', a, b),
};

instance.import({
  plus,
  minus,
  times,
  over,
  squared,
  cubed,
  root,
  someLeft: (a: Held) => someOr(NOTHING_LEFT, a),
  somePieces: (a: Held) => someOr(PIECE_TOO_LONG, a),
  roundUp,
  roundDown,
  roundNearest,
  not,
  greatest,
  least,
  average,
  isSame: RELATIONS.is,
  isOther: RELATIONS['is-not'],
  isMore: RELATIONS.more,
  isLess: RELATIONS.less,
  isAtLeast: RELATIONS['at-least'],
  isAtMost: RELATIONS['at-most'],
});

/** π to 64 digits. */
export const PI = new Dec('3.141592653589793238462643383279502884197169399375105820974944592');

/** Works on the values and carries along what they leave out; one without a value makes the result so. */
function carried(work: (a: Held, b: Held) => Held, a: Held, b: Held): Held {
  if (isNoValue(a)) return withoutValue(a, b);
  if (isNoValue(b)) return b;
  if (!(a instanceof SoFar) && !(b instanceof SoFar)) {
    throw new TypeError(`no arithmetic on ${typeof a} and ${typeof b}: ${String(a)}, ${String(b)}`);
  }
  return leavingOut(work(bare(a), bare(b)), union(leftOutOf(a), leftOutOf(b)));
}

function carriedOne(work: (a: Held) => Held, a: Held): Held {
  if (isNoValue(a)) return a;
  if (!(a instanceof SoFar)) throw new TypeError(`no arithmetic on ${typeof a}: ${String(a)}`);
  return leavingOut(work(a.value), a.leftOut);
}

function leavingOut(held: Held, leftOut: Parameters<typeof soFar>[1]): Held {
  return isNoValue(held) || held instanceof SoFar ? held : soFar(held, leftOut);
}

/** A figure of hundreds of digits is a slip of the pen; it stops here rather than where it is shown. */
function within(value: Dec): Held {
  return value.e < HIGHEST_EXPONENT && value.e > -HIGHEST_EXPONENT ? value : TOO_LARGE;
}

function unused(name: string): () => never {
  return () => {
    throw new Error(`mathjs asked for ${name}, which our formulas never need`);
  };
}
