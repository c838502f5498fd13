// What was made of two of a kind, kept: formulas ask for the same few pairs again and again.

/** The same as `make`, but made once for each pair. For things of which there is only one alike. */
export function onceAPair<T extends object, Made>(make: (a: T, b: T) => Made): typeof make {
  const all = new Map<T, Map<T, Made>>();
  return (a, b) => {
    let ofA = all.get(a);
    if (!ofA) all.set(a, (ofA = new Map<T, Made>()));
    let made = ofA.get(b);
    if (made === undefined) ofA.set(b, (made = make(a, b)));
    return made;
  };
}
