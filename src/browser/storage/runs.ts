import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Entry } from '../../core/run/actions';
import type { Pulse } from '../../core/run/pulse';
import type { Scenario } from '../../core/scenario/schema';

/** A run that is not over: enough to go on with it after the tab was closed. */
export type StoredRun = {
  readonly scenario: Scenario;
  readonly log: readonly Entry[];
  readonly pulses: readonly Pulse[];
  readonly tick: number;
  readonly thresholdDb: number;
  readonly begunAt?: string;
};

interface Shelves extends DBSchema {
  unfinished: { key: 'run'; value: StoredRun };
  finished: { key: number; value: { readonly title: string; readonly endedAt: string; readonly text: string } };
}

let opened: Promise<IDBPDatabase<Shelves>> | null = null;

const database = (): Promise<IDBPDatabase<Shelves>> => {
  opened ??= openDB<Shelves>('faintward', 1, {
    upgrade(db) {
      db.createObjectStore('unfinished');
      db.createObjectStore('finished', { autoIncrement: true });
    },
  });
  return opened;
};

/** Keeps the run that is being played; the last one wins. Browsers that refuse storage lose only this. */
export async function keepUnfinished(run: StoredRun): Promise<void> {
  try {
    await (await database()).put('unfinished', run, 'run');
  } catch {
    // no storage: the run goes on in memory
  }
}

export async function unfinishedRun(): Promise<StoredRun | null> {
  try {
    return (await (await database()).get('unfinished', 'run')) ?? null;
  } catch {
    return null;
  }
}

export async function forgetUnfinished(): Promise<void> {
  try {
    await (await database()).delete('unfinished', 'run');
  } catch {
    // nothing was kept
  }
}

/** Puts the run file of a finished run on the shelf. */
export async function keepFinished(title: string, text: string): Promise<void> {
  try {
    await (await database()).add('finished', { title, endedAt: new Date().toISOString(), text });
  } catch {
    // the learner can still save the file
  }
}
