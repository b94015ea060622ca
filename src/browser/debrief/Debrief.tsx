import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { RunResult } from '../../core/run/record';
import { resultOf } from '../../core/technique/grade';
import type { Moment } from '../../core/technique/habit';
import { live, openRun, track } from '../currentRun';
import type { Graded } from '../workers/gradeMessages';
import { gradeOf } from '../workers/gradeOf';
import { GainChart } from './charts/GainChart';
import { GainTable } from './GainTable';
import { HabitLines } from './HabitLines';
import { mattersMost } from './habitWords';
import { OutcomeNumbers } from './OutcomeNumbers';
import { RunMap } from './RunMap';
import { type Ratings, SelfRating } from './SelfRating';
import { runFileName, saveFile } from './saveFile';
import { stretchOf } from './stretchOf';

type Doors = {
  readonly runFileText: (result: RunResult) => string;
  readonly aided: boolean;
  readonly onAgain: () => void;
  readonly onOther: () => void;
};

/** First one's own rating, then the grade and what the waves really did. */
export function Debrief(doors: Doors) {
  const ratings = useSignal<Ratings | null>(null);
  const graded = useSignal<Graded | null>(null);
  const fault = useSignal<string | null>(null);
  useEffect(() => {
    const { exercise } = openRun.peek()!;
    gradeOf({ scenario: exercise.scenario, world: exercise.world, live: live.peek()! }).then(
      (result) => {
        graded.value = result;
      },
      (failed: Error) => {
        fault.value = failed.message;
      },
    );
  }, []);
  if (ratings.value === null) {
    return (
      <SelfRating
        onDone={(rated) => {
          ratings.value = rated;
        }}
      />
    );
  }
  if (!graded.value) {
    return (
      <main class="opening">
        <p role="status">{fault.value ?? 'Going through the run …'}</p>
      </main>
    );
  }
  return <Verdict {...doors} graded={graded.value} ratings={ratings.value} />;
}

function Verdict({
  graded,
  ratings,
  runFileText,
  aided,
  onAgain,
  onOther,
}: Doors & { readonly graded: Graded; readonly ratings: Ratings }) {
  const moment = useSignal<Moment | null>(null);
  const { exercise, land } = openRun.value!;
  const { grade, columns } = graded;
  const most = mattersMost(grade.habits);
  const run = useMemo(() => {
    const now = live.peek()!;
    return { scenario: exercise.scenario, live: now, track: track.peek(), stretch: stretchOf(exercise, now, moment.value) };
  }, [moment.value]);
  return (
    <main class="debrief">
      <header class="debrief-head">
        <p class="label">{exercise.scenario.title}: debrief</p>
        <h1 class="debrief-sentence">{most.sentence}</h1>
        {most.because && <p class="quiet">{most.because}</p>}
      </header>
      <section class="debrief-habits" aria-label="The five habits">
        <div class="technique">
          <h2>Technique</h2>
          <p class="technique-score number">
            {grade.technique === null ? <span class="quiet">not ranked: fewer than three habits shown</span> : Math.round(grade.technique)}
          </p>
        </div>
        <HabitLines
          habits={grade.habits}
          ratings={ratings}
          shown={moment.value}
          onShow={(next) => {
            moment.value = moment.value === next ? null : next;
          }}
        />
      </section>
      <section class="debrief-map" aria-label="Track and tag">
        <RunMap world={exercise.world} land={land} run={run} />
      </section>
      <section class="debrief-outcome" aria-label="Outcome">
        <OutcomeNumbers outcome={grade.outcome} aided={aided} />
        <div class="debrief-deeds">
          <button type="button" class="primary" onClick={onAgain}>
            Again
          </button>
          <button type="button" onClick={onOther}>
            Other exercise
          </button>
          <button type="button" onClick={() => saveFile(runFileName(exercise.scenario.title), runFileText(resultOf(grade)))}>
            Save run file
          </button>
        </div>
      </section>
      <section class="debrief-chart">
        <h2>
          Gain against least gain <span class="unit">dB over minutes</span>
        </h2>
        <GainChart columns={columns} stretch={moment.value} />
        <GainTable columns={columns} />
      </section>
    </main>
  );
}
