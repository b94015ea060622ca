/** Prints one part of the page alone: the style sheet hides the rest while the page carries its name. */
export function printOnly(part: 'card'): void {
  const root = document.documentElement;
  root.dataset['print'] = part;
  addEventListener('afterprint', () => delete root.dataset['print'], { once: true });
  print();
}
