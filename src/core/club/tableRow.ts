import type { Practice } from '../run/record';
import type { Scenario } from '../scenario/schema';
import type { Outcome } from '../technique/grade';
import type { HabitId } from '../technique/habit';

export type RunHabitId = Exclude<HabitId, 'keepPractising'>;

/** What the check of a run file came to; "aided" stands beside it, for an aided run may be any of them. */
export const REPLAY_MARKS = ['checked', 'does not replay', 'other version'] as const;
export type ReplayMark = (typeof REPLAY_MARKS)[number];

/** A place on a track: whole seconds into the run, metres east and north. */
export type TrackPoint = readonly [number, number, number];

/** What one habit asks its learner to do next time, by the moment that cost most. */
export type Advice = { readonly habit: RunHabitId; readonly next: string; readonly weight: number };

/** An exercise of the table: what is needed to name it, to see that it is the same one, and to draw its map. */
export type TableExercise = {
  readonly digest: string;
  readonly title: string;
  readonly lesson: Scenario['lesson'];
  readonly level: number;
  readonly sizeM: number;
  readonly seed: string;
  readonly timeS: number;
  readonly findWithinM: number;
  readonly startAt: readonly [number, number];
  readonly tags: readonly { readonly name: string; readonly at: readonly [number, number] }[];
};

/** One run, replayed and graded here. Scores are to a tenth; `null` is not shown, not ranked or unknown. */
export type TableRow = {
  /** Digest of what was done in which exercise: the same for two files of one walk. */
  readonly run: string;
  /** As the file gives it; may be empty. */
  readonly name: string;
  readonly by: 'person' | 'walker';
  /** Digest of its exercise. */
  readonly exercise: string;
  readonly mark: ReplayMark;
  /** It replays here and is as it was written; only such runs take places. */
  readonly sound: boolean;
  /** Why it is not checked, sentences. */
  readonly reasons: readonly string[];
  readonly aided: boolean;
  /** An instructor watched the run or changed it; left out where none did. */
  readonly withInstructor?: boolean | undefined;
  readonly program: string;
  /** Version that graded it. */
  readonly gradedBy: string;
  readonly begunAt: string | null;
  readonly technique: number | null;
  readonly habits: Readonly<Record<RunHabitId, number | null>>;
  /** The learner's own statement, never checked. */
  readonly practice: Practice | null;
  /** `null` where the run does not replay. */
  readonly outcome: Outcome | null;
  readonly advice: readonly Advice[];
  readonly track: readonly TrackPoint[];
};

/** Many runs of one or several exercises. */
export type ClubTable = { readonly exercises: readonly TableExercise[]; readonly rows: readonly TableRow[] };

/** One person, whatever the case and the spaces of the name; a run without a name is a person of its own. */
export function personOf({ name, run }: Pick<TableRow, 'name' | 'run'>): string {
  const plain = name.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase();
  return plain === '' ? `unnamed ${run}` : plain;
}

/** How far a run is checked, and what was not as usual in it: `checked, aided, with an instructor`. */
export const marksOf = ({ mark, aided, withInstructor }: Pick<TableRow, 'mark' | 'aided' | 'withInstructor'>): string =>
  [mark, ...(aided ? ['aided'] : []), ...(withInstructor ? ['with an instructor'] : [])].join(', ');

export const wrongDeclarations = ({ declarations, ending }: Pick<Outcome, 'declarations' | 'ending'>): number =>
  declarations - (ending === 'found' ? 1 : 0);
