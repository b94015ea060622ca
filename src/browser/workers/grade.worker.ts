import { begin as firstState } from '../../core/run/begin';
import { openExercise } from '../../core/run/exercise';
import type { RunState } from '../../core/run/state';
import { advance, step } from '../../core/run/step';
import { gradeReplay } from '../../core/technique/grade';
import { runColumns } from '../debrief/runColumns';
import type { Graded, ToGrade } from './gradeMessages';

/** Grades a run from its own pulses: they were worked out as it was played, only the poses are lived through again. */
addEventListener('message', ({ data }: MessageEvent<ToGrade>) => {
  const { scenario, world, live } = data;
  const exercise = openExercise(scenario, world);
  const run = { ...live, states: statesOf(exercise.scenario, exercise.world, data) };
  const graded: Graded = { grade: gradeReplay({ exercise, run }, {}), columns: runColumns(live.pulses, run.states) };
  postMessage(graded);
});

/** `states[k].tick === k`, as a replay keeps them: the grade in the run file is to be the one that a replay gives. */
function statesOf(scenario: ToGrade['scenario'], world: ToGrade['world'], { live }: ToGrade): readonly RunState[] {
  let state = firstState(scenario);
  const states: RunState[] = [state];
  let next = 0;
  while (state.ending === null && (state.tick < live.state.tick || next < live.log.length)) {
    for (; next < live.log.length && live.log[next]!.tick <= state.tick; next++) state = step(scenario, state, live.log[next]!.action);
    state = advance(scenario, world, state);
    states[state.tick] = state;
  }
  return states;
}
