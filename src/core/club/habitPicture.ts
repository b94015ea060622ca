import type { Practice } from '../run/record';
import type { LESSONS } from '../scenario/schema';
import { RUN_HABITS } from '../technique/grade';
import { judgePractice } from '../technique/keepPractising';
import { placedRuns } from './rank';
import type { ClubTable, RunHabitId, TableRow } from './tableRow';

/** How one habit stands in the club. Scores 0 to 100; `null` where nobody showed it. */
export type HabitStanding = {
  readonly habit: RunHabitId | 'keepPractising';
  readonly name: string;
  readonly shown: number;
  readonly of: number;
  readonly median: number | null;
  readonly lowerQuartile: number | null;
  readonly upperQuartile: number | null;
  /** Runs under 50. */
  readonly under50: number;
  /** What cost most, over all runs, in the imperative. */
  readonly next: string;
};

export type HabitPicture = { readonly habits: readonly HabitStanding[]; readonly teachNext: string };

/** Lessons of shared exercises that ask for a habit. */
const LESSONS_OF: Readonly<Record<RunHabitId, readonly (typeof LESSONS)[number][]>> = {
  quietGain: ['quiet-gain', 'back-signal', 'close-in'],
  setThenSweep: ['quiet-gain', 'axis'],
  walkAndListen: ['crossing', 'search', 'moving'],
  clearView: ['clear-view', 'bounce'],
};

/** A habit that fewer than a third of the runs show says little of the club. */
const LEAST_SHOWN_SHARE = 1 / 3;
/** A median from here up is a habit that the club has. */
const HAS_IT = 80;

/** The runs that count, each once, over all exercises. */
export const rankedRows = (table: ClubTable): readonly TableRow[] =>
  table.exercises.flatMap(({ digest }) => placedRuns(table, digest).flatMap(({ row, counts }) => (counts ? [row] : [])));

/** What the club can do, habit by habit, and what to teach next. Only runs that count are looked at. */
export function habitPicture(table: ClubTable): HabitPicture {
  const rows = rankedRows(table);
  const habits: HabitStanding[] = RUN_HABITS.map(({ id, name }) => {
    const habit = id as RunHabitId;
    return standingOf(
      habit,
      name,
      rows.length,
      scoresOf(rows, (row) => row.habits[habit]),
      nextOf(rows, habit),
    );
  });
  const practice = scoresOf(rows, ({ practice: stated }) => practiceScore(stated));
  const stated = standingOf('keepPractising', 'Keep practising (own statement)', rows.length, practice, '');
  return { habits: [...habits, stated], teachNext: teachNext(habits) };
}

/** The fifth habit from the learner's own statement, to a tenth. */
export function practiceScore(practice: Practice | null): number | null {
  const { score } = judgePractice(practice ?? undefined);
  return score === null ? null : Math.round(score * 10) / 10;
}

const scoresOf = (rows: readonly TableRow[], of: (row: TableRow) => number | null): readonly number[] =>
  rows
    .map(of)
    .filter((score) => score !== null)
    .sort((a, b) => a - b);

function standingOf(habit: HabitStanding['habit'], name: string, of: number, sorted: readonly number[], next: string): HabitStanding {
  return {
    habit,
    name,
    shown: sorted.length,
    of,
    median: quantile(sorted, 0.5),
    lowerQuartile: quantile(sorted, 0.25),
    upperQuartile: quantile(sorted, 0.75),
    under50: sorted.filter((score) => score < 50).length,
    next,
  };
}

/** Linear between the sorted values (the usual definition of spreadsheets), to a tenth. */
function quantile(sorted: readonly number[], share: number): number | null {
  if (sorted.length === 0) return null;
  const at = share * (sorted.length - 1);
  const [low, high] = [sorted[Math.floor(at)]!, sorted[Math.ceil(at)]!];
  return Math.round(10 * (low + (high - low) * (at - Math.floor(at)))) / 10;
}

/** The sentence that cost most over all runs; moments name themselves in `what`, so equal advice adds up. */
function nextOf(rows: readonly TableRow[], habit: RunHabitId): string {
  const costs = new Map<string, number>();
  for (const { habit: of, next, weight } of rows.flatMap(({ advice }) => advice)) {
    if (of === habit) costs.set(next, (costs.get(next) ?? 0) + weight);
  }
  return [...costs].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1))[0]?.[0] ?? '';
}

function teachNext(habits: readonly HabitStanding[]): string {
  const known = habits.filter(({ shown, of, median }) => median !== null && shown >= Math.max(1, of * LEAST_SHOWN_SHARE));
  const weakest = known.sort((a, b) => a.median! - b.median! || b.under50 - a.under50)[0];
  if (!weakest) return 'No habit was shown by a third of the runs: walk longer exercises before choosing what to teach.';
  const numbers = `median ${Math.round(weakest.median!)}, ${weakest.under50} of ${weakest.shown} under 50`;
  if (weakest.median! >= HAS_IT) return `No habit stands out: the weakest is ${weakest.name} (${numbers}). Raise the level.`;
  const lessons = LESSONS_OF[weakest.habit as RunHabitId].join(', ');
  const next = weakest.next === '' ? '' : ` ${weakest.next}`;
  return `Teach next: ${weakest.name} (${numbers}).${next} Exercises with the lesson ${lessons} ask for it.`;
}
