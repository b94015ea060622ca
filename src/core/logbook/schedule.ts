import { createEmptyCard, type Card as FsrsCard, fsrs, type Grade, Rating } from 'ts-fsrs';
import { addDays, type Day, dayOfMs, noonMs } from './day';

/**
 * When a drill is due again. The scheduler is the open one of ts-fsrs, told that one wants to keep 90 % and never wait more than 90 days;
 * its chance is off, so that the same practice gives the same days.
 */
const LONGEST_DAYS = 90;
const scheduler = fsrs({ request_retention: 0.9, maximum_interval: LONGEST_DAYS, enable_fuzz: false, enable_short_term: false });

/** How a day's first session of a drill went. */
export type Recall = 'again' | 'hard' | 'good' | 'easy';
const RATINGS: Readonly<Record<Recall, Grade>> = { again: Rating.Again, hard: Rating.Hard, good: Rating.Good, easy: Rating.Easy };

/** What the scheduler keeps of a drill. */
export type Memory = { readonly card: FsrsCard; readonly lastDay: Day; readonly dueDay: Day };

/** The memory after a session on a day; days must not go back. */
export function recalled(before: Memory | null, day: Day, recall: Recall): Memory {
  const at = noonMs(day);
  const { card } = scheduler.next(before?.card ?? createEmptyCard(at), at, RATINGS[recall]);
  // It keeps a better answer's date a day behind a worse one's, which may lead past the longest wait.
  const dueMs = Math.min(card.due.getTime(), noonMs(addDays(day, LONGEST_DAYS)));
  return { card, lastDay: day, dueDay: dayOfMs(dueMs) };
}

/** Chance that the skill is still there on a day, 0 to 1. */
export const keptShare = (memory: Memory, day: Day): number => scheduler.get_retrievability(memory.card, noonMs(day), false);
