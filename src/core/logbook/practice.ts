import type { Practice } from '../run/record';
import { type Book, practiceDays, sessionsIn } from './book';
import { cardOf } from './card';
import { addDays, type Day, daysBetween } from './day';

/** The window of the fifth habit, and the grace in which a due drill counts as done in time, days. */
export const WINDOW_DAYS = 28;
const IN_TIME_DAYS = 2;

/**
 * The four counts of the fifth habit over the last 28 days, today included. Runs count as days of practice; minutes are those of drills.
 * Somebody who began within the window is asked for nothing before the first day.
 */
export function practiceOf(book: Book, drills: readonly string[], today: Day): Practice {
  const from = addDays(today, 1 - WINDOW_DAYS);
  const all = practiceDays(book).filter((day) => day <= today);
  const days = all.filter((day) => day >= from);
  return {
    daysPractised: days.length,
    longestGapDays: longestGap(all[0] !== undefined && all[0] > from ? all[0] : from, days, today),
    dueShare: dueShare(book, drills, from, today),
    largestSkillShare: largestSkillShare(book, from, today),
  };
}

/** Longest time from one day of practice to the next, and from the last one to today, days. */
function longestGap(from: Day, days: readonly Day[], today: Day): number {
  const points = [from, ...days, today];
  const gaps = points.slice(1).map((day, i) => daysBetween(points[i]!, day));
  return Math.max(0, ...gaps);
}

/** Share of the drills due within the window that were done within two days of their date; those that may still be done are left out. */
function dueShare(book: Book, drills: readonly string[], from: Day, today: Day): number | null {
  const dues = drills
    .flatMap((drill) => cardOf(book, drill).dues)
    .filter(({ due, done }) => due >= from && due <= today && (done !== null || daysBetween(due, today) > IN_TIME_DAYS));
  if (dues.length === 0) return null;
  return dues.filter(({ due, done }) => done !== null && daysBetween(due, done) <= IN_TIME_DAYS).length / dues.length;
}

function largestSkillShare(book: Book, from: Day, today: Day): number {
  const seconds = new Map<string, number>();
  for (const { drill, day, seconds: s } of sessionsIn(book))
    if (day >= from && day <= today) seconds.set(drill, (seconds.get(drill) ?? 0) + s);
  const whole = [...seconds.values()].reduce((sum, s) => sum + s, 0);
  return whole === 0 ? 0 : Math.max(...seconds.values()) / whole;
}
