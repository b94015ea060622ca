/** Files may be dropped on the whole page; `take` is given them. @returns lets go of it */
export function dropAnywhere(take: (files: readonly File[]) => void): () => void {
  const root = document.documentElement;
  const listening = new AbortController();
  const { signal } = listening;
  const held = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;
  addEventListener(
    'dragover',
    (event) => {
      if (!held(event)) return;
      event.preventDefault();
      root.dataset['drop'] = 'here';
    },
    { signal },
  );
  addEventListener('dragleave', (event) => !event.relatedTarget && delete root.dataset['drop'], { signal });
  addEventListener(
    'drop',
    (event) => {
      delete root.dataset['drop'];
      if (!held(event)) return;
      event.preventDefault();
      take([...event.dataTransfer!.files]);
    },
    { signal },
  );
  return () => listening.abort();
}
