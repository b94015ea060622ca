import type { Scenario } from '../scenario/schema';

/** What is asked of the learner. */
export type Task = NonNullable<Scenario['task']>;

/** Left out, it is what it always was: find a tag, whichever. */
const FIND_ANY: Task = { kind: 'find' };

export const taskOf = ({ task }: Pick<Scenario, 'task'>): Task => task ?? FIND_ANY;

/** The tag that is asked for by number; `null` where any of them counts. */
export const namedTag = ({ tag }: Task): number | null => tag ?? null;

/** The tag that start, par and rehearsals are measured by: the one asked for, else the first. */
export const soughtTag = (scenario: Pick<Scenario, 'task'>): number => namedTag(taskOf(scenario)) ?? 0;
