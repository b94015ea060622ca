import type { Staircase } from '../drills/staircase';
import { type Book, sessionsOf } from './book';
import type { Day } from './day';
import type { SessionRecord } from './record';
import { type Memory, type Recall, recalled } from './schedule';

/** All that is known of one drill of a learner; worked out from the book, never kept. */
export type Card = {
  readonly drill: string;
  readonly sessions: readonly SessionRecord[];
  /** Where the staircase goes on; `null` for a drill that is new. */
  readonly stair: Staircase | null;
  /** `null` for a drill that is new. */
  readonly memory: Memory | null;
  /** Days on which it was due, each with the day on which it was done; `null` where it has not been done since. */
  readonly dues: readonly { readonly due: Day; readonly done: Day | null }[];
};

/**
 * How well a session went, from its share of right answers: it began where the staircase stood, at which four in five ought to be right
 * (our choice of bounds).
 */
export const recallOf = (rightShare: number): Recall =>
  rightShare < 0.5 ? 'again' : rightShare < 0.7 ? 'hard' : rightShare <= 0.9 ? 'good' : 'easy';

/** The card of a drill. A day's first session moves it; more of the same day is practice that changes no date. */
export function cardOf(book: Book, drill: string): Card {
  const sessions = sessionsOf(book, drill);
  let memory: Memory | null = null;
  const dues: { due: Day; done: Day | null }[] = [];
  for (const { day, rightShare } of sessions) {
    if (memory && day <= memory.lastDay) continue;
    // What is practised before it is due was not due: its date moves on.
    if (memory && day >= memory.dueDay) dues.push({ due: memory.dueDay, done: day });
    memory = recalled(memory, day, recallOf(rightShare));
  }
  if (memory) dues.push({ due: memory.dueDay, done: null });
  const last = sessions.at(-1);
  return { drill, sessions, stair: last ? { level: last.level, streak: last.streak, erred: last.erred } : null, memory, dues };
}
