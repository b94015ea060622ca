import { namedTag, taskOf } from '../core/run/task';
import type { Scenario } from '../core/scenario/schema';

/** What is asked for beyond "find a tag", in a sentence or two; empty where nothing is. */
export function taskWords(scenario: Pick<Scenario, 'task' | 'tags'>): string {
  const named = namedTag(taskOf(scenario));
  const tag = named === null ? undefined : scenario.tags[named];
  if (!tag || scenario.tags.length === 1) return '';
  return `Find ${tag.name}, ${tag.frequencyMHz.toFixed(4)} MHz. A find at another tag does not count.`;
}
