import { taskOf } from '../../core/run/task';
import type { Scenario } from '../../core/scenario/schema';
import type { Outcome } from '../../core/technique/grade';

/** Why the run ended, where a bound of the exercise ended it; empty elsewhere. */
export function endingWords(scenario: Pick<Scenario, 'task' | 'limits'>, { ending }: Pick<Outcome, 'ending'>): string {
  const { limits } = scenario;
  const task = taskOf(scenario);
  if (ending === 'too-near' && task.kind === 'fix') return `The run ended where you came nearer than ${task.keepAwayM} m to the tag.`;
  if (ending === 'walked-out') return `The run ended when you had walked the ${limits.walkM} m that there were.`;
  return '';
}
