import type { Exercise } from '../run/exercise';
import type { Replay } from '../run/replay';

/** The five habits, in the order they are shown. */
export const HABIT_IDS = ['quietGain', 'setThenSweep', 'walkAndListen', 'clearView', 'keepPractising'] as const;
export type HabitId = (typeof HABIT_IDS)[number];

/** A stretch of the run that earned or cost something, with what to do next time. */
export type Moment = {
  readonly fromS: number;
  readonly toS: number;
  /** What happened, a sentence that names the moment. */
  readonly what: string;
  /** What to do next time, a sentence in the imperative. */
  readonly next: string;
  /** How much it counts, 0 or more, comparable within one habit. */
  readonly weight: number;
  readonly good: boolean;
};

/** A habit that the run gave no chance to show has score `null`, never 0 and never 100. */
export type HabitResult = {
  readonly score: number | null;
  /** Parts by name, 0 to 100, or `null` where that part was not shown. */
  readonly components: Readonly<Record<string, number | null>>;
  readonly moments: readonly Moment[];
  /** Why it is not shown, a sentence; empty where it is. */
  readonly whyNotShown: string;
};

/** What habits 1 to 4 are judged from: the exercise, and the run replayed with the world's truth. */
export type Evidence = { readonly exercise: Exercise; readonly run: Replay };

export type Habit = { readonly id: HabitId; readonly name: string; readonly judge: (evidence: Evidence) => HabitResult };

export const notShown = (why: string, components: HabitResult['components'] = {}): HabitResult => ({
  score: null,
  components,
  moments: [],
  whyNotShown: why,
});

/** A value that gives 100 at `full`, 0 at `none`, linear between, whichever is larger. */
export function linearScore(value: number, full: number, none: number): number {
  const share = (value - none) / (full - none);
  return 100 * Math.min(1, Math.max(0, share));
}

/** Mean of the shown parts by weight; `null` where none is shown. */
export function weightedMean(parts: readonly { readonly score: number | null; readonly weight: number }[]): number | null {
  const shown = parts.filter((part): part is { score: number; weight: number } => part.score !== null && part.weight > 0);
  const weight = shown.reduce((sum, part) => sum + part.weight, 0);
  return weight === 0 ? null : shown.reduce((sum, part) => sum + part.score * part.weight, 0) / weight;
}

/** The two best and the two worst, in time order. */
export function telling(moments: readonly Moment[]): readonly Moment[] {
  const top = (good: boolean) =>
    moments
      .filter((moment) => moment.good === good && moment.weight > 0)
      .sort((a, b) => b.weight - a.weight)
      .slice(0, 2);
  return [...top(true), ...top(false)].sort((a, b) => a.fromS - b.fromS);
}

/** Minutes and seconds into the run, as sentences say it. */
export const clock = (timeS: number): string => `${Math.floor(timeS / 60)}:${String(Math.floor(timeS % 60)).padStart(2, '0')}`;
