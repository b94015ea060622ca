/** A thing made when it is first asked for: a page's ground costs nothing until the page is opened. */
export function madeOnce<T>(make: () => T): () => T {
  let made: { readonly it: T } | null = null;
  return () => {
    made ??= { it: make() };
    return made.it;
  };
}

/** The same for one thing a key. */
export function madeOnceFor<K, T>(make: (key: K) => T): (key: K) => T {
  const made = new Map<K, { readonly it: T }>();
  return (key) => {
    const known = made.get(key) ?? { it: make(key) };
    made.set(key, known);
    return known.it;
  };
}
