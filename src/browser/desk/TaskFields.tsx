import type { Scenario } from '../../core/scenario/schema';
import { draft, setField } from './deskState';
import { ChoiceField, NumberField } from './fields';

type Task = NonNullable<Scenario['task']>;
const KIND_WORDS = { find: 'Find it: walk to it', fix: 'Fix it: from stations' } as const;
const ANY = 'any';

/** What is asked of the learner: to find or to fix, any tag or a certain one. */
export function TaskFields() {
  const scenario = draft.value!;
  const kind = scenario.task?.kind ?? 'find';
  const tag = scenario.task?.tag;
  const set = (next: Task) => setField('task', next.kind === 'find' && next.tag === undefined ? undefined : next, 'change the task');
  const named = tag === undefined ? {} : { tag };
  return (
    <>
      <ChoiceField
        path="task.kind"
        label="Task"
        words={KIND_WORDS}
        chosen={kind}
        onChoose={(next) =>
          set(next === 'fix' ? { kind: 'fix', ...(scenario.tags.length > 1 ? { tag: tag ?? 0 } : {}) } : { kind: 'find', ...named })
        }
      />
      <ChoiceField
        path="task.tag"
        label="Which tag"
        words={tagChoices(scenario)}
        chosen={String(tag ?? ANY)}
        onChoose={(which) => {
          const { tag: _before, ...rest } = scenario.task ?? { kind: 'find' };
          set(which === ANY ? rest : { ...rest, tag: Number(which) });
        }}
      />
      {kind === 'fix' && <NumberField path="task.keepAwayM" label="Ends nearer to it than" unit="m" step={50} optional />}
    </>
  );
}

const tagChoices = ({ tags }: Scenario): Readonly<Record<string, string>> => ({
  ...Object.fromEntries(tags.map(({ name, frequencyMHz }, i) => [String(i), `${name || `Tag ${i + 1}`}, ${frequencyMHz} MHz`])),
  [ANY]: tags.length === 1 ? 'The tag' : 'Any of them',
});
