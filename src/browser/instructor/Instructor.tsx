import { useEffect } from 'preact/hooks';
import { isHeldUp } from '../../core/run/intervention';
import { TICKS_PER_S } from '../../core/run/state';
import { deedsTold, deedWords } from '../debrief/deedWords';
import { outcomeEndings } from '../debrief/outcomeEndings';
import { clockText } from '../ground/words';
import { InstructorDeeds } from './InstructorDeeds';
import './instructor.css';
import { truthLines } from './truthLines';
import { WatchMap } from './WatchMap';
import { runs, type WatchedRun, watch, watched, watchRuns } from './watched';

/** The second window: sees the truth of a run in another window of this machine as it goes, and can change it. */
export function Instructor({ onBack }: { readonly onBack: () => void }) {
  useEffect(watchRuns, []);
  const run = watched.value;
  return (
    <main class="watch">
      <header class="watch-head">
        <h1>{run ? run.scenario.title : 'Instructor’s window'}</h1>
        {run && <Standing run={run} />}
        <button type="button" onClick={onBack}>
          Start page
        </button>
      </header>
      {runs.value.length > 1 && <OtherRuns />}
      {run ? <Watched run={run} /> : <Nobody />}
    </main>
  );
}

function Nobody() {
  return (
    <div class="watch-nobody" role="status">
      <p>
        <b>No run goes on yet.</b> Open an exercise in another window of this browser on this machine; it appears here by itself, with where
        the tag is.
      </p>
      <p class="quiet">
        Put this window on a second screen, or turn the screen away from the walker. The walker’s keys reach the other window only after a
        click into it.
      </p>
    </div>
  );
}

/** Several runs on one machine: one of them is looked at. */
function OtherRuns() {
  return (
    <fieldset class="watch-runs" aria-label="Runs on this machine">
      {runs.value.map(({ run, scenario, name, isGone }) => (
        <button key={run} type="button" aria-pressed={run === watched.value?.run} onClick={() => watch(run)}>
          {name || scenario.title}
          {isGone && ', over'}
        </button>
      ))}
    </fieldset>
  );
}

function Standing({ run: { name, state, rests, isGone } }: { readonly run: WatchedRun }) {
  if (!state) return <p class="quiet">waiting for the run …</p>;
  const ended = state.ending && outcomeEndings[state.ending];
  const how = ended ?? (isGone ? 'left' : isHeldUp(state.interventions) ? 'stopped by you' : rests ? 'paused' : 'under way');
  return (
    <p class="watch-standing" role="status">
      {name && `${name}, `}
      {how}, <span class="number">{clockText(Math.floor(state.tick / TICKS_PER_S))}</span>
    </p>
  );
}

function Watched({ run }: { readonly run: WatchedRun }) {
  const { state, scenario, pulses, isGone } = run;
  const told = deedsTold(state?.interventions ?? []);
  return (
    <div class="watch-columns">
      <WatchMap run={run} />
      {state && (
        <div class="watch-side">
          <dl class="watch-truth" aria-label="What is so">
            {truthLines(scenario, state, pulses).map(({ name, value, remark }) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>
                  <span class="number">{value}</span>
                  {remark && <span class="watch-remark">{remark}</span>}
                </dd>
              </div>
            ))}
          </dl>
          {state.ending === null && !isGone && <InstructorDeeds scenario={scenario} state={state} />}
          <section class="watch-log" aria-label="What you did">
            <h2 class="label">Kept in the run</h2>
            <ol>
              {[...told].reverse().map((one, i) => (
                <li key={told.length - i}>
                  <span class="number">{clockText(Math.floor(one.atTick / TICKS_PER_S))}</span> {deedWords(one, scenario.tags)}
                </li>
              ))}
            </ol>
          </section>
        </div>
      )}
    </div>
  );
}
