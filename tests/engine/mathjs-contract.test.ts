// What we lean on in mathjs that its documentation doesn't promise. A new version has to pass this first.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import * as mathjs from 'mathjs';
import {
  type Compiled,
  ConstantNode,
  FunctionNode,
  Node,
  OperatorNode,
  functions,
} from '../../src/engine/math.ts';
import { PlaceNode } from '../../src/engine/nodes.ts';
import { dec, said } from './plans.ts';

const call = (work: Compiled): string => said(work(new Map<string, never>(), {}, null));

describe('mathjs', () => {
  test('is pinned to one version', () => {
    const wanted = JSON.parse(
      readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
    ) as { dependencies: Record<string, string> };
    const installed = JSON.parse(
      readFileSync(new URL('../../node_modules/mathjs/package.json', import.meta.url), 'utf8'),
    ) as { version: string };
    expect(wanted.dependencies['mathjs']).toBe(installed.version);
  });

  test('has every factory that our instance is made of', () => {
    const names = [
      'createTyped',
      'createAddScalar',
      'createSubtractScalar',
      'createMultiplyScalar',
      'createDivideScalar',
      'createNode',
      'createOperatorNode',
      'createConstantNode',
      'createSymbolNode',
      'createFunctionNode',
    ];
    const all = mathjs as unknown as Record<string, unknown>;
    expect(names.filter((name) => typeof all[name] !== 'function')).toEqual([]);
  });

  test('compiles nodes with _compile to functions of scope, names and context', () => {
    const node = new OperatorNode('+', 'plus', [
      new ConstantNode(dec(2)),
      new OperatorNode('*', 'times', [new ConstantNode(dec(3)), new ConstantNode(dec(4))]),
    ]);
    expect(call(node._compile(functions, {}))).toBe('14');
  });

  test('takes nodes of our own as operands and asks them to compile', () => {
    const values = [dec(5), dec(7)];
    const node = new OperatorNode('*', 'times', [
      new PlaceNode(values, 0),
      new PlaceNode(values, 1),
    ]);
    const work = node._compile(functions, {});
    expect(call(work)).toBe('35');
    values[1] = dec(8);
    expect(call(work)).toBe('40');
    expect(new PlaceNode(values, 0)).toBeInstanceOf(Node);
  });

  test('finds a function node by its name among the functions we registered', () => {
    const node = new FunctionNode('root', [new ConstantNode(dec(9))]);
    expect(call(node._compile(functions, {}))).toBe('3');
  });

  test('knows no functions but ours and the scalar four', () => {
    const known = Object.keys(functions).sort();
    expect(known).toContain('plus');
    expect(known).not.toContain('evaluate');
    expect(known).not.toContain('parse');
    expect(known).not.toContain('import');
    expect(known).not.toContain('createUnit');
  });
});
