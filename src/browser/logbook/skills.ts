import { DRILLS } from '../../core/drills/catalogue';
import { numberText } from '../../core/drills/session';
import { type Book, runsIn, sessionsOf } from '../../core/logbook/book';
import { type Trend, trendOf } from '../../core/logbook/trend';
import type { HabitId } from '../../core/technique/habit';

/** One row of numbers with what it says: a drill's, or a habit's over the runs. */
export type SkillRow = {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly numbers: readonly number[];
  readonly text: (number: number) => string;
  readonly trend: Trend | null;
  /** Top of the scale where there is one. */
  readonly most?: number;
};

const HABITS: readonly (readonly [HabitId, string])[] = [
  ['quietGain', 'Quiet gain'],
  ['setThenSweep', 'Set, then sweep'],
  ['walkAndListen', 'Walk and listen'],
  ['clearView', 'Clear view'],
];

/** Every habit and skill that has numbers, oldest first in each. */
export function skillRows(book: Book): readonly SkillRow[] {
  const habits = HABITS.map(([id, title]): SkillRow => {
    const numbers = runsIn(book).flatMap(({ habits: scores }) => scores[id] ?? []);
    return { id, title, unit: '', numbers, text: (n) => String(Math.round(n)), trend: trendOf(numbers, false), most: 100 };
  });
  const drills = DRILLS.map((drill): SkillRow => {
    const numbers = sessionsOf(book, drill.id).map(({ number }) => number);
    return {
      id: drill.id,
      title: drill.title,
      unit: drill.unit,
      numbers,
      text: (n) => numberText(drill, n),
      trend: trendOf(numbers, true),
    };
  });
  return [...habits, ...drills].filter(({ numbers }) => numbers.length > 0);
}
