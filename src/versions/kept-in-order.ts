// Which of a list kept their order among each other: the most that did; the others were moved.

/** Indexes of a longest run of rising places, in order. */
export function keptInOrder(places: readonly number[]): readonly number[] {
  /** For each length the index at which such a run ends lowest. */
  const ends: number[] = [];
  const before: number[] = [];
  places.forEach((place, i) => {
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (places[ends[middle]] < place) low = middle + 1;
      else high = middle;
    }
    before[i] = low > 0 ? ends[low - 1] : -1;
    ends[low] = i;
  });
  const kept: number[] = [];
  for (let i = ends.at(-1) ?? -1; i >= 0; i = before[i]) kept.push(i);
  return kept.reverse();
}
