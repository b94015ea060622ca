import type { Debriefing } from '../core/debrief/debriefing';
import { DRILLS } from '../core/drills/catalogue';
import { practiceOf } from '../core/logbook/practice';
import type { RunRecord } from '../core/logbook/record';
import type { Practice } from '../core/run/record';
import { TICKS_PER_S } from '../core/run/state';
import { digestOf } from '../core/scenario/seal';
import { HABIT_IDS } from '../core/technique/habit';
import { live, openRun } from './currentRun';
import { finishedRun } from './finishedRun';
import { askToPersist, keepInBook, openBook, today } from './storage/book';

/** The last 28 days as the logbook tells them. */
export async function practiceNow(): Promise<Practice> {
  return practiceOf(
    await openBook(),
    DRILLS.map(({ id }) => id),
    today(),
  );
}

/**
 * Enters the run of the debrief into the logbook where it was played here. Its name comes from the exercise and from when it began, so
 * that a debrief opened ten times makes one entry.
 * @returns the entry's name
 */
export function enterRun(grade: Debriefing['grade']): string | null {
  const [about, open, now] = [finishedRun.peek(), openRun.peek(), live.peek()];
  if (!about?.begunAt || about.by !== 'person' || about.key === null || !open || !now) return null;
  const { scenario } = open.exercise;
  const digest = digestOf(scenario);
  const seconds = now.state.tick / TICKS_PER_S;
  const record: RunRecord = {
    id: `run-${about.begunAt}-${digest.slice(0, 12)}`,
    atMs: Date.parse(about.begunAt) + Math.round(1_000 * seconds),
    day: about.begunAt.slice(0, 10),
    kind: 'run',
    title: scenario.title.slice(0, 80),
    digest,
    technique: grade.technique,
    habits: Object.fromEntries(HABIT_IDS.map((id) => [id, grade.habits[id].score])),
    found: grade.outcome.found,
    minutes: Math.min(300, seconds / 60),
  };
  void keepInBook([record]).then(askToPersist);
  return record.id;
}
