import { signal } from '@preact/signals';

/** What lies open over the map. */
export const notebookShown = signal(false);
export const keysShown = signal(false);
export const tagsShown = signal(false);
export const briefShown = signal(true);

export function closePanels(): void {
  notebookShown.value = false;
  keysShown.value = false;
  tagsShown.value = false;
  briefShown.value = true;
}
