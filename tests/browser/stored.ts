import type { Page } from 'playwright-core';

/** All that one shelf of the page's own store holds; the page has opened that store before. */
export const storedIn = <Kept>(page: Page, database: string, shelf: string): Promise<readonly Kept[]> =>
  page.evaluate(
    ([name, part]) =>
      new Promise<Kept[]>((resolve, reject) => {
        const opening = indexedDB.open(name);
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const asking = opening.result.transaction(part).objectStore(part).getAll();
          asking.onsuccess = () => {
            opening.result.close();
            resolve(asking.result as Kept[]);
          };
        };
      }),
    [database, shelf] as const,
  );
