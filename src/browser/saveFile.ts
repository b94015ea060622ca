/** Hands a text to the browser as a file to save. */
export function saveFile(name: string, text: string, type = 'application/json'): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** `two-ridges` */
const plainName = (title: string): string =>
  title
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '') || 'exercise';

/** `two-ridges-run.json` */
export const runFileName = (title: string): string => `${plainName(title)}-run.json`;

/** `two-ridges.json` */
export const exerciseFileName = (title: string): string => `${plainName(title)}.json`;
