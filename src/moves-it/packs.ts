// Whole things between a given and a result (bags, boards, risers): how many of them at two places of the given.
import type { CellId } from '../language/tree.ts';
import { Dec } from '../quantity/decimal.ts';
import { BLOCK, FloatWork } from './floats.ts';
import { isWholeCount } from './givens.ts';
import { type Asked, webOf } from './web.ts';

export interface Packs {
  readonly cell: CellId;
  /** As the notebook shows them: `41 bags`. */
  readonly from: string;
  readonly to: string;
}

/** Those that differ, the last on the way: of boards needed and boards bought, the boards bought. */
export function packsBetween(
  asked: Asked,
  given: CellId,
  result: CellId,
  [from, to]: readonly [number, number],
): readonly Packs[] {
  const web = webOf(asked, [given], [result]);
  const counts = web.steps
    .map(({ cell }) => cell)
    .filter((cell) => cell !== result && isWholeCount(asked.state(cell)));
  if (counts.length === 0) return [];
  const work = new FloatWork(asked, web, 'left');
  const lane = work.lane(given);
  lane.fill(from, 0, BLOCK);
  lane[1] = to;
  work.run(2);
  const moved = counts.flatMap((cell) => {
    const [before, after] = work.lane(cell);
    return Number.isInteger(before) && Number.isInteger(after) && before !== after
      ? [{ cell, before, after }]
      : [];
  });
  const all = moved.map(({ cell }) => cell);
  return moved.flatMap(({ cell, before, after }) => {
    const { holds } = asked.state(cell);
    const goesOn = asked.reach([cell], 'up').some((other) => all.includes(other));
    if (!holds || goesOn) return [];
    const say = (many: number): string => asked.say(new Dec(many), holds).text;
    return [{ cell, from: say(before), to: say(after) }];
  });
}
