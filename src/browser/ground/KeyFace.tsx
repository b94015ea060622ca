/** The fonts have no arrows: they are drawn. */
const ARROW_DEG: Readonly<Record<string, number>> = { ArrowRight: 0, ArrowDown: 90, ArrowLeft: 180, ArrowUp: 270 };
const KEY_NAMES: Readonly<Record<string, string>> = {
  ArrowRight: 'right arrow',
  ArrowDown: 'down arrow',
  ArrowLeft: 'left arrow',
  ArrowUp: 'up arrow',
  ' ': 'Space',
  '-': 'minus',
  '+': 'plus',
  ',': 'comma',
  '.': 'full stop',
  '/': 'slash',
  '*': 'asterisk',
  '[': 'left bracket',
  ']': 'right bracket',
};
export const keyName = (key: string): string => KEY_NAMES[key] ?? (key.length === 1 ? key.toUpperCase() : key);
export function KeyFace({ name }: { readonly name: string }) {
  const deg = ARROW_DEG[name];
  if (deg === undefined) return <>{name === ' ' ? 'Space' : name.length === 1 ? name.toUpperCase().replace('-', '−') : name}</>;
  return (
    <svg viewBox="-8 -8 16 16" width="13" height="13" aria-hidden="true">
      <path d="M-6 0H6M1 -5L6 0L1 5" transform={`rotate(${deg})`} fill="none" stroke="currentColor" stroke-width="1.8" />
    </svg>
  );
}
