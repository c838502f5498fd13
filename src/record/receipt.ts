// The picture of a receipt: small enough to be kept with its entry, and nothing but a picture.

export interface Receipt {
  readonly name: string;
  /** `data:image/jpeg;base64,…` */
  readonly url: string;
}

/** The most bytes of one picture; the page makes a photograph smaller before it is kept. */
export const MOST_BYTES = 300_000;
/** The most bytes of all pictures of one job. */
export const MOST_BYTES_TOGETHER = 30_000_000;

const START = /^data:(image\/(?:jpeg|png|webp));base64,/;
const SIGNS: Readonly<Record<string, RegExp>> = {
  'image/jpeg': /^\/9j\//,
  'image/png': /^iVBORw0KGgo/,
  'image/webp': /^UklGR/,
};

/** Why this can't be kept as a receipt, or null. */
export function receiptProblem({ name, url }: Receipt): string | null {
  const kind = START.exec(url)?.[1];
  const coded = url.slice(url.indexOf(',') + 1);
  if (kind === undefined || !SIGNS[kind]?.test(coded) || !isCoded(coded))
    return `"${shortName(name)}" is no picture that can be kept here: JPEG, PNG or WebP.`;
  const bytes = bytesOf(url);
  if (bytes > MOST_BYTES)
    return `"${shortName(name)}" has ${inKilobytes(bytes)}; a receipt may have ${inKilobytes(MOST_BYTES)}.`;
  return null;
}

export function bytesOf(url: string): number {
  const coded = url.slice(url.indexOf(',') + 1);
  const blank = coded.endsWith('==') ? 2 : coded.endsWith('=') ? 1 : 0;
  return (coded.length / 4) * 3 - blank;
}

export function inKilobytes(bytes: number): string {
  return `${Math.ceil(bytes / 1000).toLocaleString('en-US')} kB`;
}

function isCoded(coded: string): boolean {
  return coded.length % 4 === 0 && /^[A-Za-z0-9+/]+={0,2}$/.test(coded);
}

function shortName(name: string): string {
  return name.length > 60 ? `${name.slice(0, 59)}…` : name;
}
