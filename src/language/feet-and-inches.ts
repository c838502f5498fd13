// An amount in a unit and a smaller one: `12' 6-1/2"`, `12 ft 6 1/2 in`, `5 h 35 min`, `12 feet and 6 inches`.
import type { Reader } from './reader.ts';
import { expectNumber, isNumberWord, type WrittenNumber } from './numbers.ts';
import type { Formula } from './tree.ts';
import { withTails } from './rates.ts';
import { unitTerm } from './amounts-held.ts';
import { type Unit, unitByKey } from '../quantity/units.ts';
import { NONE_WRITTEN, withUnit } from '../quantity/form.ts';
import { LENGTH } from '../quantity/dimension.ts';

/** `12'`, `12' 6-1/2"`, `12'-6 1/2"`, `11'9`; a spaced hyphen could be a minus and is refused. */
export function feetMark(r: Reader, feet: WrittenNumber, from: number, start: number): Formula {
  r.at++;
  const hyphen = r.sees('-') ? 1 : 0;
  const next = r.peek(hyphen);
  if (next.kind === 'number' && feet.whole) {
    const tight = hyphen === 1 ? !r.token.gap && !next.gap : !next.gap;
    const before = r.at;
    r.at += hyphen;
    const inches = expectNumber(r);
    if (!inches) return { kind: 'hole', spot: r.since(from) };
    const marked = r.sees('"') || r.sees('in') || r.sees('inches') || r.sees('inch');
    if (marked && hyphen === 1 && !tight) {
      r.at++;
      return refuseSpacedHyphen(r, feet, inches, from);
    }
    // `12'-16'` are two lengths.
    if (marked || (tight && !r.sees("'"))) {
      if (marked) r.at++;
      return feetAndInches(r, feet, inches, from, start);
    }
    r.at = before;
  }
  return withTails(r, feet, [unitTerm(unitByKey('ft'))], `${feet.say} ft`, from, start);
}

const FEET_WRITTEN = withUnit(NONE_WRITTEN, unitByKey('ft'));

function feetAndInches(
  r: Reader,
  feet: WrittenNumber,
  inches: WrittenNumber,
  from: number,
  start: number,
): Formula {
  const value = feet.value && inches.value ? feet.value.mul(12).add(inches.value) : null;
  const say = `${feet.say} ft ${inches.say} in`;
  const number = { value, say, whole: false };
  return withTails(r, number, [unitTerm(unitByKey('in'))], say, from, start, FEET_WRITTEN);
}

function refuseSpacedHyphen(
  r: Reader,
  feet: WrittenNumber,
  inches: WrittenNumber,
  from: number,
): Formula {
  const spot = r.since(from);
  return r.fail({
    code: 'two-readings',
    spots: [spot],
    about: `"${r.slice(spot)}" could be one length, ${feet.say} ft ${inches.say} in, or ${feet.say} ft less ${inches.say} in. Write the one that is meant.`,
    fixes: [
      r.fix('One length', spot, `${feet.say} ft ${inches.say} in`),
      r.fix('The difference', spot, `${feet.say} ft minus ${inches.say} in`),
    ],
  });
}

/** After a unit: a smaller unit of the same dimension goes on with it (`12 ft 6 1/2 in`, `5 h 35 min`). */
export function compound(
  r: Reader,
  number: WrittenNumber,
  unit: Unit,
  from: number,
  start: number,
): Formula {
  const hyphen =
    r.sees('-') && !r.token.gap && r.peek(1).kind === 'number' && !r.peek(1).gap ? 1 : 0;
  const and = hyphen === 0 ? andInches(r, unit) : 0;
  const next = r.peek(hyphen + and);
  const goesOn = next.kind === 'number' || (next.kind === 'word' && isNumberWord(next.text));
  if (number.whole && goesOn && number.value) {
    const before = r.at;
    r.at += hyphen + and;
    const more = expectNumber(r);
    if (!more) return { kind: 'hole', spot: r.since(from) };
    const mark = r.sees('"') ? { length: 1, unit: unitByKey('in') } : null;
    const smaller = mark ?? r.vocabulary.unitAt(r.tokens, r.at);
    const minutes = unit.key === 'hour' && !next.gap && !smaller ? unitByKey('min') : null;
    const fits =
      smaller?.unit.dimension === unit.dimension && smaller.unit.scale.compare(unit.scale) < 0;
    if (more.value && ((smaller && fits) || minutes)) {
      const small = minutes ?? smaller?.unit ?? unit;
      if (hyphen === 1 && unit.dimension === LENGTH) {
        r.at += smaller?.length ?? 0;
        return refuseSpacedHyphen(r, number, more, from);
      }
      r.at += minutes ? 0 : (smaller?.length ?? 0);
      const value = number.value.mul(unit.scale).div(small.scale).add(more.value);
      const say = `${number.say} ${unit.key === 'hour' ? 'h' : unit.key} ${more.say} ${small.key}`;
      const also = withUnit(NONE_WRITTEN, unit);
      return withTails(r, { value, say, whole: false }, [unitTerm(small)], say, from, start, also);
    }
    r.at = before;
  }
  return withTails(r, number, [unitTerm(unit)], null, from, start);
}

/** `12 feet and 6 inches`: the `and` between feet and inches under twelve. 0: there is none. */
function andInches(r: Reader, unit: Unit): number {
  if (!r.joinsInches || unit.key !== 'ft' || !r.sees('and') || r.peek(1).kind !== 'number')
    return 0;
  const { text } = r.peek(1);
  if (!/^\d+$/.test(text) || Number(text) > 11) return 0;
  for (let i = 2; i < 6; i++) {
    if (r.vocabulary.unitAt(r.tokens, r.at + i)?.unit.key === 'in' || r.seesAt(i, '"')) return 1;
    if (r.peek(i).kind !== 'number' && r.peek(i).text !== '/') return 0;
  }
  return 0;
}
