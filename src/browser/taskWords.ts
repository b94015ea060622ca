import { namedTag, taskOf } from '../core/run/task';
import type { Scenario } from '../core/scenario/schema';

/** What is asked for beyond "find a tag", in a sentence or two; empty where nothing is. */
export function taskWords(scenario: Pick<Scenario, 'task' | 'tags' | 'limits'>): string {
  const { walkM } = scenario.limits;
  const bound = walkM === undefined ? '' : `You may walk ${walkM} m, no more.`;
  return [askedWords(scenario), bound].filter((part) => part !== '').join(' ');
}

function askedWords(scenario: Pick<Scenario, 'task' | 'tags'>): string {
  const task = taskOf(scenario);
  const named = namedTag(task);
  const tag = scenario.tags.length > 1 && named !== null ? scenario.tags[named] : undefined;
  const which = tag ? `${tag.name}, ${tag.frequencyMHz.toFixed(4)} MHz` : 'the tag';
  if (task.kind === 'fix') {
    const bound = task.keepAwayM === undefined ? 'you need not walk to it' : `nearer than ${task.keepAwayM} m to it the run is over`;
    return `Fix ${which} from stations: mark bearings, ask for the fix, declare it; ${bound}.`;
  }
  return tag ? `Find ${which}. A find at another tag does not count.` : '';
}
