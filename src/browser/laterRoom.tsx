import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';

/** A room whose code and styles come when it is first opened, so that the start page is there sooner. */
export function laterRoom<P extends object>(fetchRoom: () => Promise<ComponentType<P>>): ComponentType<P> {
  const room = signal<{ readonly Made: ComponentType<P> } | null>(null);
  let asked = false;
  return (props: P) => {
    if (!asked) {
      asked = true;
      void fetchRoom().then((Made) => {
        room.value = { Made };
      });
    }
    const made = room.value;
    return made ? <made.Made {...props} /> : null;
  };
}
