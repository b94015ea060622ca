import { hearHere } from '../../core/desk/hearHere';
import { type Exercise, openExercise } from '../../core/run/exercise';
import type { FromListen, ToListen } from './listenMessages';

let exercise: Exercise | null = null;

/** Hears a tag at one place after the other. */
addEventListener('message', ({ data }: MessageEvent<ToListen>) => {
  if (data.kind === 'open') {
    exercise = openExercise(data.scenario, data.world);
    return;
  }
  const answer: FromListen = { heard: hearHere(exercise!, data.at, data.setting) };
  postMessage(answer);
});
