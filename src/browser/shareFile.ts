/** Hands a file to the device's share sheet, where it has one that takes files. */
export async function shareFile(title: string, name: string, text: string): Promise<void> {
  const file = shareable(name, text);
  if (!file) return;
  try {
    await navigator.share({ title, files: [file] });
  } catch (fault) {
    // Put away without choosing anybody: nothing is wrong.
    if (!(fault instanceof DOMException && fault.name === 'AbortError')) throw fault;
  }
}

export const canShareFiles = (): boolean => shareable('a.json', '{}') !== null;

/** Many browsers let no .json through their share sheet, only plain text: then it goes as that, and is read as well. */
function shareable(name: string, text: string): File | null {
  if (typeof navigator.canShare !== 'function') return null;
  const shapes = [new File([text], name, { type: 'application/json' }), new File([text], `${name}.txt`, { type: 'text/plain' })];
  return shapes.find((file) => navigator.canShare({ files: [file] })) ?? null;
}
