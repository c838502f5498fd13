// One way to write plain values as text, so that equal values have equal hashes on every machine.
//
// The canonical form is JSON without blanks: the members of an object stand in the order of their names (by UTF-16
// code units), members that are undefined are left out, texts and numbers are written as JavaScript's JSON writes them.
// Amounts are kept as exact decimal text, never as numbers. Texts are taken as they are, without changing line breaks
// or accents; the bytes that are hashed are its UTF-8.

/** What can be written in the canonical form. */
export type Plain =
  | string
  | number
  | boolean
  | null
  | readonly Plain[]
  | { readonly [name: string]: Plain | undefined };

export function canonical(value: Plain): string {
  if (value === null || typeof value === 'boolean' || typeof value === 'string')
    return JSON.stringify(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`${value} has no canonical form`);
    return JSON.stringify(value);
  }
  if (isList(value)) return `[${value.map(canonical).join(',')}]`;
  const members = Object.keys(value)
    .sort()
    .flatMap((name) => {
      const member = value[name];
      return member === undefined ? [] : [`${JSON.stringify(name)}:${canonical(member)}`];
    });
  return `{${members.join(',')}}`;
}

function isList(value: object): value is readonly Plain[] {
  return Array.isArray(value);
}
