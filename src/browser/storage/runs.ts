import { signal } from '@preact/signals';
import type { DBSchema } from 'idb';
import type { Ratings } from '../../core/debrief/moments';
import type { Entry } from '../../core/run/actions';
import type { Pulse } from '../../core/run/pulse';
import type { Scenario } from '../../core/scenario/schema';
import { type KeepFault, shelfOf } from './shelf';

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

/** What is added to an unfinished run at a time. The first part has all that does not change, and says from where the others count. */
export type RunPart = Pick<StoredRun, 'log' | 'pulses' | 'tick'> & {
  readonly head?: Omit<StoredRun, 'log' | 'pulses' | 'tick'>;
  /** Entries and pulses in the parts before: a part that does not join on is not taken. */
  readonly fromEntry: number;
  readonly fromPulse: number;
  readonly keptAtMs: number;
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
  /** A run in parts under its name and their numbers; under `run` a whole one of earlier versions. */
  unfinished: { key: string; value: RunPart | StoredRun };
  finished: { key: number; value: FinishedRecord };
}

export const shelves = shelfOf<Shelves>('faintward', 1, (db) => {
  db.createObjectStore('unfinished');
  db.createObjectStore('finished', { autoIncrement: true });
});

/** Whether runs are kept on this device as they are played and when they end. */
export const runKeeping = signal<KeepFault>('');
