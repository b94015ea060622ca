import type { DBSchema } from 'idb';
import type { ClubTable } from '../../core/club/tableRow';
import type { Scenario } from '../../core/scenario/schema';
import { inOneGo, shelfOf } from './shelf';

/** The club's table as it stood when its page was last open. */
export type KeptClub = {
  readonly table: ClubTable;
  readonly unsaved: boolean;
  readonly anonymous: boolean;
  /** Exercises whose ground was known, by digest, and the version of the program that knew them. */
  readonly scenarios: readonly (readonly [string, Scenario])[];
  readonly program: string;
};

interface Shelf extends DBSchema {
  club: { key: 'table'; value: KeptClub };
}

const shelf = shelfOf<Shelf>('faintward-club', 1, (db) => {
  db.createObjectStore('club');
});

/** @returns whether the browser took it */
export async function keepClub(kept: KeptClub): Promise<boolean> {
  try {
    await inOneGo(await shelf(), ['club'], (go) => go.objectStore('club').put(kept, 'table'));
    return true;
  } catch {
    return false; // no storage: the page says so and goes on in memory
  }
}

/** What was kept; `null` where nothing was or the browser does not tell. */
export async function keptClub(): Promise<KeptClub | null> {
  try {
    return (await (await shelf()).get('club', 'table')) ?? null;
  } catch {
    return null;
  }
}

/** @returns whether nothing is kept any more */
export async function forgetClub(): Promise<boolean> {
  try {
    await inOneGo(await shelf(), ['club'], (go) => go.objectStore('club').delete('table'));
    return true;
  } catch {
    return false;
  }
}
