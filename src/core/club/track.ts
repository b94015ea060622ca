import type { RunState } from '../run/state';
import { distanceM } from '../units/frames';
import type { TrackPoint } from './tableRow';

/** A point whenever the walker has come so far from the last one, or further where the walk is long. */
const STEP_M = 4;
const MOST_POINTS = 300;

const tenth = (m: number): number => Math.round(m * 10) / 10;
const pointOf = ({ tick, at }: RunState): TrackPoint => [Math.round(tick / 20), tenth(at.eM), tenth(at.nM)];

/** The line walked, thinned, from the first state to the last. */
export function trackOf(states: readonly RunState[]): readonly TrackPoint[] {
  const [first, last] = [states[0], states.at(-1)];
  if (!first || !last) return [];
  const stepM = Math.max(STEP_M, last.walkedM / MOST_POINTS);
  const points = [pointOf(first)];
  let from = first;
  for (const state of states) {
    if (distanceM(from.at, state.at) < stepM) continue;
    points.push(pointOf(state));
    from = state;
  }
  return from === last ? points : [...points, pointOf(last)];
}
