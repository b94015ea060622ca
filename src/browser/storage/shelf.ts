import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';

/** Why the browser keeps nothing just now: it has no room, or it refuses; empty where all is well. */
export type KeepFault = '' | 'full' | 'refused';

/** A store that does not open in this time is held by something else; whoever waits for it goes on without. */
const OPENS_WITHIN_MS = 4_000;

export const faultOf = (fault: unknown): Exclude<KeepFault, ''> =>
  fault instanceof DOMException && fault.name === 'QuotaExceededError' ? 'full' : 'refused';

/**
 * A store of this browser, opened when it is first needed; opened anew after it failed, was closed by the browser, or was let go for a
 * newer version of the program in another tab. The promise rejects where it doesn't open: `DOMException` of the browser, or an `Error`
 * where nothing answers.
 */
export function shelfOf<S extends DBSchema>(
  name: string,
  version: number,
  make: (db: IDBPDatabase<S>) => void,
): () => Promise<IDBPDatabase<S>> {
  let ready: IDBPDatabase<S> | null = null;
  let opening: Promise<IDBPDatabase<S>> | null = null;
  const letGo = () => {
    ready?.close();
    ready = null;
  };
  const open = async () => {
    ready = await openDB<S>(name, version, { upgrade: make, blocking: letGo, terminated: letGo });
    return ready;
  };
  const opened = () => {
    opening = null;
  };
  return async () => {
    if (ready) return ready;
    if (!opening) {
      opening = open();
      opening.then(opened, opened);
    }
    return withinMs(opening, OPENS_WITHIN_MS, `the store ${name} does not open`);
  };
}

async function withinMs<T>(work: Promise<T>, ms: number, said: string): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(said)), ms);
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}

/** Writes to some stores in one go: all of it or nothing. @throws what the browser said against it, not only that it stopped */
export async function inOneGo<S extends DBSchema, N extends StoreNames<S>, T>(
  db: IDBPDatabase<S>,
  stores: N[],
  work: (go: IDBPTransaction<S, N[], 'readwrite'>) => Promise<T>,
): Promise<T> {
  const go = db.transaction(stores, 'readwrite');
  const ended = go.done.then(
    () => null,
    (fault: unknown) => fault ?? new Error('the browser undid it'),
  );
  try {
    const made = await work(go);
    const fault = await ended;
    if (fault !== null) throw fault;
    return made;
  } catch (fault) {
    try {
      go.abort();
    } catch {
      // it has ended by itself
    }
    const why = await ended;
    throw isAbort(fault) && why !== null ? why : fault;
  }
}

const isAbort = (fault: unknown): boolean => fault instanceof DOMException && fault.name === 'AbortError';
