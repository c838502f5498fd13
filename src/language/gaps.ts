// As few as keep the gaps small, and the gap that so many leave.
import type { Reader } from './reader.ts';
import type { Formula } from './tree.ts';
import { slotProblem } from './phrases.ts';
import { expectSlot } from './values.ts';
import { expectAmount, seesAmount } from './amounts.ts';

export function readFewest(r: Reader): Formula {
  const from = r.token.from;
  const like = 'fewest balusters of 1 1/2 in across 72 in with gaps under 4 in';
  r.skipArticle();
  r.take(1, 'phrase');
  const noun = r.vocabulary.nounAt(r.tokens, r.at);
  r.take(noun?.length ?? 0, 'phrase');
  if (!r.maybe('of'))
    return slotProblem(
      r,
      from,
      'fewest',
      'the width of one',
      like,
      'of ? in across ? ft with gaps under 4 in',
    );
  const width = expectSlot(r);
  if (!r.maybe('across'))
    return slotProblem(
      r,
      from,
      'fewest',
      '"across" and a length',
      like,
      'across ? ft with gaps under 4 in',
    );
  const across = expectSlot(r);
  if (!r.maybe('with', 'gaps'))
    return slotProblem(r, from, 'fewest', '"with gaps under"', like, 'with gaps under ? in');
  r.maybe('of');
  const under = r.maybe('under') || r.maybe('less', 'than');
  if (!under && !r.maybe('at', 'most') && !r.maybe('no', 'more', 'than')) {
    return slotProblem(
      r,
      from,
      'with gaps',
      '"under" or "at most" and a length',
      like,
      'under ? in',
    );
  }
  const gap = expectSlot(r);
  const gapRelation = under ? 'under' : 'at-most';
  const spot = r.since(from);
  return { kind: 'fewest', noun: noun?.noun ?? 'piece', width, across, gap, gapRelation, spot };
}

export function readEvenGap(r: Reader): Formula {
  const from = r.token.from;
  const like = 'even gap for 13 balusters of 1 1/2 in across 72 in';
  r.skipArticle();
  r.take(3, 'phrase');
  const count = seesAmount(r) ? expectAmount(r) : expectSlot(r);
  if (!r.maybe('of'))
    return slotProblem(r, from, 'even gap for', 'the width of one', like, 'of ? in across ? ft');
  const width = expectSlot(r);
  if (!r.maybe('across'))
    return slotProblem(r, from, 'even gap for', '"across" and a length', like, 'across ? ft');
  const across = expectSlot(r);
  return { kind: 'even-gap', count, width, across, spot: r.since(from) };
}
