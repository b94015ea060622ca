import { wavesBehind } from '../../core/debrief/bearings';
import { debriefOf } from '../../core/debrief/debriefing';
import { begin } from '../../core/run/begin';
import { openExercise } from '../../core/run/exercise';
import { type Replay, replayRun } from '../../core/run/replay';
import type { RunState } from '../../core/run/state';
import { advance, step } from '../../core/run/step';
import type { FromDebrief, ToDebrief } from './debriefMessages';

const TELL_EVERY_TICKS = 400;
const tell = (message: FromDebrief) => postMessage(message);

/** Goes through a run where it can't hold the page up: first all that a debrief shows, then the waves behind each bearing. */
addEventListener('message', ({ data }: MessageEvent<ToDebrief>) => {
  const exercise = openExercise(data.scenario, data.world);
  const listener = { thresholdDb: data.thresholdDb };
  const run: Replay = data.pulses
    ? livedThrough(data, data.pulses)
    : replayRun(exercise, data.log, data.ticks, listener, ({ tick }) => {
        if (tick % TELL_EVERY_TICKS === 0) tell({ kind: 'share', share: tick / Math.max(1, data.ticks) });
      });
  const evidence = { exercise, run };
  const debriefing = debriefOf(evidence, data.practice ? { practice: data.practice } : {});
  tell({ kind: 'debriefing', debriefing, pulses: run.pulses });
  let number = 0;
  for (const arrows of wavesBehind(evidence, debriefing.bearings)) tell({ kind: 'waves', number: ++number, arrows });
  tell({ kind: 'done' });
});

/** `states[k].tick === k`, as a replay keeps them: the grade in the run file is to be the one that a replay gives. */
function livedThrough({ scenario, world, log, ticks, thresholdDb }: ToDebrief, pulses: Replay['pulses']): Replay {
  let state = begin(scenario);
  const states: RunState[] = [state];
  let next = 0;
  while (state.ending === null && (state.tick < ticks || next < log.length)) {
    for (; next < log.length && log[next]!.tick <= state.tick; next++) state = step(scenario, state, log[next]!.action);
    state = advance(scenario, world, state);
    states[state.tick] = state;
  }
  return { state, states, log, pulses, listener: { thresholdDb } };
}
