import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Ratings } from '../../core/debrief/moments';
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
  /** When the hearing check behind the threshold was made. */
  readonly checkedAt?: string | null;
  readonly begunAt?: string;
};

/** A finished run: its file as text, and what a debrief need not work out again. */
export type FinishedRecord = {
  readonly title: string;
  readonly endedAt: string;
  readonly text: string;
  /** With their truth, so that opening it again needs no replay. */
  readonly pulses?: readonly Pulse[];
  /** What the learner said of the five habits before the grade was shown. */
  readonly ratings?: Ratings;
  readonly outcome?: { readonly technique: number | null; readonly found: boolean; readonly timeS: number };
  /** Name of its entry in the logbook. */
  readonly entry?: string;
};

interface Shelves extends DBSchema {
  unfinished: { key: 'run'; value: StoredRun };
  finished: { key: number; value: FinishedRecord };
}

let opened: Promise<IDBPDatabase<Shelves>> | null = null;

export const shelves = (): Promise<IDBPDatabase<Shelves>> => {
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
    await (await shelves()).put('unfinished', run, 'run');
  } catch {
    // no storage: the run goes on in memory
  }
}

export async function unfinishedRun(): Promise<StoredRun | null> {
  try {
    return (await (await shelves()).get('unfinished', 'run')) ?? null;
  } catch {
    return null;
  }
}

export async function forgetUnfinished(): Promise<void> {
  try {
    await (await shelves()).delete('unfinished', 'run');
  } catch {
    // nothing was kept
  }
}
