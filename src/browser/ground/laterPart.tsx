import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';

/** A part of the ground's page that is not needed at once: its code comes when it is first shown, so that the start page is there sooner. */
export function laterPart(fetchPart: () => Promise<ComponentType>): ComponentType {
  const fetched = signal<{ readonly Made: ComponentType } | 'missing' | null>(null);
  return function Part() {
    useEffect(() => {
      if (fetched.peek() !== null && fetched.peek() !== 'missing') return;
      fetchPart().then(
        (Made) => {
          fetched.value = { Made };
        },
        () => {
          fetched.value = 'missing';
        },
      );
    }, []);
    const part = fetched.value;
    if (part === null) return null;
    return part === 'missing' ? <p role="alert">A part of this page could not be fetched: leave it and open it again.</p> : <part.Made />;
  };
}
