import { TICKS_PER_S } from '../run/state';
import { checkBeepsAmong, isComplete, offNoteDb, type TagCheck, tagCheckOf } from '../run/tagCheck';
import { soughtTag } from '../run/task';
import type { Evidence } from '../technique/habit';

/** The check of the tag that is sought, and what leaving without its note cost, dB. It does not enter the grade. */
export type TagCheckJudged = { readonly check: TagCheck; readonly offNoteDb: number | null };

/** `null` where the exercise did not ask for it. */
export function judgeTagCheck({ exercise, run }: Evidence): TagCheckJudged | null {
  if (exercise.scenario.tagCheck !== true) return null;
  const beeps = run.pulses.flatMap((pulse) => {
    const before = run.states[Math.floor(pulse.heard.atS * TICKS_PER_S + 1e-6)];
    return before ? checkBeepsAmong(before, [pulse]) : [];
  });
  const tag = soughtTag(exercise.scenario);
  return { check: tagCheckOf(exercise.scenario, tag, beeps, run.state.beats), offNoteDb: offNoteDb(run.states, run.pulses, tag) };
}

/** One or two sentences of it. */
export function tagCheckSentence({ check, offNoteDb: lostDb }: TagCheckJudged): string {
  const missing = [
    ...(check.note ? [] : ['the clearest note at a faint level']),
    ...(check.upright && check.flat ? [] : ['hearing it upright and flat']),
    ...(check.rate ? [] : ['counting its rate']),
  ];
  const checked = isComplete(check) ? 'You checked the tag before leaving.' : `You left without ${missing.join(', ')}.`;
  return lostDb !== null && lostDb >= 1 ? `${checked} Off its note it was heard ${Math.round(lostDb)} dB weaker on the way.` : checked;
}
