// The graph alone against libraries of signals, on float64 closures. Each runs in a process of its own:
// what one leaves behind in the machine's caches and compilers is not the next one's to carry.
import { spawnSync } from 'node:child_process';
import { computed, endBatch, effect, signal, startBatch } from 'alien-signals';
import * as preact from '@preact/signals-core';
import S from 's-js';
import { Graph } from '../../src/engine/graph.ts';
import { endsOf, nodeWork, SHAPES, type Shape } from './shapes.ts';
import { runTable, shortest } from './table.ts';

/** Builds a shape; the result sets the edited source and settles all that follows. */
type Build = (shape: Shape, seen: (node: number, value: number) => void) => (value: number) => void;

const ours: Build = (shape, seen) => {
  const values: number[] = [];
  const works: (() => number)[] = [];
  const isEnd = new Uint8Array(shape.needs.length);
  for (const node of endsOf(shape)) isEnd[node] = 1;
  const graph = new Graph((slot) => {
    const before = values[slot];
    const value = works[slot]();
    if (value === before) return false;
    values[slot] = value;
    if (isEnd[slot] === 1) seen(slot, value);
    return true;
  });
  shape.needs.forEach((needs, node) => {
    graph.add();
    graph.touch(node);
    values[node] = NaN;
    const read = needs.map((need) => () => values[need]);
    works[node] = needs.length === 0 ? () => 1 : nodeWork(shape, node, read);
  });
  graph.connect(shape.needs.map((needs, node) => [node, needs] as const));
  graph.settle();
  let source = 1;
  works[shape.edited] = () => source;
  return (value) => {
    source = value;
    graph.touch(shape.edited);
    graph.settle();
  };
};

const alien: Build = (shape, seen) => {
  const read: (() => number)[] = [];
  const source = signal(1);
  shape.needs.forEach((needs, node) => {
    if (node === shape.edited) read.push(() => source());
    else if (needs.length === 0) read.push(signal(1));
    else
      read.push(
        computed(
          nodeWork(
            shape,
            node,
            needs.map((need) => read[need]),
          ),
        ),
      );
  });
  for (const node of endsOf(shape)) effect(() => seen(node, read[node]()));
  return (value) => {
    startBatch();
    source(value);
    endBatch();
  };
};

const preactSignals: Build = (shape, seen) => {
  const read: (() => number)[] = [];
  const source = preact.signal(1);
  shape.needs.forEach((needs, node) => {
    if (node === shape.edited) read.push(() => source.value);
    else {
      const made =
        needs.length === 0
          ? preact.signal(1)
          : preact.computed(
              nodeWork(
                shape,
                node,
                needs.map((need) => read[need]),
              ),
            );
      read.push(() => made.value);
    }
  });
  for (const node of endsOf(shape)) preact.effect(() => seen(node, read[node]()));
  return (value) => {
    preact.batch(() => {
      source.value = value;
    });
  };
};

const sJs: Build = (shape, seen) =>
  S.root(() => {
    const read: (() => number)[] = [];
    const source = S.data(1);
    shape.needs.forEach((needs, node) => {
      if (node === shape.edited) read.push(source);
      else if (needs.length === 0) read.push(S.data(1));
      else {
        const work = nodeWork(
          shape,
          node,
          needs.map((need) => read[need]),
        );
        // Its plain computations don't stop where a value stays the same; one that rounds is told to.
        if (!shape.rounded.has(node)) read.push(S(work));
        else {
          const kept = S.value(0);
          S(() => kept(work()));
          read.push(kept);
        }
      }
    });
    for (const node of endsOf(shape)) S(() => seen(node, read[node]()));
    return (value) => {
      S.freeze(() => source(value));
    };
  });

const BUILDS: Readonly<Record<string, Build>> = {
  ours,
  'alien-signals': alien,
  '@preact/signals-core': preactSignals,
  's-js': sJs,
};

interface Run {
  /** Milliseconds from an edit to all settled. */
  readonly ms: number;
  /** The sum of what was seen last at the ends: the same for all, or one of them did not do the work. */
  readonly sum: number;
}

function run(build: Build, shape: Shape): Run {
  const last = new Map<number, number>();
  const set = build(shape, (node, value) => void last.set(node, value));
  let turn = 0;
  const edit = (): void => set(shape.values[turn++ % shape.values.length] ?? 0);
  for (let i = 0; i < 20; i++) edit();
  const took = shortest(3, edit);
  // Long enough to be measured: about two milliseconds a time.
  const many = Math.max(1, Math.min(2000, Math.round(2 / took)));
  const ms =
    shortest(40, () => {
      for (let i = 0; i < many; i++) edit();
    }) / many;
  set(7);
  return { ms, sum: [...last.values()].reduce((a, b) => a + b, 0) };
}

const ONLY = '--only=';
const only = process.argv.find((word) => word.startsWith(ONLY))?.slice(ONLY.length);

function runApart(name: string, shape: Shape): Run {
  const program = process.argv[1] ?? '';
  const child = spawnSync(process.execPath, [program, `${ONLY}${name}:${shape.name}`], {
    encoding: 'utf8',
  });
  if (child.status !== 0) throw new Error(`${name} on ${shape.name}: ${child.stderr}`);
  return JSON.parse(child.stdout) as Run;
}

function compared(shape: Shape): number {
  const mine = runApart('ours', shape);
  let fastest = Infinity;
  for (const name of Object.keys(BUILDS).filter((each) => each !== 'ours')) {
    const theirs = runApart(name, shape);
    if (theirs.sum !== mine.sum)
      throw new Error(`${name} comes to ${theirs.sum} on ${shape.name}, not ${mine.sum}`);
    fastest = Math.min(fastest, theirs.ms);
  }
  return fastest / mine.ms;
}

if (only === undefined) {
  runTable(
    'Graph alone, against the fastest of alien-signals, @preact/signals-core and s-js',
    SHAPES.map((shape) => ({
      what: `${shape.name}, ${shape.needs.length.toLocaleString('en-US')} cells`,
      measure: () => compared(shape),
      goal: 1.5,
      gate: 1,
      better: 'higher',
      unit: ' ×',
    })),
  );
} else {
  const [name = '', of = ''] = only.split(':');
  const [build, shape] = [BUILDS[name], SHAPES.find((each) => each.name === of)];
  if (!build || !shape) throw new Error(`nothing is called ${only}`);
  process.stdout.write(JSON.stringify(run(build, shape)));
}
