import { openExercise } from '../../src/core/run/exercise';
import { recordingOf } from '../../src/core/run/record';
import { gradeRun } from '../../src/core/technique/grade';
import { drawExercise } from '../../src/core/walkers/drawExercise';
import { playWalker } from '../../src/core/walkers/play';
import { steady } from '../../src/core/walkers/steady';
import type { Figure } from './figure';

const RUNS = 3;

/** Milliseconds of one core for a replay with its grade, for each second of the run: 1 is a thousand times real time. Best of several. */
export function figures(): Figure[] {
  const scenario = drawExercise(1_001, 'crossing', 3);
  const played = openExercise(scenario);
  const walk = playWalker(played, steady, 1);
  const recording = recordingOf(played, walk, { name: 'bench', by: 'walker', practice: steady.practice });
  const seconds = recording.ticks / 20;
  const msPerS = (exercise: () => ReturnType<typeof openExercise>): number => {
    const times = Array.from({ length: RUNS }, () => {
      const begun = process.cpuUsage();
      const grade = gradeRun(exercise(), recording);
      if (!grade.replayMatches) throw new Error('the replay gave other pulses');
      const { user, system } = process.cpuUsage(begun);
      return (user + system) / 1000;
    });
    return Math.min(...times) / seconds;
  };
  return [
    { name: 'grade, ms a second of run, field cached', unit: 'ms', value: msPerS(() => played), goal: 1 },
    { name: 'grade, ms a second of run, cold', unit: 'ms', value: msPerS(() => openExercise(scenario)), goal: 20 },
  ];
}
