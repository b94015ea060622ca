import type { Ratings } from '../../core/debrief/moments';
import { type FinishedRecord, shelves } from './runs';
import { inOneGo } from './shelf';

/** What the list of finished runs shows of each. */
export type FinishedLine = Pick<FinishedRecord, 'title' | 'endedAt' | 'outcome' | 'entry'> & { readonly key: number };

export async function finishedRecord(key: number): Promise<FinishedRecord | null> {
  try {
    return (await (await shelves()).get('finished', key)) ?? null;
  } catch {
    return null;
  }
}

/** The last runs, the newest first. */
export async function recentlyFinished(most: number): Promise<readonly FinishedLine[]> {
  try {
    const lines: FinishedLine[] = [];
    let cursor = await (await shelves()).transaction('finished').store.openCursor(null, 'prev');
    while (cursor && lines.length < most) {
      const { title, endedAt, outcome, entry } = cursor.value;
      lines.push({ key: cursor.key, title, endedAt, ...(outcome ? { outcome } : {}), ...(entry ? { entry } : {}) });
      cursor = await cursor.continue();
    }
    return lines;
  } catch {
    return [];
  }
}

/** Adds what became known after the run: what the learner said of it, and what the grade was. */
export async function noteFinished(
  key: number,
  known: { readonly ratings?: Ratings; readonly outcome?: FinishedRecord['outcome']; readonly entry?: string },
): Promise<void> {
  try {
    await inOneGo(await shelves(), ['finished'], async (go) => {
      const store = go.objectStore('finished');
      const record = await store.get(key);
      if (record) await store.put({ ...record, ...known } as FinishedRecord, key);
    });
  } catch {
    // the debrief shows it all the same
  }
}
