/** A thing made when it is first asked for: a page's ground costs nothing until the page is opened. */
export function madeOnce<T>(make: () => T): () => T {
  let made: { readonly it: T } | null = null;
  return () => {
    made ??= { it: make() };
    return made.it;
  };
}
