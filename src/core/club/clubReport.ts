import { wordsOfDigest } from '../scenario/digestWords';
import { type HabitPicture, habitPicture } from './habitPicture';
import { type Placed, placedRuns } from './rank';
import { type Reliability, reliabilityOf } from './reliability';
import { type SeasonLine, seasonOf } from './season';
import type { ClubTable, TableExercise } from './tableRow';

/** The runs of one exercise in the order of their places. */
export type ExerciseReport = {
  readonly exercise: TableExercise;
  /** Its digest as words that can be read out. */
  readonly words: string;
  readonly runs: readonly Placed[];
};

/** All that the table says: every export and every screen is made of this. */
export type ClubReport = {
  readonly exercises: readonly ExerciseReport[];
  readonly picture: HabitPicture;
  readonly season: readonly SeasonLine[];
  readonly reliability: Reliability;
  /** What somebody should look at, sentences. */
  readonly notes: readonly string[];
};

export function clubReport(table: ClubTable): ClubReport {
  const reliability = reliabilityOf(table);
  return {
    exercises: table.exercises.map((exercise) => ({
      exercise,
      words: wordsOfDigest(exercise.digest),
      runs: placedRuns(table, exercise.digest),
    })),
    picture: habitPicture(table),
    season: seasonOf(table, reliability),
    reliability,
    notes: lookAlikes(table.exercises),
  };
}

/** Exercises that go by the same title or seed and are not the same: one is an edited copy, and their runs can't be compared. */
function lookAlikes(exercises: readonly TableExercise[]): readonly string[] {
  return exercises.flatMap((exercise, i) => {
    const twin = exercises.slice(0, i).find(({ title, seed }) => title === exercise.title || seed === exercise.seed);
    if (!twin) return [];
    const [a, b] = [wordsOfDigest(twin.digest), wordsOfDigest(exercise.digest)];
    return [`“${exercise.title}” is in two editions: ${a}, and ${b}. One is an edited copy; each is ranked by itself.`];
  });
}
