// Shapes of dependency on which the graph is compared with libraries of signals: every node is the sum
// of what it needs plus one, in float64, in all of them alike.

export interface Shape {
  readonly name: string;
  /** For each node the nodes it needs, all before it; a node that needs none is a source. */
  readonly needs: readonly (readonly number[])[];
  /** Nodes that round their sum up to whole hundreds. */
  readonly rounded: ReadonlySet<number>;
  /** The source that is edited, and to what in turn. */
  readonly edited: number;
  readonly values: readonly number[];
}

export const SHAPES: readonly Shape[] = [
  chain(1000),
  fanOut(10_000),
  cutOff(10_000),
  sections(400),
];

/** Each needs the one before it. */
function chain(length: number): Shape {
  const needs = Array.from({ length }, (_, i) => (i === 0 ? [] : [i - 1]));
  return shape('chain', needs);
}

/** All need one. */
function fanOut(ends: number): Shape {
  const needs = Array.from({ length: ends + 1 }, (_, i) => (i === 0 ? [] : [0]));
  return shape('fan-out', needs);
}

/** All need one that rounds the edit away. */
function cutOff(ends: number): Shape {
  const needs = Array.from({ length: ends + 2 }, (_, i) => (i === 0 ? [] : i === 1 ? [0] : [1]));
  return { ...shape('cut-off', needs), rounded: new Set([1]), values: [1, 2, 3, 4] };
}

/** Like a job: sections of five sources and twenty nodes, roll-ups of twenty sections, and a grand total. */
function sections(many: number): Shape {
  const needs: number[][] = [];
  const put = (...of: number[]): number => needs.push(of) - 1;
  const totals: number[] = [];
  let edited = 0;
  for (let section = 0; section < many; section++) {
    const sources = [put(), put(), put(), put(), put()] as const;
    if (section === many / 2) edited = sources[0];
    const [length, width, depth, price, rate] = sources;
    const costs: number[] = [];
    for (let line = 0; line < 4; line++) {
      const area = put(length, width);
      const volume = put(area, depth);
      const count = put(volume, rate);
      costs.push(put(count, price));
    }
    const lines = put(...costs);
    const tax = put(lines);
    const hours = put(length, rate);
    totals.push(put(lines, tax, hours));
  }
  const groups: number[] = [];
  for (let i = 0; i < many; i += 20) groups.push(put(...totals.slice(i, i + 20)));
  put(...groups);
  return { ...shape('sections', needs), edited };
}

function shape(name: string, needs: readonly (readonly number[])[]): Shape {
  return { name, needs, rounded: new Set(), edited: 0, values: [1, 5, 3, 8] };
}

/** What a node is, given how its needs are read. */
export function nodeWork(
  shape: Shape,
  node: number,
  read: readonly (() => number)[],
): () => number {
  const [one, two] = read;
  if (shape.rounded.has(node) && one) return () => Math.ceil((one() + 1) / 100) * 100;
  if (read.length === 1 && one) return () => one() + 1;
  if (read.length === 2 && one && two) return () => one() + two() + 1;
  return () => {
    let sum = 1;
    for (let i = 0; i < read.length; i++) sum += read[i]();
    return sum;
  };
}

/** The nodes that nothing needs: each is looked at after every edit. */
export function endsOf(shape: Shape): readonly number[] {
  const needed = new Set(shape.needs.flat());
  return shape.needs.flatMap((_, node) => (needed.has(node) ? [] : [node]));
}
