// Conversions against the figures of NIST Handbook 44, Appendix C, and NIST Special Publication 811 (2023 conventions).
// The cases and their sources stand in conversions.json.
import { describe, expect, test } from 'vitest';
import { Dec } from '../../src/quantity/decimal.ts';
import { given, shownIn } from '../quantity/held.ts';
import published from './conversions.json' with { type: 'json' };

const GRAVITY = published.standardGravity;

/** The exact text of an amount in another unit, as a decimal. */
function converted(number: string, from: string, to: string): Dec {
  return new Dec(shownIn(to, given(number, from)).exact);
}

describe('what NIST publishes', () => {
  test.each(published.conversions)(
    '$id: $number $from is $expected $to ($source)',
    ({ number, from, to, expected, precision, force }) => {
      const weight = converted(number, from, to);
      const found = force ? weight.times(GRAVITY) : weight;
      const wanted = new Dec(expected);
      const asPrecise =
        precision === 'exact' ? found : found.toSignificantDigits(wanted.precision());
      expect(asPrecise.toFixed()).toBe(wanted.toFixed());
    },
  );
});

describe('the US survey foot, retired at the end of 2022', () => {
  test.each(published.retiredSurveyFoot)(
    '$id: $number $from is not $expected $to, but 2 parts in a million less',
    ({ number, from, to, expected }) => {
      const ratio = new Dec(expected).div(converted(number, from, to)).minus(1);
      const perDimension = to === 'sq m' ? 2 : 1;
      expect(ratio.div(perDimension).toSignificantDigits(2).toFixed()).toBe('0.000002');
    },
  );
});
