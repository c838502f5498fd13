// What is done to the alternatives beside a notebook: each a step from what lies there to what lies there then.
import type { AlternativeKept, Alongside } from '../store/alongside-shapes.ts';

/** More would not stand side by side. */
export const MOST_WAYS = 3;

type Step = (beside: Alongside) => Alongside;

/** An empty one, or one that begins as a copy of the one at this place. */
export function anotherWay(like: number | null): Step {
  return (beside) => {
    if (beside.alternatives.length >= MOST_WAYS) return beside;
    const from = like === null ? undefined : beside.alternatives[like];
    const names = new Set(beside.alternatives.map(({ name }) => name));
    let name = from ? `${from.name}, too` : '';
    for (let n = 1; name === '' || names.has(name); n++) {
      name = from ? `${from.name}, too ${n + 1}` : `Way ${n}`;
    }
    const fresh: AlternativeKept = { name, puts: from?.puts ?? [] };
    return { ...beside, alternatives: [...beside.alternatives, fresh] };
  };
}

export function withoutWay(place: number): Step {
  return (beside) => ({
    ...beside,
    alternatives: beside.alternatives.filter((_, at) => at !== place),
  });
}

/** Puts one back where it stood. */
export function broughtBack(place: number, way: AlternativeKept): Step {
  return (beside) => {
    const alternatives = [...beside.alternatives];
    if (alternatives.length >= MOST_WAYS) return beside;
    alternatives.splice(place, 0, way);
    return { ...beside, alternatives };
  };
}

export function calledWay(place: number, name: string): Step {
  return onWay(place, (way) => ({ ...way, name }));
}

/** `''`: as it is. */
export function putWay(place: number, key: string, formula: string): Step {
  return onWay(place, ({ name, puts }) => {
    const others = puts.filter((put) => put.key !== key);
    return { name, puts: formula === '' ? others : [...others, { key, formula }] };
  });
}

/** A cell that is varied from now on. */
export function varying(key: string): Step {
  return (beside) =>
    beside.varied.includes(key) ? beside : { ...beside, varied: [...beside.varied, key] };
}

/** As it is in every alternative again. */
export function varyingNoMore(key: string): Step {
  return ({ varied, alternatives, ...beside }) => ({
    ...beside,
    varied: varied.filter((one) => one !== key),
    alternatives: alternatives.map(({ name, puts }) => ({
      name,
      puts: puts.filter((put) => put.key !== key),
    })),
  });
}

function onWay(place: number, act: (way: AlternativeKept) => AlternativeKept): Step {
  return (beside) => ({
    ...beside,
    alternatives: beside.alternatives.map((way, at) => (at === place ? act(way) : way)),
  });
}
