import { useSignal } from '@preact/signals';
import { changesAt, hintText, isHeldUp, LONGEST_HINT, MOST_LINE_NOISE_DB, MOST_WEAKENED_DB } from '../../core/run/intervention';
import type { RunState } from '../../core/run/state';
import type { Scenario } from '../../core/scenario/schema';
import { Slide } from '../controls/Slide';
import { does } from './watched';

/** Said often enough to be one press away: each leads to a habit, none to the tag. */
const READY_HINTS = [
  'Less gain: only as much as the ear needs.',
  'Hands off the knobs, then turn slowly all the way round.',
  'Turn it upright, then flat: which is louder?',
  'The loudest side may be the back. Check behind you.',
  'Walk on, and take another bearing across the first.',
  'Find an open, higher place before you believe it.',
] as const;

/** What an instructor can do to the run; every deed is kept in it. */
export function InstructorDeeds({ scenario, state }: { readonly scenario: Scenario; readonly state: RunState }) {
  const changes = changesAt(state.interventions, state.tick);
  const isHeld = isHeldUp(state.interventions);
  return (
    <section class="watch-deeds" aria-label="What you can do">
      <button type="button" class="primary" aria-pressed={isHeld} onClick={() => does({ type: 'holdUp', held: !isHeld })}>
        {isHeld ? 'Let the run go on' : 'Stop the run'}
      </button>
      {scenario.tags.map(({ name }, tag) => (
        <DbSlide
          key={name}
          name={scenario.tags.length > 1 ? `Weaken ${name}` : 'Weaken the tag'}
          valueDb={changes.weakenedDb.get(tag) ?? 0}
          mostDb={MOST_WEAKENED_DB}
          onSet={(byDb) => does({ type: 'weaken', tag, byDb })}
        />
      ))}
      {scenario.ground.powerLines.length > 0 ? (
        <DbSlide
          name="Raise line noise"
          valueDb={changes.lineNoiseRaisedDb}
          mostDb={MOST_LINE_NOISE_DB}
          onSet={(byDb) => does({ type: 'raiseLineNoise', byDb })}
        />
      ) : (
        <p class="quiet">No power line on this ground: there is no line noise to raise.</p>
      )}
      <HintForm />
    </section>
  );
}

const STEP_DB = 2;

function DbSlide({
  name,
  valueDb,
  mostDb,
  onSet,
}: {
  readonly name: string;
  readonly valueDb: number;
  readonly mostDb: number;
  readonly onSet: (byDb: number) => void;
}) {
  return (
    <div class="watch-slide">
      <p class="watch-slide-head">
        <span>{name}</span>
        <output class="number">
          {valueDb} <span class="unit">dB</span>
        </output>
      </p>
      <Slide
        name={name}
        value={valueDb}
        most={mostDb}
        step={STEP_DB}
        markEvery={20}
        said={`${valueDb} decibels`}
        keys="arrows"
        onSet={onSet}
      />
    </div>
  );
}

function HintForm() {
  const text = useSignal('');
  const isEmpty = hintText(text.value) === '';
  return (
    <>
      <form
        class="watch-hint"
        onSubmit={(event) => {
          event.preventDefault();
          if (isEmpty) return;
          does({ type: 'hint', text: text.value });
          text.value = '';
        }}
      >
        <label class="watch-hint-field">
          <span>Hint for the walker</span>
          <input
            type="text"
            value={text.value}
            maxLength={LONGEST_HINT}
            onInput={({ currentTarget }) => {
              text.value = currentTarget.value;
            }}
          />
        </label>
        <button type="submit" disabled={isEmpty}>
          Send
        </button>
      </form>
      <ul class="watch-hints" aria-label="Hints ready to send">
        {READY_HINTS.map((hint) => (
          <li key={hint}>
            <button type="button" class="plain" onClick={() => does({ type: 'hint', text: hint })}>
              {hint}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
