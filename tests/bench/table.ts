// The table of a benchmark: each row a ratio measured in this one run, its goal and its gate printed beside it.
// Times of a busy machine jump; a ratio of the best of several, and a second look before a gate is called missed, do not.

export interface Row {
  readonly what: string;
  /** Measures the row once, from nothing. */
  readonly measure: () => number;
  readonly goal: number;
  /** Missing it fails the run under `--gate`; null where the goal is only watched. */
  readonly gate: number | null;
  readonly better: 'lower' | 'higher';
  /** Put behind the numbers, ` ×` for instance. */
  readonly unit: string;
}

export interface Measured extends Row {
  readonly got: number;
}

/** The shortest of several times of one piece of work, in milliseconds: the one the machine disturbed least. */
export function shortest(times: number, work: () => void): number {
  let best = Infinity;
  for (let n = 0; n < times; n++) {
    const start = performance.now();
    work();
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

/**
 * The shortest times of two pieces of work that are to be compared, turn by turn, so that a slow spell
 * of the machine falls on both.
 */
export function shortestOfBoth(
  times: number,
  one: () => void,
  other: () => void,
): readonly [number, number] {
  let first = Infinity;
  let second = Infinity;
  for (let n = 0; n < times; n++) {
    first = Math.min(first, shortest(1, one));
    second = Math.min(second, shortest(1, other));
  }
  return [first, second];
}

/** Measures a row; one that misses its gate is measured up to twice more and keeps its best. */
export function measured(row: Row): Measured {
  let got = row.measure();
  for (let more = 0; more < 2 && missesGate({ ...row, got }); more++) {
    const again = row.measure();
    if (row.better === 'lower' ? again < got : again > got) got = again;
  }
  return { ...row, got };
}

/** A row that could not be measured misses its gate too. */
export function missesGate({ got, gate, better }: Measured): boolean {
  if (gate === null) return false;
  return better === 'lower' ? !(got <= gate) : !(got >= gate);
}

/** The table as lines of text. */
export function tableText(title: string, rows: readonly Measured[]): string {
  const sign = (row: Row) => (row.better === 'lower' ? '≤' : '≥');
  const lines = rows.map((row) => [
    row.what,
    number(row.got) + row.unit,
    `goal ${sign(row)} ${number(row.goal)}${row.unit}`,
    row.gate === null ? '' : `gate ${sign(row)} ${number(row.gate)}${row.unit}`,
    missesGate(row) ? 'MISSED' : '',
  ]);
  const widths = [0, 1, 2, 3].map((at) =>
    Math.max(0, ...lines.map((line) => (line[at] ?? '').length)),
  );
  const text = lines.map((line) =>
    line
      .map((cell, at) => cell.padEnd(widths[at] ?? 0))
      .join('  ')
      .trimEnd(),
  );
  return [title, ...text].join('\n');
}

/** Measures and prints a table; under `--gate` a missed gate fails the process. */
export function runTable(title: string, rows: readonly Row[]): void {
  const results = rows.map(measured);
  console.log(tableText(title, results) + '\n');
  if (process.argv.includes('--gate') && results.some(missesGate)) process.exitCode = 1;
}

function number(value: number): string {
  return String(Number(value.toPrecision(3)));
}
