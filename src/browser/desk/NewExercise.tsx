import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import { blankExercise } from '../../core/desk/blankExercise';
import type { Scenario } from '../../core/scenario/schema';
import { OwnFile } from '../controls/OwnFile';
import { Segments } from '../controls/Segments';
import { type Drawing, drawAhead } from '../workers/drawAhead';

type Wanted = {
  readonly lessons: Readonly<Record<Scenario['lesson'], string>>;
  readonly shipped: readonly { readonly name: string; readonly scenario: Scenario }[];
  readonly onNew: (scenario: Scenario, deed: string) => void;
};

const LEVELS = [1, 2, 3, 4, 5].map((value) => ({ value, text: String(value), said: `Level ${value}` }));
const freshSeed = (): number => crypto.getRandomValues(new Uint32Array(1))[0]! >>> 1;

/** The ways to begin: drawn for a lesson, from nothing, from a file, from an exercise that came with the program. */
export function NewExercise({ lessons, shipped, onNew }: Wanted) {
  const id = useId();
  const lesson = useSignal<Scenario['lesson']>('quiet-gain');
  const level = useSignal(1);
  const said = useSignal('');
  const drawing = useSignal<Drawing | null>(null);
  const opened = useRef<Drawing | null>(null);
  opened.current = drawing.value;
  useEffect(() => () => opened.current?.stop(), []);
  const draw = () => {
    said.value = 'A ground is drawn …';
    const now = drawAhead(freshSeed(), lesson.value, level.value, ({ title, walkedM }) => {
      said.value = `${title}: the steady walker looks for the tag, ${Math.round(walkedM)} m walked …`;
    });
    drawing.value = now;
    now.result.then(
      (scenario) => {
        drawing.value = null;
        said.value = '';
        onNew(scenario, 'draw an exercise');
      },
      (fault: unknown) => {
        drawing.value = null;
        said.value = fault instanceof Error ? fault.message : String(fault);
      },
    );
  };
  return (
    <section class="desk-new" aria-label="New exercise">
      <div class="desk-new-way">
        <h2>Draw one for a lesson</h2>
        <div class="desk-field">
          <label for={id}>Lesson</label>
          <select
            id={id}
            value={lesson.value}
            onChange={({ currentTarget: { value } }) => {
              lesson.value = value as Scenario['lesson'];
            }}
          >
            {Object.entries(lessons).map(([value, words]) => (
              <option key={value} value={value}>
                {words}
              </option>
            ))}
          </select>
        </div>
        <div class="desk-field">
          <span>Level</span>
          <Segments
            name="Level"
            choices={LEVELS}
            chosen={level.value}
            onChoose={(value) => {
              level.value = value;
            }}
          />
        </div>
        <div class="desk-deeds">
          <button type="button" class="primary" disabled={drawing.value !== null} onClick={draw}>
            Draw it
          </button>
          {drawing.value && (
            <button type="button" onClick={() => drawing.value?.stop()}>
              Stop
            </button>
          )}
        </div>
        <p class="quiet" role="status">
          {said.value || 'It is laid on the desk once the steady walker has found its tag.'}
        </p>
      </div>
      <div class="desk-new-way">
        <h2>From nothing</h2>
        <p class="quiet">Open ground, a start and one tag. Everything else is yours to set.</p>
        <div class="desk-deeds">
          <button type="button" onClick={() => onNew(blankExercise(`desk-${freshSeed()}`), 'begin from nothing')}>
            Begin from nothing
          </button>
        </div>
      </div>
      <div class="desk-new-way">
        <h2>From one there is</h2>
        <OwnFile words="Open a file" onOpen={(scenario) => onNew(scenario, `open ${scenario.title}`)} />
        <div class="desk-field">
          <label for={`${id}-shipped`}>Exercises of the program</label>
          <select
            id={`${id}-shipped`}
            value=""
            onChange={({ currentTarget: { value } }) => {
              const scenario = shipped.find(({ name }) => name === value)?.scenario;
              if (scenario) onNew(scenario, `open ${scenario.title}`);
            }}
          >
            <option value="">Choose one …</option>
            {shipped.map(({ name, scenario }) => (
              <option key={name} value={name}>
                {scenario.title}
              </option>
            ))}
          </select>
        </div>
      </div>
    </section>
  );
}
