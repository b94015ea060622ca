import type { RunState } from '../run/state';
import { taskOf } from '../run/task';
import type { World } from '../world/world';
import type { Evidence } from './habit';
import { type Leg, legsOf, type TagReading, withTags } from './legs';
import { walkingTicks } from './onTheMove';
import type { Outlook } from './outlook';
import { readingsOf } from './readings';
import { type SuggestedDistance, suggestedDistance } from './suggestedDistance';
import { type Sweep, sweepsOf } from './sweeps';
import { pulseIntervalS } from './tunedTag';

/** The lesson in which bearings are taken from given stations and the fix is all. */
const STATIONS_LESSON = 'crossing';

/** What the parts of a walk are judged from, worked out once. */
export type WalkEvidence = {
  readonly world: World;
  /** The task is a fix: nobody walks a line to the tag. */
  readonly isFix: boolean;
  /** Bearings are taken from stations and the fix is all: the sound is not followed. */
  readonly fromStations: boolean;
  readonly states: readonly RunState[];
  readonly pulseS: number;
  readonly sweeps: readonly Sweep[];
  readonly readings: readonly TagReading[];
  readonly legs: readonly Leg[];
  /** 1 for each tick at which the learner walks. */
  readonly walking: Uint8Array;
  readonly distance: SuggestedDistance;
};

export function walkEvidence(evidence: Evidence, outlook: Outlook): WalkEvidence {
  const { states } = evidence.run;
  const pulseS = pulseIntervalS(evidence);
  const sweeps = sweepsOf(states, pulseS);
  const readings = withTags(evidence, readingsOf(evidence, sweeps));
  const walking = walkingTicks(states);
  const legs = legsOf(evidence, readings, walking, outlook);
  const { world, scenario } = evidence.exercise;
  const isFix = taskOf(scenario).kind === 'fix';
  const fromStations = isFix || scenario.lesson === STATIONS_LESSON;
  return { world, isFix, fromStations, states, pulseS, sweeps, readings, legs, walking, distance: suggestedDistance(evidence) };
}
