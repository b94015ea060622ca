import type { BlindResult } from '../drills/blindTest';
import type { SessionKind } from '../drills/session';
import type { HabitId } from '../technique/habit';
import type { Day } from './day';

/** What every entry of the logbook has: a name that no other entry has, when it was made, and on which day where the learner was. */
type Entry = { readonly id: string; readonly atMs: number; readonly day: Day };

/** A minute of one drill. */
export type SessionRecord = Entry & {
  readonly kind: 'session';
  readonly drill: string;
  readonly as: SessionKind;
  /** The session's number in the drill's unit. */
  readonly number: number;
  readonly rightShare: number;
  /** Where the staircase stood at the end. */
  readonly level: number;
  readonly streak: number;
  readonly erred: boolean;
  readonly seconds: number;
  /** Captions were on: the eye helped. */
  readonly aided: boolean;
};

/** A run on the Ground, as it was graded. */
export type RunRecord = Entry & {
  readonly kind: 'run';
  readonly title: string;
  readonly digest: string;
  readonly technique: number | null;
  readonly habits: Readonly<Partial<Record<HabitId, number | null>>>;
  readonly found: boolean;
  readonly minutes: number;
};

export type CheckRecord = Entry & {
  readonly kind: 'check';
  readonly device: string;
  readonly volumeDb: number;
  readonly thresholdDb: number;
};

export type BlindRecord = Entry & { readonly kind: 'blind'; readonly result: BlindResult };

/** A note, or what became of it: of several entries of one note the newest holds, and an empty one strikes it out. */
export type NoteRecord = Entry & { readonly kind: 'note'; readonly note: string; readonly text: string };

/** The book was saved as a file. */
export type BackupRecord = Entry & { readonly kind: 'backup' };

export type BookRecord = SessionRecord | RunRecord | CheckRecord | BlindRecord | NoteRecord | BackupRecord;
