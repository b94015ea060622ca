import { readFileSync } from 'node:fs';
import { openExercise } from '../../src/core/run/exercise';
import { recordingOf, writeRecording } from '../../src/core/run/record';
import { TICKS_PER_S } from '../../src/core/run/state';
import { loadScenario } from '../../src/core/scenario/load';
import { playWalker } from '../../src/core/walkers/play';
import { weathercock } from '../../src/core/walkers/weathercock';

const LEAST_MINUTES = 30;

/** A run file of more than half an hour: the walker who turns and never gets far uses up the exercise's whole time. */
export function longRunText(): string {
  const path = 'scenarios/farmyard.json';
  const exercise = openExercise(loadScenario(path, readFileSync(path, 'utf8')));
  const run = playWalker(exercise, weathercock, 7);
  if (run.state.tick < LEAST_MINUTES * 60 * TICKS_PER_S) throw new Error('the run is too short');
  return writeRecording(recordingOf(exercise, run, { name: 'Weathercock', by: 'walker', practice: weathercock.practice }));
}
