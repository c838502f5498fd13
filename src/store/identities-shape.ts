// The list of identities as it stands beside a text wherever one is saved.
import * as v from 'valibot';

export const IDENTITIES_1 = v.strictObject({
  stem: v.string(),
  next: v.pipe(v.number(), v.safeInteger(), v.minValue(0)),
  parts: v.array(
    v.strictObject({
      key: v.string(),
      name: v.string(),
      cells: v.array(v.tuple([v.string(), v.string()])),
    }),
  ),
});
