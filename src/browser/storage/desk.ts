import type { DBSchema } from 'idb';
import { looksLikeDraft } from '../../core/desk/draft';
import { type HeightsApart, heightsApart, heightsTogether } from '../../core/desk/heightsApart';
import type { KeptHistory } from '../../core/desk/history';
import type { Scenario } from '../../core/scenario/schema';
import { inOneGo, shelfOf } from './shelf';

interface Shelf extends DBSchema {
  desk: { key: 'draft'; value: HeightsApart };
}

const shelf = shelfOf<Shelf>('faintward-desk', 1, (db) => {
  db.createObjectStore('desk');
});

/** Keeps what lies on the desk with all its past. @returns whether the browser took it */
export async function keepDesk(history: KeptHistory<Scenario>): Promise<boolean> {
  try {
    await inOneGo(await shelf(), ['desk'], (go) => go.objectStore('desk').put(heightsApart(history), 'draft'));
    return true;
  } catch {
    return false; // no storage: the desk says so and goes on in memory
  }
}

/** What lay on the desk; `null` where nothing did, or only what this version can't go on with. */
export async function keptDesk(): Promise<KeptHistory<Scenario> | null> {
  try {
    const kept = await (await shelf()).get('desk', 'draft');
    if (!kept || !looksLikeDraft(kept.now)) return null;
    const ours = [...kept.past, ...kept.future].every(({ value }) => looksLikeDraft(value));
    return heightsTogether(ours ? kept : { ...kept, past: [], future: [] });
  } catch {
    return null;
  }
}
