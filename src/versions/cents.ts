// Money as whole cents, and cents given out so that the pieces add up.

/** `-1412.60` → -141260n. */
export function centsOf(money: string): bigint {
  const found = /^(-?)(\d+)\.(\d\d)$/.exec(money);
  if (!found) throw new Error(`"${money}" is no money with two places`);
  const [, sign, whole, cents] = found;
  const sum = BigInt(whole) * 100n + BigInt(cents);
  return sign === '-' ? -sum : sum;
}

export function moneyText(cents: bigint): string {
  const size = cents < 0n ? -cents : cents;
  return `${cents < 0n ? '-' : ''}${size / 100n}.${String(size % 100n).padStart(2, '0')}`;
}

/**
 * Whole cents for exact shares, each `over / under`, whose sum is whole: every share is cut towards zero and the
 * cents that are over go to those that lost most by it, the earlier first. What is zero stays zero, and all
 * shares with their signs turned give the same cents with theirs turned.
 */
export function givenOut(overs: readonly bigint[], under: bigint): readonly bigint[] {
  const cents = overs.map((over) => over / under);
  const rest = overs.map((over) => over % under);
  const left = rest.reduce((sum, one) => sum + one, 0n);
  if (left % under !== 0n) throw new Error('the shares are no whole number of cents together');
  const step = left < 0n ? -1n : 1n;
  const most = rest
    .map((one, i) => ({ one: one * step, i }))
    .sort((a, b) => (a.one === b.one ? a.i - b.i : a.one > b.one ? -1 : 1));
  const count = Number((left * step) / under);
  for (const { i } of most.slice(0, count)) cents[i] += step;
  return cents;
}
