import type { Book } from './book';
import { type Card, cardOf } from './card';
import { type Day, daysBetween } from './day';
import { keptShare } from './schedule';

/** Why a drill stands on today's card. */
export type Because = 'due' | 'new' | 'soon';
export type TodayItem = { readonly drill: string; readonly because: Because; readonly overdueDays: number; readonly done: boolean };

/** Minutes that a drill takes with its example, its sentence and a look at the truth; and what a day's card may take. */
const MINUTES_A_DRILL = 1.5;
const MINUTES_A_DAY = 10;
const MOST_ON_A_CARD = Math.floor(MINUTES_A_DAY / MINUTES_A_DRILL);
/** So many drills are begun on one day at most. */
const NEW_A_DAY = 3;

/** The drills that are due on a day, those whose skill has faded most first. */
export function dueOn(book: Book, drills: readonly string[], day: Day): readonly Card[] {
  return drills
    .map((drill) => cardOf(book, drill))
    .filter(({ memory }) => memory !== null && memory.dueDay <= day)
    .sort((a, b) => keptShare(a.memory!, day) - keptShare(b.memory!, day) || drills.indexOf(a.drill) - drills.indexOf(b.drill));
}

/**
 * Today's card: about ten minutes. What is due, then up to three new ones in the order in which they are taught, then what will be due
 * next. What was done today stays on it, marked.
 */
export function todaysCard(book: Book, drills: readonly string[], day: Day): readonly TodayItem[] {
  const before = book.filter((record) => record.day < day);
  const doneToday = new Set(book.flatMap((record) => (record.kind === 'session' && record.day === day ? [record.drill] : [])));
  const due = dueOn(before, drills, day);
  const cards = drills.map((drill) => cardOf(before, drill));
  const fresh = cards.filter(({ memory }) => memory === null).slice(0, NEW_A_DAY);
  const soon = cards
    .filter(({ memory }) => memory !== null && memory.dueDay > day)
    .sort((a, b) => (a.memory!.dueDay < b.memory!.dueDay ? -1 : a.memory!.dueDay > b.memory!.dueDay ? 1 : 0));
  const item =
    (because: Because) =>
    ({ drill, memory }: Card): TodayItem => ({
      drill,
      because,
      overdueDays: because === 'due' ? daysBetween(memory!.dueDay, day) : 0,
      done: doneToday.has(drill),
    });
  return [...due.map(item('due')), ...fresh.map(item('new')), ...soon.map(item('soon'))].slice(0, MOST_ON_A_CARD);
}
