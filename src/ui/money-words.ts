// Money as it stands on the page. The estimate gives decimal text with two places; nothing here is rounded again.

/** `1412.60` → `$1,412.60`. */
export function money(amount: string, currency: string): string {
  const { sign, whole, cents } = split(amount);
  return `${sign}${currency}${grouped(whole)}.${cents}`;
}

/** `a` less `b`, in whole cents. */
export function centsBetween(a: string, b: string): bigint {
  return inCents(a) - inCents(b);
}

/** `$41.20 more`, `$3.00 less`, or null where nothing differs. */
export function moreOrLess(now: string, before: string, currency: string): string | null {
  const cents = centsBetween(now, before);
  if (cents === 0n) return null;
  return `${money(fromCents(cents < 0n ? -cents : cents), currency)} ${cents < 0n ? 'less' : 'more'}`;
}

/** A difference with its sign: `+$41.20`, `−$3.00`, `$0.00`. */
export function signedMoney(amount: string, currency: string): string {
  return `${inCents(amount) > 0n ? '+' : ''}${money(amount, currency)}`;
}

/** The share of `part` in `whole` as whole percent, half up; null where the whole is nothing. */
export function percentOf(part: string, whole: string): number | null {
  const all = inCents(whole);
  if (all <= 0n) return null;
  return Number((inCents(part) * 200n + all) / (all * 2n));
}

export function sumOf(a: string, b: string): string {
  return fromCents(inCents(a) + inCents(b));
}

export function isNothing(amount: string): boolean {
  return inCents(amount) === 0n;
}

function inCents(amount: string): bigint {
  const { sign, whole, cents } = split(amount);
  const all = BigInt(whole + cents);
  return sign ? -all : all;
}

function fromCents(cents: bigint): string {
  const digits = (cents < 0n ? -cents : cents).toString().padStart(3, '0');
  return `${cents < 0n ? '-' : ''}${digits.slice(0, -2)}.${digits.slice(-2)}`;
}

function split(amount: string): { sign: string; whole: string; cents: string } {
  const found = /^([-−]?)(\d+)(?:\.(\d{2}))?$/.exec(amount);
  if (!found) throw new Error(`not an amount of money with two places: ${amount}`);
  return { sign: found[1] ? '−' : '', whole: found[2] ?? '0', cents: found[3] ?? '00' };
}

function grouped(whole: string): string {
  return whole.replace(/\B(?=(\d{3})+$)/g, ',');
}
