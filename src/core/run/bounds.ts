import type { Scenario } from '../scenario/schema';
import { distanceM } from '../units/frames';
import { type Ending, onFootM, type RunState, TICKS_PER_S, timeS } from './state';
import { tagAt } from './tagMotion';
import { soughtTag, taskOf } from './task';

/** The bound of the exercise that has been reached, or `null`: a run ends by itself there. */
export function endedByBound(scenario: Scenario, state: RunState): Ending | null {
  const task = taskOf(scenario);
  if (task.kind === 'fix' && task.keepAwayM !== undefined) {
    if (distanceM(state.at, tagAt(scenario, soughtTag(scenario), timeS(state))) < task.keepAwayM) return 'too-near';
  }
  const { walkM } = scenario.limits;
  if (walkM !== undefined && onFootM(state) >= walkM) return 'walked-out';
  return state.tick >= scenario.limits.timeS * TICKS_PER_S ? 'out-of-time' : null;
}
