import type { ComponentChildren } from 'preact';

/** A table that scrolls sideways where the window is narrow. */
export function TableFrame({ name, children }: { readonly name: string; readonly children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keys
    <section class="table-scroll" tabIndex={0} aria-label={`${name}, table`}>
      {children}
    </section>
  );
}
