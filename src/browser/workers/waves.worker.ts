import { computeRadial, type RadialResult } from '../../core/radio/radial';
import type { Exercise } from '../../core/run/exercise';
import { openExercise } from '../../core/run/exercise';
import type { FromWaves, ToWaves } from './wavesMessages';

let exercise: Exercise | null = null;

/** Computes radials of the terrain field where they can't hold the page up. The same request gives the same numbers here and there. */
addEventListener('message', ({ data }: MessageEvent<ToWaves>) => {
  if (data.kind === 'open') {
    exercise = openExercise(data.scenario, data.world);
    return;
  }
  const results = data.kind === 'radials' ? data.requests.map(computeRadial) : lit(data);
  const answer: FromWaves = { ask: data.ask, tag: data.tag, tagAt: data.tagAt, results };
  postMessage(answer);
});

/**
 * The radials that the first pulse of a tag at a place needs: those that light the echoes, and those toward the walker. Who asks for
 * a place has nothing of it, or no longer: all are handed over.
 */
function lit({ tag, tagAt, at, heightM }: Extract<ToWaves, { kind: 'light' }>): readonly RadialResult[] {
  const airspace = exercise!.airspace(tag, tagAt);
  airspace.arrivalsAt(at, heightM);
  return airspace.field.known();
}
