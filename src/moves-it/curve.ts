// What many trials of one figure say: its mean and spread, what it stays under with so much certainty, and its curve.
// Values are sorted and in the unit that the figure is shown in.

export interface Sample {
  /** Ascending; trials in which the figure had a value. */
  readonly sorted: Float64Array;
  /** Trials in which it had none. */
  readonly none: number;
}

/** Takes the values over: those that there are, sorted. */
export function sampleOf(values: Float64Array): Sample {
  let many = 0;
  for (let i = 0; i < values.length; i++) {
    if (Number.isFinite(values[i])) values[many++] = values[i];
  }
  return { sorted: values.subarray(0, many).sort(), none: values.length - many };
}

export function meanOf({ sorted }: Sample): number {
  // From a value that is close to all of them, so that the sum keeps its last digits.
  const near = sorted[sorted.length >> 1];
  let apart = 0;
  for (let i = 0; i < sorted.length; i++) apart += sorted[i] - near;
  return near + apart / sorted.length;
}

/** The standard deviation, as of a sample. */
export function deviationOf(sample: Sample): number {
  const { sorted } = sample;
  if (sorted.length < 2) return 0;
  const mean = meanOf(sample);
  let squares = 0;
  for (let i = 0; i < sorted.length; i++) squares += (sorted[i] - mean) ** 2;
  return Math.sqrt(squares / (sorted.length - 1));
}

/** What a share of the trials, 0 to 1, does not exceed; between two of them in proportion. */
export function quantile({ sorted }: Sample, share: number): number {
  const place = Math.min(1, Math.max(0, share)) * (sorted.length - 1);
  const under = Math.floor(place);
  const over = Math.min(under + 1, sorted.length - 1);
  return sorted[under] + (sorted[over] - sorted[under]) * (place - under);
}

/** The share of the trials that an amount is enough for. */
export function chanceWithin({ sorted }: Sample, amount: number): number {
  // The last digits of a double are noise: what is the same amount is enough.
  const enough = amount + Math.abs(amount) * 1e-12;
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] <= enough) low = middle + 1;
    else high = middle;
  }
  return low / sorted.length;
}

/** The share of the trials that pass an amount: of a budget, the chance that it is overrun. */
export function chancePassing(sample: Sample, amount: number): number {
  return 1 - chanceWithin(sample, amount);
}

export interface Contingency {
  /** What has to be added to the plain value, in its unit; nought where that is enough as it is. */
  readonly amount: number;
  /** The same as a share of the plain value; null where that is nought. */
  readonly share: number | null;
}

/** What has to be set aside beside the plain value to be so certain, 0 to 1, that it is enough. */
export function contingencyFor(sample: Sample, plain: number, certainty: number): Contingency {
  const amount = Math.max(0, quantile(sample, certainty) - plain);
  return { amount, share: plain === 0 ? null : amount / Math.abs(plain) };
}

export interface Bar {
  readonly from: number;
  readonly to: number;
  /** Share of the trials in it; all bars add up to 1. */
  readonly share: number;
}

/** The curve as so many bars of one width; the last one takes its upper end in. One bar where all trials are alike. */
export function curveOf({ sorted }: Sample, bars: number): readonly Bar[] {
  if (sorted.length === 0) return [];
  const [low, high] = [sorted[0], sorted[sorted.length - 1]];
  if (low === high) return [{ from: low, to: high, share: 1 }];
  const counts = new Float64Array(bars);
  const width = (high - low) / bars;
  for (let i = 0; i < sorted.length; i++) {
    counts[Math.min(bars - 1, Math.floor((sorted[i] - low) / width))] += 1;
  }
  return Array.from(counts, (count, k) => ({
    from: low + k * width,
    to: k === bars - 1 ? high : low + (k + 1) * width,
    share: count / sorted.length,
  }));
}
