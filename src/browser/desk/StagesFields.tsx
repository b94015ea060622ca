import { withField } from '../../core/desk/field';
import type { StagePlan } from '../../core/run/stages';
import type { Scenario } from '../../core/scenario/schema';
import { draft, edit } from './deskState';
import { ChoiceField, FieldFaults, NumberField, PlaceFields, TickField, WordsField } from './fields';

type After = StagePlan['after'];

/** As many as the format holds. */
const MOST_STAGES = 8;

const WORDS: Readonly<Record<After['kind'], string>> = {
  bearings: 'Bearings are marked',
  pin: 'A guess pin is set',
  'on-foot': 'The vehicle is left, having driven',
  reached: 'A place is reached',
  walked: 'So far was walked',
  time: 'So much time is gone',
};

/** What each kind begins with. */
function firstOf(kind: After['kind'], { start }: Scenario): After {
  switch (kind) {
    case 'bearings':
      return { kind, count: 2 };
    case 'reached':
      return { kind, at: [...start.at], withinM: 50 };
    case 'walked':
      return { kind, m: 500 };
    case 'time':
      return { kind, s: 300 };
    default:
      return { kind };
  }
}

/** Texts that come on the way, each after something was done: an exercise in parts. */
export function StagesFields() {
  const scenario = draft.value!;
  const stages = scenario.stages ?? [];
  const laid = (next: readonly StagePlan[], deed: string) =>
    edit(deed, (before) => withField(before, 'stages', next.length > 0 ? next : undefined));
  const setKind = (i: number, kind: After['kind']) =>
    edit('change what a text waits for', (before) => withField(before, `stages.${i}.after`, firstOf(kind, before)));
  return (
    <section class="desk-own desk-field-wide" aria-label="Texts on the way">
      {stages.map(({ after }, i) => (
        <fieldset key={i} class="desk-form desk-rule">
          <legend>Part {i + 2}</legend>
          <ChoiceField
            path={`stages.${i}.after.kind`}
            label="Comes when"
            words={WORDS}
            chosen={after.kind}
            onChoose={(kind) => setKind(i, kind)}
          />
          <button
            type="button"
            onClick={() =>
              laid(
                stages.filter((_stage, j) => j !== i),
                `remove part ${i + 2}`,
              )
            }
          >
            Remove part {i + 2}
          </button>
          {after.kind === 'bearings' && <NumberField path={`stages.${i}.after.count`} label="Bearings" unit="since the last text" />}
          {after.kind === 'walked' && <NumberField path={`stages.${i}.after.m`} label="Walked" unit="m since the last text" step={50} />}
          {after.kind === 'time' && <NumberField path={`stages.${i}.after.s`} label="Time" unit="s since the last text" step={30} />}
          {after.kind === 'reached' && (
            <>
              <PlaceFields path={`stages.${i}.after.at`} name={`the place of part ${i + 2}`} />
              <NumberField path={`stages.${i}.after.withinM`} label="Within" unit="m" step={10} />
            </>
          )}
          <WordsField path={`stages.${i}.text`} label={`Text of part ${i + 2}`} long />
          {scenario.limits.vehicle && <TickField path={`stages.${i}.vehicleGoes`} label="The vehicle drives off with it" orNone />}
          <FieldFaults path={`stages.${i}`} alone />
        </fieldset>
      ))}
      <div class="desk-deeds">
        <button
          type="button"
          disabled={stages.length >= MOST_STAGES}
          onClick={() => laid([...stages, { after: firstOf('bearings', scenario), text: 'Now walk toward it.' }], 'add a part')}
        >
          {stages.length === 0 ? 'A text on the way …' : 'One more part'}
        </button>
      </div>
      {stages.length > 0 && (
        <p class="quiet">The brief is part 1. The run rests while a text is read, and what each waits for counts from the text before.</p>
      )}
    </section>
  );
}
