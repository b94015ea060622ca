import type { Scenario } from '../../core/scenario/schema';
import { draft, setField } from './deskState';
import { ChoiceField } from './fields';

const ANY = 'any';

/** What is asked of the learner: a tag, whichever, or a certain one. */
export function TaskFields() {
  const scenario = draft.value!;
  return (
    <ChoiceField
      path="task"
      label="Tag to find"
      words={tagChoices(scenario)}
      chosen={String(scenario.task?.tag ?? ANY)}
      onChoose={(which) => setField('task', which === ANY ? undefined : { kind: 'find', tag: Number(which) }, 'change the task')}
    />
  );
}

const tagChoices = ({ tags }: Scenario): Readonly<Record<string, string>> => ({
  ...Object.fromEntries(tags.map(({ name, frequencyMHz }, i) => [String(i), `${name || `Tag ${i + 1}`}, ${frequencyMHz} MHz`])),
  [ANY]: tags.length === 1 ? 'The tag' : 'Any of them',
});
