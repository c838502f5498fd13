// Chances in plain words and whole percent.

/** `Four times in five`, for what is asked most; else `76 times in 100`. */
export function timesIn(share: number): string {
  const percent = Math.round(share * 100);
  const known = KNOWN.get(percent);
  return known ?? `${percent} times in 100`;
}

const KNOWN: ReadonlyMap<number, string> = new Map([
  [50, 'Half the time'],
  [75, 'Three times in four'],
  [80, 'Four times in five'],
  [90, 'Nine times in ten'],
  [95, 'Nineteen times in twenty'],
]);

/** `23%`, and never 0% of what happened or 100% of what did not always. */
export function percentSaid(share: number): string {
  if (share === 0 || share === 1) return `${share * 100}%`;
  if (share < 0.01) return 'less than 1%';
  if (share > 0.99) return 'more than 99%';
  return `${Math.round(share * 100)}%`;
}
