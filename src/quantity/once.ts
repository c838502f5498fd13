// What was made before and is kept: formulas ask for the same few things again and again.

/** The same as `make`, but made once for each. */
export function onceEach<A, Made>(make: (a: A) => Made): typeof make {
  const all = new Map<A, Made>();
  return (a) => {
    let made = all.get(a);
    if (made === undefined) all.set(a, (made = make(a)));
    return made;
  };
}

/** The same for each pair of things of which there is only one alike. */
export function onceAPair<A extends object, B extends object, Made>(
  make: (a: A, b: B) => Made,
): typeof make {
  const all = new WeakMap<A, WeakMap<B, Made>>();
  return (a, b) => {
    let ofA = all.get(a);
    if (!ofA) all.set(a, (ofA = new WeakMap<B, Made>()));
    let made = ofA.get(b);
    if (made === undefined) ofA.set(b, (made = make(a, b)));
    return made;
  };
}
