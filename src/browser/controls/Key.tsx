const ARROWS: Readonly<Record<string, string>> = {
  '↑': 'M6 10V2M2.5 5.500L6 2l3.500 3.500',
  '↓': 'M6 2v8M2.500 6.500L6 10l3.500-3.500',
  '←': 'M10 6H2M5.500 2.500L2 6l3.500 3.500',
  '→': 'M2 6h8M6.500 2.500L10 6l-3.500 3.500',
};

/** A key; arrows are drawn, since the program's fonts have none. */
export function Key({ name }: { readonly name: string }) {
  const arrow = ARROWS[name];
  if (!arrow) return <kbd>{name}</kbd>;
  return (
    <kbd>
      <svg class="key-arrow" viewBox="0 0 12 12" role="img" aria-label={`arrow ${name}`}>
        <path d={arrow} />
      </svg>
    </kbd>
  );
}
