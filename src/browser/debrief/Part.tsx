import type { ComponentChildren } from 'preact';

/** A part of the debrief below its first screen: what it is, in a word and a sentence, and the thing itself. */
export function Part({ title, lead, children }: { readonly title: string; readonly lead: string; readonly children: ComponentChildren }) {
  return (
    <section class="part" aria-label={title}>
      <header class="part-head">
        <h2>{title}</h2>
        <p class="quiet">{lead}</p>
      </header>
      <div class="part-body">{children}</div>
    </section>
  );
}
