import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Recording } from '../../core/run/record';
import { InputFaults } from '../../core/scenario/faults';
import { PRINTED_CAUTIONS } from '../../core/scenario/printedCautions';
import type { Scenario } from '../../core/scenario/schema';
import { digestOf } from '../../core/scenario/seal';
import { Segments } from '../controls/Segments';
import { dropAnywhere } from '../input/dropAnywhere';
import { PlainHttp } from '../PlainHttp';
import { readFile } from '../workers/readFile';
import { anonymous, chosenExercise, clubTable, exerciseNow, report, takeFiles, taken } from './clubTable';
import { FilesTaken } from './FilesTaken';
import { HabitsPart } from './HabitsPart';
import { clearAll, goOnWithKept } from './keptTable';
import { Ranking } from './Ranking';
import { SeasonPart } from './SeasonPart';
import { TakeAway } from './TakeAway';
import { TracksMap } from './TracksMap';
import './club.css';
import './clubPrint.css';

type Doors = {
  readonly onBack: () => void;
  /** Opens the debrief of a run; the table stays as it is. */
  readonly onDebrief: (recording: Recording) => void;
  /** Exercises that came with the program: their ground is known without a run file. */
  readonly shipped: readonly { readonly scenario: Scenario }[];
};

/** Many runs, checked, ranked and compared. */
export function Club({ onBack, onDebrief, shipped }: Doors) {
  const fault = useSignal('');
  useEffect(() => dropAnywhere((files) => void takeFiles(files)), []);
  useEffect(() => void goOnWithKept(), []);
  const { picture, season, reliability, notes } = report.value;
  const now = exerciseNow.value;
  const debrief = async (file: File) => {
    try {
      onDebrief(await readFile('run', file));
    } catch (failed) {
      if (!(failed instanceof InputFaults)) throw failed;
      fault.value = `The run can’t be opened: ${failed.faults[0]!.found}.`;
    }
  };
  return (
    <main class="club">
      <header class="club-head">
        <h1>Club table</h1>
        <p class="quiet">
          {now && (
            <>
              <span class="number">{clubTable.value.rows.length}</span> runs of{' '}
              <span class="number">{clubTable.value.exercises.length}</span>{' '}
              {clubTable.value.exercises.length === 1 ? 'exercise' : 'exercises'}
            </>
          )}
        </p>
        <button
          type="button"
          aria-pressed={anonymous.value}
          class="club-anonymous"
          onClick={() => {
            anonymous.value = !anonymous.value;
          }}
        >
          {anonymous.value ? 'Show names' : 'Without names'}
        </button>
        {taken.value.length > 0 && (
          <button type="button" onClick={clearAll}>
            Clear
          </button>
        )}
        <button type="button" onClick={onBack}>
          Start page
        </button>
      </header>
      <PlainHttp />
      <FilesTaken />
      <p role="alert">{fault.value}</p>
      {notes.map((note) => (
        <p key={note} class="club-note">
          {note}
        </p>
      ))}
      {now && (
        <>
          <ExerciseChoice />
          <div class="club-exercise">
            <Ranking of={now} onDebrief={(file) => void debrief(file)} />
            <TracksMap landless={(digest) => shipped.find(({ scenario }) => digestOf(scenario) === digest)?.scenario ?? null} />
          </div>
          <div class="club-parts">
            <HabitsPart picture={picture} />
            <div>
              <section class="club-part" aria-label="How far to trust this">
                <h2>How far to trust this</h2>
                <p>{reliability.note}</p>
              </section>
              <TakeAway />
            </div>
          </div>
          <SeasonPart season={season} />
          <p class="club-cautions">{PRINTED_CAUTIONS}</p>
        </>
      )}
    </main>
  );
}

/** Only where there is a choice. */
function ExerciseChoice() {
  const { exercises } = report.value;
  if (exercises.length < 2) return null;
  return (
    <div class="club-choice">
      <Segments
        name="Exercise"
        choices={exercises.map(({ exercise, runs }) => ({ value: exercise.digest, text: `${exercise.title} (${runs.length})` }))}
        chosen={exerciseNow.value!.exercise.digest}
        onChoose={(digest) => {
          chosenExercise.value = digest;
        }}
      />
    </div>
  );
}
