import { HABIT_IDS, type HabitId } from '../technique/habit';
import {
  icc21,
  type MeanInterval,
  meanInterval,
  meanOf,
  minimalDetectableChange,
  risesBy,
  runsFor,
  shareInterval,
  standardError,
} from './validityNumbers';
import type { Scores, StudyRow } from './validityRun';

/** The habit that each fault is a fault of: largest doses only. */
export const FAULTS: readonly { readonly walker: string; readonly own: HabitId }[] = [
  { walker: 'loud-handed-20', own: 'quietGain' },
  { walker: 'fidgety-4', own: 'setThenSweep' },
  { walker: 'rooted', own: 'walkAndListen' },
  { walker: 'deaf', own: 'walkAndListen' },
  { walker: 'weathercock', own: 'walkAndListen' },
  { walker: 'low-lying', own: 'clearView' },
  { walker: 'crammer', own: 'keepPractising' },
];

const DOSES: readonly { readonly own: HabitId; readonly walkers: readonly string[] }[] = [
  { own: 'quietGain', walkers: ['steady', 'loud-handed-6', 'loud-handed-12', 'loud-handed-20'] },
  { own: 'setThenSweep', walkers: ['steady', 'fidgety-1', 'fidgety-2', 'fidgety-3', 'fidgety-4'] },
];

const OWN_DROP = 25;
const OTHERS_MOVE = 5;
const FIND_SHARE = 0.95;
const WANTED_RELIABILITY = 0.8;
export const INVARIANT_WITHIN = 1;

export type FindLine = {
  readonly what: string;
  readonly within: MeanInterval;
  readonly misses: readonly string[];
  readonly holds: boolean;
};

/** Point 1: found within the bound. */
export function findLine(what: string, rows: readonly StudyRow[]): FindLine {
  const inTime = ({ found, timeS, boundS }: StudyRow) => found && timeS <= boundS;
  const within = shareInterval(rows.filter(inTime).length, rows.length);
  const misses = rows
    .filter((row) => !inTime(row))
    .map(
      ({ exercise, found, timeS, boundS }) =>
        `${exercise}: ${found ? `found in ${timeS.toFixed(0)} s` : 'not found'}, bound ${boundS.toFixed(0)} s`,
    );
  return { what, within, misses, holds: within.mean >= FIND_SHARE };
}

export type MatrixCell = { readonly habit: HabitId; readonly own: boolean; readonly moved: MeanInterval | null; readonly holds: boolean };
export type MatrixLine = {
  readonly walker: string;
  readonly cells: readonly MatrixCell[];
  /** The own habit, in those exercises alone in which both walks showed it. */
  readonly ownWhereShown: MeanInterval | null;
};

/** Point 2: each fault against the steady walk of the same exercise. A habit not shown in either has not moved. */
export function faultMatrix(rows: readonly StudyRow[]): readonly MatrixLine[] {
  return FAULTS.map(({ walker, own }) => ({
    walker,
    ownWhereShown: meanInterval(
      pairsOf(rows, walker).flatMap(([steady, faulty]) => {
        const [before, after] = [steady.scores[own], faulty.scores[own]];
        return before === null || after === null ? [] : [after - before];
      }),
    ),
    cells: HABIT_IDS.map((habit): MatrixCell => {
      const moved = meanInterval(pairsOf(rows, walker).map(([steady, faulty]) => movement(steady.scores[habit], faulty.scores[habit])));
      const isOwn = habit === own;
      return { habit, own: isOwn, moved, holds: moved !== null && (isOwn ? moved.mean <= -OWN_DROP : Math.abs(moved.mean) <= OTHERS_MOVE) };
    }),
  }));
}

const movement = (steady: number | null, faulty: number | null): number => (steady === null || faulty === null ? 0 : faulty - steady);

function pairsOf(rows: readonly StudyRow[], walker: string): readonly (readonly [StudyRow, StudyRow])[] {
  return rows.flatMap((faulty): readonly (readonly [StudyRow, StudyRow])[] => {
    if (faulty.walker !== walker) return [];
    const steady = rows.find((row) => row.walker === 'steady' && row.exercise === faulty.exercise);
    return steady ? [[steady, faulty]] : [];
  });
}

export type DoseLine = {
  readonly habit: HabitId;
  readonly doses: readonly { readonly walker: string; readonly score: MeanInterval | null }[];
  readonly rises: number;
  readonly holds: boolean;
};

/** Point 3: mean score by dose, and by how much it rises anywhere against its non-increasing fit. */
export function doseLines(rows: readonly StudyRow[]): readonly DoseLine[] {
  return DOSES.map(({ own, walkers }) => {
    const doses = walkers.map((walker) => ({ walker, score: meanInterval(shownScores(rows, walker, own)) }));
    const rises = risesBy(doses.flatMap(({ score }) => (score ? [score.mean] : [])));
    return { habit: own, doses, rises, holds: rises === 0 };
  });
}

const shownScores = (rows: readonly StudyRow[], walker: string, habit: HabitId): readonly number[] =>
  rows.filter((row) => row.walker === walker).flatMap(({ scores }) => scores[habit] ?? []);

export type LuckLine = {
  readonly what: string;
  readonly right: MeanInterval;
  readonly technique: MeanInterval | null;
  readonly holds: boolean;
};

/** Point 4: forced cases in which technique came out on its own side, whatever the luck. Not ranked is not on it. */
export function luckLine(
  what: string,
  rows: readonly StudyRow[],
  forced: (row: StudyRow) => boolean,
  rightSide: (technique: number) => boolean,
): LuckLine {
  const cases = rows.filter(forced);
  const right = shareInterval(cases.filter(({ technique }) => technique !== null && rightSide(technique)).length, cases.length);
  return {
    what,
    right,
    technique: meanInterval(cases.flatMap(({ technique }) => technique ?? [])),
    holds: cases.length > 0 && right.mean >= FIND_SHARE,
  };
}

export type InvarianceRow = {
  readonly exercise: string;
  readonly change: string;
  readonly before: Partial<Scores>;
  readonly after: Partial<Scores>;
};
export type InvarianceLine = {
  readonly change: string;
  readonly largest: Readonly<Record<string, number | null>>;
  readonly holds: boolean;
};

/** Point 5: largest difference by habit; shown once and not the other time is no invariance. */
export function invarianceLines(rows: readonly InvarianceRow[]): readonly InvarianceLine[] {
  return [...new Set(rows.map(({ change }) => change))].map((change) => {
    const of = rows.filter((row) => row.change === change);
    const largest = Object.fromEntries(
      HABIT_IDS.slice(0, 4).map((habit) => [habit, Math.max(...of.map(({ before, after }) => differenceOf(before[habit], after[habit])))]),
    );
    return { change, largest, holds: Object.values(largest).every((by) => by <= INVARIANT_WITHIN) };
  });
}

function differenceOf(before: number | null | undefined, after: number | null | undefined): number {
  if (typeof before === 'number' && typeof after === 'number') return Math.abs(before - after);
  return before === after ? 0 : 100;
}

export type ReliabilityLine = {
  readonly habit: HabitId | 'technique';
  /** Means of the two halves of the exercises, walkers as subjects. */
  readonly iccHalves: number | null;
  readonly iccOneRun: number | null;
  readonly runsWanted: number | null;
  readonly detectable: number | null;
  readonly exercises: number;
};

/** Point 6: walkers are the subjects; raters are the two halves of the exercises, and single exercises. */
export function reliabilityLines(rows: readonly StudyRow[]): readonly ReliabilityLine[] {
  return ([...HABIT_IDS, 'technique'] as const).map((habit) => {
    const table = shownTable(rows, habit);
    const half = Math.floor((table[0]?.length ?? 0) / 2);
    const halves = half === 0 ? [] : table.map((row) => [meanOf(row.slice(0, half)), meanOf(row.slice(half, 2 * half))]);
    const single = icc21(table);
    const error = standardError(table);
    return {
      habit,
      iccHalves: icc21(halves),
      iccOneRun: single,
      runsWanted: runsFor(WANTED_RELIABILITY, single),
      detectable: error === null ? null : minimalDetectableChange(error),
      exercises: table[0]?.length ?? 0,
    };
  });
}

/** Walkers by exercises, those exercises only in which every walker showed the habit. */
function shownTable(rows: readonly StudyRow[], habit: HabitId | 'technique'): readonly (readonly number[])[] {
  const walkers = [...new Set(rows.map(({ walker }) => walker))];
  const scoreOf = (walker: string, exercise: string): number | null => {
    const row = rows.find((one) => one.walker === walker && one.exercise === exercise);
    return row ? (habit === 'technique' ? row.technique : row.scores[habit]) : null;
  };
  const exercises = [...new Set(rows.map(({ exercise }) => exercise))].filter((exercise) =>
    walkers.every((walker) => scoreOf(walker, exercise) !== null),
  );
  return walkers.map((walker) => exercises.map((exercise) => scoreOf(walker, exercise)!));
}
